"""The signs of a path that say what it is or cannot be, each in a sentence that names its rows."""

from ...language import tr, written
from ...phrases import length, seconds, speed
from ...physics.constants import G0_M_S2
from ..size.wish_words import three_figures

_NB = "\u00a0"


def _rows(question, sign):
    """The rows and times of a sign."""
    first, last = (time_of(question.first_s + float(question.sight.time_s[k])) for k in (sign.first, sign.last))
    if sign.first == sign.last:
        return tr("at {time} (row {row})", time=first, row=sign.first + 1)
    return tr(
        "from {first} to {last} (rows {first_row} to {last_row})",
        first=first,
        last=last,
        first_row=sign.first + 1,
        last_row=sign.last + 1,
    )


def time_of(value_s):
    """A time of a row in words."""
    return seconds(value_s) if value_s > 0.005 else f"{written(value_s, '.2f')}{_NB}s"


def _row(question, sign):
    time = time_of(question.first_s + float(question.sight.time_s[sign.at]))
    return tr("at {time} (row {row})", time=time, row=sign.at + 1)


def reason(question, sign, units):
    """A sign in one sentence that names its rows."""
    rows, at, figure = _rows(question, sign), _row(question, sign), sign.figure
    match sign.kind:
        case "bends_wrong_way":
            return tr(
                "It bends the wrong way round the habitat: {at} it is {length} off the nearest path, where its mirror would fit.",
                at=at,
                length=length(figure, units),
            )
        case "bends_too_often":
            return tr(
                "It bends back {count} times, and a free path does so at most twice; the third time is {at}.",
                count=written(figure, ".0f"),
                at=at,
            )
        case "bends_elsewhere":
            return tr(
                "It bends back {at}, {length} from the axis, where no free path of this habitat does.",
                at=at,
                length=length(figure, units),
            )
        case "gains_energy":
            return tr("It gains speed that nothing in this habitat gives it, {rows}.", rows=rows)
        case "loses_energy":
            return tr("It loses speed {rows}, as a thing does in air and not in a vacuum.", rows=rows)
        case "straight_fall":
            drift = {"rows": rows, "length": length(abs(figure), units)}
            if figure > 0:
                return tr(
                    "It falls straight down {rows}; let go there, a thing would drift {length} spinward.", **drift
                )
            return tr(
                "It falls straight down {rows}; let go there, a thing would drift {length} antispinward.", **drift
            )
        case "ordinary_parabola":
            return tr(
                "It is an ordinary parabola, {rows}, as under {gravity} on a planet.",
                rows=rows,
                gravity=f"{three_figures(figure / G0_M_S2)}{_NB}g",
            )
        case "speeds_up_along_axis":
            return tr(
                "It changes its speed along the axis by {speed} each second, {rows}, and nothing pushes it that way.",
                rows=rows,
                speed=speed(abs(figure), units),
            )
        case _:
            return _reason_of_points(question, sign, at, rows, units)


def _reason_of_points(question, sign, at, rows, units):
    """The same of a sign that shows in the points, not in how the thing moves."""
    if sign.kind == "too_short":
        return tr("It has {count} rows, too few for what is not known.", count=len(question.sight.time_s))
    off = length(sign.figure, units)
    match sign.kind:
        case "leaves_its_plane":
            return tr("It does not keep to one plane: {at} it lies {length} aside of it.", at=at, length=off)
        case "off_the_path" | "on_the_edge":
            return tr("It lies {length} off the nearest free path {at}.", at=at, length=off)
        case "mirror_fits":
            return tr(
                "The nearest path and that of the mirror are never farther apart than {length}, {at}.",
                at=at,
                length=off,
            )
        case _:
            return tr("Its accuracy, {length}, is too coarse for so short a path, {rows}.", rows=rows, length=off)
