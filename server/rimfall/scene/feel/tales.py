"""Five moments of a day aboard, a paragraph each, as an author could use them. Which words are said follows the figures.

Standing up is here.
"""

from ...comfort.stance import SEAT, SITTING
from ...language import tr, tr_later
from .day import SLIGHT_DEG, tipped
from .drink import drink
from .saying import feet_weigh_on_earth, its_earth_weight, weight_at_the_feet
from .turns import head, lift
from .walk import breakfast

_STRONG = 0.15  # of one's weight: leaned against; our own choice
_SLIGHT_CHANGE = 0.01  # of one's weight, from feet to head: too small to notice; our own choice


def standing_up(day):
    """Rising from a seat."""
    if day.weightless:
        return [_no_weight(day), *_floats_up()]
    if day.wall:
        return _at_the_wall(day)
    if day.flung:
        return _flung(day)
    rise = day.say.length((1.0 - SEAT - SITTING) * day.person.height_m, upright=True)
    if day.table:
        rises = tr(
            "You rise from a seat within a second, and your head goes up by {height}, along the axis of the turn: nothing pushes it "
            "sideways.",
            height=rise,
        )
        return [rises, *_on_the_turntable(day)]
    rises = tr(
        "You rise from a seat within a second, and your head goes up by {height}, {way}.", height=rise, way=_way(day)
    )
    return [rises, _risen(day), _head_to_foot(day), tipped(day) or _lying(day)]


def _way(day):
    """Which way a head goes that rises from a seat."""
    if _seated_past(day):
        return tr("away from the axis, past which it was already")
    if day.past_the_axis(day.person.height_m):
        return tr("to the axis") if day.v["head_g"] == 0 else tr("past the axis")
    return tr("toward the axis")


def _no_weight(day):
    felt = day.v["feet_g"]
    if day.still and not felt:
        if day.table:
            return tr("Nothing weighs you down here: the turntable does not turn, and nothing else pulls.")
        return tr("Nothing weighs you down here: the habitat does not turn, and nothing else pulls.")
    weight = day.say.weight(felt)
    if day.still and day.table:
        turns = tr("The turntable does not turn")
    elif day.still:
        turns = tr("The habitat does not turn")
    elif day.table:
        turns = tr("The turntable turns {rate}", rate=day.say.spin(day.v["spin_rpm"]))
    else:
        turns = tr("The habitat turns {rate}", rate=day.say.spin(day.v["spin_rpm"]))
    return tr("{turns}, and your feet feel {weight}: too little to stand by.", turns=turns, weight=weight)


def _floats_up():
    return [
        tr("You push off from the seat, and what was meant to be standing up becomes a slow flight across the room."),
        tr("It ends where something is in the way; a strap or a rail does what weight would do."),
    ]


def _at_the_wall(day):
    return [
        tr(
            "Only the thrust weighs you, {weight}, and it draws {way}: the deck beside you is a wall.",
            weight=day.say.weight(day.v["feet_g"]),
            way=day.aft,
        ),
        tr("You stand on whatever faces the thrust, and rise from a seat as you would on ordinary ground."),
        tr("From feet to head the weight is the same, {weight}.", weight=day.say.number(day.v["head_g"])),
    ]


def _flung(day):
    return [
        tr(
            "Nothing holds your feet to the turntable: as you let go of the seat it flings you outward with {weight}.",
            weight=day.say.weight(day.v["feet_g"]),
        ),
        tr("There is no standing up, only holding on."),
        tr("What would be a floor to you is a wall at the rim, if there were one."),
    ]


def _on_the_turntable(day):
    lean = day.v["floor_lean_deg"]
    leans = (
        tr(
            "At the rim down leans outward by {angle}, and you stand leaning inward by as much.",
            angle=day.say.angle(lean),
        )
        if lean >= SLIGHT_DEG
        else tr("Down leans outward by less than a degree, too little to notice.")
    )
    return [leans, tr("You weigh {weight}, and the same at the head.", weight=day.say.weight(day.v["feet_g"]))]


