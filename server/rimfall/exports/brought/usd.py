"""Prims of an OpenUSD file as they move, by OpenUSD's own library (the optional extra `usd`). A file that asks for others is refused: only
what was sent is read."""

import tempfile
from pathlib import Path

import numpy as np

from ...errors import BadInput, refusal
from ...language import tr, written
from ...physics.budget import spend
from .posed import Posed, from_z_up

MOST_SAMPLES = 20_000
_ENDINGS = {b"#usd": "usda", b"PXR-": "usdc", b"PK\3\4": "usdz"}


def cameras_of(content, first_code=None):
    """A Posed for each camera of an OpenUSD file's bytes; first_code: the time code that is its time 0, None for that at which its own
    range begins. Raises BadInput."""

    def camera(pxr, prim):
        return pxr.UsdGeom.Camera(prim) if prim.IsA(pxr.UsdGeom.Camera) else None

    return _read(content, camera, first_code)


def nodes_of(content, first_code=None):
    """A Posed for each prim of it whose own place changes. Raises BadInput."""

    def moves(pxr, prim):
        xform = pxr.UsdGeom.Xformable(prim)
        return xform if xform and not prim.IsA(pxr.UsdGeom.Camera) and xform.GetTimeSamples() else None

    return _read(content, moves, first_code)


def _read(content, taken, first_code):
    pxr = _library()
    with tempfile.TemporaryDirectory(prefix="rimfall-") as folder:
        path = Path(folder) / f"layer.{_ENDINGS[content[:4]]}"
        path.write_bytes(content)
        try:
            layer = pxr.Sdf.Layer.FindOrOpen(str(path))
            if layer is None or layer.GetCompositionAssetDependencies():
                raise _wrong(
                    tr("it asks for other files: flatten it into one") if layer else tr("it is no whole OpenUSD file")
                )
            return _posed(pxr, pxr.Usd.Stage.Open(layer), taken, first_code)
        except pxr.Tf.ErrorException:
            raise _wrong(tr("it is no whole OpenUSD file")) from None


def _posed(pxr, stage, taken, first_code):
    unit_m, up = pxr.UsdGeom.GetStageMetersPerUnit(stage), pxr.UsdGeom.GetStageUpAxis(stage)
    rate, out = stage.GetTimeCodesPerSecond(), []
    first = stage.GetStartTimeCode() if first_code is None else first_code
    for prim in stage.Traverse():
        thing = taken(pxr, prim)
        if not thing:
            continue
        codes = _codes(pxr, prim, thing)
        spend(bytes=400 * len(codes))
        world = np.array([_world(pxr, prim, code) for code in codes])
        world[:, :3, 3] *= unit_m
        world = from_z_up(world) if up == "Z" else world
        out.append(Posed(prim.GetName(), (np.array(codes) - first) / rate, world, *_lens(pxr, thing, codes)))
    return out


def _codes(pxr, prim, thing):
    """Time codes at which anything over a prim, or its lens, has a sample; 0 alone where nothing changes."""
    codes = set()
    for one in [prim, *_parents(prim)]:
        xform = pxr.UsdGeom.Xformable(one)
        codes.update(xform.GetTimeSamples() if xform else ())
    if isinstance(thing, pxr.UsdGeom.Camera):
        codes.update(thing.GetFocalLengthAttr().GetTimeSamples())
    if len(codes) > MOST_SAMPLES:
        raise _wrong(tr("{name} has more than {most} samples", name=prim.GetName(), most=written(MOST_SAMPLES, ",")))
    return sorted(codes) or [0.0]


def _parents(prim):
    while (prim := prim.GetParent()) and not prim.IsPseudoRoot():
        yield prim


def _world(pxr, prim, code):
    """The prim's space in that of the stage (4, 4), column vectors."""
    return np.array(pxr.UsdGeom.Imageable(prim).ComputeLocalToWorldTransform(code)).T


def _lens(pxr, thing, codes):
    """Vertical field of view (T,) and width to height of a camera; nothing of what is none."""
    if not isinstance(thing, pxr.UsdGeom.Camera):
        return ()
    lenses = [thing.GetCamera(code) for code in codes]
    tall = np.array([lens.verticalAperture / lens.focalLength for lens in lenses])
    return 2 * np.arctan(tall / 2), lenses[0].horizontalAperture / lenses[0].verticalAperture


def _library():
    try:
        import pxr
        from pxr import Sdf, Tf, Usd, UsdGeom  # noqa: F401 - they become attributes of pxr
    except ModuleNotFoundError:
        say = tr(
            "OpenUSD files are read with OpenUSD's own library: install rimfall[usd], or bring the camera as .csv or .glb."
        )
        may_be = tr("csv or glb, or OpenUSD with rimfall[usd] installed")
        raise BadInput(refusal("file", "usd", may_be, say)) from None
    return pxr


def _wrong(why):
    say = tr("This OpenUSD file cannot be read: {why}.", why=why)
    return BadInput(refusal("file", "usd", tr("one whole OpenUSD file"), say))
