"""Names of a file's elements."""

import re


def element_names(named):
    """Names for a file's elements, (kind, name) of each, letters, digits and _ alone and each once: a ball "lob out" is
    "ball_lob_out"."""
    taken, out = set(), []
    for i, (kind, name) in enumerate(named):
        plain = re.sub(r"[^A-Za-z0-9]+", "_", name).strip("_") or f"{i:05d}"
        element = f"{kind}_{plain}"
        while element in taken:
            element += "_"
        taken.add(element)
        out.append(element)
    return out
