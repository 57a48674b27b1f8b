"""The fields of the scene document as data: label, unit, range, default; named bodies and liquids; motions ready to add.

Everything is read off the models of `document.py`, so a range is written once.
"""

from dataclasses import asdict
from typing import Any, get_args, get_origin

from pydantic import BaseModel, WithJsonSchema
from pydantic_core import PydanticUndefined

from .. import __version__
from ..comfort.quantities import QUANTITIES
from ..kinds import KINDS
from ..kinds.motion import BODY_NAMES
from ..phrases import CAUTION
from ..physics.bodies import NAMED_BODIES
from ..physics.constants import PERSON_HEIGHT_M, RPM_RAD_S
from ..physics.liquids import LIQUIDS
from ..shapes import SHAPES
from ..shapes.part import GREATEST_RIM_SPEED_M_S
from . import document
from .craft import blocks
from .craft.answers import FINDINGS
from .craft.document import BY, SOLIDS, Craft
from .export_part import ExportPart
from .shot.aim_request import AimRequest
from .shot.camera_request import CameraRequest
from .shot.landings_request import VARIED, LandingsRequest
from .shot.match_request import MatchRequest
from .size.request import SizeRequest


def _models(annotation):
    """The models inside an annotation, and whether they lie in a list."""
    if isinstance(annotation, type) and issubclass(annotation, BaseModel):
        return [(annotation, False)]
    is_list = get_origin(annotation) is list
    inner = [m for a in get_args(annotation) for m in _models(a)]
    return [(m, is_list or listed) for m, listed in inner]


def walk(model, prefix=""):
    """(path, field) of every field of a model and of the models inside it."""
    for name, field in model.model_fields.items():
        path = f"{prefix}{name}"
        if path == "compare.*.habitat":
            continue
        yield path, field
        for inner, listed in _models(field.annotation):
            yield from walk(inner, f"{path}.*." if listed else f"{path}.")


def _plain(value):
    return value.model_dump() if isinstance(value, BaseModel) else value


def _bounds(field):
    """Least and greatest value, None where there is none, and whether it must lie above the least."""
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
    """A bound as a reader writes it: 100,000 and 0.001, not 1e5; 1e12, which has too many zeros to count."""
    if abs(value) >= 1e10:
        return f"{value:.0e}".replace("e+", "e")
    return f"{value:,.10g}" if abs(value) >= 1e-4 or value == 0 else f"{value:.0e}".replace("e-0", "e-")


def described(field):
    """A field of a model as data: label, unit, range, default, and what it may be in words."""
    extra = dict(field.json_schema_extra or {})
    low, high, above = _bounds(field)
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
        "nullable": _nullable(field),
        "choices": _choices(field) if extra.get("kind") in ("choice", "version") else None,
        "shown": extra.get("shown"),
        "may_be": extra.get("may_be") or _may_be(field, extra),
    }


def _nullable(field):
    return type(None) in get_args(field.annotation)


def _choices(field):
    """The words or whole numbers that a field may be one of."""
    inside = (field.annotation, *get_args(field.annotation))
    return [c for a in inside for c in get_args(a) if isinstance(c, (str, int))]


def _may_be(field, extra):
    """What a field may be, where it does not say so itself."""
    longest = next((m.max_length for m in field.metadata if getattr(m, "max_length", None)), None)
    match extra.get("kind"):
        case "number":
            return _span(field, extra["unit"]) + (", or null" if _nullable(field) else "")
        case "text":
            return f"text of at most {longest} characters"
        case "list":
            return f"a list of at most {longest}"
        case "body":
            return "a named body (" + ", ".join(BODY_NAMES) + ") or one by its own figures (mass_kg, diameter_m, …)"
    if choices := _choices(field):
        return " or ".join(str(c) for c in choices)
    return "an object in braces, or null" if _nullable(field) else "an object in braces"


def _span(field, unit):
    low, high, above = _bounds(field)
    least = f"above {_figure(low)}, to" if above else f"{_figure(low)} to"
    return f"{least} {_figure(high)}" + (f" {unit}" if unit else "")


def pattern_of(field):
    """ "motions.0.speed_m_s" -> "motions.*.speed_m_s"; a habitat set beside the scene's has the same fields as that."""
    pattern = ".".join("*" if part.isdigit() else part for part in field.split("."))
    return (
        pattern.removeprefix("compare.*.")
        if pattern.startswith(("compare.*.habitat", "compare.*.motions"))
        else pattern
    )


def _fields() -> dict[str, Any]:
    fields = {}
    for path, field in walk(document.Scene):
        if not path.endswith(".kind"):
            fields.setdefault(path, described(field))
    fields["habitat.shape"] |= {"choices": list(SHAPES), "may_be": " or ".join(SHAPES)}
    kinds = list(document.MOTIONS)
    fields["motions.*.kind"] = {
        **described(next(iter(document.MOTIONS.values())).model_fields["kind"]),
        "label": "Kind",
        "kind": "choice",
        "choices": kinds,
        "may_be": " or ".join(kinds),
    }
    return fields | {path: fields[path] | named for path, named in _craft_names("craft.").items()}


