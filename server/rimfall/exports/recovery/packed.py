"""The scene out of a zip: a package of OpenUSD, tables or pictures with their notes. PKWARE APPNOTE 6.3.

Read member by member from the directory, without a list of them in memory; one member is unpacked, piece by piece, and what it unpacks
to is bounded whatever it says of itself.
"""

import struct
import zlib
from dataclasses import dataclass, replace

from ...language import tr, tr_later, written
from .crate import SIGN, of_usdc
from .terms import damaged, foreign, too_much
from .texts import of_notes, of_usda

_MANY = tr_later("The {kind} file has members, more than {was}; at most {most} are read.")
_LARGE = tr_later("The {kind} file unpacks {name} to as many bytes as {was}; at most {most} are read.")
_DENSE = tr_later("The {kind} file unpacks {name} to as many times its size as {was}; at most {most} are read.")
_END, _ENTRY, _LOCAL = b"PK\5\6", b"PK\1\2", b"PK\3\4"
_END_BYTES, _ENTRY_BYTES, _LOCAL_BYTES = 22, 46, 30
_LONGEST_COMMENT = 65_535
_STORED, _DEFLATED = 0, 8
_ENCRYPTED = 1
_PIECE = 1 << 18


@dataclass(frozen=True)
class _Member:
    name: str
    flags: int
    method: int
    crc: int
    packed: int
    size: int
    at: int


def of_zip(content, limits):
    """The Recovered of a zip's bytes, a memoryview. Raises Refused."""
    member, nested = _wanted(content, limits)
    kind = "usdz" if member and member.name.endswith((".usda", ".usdc", ".usd")) else "zip"
    if member is None:
        raise foreign(kind, tr("A zip in a zip is not opened.") if nested else "")
    data = memoryview(_unpacked(content, member, kind, limits))
    if kind == "usdz":
        layer = of_usdc if bytes(data[: len(SIGN)]) == SIGN else of_usda
        return replace(layer(data, limits), format=kind)
    scene = of_notes(data, kind, limits)
    if scene is None:
        raise foreign(kind)
    return scene


def _wanted(content, limits):
    """The member that may hold the scene, the first of its kind, or None; and whether there is a zip among the members."""
    tail = bytes(content[-_END_BYTES - _LONGEST_COMMENT :])
    place = tail.rfind(_END)
    if place < 0 or place + _END_BYTES > len(tail):
        raise damaged("zip", tr("it has no directory at its end, so that it is cut short"))
    size, at = struct.unpack_from("<II", tail, place + 12)
    end = at + size
    if end > len(content) - len(tail) + place:
        raise damaged("zip", tr("its directory is not at byte {at}, where it says", at=written(at, ",")))
    nested = False
    for _ in range(limits.parts):
        if at >= end:
            return None, nested
        if content[at : at + 4] != _ENTRY or at + _ENTRY_BYTES > end:
            raise damaged("zip", tr("its directory is broken at byte {at}", at=written(at, ",")))
        flags, method = struct.unpack_from("<HH", content, at + 8)
        crc, packed, size, name, extra, comment = struct.unpack_from("<IIIHHH", content, at + 16)
        name_at, at = at + _ENTRY_BYTES, at + _ENTRY_BYTES + name + extra + comment
        called = bytes(content[name_at : name_at + name]).decode("utf-8", "replace").lower()
        if called.endswith((".usda", ".usdc", ".usd", ".json")):
            local = struct.unpack_from("<I", content, name_at - 4)[0]
            return _Member(called, flags, method, crc, packed, size, local), nested
        nested = nested or called.endswith((".zip", ".usdz"))
    raise too_much("zip", _MANY, limits.parts + 1, limits.parts)


def _unpacked(content, member, kind, limits):
    """The member's bytes, its check sum seen to."""
    if member.flags & _ENCRYPTED:
        raise damaged(kind, tr("{name} in it is encrypted; take the password off first", name=member.name))
    if member.method not in (_STORED, _DEFLATED):
        raise damaged(
            kind,
            tr(
                "{name} in it is packed in a way (number {number}) that is not read",
                name=member.name,
                number=member.method,
            ),
        )
    if content[member.at : member.at + 4] != _LOCAL or member.at + _LOCAL_BYTES > len(content):
        raise damaged(
            kind,
            tr("{name} is not at byte {at}, where its directory says", name=member.name, at=written(member.at, ",")),
        )
    name, extra = struct.unpack_from("<HH", content, member.at + 26)
    start = member.at + _LOCAL_BYTES + name + extra
    packed = content[start : start + member.packed]
    if len(packed) < member.packed:
        raise damaged(kind, tr("{name} in it is cut short", name=member.name))
    data = packed if member.method == _STORED else _inflated(packed, member, kind, limits)
    if len(data) != member.size:
        what = tr(
            "{name} in it has {bytes} bytes, where {stated} are stated",
            name=member.name,
            bytes=written(len(data), ","),
            stated=written(member.size, ","),
        )
        raise damaged(kind, what)
    if zlib.crc32(data) != member.crc:
        raise damaged(kind, tr("the check sum (CRC) of {name} in it is wrong", name=member.name))
    return data


def _inflated(packed, member, kind, limits):
    """Unpacked, and not a byte more than is stated."""
    if member.size > limits.unpacked_bytes:
        raise too_much(kind, _LARGE, member.size, limits.unpacked_bytes, name=member.name)
    if member.size > limits.ratio * max(member.packed, 1024):
        raise too_much(kind, _DENSE, member.size // max(member.packed, 1), limits.ratio, name=member.name)
    stream, data = zlib.decompressobj(-zlib.MAX_WBITS), bytearray()
    try:
        for at in range(0, len(packed), _PIECE):
            data += stream.decompress(packed[at : at + _PIECE], member.size + 1 - len(data))
            if stream.unconsumed_tail or len(data) > member.size:
                raise damaged(
                    kind,
                    tr(
                        "{name} in it unpacks to more than the {stated} bytes it states",
                        name=member.name,
                        stated=written(member.size, ","),
                    ),
                )
    except zlib.error as error:
        raise damaged(kind, tr("{name} in it cannot be unpacked ({error})", name=member.name, error=error)) from None
    return data
