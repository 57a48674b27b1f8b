"""The habitat and what it is seen from: the node that turns, the hull's meshes, the cameras; and the materials, one a colour."""

import numpy as np

from ..names import element_names
from ..palette import DARK, WATER, linear, style_of
from .layer import Attribute, Prim, changing
from .orientation import orientations

FILM_M = 0.036  # width of the cameras' film; with it a focal length says an angle
TENTHS = (
    10.0  # lenses and films are in tenths of a scene unit (UsdGeomCamera, "Units of Measure for Camera Properties")
)
NEAR_M = 0.01


def order(*names):
    """In which order a prim's transforms hold."""
    return Attribute("xformOpOrder", "token[]", list(names), uniform=True)


def moved(by):
    """Attributes of a prim moved by a vector (3,), file units."""
    return [Attribute("xformOp:translate", "double3", np.asarray(by, dtype=float)), order("xformOp:translate")]


def turning(sampled):
    """Attributes of the node that turns: degrees about the file's own X, Y or Z that run on past 360, a sample a frame."""
    if sampled.attitude is not None:
        return _tumbling(sampled)
    k = int(np.argmax(np.abs(sampled.axis)))
    op = f"xformOp:rotate{'XYZ'[k]}"
    turned = changing(op, "double", sampled.frame, np.degrees(sampled.angle_rad) * np.sign(sampled.axis[k]))
    if not sampled.pivot_m.any():
        return [turned, order(op)]
    pivot = Attribute("xformOp:translate:pivot", "double3", sampled.pivot_m * sampled.per_unit)
    return [pivot, turned, order(pivot.name, op, f"!invert!{pivot.name}")]


def _tumbling(sampled):
    """The same of a habitat whose axis moves: its orientation, as often as a frame and wherever it turns by more than a quarter between two."""
    turned = orientations(sampled.frame, sampled.time_s, sampled.attitude, "habitat", "quatd")
    pivot = Attribute("xformOp:translate:pivot", "double3", sampled.pivot_m * sampled.per_unit)
    return [pivot, turned, order(pivot.name, turned.name, f"!invert!{pivot.name}")]


def hull(sampled, mesh, looks):
    """A Mesh of triangles of the habitat, not to be smoothed."""
    points = (mesh.position_m - sampled.anchor_m) * sampled.per_unit
    shown, bound, apis = looks.worn(mesh.material, mesh.colour, 0.8)
    attributes = [
        *triangles(points, mesh.normal, mesh.faces),
        Attribute("doubleSided", "bool", bool(mesh.both_sides), uniform=True),
        *shown,
    ]
    return Prim("Mesh", mesh.name, attributes, relations=bound, apis=apis)


def triangles(points, normal, faces):
    """Attributes of a mesh of triangles: points, normal (V, 3), faces (F, 3)."""
    return [
        Attribute("points", "point3f[]", points),
        Attribute("faceVertexCounts", "int[]", np.full(len(faces), 3)),
        Attribute("faceVertexIndices", "int[]", np.asarray(faces).ravel()),
        Attribute("normals", "normal3f[]", normal, interpolation="vertex"),
        Attribute("extent", "float3[]", np.stack([points.min(axis=0), points.max(axis=0)])),
        Attribute("orientation", "token", "rightHanded", uniform=True),
        Attribute("subdivisionScheme", "token", "none", uniform=True),
    ]


def solid(sampled, name, one, worn, dark=None, more=(), shown_name=None):
    """A Mesh of a Solid, with its places on a texture; worn, dark: `Looks.worn` of its faces and of those that are darker; more:
    further attributes."""
    shown, bound, apis = worn
    attributes = [
        *triangles(one.position_m * sampled.per_unit, one.normal, one.faces),
        Attribute("primvars:st", "texCoord2f[]", one.uv, interpolation="vertex"),
        *more,
        *shown,
    ]
    if not np.any(one.dark):
        return Prim("Mesh", name, attributes, relations=bound, apis=apis, shown_name=shown_name)
    attributes.append(Attribute("subsetFamily:materialBind:familyType", "token", "partition", uniform=True))
    parts = [
        _subset(label, np.flatnonzero(which), of)
        for label, which, of in (("light", ~one.dark, worn), ("dark", one.dark, dark))
    ]
    return Prim("Mesh", name, attributes, parts, relations=bound, apis=apis, shown_name=shown_name)


