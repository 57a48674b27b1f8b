"""The combinations of what is varied: each a scene document of its own, checked before anything runs.

Combinations are numbered from 1, the last thing varied changing fastest.
"""

import json
from dataclasses import dataclass
from math import prod

from ..errors import BadInput, TooMuch, refusal
from ..language import tr, written
from ..scene.paths import keys_of, leads_to, overlapping, with_values
from ..scene.reading import read
from ..scene.tumbling import KIND as TUMBLE
from .parameters import Parameter, as_text

GREATEST_COMBINATIONS = 100_000
_MOST_REFUSALS = 20
_CRAFT = "craft"
# what files and paths of a scene show of its craft; the rest is asked of it elsewhere
_OF_ITS_CRAFT = ("parts", "counter_rpm")
_ENOUGH_REFUSED = 1_000  # combinations; what they have not shown by then, the next run does


@dataclass(frozen=True)
class Grid:
    """document: the whole scene document, every default filled in; parameters: what is varied, the slowest first; keys: for each
    the keys and numbers that lead to its value in the document."""

    document: dict
    parameters: tuple[Parameter, ...]
    keys: tuple[tuple, ...]

    @property
    def count(self):
        return prod(len(p.values) for p in self.parameters)

    def values(self, number):
        """The varied values of a combination, one of each Parameter."""
        left, picked = number - 1, []
        for parameter in reversed(self.parameters):
            left, k = divmod(left, len(parameter.values))
            picked.append(parameter.values[k])
        return tuple(reversed(picked))

    def document_of(self, number):
        """The scene document of a combination."""
        return with_values(self.document, self.keys, self.values(number))

    def scene(self, number):
        """The Scene of a combination. Raises Refused."""
        return read(json.dumps(self.document_of(number)))


def grid_of(scene, parameters):
    """The Grid of a Scene. Raises BadInput or TooMuch for a path that is not there, is there twice, or for too many."""
    document = scene.model_dump(mode="json")
    keys = tuple(_keys(document, p) for p in parameters)
    twins = overlapping(keys)
    if twins is not None:
        one, other = (parameters[k].path for k in twins)
        say = tr("--over {one} and --over {other} set the same thing; each may be varied once.", one=one, other=other)
        raise BadInput(refusal("over", one, tr("a path that no other --over sets"), say))
    grid = Grid(document, tuple(parameters), keys)
    if grid.count > GREATEST_COMBINATIONS:
        most = written(GREATEST_COMBINATIONS, ",")
        say = tr("There would be {count} combinations; there may be {most}.", count=written(grid.count, ","), most=most)
        raise TooMuch(refusal("over", grid.count, tr("at most {most} combinations", most=most), say))
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
    given = ", ".join(f"{p.path}={as_text(v)}" for p, v in zip(grid.parameters, values, strict=True))
    mine = [k for k, keys in enumerate(grid.keys) if leads_to(".".join(map(str, keys)), refused.field)]
    where = f"{grid.parameters[mine[0]].option}={as_text(values[mine[0]])}: " if mine else ""
    told = tr("(Combination {number}: {given}.)", number=number, given=given)
    say = f"{where}{refused.say} {told}"
    return refusal(refused.field, refused.was, refused.may_be, say)


def _keys(document, parameter):
    """The keys and numbers that a path leads by. Raises BadInput where the document has no such thing."""

    def nowhere(may_be, say):
        return BadInput(refusal("over", parameter.path, may_be, f"{parameter.option}: {say}"))

    keys = keys_of(document, parameter.path, nowhere)
    if keys[0] == _CRAFT and len(keys) > 1 and keys[1] not in _OF_ITS_CRAFT:
        raise _shows_nothing(document, parameter)
    return keys


def _shows_nothing(document, parameter):
    """The refusal of what would give the same files again and again."""
    tumbles = [motion["name"] for motion in document["motions"] if motion["kind"] == TUMBLE]
    first, last = (f"{_CRAFT}.{name}" for name in _OF_ITS_CRAFT)
    may_be = tr("{first} or {last}", first=first, last=last)
    if tumbles:
        say = tr(
            "{option}: no path or file of the scene shows it; of its craft vary {fields}, and how it tumbles by the fields of "
            "motions.{name}.",
            option=parameter.option,
            fields=may_be,
            name=tumbles[0],
        )
    else:
        say = tr(
            "{option}: no path or file of the scene shows it; of its craft vary {fields}.",
            option=parameter.option,
            fields=may_be,
        )
    return BadInput(refusal("over", parameter.path, may_be, say))
