"""What people would feel, in words: two sentences to begin with, five paragraphs of a day, and what the figures leave out."""

from ...comfort.in_hand import POURED_FROM_M
from ...comfort.on_foot import STAIRS_DEG
from ...comfort.stance import HAND, HEART, SEAT, SITTING
from ...language import tr, tr_later, written
from ...phrases import length, speed
from ..tumbling import tumbler
from .day import SLIGHT_DEG, day_of
from .saying import Rounded, angle, number, weight
from .tales import TALES


def lead(scene, figures, units):
    """Two sentences: weight at rest from feet to head, and running both ways; of the start, where the spin changes or the craft tumbles."""
    said = _lead(day_of(scene, figures, units))
    if tumbler(scene) is not None:
        return _within(tr_later("Before the craft is let go, {said}"), said)
    return _within(tr_later("At the start, {said}"), said) if len(scene.habitat.spin_ramp) else said


def _within(words, said):
    """Sentences within others: they begin small, unless the words before them end in a colon, after which a language begins large."""
    large = tr(words, said="").rstrip().endswith(":")
    return tr(words, said=said if large else said[0].lower() + said[1:])


def _lead(day):
    if day.flung:
        return tr(
            "Nothing holds you to the turntable: it flings you outward with {weight}. You stay on it only by what you hold on to.",
            weight=weight(day.v["feet_g"]),
        )
    if day.weightless:
        return tr(
            "{turns}, and {weighs}. Whatever moves goes straight on until something is in its way.",
            turns=_turns(day),
            weighs=tr("you weigh nothing")
            if day.v["feet_g"] == 0
            else tr("your feet feel {weight}", weight=weight(day.v["feet_g"])),
        )
    if day.wall:
        return tr(
            "The habitat does not turn, and only the thrust weighs you, {weight}, {way}. The deck is a wall to it, and whatever faces the "
            "thrust is the floor.",
            weight=weight(day.v["feet_g"]),
            way=day.aft,
        )
    return f"{_standing(day)} {_running(day)}"


def _turns(day):
    if day.still:
        return tr("The turntable does not turn") if day.table else tr("The habitat does not turn")
    rate = number(day.v["spin_rpm"])
    if day.table:
        return tr("The turntable turns at {rate} rpm", rate=rate)
    return tr("The habitat turns at {rate} rpm", rate=rate)


def _standing(day):
    lean = day.v["floor_lean_deg"]
    if lean is None or lean < SLIGHT_DEG:
        return f"{_feet_to_head(day)}."
    places = {"standing": _feet_to_head(day), "angle": angle(lean), "ground": day.stood_on}
    if day.hidden:
        return tr(
            "{standing}, and down leans by {angle} from the {ground}: the thrust all but hides the spin.", **places
        )
    return tr("{standing}, and down leans by {angle} from the {ground}.", **places)


def _feet_to_head(day):
    feet, head = day.v["feet_g"], day.v["head_g"]
    places = {"feet": weight(feet), "head": number(head)}
    if day.past_the_axis(day.person.height_m):
        if head == 0:
            return tr("Standing, you weigh {feet} at the feet and {head} at the head, which is at the axis", **places)
        return tr(
            "Standing, you weigh {feet} at the feet and {head} at the head, which is past the axis and drawn the other way",
            **places,
        )
    if number(head) == number(feet):
        return tr("Standing, you weigh {feet} at the feet and the same at the head", feet=weight(feet))
    return tr("Standing, you weigh {feet} at the feet and {head} at the head", **places)


def _running(day):
    back = day.v["run_antispinward_g"]
    if day.person.run_m_s == 0:
        return tr("You do not run, and so it stays.")
    runs = tr(
        "Run spinward at {speed} and it is {weight};",
        speed=speed(day.person.run_m_s, day.units),
        weight=number(day.v["run_spinward_g"]),
    )
    return f"{runs} {_running_back(day, back)}"


def _running_back(day, back):
    if back is None:
        return tr("run back, and your feet leave the {ground}.", ground=day.stood_on)
    if day.floating(day.person.run_m_s) == "at":
        return tr("run back, and you float.")
    if day.only_thrust(back):
        return tr("run back, and nothing presses your feet on: only the thrust is left, {weight}.", weight=number(back))
    if day.floating(day.person.run_m_s) == "past":
        return tr(
            "run back, past the {speed} at which you float, and you weigh {weight}.",
            speed=speed(day.v["float_speed_m_s"], day.units),
            weight=number(back),
        )
    return tr("run back, {weight}.", weight=number(back))


def paragraphs(scene, figures, units):
    """The five moments of a day, as {"name", "title", "text", "prose"}: exactly, and rounded as prose is."""
    day, rounded = day_of(scene, figures, units), day_of(scene, figures, units, Rounded)
    return [
        {"name": name, "title": tr(title), "text": " ".join(tell(day)), "prose": " ".join(tell(rounded))}
        for name, (title, tell) in TALES.items()
    ]


def beside_the_map(scene, figures, units):
    """Why the map may show another side of a line than the figures say, where it may; else nothing."""
    return _beside_the_map(day_of(scene, figures, units))


def _beside_the_map(day):
    if not day.table and not day.thrust_m_s2:
        return ""
    if day.table:
        return tr(
            "What is felt, and compared with limits, includes the room's gravity; the map's lines are for a habitat without it."
        )
    return tr(
        "What is felt, and compared with limits, includes the thrust; the map's lines are for a habitat without it."
    )


def assumptions(scene, figures, units="si"):
    """What the figures take for granted and leave out, in sentences."""
    day = day_of(scene, figures, units)
    out = [tr("A person stands {where}, at right angles to it.", where=tr(day.words.stands))]
    if len(scene.habitat.spin_ramp):
        out.append(tr("The spin is that of the start; what is felt while it changes is left out."))
    if tumbler(scene) is not None:
        out.append(
            tr(
                "The spin is that before the craft is let go; what is felt while it tumbles is left out here, and told with its tumble."
            )
        )
    out += [note] if (note := _beside_the_map(day)) else []
    if day.thrust_m_s2 and day.v["gradient_percent"]:
        out.append(tr("The change from feet to head counts its direction too; weight alone changes by less."))
    out += [
        tr(
            "As fractions of height: the heart at {heart}, a seat at {seat}, the head {sitting} above the seat, a hand with a cup at {hand}.",
            heart=written(HEART, "g"),
            seat=written(SEAT, "g"),
            sitting=written(SITTING, "g"),
            hand=written(HAND, "g"),
        ),
        tr(
            "Paces are even; stairs rise at {angle}; standing up and setting off take a second each.",
            angle=f"{written(STAIRS_DEG, 'g')}°",
        ),
        tr(
            "Things fall as in vacuum; a stream falls {height} into the glass; nothing slops.",
            height=length(POURED_FROM_M, units),
        ),
        tr("The lift and the ladder are felt at the feet, at their full speed."),
        tr("Walls, ceilings and hubs are ignored."),
    ]
    if day.habitat.section_radius_m is not None:
        out.append(tr("A way along the axis is taken as straight, though the deck bends there as well."))
    if day.past_the_axis(day.person.height_m):
        fits = tr("The person is as tall as the radius or taller; figures beyond the axis are given as sizes.")
        none = tr(
            "The person is taller than the habitat is across, and has no room in it; figures beyond the axis are given as sizes."
        )
        out.append(fits if day.person.height_m < 2 * day.radius_m else none)
    return out
