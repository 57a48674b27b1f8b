"""Paths into a scene document, "motions.Lob out.speed_m_s": dots between; a motion goes by its name or, like decks and floors, by its
number from 0. Whatever changes one thing of a scene names it so.
"""

import copy

from ..errors import shown
from ..language import tr


def keys_of(document, path, refused):
    """The keys and numbers that a path leads by. Where the document has no such thing, raises what refused(may_be, say) gives."""
    keys, part, names = [], document, path.split(".")
    for depth, name in enumerate(names):
        at = ".".join(names[:depth]) or tr("the scene")
        key = _key(part, name)
        if key is None:
            raise _nowhere(part, name, at, refused)
        keys.append(key)
        part = part[key]
    return tuple(keys)


def overlapping(keys):
    """(i, j), j before i, of the first two of some paths, by their keys, of which one leads into the other; None where all lie apart."""
    for i, one in enumerate(keys):
        for j, other in enumerate(keys[:i]):
            if one[: len(other)] == other or other[: len(one)] == one:
                return i, j
    return None


def with_values(document, keys, values):
    """A copy of the document with values set at the keys; what is not on the way to one is shared."""
    varied = dict(document)
    for one, value in zip(keys, values, strict=True):
        holder = varied
        for key in one[:-1]:
            holder[key] = copy.copy(holder[key])
            holder = holder[key]
        holder[one[-1]] = value
    return varied


def leads_to(path, field):
    """Whether a field of the document is what a path leads to, or lies in it; both by the document's own keys."""
    return field == path or field.startswith(path + ".")


def _key(part, name):
    """The key or number in a part of the document that a name in a path means, or None."""
    if isinstance(part, dict) and name in part:
        return name
    if isinstance(part, list):
        named = [k for k, one in enumerate(part) if isinstance(one, dict) and one.get("name") == name]
        if named:
            return named[0]
        if name.isascii() and name.isdigit() and len(name) < 10 and int(name) < len(part):
            return int(name)
    return None


def _nowhere(part, name, at, refused):
    told = {"at": at, "name": name}
    if isinstance(part, dict):
        known = ", ".join(part)
        return refused(
            tr("may be {names}", names=known), tr("{at} has no {name}; there may be {names}.", names=known, **told)
        )
    if isinstance(part, list) and part:
        known = ", ".join(str(one.get("name") or k) for k, one in enumerate(part))
        return refused(tr("is {names}", names=known), tr("{at} has no {name}; there is {names}.", names=known, **told))
    if isinstance(part, list):
        return refused(tr("is nothing in it"), tr("{at} has no {name}; there is nothing in it.", **told))
    say = tr("{at} is {value} in this scene and holds no {name}.", value=shown(part), **told)
    return refused(tr("{at} itself", at=at), say)
