"""Two moments of a day aboard in which the turning itself is felt: turning the head, and riding the lift."""

import math

from ...comfort.limits import same
from ...comfort.published import ROWS
from ...language import tr, tr_later
from .day import SLIGHT_DEG
from .saying import turning, weight_on_the

_MOVES = {
    "yaw": tr_later("looking over a shoulder"),
    "pitch": tr_later("nodding"),
    "roll": tr_later("tilting it to a shoulder"),
}
_FELT = {"yaw": tr_later("a turn to the side"), "pitch": tr_later("a nod"), "roll": tr_later("a tilt to the side")}
_THRESHOLDS = {row.id: row for row in ROWS}
_ILLUSION, _NAUSEA = (_THRESHOLDS[f"clark_hardy_1960.head_turn.at_most.{of}"] for of in ("illusion", "nausea"))


def head(day):
    """Turning the head quickly."""
    if day.still:
        return [
            tr("The turntable does not turn, and a turn of the head is felt as what it is.")
            if day.table
            else tr("The habitat does not turn, and a turn of the head is felt as what it is."),
            tr("Looking over a shoulder, nodding or tilting the head: none of them brings another along."),
            tr("No turn crosses another, however quick it is."),
        ]
    if not any(turn.felt_as for turn in day.turns):
        return [
            tr("You hold your head still, and as long as you do the spin brings nothing along."),
            tr("It is the turn of the head across the spin that the inner ear takes for a third one."),
            tr("The faster the turn, the more of it."),
        ]
    spinward, other = day.turns[:3], day.turns[3:]
    return [
        *_faced(day, spinward, day.person.head_turn_deg_s),
        _faced_the_other_way(other),
        _against_thresholds(day),
        tr("Turn half as fast and it is half as much."),
    ]


def _faced(day, turns, rate):
    first, second, free = *(t for t in turns if t.felt_as), next(t for t in turns if not t.felt_as)
    return [
        tr(
            "You face spinward and turn your head at {rate}: {move} feels like {felt} as well, one that sets in at {acceleration}.",
            rate=day.say.turns_at(rate),
            move=tr(_MOVES[first.turn]),
            felt=tr(_FELT[first.felt_as]),
            acceleration=day.say.turning(first.deg_s2),
        ),
        tr(
            "{move} feels like {felt} just as strong; {free} adds nothing, for its axis is that of the spin.",
            move=_first_letter_large(tr(_MOVES[second.turn])),
            felt=tr(_FELT[second.felt_as]),
            free=tr(_MOVES[free.turn]),
        ),
    ]


def _first_letter_large(text):
    return text[:1].upper() + text[1:]


def _faced_the_other_way(turns):
    first, second, free = *(t for t in turns if t.felt_as), next(t for t in turns if not t.felt_as)
    said = tr(
        "{move} feels like {felt} and {other} like {felt_too}",
        move=tr(_MOVES[first.turn]),
        felt=tr(_FELT[first.felt_as]),
        other=tr(_MOVES[second.turn]),
        felt_too=tr(_FELT[second.felt_as]),
    )
    if turns[0].facing == "outward":
        return tr("Face outward, and {free} is free of it, while {others}.", free=tr(_MOVES[free.turn]), others=said)
    return tr("Face along the axis, and {free} is free of it, while {others}.", free=tr(_MOVES[free.turn]), others=said)


def _against_thresholds(day):
    worst, first, second = day.v["head_worst_deg_s2"], math.degrees(_ILLUSION.limit), math.degrees(_NAUSEA.limit)
    return tr(
        "Clark & Hardy (1960) put the first illusions at {illusions} and nausea at {nausea}; this lies {where}.",
        illusions=day.say.turning(first),
        nausea=day.say.turning(second),
        where=_beside(worst, first, second),
    )


def _beside(worst, first, second):
    """Where a figure lies to two; where it reads as one of them, on which side of it."""
    if same(worst, first):
        return tr("at the first")
    if turning(worst) == turning(first):
        return tr("just below the first") if worst < first else tr("just above the first")
    if same(worst, second):
        return tr("at the second")
    if turning(worst) == turning(second):
        return tr("just below the second") if worst < second else tr("just above the second")
    return tr("below both") if worst < first else tr("between the two") if worst < second else tr("beyond both")


def lift(day):
    """Riding the lift."""
    pace = day.say.speed(day.person.lift_m_s)
    if day.table:
        return _on_a_turntable(day, pace)
    if day.person.lift_m_s == 0:
        return [
            tr("The lift stands still, and being in it is no different from being outside."),
            tr("Nothing pushes you to a side as long as it does."),
            tr("It is its speed that the spin turns into a push."),
        ]
    if day.still:
        return _still_lift(day, pace)
    return [*_ridden(day, pace), _down(day), _at_the_axis(day), *_ladder(day)]


