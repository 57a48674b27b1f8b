"""How a habitat lies to the limits, in words: a sentence for a quantity, a few words for a heading, a summary of all."""

from ...comfort.limits import no_name
from ...comfort.published import LIMITS
from ...language import in_signs, tr, tr_as, tr_later, written
from ...phrases import OR, in_units, listed

_NB = "\u00a0"
_NUMBERS = (
    tr_later("two"),
    tr_later("three"),
    tr_later("four"),
    tr_later("five"),
    tr_later("six"),
    tr_later("seven"),
    tr_later("eight"),
    tr_later("nine"),
    tr_later("ten"),
    tr_later("eleven"),
    tr_later("twelve"),
)
TOPICS = {
    "gravity": tr_later("gravity"),
    "spin": tr_later("spin"),
    "gradient": tr_later("the change from head to foot"),
    "rim_speed": tr_later("rim speed"),
    "head_turn": tr_later("turning the head"),
    "coriolis": tr_later("Coriolis to gravity"),
}
_FINDINGS = {  # bounds that are no limits
    "observed": tr_later("observed"),
    "reached": tr_later("reached"),
    "optimum": tr_later("called an optimum"),
}
_LEAST_SAID = 0.001  # of a unit: what is passed by less is said to be passed by less


def sentence(quantity, rows, units="si", offered=True):
    """How the limits on one quantity are kept: "Inside five of the seven; beyond Cramer 1985 by 1.1 rpm.".

    rows: those of `comfort.limits.compare` on the quantity. The user's own limits have a sentence of their own, and so have the
    figures that are no limits, which the reader of a table finds among its rows. offered: where there is no limit at all, whether
    to offer setting one, as what is read on paper cannot.
    """
    theirs, own = _limits(rows, mine=False), _limits(rows, mine=True)
    if not theirs:
        own_sentence = _kept(own, units) if own else tr("You can set one of your own.") if offered else ""
        return f"{tr('No published limit found for {topic}.', topic=tr(TOPICS[quantity]))} {own_sentence}".strip()
    return " ".join([*(_kept(limits, units) for limits in (theirs, own) if limits), *_no_limits(rows)])


def _no_limits(rows):
    """How many figures are no limits, in a sentence: "One more figure tells what was observed; it is not a limit."."""
    bounds = [row.bound for row in rows if row.bound not in LIMITS]
    if not bounds:
        return []
    what = listed([tr(said) for bound, said in _FINDINGS.items() if bound in bounds], OR)
    if len(bounds) == 1:
        return [tr("One more figure tells what was {what}; it is not a limit.", what=what)]
    many = in_words(len(bounds)).capitalize()
    return [tr("{count} more figures tell what was {what}; they are not limits.", count=many, what=what)]


def short(rows):
    """All limits, the user's own among them, in at most 18 characters: "beyond 3 of 25"."""
    limits = [row for row in _limits(rows) if row.inside is not None]
    if not limits:
        return tr("no value here")
    beyond = sum(not row.inside for row in limits)
    if beyond:
        return tr("beyond {count} of {all}", count=written(beyond), all=written(len(limits)))
    return tr("inside all {count}", count=written(len(limits)))


def summary(rows):
    """All limits in a sentence or two: how many are kept to, and which quantities pass the others."""
    theirs, own = _limits(rows, mine=False), _limits(rows, mine=True)
    return " ".join(_summed(limits) for limits in (theirs, own) if limits)


def in_words(number):
    """A count from two on, in words up to twelve: "three", "25"."""
    return tr(_NUMBERS[number - 2]) if number - 2 < len(_NUMBERS) else written(number)


def count(number):
    """So many limits, in words up to twelve."""
    return tr_as("limits", "none") if number == 0 else tr_as("limits", "one") if number == 1 else in_words(number)


def _limits(rows, mine=None):
    return [row for row in rows if row.bound in LIMITS and (mine is None or row.mine == mine)]


def _only(limits):
    """The one limit that there is."""
    return tr("your own limit") if limits[0].mine else tr("the only published limit")


def _part_of(limits, said):
    """So many of these limits, `said` in words: "five of the seven", "one of your own two"."""
    many = in_words(len(limits))
    if limits[0].mine:
        return tr("{part} of your own {count}", part=said, count=many)
    return tr("{part} of the {count}", part=said, count=many)


def _part_of_all(limits, said):
    """The same where nothing has said yet what they are: "22 of the 25 published limits"."""
    many = in_words(len(limits))
    if limits[0].mine:
        return tr("{part} of your own {count} limits", part=said, count=many)
    return tr("{part} of the {count} published limits", part=said, count=many)


def _every(limits):
    """Every one of these limits: "all seven", "both of your own"."""
    if len(limits) == 2:
        return tr("both of your own") if limits[0].mine else tr_as("limits", "both")
    many = in_words(len(limits))
    return tr("all {count} of your own", count=many) if limits[0].mine else tr("all {count}", count=many)


def _every_one_of_all(limits):
    """The same where nothing has said yet what they are: "all 25 published limits"."""
    if len(limits) == 2:
        return tr("both of your own limits") if limits[0].mine else tr("both published limits")
    many = in_words(len(limits))
    if limits[0].mine:
        return tr("all {count} of your own limits", count=many)
    return tr("all {count} published limits", count=many)


