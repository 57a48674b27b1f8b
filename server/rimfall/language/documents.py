"""Documents that come with the program, in the language that is spoken: scenes to start from, talks to give."""

from . import tr

SHOWN = {"title", "note", "name", "line", "notes", "about"}  # fields that people read


def translated(part):
    """A document's part, of JSON, with what people read of it in the language that is spoken."""
    if isinstance(part, dict):
        return {
            key: tr(value) if key in SHOWN and isinstance(value, str) else translated(value)
            for key, value in part.items()
        }
    return [translated(one) for one in part] if isinstance(part, list) else part
