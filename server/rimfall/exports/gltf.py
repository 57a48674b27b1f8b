"""A trace as one glTF 2.0 file (.glb, ISO/IEC 12113): metres, Y up, times in seconds of the file from 0, nothing outside it.

Root > habitat > its parts, the cameras that ride, and under an anchor node where the lengths ask for one the bodies, drops,
streams and paths. In the view "inertial" the habitat node turns and carries them all; in "inertial_flat" it turns and they
hang under the root. A body that is not there has the scale 0. The format knows neither frames nor curves: what changes shape
is drawn by morph targets, at most GREATEST_TARGETS of them, evenly taken from the frames.
"""

import numpy as np

from .. import __version__
from ..errors import TooMuch, refusal
from ..language import tr, written
from . import gltf_shapes as shapes
from .gltf_file import LINES, POINTS, File
from .notes import MOST_NODES
from .options import INERTIAL_FLAT, ROTATING
from .palette import DARK, WATER, linear, style_of

GREATEST_TARGETS = 240
GREATEST_TURNS = 200_000  # keys of one body's turning
NEAR_M = 0.05
UNLIT = "KHR_materials_unlit"


def glb(sampled):
    """The file as bytes, of a SampledScene in metres with Y up."""
    file = File(f"Rimfall {__version__}", sampled.notes)
    root = file.node(None, "rimfall")
    lines = [line for line in sampled.lines if len(line.position_m) > 1]
    space = _habitat(file, sampled, root)
    things = root if sampled.options.view == INERTIAL_FLAT else space
    if np.any(sampled.anchor_m):
        things = file.node(things, "anchor", translation=_listed(sampled.anchor_m))
    for ball in sampled.balls:
        _ball(file, sampled, things, ball)
    if sampled.drops is not None and len(sampled.drops.ids):
        few = len(sampled.drops.ids) <= MOST_NODES
        (_drop_nodes if few else _drop_points)(file, sampled, things, sampled.drops)
    for stream in sampled.streams:
        _stream(file, sampled, things, stream)
    for line in lines:
        _line(file, sampled, things, line)
    for mesh in sampled.meshes:
        _part(file, space, mesh)
    for prop in sampled.props:
        _prop(file, sampled, space, prop)
    for camera in sampled.cameras:
        _camera(file, sampled, space if camera.rides else root, camera)
    return file.glb(root)


def _habitat(file, sampled, root):
    """The node whose space is the habitat's own: the one that turns, or one under it where it does not turn about the origin."""
    if sampled.options.view == ROTATING:
        return file.node(root, "habitat")
    away = np.any(sampled.pivot_m)
    turning = file.node(root, "habitat", **({"translation": _listed(sampled.pivot_m)} if away else {}))
    file.animate(turning, "rotation", *_habitat_keys(sampled))
    return file.node(turning, "habitat_space", translation=_listed(-sampled.pivot_m)) if away else turning


def _habitat_keys(sampled):
    """Shown times (n,) and quaternions (n, 4), x, y, z, w, of the habitat."""
    if sampled.attitude is None:
        return shapes.spin_keys(sampled.shown_s, sampled.angle_rad, sampled.axis)
    parts = shapes.attitude_steps(sampled.time_s, sampled.attitude, np.inf)
    times, shown_s = (shapes.parted(v, parts) for v in (sampled.time_s, sampled.shown_s))
    return shown_s, shapes.attitude_keys(times, sampled.attitude)


def _ball(file, sampled, parent, ball):
    mesh = _ball_mesh(file, sampled, ball)
    place = ball.keys.position_m - sampled.anchor_m
    node = file.node(parent, ball.name, mesh=mesh, translation=_listed(place[0]), extras={"id": int(ball.id)})
    file.animate(node, "translation", ball.keys.shown_s, place)
    if ball.attitude is not None:
        file.animate(node, "rotation", *_turning(sampled, ball))
    _appear(file, ball.keys.shown_s, node, ball.keys.alive, 1.0)


