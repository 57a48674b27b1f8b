"""Small drawings of what a craft's answer tells, where one tells more than a sentence: momenta as bars that add up, gravity round an
unbalanced rim, the pull along a tether, what stresses a ring, spin while a mass moves, energy, wobble and
cones of a tumble.

Each is made from a finding of the answer alone. Millimetres, y downward; for the page and for print.
"""

from dataclasses import dataclass

import numpy as np

from ..language import tr, tr_as, tr_later
from ..phrases import in_units
from ..physics.constants import G0_M_S2
from ..scene.craft.words import figure
from . import craft_cones
from .drawing import Stroke, Text, moved
from .labels import wide_mm
from .palette import INK, PATHS, SOFT, PathStyle
from .plot_frame import BASE_MM, HAIR_MM, TEXT_MM, Frame, Line, axes, lines

_SIDES_MM = (12.0, 7.0, 3.0, 9.0)  # left, over, right and under the rectangle of values
_HIGH = 0.42  # of its width
_BAR_MM, _BAR_STEP_MM = 4.2, 7.4
_ROOM = 0.06
_BETWEEN_MM = 3.0
_SPARE = 1.15  # of a text's width: the face that a reader of an SVG has in its place may be wider
_NOTHING = 1e-9  # of the largest: what is left of sums that cancel
_MOMENTA = (
    (
        1e12,
        tr_later("Angular momentum about the spin axis, trillion kg m²/s: of each group, and of all together."),
    ),
    (1e9, tr_later("Angular momentum about the spin axis, billion kg m²/s: of each group, and of all together.")),
    (1e6, tr_later("Angular momentum about the spin axis, million kg m²/s: of each group, and of all together.")),
    (1e3, tr_later("Angular momentum about the spin axis, thousand kg m²/s: of each group, and of all together.")),
    (1.0, tr_later("Angular momentum about the spin axis, kg m²/s: of each group, and of all together.")),
)
_GROUPS = {"turning": tr_later("turning"), "still": tr_later("still"), "counter": tr_later("counter")}
_STRESSES = {"own": tr_later("own weight"), "load": tr_later("load"), "pressure": tr_later("air")}
_LEAST_SPAN = 1e-9
_ROUND_DEG = (0, 90, 180, 270, 360)
_SOLID = PathStyle("", PATHS[1].paper, (), "")
_SECOND = PathStyle("", PATHS[5].paper, (3.0, 1.5), "")


@dataclass(frozen=True)
class Chart:
    """says: what is drawn, with the units of its axes. items, and height_mm of all of it."""

    says: str
    items: tuple
    height_mm: float


def charts(answer, width_mm, units="si"):
    """The Charts of an answer by the name of their finding."""
    drawn = {
        name: chart(answer[name], width_mm, units) for name, chart in _CHARTS.items() if answer.get(name) is not None
    }
    return {name: chart for name, chart in drawn.items() if chart is not None}


def _momenta(finding, width_mm, units):
    """Bars from zero to either side, and their sum."""
    momenta = finding["angular_momentum_kg_m2_s"]
    rows = [(tr(word), momenta[name]) for name, word in _GROUPS.items() if momenta[name] is not None]
    if len(rows) < 2 or not any(value for _, value in rows):
        return None
    largest = max(abs(value) for _, value in rows)
    per, says = next((scale, says) for scale, says in _MOMENTA if largest >= scale or scale == 1.0)
    rows = [(name, value / per) for name, value in rows]
    return _bars(tr(says), rows, width_mm, together=momenta["whole"] / per)


def _stresses(finding, width_mm, units):
    """What stresses the ring, against what is safe."""
    shares = finding["shares_pa"]
    rows = [(tr(word), shares[name] / 1e6) for name, word in _STRESSES.items() if shares[name]]
    if not rows:
        return None
    whole = finding["hoop_stress_pa"] / 1e6 if len(rows) > 1 else None
    around = [(tr("around tube"), finding["tube_stress_pa"] / 1e6)] if finding["tube_stress_pa"] else []
    says = (
        tr("Stress along the ring, MPa, and around its tube; the dashed line is what is safe.")
        if around
        else tr("Stress along the ring, MPa; the dashed line is what is safe.")
    )
    return _bars(says, rows, width_mm, whole, around, line=finding["safe_stress_pa"] / 1e6)


