"""Scenes to start from: one JSON file each, its id the file's name; the order and the sentence of each are here."""

import json
from functools import lru_cache
from importlib.resources import files

SAY = {
    "same-lob": "Two equal lobs, one spinward and one antispinward: one lands twice as far.",
    "galley": "A cup dropped, a ball served, tea poured, under the galley's ceiling.",
    "high-drop": "From the spoke lift's head to the deck: half the way down is a long way antispinward.",
    "steep-lob": "A lob thrown steeply antispinward that lands spinward, in vacuum.",
    "round-the-rim": "Thrown antispinward at the rim's own speed, in vacuum: it hangs still Outside and circles Aboard.",
    "hub-toss": "A toss across the hub: up, through the middle, and down on the other side.",
    "spin-up": "A ball dropped while the wheel is still spinning up.",
    "under-thrust": "The same drop while the ship pushes along its axis.",
    "slow-drip": "A leaking tap on a high deck: drop by drop, each on the same curve.",
}


@lru_cache
def example(name):
    """The document of an example as text, or None where there is none of that id."""
    return files(__package__).joinpath(f"{name}.json").read_text("utf-8") if name in SAY else None


def listed():
    """All examples in order: id, title, sentence."""
    return [{"id": name, "title": json.loads(example(name))["title"], "say": say} for name, say in SAY.items()]
