"""A matched path in words: the verdict in a sentence, the fit, what was left out, what is taken for granted."""

from ...language import tr, tr_as, tr_later, tr_later_as, written
from ...phrases import length, listed, speed
from ..document import frame_rate
from ..size.wish_words import three_figures
from .match_changes import figure_of, lost
from .match_reasons import reason, time_of

SHORT = {
    "possible": tr_later("possible"),
    "possible_if": tr_later("possible, if …"),
    "impossible": tr_later("impossible"),
    "undecided": tr_later("undecided"),
}
CHANGES = (
    "radius_m", "spin_rpm", "gravity_g", "radius_and_spin", "habitat_and_speed", "speed", "start", "air", "frame_rate", "mirror",
)  # fmt: skip
REASONS = (
    "bends_wrong_way", "bends_too_often", "bends_elsewhere", "gains_energy", "loses_energy", "straight_fall", "ordinary_parabola",
    "speeds_up_along_axis", "leaves_its_plane", "off_the_path", "mirror_fits", "too_short", "too_coarse", "on_the_edge",
)  # fmt: skip
_NB = "\u00a0"
_OR_IF = tr_later_as("between conditions", "{first} or {last}")


def rate_of(value):
    """A frame rate as a Fraction, of what a document has."""
    return frame_rate(value) if isinstance(value, (str, int, float)) else value


def verdict(question, told, fit, changes, units):
    """The verdict in one sentence."""
    row = told.end and told.end.rows
    if told.verdict == "possible":
        near = {"habitat": habitat(fit, units), "length": length(_near_m(told), units)}
        if row is None:
            return tr("This path is possible: {habitat} gives it, {length} off the points on the average.", **near)
        return tr(
            "As far as row {row}, this path is possible: {habitat} gives it, {length} off the points on the average.",
            row=row,
            **near,
        )
    if told.verdict == "possible_if":
        says = listed([one["says"] for one in changes], _OR_IF)
        if row is None:
            return tr("This path is possible {changes}.", changes=says)
        return tr("As far as row {row}, this path is possible {changes}.", row=row, changes=says)
    if told.verdict == "impossible":
        first = reason(question, told.signs[0], units)
        return tr("No free path goes like this: {reason}", reason=first[:1].lower() + first[1:])
    why = _undecided(told, fit)
    if row is None:
        return tr("This track does not decide it: {why}.", why=why)
    return tr("Rows 1 to {row} of this track do not decide it: {why}.", row=row, why=why)


def _near_m(told):
    """How near, on the average."""
    return float((told.beside.off_m**2).sum(axis=1).mean() ** 0.5)


def habitat(fit, units):
    """The habitat of a fit in words, by what of it is known or decided."""
    radius, spin, gravity = fit["radius_m"], fit["spin_rpm"], fit["gravity_g"]
    if all(one["known"] for one in (radius, spin)):
        wide = length(radius["value"], units)
        return tr("the habitat that is known, {length} in radius at {spin},", length=wide, spin=figure_of(spin, "rpm"))
    told = {
        "radius": None if radius["value"] is None else _of_radius(radius, units),
        "spin": figure_of(spin, "rpm") if spin["decided"] else None,
        "gravity": figure_of(gravity, "g") if gravity["value"] is not None and gravity["decided"] else None,
    }
    return _habitat_of({name: said for name, said in told.items() if said})


def _habitat_of(told):
    """The words of a habitat, by what of it is told: its radius, spin, gravity."""
    match tuple(told):
        case ("radius", "spin", "gravity"):
            return tr("a habitat {radius} that turns at {spin} with {gravity} at its deck", **told)
        case ("radius", "spin"):
            return tr("a habitat {radius} that turns at {spin}", **told)
        case ("radius", "gravity"):
            return tr("a habitat {radius} with {gravity} at its deck", **told)
        case ("spin", "gravity"):
            return tr("a habitat that turns at {spin} with {gravity} at its deck", **told)
        case ("radius",):
            return tr("a habitat {radius}", **told)
        case ("spin",):
            return tr("a habitat that turns at {spin}", **told)
        case ("gravity",):
            return tr("a habitat with {gravity} at its deck", **told)
        case _:
            return tr("a habitat")


def _of_radius(row, units):
    if row["decided"] or row["known"]:
        return tr("of {length} in radius", length=length(row["value"], units))
    if row["low"] is not None:
        return tr("of at least {length} in radius", length=length(row["low"], units))
    return "" if row["high"] is None else tr("of at most {length} in radius", length=length(row["high"], units))


def _undecided(told, fit):
    kinds = {sign.kind: sign for sign in told.signs}
    if "too_short" in kinds:
        if told.end:
            return tr("there are too few to fit a habitat and a throw to")
        return tr("it has too few rows to fit a habitat and a throw to")
    if "on_the_edge" in kinds:
        share = max(2, round(1 / max(told.trial.p_value, 1e-9)))
        return tr("only one true path in {count} lies that far off the points", count=written(share, ","))
    if "ordinary_parabola" in kinds:
        return tr("it is an ordinary parabola, which any habitat wide enough gives, whichever way it turns")
    if "mirror_fits" in kinds:
        if all(fit[name]["known"] for name in ("radius_m", "spin_rpm")):
            return tr("the habitat that is known fits, but its mirror, which turns the other way, fits as well")
        return tr("a habitat fits, but its mirror, which turns the other way, fits as well")
    return tr("habitats of any size and spin fit it alike")


