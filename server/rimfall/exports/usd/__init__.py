"""A SampledScene as OpenUSD: text (.usda), text packed alone (.usdz), and binary (.usdc, where OpenUSD's library is installed).

Every way writes one Layer: World > Habitat > bodies, Droplets, Streams, Paths, Hull, Props; cameras; materials. One time code is one
frame. Names, kinds and units follow the shared conventions of all exports; lengths here are file units.
"""

import json

from ..options import INERTIAL_FLAT, ROTATING
from ..writing import usdz_packed
from .bodies import ball, droplets, paths, streams
from .crate import crate
from .layer import Attribute, Layer, Prim
from .parts import Looks, camera, hull, moved, prop, turning
from .text import text

WORLD = "World"


def layer_of(sampled):
    """The Layer of a SampledScene."""
    looks = Looks(f"/{WORLD}/Looks", [motion["name"] for motion in sampled.notes["scene"]["motions"]])
    things = [*(ball(sampled, b, looks) for b in sampled.balls), *_many(sampled, looks)]
    meshes = _hull(sampled, looks)
    flat = sampled.options.view == INERTIAL_FLAT
    aboard = _anchored(sampled, meshes if flat else things + meshes)
    riding, standing = ([camera(sampled, c) for c in sampled.cameras if c.rides is rides] for rides in (True, False))
    turns = [] if sampled.options.view == ROTATING else turning(sampled)
    props = [Prim("Xform", "Props", children=[prop(sampled, p, looks) for p in sampled.props])] if sampled.props else []
    habitat = Prim("Xform", "Habitat", turns, aboard + props + riding)
    outside = [habitat, *(_anchored(sampled, things) if flat else []), looks.prim(), *standing]
    root = Prim("Xform", WORLD, children=outside, model="component", shown_name=sampled.notes["title"] or None)
    return Layer(root, sampled.notes["title"], _settings(sampled), _custom(sampled.notes))


def _hull(sampled, looks):
    """The habitat's meshes, of the purpose asked for: a stand-in for a set, a proxy, unless it is said to be rendered."""
    if not sampled.meshes:
        return []
    purpose = Attribute("purpose", "token", sampled.options.hull, uniform=True)
    return [Prim("Xform", "Hull", [purpose], [hull(sampled, m, looks) for m in sampled.meshes])]


def _many(sampled, looks):
    """The prims that hold many things, where there are any."""
    out = [] if sampled.drops is None or len(sampled.drops.ids) == 0 else [droplets(sampled, looks)]
    for name, curves in (("Streams", streams(sampled, looks)), ("Paths", paths(sampled, looks))):
        out += [Prim("Xform", name, children=curves)] if curves else []
    return out


def _anchored(sampled, prims):
    """The prims, under a node at the anchor where there is one: 32-bit numbers stay small under it."""
    if not sampled.anchor_m.any() or not prims:
        return prims
    return [Prim("Xform", "Anchor", moved(sampled.anchor_m * sampled.per_unit), prims)]


def _settings(sampled):
    rate = float(sampled.options.shown_fps)
    return {
        "defaultPrim": WORLD,
        "upAxis": sampled.options.up,
        "metersPerUnit": 1.0 / sampled.per_unit,
        "timeCodesPerSecond": rate,
        "framesPerSecond": rate,
        "startTimeCode": float(sampled.frame[0]),
        "endTimeCode": float(sampled.frame[-1]),
    }


def _custom(notes):
    """The notes whole as one JSON text, and what they say of the file key by key; what is not known is left out."""
    plain = {name: value for name, value in notes["file"].items() if value is not None}
    return {**plain, "caution": notes["caution"], "rimfall": json.dumps(notes, ensure_ascii=False)}


def usda(sampled):
    """The file as text, UTF-8 bytes."""
    return text(layer_of(sampled))


def usdz(sampled):
    """The same text in a package of its own."""
    return usdz_packed("rimfall.usda", usda(sampled))


def usdc(sampled):
    """The same content in binary. Raises BadInput where OpenUSD's library is not installed."""
    return crate(layer_of(sampled))
