"""Why spin at all: what bodies do without their weight, in words, and a verdict for a stay of hours, days, months or years."""

from ...comfort.without_weight import EARTH_G, FINDINGS, STAYS, TOPICS, counted, here
from ...language import tr, tr_later
from ...phrases import listed
from .day import WEIGHTLESS_G
from .limit_words import in_words
from .saying import number

_NB = "\u00a0"
_MORE_THAN_EARTH_G = 1.05  # our own choice
LEAD = tr_later(
    "Spin stands in for weight. This is what bodies did without it, and what turns on a short centrifuge made up for; what turning itself "
    "costs is under the published limits. It is not medical advice."
)
SPEAKS = {
    "for": tr_later("speaks for spin"),
    "against": tr_later("speaks against it"),
    "both": tr_later("speaks both ways"),
    "open": tr_later("leaves it open"),
    "aside": tr_later("tells what is done instead"),
}
_GIST = {
    "hours": tr_later(
        "What hours without weight bring, a shift of fluids and for many people sickness, passes by itself: spin is a comfort then, and "
        "no need."
    ),
    "days": tr_later(
        "Days without weight begin to cost muscle and blood, and make many people sick at first; some of it comes back soon after "
        "landing, and standing up is hard for some. People have stayed that long without spin, at that price."
    ),
    "months": tr_later(
        "Months without weight cost bone, muscle, blood and sight, even with more than an hour of exercise a day: something should stand "
        "in for weight."
    ),
    "years": tr_later(
        "No study here is of years. Bone is lost month by month, and none of them tells that it stops: years without weight would be a "
        "gamble."
    ),
}


def why_spin(felt_g):
    """All of it as plain data, where felt_g is felt on the deck."""
    return {
        "lead": tr(LEAD),
        "stays": [_stay(counted(stay), felt_g) for stay in STAYS],
        "topics": [{"name": name, "title": tr(title)} for name, title in TOPICS.items()],
        "findings": [_finding(finding, felt_g) for finding in FINDINGS],
    }


def _finding(finding, felt_g):
    about = vars(finding) | {
        "stays": list(finding.stays),
        "claim": tr(finding.claim),
        "study": tr(finding.study),
        "note": finding.note and tr(finding.note),
        "speaks": tr(SPEAKS[finding.points]),
        "here": here(finding, felt_g),
    }
    return {name: value for name, value in about.items() if name != "levels_g"}


def _stay(stay, felt_g):
    return {
        "stay": stay.stay,
        "verdict": f"{tr(_GIST[stay.stay])} {_here(felt_g)} {_counts(stay)}",
        "counts": stay.counts,
        "not_known": [tr(one) for one in stay.not_known],
    }


def _here(felt_g):
    """What the weight here makes of it."""
    if felt_g < WEIGHTLESS_G:
        return tr("This habitat gives no weight, and so this is what to reckon with here.")
    felt = f"{number(felt_g)}{_NB}g"
    if felt_g < EARTH_G:
        return tr("Here one feels {felt}: how much of it that prevents has not been measured in people.", felt=felt)
    if felt_g > _MORE_THAN_EARTH_G:
        return tr("Here one feels {felt}, more than on Earth: what was found is of people who felt nothing.", felt=felt)
    return tr("Here one feels {felt}, as on Earth: what was found is of people who felt nothing.", felt=felt)


def _counts(stay):
    """ "Of the nine studies here that bear on days, three speak for spin, one against it and two both ways; three leave it open."."""
    said, rest = [_for_spin(stay.counts["for"]), _against_it(stay.counts["against"])], []
    if both := stay.counts["both"]:
        said.append(tr("one both ways") if both == 1 else tr("{count} both ways", count=in_words(both)))
    if left := stay.counts["open"]:
        rest.append(tr("one leaves it open") if left == 1 else tr("{count} leave it open", count=in_words(left)))
    if aside := stay.counts["aside"]:
        one, many = tr("one tells what is done instead"), tr_later("{count} tell what is done instead")
        rest.append(one if aside == 1 else tr(many, count=in_words(aside)))
    out = tr(
        "Of the {count} studies here that bear on {stay}, {speak}",
        count=in_words(sum(stay.counts.values())),
        stay=tr(stay.stay),
        speak=listed(said),
    )
    return f"{out}; {listed(rest)}." if rest else f"{out}."


def _for_spin(count):
    if count == 0:
        return tr("none speak for spin")
    return tr("one speaks for spin") if count == 1 else tr("{count} speak for spin", count=in_words(count))


def _against_it(count):
    if count == 0:
        return tr("none against it")
    return tr("one against it") if count == 1 else tr("{count} against it", count=in_words(count))
