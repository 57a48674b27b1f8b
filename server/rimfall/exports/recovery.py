"""The scene document out of a file that was taken away: the way back from every format that holds text or data."""

import errno
import io
import json
import re
import struct
import sys
import tempfile
import zipfile
from pathlib import Path

from ..errors import BadInput, refusal

_USDA = re.compile(r'string rimfall = ("(?:[^"\\]|\\.)*")')
_SVG = re.compile(rb"<metadata>(.*?)</metadata>", re.DOTALL)
_PDF = re.compile(rb"/Scene <([0-9A-Fa-f]*)>")
_ESCAPES = {b"&lt;": b"<", b"&gt;": b">", b"&quot;": b'"', b"&amp;": b"&"}


def read_source(name):
    """The scene document in a file, or in standard input where the name is "-", JSON bytes; the file may be one that was taken
    away. Raises BadInput."""
    try:
        return document_in(_standard_input() if name == "-" else Path(name).read_bytes())
    except OSError as error:
        say = f"Cannot read {name}: {error.strerror or error}."
        raise BadInput(refusal("file", name, "a file that can be read", say)) from None


def _standard_input():
    if sys.stdin is None:
        raise OSError(errno.EBADF, "standard input is closed")
    return sys.stdin.buffer.read()


def document_in(content):
    """The scene document, JSON bytes, inside the bytes of a file; what is no such file comes back as it is, to be refused as a
    document. Raises BadInput where a file of ours holds none."""
    for sign, look in _LOOKS.items():
        if content.startswith(sign):
            document = look(content)
            if document is None:
                say = "This file holds no scene: it was not taken away from Rimfall, or has been changed since."
                raise BadInput(refusal("file", sign.decode("latin-1").strip(), "a file taken away from Rimfall", say))
            return document
    return _of_json(content) or content


def _of_json(content):
    """Of notes, forces or arrays: what they call `scene`."""
    try:
        document = json.loads(content)
    except (ValueError, RecursionError):
        return None
    scene = document.get("scene") if isinstance(document, dict) else None
    return json.dumps(scene).encode() if isinstance(scene, dict) else None


def _of_glb(content):
    try:
        length, kind = struct.unpack_from("<I4s", content, 12)
        asset = json.loads(content[20 : 20 + length])["asset"] if kind == b"JSON" else {}
        return _of_json(json.dumps(asset.get("extras")).encode())
    except (struct.error, ValueError, KeyError, AttributeError):
        return None


def _of_usda(content):
    match = _USDA.search(content.decode("utf-8", "replace"))
    return _of_json(json.loads(match[1]).encode()) if match else None


def _of_usdc(content):
    try:
        from pxr import Sdf, Tf  # an optional extra
    except ImportError:
        say = "A .usdc file is read with an extra that is not installed: install rimfall[usd], or take .usda or .usdz."
        raise BadInput(refusal("file", ".usdc", "a file that can be read", say)) from None
    with tempfile.TemporaryDirectory() as folder:
        path = Path(folder, "scene.usdc")
        path.write_bytes(content)
        try:
            layer = Sdf.Layer.FindOrOpen(str(path))
        except Tf.ErrorException:
            return None
        return _of_json(layer.customLayerData.get("rimfall", "").encode()) if layer else None


def _of_zip(content):
    try:
        with zipfile.ZipFile(io.BytesIO(content)) as packed:
            layers = [name for name in packed.namelist() if name.endswith(".usda")]
            return _of_usda(packed.read(layers[0])) if layers else None
    except zipfile.BadZipFile:
        return None


def _of_svg(content):
    match = _SVG.search(content)
    if not match:
        return None
    text = match[1]
    for escape, plain in _ESCAPES.items():  # the ampersand last, or what it escapes would be unescaped twice
        text = text.replace(escape, plain)
    return _of_json(b'{"scene": ' + text + b"}")


def _of_pdf(content):
    match = _PDF.search(content)
    return _of_json(b'{"scene": ' + bytes.fromhex(match[1].decode()) + b"}") if match else None


_LOOKS = {
    b"glTF": _of_glb,
    b"#usda": _of_usda,
    b"PXR-USDC": _of_usdc,
    b"PK\x03\x04": _of_zip,
    b"<svg": _of_svg,
    b"%PDF-": _of_pdf,
}