def _on_a_turntable(day, pace):
    if day.person.lift_m_s:
        goes = tr(
            "A lift that rises from the turntable at {speed} goes along the axis of the turn, and {adds}.",
            speed=pace,
            adds=_adds(day),
        )
    else:
        goes = tr("The lift stands still; rising it would go along the axis of the turn, and {adds}.", adds=_adds(day))
    return [goes, _felt_on_a_turntable(day), tr("It is the same all the way up, and on the way down.")]


def _adds(day):
    return tr("its speed adds nothing to what you feel") if day.flung else tr("nothing pushes you to a side")


def _felt_on_a_turntable(day):
    if day.flung:
        return tr(
            "Nothing holds you to its floor: the turn presses you to its outer wall with {weight}.",
            weight=day.say.weight(day.v["feet_g"]),
        )
    if day.weightless:
        return tr("Nothing holds you to its floor, either.")
    if day.still:
        return tr("The turntable does not turn, and down is under your feet.")
    lean = day.v["floor_lean_deg"]
    if lean is None or lean < SLIGHT_DEG:
        return tr("Only the turn is felt: down leans outward by less than a degree.")
    return tr("Only the turn is felt: down leans outward by {angle}.", angle=day.say.angle(lean))


def _still_lift(day, pace):
    if day.weightless:
        goes = tr(
            "The lift goes toward the axis at {speed}, and while it keeps that speed nothing holds you to its floor.",
            speed=pace,
        )
    else:
        goes = tr(
            "The lift goes toward the axis at {speed}, and while it keeps that speed the thrust draws you {way}, against its side.",
            speed=pace,
            way=day.aft,
        )
    return [
        goes,
        tr("With nothing turning, no push comes from its speed, up or down."),
        tr("Only where it speeds up and slows down do you feel it go."),
    ]


def _ridden(day, pace):
    v, size = day.v, abs(day.v["lift_push_g"])
    places = {"speed": pace, "push": day.say.push(size)}
    if not day.weightless and day.slight(size):
        first = tr(
            "The lift climbs toward the axis at {speed}, and all the way the push spinward is {push}, too small to notice.",
            **places,
        )
    else:
        places["beside"] = _beside_standing(day, size) + _sideways(day)
        if day.say.several:
            first = tr(
                "The lift climbs toward the axis at {speed}, and all the way {push} press you to its spinward wall{beside}.",
                **places,
            )
        else:
            first = tr(
                "The lift climbs toward the axis at {speed}, and all the way {push} presses you to its spinward wall{beside}.",
                **places,
            )
    if v["lift_lean_deg"] is None or day.weightless:
        return [first]
    places = {
        "angle": day.say.angle(v["lift_lean_deg"]),
        "weight": day.say.weight(v["lift_halfway_g"]),
        "halfway": day.say.angle(v["lift_halfway_lean_deg"]),
    }
    if day.thrust_m_s2:
        leans = tr(
            "Where you got in, down leans by {angle}; half way to the axis you would weigh {weight} in a lift that stands, and in this "
            "one down leans by {halfway}.",
            **places,
        )
    else:  # the lean is the push's alone
        leans = tr(
            "Where you got in, down leans spinward by {angle}; half way to the axis you would weigh {weight} in a lift that stands, and "
            "in this one down leans by {halfway}.",
            **places,
        )
    return [first, leans]


def _beside_standing(day, size):
    if day.weightless:
        return ""
    return f", {day.say.beside_weight(size / day.v['feet_g'], weight_on_the(day.ground))}"


def _down(day):
    if day.thrust_m_s2 or day.weightless:
        return tr("On the way down the same push is antispinward.")
    return tr("On the way down the same push is antispinward, and down leans that way.")


def _sideways(day):
    if day.weightless or day.v["lift_push_g"] <= day.v["feet_g"]:
        return ""
    return tr(", so that the wall is more of a floor than the floor")


def _at_the_axis(day):
    if day.thrust_m_s2:
        return tr(
            "At the axis nothing of the spin's weight is left: only the push, and the thrust, which draws {way}.",
            way=day.aft,
        )
    return tr("At the axis nothing weighs you down any more, and only the push is left.")


def _ladder(day):
    size = day.v["ladder_push_g"]
    if day.weightless or day.slight(size):
        return []
    places = {
        "speed": day.say.speed(day.person.climb_m_s),
        "push": day.say.push(size),
        "angle": day.say.angle(day.v["ladder_lean_deg"]),
    }
    if day.thrust_m_s2:
        return [tr("A ladder at {speed} does the same with {push}, and down leans by {angle} at its foot.", **places)]
    return [
        tr("A ladder at {speed} does the same with {push}, and down leans spinward by {angle} at its foot.", **places)
    ]
