"""What moves or is drawn as a curve: a ball as a sphere, all drops as one cloud of points, the unbroken part of a pour, the paths."""

import numpy as np

from ...physics.budget import spend
from .layer import Attribute, Prim, changing
from .orientation import orientations
from .parts import order, solid

_SAMPLE_BYTES = 48  # of memory: where a body is and how it is turned at one frame


def ball(sampled, body, looks):
    """A Mesh: where it is at every frame, which way it has turned, and from when to when it is seen."""
    spend(bytes=_SAMPLE_BYTES * len(body.keys.frame))
    places = (body.keys.position_m - sampled.anchor_m) * sampled.per_unit
    turns = [] if body.attitude is None else [_turns(body)]
    moves = [
        changing("xformOp:translate", "double3", body.keys.frame, places),
        *turns,
        order("xformOp:translate", *(t.name for t in turns)),
        *_seen(body.keys.frame, body.keys.alive),
    ]
    names = {n["id"]: n["name"] for n in sampled.notes["ids"]}
    return solid(sampled, body.name, body.solid, looks.of_motion(body.motion), looks.dark(), moves, names.get(body.id))


def _seen(frame, alive):
    """Samples of visibility, held, where it changes; none where the body is always seen."""
    if np.all(alive):
        return []
    at = np.concatenate([[True], alive[1:] != alive[:-1]])
    words = np.where(alive[at], "inherited", "invisible").tolist()
    if len(words) == 1:
        return [Attribute("visibility", "token", words[0])]
    return [Attribute("visibility", "token", at=frame[at], values=words)]


def _turns(body):
    """Orientation samples: at the body's keys, and between them where it turns by more than a quarter from one to the next."""
    return orientations(body.keys.frame, body.keys.time_s, body.attitude, body.name)


def droplets(sampled, looks):
    """Points of all drops: positions, velocities and accelerations at the same times, or readers drop the last two; of no width
    while they are not there. A second of the file is `pace` seconds of the scene, and velocities are of the file."""
    drops = sampled.drops
    pace, bend = (v[:, None, None] for v in (sampled.pace, sampled.clock.bend_1_s))
    accelerations = drops.acceleration_m_s2 * pace**2 + drops.velocity_m_s * bend
    points = _single((drops.position_m - sampled.anchor_m) * sampled.per_unit)
    widths = _single(drops.diameter_m * drops.alive * sampled.per_unit)
    shown, bound, apis = looks.water()
    attributes = [
        *(
            Attribute(name, kind, at=sampled.frame, values=values)
            for name, kind, values in (
                ("points", "point3f[]", points),
                ("velocities", "vector3f[]", _single(drops.velocity_m_s * pace * sampled.per_unit)),
                ("accelerations", "vector3f[]", _single(accelerations * sampled.per_unit)),
            )
        ),
        Attribute("widths", "float[]", at=sampled.frame, values=widths, interpolation="vertex"),
        Attribute("extent", "float3[]", at=sampled.frame, values=boxes(points, widths)),
        Attribute("ids", "int64[]", drops.ids),
        Attribute("primvars:id", "int[]", drops.ids, interpolation="vertex"),
        *shown,
    ]
    return Prim("Points", "Droplets", attributes, relations=bound, apis=apis)


def _single(numbers):
    return numbers.astype(np.float32)


def boxes(points, widths):
    """Corners (T, 2, 3) that hold points (T, N, 3) of widths (T, N) or (T, 1)."""
    half = widths[..., None] / 2
    return np.stack([np.min(points - half, axis=1), np.max(points + half, axis=1)], axis=1)


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
            Attribute("purpose", "token", "guide", uniform=True),
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
