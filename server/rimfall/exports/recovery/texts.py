"""The scene out of files that are text or hold one: JSON, glTF, OpenUSD as text, SVG, HTML and PDF. Each takes a memoryview and Limits, and
gives a Recovered. Raises Refused."""

import json
import re
import struct

from ...language import tr, tr_later, written
from .json_walk import JsonWalk
from .terms import Recovered, damaged, foreign, too_much

_LONG_NOTES = tr_later("The {kind} file holds notes whose bytes are {was}; at most {most} are read.")
_LONG_SCENE = tr_later("The {kind} file holds a scene whose digits are {was}; at most {most} are read.")
_USDA_NOTES = re.compile(rb'string rimfall = "')
_USDA_TEXT = re.compile(rb'[^"\\]*+(?:\\.[^"\\]*+)*+"', re.DOTALL)
_USDA_END = re.compile(rb"^\}\s*\Z", re.MULTILINE)
_METADATA, _METADATA_END = re.compile(rb"<metadata>"), re.compile(rb"</metadata>")
_SVG_END = re.compile(rb"</svg>\s*\Z")
_HTML_NOTES, _HTML_NOTES_END = (
    re.compile(rb'<script type="application/json" id="rimfall-notes">'),
    re.compile(rb"</script>"),
)
_HTML_END = re.compile(rb"</html>\s*\Z")
_ENTITIES = re.compile(rb"<!(?:DOCTYPE|ENTITY)", re.IGNORECASE)
_ESCAPES = {b"&lt;": b"<", b"&gt;": b">", b"&quot;": b'"', b"&amp;": b"&"}
_PDF_SCENE = re.compile(rb"/Scene <([0-9A-Fa-f]*+)(>?)")
_PDF_END = re.compile(rb"startxref\s+(\d{1,12})\s+%%EOF\s*\Z")
_PDF_INDEX = re.compile(rb"xref|\d+ \d+ obj")
_TAIL = 1024  # bytes at the end of a file in which it ends
_HEAD = 65_536  # bytes of a drawing before its metadata


def of_carried_notes(content, kind, limits):
    """Of notes that a picture or a clip carries in whole. Raises Refused where they are longer than may be read, or hold no scene."""
    if len(content) > limits.notes_bytes:
        raise too_much(kind, _LONG_NOTES, len(content), limits.notes_bytes)
    scene = of_notes(content, kind, limits)
    if scene is None:
        raise foreign(kind)
    return scene


def of_notes(content, kind, limits):
    """Of notes, arrays, answers and requests: what they call `scene`; None where they call no object so. kind: of the file."""
    walk = JsonWalk(content, kind, limits)
    return _beside(walk, walk.first(), kind)


def _beside(walk, notes, kind):
    """The scene among the notes, an object at that place, and the choices beside it, of notes or of a folder of combinations."""
    scene = walk.member(notes, "scene")
    if scene is None or not walk.is_object(scene):
        return None
    options = walk.member(notes, "export", "options")
    export = walk.member(notes, "export") if options is None else options
    return Recovered(walk.object_bytes(scene), None if export is None else walk.object(export), kind)


def of_glb(content, limits):
    """glTF 2.0 in one file (ISO/IEC 12113, section 4.4): the extras of its asset."""
    try:
        _, stated, length, chunk = struct.unpack_from("<III4s", content, 4)
    except struct.error:
        raise damaged("glb", tr("it ends within its header")) from None
    if stated != len(content):
        raise damaged(
            "glb",
            tr(
                "it says that it has {stated} bytes, and has {bytes}",
                stated=written(stated, ","),
                bytes=written(len(content), ","),
            ),
        )
    if chunk != b"JSON" or 20 + length > len(content):
        raise damaged(
            "glb",
            tr(
                "its first part, of {length} bytes, is not the text that a glb begins with, or is cut short",
                length=written(length, ","),
            ),
        )
    walk = JsonWalk(content[20 : 20 + length], "glb", limits)
    notes = walk.member(walk.first(), "asset", "extras")
    scene = None if notes is None else _beside(walk, notes, "glb")
    if scene is None:
        raise foreign("glb")
    return scene


