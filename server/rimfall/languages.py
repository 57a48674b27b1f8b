"""A language that somebody asks for by its tag: in a command, or in a notebook."""

from collections.abc import Iterator
from contextlib import contextmanager

from .errors import BadInput, refusal
from .language import ENGLISH, catalogue, offered, tr
from .language import speaking as _speaking
from .phrases import OR, listed


@contextmanager
def speaking(language: str) -> Iterator[None]:
    """Words are in this language within: those of answers and refusals, of scenes and talks that come with the program, and in files.
    language: its tag, "en" or "de". Raises BadInput for one that there is none of, naming those that there are."""
    if language != ENGLISH and catalogue(language) is None:
        may_be = listed([one["language"] for one in offered()], OR)
        say = tr("{field} was {value}; it must be {allowed}.", field=tr("Language"), value=language, allowed=may_be)
        raise BadInput(refusal("language", language, may_be, say))
    with _speaking(language):
        yield
