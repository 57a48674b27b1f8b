"""A glTF 2.0 file in one piece (.glb) as it grows: arrays, nodes, meshes, materials and its one animation.

Arrays lie in a few runs of the binary chunk, one a use, so that the JSON part stays short. An array that is asked for twice is
stored once. Numbers of single precision, little-endian, as ISO/IEC 12113 (glTF 2.0) says.
"""

import json
import struct
from hashlib import blake2b

import numpy as np

from ..physics.budget import spend

ARRAY_BUFFER, ELEMENT_ARRAY_BUFFER = 34962, 34963
FLOAT, UNSIGNED_SHORT, UNSIGNED_INT = 5126, 5123, 5125
LINES, POINTS = 1, 0
_SHAPES = {1: "SCALAR", 3: "VEC3", 4: "VEC4"}
_RUNS = {  # name -> what its buffer view says besides the range
    "vertices": {"byteStride": 12, "target": ARRAY_BUFFER},
    "short indices": {"target": ELEMENT_ARRAY_BUFFER},
    "indices": {"target": ELEMENT_ARRAY_BUFFER},
    "keys": {},
}


class File:
    """What is put in gets its number back. A node goes under the node named, or stands alone where that is None."""

    def __init__(self, generator, extras):
        self.asset = {"version": "2.0", "generator": generator, "extras": extras}
        self.lists = {name: [] for name in ("nodes", "meshes", "materials", "cameras", "accessors")}
        self.samplers, self.channels = [], []
        self._runs = {name: bytearray() for name in _RUNS}
        self._known = {}

    def add(self, kind, thing):
        """Number of a thing newly put in one of the lists."""
        self.lists[kind].append(thing)
        return len(self.lists[kind]) - 1

    def once(self, kind, thing):
        """Number of a thing that may be there already, as it is."""
        key = kind, json.dumps(thing, sort_keys=True)
        if key not in self._known:
            self._known[key] = self.add(kind, thing)
        return self._known[key]

    def node(self, parent, name, **what):
        """A node; names are the caller's to keep apart."""
        number = self.add("nodes", {"name": name} | what)
        if parent is not None:
            self.lists["nodes"][parent].setdefault("children", []).append(number)
        return number

    def vertices(self, values):
        """Accessor of (n, 3) floats of a mesh, with their bounds."""
        return self._accessor("vertices", np.asarray(values, dtype="<f4"), FLOAT, bounds=True)

    def indices(self, values):
        """Accessor of vertex numbers, of two bytes where they fit; the greatest of two bytes is not a vertex number."""
        if np.max(values) < 65535:
            return self._accessor("short indices", np.ravel(values).astype("<u2"), UNSIGNED_SHORT)
        return self._accessor("indices", np.ravel(values).astype("<u4"), UNSIGNED_INT)

    def keys(self, values, bounds=False):
        """Accessor of an animation's times (n,) or values (n, 3) or (n, 4); times need their bounds."""
        return self._accessor("keys", np.asarray(values, dtype="<f4"), FLOAT, bounds)

    def _accessor(self, run, values, component, bounds=False):
        data = values.tobytes()
        spend(bytes=len(data))
        key = run, values.shape, blake2b(data).digest(), bounds
        if key not in self._known:
            shape = _SHAPES[values.shape[1] if values.ndim == 2 else 1]
            what = {"bufferView": run, "byteOffset": len(self._runs[run]), "componentType": component}
            what |= {"count": len(values), "type": shape}
            if bounds:
                what |= {"min": _listed(values.min(axis=0)), "max": _listed(values.max(axis=0))}
            self._runs[run] += data
            self._known[key] = self.add("accessors", what)
        return self._known[key]

    def animate(self, node, path, times_s, values, way="LINEAR"):
        """Keys of a node's "translation", "rotation" (x, y, z, w), "scale" or "weights" at shown times (n,). Times that single
        precision cannot tell apart are one key: a reader wants them rising."""
        times_s = np.asarray(times_s, dtype="<f4")
        apart = np.append(True, np.diff(times_s) > 0)
        if not np.all(apart):
            times_s, values = times_s[apart], values[apart]
        sampler = {"input": self.keys(times_s, bounds=True), "output": self.keys(values), "interpolation": way}
        self.samplers.append(sampler)
        self.channels.append({"sampler": len(self.samplers) - 1, "target": {"node": node, "path": path}})

    def glb(self, root):
        """The whole file as bytes; root: number of the node that holds all others."""
        views, binary = self._packed()
        for accessor in self.lists["accessors"]:
            accessor["bufferView"] = views[accessor["bufferView"]][0]
        document = {"asset": self.asset, "scene": 0, "scenes": [{"nodes": [root]}]}
        document |= {name: things for name, things in self.lists.items() if things}
        if binary:
            document |= {"bufferViews": [view for _, view in views.values()], "buffers": [{"byteLength": len(binary)}]}
        if self.channels:
            document["animations"] = [{"name": "motion", "samplers": self.samplers, "channels": self.channels}]
        extensions = sorted({name for thing in self.lists["materials"] for name in thing.get("extensions", ())})
        if extensions:
            document["extensionsUsed"] = extensions
        text = json.dumps(document, ensure_ascii=False, allow_nan=False, separators=(",", ":")).encode()
        return _chunked(text, binary)

    def _packed(self):
        """Run -> (number, buffer view) of the runs that hold something, and the binary chunk."""
        spend(bytes=2 * sum(map(len, self._runs.values())))
        views, binary = {}, bytearray()
        for run, data in self._runs.items():
            if data:
                view = {"buffer": 0, "byteOffset": len(binary), "byteLength": len(data)} | _RUNS[run]
                views[run] = len(views), view
                binary += data + bytes(-len(data) % 4)
        return views, binary


def _listed(value):
    """A number or a row of them as JSON's list."""
    return [float(v) for v in np.atleast_1d(value)]


def _chunked(text, binary):
    """Header, JSON chunk and binary chunk, each a multiple of four bytes long."""
    text += b" " * (-len(text) % 4)
    chunks = [struct.pack("<I4s", len(text), b"JSON"), text]
    if binary:
        chunks += [struct.pack("<I4s", len(binary), b"BIN\0"), binary]
    return b"".join([struct.pack("<4sII", b"glTF", 2, 12 + sum(map(len, chunks))), *chunks])
