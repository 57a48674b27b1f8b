"""What people would feel, in words: two sentences to begin with, five paragraphs of a day, and what the figures leave out."""

from ...comfort.in_hand import POURED_FROM_M
from ...comfort.on_foot import STAIRS_DEG
from ...comfort.stance import HAND, HEART, SEAT, SITTING
from ...phrases import length, speed
from ..tumbling import tumbler
from .day import SLIGHT_DEG, day_of
from .saying import Rounded, angle, number, weight
from .tales import TALES

_BEFORE_IT_TUMBLES = "The spin is that before the craft is let go; what is felt while it tumbles is left out here, and told with its tumble."


def lead(scene, figures, units):
    """Two sentences: weight at rest from feet to head, and running both ways; of the start, where the spin changes or the craft tumbles."""
    said = _lead(day_of(scene, figures, units))
    when = _when(scene)
    return f"{when}, {said[0].lower()}{said[1:]}" if when else said


def _when(scene):
    if tumbler(scene) is not None:
        return "Before the craft is let go"
    return "At the start" if len(scene.habitat.spin_ramp) else ""


def _lead(day):
    if day.flung:
        return (
            f"Nothing holds you to the turntable: it flings you outward with {weight(day.v['feet_g'])}. You stay on it only by what you "
            "hold on to."
        )
    if day.weightless:
        turns = "does not turn" if day.still else f"turns at {number(day.v['spin_rpm'])} rpm"
        weighs = "you weigh nothing" if day.v["feet_g"] == 0 else f"your feet feel {weight(day.v['feet_g'])}"
        return f"The {_what(day)} {turns}, and {weighs}. Whatever moves goes straight on until something is in its way."
    if day.wall:
        return (
            f"The habitat does not turn, and only the thrust weighs you, {weight(day.v['feet_g'])}, {day.aft}. The deck is a wall to "
            "it, and whatever faces the thrust is the floor."
        )
    return f"{_standing(day)} {_running(day)}"


def _what(day):
    return "turntable" if day.table else "habitat"


def _standing(day):
    feet, head = day.v["feet_g"], day.v["head_g"]
    out = f"Standing, you weigh {weight(feet)} at the feet"
    if day.past_the_axis(day.person.height_m):
        out += f" and {number(head)} at the head, which is {'at' if head == 0 else 'past'} the axis"
        out += "" if head == 0 else " and drawn the other way"
    else:
        out += f" and {'the same' if number(head) == number(feet) else number(head)} at the head"
    lean = day.v["floor_lean_deg"]
    return (
        f"{out}."
        if lean is None or lean < SLIGHT_DEG
        else f"{out}, and down leans by {angle(lean)} from the {day.ground}{_hides(day)}."
    )


def _hides(day):
    return ": the thrust all but hides the spin" if day.hidden else ""


def _running(day):
    back = day.v["run_antispinward_g"]
    if day.person.run_m_s == 0:
        return "You do not run, and so it stays."
    runs = f"Run spinward at {speed(day.person.run_m_s, day.units)} and it is {number(day.v['run_spinward_g'])};"
    if back is None:
        return f"{runs} run back, and your feet leave the {day.ground}."
    if day.floating(day.person.run_m_s) == "at":
        return f"{runs} run back, and you float."
    if day.only_thrust(back):
        return f"{runs} run back, and nothing presses your feet on: only the thrust is left, {number(back)}."
    if day.floating(day.person.run_m_s) == "past":
        floats = speed(day.v["float_speed_m_s"], day.units)
        return f"{runs} run back, past the {floats} at which you float, and you weigh {number(back)}."
    return f"{runs} run back, {number(back)}."


def paragraphs(scene, figures, units):
    """The five moments of a day, as {"name", "title", "text", "prose"}: exactly, and rounded as prose is."""
    day, rounded = day_of(scene, figures, units), day_of(scene, figures, units, Rounded)
    return [
        {"name": name, "title": title, "text": " ".join(tell(day)), "prose": " ".join(tell(rounded))}
        for name, (title, tell) in TALES.items()
    ]


def beside_the_map(scene, figures, units):
    """Why the map may show another side of a line than the figures say, where it may; else nothing."""
    return _beside_the_map(day_of(scene, figures, units))


def _beside_the_map(day):
    if not day.table and not day.thrust_m_s2:
        return ""
    pull = "the room's gravity" if day.table else "the thrust"
    return f"What is felt, and compared with limits, includes {pull}; the map's lines are for a habitat without it."


def assumptions(scene, figures, units="si"):
    """What the figures take for granted and leave out, in sentences."""
    day = day_of(scene, figures, units)
    out = [f"A person stands {day.words.stands}, at right angles to it."]
    if len(scene.habitat.spin_ramp):
        out.append("The spin is that of the start; what is felt while it changes is left out.")
    if tumbler(scene) is not None:
        out.append(_BEFORE_IT_TUMBLES)
    out += [note] if (note := _beside_the_map(day)) else []
    if day.thrust_m_s2 and day.v["gradient_percent"]:
        out.append("The change from feet to head counts its direction too; weight alone changes by less.")
    out += [
        f"As fractions of height: the heart at {HEART:g}, a seat at {SEAT:g}, the head {SITTING:g} above the seat, a hand with a cup at {HAND:g}.",
        f"Paces are even; stairs rise at {STAIRS_DEG:g}°; standing up and setting off take a second each.",
        f"Things fall as in vacuum; a stream falls {length(POURED_FROM_M, units)} into the glass; nothing slops.",
        "The lift and the ladder are felt at the feet, at their full speed.",
        "Walls, ceilings and hubs are ignored.",
    ]
    if day.habitat.section_radius_m is not None:
        out.append("A way along the axis is taken as straight, though the deck bends there as well.")
    if day.past_the_axis(day.person.height_m):
        fits = day.person.height_m < 2 * day.radius_m
        tall = "as tall as the radius or taller" if fits else "taller than the habitat is across, and has no room in it"
        out.append(f"The person is {tall}; figures beyond the axis are given as sizes.")
    return out
