"""Nodes of a glTF 2.0 file in one piece (ISO/IEC 12113) as they move: parents, the first animation, cameras.

Of the file only its JSON part and the arrays that say how those nodes move are read, each inside the file's own bounds.
"""

import json
import struct

import numpy as np

from ...errors import BadInput, refusal
from ...language import tr, written
from ...physics.budget import spend
from ...physics.quaternions import slerp
from .posed import Posed

MOST_KEYS = 20_000
_VERSION = "2.0"  # of glTF
_MOST_DEPTH = 200  # parents over a node
_REST = {"translation": [0.0, 0.0, 0.0], "rotation": [0.0, 0.0, 0.0, 1.0], "scale": [1.0, 1.0, 1.0]}
_KINDS = {5120: "i1", 5121: "u1", 5122: "<i2", 5123: "<u2", 5126: "<f4"}
_WIDTHS = {"SCALAR": 1, "VEC3": 3, "VEC4": 4}
_SCALES = {"i1": 127.0, "u1": 255.0, "<i2": 32767.0, "<u2": 65535.0}


def cameras_of(content, _first_code=None):
    """A Posed for each perspective camera of a .glb, whose times are from 0. Raises BadInput."""
    file = _File(content)
    out = []
    for number, node in enumerate(file.nodes):
        lens = file.lens(node)
        if lens is not None:
            time_s = file.key_times(number)
            spend(bytes=200 * len(time_s))
            fov = np.full(len(time_s), float(lens["yfov"]))
            aspect = lens.get("aspectRatio")
            out.append(
                Posed(
                    node.get("name") or f"camera {number}",
                    time_s,
                    file.world(number, time_s),
                    fov,
                    aspect and float(aspect),
                )
            )
    return out


def nodes_of(content):
    """A Posed for each node of a .glb, cameras aside, that is moved by its animation. Raises BadInput."""
    file = _File(content)
    moved = sorted(
        {number for number, path in file.channels if path == "translation" and file.lens(file.nodes[number]) is None}
    )
    return [
        Posed(file.nodes[number].get("name") or f"node {number}", time_s, file.world(number, time_s))
        for number in moved
        for time_s in (file.key_times(number),)
    ]


