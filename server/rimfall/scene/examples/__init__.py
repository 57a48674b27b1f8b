"""Scenes to start from: one JSON file each, its id the file's name; their order, the question each belongs to, its sentence and its
small drawing are here. `python -m tests.drawings` makes the drawings anew.
"""

import json
from functools import lru_cache
from importlib.resources import files

OPENING = "same-lob"  # what the page begins with

BY_QUESTION = {
    "First look": {
        "empty": "A cylinder with nothing in it yet: add what moves.",
        "same-lob": "Two equal lobs, one spinward and one antispinward: they do not land equally far.",
        "galley": "A cup dropped, a ball served, tea poured, under the galley's ceiling.",
        "high-drop": "Dropped from half way to the axis: it lands far antispinward.",
        "two-wheels": "The same lobs in a cylinder of four times the radius, and in a torus, at the same gravity.",
    },
    "Throwing, dropping and rolling": {
        "steep-lob": "A lob thrown steeply antispinward that lands spinward, in vacuum.",
        "round-the-rim": "Thrown antispinward at the rim's own speed, in vacuum: it hangs still Outside and circles Aboard.",
        "hub-toss": "A toss across the hub: up, through the middle, and down on the other side.",
        "down-the-deck": "Two tennis balls bounce down the deck, one each way; no two bounces are alike.",
        "along-the-axis": "Balls rolled along the axis, one of them spun as well: neither rolls straight on.",
        "down-the-ramp": "Two balls let roll down ramps, one facing spinward and one facing along the axis.",
        "balloon-in-the-galley": "A helium balloon rises spinward to the galley's ceiling; one full of air sinks antispinward.",
        "paper-and-bubble": "Paper, a soap bubble and a steel ball let go together: three falls, three drifts.",
    },
    "Is this shot right?": {
        "pass-to-a-runner": "A pass to somebody who runs off against the spin: aimed so that ball and hands are in one place at one time.",
        "under-the-ceiling": "Two serves a degree apart, at 12 m/s: one comes down far along the galley, one is stopped by its ceiling.",
        "filmed-toss": "A lamp tossed antispinward and along the axis: a path to hold a drawn or filmed one against.",
    },
    "Pouring": {
        "missed-cup": "Tea poured at the galley table as one would at home: it misses, and the cup should have stood antispinward.",
        "tilting-jug": "A jug that tilts as it pours: it drips, streams and breaks, each drop on a path of its own, into a basin.",
        "oil-and-honey": "Oil and honey poured under thrust: they lean as they fall, and lie tilted in their cups.",
        "slow-drip": "A leaking tap on a high deck: drop by drop, each on the same curve.",
    },
    "People": {
        "two-jumps": "Two equal running jumps, one spinward and one antispinward: the runner against the spin lands farther.",
        "rim-run": "Running with the spin one is heavier, against it lighter; and up the stairs, pushed sideways.",
        "running-laps": "From one spot one runs spinward and is heavier, one runs back and is lighter; somebody stands by.",
        "spoke-lift": "A lift in a spoke: going up it is pushed spinward, going down antispinward, and down leans.",
    },
    "Other shapes": {
        "ring": "In a ring's tube: a throw across it, and a ball rolled up its side.",
        "garden-sphere": "Inside a sphere, off the equator: the ground slopes, and everything goes down to the equator.",
        "three-pods": "Three pods on arms: on their flat floors down leans toward the ends.",
        "courier-on-a-tether": "A toss in a courier's cabin that swings round its spent tank.",
        "tumbling-tug": "A tug that tumbles end over end: a steel ball thrown across it from floor to floor, and a ball let go.",
        "on-the-bench": "A turntable in a room: a solid ball circles at two sevenths of its rate, a hollow one at two fifths.",
        "turning-plane": "A pendulum over a turntable: seen from aboard, the plane it swings in goes round.",
    },
    "The ship": {
        "spin-up": "A ball dropped while the habitat is still spinning up.",
        "cup-at-spin-up": "A cup on the deck while the habitat is set spinning: it is left behind before it has any weight, and grips later.",
        "under-thrust": "The same drop while the ship accelerates along its axis.",
        "rolling-under-thrust": "A habitat under thrust: a ball set down rolls aft, a cup holds, and a dropped ball leaves its plumb line.",
        "lamps-under-thrust": "Lamps in the galley under thrust: one hangs askew, one swings about the leaning plumb line.",
        "the-wrong-way": "The ship accelerates ahead: a ball falls back, and a balloon goes forward.",
        "off-the-rim": "Someone outside lets go of the rim and drifts off along a straight line, while the habitat goes round.",
        "to-the-dock": "A courier coasts to a dock on the rim, a tender to the hub: what each must cancel at contact.",
        "wheel-and-keel": "The Lantern Wheel with its still keel, tanks and radiators, and what is asked of such a craft.",
        "into-a-flat-spin": "A craft spun about its length loses energy inside, goes over, and ends up turning end over end.",
    },
}
QUESTION = {name: question for question, scenes in BY_QUESTION.items() for name in scenes}
SAY = {name: say for scenes in BY_QUESTION.values() for name, say in scenes.items()}


@lru_cache
def example(name):
    """The document of an example as text, or None where there is none of that id."""
    return files(__package__).joinpath(f"{name}.json").read_text("utf-8") if name in SAY else None


@lru_cache
def drawings():
    """The small drawing of each, by id: lines of numbers on a sheet of 320 by 200."""
    return json.loads(files(__package__).joinpath("drawings.txt").read_text("utf-8"))


def listed():
    """All examples in order: id, title, sentence, question and drawing."""
    return [
        {"id": name, "title": _title(name), "say": say, "question": QUESTION[name], "drawing": drawings().get(name)}
        for name, say in SAY.items()
    ]


def _title(name):
    return json.loads(example(name))["title"]
