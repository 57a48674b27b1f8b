"""The scene out of a file that Rimfall wrote: the way back from every format. Which format it is its first bytes tell, not its name.

What a file may cost to read is bounded (`terms.py`): nothing is parsed, unpacked or copied that the scene is not in. A file that is
damaged, or not Rimfall's, is refused by a sentence that says so.
"""

import codecs
import json
import mmap
import os
import re
import stat
import sys
from dataclasses import replace
from pathlib import Path

from pydantic_core import from_json

from ...errors import BadInput, Refused, refusal
from ...language import tr, tr_later
from ...scene.reading import as_utf8, read_choices
from .clips import of_mp4
from .crate import of_usdc
from .packed import of_zip
from .pictures import of_png, of_webm
from .tables import beside, refuse_table
from .terms import WANTED, Limits, Recovered, damaged, foreign, too_much
from .texts import of_glb, of_html, of_notes, of_pdf, of_svg, of_usda

_LONG = tr_later("The {kind} file is a document whose bytes are {was}; at most {most} are read.")
_LARGE = tr_later("The whole file has bytes, as many as {was}; at most {most} are read.")
_LONG_TEXT = tr_later("The {kind} file is a text whose bytes are {was}; at most {most} are read.")
_LIMITS = Limits()
_OF_A_PATH = replace(_LIMITS, file_bytes=2_000_000_000)  # a file on disk is read where it lies, not taken into memory
_READERS = {  # how a file begins -> its reader
    b"glTF": of_glb,
    b"#usda": of_usda,
    b"PXR-USDC": of_usdc,
    b"\x1aE\xdf\xa3": of_webm,
    b"PK\3\4": of_zip,
    b"<svg": of_svg,
    b"<?xml": of_svg,
    b"<!doctype html>": of_html,
    b"%PDF-": of_pdf,
    b"\x89PNG\r\n\x1a\n": of_png,
}
_OTHERS = {b"\xff\xd8\xff": "jpg", b"PK\5\6": "zip", b"\x1f\x8b": "gzip", b"GIF8": "gif"}
_LARGE_BYTES = 8_000_000
_FIRST = 32  # bytes that tell a format
_SPACE = b" \t\r\n"
_OBJECT = re.compile(rb"[ \t\r\n]*+\{")


def read_source(name):
    """The scene document in a file, or in standard input where the name is "-", JSON bytes; the file may be any that Rimfall wrote, and
    of a table the notes beside it are read. Raises Refused."""
    try:
        if name == "-":
            return document_in(_piped())
        content = _content_of(Path(name))
        notes = beside(Path(name), bytes(content[:_FIRST]))
        return document_in(_content_of(notes) if notes is not None and notes.exists() else content, _OF_A_PATH)
    except Refused:
        raise
    except (OSError, ValueError) as error:  # a name with a zero byte in it is a ValueError
        say = tr("Cannot read {name}: {why}.", name=name, why=getattr(error, "strerror", None) or error)
        raise BadInput(refusal("file", str(name), tr("a file that can be read"), say)) from None


def _piped():
    if sys.stdin is None:
        say = tr("Cannot read -: standard input is closed.")
        raise BadInput(refusal("file", "-", tr("a file that can be read"), say))
    return sys.stdin.buffer.read(_LIMITS.file_bytes + 1)


def _content_of(path):
    """A large file where it lies, mapped; of others, and of pipes and devices, what may be read of them."""
    with path.open("rb") as file:
        about = os.fstat(file.fileno())
        if stat.S_ISREG(about.st_mode) and about.st_size > _LARGE_BYTES:
            return mmap.mmap(file.fileno(), 0, access=mmap.ACCESS_READ)
        return file.read(_LIMITS.file_bytes + 1)


def document_in(content, limits=_LIMITS):
    """The scene document, JSON bytes, inside a file's bytes; JSON and text that hold no scene come back as they are, in UTF-8, to be
    read or refused as a document. Raises Refused where a file of another kind holds none."""
    content = _within(content, limits)
    reader = _reader_of(content)
    if reader is not None:
        return reader(content, limits).scene
    text = _in_utf8(content, limits)
    refuse_table(bytes(text[:_FIRST]))
    try:
        scene = of_notes(text, "json", limits) if _is_object(text) else None
    except Refused:
        if len(text) > limits.scene_bytes:
            raise
        scene = None  # whoever reads it as a document says at which line it is broken
    if scene is None and len(text) > limits.scene_bytes:
        raise too_much("json", _LONG, len(text), limits.scene_bytes)
    return bytes(text) if scene is None else scene.scene


def recovered(content, limits=_LIMITS):
    """The Recovered of a file's bytes, or of a map of it. Raises Refused, of the field "file"."""
    content = _within(content, limits)
    return _with_choices((_reader_of(content) or _of_json)(content, limits))


def recovered_from(path):
    """The same of a file's path."""
    return recovered(_content_of(Path(path)))


def _within(content, limits):
    if len(content) > limits.file_bytes:
        raise too_much("whole", _LARGE, len(content), limits.file_bytes)
    return memoryview(content)


def _reader_of(content):
    """What reads files that begin so, (content, Limits) -> Recovered; None of text. Raises Refused where Rimfall writes none such."""
    first = bytes(content[:_FIRST])
    for sign, reader in _READERS.items():
        if first.startswith(sign):
            return reader
    if first[4:8] == b"ftyp":
        return of_mp4
    for sign, kind in _OTHERS.items():
        if first.startswith(sign):
            raise foreign(kind)
    return None


def _of_json(content, limits):
    """Of a scene, or of notes, arrays, an answer, a request, a folder's vary.json."""
    text = _in_utf8(content, limits)
    first = bytes(text[:_FIRST])
    refuse_table(first)
    if len(content) == 0:
        raise BadInput(refusal("file", "empty", tr(WANTED), tr("The empty file is damaged: it has no bytes.")))
    if not _is_object(text):
        raise BadInput(
            refusal("file", first.decode("utf-8", "replace"), tr(WANTED), tr("This file is none that Rimfall writes."))
        )
    is_short = len(text) <= limits.scene_bytes
    document = _parsed(text) if is_short else {}
    if not is_short and bytes(text[-_FIRST:]).rstrip(_SPACE)[-1:] != b"}":
        raise damaged("json", tr("it is cut short"))
    scene = of_notes(text, "json", limits)
    if scene is not None:
        return scene
    if not isinstance(document.get("habitat"), dict):
        raise foreign("json")
    return Recovered(bytes(text), None, "json")


def _in_utf8(content, limits):
    """A text as UTF-8 without a byte-order mark; where it is that already, the same bytes."""
    encoding = json.detect_encoding(bytes(content[:4]))
    if encoding.startswith("utf-8"):
        return content[len(codecs.BOM_UTF8) :] if encoding == "utf-8-sig" else content
    if len(content) > limits.notes_bytes:
        raise too_much(encoding.upper(), _LONG_TEXT, len(content), limits.notes_bytes)
    return memoryview(as_utf8(bytes(content)))


def _is_object(text):
    return _OBJECT.match(text) is not None


def _parsed(text):
    try:
        return from_json(bytes(text), allow_inf_nan=False)
    except ValueError as error:
        raise damaged("json", tr("it is no JSON: {error}", error=error)) from None


def _with_choices(scene):
    """Without choices of an export that cannot be made today."""
    try:
        read_choices(json.dumps(scene.export or {}))
    except Refused:
        return replace(scene, export=None)
    return scene
