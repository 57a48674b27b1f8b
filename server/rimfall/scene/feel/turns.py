"""Two moments of a day aboard in which the turning itself is felt: turning the head, and riding the lift."""

import math

from ...comfort.limits import same
from ...comfort.published import ROWS
from .day import SLIGHT_DEG
from .saying import turning

_MOVES = {"yaw": "looking over a shoulder", "pitch": "nodding", "roll": "tilting it to a shoulder"}
_FELT = {"yaw": "a turn to the side", "pitch": "a nod", "roll": "a tilt to the side"}
_THRESHOLDS = {row.id: row for row in ROWS}
_ILLUSION, _NAUSEA = (_THRESHOLDS[f"clark_hardy_1960.head_turn.at_most.{of}"] for of in ("illusion", "nausea"))


def head(day):
    """Turning the head quickly."""
    rate = day.person.head_turn_deg_s
    if day.still:
        return [
            f"The {'turntable' if day.table else 'habitat'} does not turn, and a turn of the head is felt as what it is.",
            "Looking over a shoulder, nodding or tilting the head: none of them brings another along.",
            "No turn crosses another, however quick it is.",
        ]
    if not any(turn.felt_as for turn in day.turns):
        return [
            "You hold your head still, and as long as you do the spin brings nothing along.",
            "It is the turn of the head across the spin that the inner ear takes for a third one.",
            "The faster the turn, the more of it.",
        ]
    spinward, other = day.turns[:3], day.turns[3:]
    return [
        *_faced(day, spinward, rate),
        _faced_the_other_way(other),
        _against_thresholds(day),
        "Turn half as fast and it is half as much.",
    ]


def _faced(day, turns, rate):
    first, second, free = *(t for t in turns if t.felt_as), next(t for t in turns if not t.felt_as)
    return [
        f"You face {turns[0].facing} and turn your head at {day.say.turns_at(rate)}: {_MOVES[first.turn]} feels like "
        f"{_FELT[first.felt_as]} as well, one that sets in at {day.say.turning(first.deg_s2)}.",
        f"{_MOVES[second.turn].capitalize()} feels like {_FELT[second.felt_as]} just as strong; {_MOVES[free.turn]} adds nothing, "
        "for its axis is that of the spin.",
    ]


def _faced_the_other_way(turns):
    first, second, free = *(t for t in turns if t.felt_as), next(t for t in turns if not t.felt_as)
    faces = "outward" if turns[0].facing == "outward" else "along the axis"
    said = (
        f"{_MOVES[first.turn]} feels like {_FELT[first.felt_as]} and {_MOVES[second.turn]} like {_FELT[second.felt_as]}"
    )
    return f"Face {faces}, and {_MOVES[free.turn]} is free of it, while {said}."


def _against_thresholds(day):
    worst, first, second = day.v["head_worst_deg_s2"], math.degrees(_ILLUSION.limit), math.degrees(_NAUSEA.limit)
    said = f"Clark & Hardy (1960) put the first illusions at {day.say.turning(first)} and nausea at {day.say.turning(second)}"
    return f"{said}; this lies {_beside(worst, first, second)}."


def _beside(worst, first, second):
    """Where a figure lies to two; where it reads as one of them, on which side of it."""
    for limit, name in ((first, "first"), (second, "second")):
        if same(worst, limit):
            return f"at the {name}"
        if turning(worst) == turning(limit):
            return f"just {'below' if worst < limit else 'above'} the {name}"
    return "below both" if worst < first else "between the two" if worst < second else "beyond both"


def lift(day):
    """Riding the lift."""
    pace = day.say.speed(day.person.lift_m_s)
    if day.table:
        return _on_a_turntable(day, pace)
    if day.person.lift_m_s == 0:
        return [
            "The lift stands still, and being in it is no different from being outside.",
            "Nothing pushes you to a side as long as it does.",
            "It is its speed that the spin turns into a push.",
        ]
    if day.still:
        return _still_lift(day, pace)
    return [*_ridden(day, pace), _down(day), _at_the_axis(day), *_ladder(day)]


def _on_a_turntable(day, pace):
    rises = f"A lift that rises from the turntable at {pace} goes"
    goes = rises if day.person.lift_m_s else "The lift stands still; rising it would go"
    return [
        f"{goes} along the axis of the turn, and {_adds(day)}.",
        _felt_on_a_turntable(day),
        "It is the same all the way up, and on the way down.",
    ]


def _adds(day):
    return "its speed adds nothing to what you feel" if day.flung else "nothing pushes you to a side"


def _felt_on_a_turntable(day):
    if day.flung:
        return f"Nothing holds you to its floor: the turn presses you to its outer wall with {day.say.weight(day.v['feet_g'])}."
    if day.weightless:
        return "Nothing holds you to its floor, either."
    if day.still:
        return "The turntable does not turn, and down is under your feet."
    return f"Only the turn is felt: {_outward(day)}."


def _outward(day):
    lean = day.v["floor_lean_deg"]
    return (
        "down leans outward by less than a degree"
        if lean is None or lean < SLIGHT_DEG
        else f"down leans outward by {day.say.angle(lean)}"
    )


def _still_lift(day, pace):
    holds = "nothing holds you to its floor" if day.weightless else f"the thrust draws you {day.aft}, against its side"
    return [
        f"The lift goes toward the axis at {pace}, and while it keeps that speed {holds}.",
        "With nothing turning, no push comes from its speed, up or down.",
        "Only where it speeds up and slows down do you feel it go.",
    ]


def _ridden(day, pace):
    v, size = day.v, abs(day.v["lift_push_g"])
    goes = f"The lift climbs toward the axis at {pace}, and all the way"
    if not day.weightless and day.slight(size):
        first = f"{goes} the push spinward is {day.say.push(size)}, too small to notice."
    else:
        share = (
            "" if day.weightless else f", {day.say.beside_weight(size / v['feet_g'])} your weight on the {day.ground}"
        )
        first = f"{goes} {day.say.push(size)} {day.say.press} you to its spinward wall{share}{_sideways(day)}."
    if v["lift_lean_deg"] is None or day.weightless:
        return [first]
    return [
        first,
        f"Where you got in, down leans{_that_way(day)} by {day.say.angle(v['lift_lean_deg'])}; half way to the axis you would weigh "
        f"{day.say.weight(v['lift_halfway_g'])} in a lift that stands, and in this one down leans by {day.say.angle(v['lift_halfway_lean_deg'])}.",
    ]


def _down(day):
    leans = "" if day.thrust_m_s2 or day.weightless else ", and down leans that way"
    return f"On the way down the same push is antispinward{leans}."


def _that_way(day):
    """The way of a lean that is the push's alone."""
    return "" if day.thrust_m_s2 else " spinward"


def _sideways(day):
    if day.weightless or day.v["lift_push_g"] <= day.v["feet_g"]:
        return ""
    return ", so that the wall is more of a floor than the floor"


def _at_the_axis(day):
    if day.thrust_m_s2:
        return (
            f"At the axis nothing of the spin's weight is left: only the push, and the thrust, which draws {day.aft}."
        )
    return "At the axis nothing weighs you down any more, and only the push is left."


def _ladder(day):
    size = day.v["ladder_push_g"]
    if day.weightless or day.slight(size):
        return []
    pace = day.say.speed(day.person.climb_m_s)
    return [
        f"A ladder at {pace} does the same with {day.say.push(size)}, and down leans{_that_way(day)} by {day.say.angle(day.v['ladder_lean_deg'])} at "
        "its foot."
    ]
