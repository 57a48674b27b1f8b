"""Files on disk: written whole or not at all."""

import os

from ..errors import BadInput, refusal


def write_all(files):
    """Write files, path -> bytes, whole: all of them or none; what was there before stays until its successor is complete.

    Raises BadInput, naming the path, where one cannot be written (no such folder, no right, disk full).
    """
    halves = {path: path.parent / f".{path.name[:200]}.{os.getpid()}.part" for path in files}
    path = None
    try:
        try:
            for path, half in halves.items():
                if path.is_dir():
                    raise IsADirectoryError(None, "Is a directory")
                half.write_bytes(files[path])
            for path, half in halves.items():
                half.replace(path)
        finally:
            for half in halves.values():
                half.unlink(missing_ok=True)
    except OSError as error:
        say = f"Cannot write {path}: {error.strerror or error}."
        raise BadInput(refusal("file", str(path), "a place that can be written", say)) from None
