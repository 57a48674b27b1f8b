"""Five moments of a day aboard, a paragraph each, as an author could use them. Which words are said follows the figures.

Standing up is here.
"""

from ...comfort.stance import SEAT, SITTING
from .day import SLIGHT_DEG, tipped
from .drink import drink
from .turns import head, lift
from .walk import breakfast

_STRONG = 0.15  # of one's weight: leaned against; our own choice
_SLIGHT_CHANGE = 0.01  # of one's weight, from feet to head: too small to notice; our own choice


def standing_up(day):
    """Rising from a seat."""
    rise_m = (1.0 - SEAT - SITTING) * day.person.height_m
    if day.weightless:
        return [_no_weight(day), *_floats_up(day)]
    if day.wall:
        return _at_the_wall(day)
    if day.flung:
        return _flung(day)
    rises = f"You rise from a seat within a second, and your head goes up by {day.say.length(rise_m, upright=True)}"
    if day.table:
        return [f"{rises}, along the axis of the turn: nothing pushes it sideways.", *_on_the_turntable(day)]
    way = "toward the axis"
    if day.past_the_axis(day.person.height_m):
        way = "to the axis" if day.v["head_g"] == 0 else "past the axis"
    if _seated_past(day):
        way = "away from the axis, past which it was already"
    return [f"{rises}, {way}.", _risen(day), _head_to_foot(day), tipped(day) or _lying(day)]


def _no_weight(day):
    place, felt = "turntable" if day.table else "habitat", day.v["feet_g"]
    if day.still and not felt:
        return f"Nothing weighs you down here: the {place} does not turn, and nothing else pulls."
    turns = f"The {place} does not turn" if day.still else f"The {place} turns {day.say.spin(day.v['spin_rpm'])}"
    return f"{turns}, and your feet feel {day.say.weight(felt)}: too little to stand by."


def _floats_up(day):
    return [
        "You push off from the seat, and what was meant to be standing up becomes a slow flight across the room.",
        "It ends where something is in the way; a strap or a rail does what weight would do.",
    ]


def _at_the_wall(day):
    return [
        f"Only the thrust weighs you, {day.say.weight(day.v['feet_g'])}, and it draws {day.aft}: the deck beside you is a wall.",
        "You stand on whatever faces the thrust, and rise from a seat as you would on ordinary ground.",
        f"From feet to head the weight is the same, {day.say.number(day.v['head_g'])}.",
    ]


def _flung(day):
    return [
        f"Nothing holds your feet to the turntable: as you let go of the seat it flings you outward with {day.say.weight(day.v['feet_g'])}.",
        "There is no standing up, only holding on.",
        "What would be a floor to you is a wall at the rim, if there were one.",
    ]


def _on_the_turntable(day):
    lean = day.v["floor_lean_deg"]
    leans = (
        f"At the rim down leans outward by {day.say.angle(lean)}, and you stand leaning inward by as much."
        if lean >= SLIGHT_DEG
        else "Down leans outward by less than a degree, too little to notice."
    )
    return [leans, f"You weigh {day.say.weight(day.v['feet_g'])}, and the same at the head."]


def _risen(day):
    share = day.v["rise_push_g"] / day.v["feet_g"]
    if day.slight(day.v["rise_push_g"]):
        return f"On the way a push of {day.say.push(day.v['rise_push_g'])} spinward is too small to notice."
    beside = f"{day.say.beside_weight(share)} your weight at the feet"
    said = f"On the way it is pushed spinward by {day.say.push(day.v['rise_push_g'])} on average, {beside}"
    return f"{said}, and you lean antispinward against it." if share >= _STRONG else f"{said}."


def _seated_past(day):
    return day.past_the_axis((SEAT + SITTING) * day.person.height_m)


def _head_to_foot(day):
    feet, seated, head = (day.v[name] for name in ("feet_g", "seated_head_g", "head_g"))
    change = _change(day)
    if _seated_past(day):
        return f"Upright it feels {day.say.share_of(head)} what it weighs on Earth, the other way, while your feet feel {day.say.number(feet)}."
    if day.past_the_axis(day.person.height_m):
        feels = "nothing at all" if head == 0 else f"{day.say.number(head)}, the other way"
        return (
            f"There, while your feet feel {day.say.share_of(feet)} what they weigh on Earth, your head feels {feels}."
        )
    if change < _SLIGHT_CHANGE and day.slight(feet - head):
        return f"From feet to head your weight {_changes(day)}: too little to notice."
    if day.say.number(head) == day.say.number(seated):
        return f"From feet to head your weight {_changes(day)}."
    return (
        f"Seated, your head felt {day.say.share_of(seated)} what it weighs on Earth; upright it feels {day.say.number(head)} and your feet "
        f"{day.say.number(feet)}, a change of {day.say.percent(change)} from feet to head."
    )


def _changes(day):
    feet, head = (day.say.number(day.v[name]) for name in ("feet_g", "head_g"))
    from_to = "" if head == feet else f", from {feet} to {head}"
    return f"changes by {day.say.percent(_change(day))}{from_to}"


def _change(day):
    """Of what one weighs, from feet to head, as a share: smaller than that of the whole of what is felt where thrust is in it."""
    feet, head = day.v["feet_g"], day.v["head_g"]
    return abs(feet - head) / feet


def _lying(day):
    across, lean = day.v["lying_across_g"], day.v["lying_across_lean_deg"]
    along = f"Lying along the axis you weigh {day.say.number(day.v['lying_along_g'])} from head to foot"
    if across is None:
        return f"{along}; straight across it there is no room for you to lie."
    if lean < SLIGHT_DEG:
        leans = "by less than a degree" if lean else "nowhere"
        return f"{along}, and across it the same: there down leans {leans} at either end of the bed."
    return f"{along}; across it down leans by {day.say.angle(lean)} at head and feet, as if the bed were arched."


TALES = {
    "standing_up": ("Standing up", standing_up),
    "breakfast": ("Walking to breakfast against the spin", breakfast),
    "drink": ("Pouring a drink", drink),
    "head": ("Turning the head quickly", head),
    "lift": ("Riding the lift", lift),
}  # name -> its title and its sentences, in the order of the day
