"""Craft: every finding of those to start from, document to JSON, and of one of 200 parts; beside it the same bodies by scipy: inertia as
integrals of their shapes, principal axes, and the spin-up and the move stepped in time; and a thousand turns of tumbling.

Scipy's side is written out here: `tplquad` is not asked, for it takes minutes; shells and full solids of revolution are two nested `quad`s.
"""

import json
import math
import time

import numpy as np
from scipy.integrate import quad, solve_ivp
from scipy.linalg import eigh

from rimfall.physics.constants import RPM_RAD_S
from rimfall.scene.craft import answers, examples
from rimfall.scene.craft.asked import asked_of
from rimfall.scene.reading import read_craft
from rimfall.vessel.attitude import principal_of
from rimfall.vessel.bodies import Body
from rimfall.vessel.tumble import motion_of
from tests.vessel.tumbling import integrated

from .row import Row, best, quantile

TIMES, MANY_TIMES = 60, 15
BAR_S, TUMBLE_BAR_S = 0.015, 0.5


def many_parts():
    """A craft of 200 parts: boxes in rings round a keel, no two in one place."""
    keel = {"name": "keel", "group": "still", "solid": "cylinder", "mass_kg": 5e4, "radius_m": 2.0, "length_m": 60.0}
    boxes = []
    for n in range(199):
        turn, ring = 2 * math.pi * (n % 40) / 40, n // 40
        place = [30 * math.cos(turn), 30 * math.sin(turn), 5.0 * ring]
        box = {"name": f"box {n}", "solid": "box", "mass_kg": 900.0, "size_m": [3, 3, 4], "place_m": place}
        boxes.append(box | {"axis": [math.cos(turn), math.sin(turn), 0.0]})
    return json.dumps(json.loads(examples.example("ring-ship")) | {"parts": [keel, *boxes], "title": "Many parts"})


def seconds(document):
    began = time.perf_counter()
    answers.as_json(read_craft(document))
    return time.perf_counter() - began


def scipy_s(document):
    """Seconds that scipy takes for masses, spin-up and move of a craft."""
    craft = read_craft(document)
    asked = asked_of(craft)
    began = time.perf_counter()
    for part in craft.parts:
        _of_revolution(getattr(part, "radius_m", 1.0), getattr(part, "length_m", 1.0))
    for body in asked.bodies.values():
        eigh(body.inertia_kg_m2)
    inertia, rate = asked.inertia("turning"), craft.spin_rpm * RPM_RAD_S
    solve_ivp(lambda t, s: [5e3 / inertia, s[0]], (0, inertia * rate / 5e3), [0.0, 0.0], rtol=1e-10)
    if craft.move is not None:
        mass, ends = craft.move.mass_kg, (craft.move.from_radius_m, craft.move.to_radius_m)
        quad(lambda r: mass * r * (inertia * rate / (inertia + mass * r * r)) ** 2, *ends)
    return time.perf_counter() - began


def _of_revolution(radius, length):
    """Moments of a full solid of revolution as nested integrals: along and across."""
    quad(lambda z: quad(lambda r: r**3, 0, radius)[0], -length / 2, length / 2)
    quad(lambda z: quad(lambda r: r * (r * r / 2 + z * z), 0, radius)[0], -length / 2, length / 2)


def measure():
    halves = {name: _half(examples.example(name), TIMES) for name in examples.SAY}
    tumbling = {name for name in examples.SAY if '"tumble"' in examples.example(name)}
    slowest = max(set(halves) - tumbling, key=halves.get)
    beside = np.median([scipy_s(examples.example(slowest)) for _ in range(20)])
    note = f"the slowest of {len(halves) - len(tumbling)}, {slowest}; masses, spin-up and move alone take scipy {1e3 * beside:.1f} ms"
    what = "all findings of a craft to start from, document to JSON, p50"
    yield Row(what, f"{1e3 * halves[slowest]:.1f} ms", f"{1e3 * BAR_S:g} ms", halves[slowest] <= BAR_S, note)
    for name in sorted(tumbling):
        note = f"{name}, with all the turns of its tumble"
        yield Row("the same of one that tumbles, p50", f"{1e3 * halves[name]:.0f} ms", "-", None, note)
    many = many_parts()
    yield Row("the same of 200 parts, p50", f"{1e3 * _half(many, MANY_TIMES):.0f} ms", "-", None)
    yield from tumbles()


def _half(document, times):
    """The median of the seconds of some runs, after one to warm up."""
    seconds(document)
    return quantile([seconds(document) for _ in range(times)], 0.5)


def tumbles():
    """A thousand turns of a body of three moments, read sixteen times a turn; scipy takes a hundred of them, once."""
    body, rates = principal_of(Body(1.0, np.zeros(3), np.diag([1.0, 2.0, 3.0]))), [1.0, 0.1, 0.1]
    turn_s = 2 * math.pi / float(np.linalg.norm(rates))
    time_s = np.linspace(0, 1000 * turn_s, 16_001)
    began = time.perf_counter()
    integrated(body, rates, 100 * turn_s)
    beside = 10 * (time.perf_counter() - began)
    for what, losses_s in (
        ("1,000 turns of tumbling", None),
        ("the same with losses, over into a flat spin", 100 * turn_s),
    ):
        own = best(lambda losses_s=losses_s: motion_of(body, rates, losses_s).at(time_s), 3)
        note = f"DOP853 of scipy, rtol 1e-12, its end alone and without losses: {beside:.1f} s"
        yield Row(what, f"{own:.2f} s", f"{TUMBLE_BAR_S:g} s", own <= TUMBLE_BAR_S, note)
