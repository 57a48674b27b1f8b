"""A field of a model as data, read off the model: label, unit, range, default, and what it may be in words; a range is written once."""

from typing import get_args, get_origin

from pydantic import BaseModel
from pydantic_core import PydanticUndefined

from ..fields import any_of, at_most_listed, or_null, span
from ..kinds.motion import BODY_NAMES
from ..language import Figure, Later, tr_later
from .document import GREATEST_FPS, LEAST_FPS


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


def described(field):
    """A field of a model as data: label, unit, range, default, and what it may be in words, which `fields.in_words` tells."""
    extra = dict(field.json_schema_extra or {})
    low, high, above = (LEAST_FPS, GREATEST_FPS, False) if extra.get("kind") == "fps" else _bounds(field)
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
            low, high, above = _bounds(field)
            may_be = span(low, high, extra["unit"], above)
            return or_null(may_be) if _nullable(field) else may_be
        case "text":
            return Later(tr_later("text of at most {count} characters"), count=Figure(longest))
        case "list":
            return at_most_listed(longest)
        case "body":
            own = tr_later("a named body ({names}) or one by its own figures (mass_kg, diameter_m, …)")
            return Later(own, names=", ".join(BODY_NAMES))
    if choices := _choices(field):
        return any_of(choices)
    return or_null(tr_later("an object in braces")) if _nullable(field) else tr_later("an object in braces")
