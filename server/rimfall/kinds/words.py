"""Sentences that several kinds say: what was met, where a flight lands and why it drifts, how it ends."""

from ..language import tr, tr_as, tr_later
from ..motions.drift import FAR_ROUND
from ..motions.ways import Way
from ..phrases import AND, STILL_M, STRAIGHT_BELOW, length, listed, seconds, speed, times, where

WHERE_IT_BEGAN = tr_later("where it began")
_STRAIGHT_ABOVE = tr_later("straight above")
_FAR_ROUND = tr_later(
    "One of the causes alone would carry it more than a quarter of the way round: its drift is not taken apart."
)
_LIFTS_M_S = 1e-6  # a speed away from what was met that is more than rounding

# Who a sentence is of: what it is called, and the form of the sentence: that of one, of many, or of what nobody catches.
IT, UNCAUGHT = (tr_later("It"), 0), ("", 2)
_LIES = (tr_later("{who} lies on {surface} from the start."), tr_later("{who} lie on {surface} from the start."))
_LANDS = (
    tr_later("{who} lands {where} after {time}"),
    tr_later("{who} land {where} after {time}"),
    tr_later("Uncaught, it lands {where} after {time}"),
)
_MEETS_AND_LANDS = (
    tr_later("{who} meets {surface} after {met} and lands {where} after {time}"),
    tr_later("{who} meet {surface} after {met} and land {where} after {time}"),
    tr_later("Uncaught, it meets {surface} after {met} and lands {where} after {time}"),
)
_MEETS = (
    tr_later("{who} meets {surface} {where} after {time}"),
    tr_later("{who} meet {surface} {where} after {time}"),
    tr_later("Uncaught, it meets {surface} {where} after {time}"),
)
_PASSES = (
    tr_later("{who} passes the edge {where} after {time}; what lies beyond is not followed."),
    tr_later("{who} pass the edge {where} after {time}; what lies beyond is not followed."),
    tr_later("Uncaught, it passes the edge {where} after {time}; what lies beyond is not followed."),
)
_IN_FLIGHT = (
    tr_later("{who} is still in flight when the scene ends after {time}, {where}."),
    tr_later("{who} are still in flight when the scene ends after {time}, {where}."),
    tr_later("Uncaught, it is still in flight when the scene ends after {time}, {where}."),
)
_NEVER = (
    tr_later("{who} never meets {surface} in {time}."),
    tr_later("{who} never meet {surface} in {time}."),
    tr_later("Uncaught, it never meets {surface} in {time}."),
)


def surface_words(surface):
    """A surface with its article, as what is met: "the deck", "an end wall"."""
    return {
        "deck": tr_as("meets", "the deck"),
        "floor": tr_as("meets", "the floor"),
        "turntable": tr_as("meets", "the turntable"),
        "ceiling": tr_as("meets", "the ceiling"),
        "hub": tr_as("meets", "the hub"),
        "hull": tr_as("meets", "the hull"),
        "ramp": tr_as("meets", "the ramp"),
        "table": tr_as("meets", "the table"),
        "wall": tr_as("meets", "an end wall"),
        "edge": tr_as("meets", "the edge"),
    }[surface]


def this_surface(surface):
    """The same of the one that is meant, where there may be two of it: "the wall"."""
    return tr_as("meets", "the wall") if surface == "wall" else surface_words(surface)


def _at(surface):
    return {
        "deck": tr_as("lies on", "the deck"),
        "floor": tr_as("lies on", "the floor"),
        "turntable": tr_as("lies on", "the turntable"),
        "ceiling": tr_as("lies on", "the ceiling"),
        "hub": tr_as("lies on", "the hub"),
        "hull": tr_as("lies on", "the hull"),
        "ramp": tr_as("lies on", "the ramp"),
        "table": tr_as("lies on", "the table"),
        "wall": tr_as("lies on", "an end wall"),
        "edge": tr_as("lies on", "the edge"),
    }[surface]


