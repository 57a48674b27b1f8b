"""Tables of numbers, which hold no scene: what lies beside them does."""

from ...errors import BadInput, refusal
from ...language import tr
from .terms import WANTED

_NOTES = {  # how a table begins -> (endings of its own name, the name or the ending of the file beside it)
    b"frame,time_s,id,": ((".csv",), ".notes.json"),
    b"frame,time_s,angle_rad,": ((".forces.csv", ".csv"), ".forces.json"),
    b"number,": (None, "vary.json"),
}


def beside(path, first):
    """Of a table's path and first bytes: the path of the file beside it that holds the scene; None where it is no table."""
    table = _table(first)
    if table is None:
        return None
    endings, notes = table
    if endings is None:
        return path.with_name(notes)
    ending = next((one for one in endings if path.name.lower().endswith(one)), "")
    return path.with_name(path.name[: len(path.name) - len(ending)] + notes)


def refuse_table(first):
    """Raise BadInput where a table begins so."""
    table = _table(first)
    if table is not None:
        endings, notes = table
        if endings is None:
            say = tr("A table holds no scene: open {notes}.", notes=notes)
        else:
            say = tr(
                "A table holds no scene: open NAME{notes} beside it, or vary.json in a folder of combinations.",
                notes=notes,
            )
        raise BadInput(refusal("file", "csv", tr(WANTED), say))


def _table(first):
    return next((table for sign, table in _NOTES.items() if first.startswith(sign)), None)
