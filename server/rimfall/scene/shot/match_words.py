"""A matched path in words: the verdict in a sentence, the fit, each reason with its rows, each change that would make it possible."""

import math

from ...phrases import OR, length, listed, seconds, speed
from ..document import frame_rate
from ..size.wish_words import three_figures

SHORT = {"possible": "possible", "possible_if": "possible, if …", "impossible": "impossible", "undecided": "undecided"}
CHANGES = (
    "radius_m", "spin_rpm", "gravity_g", "radius_and_spin", "habitat_and_speed", "speed", "start", "air", "frame_rate", "mirror",
)  # fmt: skip
REASONS = (
    "bends_wrong_way", "bends_too_often", "bends_elsewhere", "gains_energy", "loses_energy", "straight_fall", "ordinary_parabola",
    "speeds_up_along_axis", "leaves_its_plane", "off_the_path", "mirror_fits", "too_short", "too_coarse", "on_the_edge",
)  # fmt: skip
_NB = "\u00a0"
_COMPARED = {  # what would have to be otherwise -> how it is called, larger, smaller, and its unit
    "radius_m": ("the habitat is", "wider", "narrower", "m"),
    "spin_rpm": ("it turns", "faster", "slower", "rpm"),
    "gravity_g": ("gravity at the deck is", "higher", "lower", "g"),
}


def rate_of(value):
    """A frame rate as a Fraction, of what a document has."""
    return frame_rate(value) if isinstance(value, (str, int, float)) else value


def verdict(question, told, fit, changes, units):
    """The verdict in one sentence."""
    path = "This path" if told.end is None else f"As far as row {told.end.rows}, this path"
    if told.verdict == "possible":
        return f"{path} is possible: {habitat(fit, units)} gives it{_near(told, units)}."
    if told.verdict == "possible_if":
        return f"{path} is possible {listed([one['says'] for one in changes], OR)}."
    if told.verdict == "impossible":
        first = reason(question, told, told.signs[0], units)
        return f"No free path goes like this: {first[:1].lower()}{first[1:]}"
    track = "This track does" if told.end is None else f"Rows 1 to {told.end.rows} of this track do"
    return f"{track} not decide it: {_undecided(told, fit, units)}."


def _near(told, units):
    """How near, on the average."""
    off = float((told.beside.off_m**2).sum(axis=1).mean() ** 0.5)
    return f", {length(off, units)} off the points on the average"


def habitat(fit, units):
    """The habitat of a fit in words, by what of it is known or decided."""
    radius, spin, gravity = fit["radius_m"], fit["spin_rpm"], fit["gravity_g"]
    if all(one["known"] for one in (radius, spin)):
        return f"the habitat that is known, {length(radius['value'], units)} in radius at {_figure(spin, 'rpm')},"
    parts = []
    if radius["value"] is not None:
        parts.append(_of_radius(radius, units))
    if spin["decided"]:
        parts.append(f"that turns at {_figure(spin, 'rpm')}")
    if gravity["value"] is not None and gravity["decided"]:
        parts.append(f"with {_figure(gravity, 'g')} at its deck")
    return f"a habitat {' '.join(one for one in parts if one)}".strip()


def _of_radius(row, units):
    if row["decided"] or row["known"]:
        return f"of {length(row['value'], units)} in radius"
    if row["low"] is not None:
        return f"of at least {length(row['low'], units)} in radius"
    return f"of at most {length(row['high'], units)} in radius" if row["high"] is not None else ""


def _figure(row, unit):
    return f"{three_figures(row['value'])}{_NB}{unit}"


def _undecided(told, fit, units):
    kinds = {sign.kind: sign for sign in told.signs}
    if "too_short" in kinds:
        return (
            "there are too few to fit a habitat and a throw to"
            if told.end
            else "it has too few rows to fit a habitat and a throw to"
        )
    if "on_the_edge" in kinds:
        share = max(2, round(1 / max(told.trial.p_value, 1e-9)))
        return f"only one true path in {share:,} lies that far off the points"
    if "ordinary_parabola" in kinds:
        return "it is an ordinary parabola, which any habitat wide enough gives, whichever way it turns"
    if "mirror_fits" in kinds:
        known = all(fit[name]["known"] for name in ("radius_m", "spin_rpm"))
        fits = "the habitat that is known fits, but its mirror" if known else "a habitat fits, but its mirror"
        return f"{fits}, which turns the other way, fits as well"
    return "habitats of any size and spin fit it alike"


