"""Talks ready to give: one JSON file each, its id the file's name."""

import json
from functools import lru_cache
from importlib.resources import files

from ...language.documents import as_spoken

NAMES = ("why-the-ball-comes-back", "how-big-must-a-wheel-be")


def example(name):
    """The document of a talk as text, in the language that is spoken, or None where there is none of that id."""
    return as_spoken(_text(name)) if name in NAMES else None


@lru_cache
def _text(name):
    return files(__package__).joinpath(f"{name}.json").read_text("utf-8")


def told():
    """Of each, in order: its title, what it is about, and how many steps it has."""
    return {name: _told(json.loads(example(name))) for name in NAMES}


def listed():
    """The same as a list, each with its id."""
    return [{"id": name, **about} for name, about in told().items()]


def _told(talk):
    return {"title": talk["title"], "about": talk["about"], "steps": len(talk["steps"])}
