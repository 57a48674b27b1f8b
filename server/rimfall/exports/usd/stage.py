"""From a Shot to the one description of a layer: World > Habitat > bodies, Droplets, Streams, Paths, Hull; cameras; materials.

One time code is one frame. Names, kinds and units follow the shared conventions of all exports; lengths here are file units.
"""

import json

from ..options import INERTIAL_FLAT, ROTATING
from .bodies import ball, droplets
from .curves import paths, streams
from .layer import Layer, Prim
from .looks import Looks
from .parts import camera, hull, moved, turning

WORLD = "World"


def layer_of(shot):
    """The Layer of a Shot."""
    looks = Looks(f"/{WORLD}/Looks")
    things = [*(ball(shot, b, looks) for b in shot.balls), *_many(shot, looks)]
    meshes = [Prim("Xform", "Hull", children=[hull(shot, m, looks) for m in shot.meshes])] if shot.meshes else []
    flat = shot.options.view == INERTIAL_FLAT
    aboard = _anchored(shot, meshes if flat else things + meshes)
    riding, standing = ([camera(shot, c) for c in shot.cameras if c.rides is rides] for rides in (True, False))
    turns = [] if shot.options.view == ROTATING else turning(shot)
    habitat = Prim("Xform", "Habitat", turns, aboard + riding)
    outside = [habitat, *(_anchored(shot, things) if flat else []), looks.prim(), *standing]
    root = Prim("Xform", WORLD, children=outside, model="component", shown_name=shot.notes["title"] or None)
    return Layer(root, shot.notes["title"], _settings(shot), _custom(shot.notes))


def _many(shot, looks):
    """The prims that hold many things, where there are any."""
    out = [] if shot.drops is None or len(shot.drops.ids) == 0 else [droplets(shot, looks)]
    for name, curves in (("Streams", streams(shot, looks)), ("Paths", paths(shot, looks))):
        out += [Prim("Xform", name, children=curves)] if curves else []
    return out


def _anchored(shot, prims):
    """The prims, under a node at the anchor where there is one: 32-bit numbers stay small under it."""
    if not shot.anchor_m.any() or not prims:
        return prims
    return [Prim("Xform", "Anchor", moved(shot.anchor_m * shot.per_unit), prims)]


def _settings(shot):
    rate = float(shot.options.shown_fps)
    return {
        "defaultPrim": WORLD,
        "upAxis": shot.options.up,
        "metersPerUnit": 1.0 / shot.per_unit,
        "timeCodesPerSecond": rate,
        "framesPerSecond": rate,
        "startTimeCode": float(shot.frame[0]),
        "endTimeCode": float(shot.frame[-1]),
    }


def _custom(notes):
    """The notes whole as one JSON text, and what they say of the file key by key; what is not known is left out."""
    plain = {name: value for name, value in notes["file"].items() if value is not None}
    return {**plain, "caution": notes["caution"], "rimfall": json.dumps(notes, ensure_ascii=False)}
