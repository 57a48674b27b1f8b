"""Craft to start from, all of the Lantern Wheel's world: one JSON file each, its id the file's name; their order and sentences are here."""

from functools import lru_cache
from importlib.resources import files

SAY = {
    "ring-ship": "A courier station's ring turns round a keel that stays still, with its tanks and its radiators.",
    "counter-pair": "Two equal rings turn against each other on one spine: nothing is left to hold.",
    "folding-arms": "A ferry whose two cabins swing out on arms before it is spun up by thrusters.",
    "tether-pair": "A cabin and a spent tank on a line: they turn about a point between them.",
    "long-tumbler": "A long tug spun about its length: in time it goes over and turns end over end.",
}


@lru_cache
def example(name):
    """The document of one as text, or None where there is none of that id."""
    return files(__package__).joinpath(f"{name}.json").read_text("utf-8") if name in SAY else None
