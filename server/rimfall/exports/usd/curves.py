"""What is drawn as a curve: the unbroken part of a pour, which grows and tapers, and the paths."""

import numpy as np

from .bodies import boxes
from .layer import Attribute, Prim, changing

PATH_SHARE = 1 / 300  # a drawn path's width to the largest side of the box it fits
LEAST_PATH_M = 1e-3


def streams(shot, looks):
    """A BasisCurves a pour: as many points at every time, of no width while nothing flows."""
    return [_stream(shot, one, looks) for one in shot.streams]


def _stream(shot, stream, looks):
    points = (stream.position_m - shot.anchor_m) * shot.per_unit
    widths = stream.width_m * shot.per_unit
    return _curve(
        stream.name,
        points.shape[1],
        [
            changing("points", "point3f[]", shot.frame, points),
            changing("widths", "float[]", shot.frame, widths, interpolation="vertex"),
            changing("extent", "float3[]", shot.frame, boxes(points, widths)),
        ],
        looks.water(),
    )


def paths(shot, looks):
    """A BasisCurves a path that has two points or more."""
    return [_path(shot, line, looks) for line in shot.lines if len(line.position_m) > 1]


def _path(shot, line, looks):
    points = (line.position_m - shot.anchor_m) * shot.per_unit
    width = max(LEAST_PATH_M * shot.per_unit, PATH_SHARE * float(np.max(np.ptp(points, axis=0))))
    return _curve(
        line.name,
        len(points),
        [
            Attribute("points", "point3f[]", points),
            Attribute("widths", "float[]", np.array([width]), interpolation="constant"),
            Attribute("extent", "float3[]", boxes(points[None], np.array([[width]]))[0]),
        ],
        looks.of_motion(line.motion),
    )


def _curve(name, count, attributes, worn):
    shown, bound, apis = worn
    kinds = [
        Attribute("type", "token", "linear", uniform=True),
        Attribute("wrap", "token", "nonperiodic", uniform=True),
        Attribute("curveVertexCounts", "int[]", np.array([count])),
    ]
    return Prim("BasisCurves", name, [*kinds, *attributes, *shown], relations=bound, apis=apis)