def of_usda(content, limits):
    """OpenUSD as text: one text of the layer's own data, which holds the notes."""
    start = _USDA_NOTES.search(content, 0, limits.notes_bytes)
    if start is None:
        raise foreign("usda")
    end = _USDA_TEXT.match(content, start.end(), start.end() + limits.notes_bytes)
    if end is None:
        if len(content) - start.end() > limits.notes_bytes:
            raise too_much("usda", _LONG_NOTES, len(content) - start.end(), limits.notes_bytes)
        raise damaged("usda", tr("the notes in it are cut short"))
    if not _USDA_END.search(content[-_TAIL:]):
        raise damaged("usda", tr("it is cut short"))
    try:  # as latin-1, in which every byte is a letter: a text of a million letters is as long as its bytes, whatever is in it
        notes = json.loads(str(content[start.end() - 1 : end.end()], "latin-1"), strict=False).encode("latin-1")
    except ValueError as error:
        raise damaged("usda", tr("the notes in it are not a text: {error}", error=error)) from None
    scene = of_notes(memoryview(notes), "usda", limits)
    if scene is None:
        raise foreign("usda")
    return scene


def of_svg(content, limits):
    """A drawing: its metadata. Nothing in it is expanded, so that it may define nothing."""
    head = content[:_HEAD]
    if _ENTITIES.search(head):
        raise foreign("svg", tr("It defines entities, which are not read."))
    start = _METADATA.search(head)
    if start is None:
        raise foreign("svg")
    end = _METADATA_END.search(content, start.end(), start.end() + limits.notes_bytes)
    if end is None:
        raise damaged("svg", tr("its metadata does not end"))
    if not _SVG_END.search(content[-_TAIL:]):
        raise damaged("svg", tr("it is cut short"))
    text = bytes(content[start.end() : end.start()])
    for escape, plain in _ESCAPES.items():  # the ampersand last, or what it escapes would be unescaped twice
        text = text.replace(escape, plain)
    return _alone(text, "svg", limits)


def of_html(content, limits):
    """A page that plays by itself: the notes in its head, JSON in which no "<" stands."""
    start = _HTML_NOTES.search(content[:_HEAD])
    if start is None:
        raise foreign("html")
    end = _HTML_NOTES_END.search(content, start.end(), start.end() + limits.notes_bytes)
    if end is None:
        raise damaged("html", tr("the notes in it do not end"))
    if not _HTML_END.search(content[-_TAIL:]):
        raise damaged("html", tr("it is cut short"))
    notes = content[start.end() : end.start()]
    return _talk(notes, limits) or of_carried_notes(notes, "html", limits)


def _talk(notes, limits):
    """The document of the talk that a page gives, in a scene's stead; None of the page of a scene."""
    walk = JsonWalk(notes[: limits.notes_bytes], "html", limits)
    talk = walk.member(walk.first(), "talk")
    if talk is None or not walk.is_object(talk):
        return None
    return Recovered(walk.object_bytes(talk), None, "html")


def of_pdf(content, limits):
    """A document (ISO 32000-1, 7.5): the entry Scene of its information."""
    end = _PDF_END.search(content[-_TAIL:])
    if end is None:
        raise damaged("pdf", tr("it does not end as a PDF ends, so that it is cut short"))
    if not _PDF_INDEX.match(content, int(end[1])):
        raise damaged(
            "pdf",
            tr("its cross-reference table (xref) is not at byte {at}, where it says", at=written(int(end[1]), ",")),
        )
    scene = _PDF_SCENE.search(content)
    if scene is None:
        raise foreign("pdf")
    digits = scene.end(1) - scene.start(1)
    if digits > 2 * limits.scene_bytes:
        raise too_much("pdf", _LONG_SCENE, digits, 2 * limits.scene_bytes)
    if not scene[2] or digits % 2:
        raise damaged("pdf", tr("the scene in it is broken off"))
    return _alone(bytes.fromhex(scene[1].decode()), "pdf", limits)


def _alone(text, kind, limits):
    """A scene with nothing around it."""
    walk = JsonWalk(memoryview(text), kind, limits)
    if not walk.is_object(walk.first()):
        raise foreign(kind)
    return Recovered(walk.object_bytes(walk.first()), None, kind)
