"""Sentences that several kinds say: what was met, where a flight lands and why it drifts, how it ends; what the air does, and what is left out."""

import math

import numpy as np

from ..motions.drift import FAR_ROUND
from ..motions.ways import Way
from ..phrases import STILL_M, STRAIGHT_BELOW, length, seconds, speed, where
from ..physics import frames
from ..physics.bodies import PLATE_CD
from ..physics.drag import GREATEST_RE
from ..physics.liquids import drop_volume_m3

SURFACE_WORDS = {
    "deck": "the deck",
    "floor": "the floor",
    "ramp": "the ramp",
    "table": "the table",
    "wall": "an end wall",
}
_FAR_ROUND = (
    "One of the causes alone would carry it more than a quarter of the way round: its drift is not taken apart."
)
_LIFTS_M_S = 1e-6  # a speed away from what was met that is more than rounding


def the(traced, surface):
    """A surface with its article; the ground by the name that people have for it."""
    if surface == traced.ground:
        return f"the {traced.stands_on.name}"
    return SURFACE_WORDS.get(surface, f"the {surface}")


def since(traced, event):
    """When an event was, after the start, in words."""
    return seconds(event.time_s - traced.plan.start_s)


def there(traced, moment, units, stressed=False, none="where it began"):
    """How far it is at a moment from where it began, in words; `none`: where it is that very place."""
    return off(traced, traced.way(moment), units, stressed, none)


def off(traced, way, units, stressed=False, none="where it began"):
    """A way of a motion in words; `none`: where there is none."""
    said = where(way, units, traced.across, stressed)
    return none if said == STRAIGHT_BELOW else said


def ending(traced, units):
    """How it ends, after it has touched ground."""
    track, final = traced.track, traced.track.events[-1]
    if track.end == "rest":
        return f"comes to rest {there(traced, final, units, stressed=True)} after {since(traced, final)}"
    if track.end == "edge":
        return f"passes the edge {there(traced, final, units, stressed=True)} after {since(traced, final)}"
    if track.end == "landed":
        return f"meets {the(traced, final.surface)} {there(traced, final, units)} after {since(traced, final)}"
    if track.end == "met a surface":
        return f"ends against {the(traced, final.surface)} after {since(traced, final)}"
    return _still_going(traced, units)


def _still_going(traced, units):
    end = traced.track.last
    moving = speed(end.speed_m_s, units)
    after = seconds(end.time_s - traced.plan.start_s)
    return f"is still under way at {moving} after {after}, {there(traced, end, units)}"


def after_landing(traced, units):
    """What a body does after it has first landed; nothing where it stays there."""
    events = traced.track.events
    later = [e for e in events if traced.track.landing is not None and e.time_s > traced.track.landing.time_s]
    if traced.track.landing is None or (not later and traced.track.end == "landed"):
        return None
    parts = [_rebounds([e for e in events if e.surface is not None]), *_changes(traced, later), ending(traced, units)]
    return (
        f"It {', '.join(p for p in parts[:-1] if p)}{' and ' if any(parts[:-1]) else ''}{parts[-1]}."
        if parts[-1]
        else None
    )


def _rebounds(contacts):
    """How often it leaves what it met."""
    left = sum(e.leaves_m_s is not None and e.leaves_m_s > _LIFTS_M_S for e in contacts)
    return (
        "" if left == 0 else "bounces once" if left == 1 else "bounces twice" if left == 2 else f"bounces {left} times"
    )


def _changes(traced, events):
    grips = [e for e in events if e.kind == "grip"]
    return [f"rolls without slipping from {since(traced, grips[0])} on"] if grips else []


def within_reach(traced, units):
    """Within whose reach it comes before it lands: when, how high, and how fast."""
    over = f"above {the(traced, traced.ground)}, at a closing velocity of"
    return [
        f"It comes within reach of {name} after {since(traced, one)}, {length(max(one.height_m, 0.0), units)} {over} "
        f"{speed(one.closing_m_s, units)}."
        for name, one in traced.reached
    ]


