"""JSON of plain data with large arrays in it, written one array after another: as lists all at once they would take ten times the
room of what is written."""

from binascii import b2a_base64
from collections.abc import Callable
from secrets import token_hex
from typing import Any

import numpy as np
from pydantic_core import PydanticSerializationError, to_json

from ..physics.budget import spend

_AT_ONCE = 100_000  # numbers of an array that are a list at one time; bytes that are counted together


def as_lists(array: np.ndarray, **how: Any) -> bytes:
    """JSON bytes of an array as lists of numbers; how: as for pydantic's to_json."""
    rows = max(_AT_ONCE * max(len(array), 1) // max(array.size, 1), 1)
    if len(array) <= rows:
        return to_json(array.tolist(), **how)
    parts = []
    for first in range(0, len(array), rows):
        parts.append(to_json(array[first : first + rows].tolist(), **how)[1:-1])
        spend()
    return b"[" + b",".join(parts) + b"]"


def as_f4(array: np.ndarray) -> bytes:
    """JSON bytes of an array as its shape and base64 of little-endian 32-bit floats."""
    data = np.ascontiguousarray(array, dtype="<f4")
    shape = ",".join(map(str, data.shape))
    return b'{"shape":[%b],"f4":"%b"}' % (shape.encode(), b2a_base64(data, newline=False))


def finite(array: np.ndarray) -> np.ndarray:
    """The array. Raises FloatingPointError for a number that is not finite: that is a fault of ours."""
    if not np.logical_and.reduce(np.isfinite(array), axis=None):
        raise FloatingPointError("an answer holds a number that is not finite")
    return array


def with_arrays(content: Any, written: Callable[[np.ndarray], bytes], **how: Any) -> bytes:
    """JSON bytes of plain data in which numpy arrays stand, or functions that make one when it is its turn; written(array) is the JSON
    of one, how: as for pydantic's to_json."""
    mark, arrays = token_hex(16), []

    def left_out(array):
        arrays.append(array)
        return mark

    try:
        text = to_json(content, fallback=left_out, **how)
    except PydanticSerializationError:
        spend()  # what is made as it is written may have ended for want of time or of anybody who waits: to_json says neither
        raise
    first, *parts = text.split(f'"{mark}"'.encode())
    out, uncounted = [first], 0
    for array, part in zip(arrays, parts, strict=True):
        value = written(array() if callable(array) else array)
        out += value, part
        uncounted += len(value)
        if uncounted > _AT_ONCE:
            spend(bytes=uncounted)
            uncounted = 0
    spend(bytes=uncounted)
    return b"".join(out)
