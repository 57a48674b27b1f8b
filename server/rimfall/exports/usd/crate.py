"""A layer as .usdc, by OpenUSD's own library (the optional extra `usd`): arrays go over whole, no text in between."""

import tempfile
from pathlib import Path

import numpy as np

from ...errors import BadInput, refusal
from ...language import tr
from ...physics.budget import spend
from .layer import is_array, ready

_SAMPLE_BYTES = 200  # of memory, besides its numbers: what the library keeps of one sample

_VECTORS = {
    "float2": "Vec2f",
    "texCoord2f": "Vec2f",
    "float3": "Vec3f",
    "color3f": "Vec3f",
    "point3f": "Vec3f",
    "vector3f": "Vec3f",
}
_VECTORS |= {"normal3f": "Vec3f", "double3": "Vec3d", "matrix4d": "Matrix4d", "quatf": "Quatf", "quatd": "Quatd"}
_ARRAYS = {"float": "FloatArray", "int": "IntArray", "int64": "Int64Array", "double": "DoubleArray"}


def crate(layer):
    """The Layer as bytes. Raises BadInput where the library is not installed."""
    pxr = _library()
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder) / "layer.usdc"
        spec = pxr.Sdf.Layer.CreateNew(str(path))
        with pxr.Sdf.ChangeBlock():
            _fill(pxr, spec, layer)
        spec.Save()
        return path.read_bytes()


def _library():
    """The modules of OpenUSD, all at once."""
    try:
        import pxr
        from pxr import Gf, Sdf, Vt  # noqa: F401 - they become attributes of pxr
    except ModuleNotFoundError:
        say = tr("usdc needs OpenUSD's own library: install rimfall[usd], or take usda, which holds the same.")
        may_be = tr("usda or usdz, or usdc with rimfall[usd] installed")
        raise BadInput(refusal("format", "usdc", may_be, say)) from None
    return pxr


def _fill(pxr, spec, layer):
    spec.comment = layer.comment
    spec.customLayerData = {name: _custom(pxr, value) for name, value in sorted(layer.custom.items())}
    for name, value in sorted(layer.settings.items()):
        spec.pseudoRoot.SetInfo(name, value)
    _prim(pxr, spec, layer.root)


def _custom(pxr, value):
    if not isinstance(value, list):
        return value
    whole = all(isinstance(v, int) for v in value)
    return pxr.Vt.IntArray(value) if whole else pxr.Vt.DoubleArray([float(v) for v in value])


def _prim(pxr, parent, prim):
    spec = pxr.Sdf.PrimSpec(parent, prim.name, pxr.Sdf.SpecifierDef, prim.kind)
    if prim.apis:
        spec.SetInfo("apiSchemas", pxr.Sdf.TokenListOp.Create(prependedItems=list(prim.apis)))
    if prim.shown_name:
        spec.SetInfo("displayName", prim.shown_name)
    if prim.model:
        spec.kind = prim.model
    for attribute in prim.attributes:
        _attribute(pxr, spec, attribute)
    for name, path in prim.relations.items():
        pxr.Sdf.RelationshipSpec(spec, name, custom=False).targetPathList.explicitItems = [path]
    for child in prim.children:
        _prim(pxr, spec, child)


def _attribute(pxr, prim, a):
    """One AttributeSpec, if it is not there yet, and what it holds."""
    sdf = pxr.Sdf
    kind = sdf.ValueTypeNames.Find(a.kind)
    varies = sdf.VariabilityUniform if a.uniform else sdf.VariabilityVarying
    spec = sdf.AttributeSpec(prim, a.name, kind, varies, declaresCustom=False)
    if a.interpolation:
        spec.SetInfo("interpolation", a.interpolation)
    if a.connect:
        spec.connectionPathList.explicitItems = [a.connect]
    elif a.at is not None:
        for code, value in zip(np.asarray(a.at).tolist(), a.values, strict=True):
            spend(bytes=_SAMPLE_BYTES + getattr(value, "nbytes", 0))
            prim.layer.SetTimeSample(spec.path, code, _value(pxr, a.kind, value))
    elif a.value is not None:
        spec.default = _value(pxr, a.kind, a.value)


def _value(pxr, kind, value):
    base = kind.removesuffix("[]")
    if base == "token":
        return pxr.Vt.TokenArray(value) if is_array(kind) else value
    numbers = np.ascontiguousarray(ready(kind, value))
    if is_array(kind):
        name = _ARRAYS.get(base) or f"{_VECTORS[base]}Array"
        return getattr(pxr.Vt, name).FromNumpy(numbers)
    if base in ("quatf", "quatd"):
        return getattr(pxr.Gf, _VECTORS[base])(*map(float, numbers))
    if base in _VECTORS:
        return getattr(pxr.Gf, _VECTORS[base])(numbers.tolist())
    return numbers.item()
