"""The scene out of a picture or a clip that the page made: a text chunk of a PNG (ISO/IEC 15948, 11.3.3.4), a tag of a WebM file
(RFC 9559, 5.1.8). Each takes a memoryview and Limits, and gives a Recovered. Raises Refused."""

import struct
import zlib

from .terms import damaged, foreign, too_much
from .texts import of_notes

KEYWORD = b"rimfall"  # of the PNG's text chunk
_PNG_SIGN_BYTES = 8
_PNG_TEXT, _PNG_END = b"iTXt", b"IEND"
_NOT_PACKED = b"\0\0\0\0"  # of a text chunk after its keyword: no packing, no language, no keyword in it


def of_png(content, limits):
    """A picture: its chunks one after another, the check sum of the one that holds the scene seen to."""
    at = _PNG_SIGN_BYTES
    for _ in range(limits.parts):
        if at + 12 > len(content):
            raise damaged("png", "it is cut short")
        length, kind = struct.unpack_from(">I4s", content, at)
        if at + 12 + length > len(content):
            raise damaged("png", "it is cut short")
        body = content[at + 8 : at + 8 + length]
        if kind == _PNG_TEXT and bytes(body[: len(KEYWORD) + 1]) == KEYWORD + b"\0":
            return _of_chunk(
                content[at + 4 : at + 8 + length], struct.unpack_from(">I", content, at + 8 + length)[0], limits
            )
        if kind == _PNG_END:
            raise foreign("png", " A picture carries its scene only where Rimfall's page made it from 0.7.0 on.")
        at += 12 + length
    raise too_much("png", "has chunks, more than", limits.parts + 1, limits.parts)


def _of_chunk(chunk, check_sum, limits):
    """Of kind and body of a text chunk."""
    if zlib.crc32(chunk) != check_sum:
        raise damaged("png", "the check sum (CRC) of the scene in it is wrong")
    start = 4 + len(KEYWORD) + 1
    if bytes(chunk[start : start + 4]) != _NOT_PACKED:
        raise foreign("png")
    if len(chunk) > limits.notes_bytes:
        raise too_much("png", "holds notes whose bytes are", len(chunk), limits.notes_bytes)
    scene = of_notes(chunk[start + 4 :], "png", limits)
    if scene is None:
        raise foreign("png")
    return scene
