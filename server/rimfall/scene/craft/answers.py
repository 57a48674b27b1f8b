"""Would the ship cope? Every finding of a craft as one JSON document. Whoever adds a finding adds its line to FINDINGS."""

from collections.abc import Callable
from dataclasses import dataclass

from pydantic_core import to_json

from ... import __version__
from ...language import tr, tr_later
from ...phrases import caution
from . import balance, deploy, dock, hull, joint, mass, move, rock, slew, spin_up, tether, tumble
from .asked import asked_of
from .figures import figures

ANSWER_VERSION = 1


@dataclass(frozen=True)
class Finding:
    """question: its heading for people. of: `of(asked)` is the finding as data with `says` and `assumptions` in it, None where the
    document does not ask for it."""

    question: str
    of: Callable


# by their names in the answer, in the order in which people read them
FINDINGS = {
    "mass": Finding(tr_later("What is it made of?"), mass.finding),
    "spin_up": Finding(tr_later("What does it take to spin it up?"), spin_up.up),
    "spin_down": Finding(tr_later("What does it take to stop it?"), spin_up.down),
    "joint": Finding(tr_later("What happens at the joint, and if it seizes?"), joint.finding),
    "slew": Finding(tr_later("Which way does it push back when it turns?"), slew.finding),
    "tumble": Finding(tr_later("What does it do when it tumbles?"), tumble.finding),
    "balance": Finding(tr_later("Does it stay on its axis?"), balance.finding),
    "move": Finding(tr_later("What happens when somebody moves about?"), move.finding),
    "deploy": Finding(tr_later("What happens when it unfolds?"), deploy.finding),
    "tether": Finding(tr_later("What does the tether carry?"), tether.finding),
    "dock": Finding(tr_later("What must a visitor match?"), dock.finding),
    "hull": Finding(tr_later("Would the ring hold?"), hull.finding),
    "rock": Finding(tr_later("Could a rock be spun up?"), rock.finding),
}


def as_data(craft, units="si"):
    """The answer to a Craft that stands, as plain data."""
    return of_asked(asked_of(craft, units))


def of_asked(asked):
    """The same of an Asked, for who needs that besides."""
    findings = {name: finding.of(asked) for name, finding in FINDINGS.items()}
    return {
        "rimfall_craft": ANSWER_VERSION,
        "program": __version__,
        "craft": asked.craft.model_dump(mode="json"),
        "rim_radius_m": asked.rim_m,
        **{
            name: {"question": tr(FINDINGS[name].question)} | data
            for name, data in findings.items()
            if data is not None
        },
        "short": mass.short(asked),
        "caution": caution(),
    }


def with_figures(answer):
    """The same answer, each finding with its figures as rows of group, label, value and unit."""
    return {
        name: part | {"figures": [list(row) for row in figures(part)]} if name in FINDINGS else part
        for name, part in answer.items()
    }


def as_json(craft, units="si"):
    """The same as JSON bytes."""
    return packed(as_data(craft, units))


def packed(answer):
    """An answer as JSON bytes."""
    return to_json(answer)
