"""What the parts of a document are made of: strict models, and fields with unit, range, label and default."""

from typing import Any

from pydantic import BaseModel, ConfigDict, Field


def number(label, unit, low, high, default: Any = ..., *, above=False, shown=None) -> Any:
    """A field that is a number from low to high (above low, if so said); `shown` is what a slider shows of it."""
    bounds = {"gt" if above else "ge": low, "le": high}
    return Field(default, **bounds, json_schema_extra={"label": label, "unit": unit, "shown": shown, "kind": "number"})


def text(label, longest, default=...):
    """A field that is text of at most `longest` characters."""
    return Field(default, max_length=longest, json_schema_extra={"label": label, "unit": "", "kind": "text"})


def choice(label, names):
    """A field that is one of some names; its type is their Literal."""
    return Field(json_schema_extra={"label": label, "unit": "", "kind": "choice", "may_be": " or ".join(names)})


class Strict(BaseModel):
    """What every part of the document keeps to."""

    model_config = ConfigDict(strict=True, extra="forbid", allow_inf_nan=False, frozen=True)
