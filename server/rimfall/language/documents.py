"""Documents that come with the program, in the language that is spoken: scenes to start from, talks to give, craft."""

import json

from . import ENGLISH, spoken, tr, tr_as

SHOWN = {"title", "note", "line", "notes", "about"}  # fields that people read
NAMES = {"name", "motion", "hidden"}  # names, and fields that refer to one thing or several by their names
NAME = "a name in a scene"  # the context of those: the same word bends elsewhere


def translated(part):
    """A document's part, of JSON, with what people read of it in the language that is spoken."""
    if isinstance(part, dict):
        return {key: _field(key, value) for key, value in part.items()}
    return [translated(one) for one in part] if isinstance(part, list) else part


def as_spoken(text):
    """The text of a document in the language that is spoken; in English as it is."""
    if spoken() == ENGLISH:
        return text
    return json.dumps(translated(json.loads(text)), ensure_ascii=False, indent=2)


def _field(key, value):
    if key in NAMES and isinstance(value, list):
        return [_field(key, one) for one in value]
    if not value or not isinstance(value, str):
        return translated(value)
    return tr_as(NAME, value) if key in NAMES else tr(value) if key in SHOWN else value
