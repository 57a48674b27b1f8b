"""How a habitat lies to the limits, in words: a sentence for a quantity, a few words for a heading, a summary of all."""

from ..feel.limits import NO_NAME
from ..feel.published import LIMITS

_NB = "\u00a0"
_COUNTS = ("none", "one", "two", "three", "four", "five", "six", "seven", "eight", "nine", "ten", "eleven", "twelve")
_TOPICS = {
    "gravity": "gravity",
    "spin": "spin",
    "gradient": "the change from head to foot",
    "rim_speed": "rim speed",
    "head_turn": "turning the head",
    "coriolis": "Coriolis to gravity",
}
_NAMED = 3  # of those passed, or just kept: the rest are counted
_LEAST_SAID = 0.001  # of a unit: what is passed by less is said to be passed by less


def sentence(quantity, rows):
    """How the limits on one quantity are kept: "Inside five of the seven; outside Cramer 1985 by 1.1 rpm.".

    rows: those of `feel.limits.compare` on the quantity. The user's own limits have a sentence of their own.
    """
    theirs, own = _limits(rows, mine=False), _limits(rows, mine=True)
    if not theirs:
        own_sentence = _kept(own, _of_own) if own else "You may set one of your own."
        return f"No published limit found for {_TOPICS[quantity]}. {own_sentence}"
    return " ".join(_kept(limits, of) for limits, of in ((theirs, _of_published), (own, _of_own)) if limits)


def short(rows):
    """All limits, the user's own among them, in at most 18 characters: "beyond 3 of 25"."""
    told = [row for row in _limits(rows) if row.inside is not None]
    if not any(row.value for row in rows if row.quantity == "spin"):
        return "not turning"
    beyond = sum(not row.inside for row in told)
    return f"beyond {beyond} of {len(told)}" if beyond else f"inside all {len(told)}"


def summary(rows):
    """All limits in a sentence or three: how many are kept to, and which quantities pass the others."""
    theirs, own = _limits(rows, mine=False), _limits(rows, mine=True)
    said = [_summed(theirs, f"the {count(len(theirs))} published limits")]
    if own:
        said.append(_summed(own, f"your {count(len(own))} own limits" if len(own) > 1 else "your own limit"))
    silent = sum(row.inside is None for row in theirs + own)
    if silent:
        said.append(f"For {count(silent)} of them there is no value here.")
    return " ".join(said)


def count(number):
    """A count in words up to twelve: "three", "25"."""
    return _COUNTS[number] if number < len(_COUNTS) else str(number)


def _limits(rows, mine=None):
    return [row for row in rows if row.bound in LIMITS and (mine is None or row.mine == mine)]


def _of_published(number):
    return f"the {count(number)}" if number > 1 else "the only published limit"


def _of_own(number):
    return f"your own {count(number)}" if number > 1 else "your own limit"


def _kept(limits, of):
    """One sentence about limits on one quantity; of: their number -> what they are together."""
    whole = of(len(limits))
    if limits[0].inside is None:
        return f"No value here to set beside {whole}."
    if len(limits) == 1:
        return _kept_alone(limits[0], whole)
    inside, beyond = [row for row in limits if row.inside], [row for row in limits if not row.inside]
    just = [_name(row, limits) for row in inside if row.state == "at the limit"]
    at = f", at the limit of {_listed(just)}" if just else ""
    passed = _listed([f"{_name(row, limits)} by {_by(row)}" for row in sorted(beyond, key=lambda row: -row.margin)])
    if not beyond:
        return f"Inside all {whole.removeprefix('the ')}{at}."
    return f"Inside {count(len(inside))} of {whole}{at}; outside {passed}."


def _kept_alone(row, whole):
    named = "" if row.study == NO_NAME else f", {_name(row, [row])}"
    if row.inside:
        return f"{'At' if row.state == 'at the limit' else 'Inside'} {whole}{named}."
    return f"Outside {whole}{named}{',' if named else ''} by {_by(row)}."


def _name(row, limits):
    """Study and year; with the limit where the study sets several of the kind."""
    named = f"{row.study} {row.year}" if row.year else row.study
    twins = [other for other in limits if (other.study, other.year, other.bound) == (row.study, row.year, row.bound)]
    return named if len(twins) == 1 else f"{named} ({_figure(f'{row.limit:g}', row.unit)})"


def _by(row):
    """How far a limit is passed, to two figures."""
    past = -row.margin
    if past < _LEAST_SAID:
        return f"less than {_figure(_LEAST_SAID, row.unit)}"
    places = next(places for places in range(5) if past >= 9.95 / 10**places or places == 4)
    return _figure(f"{past:,.{places}f}", row.unit)


def _figure(figure, unit):
    return f"{figure}{_NB}{unit}" if unit else f"{figure}"


def _listed(names):
    """ "a", "a and b", "a, b and c", "a, b, c and two more"."""
    return _joined(names if len(names) <= _NAMED else [*names[:_NAMED], f"{count(len(names) - _NAMED)} more"])


def _joined(names):
    return " and ".join([", ".join(names[:-1]), names[-1]] if len(names) > 1 else names)


def _summed(limits, whole):
    """ "Inside 22 of the 25 published limits; beyond three: one on spin and two on turning the head."."""
    kept, beyond = sum(row.inside is True for row in limits), [row.quantity for row in limits if row.inside is False]
    passed = [f"{count(beyond.count(name))} on {topic}" for name, topic in _TOPICS.items() if name in beyond]
    if len(limits) == 1:
        return (
            f"{'Outside' if beyond else 'Inside'} {whole}, on {_TOPICS[limits[0].quantity]}." if kept or beyond else ""
        )
    if kept == len(limits):
        return f"Inside all {whole.removeprefix('the ')}."
    many = f"{count(len(beyond))}: " if len(passed) > 1 else ""
    return f"Inside {count(kept)} of {whole}" + (f"; beyond {many}{_joined(passed)}." if beyond else ".")
