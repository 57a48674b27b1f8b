"""Where the deck's grid lies in a picture that a camera aboard took: the answer to a `GridRequest` as plain data."""

from typing import Any

import numpy as np

from ...errors import BadInput
from ...physics.constants import PERSON_HEIGHT_M
from ...shots.match.deck_grid import deck_grid
from ..validation_errors import wrong
from .grid_request import GridRequest
from .match_reading import check_camera, through

_TENTH = 1  # digits of a pixel


def of_request(request: GridRequest) -> dict[str, Any]:
    """The answer. Raises BadInput where the camera looks nowhere or stands beyond the deck."""
    camera, radius_m = request.camera, request.radius_m
    check_camera("camera", camera, radius_m)
    if camera.position.height_m <= 0.0:
        raise BadInput(wrong("camera.position.height_m", camera.position.height_m, "above the deck: above 0 m"))
    none = np.zeros((1, 2))
    grid = deck_grid(through([camera], np.zeros(1), none, none[0]), radius_m, PERSON_HEIGHT_M)
    upright = None if grid.upright is None else _pixels(grid.upright)
    return {
        "step_m": grid.step_m,
        "lines": [_line(line) for line in grid.lines],
        "upright": upright,
        "upright_m": PERSON_HEIGHT_M,
    }


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
