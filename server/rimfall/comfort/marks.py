"""How a value lies among published ones, as a sentence."""

from ..language import in_signs, tr, written
from .limits import same

_LEAST = 1e-6  # six places are shown of a small value
_NB = "\u00a0"


def lies(value, marks, called, unit):
    """How a value above 0 lies among marks, (value, what it is), rising, called so: "This spin, 3.00 rpm, lies below the 6 rpm of the last step."."""
    equal = [mark for mark in marks if same(value, mark[0])]
    over = [mark for mark in marks if mark[0] < value]
    under = [mark for mark in marks if mark[0] > value]
    if equal:
        where = tr("equals the {mark}", mark=_mark(equal[0], unit))
    elif over and under:
        where = tr("lies between the {low} and the {high}", low=_mark(over[-1], unit), high=_mark(under[0], unit))
    elif under:
        where = tr("lies below the {mark}", mark=_mark(under[0], unit))
    else:
        where = tr("lies above the {mark}", mark=_mark(over[-1], unit))
    return tr("{called}, {figure}, {where}.", called=called, figure=_told_apart(value, marks, unit), where=where)


def _mark(mark, unit):
    return f"{written(mark[0], 'g')}{_NB}{unit} {tr(mark[1])}"


def _told_apart(value, marks, unit):
    """A value with as many places as tell it from the marks that it does not equal."""
    if value < _LEAST:
        return tr("less than {figure}", figure=f"{written(_LEAST, '.6f')}{_NB}{unit}")
    beside = [mark for mark, _ in marks if not same(value, mark)]
    if value < 0.01:
        return in_signs(f"{value:.6f}".rstrip("0")) + f"{_NB}{unit}"
    texts = (f"{value:.{places}f}" for places in range(2, 12))
    return in_signs(next(text for text in texts if float(text) not in beside)) + f"{_NB}{unit}"
