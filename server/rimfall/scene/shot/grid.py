"""Where the deck's grid lies in a picture that a camera aboard took: the answer to a `GridRequest` as plain data."""

from typing import Any

import numpy as np

from ...errors import BadInput
from ...language import tr, tr_as
from ...physics.constants import PERSON_HEIGHT_M
from ...shots.match.deck_grid import deck_grid
from ..validation_errors import wrong
from .grid_request import GridRequest
from .match_reading import check_camera, rising_times, through

_TENTH = 1  # digits of a pixel


def of_request(request: GridRequest) -> dict[str, Any]:
    """The answer. Raises BadInput where the camera looks nowhere or stands beyond the deck."""
    grid = deck_grid(_sight(request), request.radius_m, PERSON_HEIGHT_M)
    upright = None if grid.upright is None else _pixels(grid.upright)
    return {
        "step_m": grid.step_m,
        "lines": [_line(line) for line in grid.lines],
        "upright": upright,
        "upright_m": PERSON_HEIGHT_M,
    }


def _sight(request):
    """Through the camera, or through where its rows have it at the time; nothing is seen in it yet."""
    many = isinstance(request.camera, list)
    cameras = request.camera if many else [request.camera]
    if not cameras:
        raise BadInput(wrong("camera", tr("no rows"), tr_as("of rows", "at least one")))
    for n, camera in enumerate(cameras):
        at = f"camera.{n}" if many else "camera"
        check_camera(at, camera, request.radius_m)
        if camera.position.height_m <= 0.0:
            raise BadInput(wrong(f"{at}.position.height_m", camera.position.height_m, tr("above the deck: above 0 m")))
        if len(cameras) > 1 and camera.time_s is None:
            raise BadInput(wrong(f"{at}.time_s", None, tr("the row's time, where there are several")))
    times = rising_times(cameras, "camera") if len(cameras) > 1 else np.zeros(1)
    seen = np.zeros((len(cameras), 2))
    return through(cameras, times, seen, seen[0]).at(np.array([request.time_s]))


def _line(line):
    return {
        "of": line.of,
        "at_m": line.at_m,
        "strong": line.strong,
        "runs": [_pixels(run) for run in line.runs],
        "mark": None if line.mark is None else _pixels(line.mark),
    }


def _pixels(px):
    return np.round(px, _TENTH).tolist()
