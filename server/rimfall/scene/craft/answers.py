"""Would the ship cope? Every finding of a craft as one JSON document. Whoever adds a finding adds its line to FINDINGS."""

from pydantic_core import to_json

from ... import __version__
from ...phrases import CAUTION
from . import balance, deploy, dock, hull, joint, mass, move, rock, slew, spin_up, tether
from .asked import asked_of

ANSWER_VERSION = 1
# name in the answer → finding(asked), as data with `says` and `assumptions` in it; None where the document does not ask for it
FINDINGS = {
    "mass": mass.finding,
    "spin_up": spin_up.up,
    "spin_down": spin_up.down,
    "joint": joint.finding,
    "slew": slew.finding,
    "balance": balance.finding,
    "move": move.finding,
    "deploy": deploy.finding,
    "tether": tether.finding,
    "dock": dock.finding,
    "hull": hull.finding,
    "rock": rock.finding,
}


def as_data(craft, units="si"):
    """The answer to a Craft that stands, as plain data."""
    asked = asked_of(craft, units)
    findings = {name: finding(asked) for name, finding in FINDINGS.items()}
    return {
        "rimfall_craft": ANSWER_VERSION,
        "program": __version__,
        "craft": craft.model_dump(mode="json"),
        "rim_radius_m": asked.rim_m,
        **{name: data for name, data in findings.items() if data is not None},
        "caution": CAUTION,
    }


def as_json(craft, units="si"):
    """The same as JSON bytes."""
    return to_json(as_data(craft, units))
