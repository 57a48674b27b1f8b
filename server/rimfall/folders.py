"""Where the files beside the code lie: in a wheel inside the package, in a checkout at its top."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent


def folder(name):
    """The folder `static` or `templates`."""
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent.parent / name