def landing(traced, units, who="It", many=False):
    """Where and when it lands, or why it does not; who: what a sentence calls it; many: that is several things."""
    track = traced.track
    if track.landing is None:
        return _no_landing(traced, who, many, units)
    where_to = there(traced, track.landing, units, stressed=True, none=STRAIGHT_BELOW)
    after = track.landing.time_s - traced.plan.start_s
    if after == 0:
        return f"{who} {'lie' if many else 'lies'} on {the(traced, track.landing.surface)} from the start."
    verb = "land" if many else "lands"
    return f"{who} {_met_before(traced)}{verb} {where_to} after {seconds(after)}{plainly(traced, units)}."


def briefly(traced, units):
    """What comes of a thing that flies or rolls, in a phrase: where it first lands, else how it ends."""
    track, start_s = traced.track, traced.plan.start_s
    if track.landing is not None and track.landing.time_s <= start_s:
        return f"lies on {the(traced, track.landing.surface)} from the start"
    if track.landing is not None:
        where_to = there(traced, track.landing, units, none=STRAIGHT_BELOW)
        return f"lands {where_to} after {since(traced, track.landing)}"
    if track.end == "met a surface":
        last = track.events[-1]
        where_to = there(traced, last, units, none="where it began")
        return f"ends against {the(traced, last.surface)} {where_to} after {since(traced, last)}"
    if traced.plan.surface is None and track.end in ("time limit", "duration"):
        return f"is still in flight after {since(traced, track.last)}, {there(traced, track.last, units)}"
    return ending(traced, units)


def _met_before(traced):
    """What it met on its way to the ground: "meets the ceiling after 0.31 s and "."""
    track = traced.track
    first = next((e for e in track.events if e.surface is not None and e is not track.landing), None)
    if first is None or first.time_s > track.landing.time_s:
        return ""
    return f"meets {the(traced, first.surface)} after {seconds(first.time_s - traced.plan.start_s)} and "


def plainly(traced, units, none=STRAIGHT_BELOW):
    """Where and when it would land under plain gravity, as the end of a sentence; "" where it would not. none: where that is no drift."""
    if traced.plain_way is None:
        return ""
    after = seconds(traced.flat_gravity.landing["time_s"] - traced.plan.start_s)
    return f"; under plain gravity, {off(traced, traced.plain_way, units, none=none)} after {after}"


def _no_landing(traced, who, many, units):
    track = traced.track
    last = track.events[-1]
    after = seconds(last.time_s - traced.plan.start_s)
    if track.end == "met a surface" and last.surface != "edge":
        on = the(traced, last.surface)
        return (
            f"{who} {'meet' if many else 'meets'} {on} {there(traced, last, units, none=STRAIGHT_BELOW)} after {after}."
        )
    if track.end in ("edge", "met a surface"):
        verb = "pass" if many else "passes"
        where_to = there(traced, last, units, stressed=True, none=STRAIGHT_BELOW)
        return f"{who} {verb} the edge {where_to} after {after}; what lies beyond is not followed."
    contact = next((e for e in track.events if e.surface is not None), None)
    if contact is not None and not many:
        return _met_aside(traced, contact, who, units)
    if track.end == "duration":
        where_to = there(traced, track.last, units, stressed=True, none=STRAIGHT_BELOW)
        after = seconds(track.last.time_s - traced.plan.start_s)
        return f"{who} {'are' if many else 'is'} still in flight when the scene ends after {after}, {where_to}."
    ground = the(traced, traced.ground)
    return f"{who} never {'meet' if many else 'meets'} {ground} in {after}."


def _other(traced):
    """What the causes are called that are not told apart: by name where there is one."""
    course = traced.plan.course
    first = course.first if course.opening is None else course.opening.release
    names = [
        name
        for name, is_there in (
            ("buoyancy", traced.plan.body.buoyant),
            ("lift", getattr(first, "lifts", False)),
            ("the changing spin", not traced.ways.habitat.spin.steady),
        )
        if is_there
    ]
    return names[0] if len(names) == 1 else "the rest"


def _met_aside(traced, contact, who, units):
    """What is met that is not the ground, and how it goes on from there."""
    place = there(traced, contact, units, stressed=True, none=STRAIGHT_BELOW)
    met = f"meets {the(traced, contact.surface)} {place} after {since(traced, contact)}"
    return f"{who} {met}{_then(traced, contact, units)}."


