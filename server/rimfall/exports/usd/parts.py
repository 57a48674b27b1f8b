"""The habitat and what it is seen from: the node that turns, the hull's meshes, the cameras."""

import numpy as np

from .layer import Attribute, Prim, changing

FILM_MM = 36.0  # width of the cameras' film; with it a focal length says an angle
NEAR_M = 0.01


def order(*names):
    """In which order a prim's transforms hold."""
    return Attribute("xformOpOrder", "token[]", list(names), uniform=True)


def moved(by):
    """Attributes of a prim moved by a vector (3,), file units."""
    return [Attribute("xformOp:translate", "double3", np.asarray(by, dtype=float)), order("xformOp:translate")]


def turning(sampled):
    """Attributes of the node that turns: degrees about the file's own X, Y or Z that run on past 360, a sample a frame."""
    k = int(np.argmax(np.abs(sampled.axis)))
    op = f"xformOp:rotate{'XYZ'[k]}"
    turned = changing(op, "double", sampled.frame, np.degrees(sampled.angle_rad) * np.sign(sampled.axis[k]))
    if not sampled.pivot_m.any():
        return [turned, order(op)]
    pivot = Attribute("xformOp:translate:pivot", "double3", sampled.pivot_m * sampled.per_unit)
    return [pivot, turned, order(pivot.name, op, f"!invert!{pivot.name}")]


def hull(sampled, mesh, looks):
    """A Mesh of triangles, not to be smoothed."""
    points = (mesh.position_m - sampled.anchor_m) * sampled.per_unit
    shown, bound, apis = looks.of_hull(mesh.colour)
    attributes = [
        Attribute("points", "point3f[]", points),
        Attribute("faceVertexCounts", "int[]", np.full(len(mesh.faces), 3)),
        Attribute("faceVertexIndices", "int[]", np.asarray(mesh.faces).ravel()),
        Attribute("normals", "normal3f[]", mesh.normal, interpolation="vertex"),
        Attribute("extent", "float3[]", np.stack([points.min(axis=0), points.max(axis=0)])),
        Attribute("orientation", "token", "rightHanded", uniform=True),
        Attribute("subdivisionScheme", "token", "none", uniform=True),
        Attribute("doubleSided", "bool", bool(mesh.both_sides), uniform=True),
        *shown,
    ]
    return Prim("Mesh", mesh.name, attributes, relations=bound, apis=apis)


def camera(sampled, seat):
    """A Camera of a Camera: its place as a matrix, a sample a frame where it follows something."""
    matrix = np.zeros((len(seat.position_m), 4, 4))
    matrix[:, :3, :3], matrix[:, 3, :3], matrix[:, 3, 3] = seat.axes, seat.position_m * sampled.per_unit, 1.0
    tall = FILM_MM / seat.aspect
    far = 100.0 + 10.0 * float(np.max(np.linalg.norm(seat.position_m - sampled.pivot_m, axis=1)))
    at = sampled.frame if len(matrix) > 1 else sampled.frame[:1]
    attributes = [
        Attribute("focalLength", "float", tall / 2 / np.tan(np.radians(seat.fov_deg) / 2)),
        Attribute("horizontalAperture", "float", FILM_MM),
        Attribute("verticalAperture", "float", tall),
        Attribute("clippingRange", "float2", np.array([max(NEAR_M, 1e-6 * far), far]) * sampled.per_unit),
        changing("xformOp:transform", "matrix4d", at, matrix),
        order("xformOp:transform"),
    ]
    return Prim("Camera", seat.name, attributes)
