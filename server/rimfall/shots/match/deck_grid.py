"""The deck's grid as a camera that rides with it sees it: lines along the deck and along the axis, cut to the picture, in pixels.

It is there to be laid over a plate: once it fits the floor in the picture, the camera is the one that filmed it.
"""

from dataclasses import dataclass

import numpy as np

from ...physics import frames
from .sights import NEAREST_M, CameraPixels

STRONG = 5  # every so many lines one is strong
_STEPS = (1.0, 2.0, 5.0)
_STEPS_TO_NEAREST = 4.0  # of the grid, at least, between the camera and the nearest deck that it sees
_THIN_TO, _STRONG_TO = 3.0, 10.0  # times as far as that deck
_LEAST_M = 0.01  # that the nearest deck is taken to be off
_LOOKS = 17  # rays a side, to find which part of the deck is seen
_DENSE = 257  # points of a line before it is cut
_BENDS = 17  # points of an arc that is kept
_OVER = 0.05  # of the picture, beyond whose edges lines go on
_INSET = 0.03  # of the picture, within whose edges marks keep


@dataclass(frozen=True)
class GridLine:
    """A line of the grid. of: which place it keeps, "along_m" or "axial_m"; at_m: that place; runs: pixels (n, 2) each; mark: where its
    figure may stand, (2,) or None."""

    of: str
    at_m: float
    strong: bool
    runs: list[np.ndarray]
    mark: np.ndarray | None


@dataclass(frozen=True)
class DeckGrid:
    """step_m: from line to line. lines: those that are seen. upright: pixels (2, 2), foot and head of a person on the deck where the camera
    looks, None where that is not seen."""

    step_m: float
    lines: list[GridLine]
    upright: np.ndarray | None


def deck_grid(sight: CameraPixels, radius_m: float, person_m: float) -> DeckGrid:
    """The grid of a deck of radius_m through the first row of a sight, whose camera is between axis and deck."""
    far, hits = _deck_seen(sight, radius_m)
    nearest = max(float(far.min()), _LEAST_M)
    step = _step(nearest / _STEPS_TO_NEAREST)
    lines = []
    for strong, reach in ((False, _THIN_TO * nearest), (True, _STRONG_TO * nearest)):
        near = hits[far <= reach]
        low, high = near.min(axis=0), near.max(axis=0)
        for k, name in enumerate(("along_m", "axial_m")):
            lines += [
                line
                for at_m in _places(low[k], high[k], step, strong)
                if (line := _line(sight, radius_m, name, at_m, strong, (low, high), reach, step)).runs
            ]
    return DeckGrid(step, lines, _upright(sight, radius_m, person_m))


def _deck_seen(sight, radius_m):
    """Distances (n,) to the deck along rays over the whole picture, and the (along, axial) places (n, 2) met."""
    width, height = 2 * sight.centre_px
    x, y = np.meshgrid(np.linspace(0, width, _LOOKS), np.linspace(0, height, _LOOKS))
    off = (np.stack([x, y], axis=-1).reshape(-1, 2) - sight.centre_px) / sight.focal_px[0]
    eye, right, up, forward = (v[0] for v in sight.axes(radius_m))
    ray = forward + off[:, :1] * right - off[:, 1:] * up
    ray /= np.linalg.norm(ray, axis=1, keepdims=True)
    inside = radius_m**2 - float(eye[:2] @ eye[:2])
    flat, toward = np.sum(ray[:, :2] ** 2, axis=1), ray[:, :2] @ eye[:2]
    meets = flat > 1e-12  # a ray along the axis meets no deck
    far = (np.sqrt(toward[meets] ** 2 + flat[meets] * inside) - toward[meets]) / flat[meets]
    at = eye + far[:, None] * ray[meets]
    first = sight.position[0, 0]
    azimuth = np.arctan2(at[:, 1], at[:, 0]) - first / radius_m
    along = first + radius_m * (np.mod(azimuth + np.pi, 2 * np.pi) - np.pi)
    return far, np.stack([along, at[:, 2]], axis=-1)


def _step(most_m):
    ten = 10.0 ** np.floor(np.log10(most_m))
    return float(max(s * ten for s in _STEPS if s * ten <= most_m * (1 + 1e-9)))


def _places(low, high, step, strong):
    """Where the lines are; of a picture without strong ones, those that are not."""
    whole = np.arange(np.floor(low / step), np.ceil(high / step) + 1)
    return [float(n * step) for n in whole if (n % STRONG == 0) == strong]


def _line(sight, radius_m, name, at_m, strong, box, reach, step):
    low, high = box
    other = 1 if name == "along_m" else 0
    run = np.linspace(low[other] - step, high[other] + step, _DENSE)
    places = np.zeros((_DENSE, 3))
    places[:, 0], places[:, 2] = (at_m, run) if other else (run, at_m)
    px, far, ahead = _seen(sight, radius_m, places)
    size = 2 * sight.centre_px
    within = ahead & (far <= reach * 1.2)
    shown = within & np.all((px >= -_OVER * size) & (px <= (1 + _OVER) * size), axis=1)
    keep = 2 if other else _BENDS  # along the axis the deck is straight
    runs = [px[_few(first, last, keep)] for first, last in _stretches(shown) if last > first]
    marked = shown & np.all((px >= _INSET * size) & (px <= (1 - _INSET) * size), axis=1)
    mark = px[_marked(px, far, marked, other)] if strong and np.any(marked) else None
    return GridLine(name, at_m, strong, runs, mark)


def _marked(px, far, marked, nearest):
    """Which point takes the figure: the nearest of a line along the axis, the leftmost of one along the deck."""
    of = far if nearest else px[:, 0]
    return int(np.argmin(np.where(marked, of, np.inf)))


def _few(first, last, keep):
    return np.unique(np.linspace(first, last, min(keep, last - first + 1)).round().astype(int))


def _stretches(shown):
    """First and last index of each stretch of points that are shown."""
    edges = np.diff(np.concatenate([[0], shown.astype(int), [0]]))
    return zip(np.flatnonzero(edges == 1).tolist(), (np.flatnonzero(edges == -1) - 1).tolist(), strict=True)


def _seen(sight, radius_m, places):
    """Pixels (n, 2) of places (n, 3), how far off they are (n,), and whether they are before the camera (n,)."""
    rotating = frames.place_to_rotating(radius_m, places)
    eye, _, _, forward = (v[0] for v in sight.axes(radius_m))
    off = rotating - eye
    return sight.pixels(radius_m, rotating), np.linalg.norm(off, axis=1), off @ forward > NEAREST_M


def _upright(sight, radius_m, person_m):
    along, _, axial = sight.look_at[0]
    px, _, ahead = _seen(sight, radius_m, np.array([[along, 0.0, axial], [along, person_m, axial]]))
    return px if np.all(ahead) and radius_m > person_m else None