def why(traced, units, who=None):
    """One sentence of what the causes of a drift have done, where they can be told apart; else nothing."""
    parts, none = traced.drift
    if none == FAR_ROUND:
        return _FAR_ROUND
    if parts is None or abs(parts["coriolis"]) < STILL_M:
        return ""
    shifts = [("Coriolis", parts["coriolis"]), ("drag", parts["drag"]), (_other(traced), parts["other"])]
    clauses = [f"{cause} shifts that {_shift(by_m, units)}" for cause, by_m in shifts[:1]]
    clauses += [f"{cause} {_shift(by_m, units)}" for cause, by_m in shifts[1:] if abs(by_m) >= STILL_M]
    listed = ", ".join(clauses[:-1]) + (" and " if clauses[:-1] else "") + clauses[-1]
    without = "Coriolis and drag" if parts["drag"] else "Coriolis"
    return f"{_alone(traced, without, parts['centrifugal'], units, who)}; {listed}."


def _alone(traced, without, drift_m, units, who):
    """Where it would land with the first cause alone, spinward or antispinward; where a thing also goes across that, only that is said."""
    stream = traced.plan.stream
    is_many = stream is not None and stream.batch is None and stream.drop_diameter_m is not None
    who = who or ("they" if is_many else "it")
    if abs(traced.way(traced.track.landing).axial_m) < STILL_M:
        return f"Without {without} {who} would land {where(Way(0, drift_m, 0.0), units, stressed=True)}"
    goes = f"go {_shift(drift_m, units)}" if abs(drift_m) >= STILL_M else "not drift"
    return f"Along the {traced.stands_on.name}, without {without} {who} would {goes}"


def _shift(by_m, units):
    return f"{length(abs(by_m), units)} {'spinward' if by_m > 0 else 'antispinward'}"


_GREATEST_MACH = 0.3  # beyond it drag of a sphere rises with the Mach number: common practice, no source
_BUOYANCY_SHARE = 0.01
_DENSER = 0.01  # a share by which air may be denser than stated and none be told
_NB = "\u00a0"
AIR_FOLLOWS = "The air follows the changing spin at once; real air lags behind."
TO_FIRST_CONTACT = (
    "In a craft that tumbles it is followed to what it first meets; what comes after that is not worked out."
)
ONE_DENSITY = "In a craft that tumbles the air has one pressure and one density all through, those that are stated."


def rose(traced, units):
    """What a body does that the air bears up and that meets no ground; nothing where it does not rise."""
    track = traced.track
    last = track.events[-1]
    risen = last.height_m - traced.plan.place[1]
    if not traced.plan.body.buoyant or track.landing is not None or risen < STILL_M:
        return []
    first = next((e for e in track.events if e.surface is not None), None)
    after = seconds(last.time_s - traced.plan.start_s)
    if first is None:
        return [f"It rises {length(risen, units)} in {after} and never meets {the(traced, traced.ground)}."]
    met_after = seconds(first.time_s - traced.plan.start_s)
    above = there(traced, first, units, none="straight above")
    return [f"It rises and meets {the(traced, first.surface)} {above} after {met_after}{_then(traced, first, units)}."]


def _then(traced, first, units):
    """How it goes on along what it has met."""
    track, last = traced.track, traced.track.events[-1]
    if track.end in ("time limit", "duration"):
        return f" and {_still_going(traced, units)}"
    if last is first or track.end not in ("rest", "met a surface"):
        return ""
    if track.end == "rest":
        (way,) = traced.ways.between((first.along_m, first.height_m, first.axial_m), [last])
        further = off(traced, way, units, stressed=True, none="")
        return f" and comes to rest {further} of there" if further else " and comes to rest there"
    after = seconds(last.time_s - traced.plan.start_s)
    return f" and ends against {the(traced, last.surface)} after {after}"


