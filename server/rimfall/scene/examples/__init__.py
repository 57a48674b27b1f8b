"""Scenes to start from: one JSON file each, its id the file's name; their order, the question each belongs to, its sentence and its
small drawing are here. `python -m tests.drawings` makes the drawings anew.
"""

import json
from functools import lru_cache
from importlib.resources import files

from ...language import tr, tr_later
from ...language.documents import as_spoken

OPENING = "same-lob"  # what the page begins with

BY_QUESTION = {
    tr_later("First look"): {
        "empty": tr_later("A cylinder with nothing in it yet: add what moves."),
        "same-lob": tr_later("Two equal lobs, one spinward and one antispinward: they do not land equally far."),
        "galley": tr_later("A cup dropped, a ball served, tea poured, under the galley's ceiling."),
        "high-drop": tr_later("Dropped from half way to the axis: it lands far antispinward."),
        "two-wheels": tr_later(
            "The same lobs in a cylinder of four times the radius, and in a torus, at the same gravity."
        ),
    },
    tr_later("Throwing, dropping and rolling"): {
        "steep-lob": tr_later("A lob thrown steeply antispinward that lands spinward, in vacuum."),
        "round-the-rim": tr_later(
            "Thrown antispinward at the rim's own speed, in vacuum: it hangs still Outside and circles Aboard."
        ),
        "hub-toss": tr_later("A toss across the hub: up, through the middle, and down on the other side."),
        "down-the-deck": tr_later("Two tennis balls bounce down the deck, one each way; no two bounces are alike."),
        "along-the-axis": tr_later("Balls rolled along the axis, one of them spun as well: neither rolls straight on."),
        "down-the-ramp": tr_later("Two balls let roll down ramps, one facing spinward and one facing along the axis."),
        "balloon-in-the-galley": tr_later(
            "A helium balloon rises spinward to the galley's ceiling; one full of air sinks antispinward."
        ),
        "paper-and-bubble": tr_later(
            "Paper, a soap bubble and a steel ball let go together: three falls, three drifts."
        ),
    },
    tr_later("Is this shot right?"): {
        "pass-to-a-runner": tr_later(
            "A pass to somebody who runs off against the spin: aimed so that ball and hands are in one place at one time."
        ),
        "under-the-ceiling": tr_later(
            "Two serves a degree apart, at 12 m/s: one comes down far along the galley, one is stopped by its ceiling."
        ),
        "filmed-toss": tr_later(
            "A lamp tossed antispinward and along the axis: a path to hold a drawn or filmed one against."
        ),
    },
    tr_later("Pouring"): {
        "missed-cup": tr_later(
            "Tea poured at the galley table as one would at home: it misses, and the cup should have stood antispinward."
        ),
        "tilting-jug": tr_later(
            "A jug that tilts as it pours: it drips, streams and breaks, each drop on a path of its own, into a basin."
        ),
        "oil-and-honey": tr_later(
            "Oil and honey poured under thrust: they lean as they fall, and lie tilted in their cups."
        ),
        "slow-drip": tr_later("A leaking tap on a high deck: drop by drop, each on the same curve."),
    },
    tr_later("People"): {
        "two-jumps": tr_later(
            "Two equal running jumps, one spinward and one antispinward: the runner against the spin lands farther."
        ),
        "rim-run": tr_later(
            "Running with the spin one is heavier, against it lighter; and up the stairs, pushed sideways."
        ),
        "running-laps": tr_later(
            "From one spot one runs spinward and is heavier, one runs back and is lighter; somebody stands by."
        ),
        "spoke-lift": tr_later(
            "A lift in a spoke: going up it is pushed spinward, going down antispinward, and down leans."
        ),
    },
    tr_later("Other shapes"): {
        "ring": tr_later("In a ring's tube: a throw across it, and a ball rolled up its side."),
        "garden-sphere": tr_later(
            "Inside a sphere, off the equator: the ground slopes, and everything goes down to the equator."
        ),
        "three-pods": tr_later("Three pods on arms: on their flat floors down leans toward the ends."),
        "courier-on-a-tether": tr_later("A toss in a courier's cabin that swings round its spent tank."),
        "tumbling-tug": tr_later(
            "A tug that tumbles end over end: a steel ball thrown across it from floor to floor, and a ball let go."
        ),
        "on-the-bench": tr_later(
            "A turntable in a room: a solid ball circles at two sevenths of its rate, a hollow one at two fifths."
        ),
        "turning-plane": tr_later("A pendulum over a turntable: seen from aboard, the plane it swings in goes round."),
    },
    tr_later("The ship"): {
        "spin-up": tr_later("A ball dropped while the habitat is still spinning up."),
        "cup-at-spin-up": tr_later(
            "A cup on the deck while the habitat is set spinning: it is left behind before it has any weight, and grips later."
        ),
        "under-thrust": tr_later("The same drop while the ship accelerates along its axis."),
        "rolling-under-thrust": tr_later(
            "A habitat under thrust: a ball set down rolls aft, a cup holds, and a dropped ball leaves its plumb line."
        ),
        "lamps-under-thrust": tr_later(
            "Lamps in the galley under thrust: one hangs askew, one swings about the leaning plumb line."
        ),
        "the-wrong-way": tr_later("The ship accelerates ahead: a ball falls back, and a balloon goes forward."),
        "off-the-rim": tr_later(
            "Someone outside lets go of the rim and drifts off along a straight line, while the habitat goes round."
        ),
        "to-the-dock": tr_later(
            "A courier coasts to a dock on the rim, a tender to the hub: what each must cancel at contact."
        ),
        "wheel-and-keel": tr_later(
            "The Lantern Wheel with its still keel, tanks and radiators, and what is asked of such a craft."
        ),
        "into-a-flat-spin": tr_later(
            "A craft spun about its length loses energy inside, goes over, and ends up turning end over end."
        ),
    },
}
QUESTION = {name: question for question, scenes in BY_QUESTION.items() for name in scenes}
SAY = {name: say for scenes in BY_QUESTION.values() for name, say in scenes.items()}


def example(name):
    """The document of an example as text, in the language that is spoken, or None where there is none of that id."""
    return as_spoken(_text(name)) if name in SAY else None


@lru_cache
def _text(name):
    return files(__package__).joinpath(f"{name}.json").read_text("utf-8")


@lru_cache
def drawings():
    """The small drawing of each, by id: lines of numbers on a sheet of 320 by 200."""
    return json.loads(files(__package__).joinpath("drawings.txt").read_text("utf-8"))


def listed():
    """All examples in order: id, title, sentence, question and drawing."""
    return [
        {
            "id": name,
            "title": tr(json.loads(_text(name))["title"]),
            "say": tr(say),
            "question": tr(QUESTION[name]),
            "drawing": drawings().get(name),
        }
        for name, say in SAY.items()
    ]
