"""Could this path be: the answer to a `MatchRequest` as one JSON document.

`fit`, `residual_m`, `at` and `path` are of the best habitat that what is known allows; each of `changes` has a fit and a motion of its
own. Arrays are lists; rows are counted from 0 as in the request.
"""

import numpy as np
from pydantic_core import to_json

from ... import __version__
from ...language import tr, tr_later
from ...phrases import caution
from ...shots.match.trials import QUANTITIES
from ...shots.match.verdicts import judged
from . import match_words as words
from .match_changes import change_in_words
from .match_motion import scene_of
from .match_reading import ROOM_AIR, asked
from .match_reasons import reason

ANSWER_VERSION = 1
_DENSE = 241
LABELS = {
    "radius_m": (tr_later("Radius"), "m"),
    "spin_rpm": (tr_later("Spin"), "rpm"),
    "gravity_g": (tr_later("Gravity at the deck"), "g"),
    "speed_m_s": (tr_later("Speed at the first row"), "m/s"),
    "spinward_m_s": (tr_later("Speed spinward"), "m/s"),
    "up_m_s": (tr_later("Speed upward"), "m/s"),
    "axial_m_s": (tr_later("Speed along the axis"), "m/s"),
    "along_m": (tr_later("Along the deck at the first row"), "m"),
    "height_m": (tr_later("Height at the first row"), "m"),
    "axial_m": (tr_later("Along the axis at the first row"), "m"),
    "drag_1_m": (tr_later("Drag"), "1/m"),
    "pressure_kpa": (tr_later("Air pressure"), "kPa"),
    "frame_rate": (tr_later("Frame rate of the camera"), "fps"),
    "pace": (tr_later("Seconds in one of the track"), ""),
}


def as_json(request, units="si"):
    """The answer to a MatchRequest as JSON bytes. Raises BadInput."""
    return to_json(as_data(request, units))


def as_data(request, units="si"):
    """The same as plain data."""
    question = asked(request)
    told = judged(question.sight, question.known, question.resistance, question.reference)
    fit = _fit(question, told.trial, told.figures)
    changes = [_change(question, told, one, units) for one in told.changes]
    off, left_out = told.beside, _left_out(question, told, units)
    return {
        "rimfall_match": ANSWER_VERSION,
        "program": __version__,
        "verdict": told.verdict,
        "says": words.verdict(question, told, fit, changes, units),
        "short": tr(words.SHORT[told.verdict]),
        "words": words.paragraphs(question, told, fit, changes, units),
        "left_out": left_out,
        "reasons": [_reason(question, told, sign, units) for sign in told.signs],
        "changes": changes,
        "fit": fit,
        "motion": scene_of(question, told.trial),
        "at": _at_rows(question, told.trial),
        "path": _path(question, told.trial, np.linspace(0.0, told.trial.problem.sight.time_s[-1], _DENSE)),
        "residual_m": _of_rows(question, np.linalg.norm(off.off_m, axis=1)),
        "residual": _residual(question, told.trial),
        "chi2_per_freedom": told.trial.chi2 / told.trial.problem.freedom if told.trial.problem.freedom > 0 else None,
        "freedom": told.trial.problem.freedom,
        "p_value": told.trial.p_value,
        "extra_acceleration_g": None if off.extra_g is None else _of_rows(question, off.extra_g),
        "extra_acceleration_sd_g": None if off.extra_g is None else _of_rows(question, off.extra_sd_g),
        "accuracy": {"value": float(question.sight.sd[0]), "unit": "px" if question.sight.in_pixels else "m"},
        "assumptions": words.assumptions(question, told),
        "caution": caution(),
    }


def _of_rows(question, values):
    """Values (n,) of the rows that were fitted as a list by row; None of those that were left out."""
    return _padded(values.tolist(), len(question.sight.time_s))


def _padded(values, count):
    return [*values, *[None] * (count - len(values))]


def _left_out(question, told, units):
    """The last rows, which are not of the free flight, and why; None where all are."""
    if told.end is None:
        return None
    return {
        "first": told.end.rows,
        "last": len(question.sight.time_s) - 1,
        "kind": told.end.kind,
        "says": words.left_out(question, told.end, units),
    }


