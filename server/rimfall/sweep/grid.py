"""The combinations of what is varied: each a scene document of its own, checked before anything runs.

Combinations are numbered from 1, the last thing varied changing fastest.
"""

import copy
import json
from dataclasses import dataclass
from math import prod

from ..errors import BadInput, TooMuch, refusal, shown
from ..scene.reading import read
from .parameters import Over, as_text

GREATEST_COMBINATIONS = 100_000
_MOST_REFUSALS = 20
_ENOUGH_REFUSED = 1_000  # combinations; what they have not shown by then, the next run does


@dataclass(frozen=True)
class Grid:
    """document: the whole scene document, every default filled in; over: what is varied, the slowest first; keys: for each
    the keys and numbers that lead to its value in the document."""

    document: dict
    over: tuple[Over, ...]
    keys: tuple[tuple, ...]

    @property
    def count(self):
        return prod(len(o.values) for o in self.over)

    def values(self, number):
        """The varied values of a combination, one of each Over."""
        left, picked = number - 1, []
        for over in reversed(self.over):
            left, k = divmod(left, len(over.values))
            picked.append(over.values[k])
        return tuple(reversed(picked))

    def document_of(self, number):
        """The scene document of a combination."""
        return _with(self.document, self.keys, self.values(number))

    def scene(self, number):
        """The Scene of a combination. Raises Refused."""
        return read(json.dumps(self.document_of(number)))


def grid_of(scene, over):
    """The Grid of a Scene. Raises BadInput or TooMuch for a path that is not there, is there twice, or for too many."""
    document = scene.model_dump(mode="json")
    keys = tuple(_keys(document, o) for o in over)
    for i, one in enumerate(keys):
        for j, other in enumerate(keys[:i]):
            if one[: len(other)] == other or other[: len(one)] == one:
                say = f"--over {over[i].path} and --over {over[j].path} set the same thing; each may be varied once."
                raise BadInput(refusal("over", over[i].path, "a path that no other --over sets", say))
    grid = Grid(document, tuple(over), keys)
    if grid.count > GREATEST_COMBINATIONS:
        say = f"There would be {grid.count:,} combinations; there may be {GREATEST_COMBINATIONS:,}."
        raise TooMuch(refusal("over", grid.count, f"at most {GREATEST_COMBINATIONS:,} combinations", say))
    return grid


def check(grid, watch=None):
    """Raise BadInput unless every combination is a scene that stands, naming what is varied and the values at fault.

    watch(done, of) is told of each combination checked.
    """
    faults, refused_so_far = {}, 0
    for number in range(1, grid.count + 1):
        try:
            grid.scene(number)
        except BadInput as refused:
            refused_so_far += 1
            for one in refused.refusals:
                faults.setdefault((one.field, one.was, one.may_be), _said(grid, number, one))
            if len(faults) >= _MOST_REFUSALS or refused_so_far >= _ENOUGH_REFUSED:
                break
        if watch is not None:
            watch(number, grid.count)
    if faults:
        raise BadInput(*list(faults.values())[:_MOST_REFUSALS])


def _said(grid, number, refused):
    """The refusal of a combination, naming the --over that set the field at fault, if one did."""
    values = grid.values(number)
    given = ", ".join(f"{o.path}={as_text(v)}" for o, v in zip(grid.over, values, strict=True))
    mine = [k for k, keys in enumerate(grid.keys) if _inside(refused.field, ".".join(map(str, keys)))]
    where = f"{grid.over[mine[0]].asked}={as_text(values[mine[0]])}: " if mine else ""
    say = f"{where}{refused.say} (Combination {number}: {given}.)"
    return refusal(refused.field, refused.was, refused.may_be, say)


def _inside(field, path):
    return field == path or field.startswith(path + ".")


def _with(document, keys, values):
    """A copy of the document with values set at the keys; what is not on the way to one is shared."""
    made = dict(document)
    for one, value in zip(keys, values, strict=True):
        holder = made
        for key in one[:-1]:
            holder[key] = copy.copy(holder[key])
            holder = holder[key]
        holder[one[-1]] = value
    return made


def _keys(document, over):
    """The keys and numbers that a path leads by. Raises BadInput where the document has no such thing."""
    keys, here, names = [], document, over.path.split(".")
    for depth, name in enumerate(names):
        at = ".".join(names[:depth]) or "the scene"
        key = _key(over, here, name, at)
        keys.append(key)
        here = here[key]
    return tuple(keys)


def _key(over, here, name, at):
    if isinstance(here, dict) and name in here:
        return name
    if isinstance(here, list):
        named = [k for k, one in enumerate(here) if isinstance(one, dict) and one.get("name") == name]
        if named:
            return named[0]
        if name.isascii() and name.isdigit() and int(name) < len(here):
            return int(name)
    may_be = _known(here)
    say = (
        f"{over.asked}: {at} has no {name}; there {may_be}."
        if may_be
        else f"{over.asked}: {at} is {shown(here)} in this scene and holds no {name}."
    )
    raise BadInput(refusal("over", over.path, may_be or f"{at} itself", say))


def _known(here):
    """What there is to name inside a part of the document, in words; nothing in a figure, a word or null."""
    if isinstance(here, dict):
        return f"may be {', '.join(here)}"
    if isinstance(here, list):
        return (
            "is " + ", ".join(str(one.get("name") or k) for k, one in enumerate(here)) if here else "is nothing in it"
        )
    return ""
