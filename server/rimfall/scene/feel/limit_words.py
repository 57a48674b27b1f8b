"""How a habitat lies to the limits, in words: a sentence for a quantity, a few words for a heading, a summary of all."""

from ...comfort.limits import NO_NAME
from ...comfort.published import LIMITS
from ...phrases import OR, in_units, listed

_NB = "\u00a0"
_COUNTS = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
TOPICS = {
    "gravity": "gravity",
    "spin": "spin",
    "gradient": "the change from head to foot",
    "rim_speed": "rim speed",
    "head_turn": "turning the head",
    "coriolis": "Coriolis to gravity",
}
_FINDINGS = {"observed": "observed", "reached": "reached", "optimum": "called an optimum"}  # bounds that are no limits
_LEAST_SAID = 0.001  # of a unit: what is passed by less is said to be passed by less


def sentence(quantity, rows, units="si", offered=True):
    """How the limits on one quantity are kept: "Inside five of the seven; beyond Cramer 1985 by 1.1 rpm.".

    rows: those of `comfort.limits.compare` on the quantity. The user's own limits have a sentence of their own, and so have the
    figures that are no limits, which the reader of a table finds among its rows. offered: where there is no limit at all, whether
    to offer setting one, as what is read on paper cannot.
    """
    theirs, own = _limits(rows, mine=False), _limits(rows, mine=True)
    if not theirs:
        own_sentence = _kept(own, units) if own else "You can set one of your own." if offered else ""
        return f"No published limit found for {TOPICS[quantity]}. {own_sentence}".strip()
    return " ".join([*(_kept(limits, units) for limits in (theirs, own) if limits), *_no_limits(rows)])


def _no_limits(rows):
    """How many figures are no limits, in a sentence: "One more figure tells what was observed; it is not a limit."."""
    bounds = [row.bound for row in rows if row.bound not in LIMITS]
    if not bounds:
        return []
    what = listed([said for bound, said in _FINDINGS.items() if bound in bounds], OR)
    more = "One more figure tells" if len(bounds) == 1 else f"{count(len(bounds)).capitalize()} more figures tell"
    return [f"{more} what was {what}; {'it is not a limit' if len(bounds) == 1 else 'they are not limits'}."]


def short(rows):
    """All limits, the user's own among them, in at most 18 characters: "beyond 3 of 25"."""
    limits = [row for row in _limits(rows) if row.inside is not None]
    if not limits:
        return "no value here"
    beyond = sum(not row.inside for row in limits)
    return f"beyond {beyond} of {len(limits)}" if beyond else f"inside all {len(limits)}"


def summary(rows):
    """All limits in a sentence or two: how many are kept to, and which quantities pass the others."""
    theirs, own = _limits(rows, mine=False), _limits(rows, mine=True)
    return " ".join(_summed(limits) for limits in (theirs, own) if limits)


def count(number):
    """A count in words up to twelve: "three", "25"."""
    return _COUNTS[number] if number < len(_COUNTS) else str(number)


def _limits(rows, mine=None):
    return [row for row in rows if row.bound in LIMITS and (mine is None or row.mine == mine)]


def _whole(limits, noun=""):
    """What these limits are together: "the seven", "your own two", "the only published limit"."""
    if len(limits) == 1:
        return "your own limit" if limits[0].mine else "the only published limit"
    return f"your own {count(len(limits))}{noun}" if limits[0].mine else f"the {count(len(limits))}{noun}"


def _all(limits, noun=""):
    """The same, every one of them: "all seven", "both of your own"."""
    number = "both" if len(limits) == 2 else f"all {count(len(limits))}"
    return f"{number} of your own{noun}" if limits[0].mine else f"{number}{noun}"


def _kept(limits, units):
    """One sentence about limits on one quantity, all published or all own."""
    if limits[0].inside is None:
        return f"No value here to set beside {_whole(limits)}."
    if len(limits) == 1:
        return _kept_alone(limits[0], _whole(limits), units)
    inside, beyond = [row for row in limits if row.inside], [row for row in limits if not row.inside]
    just = [_name(row, limits, units) for row in inside if row.state == "at the limit"]
    at = f", {_just(just, inside)} ({listed(just)})" if just else ""
    if not beyond:
        return f"Inside {_all(limits)}{at}."
    passed = listed(
        [
            f"{_name(row, limits, units)} by {passed_by(row, units)}"
            for row in sorted(beyond, key=lambda row: -row.margin)
        ]
    )
    return f"Inside {count(len(inside))} of {_whole(limits)}{at}; beyond {passed}."


def _kept_alone(row, whole, units):
    named = "" if row.study == NO_NAME else f", {_name(row, [row], units)}"
    if row.inside:
        return f"{'At' if row.state == 'at the limit' else 'Inside'} {whole}{named}."
    return f"Beyond {whole}{named}{',' if named else ''} by {passed_by(row, units)}."


def _name(row, limits, units):
    """Study and year; with the limit where the study sets several of the kind."""
    named = f"{row.study} {row.year}" if row.year else row.study
    limit, unit = in_units(row.limit, row.unit, units)
    twins = [other for other in limits if (other.study, other.year, other.bound) == (row.study, row.year, row.bound)]
    return named if len(twins) == 1 else f"{named} ({_figure(_plain(limit), unit)})"


def passed_by(row, units="si"):
    """How far a limit is passed, to two figures: "1.1 rpm"."""
    past, unit = in_units(-row.margin, "percentage points" if row.unit == "%" else row.unit, units)
    if past < _LEAST_SAID:
        return f"less than {_figure(_LEAST_SAID, unit)}"
    places = next(places for places in range(5) if past >= 9.95 / 10**places or places == 4)
    return _figure(f"{past:,.{places}f}", unit)


def _plain(limit):
    """A limit as it was set, without powers of ten: "0.06", "1,000,000", "less than 0.001"."""
    return f"{limit:,.3f}".rstrip("0").rstrip(".") if limit >= _LEAST_SAID else f"less than {_LEAST_SAID}"


def _figure(figure, unit):
    return f"{figure}{_NB}{unit}" if unit else f"{figure}"


def _just(names, inside):
    """Those at their limit of those inside: "one of them at its limit", "three of them at their limit", "each at its limit"."""
    if len(names) == len(inside):
        return "at its limit" if len(names) == 1 else "each at its limit"
    return f"{count(len(names))} of them at {'its' if len(names) == 1 else 'their'} limit"


def _summed(limits):
    """ "Inside 22 of the 25 published limits; beyond three: one on spin and two on turning the head."."""
    kept, beyond = sum(row.inside is True for row in limits), [row.quantity for row in limits if row.inside is False]
    noun = " limits" if limits[0].mine else " published limits"
    whole, silent = _whole(limits, noun), len(limits) - kept - len(beyond)
    if silent == len(limits):
        return f"No value here to set beside {whole}."
    if len(limits) == 1:
        return f"{'Beyond' if beyond else 'Inside'} {whole}, on {TOPICS[limits[0].quantity]}."
    if kept == len(limits):
        return f"Inside {_all(limits, noun)}."
    said = [f"Inside {count(kept)} of {whole}"]
    said += [f"beyond {_passed(beyond)}"] if beyond else []
    said += [f"no value here for {count(silent)}"] if silent else []
    return "; ".join(said) + "."


def _passed(beyond):
    """Quantities passed, once for each limit: "three on spin"; "two: one on gravity and one on spin"."""
    parts = [f"{count(beyond.count(name))} on {topic}" for name, topic in TOPICS.items() if name in beyond]
    return f"{count(len(beyond))}: {listed(parts)}" if len(parts) > 1 else parts[0]