def _bars(says, rows, width_mm, together=None, besides=(), line=None):
    """Bars of rows (name, value), under them what they come to together, in ink, and others besides; line: a value that is marked."""
    summed = None if together is None else len(rows)
    rows = [*rows, *([] if together is None else [(tr("together"), together)]), *besides]
    largest = max(abs(value) for _, value in rows)
    rows = [(name, 0.0 if abs(value) <= _NOTHING * largest else value) for name, value in rows]
    words_mm = _SPARE * max(wide_mm(name, TEXT_MM, 600) for name, _ in rows) + 2.0
    figures = [_figure(value) for _, value in rows]
    figures_mm = _SPARE * max(wide_mm(said, TEXT_MM, 600) for said in figures) + 2.0
    left, right = words_mm, width_mm - figures_mm
    values = [value for _, value in rows] + ([] if line is None else [line])
    low, high = min(0.0, *values), max(0.0, *values)
    span = (high - low) or 1.0

    def at(value):
        return left + (value - low) / span * (right - left)

    items, foot = [], len(rows) * _BAR_STEP_MM + 1.5
    for number, ((name, value), said) in enumerate(zip(rows, figures, strict=True)):
        top = 1.0 + number * _BAR_STEP_MM
        sides = np.array([[at(0.0), top], [at(value), top], [at(value), top + _BAR_MM], [at(0.0), top + _BAR_MM]])
        style = _SECOND if value < 0 else _SOLID
        is_sum = number == summed
        colour, dash = (INK, ()) if is_sum else (style.paper, style.dash_mm(HAIR_MM * 2))
        items.append(Stroke(sides, 0.3, colour, dash, closed=True, fill=colour, opacity=0.75 if is_sum else 0.3))
        down = top + _BAR_MM - 0.25 * TEXT_MM
        items.append(Text(0.0, down, name, TEXT_MM, weight=600 if is_sum else 400))
        items.append(Text(width_mm, down, said, TEXT_MM, "end", 600 if is_sum else 400))
    items.append(Stroke(np.array([[at(0.0), 0.0], [at(0.0), foot - 1.0]]), BASE_MM, INK))
    if line is not None:
        items.append(Stroke(np.array([[at(line), 0.0], [at(line), foot - 1.0]]), 0.4, SOFT, (1.4, 0.9)))
    return Chart(says, tuple(items), foot)


def _figure(value):
    return figure(value).replace("-", "−")


def _rim(finding, width_mm, units):
    gravity = finding["gravity"]
    values = np.array(gravity["round_m_s2"]) / G0_M_S2
    if np.ptp(values) <= 1e-6 * values.max(initial=0.0):
        return None
    says = tr(
        "Gravity round the rim, g, by azimuth from x toward y, °; left free the craft turns about its centre of mass."
    )
    return _plot(says, [Line(np.array(gravity["azimuth_deg"]), values, _SOLID)], width_mm, x_ticks=_ROUND_DEG)


def _tension(finding, width_mm, units):
    pull = np.array(finding["tension_along_n"]) / 1e3
    if not pull.any():
        return None
    per_m, unit = in_units(1.0, "m", units)
    says = tr("Pull along the tether, kN, by distance from the first mass, {unit}.", unit=unit)
    return _plot(says, [Line(per_m * np.array(finding["from_first_m"]), pull, _SOLID)], width_mm)


def _moving(finding, width_mm, units):
    spin = np.array(finding["spin_rpm"])
    if np.ptp(spin) <= 1e-9 * spin.max(initial=0.0):
        return None
    return _plot(
        tr("Spin, rpm, by time, s, while the mass moves."), [Line(np.array(finding["time_s"]), spin, _SOLID)], width_mm
    )


def _tumbling(finding, width_mm, units):
    """The wobble, and the energy as a share of that at the start, on one axis from 0 to 1 of a right angle and of all of it; under it how the axes
    go round the momentum."""
    time, nutation = np.array(finding["time_s"]), np.array(finding["nutation_deg"])
    energy = np.array(finding["energy_j"])
    if not energy[0]:
        return None
    minutes = time / 60 if time[-1] > 300 else time
    unit = "min" if time[-1] > 300 else "s"
    drawn = [
        Line(minutes, nutation, _SOLID, tr("angle from flat spin")),
        Line(minutes, 90 * energy / energy[0], _SECOND, tr_as("a line of a drawing", "energy")),
    ]
    says = tr(
        "Angle between its angular momentum and its axis of greatest inertia, °, by time, {unit}; dashed, its energy, 90 being all of it.",
        unit=unit,
    )
    plot, cones = _plot(says, drawn, width_mm, (0.0, 95.0)), craft_cones.spheres(finding, width_mm)
    if cones is None:
        return plot
    said, items, high_mm = cones
    over = plot.height_mm + _BETWEEN_MM
    return Chart(f"{plot.says} {said}", (*plot.items, *moved(items, 0.0, over)), over + high_mm)


def _plot(says, drawn, width_mm, y_span=None, x_ticks=None):
    left, over, right, under = _SIDES_MM
    height_mm = max(42.0, _HIGH * width_mm)
    box = (left, over, width_mm - right, height_mm - under)
    x = np.concatenate([line.x for line in drawn])
    frame = Frame(box, (float(x.min()), float(x.max())), y_span or _span(np.concatenate([line.y for line in drawn])))
    return Chart(says, (*axes(frame, 5, 4, based=False, x_ticks=x_ticks), *lines(frame, drawn)), height_mm)


def _span(values):
    low, high = float(values.min()), float(values.max())
    room = _ROOM * (high - low) or max(abs(high), _LEAST_SPAN) * _ROOM
    return low - room, high + room


_CHARTS = {
    "mass": _momenta,
    "balance": _rim,
    "move": _moving,
    "tumble": _tumbling,
    "tether": _tension,
    "hull": _stresses,
}
