"""The scene out of OpenUSD's binary layer (.usdc), read here: a damaged one must not take the process with it, and none needs the extra.

A crate keeps every text of a layer in one section, TOKENS, each ended by a zero byte and all packed by LZ4; the notes are the one that
begins as notes do. The layout is that of OpenUSD's `crateFile.h`, from version 0.4 on, and of LZ4's block format 1.6.
"""

import re
import struct

from ...language import tr, tr_later, written
from .terms import damaged, foreign, too_much
from .texts import of_notes

SIGN = b"PXR-USDC"
_LONG = tr_later("The {kind} file holds texts whose bytes are {was}; at most {most} are read.")
_MANY = tr_later("The {kind} file has texts packed in runs, more than {was}; at most {most} are read.")
_HEADER_BYTES, _SECTION_BYTES = 88, 32
_MOST_SECTIONS = 64
_NOTES = re.compile(rb'(?:\A|\0)(\{"program": "Rimfall [^\0]*+)\0')
_LEAST_MATCH, _MORE = 4, 15  # of LZ4: the shortest run that is repeated; a length that goes on in the next bytes


def of_usdc(content, limits):
    """The Recovered of a crate's bytes, a memoryview. Raises Refused."""
    start, end = _tokens_section(content)
    try:
        _, size, packed = struct.unpack_from("<QQQ", content, start)
    except struct.error:
        raise damaged("usdc", tr("its texts are cut short")) from None
    if start + 24 + packed > end or packed < 1:
        raise damaged("usdc", tr("its texts are cut short"))
    if size > limits.notes_bytes:
        raise too_much("usdc", _LONG, size, limits.notes_bytes)
    if packed > size + size // 255 + 17:  # LZ4_compressBound, and the byte that counts blocks
        raise damaged("usdc", tr("its texts are packed in more bytes than they have"))
    if content[start + 24] != 0:  # as many blocks of 2 GB: none has fewer bytes than that
        raise damaged("usdc", tr("its texts are not packed as one block"))
    texts = _lz4_block(content[start + 25 : start + 24 + packed], size, limits)
    notes = _NOTES.search(texts)
    scene = of_notes(memoryview(notes[1]), "usdc", limits) if notes else None
    if scene is None:
        raise foreign("usdc")
    return scene


def _tokens_section(content):
    """(start, end) of the section of texts."""
    if len(content) < _HEADER_BYTES:
        raise damaged("usdc", tr("it ends within its header"))
    if bytes(content[8:10]) < b"\0\4":
        raise damaged(
            "usdc",
            tr("it is of version {version}, older than any that Rimfall wrote", version=f"{content[8]}.{content[9]}"),
        )
    at = struct.unpack_from("<Q", content, 16)[0]
    if at + 8 > len(content):
        raise damaged(
            "usdc", tr("its table of contents is not at byte {at}, where it says: it is cut short", at=written(at, ","))
        )
    count = struct.unpack_from("<Q", content, at)[0]
    if count > _MOST_SECTIONS or at + 8 + count * _SECTION_BYTES > len(content):
        raise damaged("usdc", tr("its table of contents is broken"))
    for k in range(count):
        name, start, size = struct.unpack_from("<16sQQ", content, at + 8 + k * _SECTION_BYTES)
        if name.rstrip(b"\0") == b"TOKENS":
            if start + size > len(content):
                raise damaged("usdc", tr("its texts are cut short"))
            return start, start + size
    raise damaged("usdc", tr("it holds no texts"))


def _lz4_block(packed, size, limits):
    """The bytes, as many as stated, that an LZ4 block unpacks to."""
    packed, out, at = bytes(packed), bytearray(), 0
    try:
        for _ in range(limits.tokens):
            token, at = packed[at], at + 1
            run, at = _length(packed, token >> 4, at, size)
            out += packed[at : at + run]
            at += run
            if at >= len(packed):
                break
            back, at = packed[at] | packed[at + 1] << 8, at + 2
            run, at = _length(packed, token & 15, at, size)
            run += _LEAST_MATCH
            if not 0 < back <= len(out) or len(out) + run > size:
                raise damaged("usdc", tr("its texts are packed wrongly"))
            start = len(out) - back
            out += out[start : start + run] if back >= run else (out[start:] * (run // back + 1))[:run]
        else:
            raise too_much("usdc", _MANY, limits.tokens + 1, limits.tokens)
    except IndexError:
        raise damaged("usdc", tr("its texts are cut short")) from None
    if len(out) != size:
        raise damaged(
            "usdc",
            tr(
                "its texts have {bytes} bytes, where {stated} are stated",
                bytes=written(len(out), ","),
                stated=written(size, ","),
            ),
        )
    return bytes(out)


def _length(packed, length, at, most):
    """A run's length and the place after it: fifteen goes on in the next bytes, until one is not 255."""
    if length == _MORE:
        while length <= most:
            more, at = packed[at], at + 1
            length += more
            if more != 255:
                break
    return length, at