def _craft_names(prefix=""):
    """What tells which of a union a part of a craft is."""
    names = {"parts.*.solid": SOLIDS, "spin_up.by": BY}
    return {
        f"{prefix}{path}": {"choices": list(models), "may_be": " or ".join(models)} for path, models in names.items()
    }


def _craft():
    """The fields of a craft that is a document of its own."""
    fields = {}
    for path, field in walk(Craft):
        fields.setdefault(path, described(field))
    return fields | {path: fields[path] | named for path, named in _craft_names().items()}


def _items(model, prefix):
    """Each number of a craft's lists of numbers as a field of its own, by the path of the list and `*`."""
    for path, field in walk(model, prefix):
        items = next((one.json_schema["items"] for one in _marks(field) if isinstance(one, WithJsonSchema)), None)
        if items is not None:
            whole = described(field)
            low, high = items["minimum"], items["maximum"]
            span = f"{_figure(low)} to {_figure(high)} {whole['unit']}".strip()
            number = {"kind": "number", "min": low, "max": high, "default": None, "required": True, "nullable": False}
            yield f"{path}.*", whole | number | {"may_be": span}


def _marks(field):
    """What marks a field's type, or one of those it may be."""
    inside = [mark for one in get_args(field.annotation) for mark in getattr(one, "__metadata__", ())]
    return [*field.metadata, *inside]


FIELDS = _fields()
FIELDS |= dict(_items(Craft, "craft."))
OF_CRAFT = {path: field for path, field in _craft().items() if path not in FIELDS}
FIELDS |= OF_CRAFT
EXPORT = "export."
FIELDS |= {path: described(field) for path, field in walk(ExportPart, EXPORT)}
WISHES = "wishes"
FIELDS |= {path: described(field) for path, field in walk(SizeRequest) if path.startswith(WISHES)}
SHOTS = (AimRequest, LandingsRequest, CameraRequest, MatchRequest)  # requests about throws and paths
OF_SHOTS = {
    path: described(field) for model in SHOTS for path, field in walk(model) if path.partition(".")[0] != "scene"
}
FIELDS |= OF_SHOTS


_AIM = {
    f"aim.{path}": described(field)
    for path, field in walk(AimRequest)
    if path in ("within_m", "flight_max_s", "fixed.speed_m_s", "fixed.elevation_deg", "fixed.flight_s")
}


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
    fields = {path: described(field) for path, field in walk(model) if path != "kind"}
    return {path: data for path, data in fields.items() if data != FIELDS[f"motions.*.{path}"]}


OWN = {kind: _own(model) for kind, model in document.MOTIONS.items()}
OWN |= {
    tag: {f"over.*.{path}": described(field) for path, field in walk(model) if path != "field"}
    for tag, model in VARIED.items()
}


def _kinds():
    """The kinds of motion: their fields, and what the page needs of them."""
    return {
        name: {
            "label": name.replace("_", " ").capitalize(),
            "fields": [n for n in kind.fields.model_fields if n != "kind"],
            "required": [n for n, f in kind.fields.model_fields.items() if f.is_required()],
            "own": OWN[name],
            "new": {"kind": name, **kind.new},
            **asdict(kind.page),
        }
        for name, kind in KINDS.items()
    }


_CONTACT = ("restitution", "friction", "rolling_resistance")
_OF_A_BODY = ("mass_kg", "diameter_m", "drag", "shell", *_CONTACT, "drag_area_m2", "buoyant")


def _bodies():
    return [
        {"name": b.name, **{name: getattr(b.body, name) for name in _OF_A_BODY}, "source": b.source}
        for b in NAMED_BODIES
    ]


def _holds():
    """What can be held while a dial moves (m/s², m/s), as factor * radius_m ** radius_power * spin_rpm ** spin_power."""
    return {
        name: {
            "factor": RPM_RAD_S ** QUANTITIES[name].spin_power,
            "radius_power": QUANTITIES[name].radius_power,
            "spin_power": QUANTITIES[name].spin_power,
        }
        for name in ("gravity", "rim_speed")
    }


def catalogue():
    """The answer of GET /api/fields."""
    return {
        "program": __version__,
        "fields": {
            path: field
            for path, field in FIELDS.items()
            if not path.startswith((EXPORT, WISHES)) and path not in OF_SHOTS and path not in OF_CRAFT
        }
        | _AIM,
        "kinds": _kinds(),
        "shapes": _shapes(),
        "bodies": _bodies(),
        "liquids": [asdict(liquid) for liquid in LIQUIDS],
        "person_height_m": PERSON_HEIGHT_M,
        "greatest_rim_speed_m_s": GREATEST_RIM_SPEED_M_S,
        "holds": _holds(),
        "craft": blocks.as_data({name: finding.question for name, finding in FINDINGS.items()}),
        "caution": CAUTION,
    }
