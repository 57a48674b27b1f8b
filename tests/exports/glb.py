"""Reads a .glb by the standard's text alone (ISO/IEC 12113, chapters 3.6, 3.11 and 4), sharing nothing with the writer."""

import json
import struct
from bisect import bisect_right

import numpy as np

NUMBERS = {5123: "<u2", 5125: "<u4", 5126: "<f4"}
WIDTHS = {"SCALAR": 1, "VEC3": 3, "VEC4": 4}


class Glb:
    """document: the JSON part. Nodes are asked for by name."""

    def __init__(self, data):
        magic, version, length = struct.unpack_from("<4sII", data)
        assert (magic, version, length) == (b"glTF", 2, len(data))
        size, kind = struct.unpack_from("<I4s", data, 12)
        assert kind == b"JSON"
        self.document = json.loads(data[20 : 20 + size])
        binary, kind = struct.unpack_from("<I4s", data, 20 + size)
        assert kind == b"BIN\0"
        assert 28 + size + binary == length
        self.binary = data[28 + size :]
        self.nodes = self.document["nodes"]
        self.named = {node["name"]: k for k, node in enumerate(self.nodes)}
        assert len(self.named) == len(self.nodes), "names of nodes are unique"
        self.parent = {child: k for k, node in enumerate(self.nodes) for child in node.get("children", ())}
        self.animation = (self.document.get("animations") or [{"channels": [], "samplers": []}])[0]

    def array(self, number):
        """An accessor's values, (n,) or (n, k)."""
        accessor = self.document["accessors"][number]
        view = self.document["bufferViews"][accessor["bufferView"]]
        kind, width = np.dtype(NUMBERS[accessor["componentType"]]), WIDTHS[accessor["type"]]
        start = view["byteOffset"] + accessor["byteOffset"]
        assert view.get("byteStride", kind.itemsize * width) == kind.itemsize * width
        assert accessor["byteOffset"] + accessor["count"] * width * kind.itemsize <= view["byteLength"]
        values = np.frombuffer(self.binary, kind, accessor["count"] * width, start)
        return values if width == 1 else values.reshape(-1, width)

    def sampler(self, name, path):
        """(interpolation, times, values) of what moves a node, or None."""
        for channel in self.animation["channels"]:
            if channel["target"] == {"node": self.named[name], "path": path}:
                sampler = self.animation["samplers"][channel["sampler"]]
                return sampler["interpolation"], self.array(sampler["input"]), self.array(sampler["output"])
        return None

    def value(self, name, path, time_s):
        """What a node's property is at a time, as a player finds it."""
        rest = {"translation": [0, 0, 0], "rotation": [0, 0, 0, 1], "scale": [1, 1, 1]}[path]
        found = self.sampler(name, path)
        if found is None:
            return np.array(self.nodes[self.named[name]].get(path, rest), dtype=float)
        way, times, values = found
        times, values = times.astype(float), values.astype(float)
        k = max(bisect_right(times.tolist(), time_s) - 1, 0)
        if way == "STEP" or k + 1 == len(times):
            return values[k]
        share = min(max((time_s - times[k]) / (times[k + 1] - times[k]), 0.0), 1.0)
        return (_arc if path == "rotation" else _line)(values[k], values[k + 1], share)

    def world(self, name, point, time_s):
        """A point of a node's own space (3,) in that of the scene at a time."""
        node = self.named[name]
        while node is not None:
            here = self.nodes[node]["name"]
            point = rotated(self.value(here, "rotation", time_s), self.value(here, "scale", time_s) * point)
            point = point + self.value(here, "translation", time_s)
            node = self.parent.get(node)
        return point

    def primitive(self, name, number=0):
        """A node's mesh's primitive."""
        return self.document["meshes"][self.nodes[self.named[name]]["mesh"]]["primitives"][number]

    def morphed(self, name, key):
        """Corners (V, 3) of a node's morphing mesh at one of the keys of its weights, and that key's time."""
        primitive, (_, times, weights) = self.primitive(name), self.sampler(name, "weights")
        corners = self.array(primitive["attributes"]["POSITION"]).astype(float)
        for weight, target in zip(weights.reshape(len(times), -1)[key], primitive["targets"], strict=True):
            corners = corners + float(weight) * self.array(target["POSITION"])
        return corners, float(times[key])


def rotated(quaternion, vector):
    """A vector turned by a quaternion x, y, z, w."""
    quaternion = quaternion / np.linalg.norm(quaternion)
    axis, w = quaternion[:3], quaternion[3]
    return vector + 2 * np.cross(axis, np.cross(axis, vector) + w * vector)


def _line(a, b, share):
    return a + share * (b - a)


def _arc(a, b, share):
    """Spherical, the shorter way round (the standard's appendix C)."""
    dot = float(a @ b)
    angle = np.arccos(min(abs(dot), 1.0))
    if angle < 1e-9:
        return a
    return (np.sin((1 - share) * angle) * a + np.sign(dot) * np.sin(share * angle) * b) / np.sin(angle)
