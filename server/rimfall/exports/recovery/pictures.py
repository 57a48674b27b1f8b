"""The scene out of a picture or a clip that the page made: a text chunk of a PNG (ISO/IEC 15948, 11.3.3.4), a tag of a WebM file
(RFC 9559, 5.1.8). Each takes a memoryview and Limits, and gives a Recovered. Raises Refused."""

import struct
import zlib

from ...language import tr, tr_later, written
from .terms import damaged, foreign, too_much
from .texts import of_carried_notes

KEYWORD = b"rimfall"  # of a PNG's text chunk and, in capitals, of a clip's tag
_CHUNKS = tr_later("The {kind} file has chunks, more than {was}; at most {most} are read.")
_ELEMENTS = tr_later("The {kind} file has elements, more than {was}; at most {most} are read.")
_PNG_SIGN_BYTES = 8
_PNG_TEXT, _PNG_END = b"iTXt", b"IEND"
_EBML, _SEGMENT, _TAGS, _TAG, _SIMPLE_TAG, _TAG_NAME, _TAG_STRING = (
    0x1A45DFA3, 0x18538067, 0x1254C367, 0x7373, 0x67C8, 0x45A3, 0x4487,
)  # fmt: skip
_NOT_PACKED = b"\0\0\0\0"  # of a text chunk after its keyword: no packing, no language, no keyword in it


def of_png(content, limits):
    """A picture: its chunks one after another, the check sum of the one that holds the scene seen to."""
    at = _PNG_SIGN_BYTES
    for _ in range(limits.parts):
        if at + 12 > len(content):
            raise damaged("png", tr("it is cut short"))
        length, kind = struct.unpack_from(">I4s", content, at)
        if at + 12 + length > len(content):
            raise damaged("png", tr("it is cut short"))
        body = content[at + 8 : at + 8 + length]
        if kind == _PNG_TEXT and bytes(body[: len(KEYWORD) + 1]) == KEYWORD + b"\0":
            return _of_chunk(
                content[at + 4 : at + 8 + length], struct.unpack_from(">I", content, at + 8 + length)[0], limits
            )
        if kind == _PNG_END:
            raise foreign("png", tr("Pictures carry theirs from Rimfall 0.7.0 on."))
        at += 12 + length
    raise too_much("png", _CHUNKS, limits.parts + 1, limits.parts)


def _of_chunk(chunk, check_sum, limits):
    """Of kind and body of a text chunk."""
    if zlib.crc32(chunk) != check_sum:
        raise damaged("png", tr("the check sum (CRC) of the scene in it is wrong"))
    start = 4 + len(KEYWORD) + 1
    if bytes(chunk[start : start + 4]) != _NOT_PACKED:
        raise foreign("png")
    return of_carried_notes(chunk[start + 4 :], "png", limits)


def of_webm(content, limits):
    """A clip: the tag of its segment that is named for Rimfall."""
    clip = _Elements(content, limits)
    header = clip.child((0, len(content)), _EBML)
    segment = clip.child((header[1], len(content)), _SEGMENT) if header else None
    tags = clip.child(segment, _TAGS) if segment else None
    tag = clip.child(tags, _TAG) if tags else None
    simple = clip.child(tag, _SIMPLE_TAG) if tag else None
    name = clip.child(simple, _TAG_NAME) if simple else None
    text = clip.child(simple, _TAG_STRING) if simple else None
    if text is None or name is None or bytes(content[slice(*name)]).lower() != KEYWORD:
        raise foreign("webm", tr("Clips carry theirs from Rimfall 0.7.0 on."))
    return of_carried_notes(content[slice(*text)], "webm", limits)


class _Elements:
    """Elements of EBML (RFC 8794): number, size, content. Places are (start, end) of a content, bytes of the file."""

    def __init__(self, content, limits):
        self._content, self._limits, self._left = content, limits, limits.parts

    def child(self, parent, number):
        """The place of the first element of that number in a parent; None where there is none. Raises Refused."""
        at, end = parent
        while at < end:
            self._left -= 1
            if self._left < 0:
                raise too_much("webm", _ELEMENTS, self._limits.parts + 1, self._limits.parts)
            kind, _, at = self._number(at, 4)
            _, size, at = self._number(at, 8)
            if at + size > end:
                raise damaged("webm", tr("it is cut short"))
            if kind == number:
                return at, at + size
            at += size
        return None

    def _number(self, at, longest):
        """A number of variable length (RFC 8794, 4): with the bit that marks its length, without it, and the place after it."""
        first = self._content[at] if at < len(self._content) else 0
        length = 9 - first.bit_length()
        if length > longest or at + length > len(self._content):
            is_short = at + length > len(self._content)
            what = tr("it is cut short") if is_short else tr("no element is at byte {at}", at=written(at, ","))
            raise damaged("webm", what)
        whole = int.from_bytes(self._content[at : at + length], "big")
        return whole, whole - (1 << 7 * length), at + length