def _no_value(limits, noun):
    """That nothing here has a value that the limits are on; noun: whether to say what they are."""
    many = "" if len(limits) == 1 else in_words(len(limits))
    if not many:
        return tr("No value here to set beside {limit}.", limit=_only(limits))
    if limits[0].mine:
        if noun:
            return tr("No value here to set beside your own {count} limits.", count=many)
        return tr("No value here to set beside your own {count}.", count=many)
    if noun:
        return tr("No value here to set beside the {count} published limits.", count=many)
    return tr("No value here to set beside the {count}.", count=many)


def _kept(limits, units):
    """One sentence about limits on one quantity, all published or all own."""
    if limits[0].inside is None:
        return _no_value(limits, noun=False)
    if len(limits) == 1:
        return _kept_alone(limits[0], units)
    inside, beyond = [row for row in limits if row.inside], [row for row in limits if not row.inside]
    just = [_name(row, limits, units) for row in inside if row.state == "at the limit"]
    at = f", {_just(just, inside)} ({listed(just)})" if just else ""
    if not beyond:
        return tr("Inside {limits}.", limits=_every(limits) + at)
    passed = listed(
        [
            tr("{limit} by {margin}", limit=_name(row, limits, units), margin=passed_by(row, units))
            for row in sorted(beyond, key=lambda row: -row.margin)
        ]
    )
    kept = _part_of(limits, count(len(inside))) + at
    return tr("Inside {limits}; beyond {passed}.", limits=kept, passed=passed)


def _kept_alone(row, units):
    limit = _only([row]) + ("" if row.study == no_name() else f", {_name(row, [row], units)}")
    if row.inside:
        return tr("At {limit}.", limit=limit) if row.state == "at the limit" else tr("Inside {limits}.", limits=limit)
    margin = passed_by(row, units)
    if row.study == no_name():
        return tr("Beyond {limit} by {margin}.", limit=limit, margin=margin)
    return tr("Beyond {limit}, by {margin}.", limit=limit, margin=margin)


def _name(row, limits, units):
    """Study and year; with the limit where the study sets several of the kind."""
    named = f"{row.study} {row.year}" if row.year else row.study
    limit, unit = in_units(row.limit, row.unit, units)
    twins = [other for other in limits if (other.study, other.year, other.bound) == (row.study, row.year, row.bound)]
    return named if len(twins) == 1 else f"{named} ({_figure(_plain(limit), unit)})"


def passed_by(row, units="si"):
    """How far a limit is passed, to two figures: "1.1 rpm"."""
    past, unit = in_units(-row.margin, tr("percentage points") if row.unit == "%" else row.unit, units)
    if past < _LEAST_SAID:
        return tr("less than {figure}", figure=_figure(written(_LEAST_SAID), unit))
    places = next(places for places in range(5) if past >= 9.95 / 10**places or places == 4)
    return _figure(written(past, f",.{places}f"), unit)


def _plain(limit):
    """A limit as it was set, without powers of ten: "0.06", "1,000,000", "less than 0.001"."""
    if limit < _LEAST_SAID:
        return tr("less than {figure}", figure=written(_LEAST_SAID))
    return in_signs(f"{limit:,.3f}".rstrip("0").rstrip("."))


def _figure(figure, unit):
    return f"{figure}{_NB}{unit}" if unit else f"{figure}"


def _just(names, inside):
    """Those at their limit of those inside: "one of them at its limit", "three of them at their limit", "each at its limit"."""
    if len(names) == len(inside):
        return tr("at its limit") if len(names) == 1 else tr("each at its limit")
    if len(names) == 1:
        return tr("one of them at its limit")
    return tr("{count} of them at their limit", count=in_words(len(names)))


def _summed(limits):
    """ "Inside 22 of the 25 published limits; beyond three: one on spin and two on turning the head."."""
    kept, beyond = sum(row.inside is True for row in limits), [row.quantity for row in limits if row.inside is False]
    silent = len(limits) - kept - len(beyond)
    if silent == len(limits):
        return _no_value(limits, noun=True)
    if len(limits) == 1:
        on = _on(limits[0].quantity)
        if beyond:
            return tr("Beyond {limit}, {on}.", limit=_only(limits), on=on)
        return tr("Inside {limit}, {on}.", limit=_only(limits), on=on)
    if kept == len(limits):
        return tr("Inside {limits}.", limits=_every_one_of_all(limits))
    said = [tr("Inside {limits}", limits=_part_of_all(limits, count(kept)))]
    said += [tr("beyond {passed}", passed=_passed(beyond))] if beyond else []
    said += [tr("no value here for {count}", count=count(silent))] if silent else []
    return "; ".join(said) + "."


def _passed(beyond):
    """Quantities passed, once for each limit: "three on spin"; "two: one on gravity and one on spin"."""
    parts = [f"{count(beyond.count(name))} {_on(name)}" for name in TOPICS if name in beyond]
    if len(parts) > 1:
        return tr("{count}: {parts}", count=count(len(beyond)), parts=listed(parts))
    return parts[0]


def _on(name):
    """Which quantity limits are on."""
    return {
        "gravity": tr("on gravity"),
        "spin": tr("on spin"),
        "gradient": tr("on the change from head to foot"),
        "rim_speed": tr("on rim speed"),
        "head_turn": tr("on turning the head"),
        "coriolis": tr("on Coriolis to gravity"),
    }[name]