def paragraphs(question, told, fit, changes, units):
    """The verdict and what stands behind it."""
    fitting = changes[0]["fit"] if changes else fit if told.verdict != "impossible" else None
    lines = [
        verdict(question, told, fit, changes, units),
        told.end and left_out(question, told.end, units),
        fitting and _decided(fitting, units),
        _chance(told),
    ]
    return [one for one in lines if one]


def left_out(question, end, units):
    """Which rows were left out, and why."""
    count, why = len(question.sight.time_s), _why_left_out(question, end, units)
    if end.rows == count - 1:
        return tr("Row {row} was left out: {why}.", row=count, why=why)
    return tr("Rows {first} to {last} were left out: {why}.", first=end.rows + 1, last=count, why=why)


def _why_left_out(question, end, units):
    at = time_of(question.first_s + float(question.sight.time_s[end.rows]))
    if end.kind == "rest":
        return tr("from {time} on it stays in one place, as what has landed or is caught", time=at)
    if end.kind == "along":
        return tr("from {time} on it keeps to one height, as what slides, rolls or is carried", time=at)
    if end.kind == "off":
        if end.rows == len(question.sight.time_s) - 1:
            return tr(
                "it lies clearly off the free flight before, as where a thing has met something (one row, which tells no more)"
            )
        return tr(
            "they lie clearly off the free flight before, as where a thing has met something (too few to tell more)"
        )
    if end.change_m_s is None:
        return tr(
            "just before {time} its velocity changes at once, as in a bounce, and another free flight begins", time=at
        )
    return tr(
        "just before {time} its velocity changes at once by {speed}, as in a bounce, and another free flight begins",
        time=at,
        speed=speed(end.change_m_s, units),
    )


def _decided(fit, units):
    """What the track decides of the habitat, and what it does not."""
    names = {
        "radius_m": tr_as("a figure", "radius"),
        "spin_rpm": tr_as("a figure", "spin"),
        "gravity_g": tr_as("a figure", "gravity at the deck"),
        "frame_rate": tr_as("a figure", "frame rate"),
        "pressure_kpa": tr_as("a figure", "air pressure"),
        "drag_1_m": tr_as("a figure", "drag"),
    }
    free = {name: fit[name] for name in names if name in fit and not fit[name]["known"]}
    sure = [_between(n, names[n], row, units) for n, row in free.items() if row["decided"]]
    unsure = [names[n] for n, row in free.items() if not row["decided"]]
    says = tr("With 95\u00a0% certainty: {figures}.", figures=listed(sure)) if sure else ""
    more = tr("It does not decide the {figures}.", figures=listed(unsure)) if unsure else ""
    return " ".join(one for one in (says, more) if one)


def _between(name, called, row, units):
    if name == "drag_1_m":
        high = f"{lost(row['high'])}{_NB}%"
        return tr("{name} {low} to {high} of the speed in each metre", name=called, low=lost(row["low"]), high=high)
    if row["unit"] == "m":
        low, high = length(row["low"], units), length(row["high"], units)
    else:
        low, high = three_figures(row["low"]), f"{three_figures(row['high'])}{_NB}{row['unit']}"
    return tr("{name} {low} to {high}", name=called, low=low, high=high)


def _chance(told):
    if told.trial.problem.freedom <= 0:
        return ""
    chance = told.trial.p_value
    if chance < 1e-6:
        share = tr("less than one time in a million")
    elif chance > 0.99:
        share = tr("more than 99\u00a0% of the time")
    else:
        share = tr("{share} of the time", share=f"{three_figures(100 * chance)}{_NB}%")
    return tr("Points of that accuracy would lie at least as far off a true path {share}.", share=share)


def assumptions(question, told):
    """What the answer takes for granted."""
    lines = [_flies_freely(told.end)]
    lines.append(tr("The habitat turns steadily and is not under thrust."))
    lines.append(tr("Errors of the points are independent, and as large as the accuracy that was given."))
    if told.trial.problem.resistance is None:
        lines.append(tr("There is no air."))
    else:
        lines.append(tr("Air turns with the habitat, slows the thing down and does not lift it."))
        if question.body is None:
            lines.append(tr("The body is not known: its drag goes with the square of its speed."))
    if question.request.picture is not None and question.request.picture.plane is not None:
        lines.append(tr("The camera looks along the axis from so far that nothing is foreshortened."))
        if question.request.picture.plane.deck_px is None:
            lines.append(tr("The first end of the line of known length stands on the deck."))
    return lines


def _flies_freely(end):
    if end is None:
        return tr(
            "The thing flies freely from the first row to the last: nothing holds or meets it, and it has no engine."
        )
    return tr(
        "The thing flies freely from the first row to row {row}: nothing holds or meets it, and it has no engine.",
        row=end.rows,
    )