def the(traced, surface):
    """A surface with its article, as what a thing meets; the ground by the name that people have for it."""
    return surface_words(_called(traced, surface))


def the_at(traced, surface):
    """The same as where a thing is: on it, above it, against it."""
    return _at(_called(traced, surface))


def _called(traced, surface):
    return traced.stands_on.name if surface == traced.ground else surface


def since(traced, event):
    """When an event was, after the start, in words."""
    return seconds(event.time_s - traced.plan.start_s)


def there(traced, moment, units, stressed=False, none=WHERE_IT_BEGAN):
    """How far it is at a moment from where it began, in words; `none`, not yet translated: where it is that very place."""
    return off(traced, traced.way(moment), units, stressed, none)


def off(traced, way, units, stressed=False, none=WHERE_IT_BEGAN):
    """A way of a motion in words; `none`, not yet translated: where there is none."""
    return where(way, units, traced.across, stressed, none)


def ending(traced, units):
    """How it ends, after it has touched ground."""
    track, final = traced.track, traced.track.events[-1]
    after = since(traced, final)
    if track.end == "rest":
        return tr("comes to rest {where} after {time}", where=there(traced, final, units, stressed=True), time=after)
    if track.end == "edge":
        return tr("passes the edge {where} after {time}", where=there(traced, final, units, stressed=True), time=after)
    if track.end == "landed":
        met, where_to = the(traced, final.surface), there(traced, final, units)
        return tr("meets {surface} {where} after {time}", surface=met, where=where_to, time=after)
    if track.end == "met a surface":
        return tr("ends against {surface} after {time}", surface=the_at(traced, final.surface), time=after)
    return _still_going(traced, units)


def _still_going(traced, units):
    end = traced.track.last
    moving, where_to = speed(end.speed_m_s, units), there(traced, end, units)
    after = seconds(end.time_s - traced.plan.start_s)
    return tr("is still under way at {speed} after {time}, {where}", speed=moving, time=after, where=where_to)


def after_landing(traced, units):
    """What a body does after it has first landed; nothing where it stays there."""
    events = traced.track.events
    later = [e for e in events if traced.track.landing is not None and e.time_s > traced.track.landing.time_s]
    if traced.track.landing is None or (not later and traced.track.end == "landed"):
        return None
    parts = [_rebounds([e for e in events if e.surface is not None]), *_changes(traced, later), ending(traced, units)]
    return it_does(*parts)


def it_does(*parts):
    """A sentence of what it does, each part a verb and what belongs to it; empty ones are left out."""
    return tr("It {does}.", does=listed([one for one in parts if one]))


def _rebounds(contacts):
    """How often it leaves what it met."""
    left = sum(e.leaves_m_s is not None and e.leaves_m_s > _LIFTS_M_S for e in contacts)
    return tr("bounces {times}", times=times(left)) if left else ""


def _changes(traced, events):
    grips = [e for e in events if e.kind == "grip"]
    return [tr("rolls without slipping from {time} on", time=since(traced, grips[0]))] if grips else []


def within_reach(traced, units):
    """Within whose reach it comes before it lands: when, how high, and how fast."""
    return [
        tr(
            "It comes within reach of {name} after {time}, {height} above {surface}, at a closing velocity of {speed}.",
            name=name,
            time=since(traced, one),
            height=length(max(one.height_m, 0.0), units),
            surface=the_at(traced, traced.ground),
            speed=speed(one.closing_m_s, units),
        )
        for name, one in traced.reached
    ]


def say(forms, who, **places):
    """A sentence, one of its forms, of somebody, as `IT`."""
    name, form = who
    return tr(forms[form], who=name and tr(name), **places)


