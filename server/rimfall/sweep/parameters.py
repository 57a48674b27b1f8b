"""What is varied: `habitat.spin_rpm=1..6/11` or `motions.serve.speed_m_s=4,6,8`, a path of the scene document and its values.

A path is that of the document, dots between. A motion goes by its name or, like decks and floors, by its number from 0.
Values are `first..last/count`, so many evenly spaced with both ends, or a list. A value is a number, a word, true, false or null.
"""

import math
import re
from dataclasses import dataclass
from fractions import Fraction

import numpy as np

from ..errors import BadInput, refusal
from ..language import tr, tr_later, written

GREATEST_VALUES = 100_000
NUMBER = re.compile(r"[+-]?(\d+\.?\d*|\.\d+)([eE][+-]?\d{1,3})?")
WORDS = {"null": None, "true": True, "false": False}
MAY_BE = tr_later("PATH=first..last/count or PATH=value,value,value")


@dataclass(frozen=True)
class Parameter:
    """One thing varied: its path as it was given, and its values."""

    path: str
    values: tuple

    @property
    def option(self):
        """The path as an option names it, for refusals."""
        return f"--over {self.path}"


def parse(text):
    """The Parameter of an option's text. Raises BadInput."""
    path, equals, listed = text.partition("=")
    path = path.strip()
    if not equals or not path or not listed.strip() or "" in path.split("."):
        raise _refused(
            text,
            text,
            tr("{field} was {value}; it must be {allowed}.", field="--over", value=repr(text), allowed=tr(MAY_BE)),
        )
    return parameter_of(path, _spaced(text, listed) if _is_range(listed) else _listed(text, listed))


def range_of(text):
    """(path, first, last, count) of an option's text whose values are a range. Raises BadInput."""
    path, _, listed = text.partition("=")
    first, last, count = _ends(text, listed.strip())
    return path.strip(), _finite(text, first), _finite(text, last), count


def parameter_of(path, values):
    """A Parameter of values already read, numbers that are whole as integers. Raises BadInput for a value given twice."""
    values = tuple(_plain(v) for v in values)
    seen = set()
    for value in values:
        if _key(value) in seen:
            raise _refused(
                path,
                value,
                tr("--over {path} has {value} twice; every value may be there once.", path=path, value=as_text(value)),
            )
        seen.add(_key(value))
    if not 1 <= len(values) <= GREATEST_VALUES:
        raise _refused(
            path,
            len(values),
            tr(
                "--over {path} has {count} values; it may have 1 to {most}.",
                path=path,
                count=written(len(values), ","),
                most=written(GREATEST_VALUES, ","),
            ),
        )
    return Parameter(path, values)


def as_text(value):
    """A value as an option, an index or a label writes it."""
    words = {None: "null", True: "true", False: "false"}
    return words[value] if value is None or isinstance(value, bool) else str(value)


def _is_range(listed):
    return any(NUMBER.fullmatch(listed.partition(mark)[0].strip()) for mark in ("..", ":") if mark in listed)


def _spaced(text, listed):
    """Numbers from first to last, each the nearest to its exact decimal place: 0..1/11 has 0.3 and not 0.30000000000000004."""
    first, last, count = _ends(text, listed)
    if not 2 <= count <= GREATEST_VALUES:
        raise _refused(
            text,
            count,
            tr(
                "--over {text} asks for {count} values; a range may have 2 to {most}.",
                text=text,
                count=written(count, ","),
                most=written(GREATEST_VALUES, ","),
            ),
        )
    return [_finite(text, first + (last - first) * k / (count - 1)) for k in range(count)]


def _ends(text, listed):
    """First and last, and how many. Refuses the form of versions before 0.8, first:last:count, by naming the one of now."""
    parts = [p.strip() for p in re.split(r"\.\.|[/:]", listed)]
    whole = len(parts) == 3 and all(NUMBER.fullmatch(p) for p in parts[:2]) and re.fullmatch(r"\d{1,9}", parts[2])
    if not whole or not re.fullmatch(r"[^/:]*\.\.[^/:]*/[^/:]*", listed):
        such = f"{parts[0]}..{parts[1]}/{parts[2]}" if whole else "1..6/11"
        raise _refused(
            text,
            listed,
            tr("--over {text} is not a range; it must be first..last/count, such as {such}.", text=text, such=such),
        )
    return Fraction(parts[0]), Fraction(parts[1]), int(parts[2])


def _listed(text, listed):
    return [_value(text, v.strip()) for v in listed.split(",")]


def _value(text, word):
    if not word:
        raise _refused(
            text, text, tr("--over {text} has an empty value; it must be {may_be}.", text=text, may_be=tr(MAY_BE))
        )
    if NUMBER.fullmatch(word):
        return _finite(text, Fraction(word))
    return WORDS.get(word, word)


def _finite(text, exact):
    try:
        return float(exact)
    except OverflowError:
        raise _refused(text, text, tr("--over {text} has a number too great for any field.", text=text)) from None


def _plain(value):
    """A value of numpy's as Python's; a whole float as an integer: fields that count take no other, all others take both."""
    value = value.item() if isinstance(value, np.generic) else value
    if isinstance(value, float) and math.isfinite(value) and value.is_integer() and abs(value) < 2**53:
        return int(value)
    return value


def _key(value):
    """What tells two values apart: 1 and true are not the same."""
    return (
        (isinstance(value, bool), str(value)) if isinstance(value, (dict, list)) else (isinstance(value, bool), value)
    )


def _refused(field, was, say):
    return BadInput(refusal("over", was, tr(MAY_BE), say))
