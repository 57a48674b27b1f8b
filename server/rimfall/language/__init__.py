"""Words for people in the language of whoever asks. In the code they are English; `tr` gives them as the catalogue of the language that is
spoken now (`speaking`) has them.

A catalogue is a gettext file beside this one, `de.po`: its messages are the English texts, with places in braces that `tr` fills. What is
translated is a whole sentence, or a phrase that a sentence is made of; never a word alone that another sentence bends. `tests/catalogues.py`
collects the messages, `static/vendor_build.py` compiles the catalogues into static/vendor/language, where they are read the first time somebody
asks for the language. English needs none.
"""

import contextlib
from contextvars import ContextVar

from .accepted import ranked
from .catalogues import CONTEXT, ENGLISH, TRIED_OUT, Catalogue, catalogue, files, offered, page_script

__all__ = [
    "CONTEXT",
    "ENGLISH",
    "TRIED_OUT",
    "Catalogue",
    "Figure",
    "Later",
    "Name",
    "catalogue",
    "chosen",
    "files",
    "in_signs",
    "offered",
    "page_script",
    "speaking",
    "spoken",
    "tr",
    "tr_as",
    "tr_later",
    "tr_later_as",
    "tr_many",
    "written",
]

_spoken: ContextVar[Catalogue | None] = ContextVar("language", default=None)


class Later(str):
    """A text that is put together where no language is spoken yet, as what a field may be; as text it is its English, and `tr` of it tells
    it. Its places are filled with texts, marked where they are translated themselves, and with `Figure`s."""

    def __new__(cls, text, context=None, **places):
        made = super().__new__(cls, text.format_map(places) if places else text)
        made.text, made.context, made.places = text, context, places
        return made

    def __reduce__(self):
        return _later, (self.text, self.context, self.places)

    def told(self, **places):
        """The same in the language that is spoken, its other places filled."""
        now = {
            name: in_signs(one) if isinstance(one, Figure) else tr(one) for name, one in self.places.items()
        } | places
        return tr(self.text, **now) if self.context is None else tr_as(self.context, self.text, **now)


class Figure(str):
    """A number, with its unit or without, that is written in English until a language is spoken: a place of a `Later`."""


class Name(str):
    """A name as documents have it, which no language changes: a text, or a place of a `Later`."""


def _later(text, context, places):
    return Later(text, context, **places)


def tr(text, /, **places):
    """A text in the language that is spoken, its places in braces filled."""
    if isinstance(text, Name):
        return str(text)
    if isinstance(text, Later):
        return text.told(**places)
    return _filled(_found(text, text), places)


def tr_as(context, text, /, **places):
    """The same, of a text that means something else elsewhere, or that is bent otherwise: context says where it stands."""
    return _filled(_found(context + CONTEXT + text, text), places)


def tr_many(one, many, count, /, **places):
    """The same, of what is told of a count: `one` of it, or `many`. The place {count} is filled with it, in figures."""
    mine, places = _spoken.get(), {"count": written(count, ","), **places}
    forms = None if mine is None else mine.messages.get(one)
    if isinstance(forms, list):
        with contextlib.suppress(LookupError, ValueError, AttributeError):  # of another version of the program
            return _filled(forms[mine.form(count)], places)
    return _filled(one if count == 1 else many, places)


def tr_later(text):
    """Marks a text that stands where no language is spoken yet, as in a table: `tr` of it is asked for where it is shown."""
    return text


def tr_later_as(context, text):
    """The same of a text that means something else elsewhere."""
    return Later(text, context)


def written(value, spec=""):
    """A number as `format` writes it, with the signs of the language that is spoken: "1,234.5", "1.234,5"."""
    return in_signs(format(value, spec))


def in_signs(text):
    """A number that is written in English, with the signs of the language that is spoken."""
    mine = _spoken.get()
    return text if mine is None else text.translate(mine.signs)


def _found(key, text):
    mine = _spoken.get()
    said = text if mine is None else mine.messages.get(key, text)
    return said if isinstance(said, str) else text  # which another version of the program counts


def _filled(text, places):
    if not places:
        return text
    mine = _spoken.get()
    if mine is not None and mine.direction == "rtl":  # what comes into a place keeps its own direction
        places = {name: f"\u2068{value}\u2069" for name, value in places.items()}
    return text.format_map(places)


@contextlib.contextmanager
def speaking(language):
    """Words are in this language within: a tag of `offered`. What there is no catalogue of is English."""
    token = _spoken.set(catalogue(language))
    try:
        yield
    finally:
        _spoken.reset(token)


def spoken():
    """The tag of the language that is spoken."""
    now = _spoken.get()
    return ENGLISH if now is None else now.language


def chosen(wanted, accepted=""):
    """The language to speak to somebody: what they chose, where there is it; else the first that their browser accepts (an Accept-Language
    header, by its q); else English."""
    return next((tag for tag in (wanted, *ranked(accepted)) if tag == ENGLISH or catalogue(tag) is not None), ENGLISH)
