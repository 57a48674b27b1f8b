"""What was worked out before and is asked for again: the same answer, without the work.

`kept(function, *inputs)` is function(*inputs). Where a Store is open (`keeping`) it is taken from there if the same was asked before; the
key is the function and all that it is given, to the last bit, so nothing that an answer depends on can be left out of it: functions that
are kept look at their inputs alone. What fails or is stopped on the way is not kept.

A server's worker opens one for all its work (`web/work.py`); without one nothing is kept, and nothing is compared.
"""

import functools
import marshal
import threading
from collections import OrderedDict
from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import fields, is_dataclass
from fractions import Fraction
from hashlib import blake2b
from operator import attrgetter
from typing import Any

import numpy as np

from .budget import spend

_OBJECT_BYTES = 150  # of memory: what a Python object and its place in another take, about
_SHARE = 4  # an answer that takes more than this part of a Store would drive out too much else


class Store:
    """Answers, those asked for last; at most so many, of so many bytes together. Threads may share one."""

    def __init__(self, most_bytes: int, most: int):
        self._most_bytes, self._most = most_bytes, most
        self._answers: OrderedDict[bytes, tuple[Any, int]] = OrderedDict()
        self._bytes = 0
        self._change = threading.Lock()

    @property
    def nbytes(self) -> int:
        """How much memory it takes, about."""
        return self._bytes

    def __len__(self):
        return len(self._answers)

    def get(self, key: bytes) -> tuple[Any, int] | None:
        """What is kept under a key: an answer in a tuple with its bytes; None where there is none."""
        with self._change:
            if key not in self._answers:
                return None
            self._answers.move_to_end(key)
            return self._answers[key]

    def put(self, key: bytes, answer: Any) -> None:
        """Keep an answer; its arrays cannot be written from now on."""
        size = _sealed(answer)
        if size * _SHARE > self._most_bytes:
            return
        with self._change:
            self._bytes += size - self._answers.pop(key, (None, 0))[1]
            self._answers[key] = answer, size
            while len(self._answers) > self._most or self._bytes > self._most_bytes:
                self._bytes -= self._answers.popitem(last=False)[1][1]

    def clear(self) -> None:
        """Keep nothing of all this."""
        with self._change:
            self._answers.clear()
            self._bytes = 0


_STORE: ContextVar[Store | None] = ContextVar("store", default=None)


@contextmanager
def keeping(store: Store | None) -> Iterator[Store | None]:
    """What `kept` works out inside is kept in a Store (None: nowhere)."""
    token = _STORE.set(store)
    try:
        yield store
    finally:
        _STORE.reset(token)


def kept(function: Callable, *inputs: Any, **beside: Any) -> Any:
    """function(*inputs, **beside), from before where it was asked the same. beside: what changes nothing of the answer, such as who is told
    how far the work has come, or follows from the inputs."""
    store = _STORE.get()
    if store is None:
        return function(*inputs, **beside)
    key = key_of(function, *inputs)
    known = store.get(key)
    if known is None:
        answer = function(*inputs, **beside)
        store.put(key, answer)
        return answer
    answer, size = known
    spend(bytes=size)  # whoever asks holds it, as if it had been worked out
    return answer


def key_of(function: Callable, *inputs: Any) -> bytes:
    """A digest of a function's name and of its inputs, every number and text of them. Raises TypeError for what `told` does not know."""
    return blake2b(_bytes_of((function.__module__, function.__qualname__, _plain(inputs))), digest_size=20).digest()


def _bytes_of(plain):
    """Tuples, lists and _ATOMS as bytes, by their contents alone: from format 3 on, what is met again is written as a reference."""
    return marshal.dumps(plain, 2)


_ATOMS = frozenset({type(None), bool, int, float, str})  # written as they are


def _plain(values):
    """Some values as a tuple of _ATOMS and tuples, and of lists, which are what is neither: two are alike only if all in them is."""
    return tuple([value if type(value) in _ATOMS else _as_plain(value) for value in values])


def _as_plain(value):
    kind = type(value)
    if kind is np.ndarray:
        return [value.dtype.num, value.shape, value.tobytes()]
    if kind is tuple or kind is list:
        return _plain(value)
    return _MAKERS[kind](value)


class _Makers(dict):
    """Of kinds that are none of _ATOMS: what makes a value plain."""

    def __missing__(self, kind):
        make = told.dispatch(kind)
        if make is told.dispatch(object) and is_dataclass(kind):
            make = _of_dataclass(kind)
        self[kind] = make
        return make


_MAKERS = _Makers()


def _of_dataclass(kind):
    """What makes a dataclass plain: its name, and every field."""
    name, names = f"{kind.__module__}.{kind.__qualname__}", [f.name for f in fields(kind)]
    if len(names) < 2:
        return lambda value: [name, _plain([getattr(value, one) for one in names])]
    read = attrgetter(*names)
    return lambda value: [name, _plain(read(value))]


@functools.singledispatch
def told(value: Any) -> list:
    """A value as a list of texts, numbers and tuples of them, which two share only if they are alike in every field. Classes may be
    registered; a dataclass needs not to."""
    raise TypeError(f"what is kept cannot be told apart by a {type(value).__qualname__}")


@told.register
def _(value: np.generic):
    return [value.dtype.num, value.tobytes()]


@told.register
def _(value: Fraction):
    return ["/", *value.as_integer_ratio()]


@told.register
def _(value: type):
    return [f"{value.__module__}.{value.__qualname__}"]


def told_once(kind: type) -> type:
    """A decorator of frozen dataclasses which stand in many inputs: the bytes of each are made once."""
    make = _of_dataclass(kind)

    def once(value):
        held = vars(value)
        if "_told" not in held:
            held["_told"] = _bytes_of(make(value))
        return held["_told"]

    _MAKERS[kind] = once
    _SHARED.add(kind)
    return kind


_SHARED = {
    *_ATOMS,
    Fraction,
    bytes,
    type,
    np.float64,
    np.bool_,
}  # kinds of what is there without a Store, or holds no array


def _sealed(answer):
    """Let no array of an answer be written any more; the bytes that it takes, about, besides what is kept already."""
    size, seen, wholes, rest = (
        0,
        set(),
        set(),
        [(answer,)],
    )  # seen: by id, which is nothing else's while the answer holds it
    while rest:
        for one in _held(rest.pop()):
            kind = type(one)
            if kind is np.ndarray:
                if one.flags.writeable:
                    one.setflags(write=False)
                    whole = one if one.base is None else one.base  # of which others may be parts as well
                    if id(whole) not in wholes:
                        wholes.add(id(whole))
                        size += _OBJECT_BYTES + whole.nbytes
            elif kind not in _SHARED and id(one) not in seen:
                seen.add(id(one))
                size += _OBJECT_BYTES
                rest.append(one)
    return size


def _held(value):
    """What a value holds, one after another."""
    if isinstance(value, (tuple, list)):
        return value
    if isinstance(value, functools.partial):
        return *value.args, *value.keywords.values()
    return (value if isinstance(value, dict) else getattr(value, "__dict__", {})).values()
