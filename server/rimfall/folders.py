"""Where the files beside the code lie: in a wheel inside the package, in a checkout at its top."""

from pathlib import Path

NOT_MADE = (
    "What it takes from npm was not made when Rimfall was installed from its checkout. With the npm registry in reach, "
    "run: python static/vendor_build.py"
)
_PACKAGE = Path(__file__).resolve().parent


def folder(name):
    """The folder `static` or `templates`."""
    inside = _PACKAGE / name
    return inside if inside.is_dir() else _PACKAGE.parent.parent / name
