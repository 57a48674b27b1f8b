"""Bytes on disk, written whole or not at all, and files in one file: zips whose bytes depend on nothing but their members."""

import contextlib
import io
import itertools
import os
import zipfile

from ..errors import BadInput, refusal
from ..language import tr
from ..physics.budget import spend

_numbers = itertools.count()  # no name of the file's in it: two long ones may begin alike


def write_all(files):
    """Write files, path -> bytes, whole: all of them or none; what was there before stays until its successor is complete.

    Raises BadInput, naming the path, where one cannot be written (no such folder, no right, disk full).
    """
    halves = {path: path.parent / f".{os.getpid()}-{next(_numbers)}.part" for path in files}
    path = None
    try:
        try:
            for path, half in halves.items():
                with contextlib.suppress(FileNotFoundError):
                    path.lstat()  # a name too long for the place fails here, before any file has its own
                if path.is_dir():
                    raise IsADirectoryError(None, "Is a directory")
                half.write_bytes(files[path])
            for path, half in halves.items():
                half.replace(path)
        finally:
            for half in halves.values():
                half.unlink(missing_ok=True)
    except OSError as error:
        say = tr("Cannot write {path}: {why}.", path=path, why=error.strerror or error)
        raise BadInput(refusal("file", str(path), tr("a place that can be written"), say)) from None


_EPOCH = (1980, 1, 1, 0, 0, 0)  # the zip's own zero


def zipped(members, method=zipfile.ZIP_DEFLATED):
    """The bytes of a zip of members, (name, bytes) or name -> bytes, in their order, all dated 1980-01-01."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as archive:
        for name, content in members.items() if isinstance(members, dict) else members:
            spend()
            info = zipfile.ZipInfo(name, _EPOCH)
            info.compress_type = method
            info.external_attr = 0o644 << 16
            info.create_system = 3
            archive.writestr(info, content)
    return out.getvalue()


ALIGNED = 64
LOCAL_HEADER = 30  # bytes of a zip's local header before its name (PKWARE APPNOTE 4.3.7)
FIELD_HEADER = 4
PADDING = 0x1986  # id of an extra field that only fills up


def usdz_packed(name, data):
    """A usdz of one member: stored, not deflated, its data at a multiple of 64 bytes. name: ASCII, with its ending."""
    info = zipfile.ZipInfo(name, _EPOCH)
    info.external_attr = 0o644 << 16
    fill = -(LOCAL_HEADER + len(name) + FIELD_HEADER) % ALIGNED
    info.extra = PADDING.to_bytes(2, "little") + fill.to_bytes(2, "little") + bytes(fill)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        archive.writestr(info, data)
    return out.getvalue()
