"""What every reader here keeps to: what it gives, what it may cost, and how it refuses, always by the field "file"."""

from dataclasses import dataclass

from ...errors import BadInput, TooMuch, refusal
from ...language import tr, tr_later, written
from ...scene.bounds import GREATEST_DOCUMENT_BYTES

WANTED = tr_later("a whole file written by Rimfall")


@dataclass(frozen=True)
class Recovered:
    """scene: the document as JSON bytes, an object, not yet read as a scene. export: the choices the file was made with, a dict, or
    None. format: "glb", "usdz", ...; "json" of a scene itself and of all else that is JSON, "zip" of tables or pictures."""

    scene: bytes
    export: dict | None
    format: str


@dataclass(frozen=True)
class Limits:
    """file_bytes: of the file; notes_bytes: of the text in it that holds the scene, packed or not; scene_bytes: of the scene;
    unpacked_bytes: of a member of a zip that is deflated; ratio: times its packed size that it may have; tokens: strings and brackets
    of JSON, or runs of packed bytes, up to the scene's end; depth: of brackets in brackets; parts: members of a zip, chunks of a
    picture, elements of a clip."""

    file_bytes: int = 60_000_000
    notes_bytes: int = 16_000_000
    scene_bytes: int = GREATEST_DOCUMENT_BYTES
    unpacked_bytes: int = 32_000_000
    ratio: int = 200
    tokens: int = 1_000_000
    depth: int = 64
    parts: int = 100_000


def damaged(kind, what):
    """Refusal of a file that is not whole. kind: "usdz", "glb"; what: a sentence without its full stop."""
    return BadInput(refusal("file", kind, tr(WANTED), tr("The {kind} file is damaged: {what}.", kind=kind, what=what)))


def foreign(kind, more=""):
    """Refusal of a whole file that holds no scene; more: a sentence to follow."""
    say = tr(
        "The {kind} file holds no scene: Rimfall did not write it, or another program has saved it since.", kind=kind
    )
    return BadInput(refusal("file", kind, tr(WANTED), f"{say} {more}".rstrip()))


def too_much(kind, text, was, most, **places):
    """Refusal of a file that would cost too much to read. text: the message, with the places kind, was, most, and others."""
    figures = {"was": written(was, ","), "most": written(most, ",")}
    may_be = tr("at most {most}", most=figures["most"])
    return TooMuch(refusal("file", f"{kind}: {was}", may_be, tr(text, kind=kind, **figures, **places)))
