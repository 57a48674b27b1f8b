"""Craft to start from, all of the Lantern Wheel's world: one JSON file each, its id the file's name; their order and sentences are here."""

from functools import lru_cache
from importlib.resources import files

from ....language import tr_later
from ....language.documents import as_spoken

SAY = {
    "ring-ship": tr_later(
        "A courier station's ring turns round a keel that stays still, with its tanks and its radiators."
    ),
    "counter-pair": tr_later("Two equal rings turn against each other on one spine: nothing is left to hold."),
    "folding-arms": tr_later("A ferry whose two cabins swing out on arms before it is spun up by thrusters."),
    "tether-pair": tr_later("A cabin and a spent tank on a line: they turn about a point between them."),
    "long-tumbler": tr_later("A long tug spun about its length: in time it goes over and turns end over end."),
}


def example(name):
    """The document of one as text, in the language that is spoken, or None where there is none of that id."""
    return as_spoken(_text(name)) if name in SAY else None


@lru_cache
def _text(name):
    return files(__package__).joinpath(f"{name}.json").read_text("utf-8")
