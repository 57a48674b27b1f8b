"""What is asked of a worker, and what comes back: all that the server itself knows of the work. It loads neither numpy nor the core, so that
it is there at once; they are its workers' (`work.py`)."""

import json
from dataclasses import dataclass, field

from ..errors import Refused, TooMuch, refusal
from ..language import spoken, tr, written


@dataclass(frozen=True)
class Answer:
    """What goes back: the body, what it is, headers beside that, and the HTTP status."""

    body: bytes
    media_type: str = "application/json"
    headers: dict = field(default_factory=dict)
    status: int = 200


@dataclass(frozen=True)
class Asked:
    """Some work to do: its name in `work.WORK`, the body's bytes, the options of the query, the most seconds it may take, whether it
    tells how far it is, and the language that its words are in: that which is spoken where it is asked."""

    name: str
    body: bytes
    options: dict
    most_s: float
    tells: bool = False
    language: str = field(default_factory=spoken)


class NothingThere(Refused):
    """There is nothing at the address."""

    status = 404

    def __init__(self, method, path):
        path = path[:200]
        say = tr("There is nothing at {path}.", path=path)
        super().__init__(refusal("request", f"{method} {path}", tr("see /openapi.json"), say))


def refused(error: Refused, status=None) -> Answer:
    """A refusal as an answer."""
    return Answer(json.dumps(error.as_dict()).encode(), status=status or error.status)


def too_much_time(most_s) -> TooMuch:
    """The refusal of work that takes longer than one request may."""
    most = written(most_s, "g")
    say = tr(
        "This was not worked out within {most} s, the longest that one request may take; ask for less: fewer motions, "
        "fewer bounces (bounces), or a shorter clock (sampling.duration_s).",
        most=most,
    )
    return TooMuch(refusal("work", tr("over {most} s", most=most), tr("within {most} s", most=most), say))