def landing(traced, units, who=IT):
    """Where and when it lands, or why it does not; who: of whom it is told, as `IT`."""
    track = traced.track
    if track.landing is None:
        return _no_landing(traced, who, units)
    where_to = there(traced, track.landing, units, stressed=True, none=STRAIGHT_BELOW)
    after = track.landing.time_s - traced.plan.start_s
    if after == 0:
        return say(_LIES, who, surface=the_at(traced, track.landing.surface))
    first = next((e for e in track.events if e.surface is not None and e is not track.landing), None)
    if first is None or first.time_s > track.landing.time_s:
        lands = say(_LANDS, who, where=where_to, time=seconds(after))
    else:
        met = {"surface": the(traced, first.surface), "met": since(traced, first)}
        lands = say(_MEETS_AND_LANDS, who, where=where_to, time=seconds(after), **met)
    return f"{lands}{plainly(traced, units)}."


def briefly(traced, units):
    """What comes of a thing that flies or rolls, in a phrase: where it first lands, else how it ends."""
    track, start_s = traced.track, traced.plan.start_s
    if track.landing is not None and track.landing.time_s <= start_s:
        return tr("lies on {surface} from the start", surface=the_at(traced, track.landing.surface))
    if track.landing is not None:
        where_to = there(traced, track.landing, units, none=STRAIGHT_BELOW)
        return tr("lands {where} after {time}", where=where_to, time=since(traced, track.landing))
    if track.end == "met a surface":
        last = track.events[-1]
        places = {"surface": the_at(traced, last.surface), "where": there(traced, last, units)}
        return tr("ends against {surface} {where} after {time}", time=since(traced, last), **places)
    if traced.plan.surface is None and track.end in ("time limit", "duration"):
        where_to = there(traced, track.last, units)
        return tr("is still in flight after {time}, {where}", time=since(traced, track.last), where=where_to)
    return ending(traced, units)


def plainly(traced, units, none=STRAIGHT_BELOW):
    """Where and when it would land under plain gravity, as the end of a sentence; "" where it would not. none: where that is no drift."""
    if traced.plain_way is None:
        return ""
    after = seconds(traced.flat_gravity.landing["time_s"] - traced.plan.start_s)
    where_to = off(traced, traced.plain_way, units, none=none)
    return tr("; under plain gravity, {where} after {time}", where=where_to, time=after)


def _no_landing(traced, who, units):
    track = traced.track
    last = track.events[-1]
    after = seconds(last.time_s - traced.plan.start_s)
    if track.end == "met a surface" and last.surface != "edge":
        where_to = there(traced, last, units, none=STRAIGHT_BELOW)
        return f"{say(_MEETS, who, surface=the(traced, last.surface), where=where_to, time=after)}."
    if track.end in ("edge", "met a surface"):
        where_to = there(traced, last, units, stressed=True, none=STRAIGHT_BELOW)
        return say(_PASSES, who, where=where_to, time=after)
    contact = next((e for e in track.events if e.surface is not None), None)
    if contact is not None and who[1] != 1:
        return _met_aside(traced, contact, who, units)
    if track.end == "duration":
        where_to = there(traced, track.last, units, stressed=True, none=STRAIGHT_BELOW)
        return say(_IN_FLIGHT, who, time=since(traced, track.last), where=where_to)
    return say(_NEVER, who, surface=the(traced, traced.ground), time=after)


def _other(traced):
    """What the causes are called that are not told apart: by name where there is one."""
    course = traced.plan.course
    first = course.first if course.opening is None else course.opening.release
    names = [
        name
        for name, is_there in (
            (tr_as("cause", "buoyancy"), traced.plan.body.buoyant),
            (tr_as("cause", "lift"), getattr(first, "lifts", False)),
            (tr_as("cause", "the changing spin"), not traced.ways.habitat.spin.steady),
        )
        if is_there
    ]
    return names[0] if len(names) == 1 else tr_as("cause", "the rest")


def _met_aside(traced, contact, who, units):
    """What is met that is not the ground, and how it goes on from there."""
    where_to = there(traced, contact, units, stressed=True, none=STRAIGHT_BELOW)
    met = say(_MEETS, who, surface=the(traced, contact.surface), where=where_to, time=since(traced, contact))
    return f"{_and_then(met, traced, contact, units)}."


