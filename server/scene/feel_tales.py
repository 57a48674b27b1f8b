"""Five moments of a day aboard, a paragraph each, as an author could use them. Which words are said follows the figures.

Standing up and walking are here.
"""

import math

from ..feel.stand import SEAT, SITTING
from .feel_day import SLIGHT, SLIGHT_DEG, angle, number, percent, push, weight
from .feel_drink import drink
from .feel_turns import head, lift
from .phrases import length, speed

_STRONG = 0.15  # of one's weight: leaned against; our own choice
_ALONG_DEG = 45.0
_SLIGHT_PERCENT = 1.0  # from feet to head: too small to notice; our own choice


def standing_up(day):
    """Rising from a seat."""
    rise_m = (1.0 - SEAT - SITTING) * day.person.height_m
    if day.weightless:
        return [_no_weight(day), *_floats_up(day)]
    if day.wall:
        return _at_the_wall(day)
    if day.flung:
        return _flung(day)
    rises = f"You rise from a seat within a second, and your head goes up by {length(rise_m, day.units)}"
    if day.table:
        return [f"{rises}, along the axis of the turn: nothing pushes it sideways.", *_on_the_platform(day)]
    way = "past the axis" if day.past_the_axis(day.person.height_m) else "toward the axis"
    return [f"{rises}, {way}.", _risen(day), _head_to_foot(day), _thrust(day) or _lying(day)]


def _no_weight(day):
    if day.still:
        return f"Nothing weighs you down here: the {'platform' if day.table else 'habitat'} does not turn, and nothing else pulls."
    return f"At {number(day.v['spin_rpm'])} rpm the turn gives your feet {weight(day.v['feet_g'])}: too little to stand by."


def _floats_up(day):
    return [
        "You push off from the seat, and what was meant to be standing up becomes a slow flight across the room.",
        "It ends where something is in the way; a strap or a rail does what weight would do.",
    ]


def _at_the_wall(day):
    return [
        f"Only the thrust weighs you, {weight(day.v['feet_g'])}, and it draws {day.aft}: the deck beside you is a wall.",
        "You stand on whatever faces the thrust, and rise from a seat as you would on ordinary ground.",
        f"From feet to head the weight is the same, {number(day.v['head_g'])}.",
    ]


def _flung(day):
    return [
        f"Nothing holds your feet to the platform: as you let go of the seat it flings you outward with {weight(day.v['feet_g'])}.",
        "There is no standing up, only holding on.",
        "What would be a floor to you is a wall at the rim, if there were one.",
    ]


def _on_the_platform(day):
    lean = day.v["floor_lean_deg"]
    leans = (
        f"At the rim down leans outward by {angle(lean)}, and you stand leaning inward by as much."
        if lean >= SLIGHT_DEG
        else "Down leans outward by less than a degree, too little to notice."
    )
    return [leans, f"You weigh {weight(day.v['feet_g'])}, and the same at the head."]


def _risen(day):
    share = day.v["rise_push_g"] / day.v["feet_g"]
    if share < SLIGHT:
        return f"On the way a push spinward comes to {push(day.v['rise_push_g'])}, too small to notice."
    said = f"On the way it is pushed spinward by {push(day.v['rise_push_g'])} on average, {percent(share)} of what you weigh at the feet"
    return f"{said}, and you lean antispinward against it." if share >= _STRONG else f"{said}."


def _head_to_foot(day):
    feet, seated, head = (number(day.v[name]) for name in ("feet_g", "seated_head_g", "head_g"))
    change = day.v["gradient_percent"]
    if day.past_the_axis(day.person.height_m):
        return (
            f"Your head reaches {'the axis' if day.v['head_g'] == 0 else 'past the axis'}: while your feet feel {feet} of what they "
            f"weigh on Earth, it feels {head}, {'nothing at all' if day.v['head_g'] == 0 else 'the other way'}."
        )
    from_to = "" if head == feet else f", from {feet} to {head}"
    if change < _SLIGHT_PERCENT:
        return f"From feet to head what you weigh changes by {percent(change / 100)}{from_to}: too little to notice."
    if head == seated:
        return f"From feet to head what you weigh changes by {percent(change / 100)}{from_to}."
    return (
        f"Seated, your head felt {seated} of what it weighs on Earth; upright it feels {head} and your feet {feet}, a change of "
        f"{percent(change / 100)} from feet to head."
    )


def _thrust(day):
    lean = day.v["floor_lean_deg"]
    if lean is None:
        return None
    if lean > _ALONG_DEG:
        return f"The ship's thrust tips down by {angle(lean)}, {day.aft}: it draws more along the deck than onto it."
    if lean < SLIGHT_DEG:
        return f"The ship's thrust tips down by {angle(lean)}, {day.aft}: too little to notice."
    return f"The ship's thrust tips down by {angle(lean)}, {day.aft}, and you stand leaning against it."


def _lying(day):
    across, lean = day.v["lying_across_g"], day.v["lying_across_lean_deg"]
    along = f"Lying along the axis you weigh {number(day.v['lying_along_g'])} from head to foot"
    if across is None:
        return f"{along}; straight across it there is no room for you to lie."
    if lean < SLIGHT_DEG:
        return f"{along}, and across it the same: there down leans by {angle(lean)} at either end of the bed."
    return f"{along}; across it down leans by {angle(lean)} at head and feet, as if the bed were arched."


