"""Refusals: what the program says no to, in one shape for pages, commands and exports.

Refused (the one exception a caller sees)
├── BadInput       a document, a field or a file is not what it may be            HTTP 422, exit code 2
└── TooMuch        more samples or more bytes than one request may ask for        HTTP 413 or 422, exit code 2
"""

from dataclasses import asdict, dataclass

from .language import tr, tr_as

_WAS_LENGTH = 80
_FIELD_LENGTH = 200


@dataclass(frozen=True)
class Refusal:
    """One field refused: its name in the document, what it was, what it may be, and the sentence for a reader."""

    field: str
    was: str
    may_be: str
    say: str


class Refused(ValueError):
    """Raised with one Refusal or more; `status` is the HTTP status, `retry_after_s` when to ask again, where that helps."""

    status = 422
    retry_after_s = None

    def __init__(self, *refusals):
        super().__init__("; ".join(r.say for r in refusals))
        self.refusals = refusals

    def __reduce__(self):  # by what it says: kinds of it are made of other things
        return _again, (type(self), self.refusals), self.__dict__

    def as_dict(self):
        """The answer's body: {"refused": [...]}."""
        return {"refused": [asdict(r) for r in self.refusals]}


def _again(kind, refusals):
    """A Refused that comes from another process."""
    made = kind.__new__(kind)
    Refused.__init__(made, *refusals)
    return made


class BadInput(Refused):
    """The input is not what it may be."""


class TooMuch(Refused):
    """The input asks for more than one request may."""

    @property
    def status(self):
        """413 for a document that is too long, 422 for one that asks too much."""
        return 413 if self.refusals[0].field == "document" else 422


def refusal(field, was, may_be, say):
    """A Refusal whose `was` is cut to 80 characters, as the answer promises; may_be may be told later (`language.Later`)."""
    return Refusal(field[:_FIELD_LENGTH], shown(was), tr(may_be), say)


def shown(value):
    """A value of any kind as text of at most 80 characters."""
    text = value if isinstance(value, str) else tr_as("what a field was", "nothing") if value is None else str(value)
    return text if len(text) <= _WAS_LENGTH else text[: _WAS_LENGTH - 1] + "…"