def _fit(question, trial, figures):
    """The quantities by name, each with label, unit, value and interval."""
    fit = {}
    for name in QUANTITIES:
        figure = figures[name]
        if name in ("medium", "pace"):
            fit |= _of_medium(question, trial, figure) if name == "medium" else _of_pace(question, trial, figure)
            continue
        if name.startswith("axial") and not question.sight.has_axial:
            continue
        unseen = not question.sight.has_deck and trial.problem.unknowns.known.radius_m is None
        if unseen and name in ("radius_m", "gravity_g", "height_m", "along_m"):
            fit[name] = _row(name, None, None, None, False, False)
            continue
        fit[name] = _row(name, figure.value, figure.low, figure.high, figure.decided, figure.known)
    return fit


def _row(name, value, low, high, decided, known):
    label, unit = LABELS[name]
    return {
        "label": tr(label),
        "unit": unit,
        "value": value,
        "low": low,
        "high": high,
        "decided": decided,
        "known": known,
    }


def _of_medium(question, trial, figure):
    """The drag a metre of a body that is not known, or the pressure about one that is."""
    if trial.problem.unknowns.known.medium is not None:
        return {}
    air = question.request.known.air
    known_body = question.body is not None and question.body.diameter_m > 0
    name = "pressure_kpa" if known_body else "drag_1_m"
    times = (ROOM_AIR[0] if air is None else air.pressure_kpa) if known_body else question.drag_1_m
    low, high = (None if end is None else end * times for end in (figure.low, figure.high))
    return {name: _row(name, figure.value * times, low, high, figure.decided, False)}


def _of_pace(question, trial, figure):
    """The rate at which the camera took its frames, or how fast the track's clock goes where nothing says at which it is played."""
    if trial.problem.unknowns.known.pace is not None:
        return {}
    played = question.playback_fps or (question.request.picture and question.request.picture.fps)
    if not played:
        return {"pace": _row("pace", figure.value, figure.low, figure.high, figure.decided, False)}
    played = float(words.rate_of(played))
    low, high = (None if end is None else played / end for end in (figure.high, figure.low))
    return {"frame_rate": _row("frame_rate", played / figure.value, low, high, figure.decided, False)}


def _change(question, told, change, units):
    fit = _fit(question, change.trial, change.figures)
    return {
        "kind": change.kind,
        "says": change_in_words(question, change, fit, units),
        "p_value": change.trial.p_value,
        "fit": fit,
        "motion": scene_of(question, change.trial),
    }


def _reason(question, told, sign, units):
    return {
        "kind": sign.kind,
        "first": sign.first,
        "last": sign.last,
        "at": sign.at,
        "time_s": question.first_s + float(question.sight.time_s[sign.at]),
        "says": reason(question, sign, units),
    }


def _path(question, trial, time_s):
    """Where the nearest free path is at times (n,) after the first row, aboard and, of a picture, in it; None behind the camera."""
    flown = trial.problem.flown(trial.theta[None], time_s)
    height = flown.radius_m[0] - np.hypot(flown.rotating_m[0, :, 0], flown.rotating_m[0, :, 1])
    out = {
        "time_s": (question.first_s + time_s).tolist(),
        "along_m": flown.along_m[0].tolist(),
        "height_m": height.tolist(),
        "axial_m": flown.rotating_m[0, :, 2].tolist(),
    }
    if not question.sight.in_pixels:
        return out | {"x_px": None, "y_px": None}
    seen = question.sight.at(time_s).expected(flown)[0]
    behind = (
        question.sight.at(time_s).behind(flown)[0] if hasattr(question.sight, "behind") else np.zeros(len(seen), bool)
    )
    columns = [[None if hidden else v for v, hidden in zip(seen[:, k].tolist(), behind, strict=True)] for k in (0, 1)]
    return out | {"x_px": columns[0], "y_px": columns[1]}


def _at_rows(question, trial):
    """The same at the rows; None of those that were left out."""
    at = _path(question, trial, trial.problem.sight.time_s)
    out = {name: values and _padded(values, len(question.sight.time_s)) for name, values in at.items()}
    return out | {"time_s": (question.first_s + question.sight.time_s).tolist()}


def _residual(question, trial):
    """Seen less fitted, by what is seen."""
    sight = trial.problem.sight
    off = sight.seen - sight.expected(trial.flown)[0]
    return {name: _of_rows(question, off[:, k]) for k, name in enumerate(sight.names)}