def change(question, told, one, fit, units):
    """What would have to be otherwise, as the rest of "possible …"."""
    known, kind = question.request.known, one.kind
    if kind in _COMPARED:
        what, more, less, unit = _COMPARED[kind]
        row, before = fit[kind], getattr(known, kind)
        than = length(before, units) if unit == "m" else f"{three_figures(before)}{_NB}{unit}"
        in_radius = " in radius" if unit == "m" else ""
        return f"if {what} {_more(row['value'], before, more, less)}: {_at(row, unit, units)}{in_radius}, not {than}"
    if kind == "radius_and_spin":
        return f"in {_another(known, fit)}, {_spans(fit, units)}"
    if kind == "habitat_and_speed":
        return (
            f"in {_another(known, fit)}, {_spans(fit, units)}, and thrown at {speed(fit['speed_m_s']['value'], units)}"
        )
    if kind == "speed":
        thrown = speed(fit["speed_m_s"]["value"], units)
        if known.speed == 0:
            return f"if it was thrown and not dropped: at {thrown}"
        return f"if it left at {thrown}, not {speed(known.speed, units)}"
    if kind == "start":
        return f"if it was let go elsewhere: at {length(fit['along_m']['value'], units)} along and {length(fit['height_m']['value'], units)} up"
    if kind == "frame_rate":
        return _another_rate(fit)
    if kind == "air":
        return _another_air(question, fit)
    return f"if it is seen in a mirror, or the habitat turns the other way round: {_spans(fit, units)}"


def _another(known, fit):
    if known.radius_m is None or fit["radius_m"]["value"] is None:
        return "another habitat"
    return f"a {_more(fit['radius_m']['value'], known.radius_m, 'wider', 'narrower')} habitat"


def _more(value, before, more, less):
    return more if value > before else less


def _at(row, unit, units):
    """A figure that is decided, or the end that is."""

    def said(value):
        return length(value, units) if unit == "m" else f"{three_figures(value)}{_NB}{unit}"

    if row["decided"] or (row["low"] is None and row["high"] is None):
        return said(row["value"])
    return f"at least {said(row['low'])}" if row["low"] is not None else f"no more than {said(row['high'])}"


def _spans(fit, units):
    parts = []
    if fit["radius_m"]["value"] is not None:
        parts.append(f"{_at(fit['radius_m'], 'm', units)} in radius")
    parts.append(f"turning at {_at(fit['spin_rpm'], 'rpm', units)}")
    if fit["gravity_g"]["value"] is not None:
        parts.append(f"with {_at(fit['gravity_g'], 'g', units)} at its deck")
    return ", ".join(parts)


def _another_rate(fit):
    if "frame_rate" in fit:
        return f"if the camera took {three_figures(fit['frame_rate']['value'])} frames a second"
    pace = fit["pace"]["value"]
    return f"if its clock is {'slowed down' if pace < 1 else 'sped up'}: {three_figures(pace)} s pass in a second of it"


def _another_air(question, fit):
    if "pressure_kpa" in fit:
        return f"if the air has {three_figures(fit['pressure_kpa']['value'])}{_NB}kPa"
    return f"if a medium slows it down, by {_lost(fit['drag_1_m']['value'])}{_NB}% of its speed in each metre"


def _rows(question, sign):
    """The rows and times of a sign."""
    first, last = (question.first_s + float(question.sight.time_s[k]) for k in (sign.first, sign.last))
    if sign.first == sign.last:
        return f"at {_time(first)} (row {sign.first + 1})"
    return f"from {_time(first)} to {_time(last)} (rows {sign.first + 1} to {sign.last + 1})"


def _time(value_s):
    return seconds(value_s) if value_s > 0.005 else f"{value_s:.2f}{_NB}s"


def _row(question, sign):
    return f"at {_time(question.first_s + float(question.sight.time_s[sign.at]))} (row {sign.at + 1})"


def reason(question, told, sign, units):
    """A sign in one sentence that names its rows."""
    where, at, figure = _rows(question, sign), _row(question, sign), sign.figure
    match sign.kind:
        case "bends_wrong_way":
            return f"It bends the wrong way round the habitat: {at} it is {length(figure, units)} off the nearest path, where its mirror would fit."
        case "bends_too_often":
            return f"It bends back {figure:.0f} times, and a free path does so at most twice; the third time is {at}."
        case "bends_elsewhere":
            return (
                f"It bends back {at}, {length(figure, units)} from the axis, where no free path of this habitat does."
            )
        case "gains_energy":
            return f"It gains speed that nothing in this habitat gives it, {where}."
        case "loses_energy":
            return f"It loses speed {where}, as a thing does in air and not in a vacuum."
        case "straight_fall":
            side = "spinward" if figure > 0 else "antispinward"
            return f"It falls straight down {where}; let go there, a thing would drift {length(abs(figure), units)} {side}."
        case "ordinary_parabola":
            return f"It is an ordinary parabola, {where}, as under {three_figures(figure / 9.80665)}{_NB}g on a planet."
        case "speeds_up_along_axis":
            return f"It changes its speed along the axis by {speed(abs(figure), units)} each second, {where}, and nothing pushes it that way."
        case "leaves_its_plane":
            return f"It does not keep to one plane: {at} it lies {length(figure, units)} aside of it."
        case "off_the_path" | "on_the_edge":
            return f"It lies {length(figure, units)} off the nearest free path {at}."
        case "mirror_fits":
            return (
                f"The nearest path and that of the mirror are never farther apart than {length(figure, units)}, {at}."
            )
        case "too_short":
            return f"It has {len(question.sight.time_s)} rows, too few for what is not known."
        case _:
            return f"Its accuracy, {length(figure, units)}, is too coarse for so short a path, {where}."


