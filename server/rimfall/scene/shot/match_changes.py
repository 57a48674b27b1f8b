"""What would have to be otherwise for a path to be possible, in words."""

import math

from ...language import tr
from ...phrases import length, speed
from ..size.wish_words import three_figures

_NB = "\u00a0"


def change_in_words(question, one, fit, units):
    """What would have to be otherwise, as the rest of "possible …"."""
    known = question.request.known
    match one.kind:
        case "radius_m" | "spin_rpm" | "gravity_g":
            return _compared(one.kind, known, fit, units)
        case "radius_and_spin":
            return _another(known, fit, _spans(fit, units))
        case "habitat_and_speed":
            figures, thrown = _spans(fit, units), speed(fit["speed_m_s"]["value"], units)
            return _another(known, fit, tr("{figures}, and thrown at {speed}", figures=figures, speed=thrown))
        case "speed":
            thrown = speed(fit["speed_m_s"]["value"], units)
            if known.speed == 0:
                return tr("if it was thrown and not dropped: at {speed}", speed=thrown)
            return tr("if it left at {speed}, not {before}", speed=thrown, before=speed(known.speed, units))
        case "start":
            along, height = (length(fit[name]["value"], units) for name in ("along_m", "height_m"))
            return tr("if it was let go elsewhere: at {along} along and {height} up", along=along, height=height)
        case "frame_rate":
            return _another_rate(fit)
        case "air":
            return _another_air(fit)
        case _:
            figures = _spans(fit, units)
            return tr("if it is seen in a mirror, or the habitat turns the other way round: {figures}", figures=figures)


def _compared(kind, known, fit, units):
    """One figure of the habitat that would have to be otherwise."""
    row, before = fit[kind], getattr(known, kind)
    more = row["value"] > before
    if kind == "radius_m":
        told = {"radius": _at(row, "m", units), "before": length(before, units)}
        if more:
            return tr("if the habitat is wider: {radius} in radius, not {before}", **told)
        return tr("if the habitat is narrower: {radius} in radius, not {before}", **told)
    unit = "rpm" if kind == "spin_rpm" else "g"
    told = {"figure": _at(row, unit, units), "before": f"{three_figures(before)}{_NB}{unit}"}
    if kind == "spin_rpm":
        if more:
            return tr("if it turns faster: {figure}, not {before}", **told)
        return tr("if it turns slower: {figure}, not {before}", **told)
    if more:
        return tr("if gravity at the deck is higher: {figure}, not {before}", **told)
    return tr("if gravity at the deck is lower: {figure}, not {before}", **told)


def _another(known, fit, figures):
    if known.radius_m is None or fit["radius_m"]["value"] is None:
        return tr("in another habitat, {figures}", figures=figures)
    if fit["radius_m"]["value"] > known.radius_m:
        return tr("in a wider habitat, {figures}", figures=figures)
    return tr("in a narrower habitat, {figures}", figures=figures)


def _at(row, unit, units):
    """A figure that is decided, or the end that is."""

    def said(value):
        return length(value, units) if unit == "m" else f"{three_figures(value)}{_NB}{unit}"

    if row["decided"] or (row["low"] is None and row["high"] is None):
        return said(row["value"])
    if row["low"] is not None:
        return tr("at least {figure}", figure=said(row["low"]))
    return tr("no more than {figure}", figure=said(row["high"]))


def _spans(fit, units):
    parts = []
    if fit["radius_m"]["value"] is not None:
        parts.append(tr("{length} in radius", length=_at(fit["radius_m"], "m", units)))
    parts.append(tr("turning at {spin}", spin=_at(fit["spin_rpm"], "rpm", units)))
    if fit["gravity_g"]["value"] is not None:
        parts.append(tr("with {gravity} at its deck", gravity=_at(fit["gravity_g"], "g", units)))
    return ", ".join(parts)


def _another_rate(fit):
    if "frame_rate" in fit:
        return tr("if the camera took {rate} frames a second", rate=three_figures(fit["frame_rate"]["value"]))
    pace = fit["pace"]["value"]
    if pace < 1:
        return tr("if its clock is slowed down: {pace} s pass in a second of it", pace=three_figures(pace))
    return tr("if its clock is sped up: {pace} s pass in a second of it", pace=three_figures(pace))


def _another_air(fit):
    if "pressure_kpa" in fit:
        return tr("if the air has {pressure}", pressure=figure_of(fit["pressure_kpa"], "kPa"))
    share = f"{lost(fit['drag_1_m']['value'])}{_NB}%"
    return tr("if a medium slows it down, by {share} of its speed in each metre", share=share)


def figure_of(row, unit):
    """The value of a row of a fit, with its unit."""
    return f"{three_figures(row['value'])}{_NB}{unit}"


def lost(drag_1_m):
    """The share of its speed that a thing of so much drag loses in a metre, in per cent."""
    return three_figures(-100.0 * math.expm1(-drag_1_m))
