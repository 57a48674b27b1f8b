"""The fields of the scene document as data: label, unit, range, default; named bodies and liquids; motions ready to add.

Everything is read off the models of `document.py`, so a range is written once.
"""

from dataclasses import asdict
from typing import Any, get_args, get_origin

from pydantic import BaseModel
from pydantic_core import PydanticUndefined

from .. import __version__
from ..physics.bodies import NAMED_BODIES
from ..physics.constants import PERSON_HEIGHT_M
from ..physics.liquids import LIQUIDS
from ..shapes import SHAPES
from . import document
from .export_part import ExportPart
from .motion_parts import BODY_NAMES
from .size.request import SizeRequest


def pattern_of(field):
    """ "motions.0.speed_m_s" -> "motions.*.speed_m_s"; a habitat set beside the scene's has the same fields as that."""
    pattern = ".".join("*" if part.isdigit() else part for part in field.split("."))
    return (
        pattern.removeprefix("compare.*.")
        if pattern.startswith(("compare.*.habitat", "compare.*.motions"))
        else pattern
    )


def _models(annotation):
    """The models inside an annotation, and whether they lie in a list."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [(annotation, False)]
    is_list = get_origin(annotation) is list
    inner = [m for a in get_args(annotation) for m in _models(a)]
    return [(m, is_list or listed) for m, listed in inner]


def _walk(model, prefix=""):
    """(path, field) of every field of a model and of the models inside it."""
    for name, field in model.model_fields.items():
        path = f"{prefix}{name}"
        if path == "compare.*.habitat":
            continue
        yield path, field
        for inner, listed in _models(field.annotation):
            yield from _walk(inner, f"{path}.*." if listed else f"{path}.")


def _plain(value):
    return value.model_dump() if isinstance(value, BaseModel) else value


def _bounds(field):
    low = high = None
    above = False
    for mark in field.metadata:
        if getattr(mark, "ge", None) is not None:
            low = mark.ge
        if getattr(mark, "gt", None) is not None:
            low, above = mark.gt, True
        if getattr(mark, "le", None) is not None:
            high = mark.le
    return low, high, above


def _figure(value):
    """A bound as a reader writes it: 100,000 and 0.001, not 1e5."""
    return f"{value:,.10g}" if abs(value) >= 1e-4 or value == 0 else f"{value:.0e}".replace("e-0", "e-")


def _described(field):
    extra = dict(field.json_schema_extra or {})
    low, high, above = _bounds(field)
    nullable = type(None) in get_args(field.annotation)
    choices = [
        c for a in (field.annotation, *get_args(field.annotation)) for c in get_args(a) if isinstance(c, (str, int))
    ]
    default = None if field.default in (PydanticUndefined, None) else _plain(field.default)
    return {
        "label": extra.get("label", ""),
        "unit": extra.get("unit", ""),
        "kind": extra.get("kind", "part"),
        "min": low,
        "max": high,
        "above_min": above,
        "whole": field.annotation is int,
        "default": default,
        "required": field.is_required(),
        "nullable": nullable,
        "choices": choices if extra.get("kind") in ("choice", "version") else None,
        "shown": extra.get("shown"),
        "may_be": _may_be(field, extra, low, high, above, nullable, choices),
    }


def _may_be(field, extra, low, high, above, nullable, choices):
    kind = extra.get("kind")
    if "may_be" in extra:
        return extra["may_be"]
    if kind == "number":
        unit = f" {extra['unit']}" if extra["unit"] else ""
        span = (
            f"above {_figure(low)}, to {_figure(high)}{unit}" if above else f"{_figure(low)} to {_figure(high)}{unit}"
        )
        return f"{span}, or null" if nullable else span
    longest = next((m.max_length for m in field.metadata if getattr(m, "max_length", None)), None)
    if kind == "text":
        return f"text of at most {longest} characters"
    if kind == "list":
        return f"a list of at most {longest}"
    if kind == "body":
        return "a named body (" + ", ".join(BODY_NAMES) + ") or one by its own figures (mass_kg, diameter_m, …)"
    if choices:
        return " or ".join(str(c) for c in choices)
    return "an object in braces, or null" if nullable else "an object in braces"


def _fields() -> dict[str, Any]:
    found = {}
    for path, field in _walk(document.Scene):
        if not path.endswith(".kind"):
            found.setdefault(path, _described(field))
    found["habitat.shape"] |= {"choices": list(SHAPES), "may_be": " or ".join(SHAPES)}
    kinds = list(document.MOTIONS)
    found["motions.*.kind"] = {
        **_described(document.MOTIONS["throw"].model_fields["kind"]),
        "label": "Kind",
        "kind": "choice",
        "choices": kinds,
        "may_be": " or ".join(kinds),
    }
    return found


FIELDS = _fields()
EXPORT = "export."
FIELDS |= {path: _described(field) for path, field in _walk(ExportPart, EXPORT)}
WISHES = "wishes"
FIELDS |= {path: _described(field) for path, field in _walk(SizeRequest) if path.startswith(WISHES)}


def _shapes():
    return {
        shape: {
            **asdict(model.WORDS),
            "fields": [n for n in model.model_fields if n != "shape"],
            "required": [n for n, f in model.model_fields.items() if f.is_required()],
            "new": {"shape": shape, **model.NEW},
            "ground": asdict(model.GROUND),
        }
        for shape, model in SHAPES.items()
    }


def export_choices():
    """The choices of an export as data, by name."""
    return {path.removeprefix(EXPORT): field for path, field in FIELDS.items() if path.startswith(EXPORT)}


def _own(model):
    """Those fields of a kind of motion that it describes otherwise than the first kind that has them."""
    told = {path: _described(field) for path, field in _walk(model) if path != "kind"}
    return {path: said for path, said in told.items() if said != FIELDS[f"motions.*.{path}"]}


OWN = {kind: _own(model) for kind, model in document.MOTIONS.items()}


def catalogue():
    """The answer of GET /api/fields."""
    kinds = {
        kind: {
            "label": kind.replace("_", " ").capitalize(),
            "fields": [n for n in model.model_fields if n != "kind"],
            "required": [n for n, f in model.model_fields.items() if f.is_required()],
            "own": OWN[kind],
            "new": {"kind": kind, **model.NEW},
        }
        for kind, model in document.MOTIONS.items()
    }
    bodies = [
        {
            "name": b.name,
            "mass_kg": b.body.mass_kg,
            "diameter_m": b.body.diameter_m,
            "drag": b.body.drag,
            "shell": b.body.shell,
            "restitution": b.body.restitution,
            "friction": b.body.friction,
            "rolling_resistance": b.body.rolling_resistance,
            "drag_area_m2": b.body.drag_area_m2,
            "buoyant": b.body.buoyant,
            "source": b.source,
        }
        for b in NAMED_BODIES
    ]
    liquids = [
        {
            "name": x.name,
            "density_kg_m3": x.density_kg_m3,
            "viscosity_pa_s": x.viscosity_pa_s,
            "surface_tension_n_m": x.surface_tension_n_m,
            "source": x.source,
        }
        for x in LIQUIDS
    ]
    return {
        "program": __version__,
        "fields": {path: field for path, field in FIELDS.items() if not path.startswith((EXPORT, WISHES))},
        "kinds": kinds,
        "shapes": _shapes(),
        "bodies": bodies,
        "liquids": liquids,
        "person_height_m": PERSON_HEIGHT_M,
    }