def paragraphs(question, told, fit, changes, units):
    """The verdict and what stands behind it."""
    fitting = changes[0]["fit"] if changes else fit if told.verdict != "impossible" else None
    lines = [
        verdict(question, told, fit, changes, units),
        told.end and left_out(question, told.end, units),
        fitting and _decided(fitting, units),
        _chance(told, units),
    ]
    return [one for one in lines if one]


def left_out(question, end, units):
    """Which rows were left out, and why."""
    count = len(question.sight.time_s)
    rows, were = (f"Row {count}", "was") if end.rows == count - 1 else (f"Rows {end.rows + 1} to {count}", "were")
    return f"{rows} {were} left out: {_why_left_out(question, end, units)}."


def _why_left_out(question, end, units):
    at = _time(question.first_s + float(question.sight.time_s[end.rows]))
    if end.kind == "rest":
        return f"from {at} on it stays in one place, as what has landed or is caught"
    if end.kind == "along":
        return f"from {at} on it keeps to one height, as what slides, rolls or is carried"
    if end.kind == "off":
        off, are = ("it lies", "is") if end.rows == len(question.sight.time_s) - 1 else ("they lie", "are")
        few = "too few to tell more" if are == "are" else "one row, which tells no more"
        return f"{off} clearly off the free flight before, as where a thing has met something ({few})"
    change = "" if end.change_m_s is None else f" by {speed(end.change_m_s, units)}"
    return f"just before {at} its velocity changes at once{change}, as in a bounce, and another free flight begins"


def _decided(fit, units):
    """What the track decides of the habitat, and what it does not."""
    names = {"radius_m": "radius", "spin_rpm": "spin", "gravity_g": "gravity at the deck", "frame_rate": "frame rate"}
    names |= {"pressure_kpa": "air pressure", "drag_1_m": "drag"}
    free = {name: fit[name] for name in names if name in fit and not fit[name]["known"]}
    sure = [_between(n, names[n], row, units) for n, row in free.items() if row["decided"]]
    unsure = [names[n] for n, row in free.items() if not row["decided"]]
    says = f"With 95{_NB}% certainty: {listed(sure)}." if sure else ""
    more = f"It does not decide the {listed(unsure)}." if unsure else ""
    return " ".join(one for one in (says, more) if one)


def _between(name, called, row, units):
    if name == "drag_1_m":
        return f"{called} {_lost(row['low'])} to {_lost(row['high'])}{_NB}% of the speed in each metre"
    if row["unit"] == "m":
        return f"{called} {length(row['low'], units)} to {length(row['high'], units)}"
    return f"{called} {three_figures(row['low'])} to {three_figures(row['high'])}{_NB}{row['unit']}"


def _lost(drag_1_m):
    """The share of its speed that a thing of so much drag loses in a metre, in per cent."""
    return three_figures(-100.0 * math.expm1(-drag_1_m))


def _chance(told, units):
    if told.trial.problem.freedom <= 0:
        return ""
    chance = told.trial.p_value
    share = f"{three_figures(100 * chance)}{_NB}% of the time"
    if chance < 1e-6:
        share = "less than one time in a million"
    elif chance > 0.99:
        share = f"more than 99{_NB}% of the time"
    return f"Points of that accuracy would lie at least as far off a true path {share}."


def assumptions(question, told):
    """What the answer takes for granted."""
    last = "the last" if told.end is None else f"row {told.end.rows}"
    lines = [f"The thing flies freely from the first row to {last}: nothing holds or meets it, and it has no engine."]
    lines.append("The habitat turns steadily and is not under thrust.")
    lines.append("Errors of the points are independent, and as large as the accuracy that was given.")
    if told.trial.problem.resistance is None:
        lines.append("There is no air.")
    else:
        lines.append("Air turns with the habitat, slows the thing down and does not lift it.")
        if question.body is None:
            lines.append("The body is not known: its drag goes with the square of its speed.")
    if question.request.picture is not None and question.request.picture.plane is not None:
        lines.append("The camera looks along the axis from so far that nothing is foreshortened.")
        if question.request.picture.plane.deck_px is None:
            lines.append("The first end of the line of known length stands on the deck.")
    return lines