def _subset(name, faces, worn):
    _, bound, apis = worn
    attributes = [
        Attribute("elementType", "token", "face", uniform=True),
        Attribute("familyName", "token", "materialBind", uniform=True),
        Attribute("indices", "int[]", faces),
    ]
    return Prim("GeomSubset", name, attributes, relations=bound, apis=apis)


def prop(sampled, one, looks):
    """What stands by a motion, or goes with it."""
    worn = looks.worn(one.material, one.colour, 0.6)
    if one.position_m is None:
        return solid(sampled, one.name, one.solid, worn)
    place = changing("xformOp:translate", "double3", sampled.frame, one.position_m * sampled.per_unit)
    turn = changing("xformOp:orient", "quatf", sampled.frame, one.turn)
    return solid(sampled, one.name, one.solid, worn, more=[place, turn, order(place.name, turn.name)])


def camera(sampled, seat):
    """A Camera of a Camera: its place as a matrix, a sample a frame where it follows something."""
    matrix = np.zeros((len(seat.position_m), 4, 4))
    matrix[:, :3, :3], matrix[:, 3, :3], matrix[:, 3, 3] = seat.axes, seat.position_m * sampled.per_unit, 1.0
    wide = FILM_M * sampled.per_unit * TENTHS
    tall = wide / seat.aspect
    far = 100.0 + 10.0 * float(np.max(np.linalg.norm(seat.position_m - sampled.pivot_m, axis=1)))
    focal = tall / 2 / np.tan(np.radians(np.atleast_1d(seat.fov_deg)) / 2)
    at = sampled.frame if len(matrix) > 1 else sampled.frame[:1]
    attributes = [
        changing("focalLength", "float", sampled.frame[: len(focal)], focal),
        Attribute("horizontalAperture", "float", wide),
        Attribute("verticalAperture", "float", tall),
        Attribute(
            "clippingRange", "float2", np.array([max(NEAR_M, 1e-6 * far, seat.near_m or 0.0), far]) * sampled.per_unit
        ),
        changing("xformOp:transform", "matrix4d", at, matrix),
        order("xformOp:transform"),
    ]
    return Prim("Camera", seat.name, attributes)


class Looks:
    """The materials of a layer, under the scope at `path`; motions: names of the scene's."""

    def __init__(self, path, motions):
        self.path, self.materials = path, {}
        self._called = element_names([("motion", name) for name in motions])

    def of_motion(self, number):
        """What binds a prim to the colour of a motion of the scene, under its name."""
        return self.worn(self._called[number], linear(style_of(number).stage), 0.5)

    def dark(self):
        """What binds the darker faces of what turns."""
        return self.worn("dark", linear(DARK), 0.5)

    def water(self):
        """What binds a prim to the colour of drops and streams."""
        return self.worn("water", linear(WATER), 0.1)

    def worn(self, name, colour, roughness):
        """What a prim with this material has: the attributes, relations and schemas that say so."""
        self.materials[name] = colour, roughness
        shown = Attribute("primvars:displayColor", "color3f[]", np.array([colour]), interpolation="constant")
        return [shown], {"material:binding": f"{self.path}/{name}"}, ("MaterialBindingAPI",)

    def prim(self):
        """The scope of all materials asked for so far."""
        materials = [self._material(name, *self.materials[name]) for name in sorted(self.materials)]
        return Prim("Scope", self.path.rpartition("/")[2], children=materials)

    def _material(self, name, colour, roughness):
        surface = [
            Attribute("info:id", "token", "UsdPreviewSurface", uniform=True),
            Attribute("inputs:diffuseColor", "color3f", colour),
            Attribute("inputs:metallic", "float", 0.0),
            Attribute("inputs:roughness", "float", roughness),
            Attribute("outputs:surface", "token"),
        ]
        feeds = Attribute("outputs:surface", "token", connect=f"{self.path}/{name}/Surface.outputs:surface")
        return Prim("Material", name, [feeds], [Prim("Shader", "Surface", surface)])
