"""Which random scenes are frozen: quick ones, whose answers stay as they are when a last digit of the document changes.

A scene in which rounding grows (many bounces, a path that grazes) would be answered otherwise on another processor.
"""

import copy
import json
import math
import multiprocessing
import time
from pathlib import Path

from . import asking, kept, random_scenes
from .exact import PROCESSES
from .random_scenes import Dice

ANSWERED, REFUSED = 250, 50
GREATEST_SEED = 2_000
GREATEST_S = 0.25  # of processor time that a trace may take
FILE = Path(__file__).with_name("seeds.py")
_NUDGED = ("radius_m", "spin_rpm", "speed_m_s", "height_m", "length_m", "mass_kg", "diameter_m", "axial_thrust_m_s2")
_NUDGES = 4


def choose():
    """Write the seeds; returns how many."""
    seeds, left = [], {"answered": ANSWERED, "refused": REFUSED}
    with multiprocessing.get_context("spawn").Pool(PROCESSES) as pool:
        for seed, kind in enumerate(pool.imap(_kind_of_seed, range(GREATEST_SEED))):
            if left.get(kind):
                seeds.append(seed)
                left[kind] -= 1
            if not any(left.values()):
                break
    rows = [", ".join(map(str, seeds[i : i + 20])) for i in range(0, len(seeds), 20)]
    head = '"""The seeds of the frozen random scenes, as `python -m tests.frozen choose` found them."""\n\n'
    FILE.write_text(head + "SEEDS = (\n" + "".join(f"    {row},\n" for row in rows) + ")  # fmt: skip\n")
    return len(seeds)


def _kind_of_seed(seed):
    return _kind_of(random_scenes.scene(seed))


def _kind_of(document):
    """answered, refused, or why it is left out."""
    text, began_s = json.dumps(document), time.process_time()
    trace = asking.answered(asking.traced, text)
    if isinstance(trace, bytes):
        return "refused" if b'"refusal"' in trace else "fault"
    if time.process_time() - began_s > GREATEST_S:
        return "slow"
    answers = kept.answers_to("", text)
    for number in range(_NUDGES):
        if kept.changes("", answers, kept.answers_to("", json.dumps(_nudged(document, number)))):
            return "unsteady"
    return "answered"


def _nudged(document, number):
    """The document with the last bit of some figures changed."""
    dice, document = Dice(f"nudge {number}"), copy.deepcopy(document)

    def nudge(part):
        for name, value in part.items() if isinstance(part, dict) else enumerate(part):
            if isinstance(value, (dict, list)):
                nudge(value)
            elif name in _NUDGED and isinstance(value, float) and value and dice.happens(0.7):
                part[name] = math.nextafter(value, dice.one_of([-math.inf, math.inf]))

    nudge(document)
    return document
