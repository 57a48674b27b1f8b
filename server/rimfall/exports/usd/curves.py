"""What is drawn as a curve: the unbroken part of a pour, which grows and tapers, and the paths."""

import numpy as np

from .bodies import boxes
from .layer import Attribute, Prim, changing

PATH_SHARE = 1 / 300  # a drawn path's width to the largest side of the box it fits
LEAST_PATH_M = 1e-3


def streams(sampled, looks):
    """A BasisCurves a pour: as many points at every time, of no width while nothing flows."""
    return [_stream(sampled, one, looks) for one in sampled.streams]


def _stream(sampled, stream, looks):
    points = (stream.position_m - sampled.anchor_m) * sampled.per_unit
    widths = stream.width_m * sampled.per_unit
    return _curve(
        stream.name,
        points.shape[1],
        [
            changing("points", "point3f[]", sampled.frame, points),
            changing("widths", "float[]", sampled.frame, widths, interpolation="vertex"),
            changing("extent", "float3[]", sampled.frame, boxes(points, widths)),
        ],
        looks.water(),
    )


def paths(sampled, looks):
    """A BasisCurves a path that has two points or more."""
    return [_path(sampled, line, looks) for line in sampled.lines if len(line.position_m) > 1]


def _path(sampled, line, looks):
    points = (line.position_m - sampled.anchor_m) * sampled.per_unit
    width = max(LEAST_PATH_M * sampled.per_unit, PATH_SHARE * float(np.max(np.ptp(points, axis=0))))
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
