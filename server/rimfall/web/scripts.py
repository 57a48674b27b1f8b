"""The scripts a page loads: the bundle made at install, or the modules as they are while one of them differs from what was bundled.

So an edit in a checkout shows on reload, with nothing to build. A wheel has no modules beside its bundle, and nothing to differ.
"""

import hashlib
import json
from functools import lru_cache

from .places import folder


def scripts(entry):
    """Of `main.js` or `brief.js`: (the script to start with, those it imports at once), as paths below static/."""
    static = folder("static")
    try:
        bundle = json.loads((static / "vendor/page/page.json").read_text(encoding="utf-8"))
    except FileNotFoundError:
        return entry, []
    if any(_differs(static / name, sha256) for name, sha256 in bundle["sources"].items()):
        return entry, []
    return f"vendor/page/{entry}", [f"vendor/page/{name}" for name in bundle["preload"][entry]]


def _differs(source, sha256):
    try:
        about = source.stat()
    except FileNotFoundError:  # in a wheel; in a checkout, a file that goes changes those that imported it
        return False
    return _digest(source, about.st_mtime_ns, about.st_size) != sha256


@lru_cache(maxsize=1024)
def _digest(source, _modified, _size):
    return hashlib.sha256(source.read_bytes()).hexdigest()