def in_air(traced, setting):
    """What an answer leaves out of a body in air; in vacuum what it leaves out in a craft that tumbles, else none."""
    out = [TO_FIRST_CONTACT] if setting.habitat.spin.tumbles else []
    if setting.air is None or traced.track.path is None:
        return out
    return out + of_air(traced.plan, setting, _fastest_m_s(traced, setting))


def _fastest_m_s(traced, setting):
    """The greatest speed against the air, which turns with the habitat or stands still in the room."""
    samples, events = traced.track.samples, traced.track.events
    moving = np.concatenate([samples.rotating_velocity_m_s, [e.rotating_velocity_m_s for e in events]])
    if setting.habitat.still_air:
        place = np.concatenate([samples.rotating_m, [e.rotating_m for e in events]])
        time_s = np.concatenate([samples.time_s, [e.time_s for e in events]])
        moving = moving + frames.spin_cross(setting.habitat.spin.rate_rad_s(time_s), place)
    return math.sqrt(np.add.reduce(moving * moving, axis=1).max())


def of_air(plan, setting, fastest):
    """The same of what a Plan lets go of, whose greatest speed against the air is `fastest`, m/s."""
    air, body, out = setting.air, plan.body, []
    displaced = air.deck_density_kg_m3 * drop_volume_m3(body.diameter_m) / body.mass_kg
    if body.buoyant:
        out.append("Buoyancy and added mass are those of a sphere in an ideal fluid; history force is left out.")
    elif displaced > _BUOYANCY_SHARE:
        out.append(f"Buoyancy and added mass are left out; the displaced air is {100 * displaced:.2g} % of its mass.")
    out += [ONE_DENSITY] if setting.habitat.spin.tumbles else _of_density(plan, setting)
    if body.drag_area_m2 is not None:
        out += _dragged_along(air, body)
        out.append(
            "Its drag area stands in place of its drag coefficient and is the same whichever way it faces; it does not flutter."
        )
    elif (
        body.drag == "sphere" and air.deck_density_kg_m3 * fastest * body.diameter_m / air.viscosity_pa_s > GREATEST_RE
    ):
        out.append("The drag crisis of a smooth ball is not modelled; drag may be overstated at this speed.")
    if fastest > _GREATEST_MACH * air.sound_m_s:
        out.append(f"It moves at Mach {fastest / air.sound_m_s:.1f}; drag is that of slow flow and is understated.")
    if not setting.habitat.spin.steady:
        out.append(AIR_FOLLOWS)
    return out


def _of_density(plan, setting):
    """That the air at the ground it is over has another pressure than the one that is stated, where it has."""
    habitat, air = setting.habitat, setting.air
    stated_m, here_m = habitat.radius_m, habitat.ground_radius_m(plan.floor)
    omega = setting.omega_rad_s(plan.start_s)
    share = 1.0 if habitat.still_air else math.exp(omega**2 * air.thinning_s2_m2 * (here_m**2 - stated_m**2))
    if abs(share - 1.0) < _DENSER:
        return []
    figures = f"{share * air.pressure_pa / 1e3:.4g}{_NB}kPa, {share * air.deck_density_kg_m3:.3g}{_NB}kg/m³"
    where_stated, here = (f"{m:,.6g}{_NB}m" for m in (stated_m, here_m))
    return [
        f"The air’s pressure is stated at {where_stated} from the axis; it turns with the habitat, and at this floor, {here} out, it has {figures}."
    ]


def _dragged_along(air, body):
    """That the air which a broad, light body drags along is left out. A disc broadside on has 8 a^3/3 of it, a its radius: Lamb,
    Hydrodynamics (1932), section 102 (from memory); of its size is what has the drag area at a plate's coefficient."""
    radius_m = math.sqrt(body.drag_area_m2 / PLATE_CD / math.pi)
    along_kg = 8.0 / 3.0 * air.deck_density_kg_m3 * radius_m**3
    if along_kg <= _BUOYANCY_SHARE * body.mass_kg:
        return []
    along, own = (f"{float(f'{1e3 * kg:.2g}'):,g}{_NB}g" for kg in (along_kg, body.mass_kg))
    grams = f"{along} on its {own}"
    return [
        f"The air that it drags along, about {grams}, is left out: it gathers and loses speed more slowly than here."
    ]