def why(traced, units, who=None):
    """One sentence of what the causes of a drift have done, where they can be told apart; else nothing. who: who has drifted, translated."""
    parts, none = traced.drift
    if none == FAR_ROUND:
        return tr(_FAR_ROUND)
    if parts is None or abs(parts["coriolis"]) < STILL_M:
        return ""
    shifts = [(tr_as("cause", "drag"), parts["drag"]), (_other(traced), parts["other"])]
    clauses = [tr("Coriolis shifts that {way}", way=_shift(parts["coriolis"], units))]
    clauses += [
        tr("{cause} {way}", cause=cause, way=_shift(by_m, units)) for cause, by_m in shifts if abs(by_m) >= STILL_M
    ]
    without = tr_as("without", "Coriolis and drag") if parts["drag"] else tr_as("without", "Coriolis")
    return f"{_alone(traced, without, parts['centrifugal'], units, who)}; {listed(clauses)}."


def _alone(traced, without, drift_m, units, who):
    """Where it would land with the first cause alone, spinward or antispinward; where a thing also goes across that, only that is said."""
    stream = traced.plan.stream
    is_many = stream is not None and stream.batch is None and stream.drop_diameter_m is not None
    who = who or tr_as("would land", "it")
    if abs(traced.way(traced.track.landing).axial_m) < STILL_M:
        lands = where(Way(0, drift_m, 0.0), units, stressed=True)
        if is_many:
            return tr("Without {causes} they would land {where}", causes=without, where=lands)
        return tr("Without {causes} {who} would land {where}", causes=without, who=who, where=lands)
    places = {"ground": _at(traced.stands_on.name), "causes": without}
    if abs(drift_m) < STILL_M:
        if is_many:
            return tr("Along {ground}, without {causes} they would not drift", **places)
        return tr("Along {ground}, without {causes} {who} would not drift", who=who, **places)
    if is_many:
        return tr("Along {ground}, without {causes} they would go {way}", way=_shift(drift_m, units), **places)
    return tr("Along {ground}, without {causes} {who} would go {way}", way=_shift(drift_m, units), who=who, **places)


def _shift(by_m, units):
    """A drift of STILL_M or more, spinward above 0, in words."""
    return where(Way(0, by_m, 0.0), units)


def rose(traced, units):
    """What a body does that the air bears up and that meets no ground; nothing where it does not rise."""
    track = traced.track
    last = track.events[-1]
    risen = last.height_m - traced.plan.place[1]
    if not traced.plan.body.buoyant or track.landing is not None or risen < STILL_M:
        return []
    first = next((e for e in track.events if e.surface is not None), None)
    if first is None:
        return [
            tr(
                "It rises {length} in {time} and never meets {surface}.",
                length=length(risen, units),
                time=since(traced, last),
                surface=the(traced, traced.ground),
            )
        ]
    above = there(traced, first, units, none=_STRAIGHT_ABOVE)
    surface = the(traced, first.surface)
    met = tr(
        "It rises and meets {surface} {where} after {time}", surface=surface, where=above, time=since(traced, first)
    )
    return [f"{_and_then(met, traced, first, units)}."]


def _and_then(met, traced, first, units):
    """What it has met, and how it goes on along that."""
    then = _then(traced, first, units)
    return tr(AND, first=met, last=then) if then else met


def _then(traced, first, units):
    track, last = traced.track, traced.track.events[-1]
    if track.end in ("time limit", "duration"):
        return _still_going(traced, units)
    if last is first or track.end not in ("rest", "met a surface"):
        return ""
    if track.end == "rest":
        (way,) = traced.ways.between((first.along_m, first.height_m, first.axial_m), [last])
        further = off(traced, way, units, stressed=True, none="")
        return tr("comes to rest {where} of there", where=further) if further else tr("comes to rest there")
    return tr("ends against {surface} after {time}", surface=the_at(traced, last.surface), time=since(traced, last))