def _turning(sampled, ball):
    """Shown times (n,) and quaternions (n, 4) of a body that turns. Raises TooMuch where it turns too often."""
    parts = shapes.attitude_steps(ball.keys.time_s, ball.attitude, GREATEST_TURNS)
    if parts is None:
        name = sampled.notes["scene"]["motions"][ball.motion]["name"]
        say = tr(
            "The ball of motion {name} turns too often for its file; let it spin more slowly (ball_spin_rpm) or end sooner.",
            name=name,
        )
        may_be = tr("within {most} keys of one body's turning", most=written(GREATEST_TURNS, ","))
        raise TooMuch(refusal("motions", name, may_be, say))
    times, shown_s = (shapes.parted(v, parts) for v in (ball.keys.time_s, ball.keys.shown_s))
    return shown_s, shapes.attitude_keys(times, ball.attitude)


def _appear(file, shown_s, node, alive, size):
    """Scale keys of 0 and `size` (a number) at the start and wherever alive changes, (K,) at shown times (K,); none for what is always
    there."""
    if np.all(alive):
        return
    at = np.flatnonzero(np.concatenate([[True], alive[1:] != alive[:-1]]))
    file.animate(node, "scale", shown_s[at], np.outer(np.where(alive[at], size, 0.0), np.ones(3)), "STEP")


def _ball_mesh(file, sampled, ball):
    """Its solid in the motion's colour; of one that turns every other eighth is dark."""
    name = sampled.notes["scene"]["motions"][ball.motion]["name"]
    light = _matte(file, linear(style_of(ball.motion).stage), name)
    dark = _matte(file, linear(DARK), "dark") if np.any(ball.solid.dark) else None
    return _solid(file, ball.name, ball.solid, light, dark)


def _solid(file, name, solid, material, dark=None):
    """Number of a mesh."""
    attributes = {"POSITION": file.vertices(solid.position_m), "NORMAL": file.vertices(solid.normal)}
    parts = [(solid.faces[~solid.dark], material), (solid.faces[solid.dark], dark)]
    return file.add("meshes", {"name": name, "primitives": [
        {"attributes": attributes, "indices": file.indices(faces), "material": worn} for faces, worn in parts if len(faces)
    ]})  # fmt: skip


def _prop(file, sampled, parent, prop):
    mesh = _solid(file, prop.name, prop.solid, _matte(file, prop.colour, prop.material))
    if prop.position_m is None:
        file.node(parent, prop.name, mesh=mesh)
        return
    turned = np.roll(prop.turn, -1, axis=1)
    at = {"translation": _listed(prop.position_m[0]), "rotation": _listed(turned[0])}
    node = file.node(parent, prop.name, mesh=mesh, **at)
    if np.any(prop.position_m != prop.position_m[0]):
        file.animate(node, "translation", sampled.shown_s, prop.position_m)
    if np.any(turned != turned[0]):
        file.animate(node, "rotation", sampled.shown_s, turned)


def _drop_nodes(file, sampled, parent, drops):
    """Each drop a node, all with one mesh of diameter 1."""
    corners, faces = shapes.ball(6, 8)
    attributes = {"POSITION": file.vertices(0.5 * corners), "NORMAL": file.vertices(corners)}
    drawn = {"attributes": attributes, "indices": file.indices(faces), "material": _matte(file, linear(WATER), "water")}
    mesh = file.add("meshes", {"name": "droplet", "primitives": [drawn]})
    for i, name in enumerate(drops.names):
        size, place, alive = float(drops.diameter_m[i]), drops.position_m[:, i] - sampled.anchor_m, drops.alive[:, i]
        at = {"translation": _listed(place[0]), "scale": _listed(np.full(3, size if alive[0] else 0.0))}
        node = file.node(parent, name, mesh=mesh, extras={"id": int(drops.ids[i])}, **at)
        file.animate(node, "translation", sampled.shown_s, place)
        _appear(file, sampled.shown_s, node, alive, size)