class _File:
    """The parts of a .glb."""

    def __init__(self, content):
        try:
            self._read(bytes(content))
        except BadInput:  # a ValueError that says what it is already
            raise
        except (KeyError, IndexError, TypeError, ValueError, struct.error, AttributeError, RecursionError):
            raise _damaged(tr("its parts do not fit together")) from None

    def _read(self, content):
        magic, version, _ = struct.unpack_from("<4sII", content)
        if (magic, version) != (b"glTF", 2):
            raise _damaged(tr("it is no glTF {version} file in one piece (.glb)", version=_VERSION))
        size, _ = struct.unpack_from("<I4s", content, 12)
        self._document = json.loads(content[20 : 20 + size])
        self._binary = content[28 + size :]
        self.nodes = self._document.get("nodes", [])
        self._parent = {child: k for k, node in enumerate(self.nodes) for child in node.get("children", ())}
        animations = self._document.get("animations") or [{"channels": [], "samplers": []}]
        samplers = animations[0]["samplers"]
        self.channels = {
            (one["target"].get("node"), one["target"]["path"]): self._sampler(samplers[one["sampler"]])
            for one in animations[0]["channels"]
            if one["target"]["path"] in _REST
        }

    def _sampler(self, sampler):
        """(times, values (T, k), way) of what moves a node; of a cubic spline its keys alone, taken as straight between them."""
        times, values = self._array(sampler["input"])[:, 0], self._array(sampler["output"])
        way = sampler.get("interpolation", "LINEAR")
        if way == "CUBICSPLINE":
            values = values.reshape(len(times), 3, -1)[:, 1]
        if len(times) != len(values) or not len(times) or len(times) > MOST_KEYS or np.any(np.diff(times) <= 0):
            raise _damaged(
                tr("an animation has no keys, more than {most}, or keys out of order", most=written(MOST_KEYS, ","))
            )
        return times, values, way

    def _array(self, number):
        accessor = self._document["accessors"][number]
        view = self._document["bufferViews"][accessor["bufferView"]]
        kind, width, count = np.dtype(_KINDS[accessor["componentType"]]), _WIDTHS[accessor["type"]], accessor["count"]
        stride = view.get("byteStride", kind.itemsize * width)
        start = view.get("byteOffset", 0) + accessor.get("byteOffset", 0)
        if count < 0 or start < 0 or start + max(count - 1, 0) * stride + kind.itemsize * width > len(self._binary):
            raise _damaged(tr("an array lies outside the file"))
        values = np.ndarray((count, width), kind, self._binary, start, (stride, kind.itemsize)).astype(float)
        return np.maximum(values / _SCALES[kind.str.lstrip("|")], -1.0) if accessor.get("normalized") else values

    def lens(self, node):
        """The perspective of a node's camera, or None."""
        number = node.get("camera")
        return None if number is None else self._document["cameras"][number].get("perspective")

    def _line(self, number):
        """A node and its parents, the outermost last."""
        line = [number]
        while line[-1] in self._parent:
            line.append(self._parent[line[-1]])
            if len(line) > _MOST_DEPTH:
                raise _damaged(tr("its nodes hold one another in a ring"))
        return line

    def key_times(self, number):
        """Times (T,) at which anything over a node has a key; 0 alone where nothing moves it."""
        keys = [
            self.channels[one, path][0] for one in self._line(number) for path in _REST if (one, path) in self.channels
        ]
        return np.unique(np.concatenate(keys)) if keys else np.zeros(1)

    def world(self, number, time_s):
        """Matrices (T, 4, 4) of a node at times (T,)."""
        out = np.broadcast_to(np.eye(4), (len(time_s), 4, 4))
        for one in self._line(number):
            out = self._own(one, time_s) @ out
        return out

    def _own(self, number, time_s):
        node = self.nodes[number]
        if "matrix" in node:
            return np.broadcast_to(np.array(node["matrix"], dtype=float).reshape(4, 4).T, (len(time_s), 4, 4))
        move, turn, size = (self._value(number, path, time_s) for path in _REST)
        out = np.zeros((len(time_s), 4, 4))
        out[:, :3, :3] = rotation(turn) * size[:, None, :]
        out[:, :3, 3], out[:, 3, 3] = move, 1.0
        return out

    def _value(self, number, path, time_s):
        """What moves a node at times (T,) -> (T, k)."""
        if (number, path) not in self.channels:
            value = np.array(self.nodes[number].get(path, _REST[path]), dtype=float)
            return np.broadcast_to(value, (len(time_s), len(_REST[path])))
        times, values, way = self.channels[number, path]
        k = np.clip(np.searchsorted(times, time_s, "right") - 1, 0, max(len(times) - 2, 0))
        if len(times) == 1:
            return values[np.zeros(len(time_s), dtype=int)]
        if way == "STEP":
            return values[np.clip(np.searchsorted(times, time_s, "right") - 1, 0, len(times) - 1)]
        share = np.clip((time_s - times[k]) / (times[k + 1] - times[k]), 0.0, 1.0)[:, None]
        before, after = values[k], values[k + 1]
        return slerp(before, after, share) if path == "rotation" else before + share * (after - before)


def rotation(quaternion):
    """Matrices (n, 3, 3) of quaternions (n, 4), w last; of any length above 0."""
    x, y, z, w = _unit(quaternion).T
    rows = [
        [1 - 2 * (y * y + z * z), 2 * (x * y - z * w), 2 * (x * z + y * w)],
        [2 * (x * y + z * w), 1 - 2 * (x * x + z * z), 2 * (y * z - x * w)],
        [2 * (x * z - y * w), 2 * (y * z + x * w), 1 - 2 * (x * x + y * y)],
    ]
    return np.moveaxis(np.array(rows), -1, 0)


def _unit(vectors):
    return vectors / np.maximum(np.linalg.norm(vectors, axis=-1, keepdims=True), 1e-300)


def _damaged(why):
    say = tr("This glb cannot be read: {why}.", why=why)
    return BadInput(refusal("file", "glb", tr("a glTF {version} file in one piece (.glb)", version=_VERSION), say))
