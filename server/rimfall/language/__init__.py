"""Words for people in the language of whoever asks. In the code they are English; `tr` gives them as the catalogue of the language that is
spoken now (`speaking`) has them.

A catalogue is a gettext file beside this one, `de.po`: its messages are the English texts, with places in braces that `tr` fills. What is
translated is a whole sentence, or a phrase that a sentence is made of; never a word alone that another sentence bends. `tests/catalogues.py`
collects the messages, `static/vendor_build.py` compiles the catalogues into static/vendor/language, where they are read the first time somebody
asks for the language. English needs none.
"""

import contextlib
import gettext
import json
import os
from collections.abc import Callable
from contextvars import ContextVar
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from ..folders import folder

ENGLISH = "en"
CONTEXT = "\x04"  # between the context of a message and its text, as gettext has it
TRIED_OUT = (
    "RIMFALL_LANGUAGES"  # the environment names a folder with further compiled catalogues, for whoever translates
)


@dataclass(frozen=True)
class Catalogue:
    """A language: its tag, its own name, "ltr" or "rtl", how it writes numbers (`signs`, of str.translate), and its messages: English text,
    after its context where it has one → text, or its forms in the order that `form`(count) tells."""

    language: str
    name: str
    direction: str
    signs: dict
    messages: dict
    form: Callable[[int], int]


_spoken: ContextVar[Catalogue | None] = ContextVar("language", default=None)


class Later(str):
    """A text that is put together where no language is spoken yet, as what a field may be; as text it is its English, and `tr` of it tells
    it. Its places are filled with texts, marked where they are translated themselves, and with `Figure`s."""

    def __new__(cls, text, context=None, **places):
        made = super().__new__(cls, _filled(text, places))
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
    catalogue = _spoken.get()
    forms = None if catalogue is None else catalogue.messages.get(one)
    text = (one if count == 1 else many) if forms is None else forms[catalogue.form(count)]
    return _filled(text, {"count": written(count, ","), **places})


def tr_later(text):
    """Marks a text that stands where no language is spoken yet, as in a table: `tr` of it is asked for where it is shown."""
    return text


def tr_later_as(context, text):
    """The same of a text that means something else elsewhere."""
    return Later(text, context)


def written(value, spec=""):
    """A number as `format` writes it, with the signs of the language that is spoken: "1,234.5", "1.234,5"."""
    catalogue = _spoken.get()
    text = format(value, spec)
    return text if catalogue is None else text.translate(catalogue.signs)


def in_signs(text):
    """A number that is written in English, with the signs of the language that is spoken."""
    catalogue = _spoken.get()
    return text if catalogue is None else text.translate(catalogue.signs)


def _found(key, text):
    catalogue = _spoken.get()
    return text if catalogue is None else catalogue.messages.get(key, text)


def _filled(text, places):
    if not places:
        return text
    catalogue = _spoken.get()
    if catalogue is not None and catalogue.direction == "rtl":  # what comes into a place keeps its own direction
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


def catalogue(language):
    """The catalogue of a language; None of English, and of what there is none of."""
    path = _files().get(language)
    return None if path is None else _read(path, path.stat().st_mtime_ns)


def offered():
    """The languages that there are: [{"language", "name", "direction"}], English first."""
    found = [catalogue(language) for language in sorted(_files())]
    return [
        {"language": ENGLISH, "name": "English", "direction": "ltr"},
        *({"language": one.language, "name": one.name, "direction": one.direction} for one in found),
    ]


def chosen(wanted, accepted=""):
    """The language to speak to somebody: what they chose, where there is it; else the first that their browser accepts (an Accept-Language
    header, by its q); else English."""
    there = {ENGLISH, *_files()}
    if wanted in there:
        return wanted
    ranked = []
    for part in accepted[:500].split(","):
        tag, *more = (one.strip() for one in part.split(";"))
        quality = next((one[2:] for one in more if one.startswith("q=")), "1")
        with contextlib.suppress(ValueError):
            ranked.append((-float(quality), tag.lower().partition("-")[0]))
    return next((tag for quality, tag in sorted(ranked, key=lambda one: one[0]) if quality and tag in there), ENGLISH)


def page_script(language):
    """The messages that the page shows, as a script that stands before the page's own; "" for English."""
    path = _files().get(language)
    return "" if path is None else _script(path, path.stat().st_mtime_ns)


@lru_cache(maxsize=32)
def _script(path, _modified):
    data = json.loads(path.read_text(encoding="utf-8"))
    told = {key: data[key] for key in ("language", "direction", "decimal", "group", "categories")}
    told["messages"] = {key: data["messages"][key] for key in data["page"] if key in data["messages"]}
    text = json.dumps(told, ensure_ascii=False, separators=(",", ":")).replace("</", "<\\/")
    return f"globalThis.rimfallLanguage={text};\n"


def _files():
    """Language → its compiled catalogue."""
    tried = os.environ.get(TRIED_OUT)
    places = [folder("static") / "vendor/language", *([Path(tried)] if tried else [])]
    return {path.stem: path for place in places for path in place.glob("*.json")}


@lru_cache(maxsize=32)
def _read(path, _modified):
    data = json.loads(path.read_text(encoding="utf-8"))
    signs = str.maketrans({",": data["group"], ".": data["decimal"]})
    return Catalogue(
        data["language"], data["name"], data["direction"], signs, data["messages"], gettext.c2py(data["plural"])
    )