def _drop_points(file, sampled, parent, drops):
    """All drops as the points of one mesh, in order of their ids."""
    place = drops.position_m - sampled.anchor_m
    primitive = {"mode": POINTS, "material": _unlit(file, linear(WATER), "water_unlit")}
    _morphing(file, sampled, parent, "droplets", place, primitive)


def _stream(file, sampled, parent, stream):
    skin = shapes.tube(stream.position_m - sampled.anchor_m, stream.width_m, sampled.axis)
    faces = shapes.tube_faces(stream.position_m.shape[1])
    primitive = {"indices": file.indices(faces), "material": _matte(file, linear(WATER), "water", both_sides=True)}
    _morphing(file, sampled, parent, stream.name, skin, primitive)


def _morphing(file, sampled, parent, name, corners, primitive):
    """A node whose mesh has corners (T, V, 3): those of time 0, and a target for each later key."""
    every = -(-(len(corners) - 1) // GREATEST_TARGETS) or 1
    keys = np.unique(np.append(np.arange(0, len(corners), every), len(corners) - 1))
    base = corners[0].astype(np.float32)
    targets = [{"POSITION": file.vertices(corners[k] - base)} for k in keys[1:]]
    mesh = {"name": name, "primitives": [{"attributes": {"POSITION": file.vertices(base)}} | primitive]}
    if targets:
        mesh["primitives"][0]["targets"] = targets
        mesh["weights"] = [0] * len(targets)
    node = file.node(parent, name, mesh=file.add("meshes", mesh))
    if targets:
        file.animate(node, "weights", sampled.shown_s[keys], np.eye(len(keys))[:, 1:].ravel())


def _line(file, sampled, parent, line):
    """A path as separate strokes: 0 to 1, 1 to 2 and so on, as every reader draws them."""
    strokes = np.arange(len(line.position_m) - 1)[:, None] + np.arange(2)
    primitive = {
        "mode": LINES,
        "attributes": {"POSITION": file.vertices(line.position_m - sampled.anchor_m)},
        "indices": file.indices(strokes),
        "material": _unlit(file, linear(style_of(line.motion).stage), line.name),
    }
    file.node(parent, line.name, mesh=file.add("meshes", {"name": line.name, "primitives": [primitive]}))


def _part(file, parent, part):
    primitive = {
        "attributes": {"POSITION": file.vertices(part.position_m), "NORMAL": file.vertices(part.normal)},
        "indices": file.indices(part.faces),
        "material": _matte(file, part.colour, part.material, part.both_sides),
    }
    file.node(parent, part.name, mesh=file.add("meshes", {"name": part.name, "primitives": [primitive]}))


def _camera(file, sampled, parent, camera):
    """A vantage; one that follows something has a key a frame."""
    lens = {
        "yfov": float(np.radians(np.atleast_1d(camera.fov_deg)[0])),  # which no animation of core glTF changes
        "aspectRatio": float(camera.aspect),
        "znear": max(NEAR_M, camera.near_m or 0.0),
    }
    number = file.add("cameras", {"name": camera.name, "type": "perspective", "perspective": lens})
    turned = shapes.of_axes(camera.axes)
    at = {"translation": _listed(camera.position_m[0]), "rotation": _listed(turned[0])}
    node = file.node(parent, camera.name, camera=number, **at)
    if len(camera.position_m) > 1:
        file.animate(node, "translation", sampled.shown_s, camera.position_m)
        file.animate(node, "rotation", sampled.shown_s, turned)


def _matte(file, colour, name, both_sides=False):
    surface = {"baseColorFactor": [*colour, 1.0], "metallicFactor": 0.0, "roughnessFactor": 1.0}
    sides = {"doubleSided": True} if both_sides else {}
    return file.once("materials", {"name": name, "pbrMetallicRoughness": surface} | sides)


def _unlit(file, colour, name):
    surface = {"baseColorFactor": [*colour, 1.0], "metallicFactor": 0.0, "roughnessFactor": 1.0}
    return file.once("materials", {"name": name, "pbrMetallicRoughness": surface, "extensions": {UNLIT: {}}})


def _listed(values):
    return [float(v) for v in values]
