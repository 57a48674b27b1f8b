"""What the models of answers are made of. They describe answers and check none: an answer is written as bytes, and the tests hold it
against its model.

Units are those of the names: `_m` metres, `_s` seconds, `_m_s` metres a second, `_deg` degrees, `_g` standard gravities (9.80665 m/s²).
"""

from typing import Annotated, Literal

from pydantic import BaseModel, ConfigDict, Field


class Closed(BaseModel):
    """An object of an answer: every field is there, and no other."""

    model_config = ConfigDict(extra="forbid", defer_build=True)


def said(text, **bounds):
    """A field that is always there, with what it holds in a sentence."""
    return Field(description=text, **bounds)


def left_out(text):
    """A field that is not always there; the sentence says when it is."""
    return Field(default=None, description=text, json_schema_extra=lambda schema: schema.pop("default", None))


def rows_of(inner, length, text=None):
    """A list of a fixed length."""
    return Annotated[list[inner], Field(min_length=length, max_length=length, description=text)]


class Packed(Closed):
    """An array as bytes: with `arrays=f4`, little-endian 32-bit floats in base64, row after row."""

    shape: list[Annotated[int, Field(ge=0)]] = said("How many numbers it has along each of its axes.", min_length=1)
    f4: Annotated[str, Field(json_schema_extra={"contentEncoding": "base64"})] = said("The numbers.")


Vector = rows_of(float, 3)
Pair = rows_of(float, 2)
Corners = rows_of(Vector, 4)
Numbers = list[float] | Packed
Vectors = list[Vector] | Packed
Count = Annotated[int, Field(ge=0)]
Program = Annotated[str, Field(description="Version of the program that answered.", pattern=r"^[0-9]+\.[0-9]+\.[0-9]+")]
Version = Literal[1]
