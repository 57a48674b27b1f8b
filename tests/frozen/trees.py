"""Answers as trees that are small enough to keep, and where two of them differ.

A tree is the answer's JSON with each long array of numbers replaced by a few figures: {"array": shape, ...}. `digested` keeps a
digest, for one machine; `measured` keeps statistics that another processor's rounding moves but little.
"""

import hashlib
import math

import numpy as np

LONG = 12  # an array of more numbers than this is not kept number by number
DIGITS = 12  # of what `measured` keeps
RELATIVE = 1e-9  # that a number may differ by, of itself; of an array's greatest, in an array
FLOOR = 1e-11  # and of 1 more than the greatest beside it, where what is left of a difference is rounding
WEIGHTS = 3


def numbers_of(value):
    """A list of numbers, or of rows of them, as an array where it is long; None for anything else."""
    if not isinstance(value, list) or not value or not isinstance(value[0], (list, float, int)):
        return None
    try:
        array = np.array(value)
    except ValueError:  # rows of unequal length
        return None
    return array if array.dtype.kind in "if" and array.size > LONG else None


def tree(value, of_array, of_number=lambda number: number):
    """The tree of an answer: of_array(numpy array) -> dict; of_number(float)."""
    if isinstance(value, dict):
        return {name: tree(one, of_array, of_number) for name, one in value.items()}
    if isinstance(value, list):
        array = numbers_of(value)
        if array is not None:
            return {"array": list(array.shape)} | of_array(array)
        return [tree(one, of_array, of_number) for one in value]
    return of_number(value) if isinstance(value, float) else value


def digested(answer):
    """The tree in which equal digests are equal arrays, bit for bit."""
    return tree(answer, lambda array: {"digest": digest(array.dtype.str.encode() + array.tobytes())[:16]})


def digest(data):
    """SHA-256 of bytes, as hex."""
    return hashlib.sha256(data).hexdigest()


def measured(answer):
    """The tree in which arrays are first, last, greatest, norm and weighted sums; whole numbers stay a digest."""
    return tree(answer, _statistics, _short)


def _short(number):
    return float(f"{number:.{DIGITS - 1}e}")


def _statistics(array):
    if array.dtype.kind == "i":
        return {"digest": digest(array.astype("<i8").tobytes())[:16]}
    flat, greatest = array.ravel(), float(np.abs(array).max())
    scaled = flat / (greatest or 1.0)  # the squares of the least numbers would be nothing
    sums = [float(np.dot(scaled, _weights(k, flat.size))) * greatest for k in range(WEIGHTS)]
    figures = {"greatest": greatest, "norm": float(np.sqrt(np.dot(scaled, scaled))) * greatest}
    ends = {"first": np.atleast_1d(array[0]).ravel().tolist(), "last": np.atleast_1d(array[-1]).ravel().tolist()}
    if len(ends["first"]) > LONG:
        ends = {"first": flat[:1].tolist(), "last": flat[-1:].tolist()}
    return {
        **{name: _short(value) for name, value in figures.items()},
        **{name: [_short(v) for v in values] for name, values in (ends | {"sums": sums}).items()},
    }


def _weights(which, count):
    """`count` fixed weights from -1 to 1, scrambled whole numbers, the same on every machine."""
    number = np.arange(1, count + 1, dtype=np.uint64) + np.uint64((which + 1) << 40)
    for shift, factor in ((30, 0xBF58476D1CE4E5B9), (27, 0x94D049BB133111EB)):
        number = (number ^ (number >> np.uint64(shift))) * np.uint64(factor)
    number ^= number >> np.uint64(31)
    return (number >> np.uint64(11)).astype(float) / 2.0**52 - 1.0


def differences(was, now, path="", equal=lambda was, now, _beside: was == now, beside=0.0):
    """(path, was, now) of each leaf in which two trees differ; equal(was, now, greatest number beside it) of two floats."""
    if isinstance(was, dict) and isinstance(now, dict):
        yield from _of_dicts(was, now, path, equal)
    elif isinstance(was, list) and isinstance(now, list):
        if len(was) != len(now):
            yield f"{path} (length)", len(was), len(now)
        beside = _greatest(was)
        for i, (one, other) in enumerate(zip(was, now, strict=False)):
            yield from differences(one, other, f"{path}.{i}", equal, beside)
    elif type(was) is float and type(now) is float:
        if not equal(was, now, beside):
            yield path, was, now
    elif type(was) is not type(now) or was != now:
        yield path, was, now


def _of_dicts(was, now, path, equal):
    arrays = "array" in was and "array" in now and equal is close
    beside = was.get("greatest", 0.0) / FLOOR * RELATIVE if arrays else _greatest(was.values())
    for name in [*was, *(n for n in now if n not in was)]:
        at = f"{path}.{name}" if path else name
        if name not in was or name not in now:
            yield at, was.get(name, "nothing"), now.get(name, "nothing")
        elif arrays and isinstance(was[name], list) and name != "array":
            room = beside * math.sqrt(math.prod(was["array"])) if name == "sums" else beside
            same_size = len(was[name]) == len(now[name])
            if not same_size or not all(map(close, was[name], now[name], [room] * len(was[name]))):
                yield at, was[name], now[name]
        else:
            yield from differences(was[name], now[name], at, equal, beside)


def _greatest(values):
    return max((abs(v) for v in values if type(v) is float), default=0.0)


def close(was, now, beside):
    """Whether two numbers are the same but for the rounding of another processor."""
    return abs(was - now) <= RELATIVE * abs(was) + FLOOR * (1.0 + beside)
