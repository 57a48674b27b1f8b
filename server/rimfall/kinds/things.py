"""What prose calls the thing of a motion, by its body: as who does something, and as what something is done to."""

import re
from dataclasses import dataclass

from ..language import tr, tr_later_as

_SIZE = re.compile(r" [\d.]+ ?[a-z]+$")  # "steel ball 20 mm"
_FORMS = {  # of each: the thing and another one, who does something; the same, to whom it is done
    "handball": (
        (tr_later_as("subject", "the handball"), tr_later_as("subject", "another handball")),
        (tr_later_as("object", "the handball"), tr_later_as("object", "another handball")),
    ),
    "tennis ball": (
        (tr_later_as("subject", "the tennis ball"), tr_later_as("subject", "another tennis ball")),
        (tr_later_as("object", "the tennis ball"), tr_later_as("object", "another tennis ball")),
    ),
    "table-tennis ball": (
        (tr_later_as("subject", "the table-tennis ball"), tr_later_as("subject", "another table-tennis ball")),
        (tr_later_as("object", "the table-tennis ball"), tr_later_as("object", "another table-tennis ball")),
    ),
    "baseball": (
        (tr_later_as("subject", "the baseball"), tr_later_as("subject", "another baseball")),
        (tr_later_as("object", "the baseball"), tr_later_as("object", "another baseball")),
    ),
    "steel ball": (
        (tr_later_as("subject", "the steel ball"), tr_later_as("subject", "another steel ball")),
        (tr_later_as("object", "the steel ball"), tr_later_as("object", "another steel ball")),
    ),
    "cup": (
        (tr_later_as("subject", "the cup"), tr_later_as("subject", "another cup")),
        (tr_later_as("object", "the cup"), tr_later_as("object", "another cup")),
    ),
    "water drop": (
        (tr_later_as("subject", "the water drop"), tr_later_as("subject", "another water drop")),
        (tr_later_as("object", "the water drop"), tr_later_as("object", "another water drop")),
    ),
    "helium balloon": (
        (tr_later_as("subject", "the helium balloon"), tr_later_as("subject", "another helium balloon")),
        (tr_later_as("object", "the helium balloon"), tr_later_as("object", "another helium balloon")),
    ),
    "air balloon": (
        (tr_later_as("subject", "the air balloon"), tr_later_as("subject", "another air balloon")),
        (tr_later_as("object", "the air balloon"), tr_later_as("object", "another air balloon")),
    ),
    "soap bubble": (
        (tr_later_as("subject", "the soap bubble"), tr_later_as("subject", "another soap bubble")),
        (tr_later_as("object", "the soap bubble"), tr_later_as("object", "another soap bubble")),
    ),
    "sheet of paper": (
        (tr_later_as("subject", "the sheet of paper"), tr_later_as("subject", "another sheet of paper")),
        (tr_later_as("object", "the sheet of paper"), tr_later_as("object", "another sheet of paper")),
    ),
    "falling person": (
        (tr_later_as("subject", "the falling person"), tr_later_as("subject", "another falling person")),
        (tr_later_as("object", "the falling person"), tr_later_as("object", "another falling person")),
    ),
    "ball": (
        (tr_later_as("subject", "the ball"), tr_later_as("subject", "another ball")),
        (tr_later_as("object", "the ball"), tr_later_as("object", "another ball")),
    ),
}

_IT = {  # the word that stands for each in the sentences that follow
    "handball": tr_later_as("stands for the handball", "it"),
    "tennis ball": tr_later_as("stands for the tennis ball", "it"),
    "table-tennis ball": tr_later_as("stands for the table-tennis ball", "it"),
    "baseball": tr_later_as("stands for the baseball", "it"),
    "steel ball": tr_later_as("stands for the steel ball", "it"),
    "cup": tr_later_as("stands for the cup", "it"),
    "water drop": tr_later_as("stands for the water drop", "it"),
    "helium balloon": tr_later_as("stands for the helium balloon", "it"),
    "air balloon": tr_later_as("stands for the air balloon", "it"),
    "soap bubble": tr_later_as("stands for the soap bubble", "it"),
    "sheet of paper": tr_later_as("stands for the sheet of paper", "it"),
    "falling person": tr_later_as("stands for the falling person", "it"),
    "ball": tr_later_as("stands for the ball", "it"),
}


@dataclass(frozen=True)
class Thing:
    """A thing by its noun, the first of its kind that is told of or another one."""

    noun: str
    another: bool = False

    @property
    def does(self):
        """The words for it as who does something, as a sentence begins with them."""
        words = tr(_FORMS[self.noun][0][self.another])
        return words[:1].upper() + words[1:]

    @property
    def done_to(self):
        """The same as what something is done to."""
        return tr(_FORMS[self.noun][1][self.another])

    @property
    def it(self):
        """The word that stands for it once it has been named."""
        return tr(_IT[self.noun])


def noun(motion):
    """What prose calls the thing of a motion: "cup", "steel ball"; "ball" where it has no name."""
    body = getattr(motion, "body", None)
    return _SIZE.sub("", body) if isinstance(body, str) else "ball"