def breakfast(day):
    """Walking to breakfast against the spin."""
    if day.weightless:
        return [*_no_steps(day), *_run_round(day)]
    if day.flung:
        return [
            "There is no walking on a platform that nothing holds you to.",
            f"You go to breakfast by a rail, and it must bear {weight(day.v['feet_g'])}.",
            "Let go, and you leave over the rim, straight on.",
        ]
    if day.wall:
        return [
            "There is no walking along a deck that is a wall: you cross the room on whatever faces the thrust.",
            f"There you weigh {weight(day.v['feet_g'])}, whichever way you go and however fast.",
            "With nothing turning there is no way with the spin or against it.",
        ]
    return [*_walks(day), _runs(day), *_afterwards(day)]


def _no_steps(day):
    return [
        f"No step holds: the first one sends you off the {day.ground}, and you do not come back to it of yourself.",
        f"You go to breakfast along a rail, hand over hand, {_pace(day)} if you are quick.",
    ]


def _pace(day):
    return f"at {speed(day.person.walk_m_s, day.units)}"


def _run_round(day):
    pressed = day.v["run_spinward_g"]
    if day.table or day.flat or day.v["floor_lean_deg"] is not None or pressed is None or pressed < 0.001:
        return ["Whichever way you go, it is the same."]
    way = "either way round the deck" if day.still else "round the deck spinward"
    if (day.v["walk_spinward_g"] or 0.0) >= SLIGHT:
        return [
            f"Going {way} helps: its bend presses your feet on with {weight(day.v['walk_spinward_g'])} at a walk, and at a run, "
            f"{speed(day.person.run_m_s, day.units)}, with {weight(pressed)}."
        ]
    return [
        f"Only running helps: {way} at {speed(day.person.run_m_s, day.units)}, its bend presses your feet on with {weight(pressed)}."
    ]


def _walks(day):
    v, still = day.v, day.v["feet_g"]
    back, spinward = v["walk_antispinward_g"], v["walk_spinward_g"]
    if back is None:
        return [
            f"You cannot walk against the spin at {speed(day.person.walk_m_s, day.units)}: from "
            f"{_floating(day)} on nothing holds you to the floor, and your step carries you off it.",
            f"With the spin the same pace weighs {weight(spinward)}, where standing was {number(still)}.",
        ]
    if day.person.walk_m_s == 0:
        return [f"You stay where you are, and weigh {weight(still)}.", "It takes a pace for the spin to change that."]
    walks = f"You walk antispinward {_pace(day)} and weigh {weight(back)}"
    if abs(back / still - 1) < SLIGHT and abs(spinward / still - 1) < SLIGHT:
        return [
            f"{walks}, so nearly what you weigh standing, {number(still)}, that you do not notice.",
            f"With the spin it is {number(spinward)}.",
        ]
    floats = v["float_speed_m_s"]
    if day.floating(day.person.walk_m_s) == "at":
        walks = f"You walk antispinward {_pace(day)}, as fast as it takes for nothing to hold you down, and float"
    elif not day.flat and day.floating(day.person.walk_m_s) == "past":
        walks = (
            f"You walk antispinward {_pace(day)}, faster than the deck turns, {speed(floats, day.units)}, and so go round the "
            f"axis the other way, and weigh {weight(back)}"
        )
    return [f"{walks}; standing it was {number(still)}.", f"Back with the spin it is {number(spinward)}."]


def _floating(day):
    found = day.v["float_speed_m_s"]
    return "a slower pace" if found is None else speed(found, day.units)


def _runs(day):
    back, floats, pace = day.v["run_antispinward_g"], day.v["float_speed_m_s"], day.person.run_m_s
    runs = speed(pace, day.units)
    if pace == 0:
        return "You do not run."
    if day.floating(pace) == "at":
        return f"Run against the spin, {runs}, and you go as fast as it takes for nothing to hold you down: you float."
    if back is None:
        return (
            f"Run against the spin, {runs}, and you leave the floor: from {_floating(day)} on nothing holds you down."
        )
    if not day.table and not day.presses(back):
        return (
            f"Run against the spin, {runs}, and nothing presses your feet on: only the thrust is left, {number(back)}."
        )
    if day.floating(pace) == "past":
        return (
            f"A run against the spin, {runs}, passes {speed(floats, day.units)}, at which you float; beyond it weight comes back, "
            f"{number(back)} at that pace."
        )
    return f"Run against the spin, {runs}, and it is {number(back)}; run with it, {number(day.v['run_spinward_g'])}."


def _afterwards(day):
    floats, out = day.v["float_speed_m_s"], []
    if floats is not None and not any(map(day.floating, (day.person.run_m_s, day.person.walk_m_s))):
        out.append(f"At {speed(floats, day.units)} antispinward your feet would leave the {day.ground}.")
    if day.table and day.v["floor_lean_deg"] < SLIGHT_DEG:
        out.append("Down is under your feet all the way.")
    elif day.table:
        out.append(f"Down leans outward all the way, by {angle(day.v['floor_lean_deg'])} when you stand still.")
    elif day.flat:
        out.append(_toward_the_ends(day))
    elif day.v["floor_lean_deg"] is None:
        out.append("The deck rises ahead of you and behind, yet at a steady pace down is always under your feet.")
    else:
        out.append(_thrust(day))
    return out


def _toward_the_ends(day):
    lean = angle(_lean_at_the_end(day))
    return f"The floor is flat and the axis stays over its middle: toward either end down leans outward, by {lean} at the end itself."


def _lean_at_the_end(day):
    return math.degrees(math.atan2(day.floor_length_m / 2, day.radius_m))


TALES = {
    "standing_up": ("Standing up", standing_up),
    "breakfast": ("Walking to breakfast against the spin", breakfast),
    "drink": ("Pouring a drink", drink),
    "head": ("Turning the head quickly", head),
    "lift": ("Riding the lift", lift),
}  # name -> its title and its sentences, in the order of the day
