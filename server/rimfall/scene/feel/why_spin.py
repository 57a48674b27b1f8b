"""Why spin at all: what bodies do without their weight, in words, and a verdict for a stay of hours, days, months or years."""

from ...comfort.without_weight import EARTH_G, FINDINGS, STAYS, TOPICS, counted, here
from ...phrases import listed
from .day import WEIGHTLESS_G
from .limit_words import count
from .saying import number

_NB = "\u00a0"
_MORE_THAN_EARTH_G = 1.05  # our own choice
LEAD = (
    "Spin stands in for weight. This is what bodies did without it, and what turns on a short centrifuge made up for; what turning itself "
    "costs is under the published limits. It is not medical advice."
)
SPEAKS = {
    "for": "speaks for spin",
    "against": "speaks against it",
    "both": "speaks both ways",
    "open": "leaves it open",
    "aside": "tells what is done instead",
}
_GIST = {
    "hours": "What hours without weight bring, a shift of fluids and for many people sickness, passes by itself: spin is a comfort "
    "then, and no need.",
    "days": "Days without weight begin to cost muscle and blood, and make many people sick at first; some of it comes back soon after "
    "landing, and standing up is hard for some. People have stayed that long without spin, at that price.",
    "months": "Months without weight cost bone, muscle, blood and sight, even with more than an hour of exercise a day: something should stand in "
    "for weight.",
    "years": "No study here is of years. Bone is lost month by month, and none of them tells that it stops: years without weight would "
    "be a gamble.",
}


def why_spin(felt_g):
    """All of it as plain data, where felt_g is felt on the deck."""
    return {
        "lead": LEAD,
        "stays": [_stay(counted(stay), felt_g) for stay in STAYS],
        "topics": [{"name": name, "title": title} for name, title in TOPICS.items()],
        "findings": [_finding(finding, felt_g) for finding in FINDINGS],
    }


def _finding(finding, felt_g):
    about = vars(finding) | {
        "stays": list(finding.stays),
        "speaks": SPEAKS[finding.points],
        "here": here(finding, felt_g),
    }
    return {name: value for name, value in about.items() if name != "levels_g"}


def _stay(stay, felt_g):
    return {
        "stay": stay.stay,
        "verdict": f"{_GIST[stay.stay]} {_here(felt_g)} {_counts(stay)}",
        "counts": stay.counts,
        "not_known": list(stay.not_known),
    }


def _here(felt_g):
    """What the weight here makes of it."""
    if felt_g < WEIGHTLESS_G:
        return "This habitat gives no weight, and so this is what to reckon with here."
    weighs = f"Here one feels {number(felt_g)}{_NB}g"
    if felt_g < EARTH_G:
        return f"{weighs}: how much of it that prevents has not been measured in people."
    beside = "more than on Earth" if felt_g > _MORE_THAN_EARTH_G else "as on Earth"
    return f"{weighs}, {beside}: what was found is of people who felt nothing."


def _counts(stay):
    """ "Of the nine studies here that bear on days, three speak for spin, one against it and two both ways; three leave it open."."""
    speak = [("for", "for spin"), ("against", "against it"), ("both", "both ways")]
    ways = [f"{count(stay.counts[points])} {way}" for points, way in speak if points != "both" or stay.counts[points]]
    out = f"Of the {count(sum(stay.counts.values()))} studies here that bear on {stay.stay}, {_verb(ways)}"
    rest = []
    if left := stay.counts["open"]:
        rest.append(f"{count(left)} {'leaves' if left == 1 else 'leave'} it open")
    if aside := stay.counts["aside"]:
        rest.append(f"{count(aside)} {'tells' if aside == 1 else 'tell'} what is done instead")
    return f"{out}; {listed(rest)}." if rest else f"{out}."


def _verb(ways):
    """ "nine speak for spin, none against it and five both ways"."""
    number_, _, way = ways[0].partition(" ")
    return listed([f"{number_} {'speaks' if number_ == 'one' else 'speak'} {way}", *ways[1:]])
