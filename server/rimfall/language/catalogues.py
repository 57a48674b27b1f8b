"""The compiled catalogues: found, read once each, and looked through. What cannot be read is no language, which is said in the log; a message that
does not fit its English, as of another version of the program, is left out, so that the English is told.
"""

import gettext
import json
import logging
import os
import re
from collections.abc import Callable
from dataclasses import dataclass
from functools import lru_cache
from pathlib import Path

from ..folders import folder

ENGLISH = "en"
CONTEXT = "\x04"  # between the context of a message and its text, as gettext has it
TRIED_OUT = (
    "RIMFALL_LANGUAGES"  # the environment names a folder with further compiled catalogues, for whoever translates
)
_TAG = re.compile(r"[a-z]{2,8}(-[A-Za-z0-9]{1,8})*")
_PLACE = re.compile(r"\{(\w+)\}")
_PLURALS = ("zero", "one", "two", "few", "many", "other")  # as the Unicode Common Locale Data Repository names them
_log = logging.getLogger("rimfall")


@dataclass(frozen=True, eq=False)
class Catalogue:
    """A language: its tag, its own name, "ltr" or "rtl", how it writes numbers (`signs`, of str.translate), its messages: English text, after
    its context where it has one → text, or its forms in the order that `form`(count) tells; and the script that gives the page its own."""

    language: str
    name: str
    direction: str
    signs: dict
    messages: dict
    form: Callable[[int], int]
    script: str


def catalogue(language):
    """The catalogue of a language; None of English, and of what there is none of."""
    path = files().get(language)
    try:
        about = None if path is None else path.stat()
    except OSError:  # it has just gone
        return None
    return None if about is None else _read(path, about.st_mtime_ns, about.st_size)


def offered():
    """The languages that there are: [{"language", "name", "direction"}], English first."""
    found = [one for one in map(catalogue, sorted(files())) if one is not None]
    return [
        {"language": ENGLISH, "name": "English", "direction": "ltr"},
        *({"language": one.language, "name": one.name, "direction": one.direction} for one in found),
    ]


def page_script(language):
    """The messages that the page shows, as a script that stands before the page's own; "" for English."""
    mine = catalogue(language)
    return "" if mine is None else mine.script


def files():
    """Language → its compiled catalogue."""
    tried = os.environ.get(TRIED_OUT)
    return {
        tag: path
        for place in (_compiled(), *([Path(tried)] if tried else []))
        for tag, path in _within(place, _changed_ns(place)).items()
    }


@lru_cache
def _compiled():
    return folder("static") / "vendor/language"


def _changed_ns(place):
    """When something last came into a folder or went; None where there is none."""
    try:
        return place.stat().st_mtime_ns
    except OSError:
        return None


@lru_cache(maxsize=8)
def _within(place, changed_ns):
    """The catalogues of a folder; every request asks for them."""
    if changed_ns is None:
        return {}
    found = {path.stem: path for path in place.glob("*.json") if _TAG.fullmatch(path.stem) and path.is_file()}
    return {tag: path for tag, path in found.items() if tag != ENGLISH}


@lru_cache(maxsize=32)
def _read(path, _modified_ns, _size):
    try:
        return _catalogue_of(json.loads(path.read_text(encoding="utf-8")), path.stem)
    except (OSError, ValueError, TypeError, LookupError, ArithmeticError, AttributeError, RecursionError) as error:
        _log.warning("The catalogue %s cannot be read, and its language is not spoken: %r", path, error)
        return None


def _catalogue_of(data, language):
    """Raises one of what _read catches where it is not whole."""
    if data["language"] != language or data["direction"] not in ("ltr", "rtl"):
        raise ValueError("its language or direction")
    if not all(isinstance(data[key], str) for key in ("name", "decimal", "group")):
        raise ValueError("its name or its signs of numbers")
    if not set(data["categories"]) <= set(_PLURALS):
        raise ValueError("its categories of counts")
    form, forms = gettext.c2py(data["plural"]), len(data["categories"])
    if not all(0 <= form(n) < forms for n in range(1000)):
        raise ValueError("its forms of counts")
    messages = {key: said for key, said in data["messages"].items() if _fits(key, said, forms)}
    told = {key: data[key] for key in ("language", "direction", "decimal", "group", "categories")}
    told["messages"] = {key: messages[key] for key in data["page"] if key in messages}
    text = json.dumps(told, ensure_ascii=False, separators=(",", ":")).replace("</", "<\\/")
    script = f"globalThis.rimfallLanguage={text};\n"
    signs = str.maketrans({",": data["group"], ".": data["decimal"]})
    return Catalogue(language, data["name"], data["direction"], signs, messages, form, script)


def _fits(key, said, forms):
    """Whether a message can be told in place of its English: a text with the same places and no other braces, or as many forms as the language
    has; the places of those stand in the code alone (`tr_many`)."""
    if isinstance(said, str):
        return _braces(said) == _braces(key.rpartition(CONTEXT)[2])
    return len(said) == forms and all(isinstance(one, str) for one in said)


def _braces(text):
    """(places, opening braces beside them, closing braces) of a text."""
    if "{" not in text and "}" not in text:
        return frozenset(), 0, 0
    rest = _PLACE.sub("", text)
    return frozenset(_PLACE.findall(text)), rest.count("{"), rest.count("}")
