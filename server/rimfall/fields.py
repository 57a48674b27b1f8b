"""What the parts of a document are made of: strict models, and fields with unit, range, label and default.

Labels, and what a field may be in words, are marked where they are written (`tr_later`), and are told in the language that is spoken where
they are shown (`in_words`)."""

from functools import reduce
from typing import Annotated, Any, Literal

from pydantic import BaseModel, BeforeValidator, ConfigDict, Field, WithJsonSchema

from .language import Figure, Later, Name, tr, tr_later


def of_kind(label, kind, default: Any = ..., unit="", may_be=None, **bounds) -> Any:
    """A field of a kind that the page knows; may_be: what it may be in words, where kind and bounds do not say it."""
    words = {} if may_be is None else {"may_be": may_be}
    return Field(default, **bounds, json_schema_extra={"label": label, "unit": unit, "kind": kind, **words})


def number(label, unit, low, high, default: Any = ..., *, above=False, shown=None) -> Any:
    """A field that is a number from low to high (above low, if so said); `shown` is what a slider shows of it."""
    bounds = {"gt" if above else "ge": low, "le": high}
    return Field(default, **bounds, json_schema_extra={"label": label, "unit": unit, "shown": shown, "kind": "number"})


def linear(low, high):
    """What a slider shows of a number, from low to high."""
    return {"min": low, "max": high, "scale": "linear"}


def log(low, high):
    """The same on a logarithmic scale."""
    return {"min": low, "max": high, "scale": "log"}


def text(label, longest, default: Any = ..., **more) -> Any:
    """A field that is text of at most `longest` characters."""
    return of_kind(label, "text", default, max_length=longest, **more)


def choice(label, names=(), default: Any = ...) -> Any:
    """A field that is one of some names; its type is their Literal. names: where they are to be listed otherwise than it lists them."""
    return of_kind(label, "choice", default, may_be=any_of(names) if names else None)


def any_of(names):
    """Some names, one of which a field may be, in words: "Y or Z"."""
    return reduce(
        lambda first, last: Later(tr_later("{first} or {last}"), first=first, last=last), map(Name, map(str, names))
    )


def or_null(may_be):
    """What a field may be that may be null too."""
    return Later(tr_later("{what}, or null"), what=may_be)


def figure(value, unit=""):
    """A bound as a reader writes it, with its unit: 100,000 and 0.001 m, not 1e5; 1e12, which has too many zeros to count."""
    if abs(value) >= 1e10:
        text = f"{value:.0e}".replace("e+", "e")
    else:
        text = f"{value:,.10g}" if abs(value) >= 1e-4 or value == 0 else f"{value:.0e}".replace("e-0", "e-")
    return Figure(f"{text} {unit}".strip())


def span(low, high, unit, above=False):
    """A range in words."""
    text = tr_later("above {least}, to {greatest}") if above else tr_later("{least} to {greatest}")
    return Later(text, least=figure(low), greatest=figure(high, unit))


def in_words(row):
    """A field as data (`scene.described`), its words in the language that is spoken."""
    return row | {name: tr(row[name]) if row[name] else row[name] for name in ("label", "may_be")}


def listed(label, longest, default: Any = ..., *, least=None) -> Any:
    """A field that is a list of at most `longest`, and at least `least`."""
    may_be = None if least is None else at_most_listed(longest, least)
    return of_kind(label, "list", default, may_be=may_be, min_length=least, max_length=longest)


def at_most_listed(longest, least=None):
    """What a list may be, in words."""
    if least is None:
        return Later(tr_later("a list of at most {greatest}"), greatest=Figure(longest))
    return Later(tr_later("a list of {least} to {greatest}"), least=Figure(least), greatest=Figure(longest))


def several(count, least, greatest):
    """The type of so many numbers, each from least to greatest."""

    def read(value: Any):
        plain = isinstance(value, (list, tuple)) and len(value) == count
        if not plain or not all(type(one) in (int, float) and least <= one <= greatest for one in value):
            raise ValueError(value)
        return tuple(map(float, value))

    inner = {"type": "number", "minimum": least, "maximum": greatest}
    schema = {"type": "array", "minItems": count, "maxItems": count, "items": inner}
    return Annotated[Any, BeforeValidator(read), WithJsonSchema(schema)]


Vector = several(3, -1e6, 1e6)


def vector(label, unit, default: Any = ..., more=None) -> Any:
    """A field that is three numbers; more: how that goes on, with a place {numbers} for it, where it may be something else too."""
    least, greatest = figure(-1_000_000), figure(1_000_000, unit)
    numbers = Later(tr_later("three numbers from {least} to {greatest}"), least=least, greatest=greatest)
    return of_kind(label, "vector", default, unit=unit, may_be=Later(more, numbers=numbers) if more else numbers)


def _whole(value: Any):
    """6.0 as 6: JSON has one kind of number, and many programs write a whole one with a point."""
    return int(value) if isinstance(value, float) and value.is_integer() else value


def _is_version(value: Any):
    """A document's version, as it is: True equals 1, but is no version."""
    if isinstance(value, bool):
        raise ValueError(value)
    return value


Version = Annotated[Literal[1], BeforeValidator(_is_version)]
Whole = Annotated[int, BeforeValidator(_whole)]


class Strict(BaseModel):
    """What every part of the document keeps to."""

    model_config = ConfigDict(strict=True, extra="forbid", allow_inf_nan=False, frozen=True)


LEAST_ABOVE_0 = 1e-300


def invertible(value):
    """A figure above 0, as it is; one so small that its inverse is no number is the least that has one."""
    return max(value, LEAST_ABOVE_0)