def _risen(day):
    push, share = day.say.push(day.v["rise_push_g"]), day.v["rise_push_g"] / day.v["feet_g"]
    if day.slight(day.v["rise_push_g"]):
        return tr("On the way a push of {push} spinward is too small to notice.", push=push)
    beside = day.say.beside_weight(share, weight_at_the_feet())
    if share >= _STRONG:
        return tr(
            "On the way it is pushed spinward by {push} on average, {beside}, and you lean antispinward against it.",
            push=push,
            beside=beside,
        )
    return tr("On the way it is pushed spinward by {push} on average, {beside}.", push=push, beside=beside)


def _seated_past(day):
    return day.past_the_axis((SEAT + SITTING) * day.person.height_m)


def _head_to_foot(day):
    feet, seated, head = (day.v[name] for name in ("feet_g", "seated_head_g", "head_g"))
    change = _change(day)
    if _seated_past(day):
        return tr(
            "Upright it feels {head}, the other way, while your feet feel {feet}.",
            head=day.say.share_of(head, its_earth_weight()),
            feet=day.say.number(feet),
        )
    if day.past_the_axis(day.person.height_m):
        feet = day.say.share_of(feet, feet_weigh_on_earth())
        if head == 0:
            return tr("There, while your feet feel {feet}, your head feels nothing at all.", feet=feet)
        return tr(
            "There, while your feet feel {feet}, your head feels {head}, the other way.",
            feet=feet,
            head=day.say.number(head),
        )
    if change < _SLIGHT_CHANGE and day.slight(feet - head):
        return tr("{changes}: too little to notice.", changes=_changes(day))
    if day.say.number(head) == day.say.number(seated):
        return f"{_changes(day)}."
    return tr(
        "Seated, your head felt {seated}; upright it feels {head} and your feet {feet}, a change of {change} from feet to head.",
        seated=day.say.share_of(seated, its_earth_weight()),
        head=day.say.number(head),
        feet=day.say.number(feet),
        change=day.say.percent(change),
    )


def _changes(day):
    feet, head = (day.say.number(day.v[name]) for name in ("feet_g", "head_g"))
    change = day.say.percent(_change(day))
    if head == feet:
        return tr("From feet to head your weight changes by {change}", change=change)
    return tr(
        "From feet to head your weight changes by {change}, from {feet} to {head}", change=change, feet=feet, head=head
    )


def _change(day):
    """Of what one weighs, from feet to head, as a share: smaller than that of the whole of what is felt where thrust is in it."""
    feet, head = day.v["feet_g"], day.v["head_g"]
    return abs(feet - head) / feet


def _lying(day):
    across, lean = day.v["lying_across_g"], day.v["lying_across_lean_deg"]
    along = tr(
        "Lying along the axis you weigh {weight} from head to foot", weight=day.say.number(day.v["lying_along_g"])
    )
    if across is None:
        return tr("{along}; straight across it there is no room for you to lie.", along=along)
    if not lean:
        return tr("{along}, and across it the same: there down leans nowhere at either end of the bed.", along=along)
    if lean < SLIGHT_DEG:
        return tr(
            "{along}, and across it the same: there down leans by less than a degree at either end of the bed.",
            along=along,
        )
    return tr(
        "{along}; across it down leans by {angle} at head and feet, as if the bed were arched.",
        along=along,
        angle=day.say.angle(lean),
    )


TALES = {
    "standing_up": (tr_later("Standing up"), standing_up),
    "breakfast": (tr_later("Walking to breakfast against the spin"), breakfast),
    "drink": (tr_later("Pouring a drink"), drink),
    "head": (tr_later("Turning the head quickly"), head),
    "lift": (tr_later("Riding the lift"), lift),
}  # name -> its title and its sentences, in the order of the day
