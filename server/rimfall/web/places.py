"""Where the page's own files lie: beside the package in a checkout, inside it in a wheel."""

from pathlib import Path

_PACKAGE = Path(__file__).resolve().parent.parent


def folder(name):
    """The folder `static` or `templates`."""
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent.parent / name
