"""The scene out of an MP4 clip that the page made: the comment among its metadata (ISO/IEC 14496-12, 4.2, for boxes; `ilst` as
QuickTime's metadata has it). Takes a memoryview and Limits, and gives a Recovered. Raises Refused."""

import struct

from ...language import tr, tr_later, written
from .terms import damaged, foreign, too_much
from .texts import of_carried_notes

BOXES = tr_later("The {kind} file has boxes, more than {was}; at most {most} are read.")
_WAY = (b"moov", b"udta", b"meta", b"ilst", b"\xa9cmt", b"data")
_FULL = {b"meta": 4, b"data": 8}  # bytes of a box before what it holds: version and flags; type and locale


def of_mp4(content, limits):
    """A clip: the boxes that lead to its comment, whatever lies beside them."""
    place, left = (0, len(content)), limits.parts
    for name in _WAY:
        place, left = _child(content, place, name, left, limits)
        if place is None:
            raise foreign("mp4", tr("Clips carry theirs from Rimfall 0.8.0 on."))
    return of_carried_notes(content[slice(*place)], "mp4", limits)


def _child(content, parent, name, left, limits):
    """What the first box of a name in a parent holds (start, end), or None; and how many boxes may still be looked at."""
    at, end = parent
    while at + 8 <= end:
        left -= 1
        if left < 0:
            raise too_much("mp4", BOXES, limits.parts + 1, limits.parts)
        size, kind = struct.unpack_from(">I4s", content, at)
        head = 8
        if size == 1 and at + 16 <= end:
            (size,), head = struct.unpack_from(">Q", content, at + 8), 16
        size = end - at if size == 0 else size
        if size < head or at + size > end:
            raise damaged(
                "mp4", tr("it is cut short") if size >= head else tr("no box is at byte {at}", at=written(at, ","))
            )
        if kind == name:
            return (min(at + head + _FULL.get(name, 0), at + size), at + size), left
        at += size
    return None, left
