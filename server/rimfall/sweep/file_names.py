"""Names of the files of a combination: `0007_spin_rpm-2.5_serve-speed_m_s-6.csv`, of letters, digits, `.`, `_` and `-` alone.

The number tells the files apart; the values after it are for the reader, to six figures, cut where a name grows too long.
"""

import re

from .parameters import as_text

_UNSAFE = re.compile(r"[^A-Za-z0-9._-]+")
_LONGEST = 120  # characters before the ending: every common file system takes 255 bytes
_LEAST_DIGITS = 4


def stem(grid, number):
    """The name of a combination's files, before the ending."""
    digits = max(_LEAST_DIGITS, len(str(grid.count)))
    parts = [f"{_label(o.path)}-{_value(v)}" for o, v in zip(grid.over, grid.values(number), strict=True)]
    return "_".join([f"{number:0{digits}}", *parts])[:_LONGEST].rstrip(".-_")


def _label(path):
    """The path without what is understood: `spin_rpm` of the habitat's, `serve-speed_m_s` of the motion's."""
    keys = path.split(".")
    return "-".join(_safe(k) for k in (keys[1:] if keys[0] in ("habitat", "motions") and len(keys) > 1 else keys))


def _value(value):
    number = isinstance(value, (int, float)) and not isinstance(value, bool)
    return _safe((f"{value:.6g}" if number else as_text(value)).replace("+", ""))


def _safe(text):
    return _UNSAFE.sub("-", text).strip(".") or "-"
