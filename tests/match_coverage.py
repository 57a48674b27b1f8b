"""How often the truth lies in the 95 % intervals of a matched path, and how a true path is judged: `python -m tests.match_coverage`.

So many random habitats, each with a throw that `trace` flies, read off at its samples with seeded noise and matched again with random
knowledge of it: several times each, with noise and knowledge of its own each time. The table says for each quantity how often the track
decided it and how often the truth lay in the interval then; beside it, between which shares of so many that is 19 times in 20 where the
intervals are true. One match a habitat is too few to tell: of 300 habitats some 170 radii are sought, and of intervals that hold the truth
95 % of the time so many lie below 92 % or above 98 % one time in twelve. The last column is therefore the share less chance: what the
noise itself has done is known of each match (`match_chance.py`), and is taken off.
"""

import argparse
import math
from collections import Counter
from concurrent.futures import ProcessPoolExecutor
from contextlib import nullcontext
from dataclasses import dataclass, field
from functools import partial

import numpy as np

from rimfall import open_scene, trace
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body, named
from rimfall.shots.match.flight import Resistance
from rimfall.shots.match.sights import PlacesAboard
from rimfall.shots.match.trials import intervals, tried
from rimfall.shots.match.unknowns import Known
from rimfall.shots.match.verdicts import judged
from tests.match_chance import MOST, distances

G0_M_S2 = 9.80665
AIR = {"pressure_kpa": 101.325, "temperature_c": 20.0}
BODIES = ("handball", "tennis ball", "table-tennis ball", "steel ball 20 mm")


def scene_of(rng, in_air):
    """A random habitat and throw, as a document."""
    radius = math.exp(rng.uniform(math.log(8.0), math.log(2000.0)))
    gravity = rng.uniform(0.1, 1.0) * G0_M_S2
    spin_rpm = math.sqrt(gravity / radius) * 60.0 / (2.0 * math.pi)
    up = rng.uniform(-10.0, 70.0)
    speed = rng.uniform(0.3, 1.3) * math.sqrt(gravity * min(8.0, radius / 2))
    place = {
        "along_m": rng.uniform(-5, 5),
        "height_m": rng.uniform(1.0, min(4.0, radius / 2)),
        "axial_m": rng.uniform(-3, 3),
    }
    throw = {"kind": "throw", "name": "it", "place": place, "speed_m_s": speed, "heading_deg": rng.uniform(-180, 180)}
    body = str(rng.choice(BODIES)) if in_air else {"mass_kg": 1.0, "diameter_m": 0.0}
    throw |= {"elevation_deg": up, "body": body}
    habitat = {"shape": "cylinder", "radius_m": radius, "spin_rpm": spin_rpm}
    air = AIR if in_air else None
    return {
        "rimfall": 1,
        "habitat": habitat,
        "air": air,
        "motions": [throw],
        "sampling": {"fps": 48, "duration_s": 8.0},
    }


def seen_of(document, rng, most=60):
    """Times (N,) and places (N, 3) of its flight, at most so many, evenly."""
    path = trace(open_scene(document)).motions["it"]
    end_s = path.landing.time_s if path.landing else path.time_s[-1]
    flying = np.flatnonzero(path.time_s < end_s)
    some = np.unique(np.linspace(0, len(flying) - 1, min(most, len(flying))).round().astype(int))
    places = np.stack([path.along_m, path.height_m, path.axial_m], axis=-1)
    return path.time_s[flying][some], places[flying][some]


def truth_of(document):
    """What its figures truly are."""
    habitat, throw = document["habitat"], document["motions"][0]
    omega = habitat["spin_rpm"] * 2.0 * math.pi / 60.0
    up, about = math.radians(throw["elevation_deg"]), math.radians(throw["heading_deg"])
    speed, level = throw["speed_m_s"], throw["speed_m_s"] * math.cos(up)
    return {
        "radius_m": habitat["radius_m"],
        "spin_rpm": habitat["spin_rpm"],
        "gravity_g": omega**2 * habitat["radius_m"] / G0_M_S2,
        "speed_m_s": speed,
        "spinward_m_s": level * math.cos(about),
        "up_m_s": speed * math.sin(up),
        "axial_m_s": level * math.sin(about),
        **throw["place"],
        "medium": 1.0 if document["air"] else 0.0,
        "pace": 1.0,
    }


KNOWLEDGE = {
    "nothing": (),
    "radius": ("radius_m",),
    "spin": ("omega_rad_s",),
    "gravity": ("gravity_m_s2",),
    "radius and spin": ("radius_m", "omega_rad_s"),
    "spin and start": ("omega_rad_s", "start"),
    "radius, and slowed": ("radius_m", "gravity_m_s2", "pace"),
}


def known_of(rng, document):
    """A random Known that is true of it, and its name."""
    truth = truth_of(document)
    everything = {
        "radius_m": truth["radius_m"],
        "omega_rad_s": truth["spin_rpm"] * 2.0 * math.pi / 60.0,
        "gravity_m_s2": truth["gravity_g"] * G0_M_S2,
        "start": (truth["along_m"], truth["height_m"], truth["axial_m"]),
        "pace": None,
    }
    name = str(rng.choice(list(KNOWLEDGE)))
    known = {field: everything[field] for field in KNOWLEDGE[name]}
    medium = None if rng.uniform() < 0.3 else truth["medium"]
    return Known(**known, medium=medium), name + (", air unknown" if medium is None else "")


def resistance_of(document):
    """How its air holds its body; in vacuum, how the air that is asked about would hold a ball of a litre."""
    body = document["motions"][0]["body"]
    air = air_at(AIR["pressure_kpa"], AIR["temperature_c"])
    return Resistance(named(body) if isinstance(body, str) else Body(1.0, 0.124, 0.5), air)


def some(seed, in_air=None, verdicts=True, draws=1):
    """A random habitat, matched so many times: rows of truth, Figures, verdict, p-value, knowledge and what
    chance has made of it (`match_chance.distances`)."""
    rng = np.random.default_rng([15, seed])
    in_air = bool(rng.uniform() < 0.35) if in_air is None else in_air
    while True:
        document = scene_of(rng, in_air)
        time_s, places = seen_of(document, rng)
        if len(time_s) >= 12:
            break
    sd = math.exp(rng.uniform(math.log(0.002), math.log(0.03)))
    rows = []
    for _ in range(draws):
        seen = places + rng.normal(0.0, sd, places.shape)
        known, name = known_of(rng, document)
        sight = PlacesAboard(time_s - time_s[0], seen, np.full(3, sd))
        resistance = resistance_of(document) if known.medium != 0.0 else None
        if verdicts:
            told = judged(sight, known, resistance)
            trial, figures, verdict = told.trial, told.figures, told.verdict
        else:
            trial, verdict = tried(sight, known, resistance), None
            figures = intervals(trial)
        truth = truth_of(document)
        rows.append((truth, figures, verdict, trial.p_value, name, distances(trial.problem, truth)))
    return rows


@dataclass(frozen=True)
class Counted:
    """By quantity: how often it was decided, the truth lay in its interval then, and would have if by chance alone; verdicts; p-values;
    what lay outside."""

    decided: Counter = field(default_factory=Counter)
    covered: Counter = field(default_factory=Counter)
    by_chance: Counter = field(default_factory=Counter)
    verdicts: Counter = field(default_factory=Counter)
    chances: list = field(default_factory=list)
    missed: list = field(default_factory=list)

    def less_chance(self, quantity):
        """The share of intervals of a quantity that hold the truth, less what chance has made of it."""
        return 0.95 + (self.covered[quantity] - self.by_chance[quantity]) / self.decided[quantity]


def table(count, first=0, in_air=None, verdicts=True, draws=1, processes=1) -> Counted:
    """The Counted of so many habitats."""
    out = Counted()
    seeds, ask = range(first, first + count), partial(some, in_air=in_air, verdicts=verdicts, draws=draws)
    with ProcessPoolExecutor(processes) if processes > 1 else nullcontext() as pool:
        for seed, rows in zip(seeds, pool.map(ask, seeds) if pool else map(ask, seeds), strict=True):
            for row in rows:
                _count(out, seed, *row)
    return out


def _count(out, seed, truth, figures, verdict, chance, name, off):
    out.verdicts[verdict] += 1
    out.chances.append(chance)
    for quantity, figure in figures.items():
        if figure.known or not figure.decided:
            continue
        out.decided[quantity] += 1
        out.by_chance[quantity] += abs(off[quantity]) <= MOST
        if figure.low <= truth[quantity] <= figure.high:
            out.covered[quantity] += 1
        else:
            out.missed.append((seed, name, quantity, truth[quantity], figure.low, figure.value, figure.high))


def main():
    """Print the table."""
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--habitats", type=int, default=300)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--draws", type=int, default=4, help="matches of each habitat")
    parser.add_argument("--processes", type=int, default=2)
    parser.add_argument("--misses", action="store_true", help="list what lay outside")
    parser.add_argument("--no-verdicts", action="store_true")
    chosen = parser.parse_args()
    found = table(
        chosen.habitats,
        chosen.first,
        verdicts=not chosen.no_verdicts,
        draws=chosen.draws,
        processes=chosen.processes,
    )
    print(f"{'quantity':14} {'decided':>8} {'covered':>8} {'share':>8}  {'by chance, of 95 %':20} less chance")
    for quantity, count in found.decided.items():
        off = 1.96 * math.sqrt(0.95 * 0.05 / count) * 100.0
        share = 100 * found.covered[quantity] / count
        chance = f"{95 - off:.1f} to {min(95 + off, 100):.1f} %"
        less = 100 * found.less_chance(quantity)
        print(f"{quantity:14} {count:8} {found.covered[quantity]:8} {share:7.1f}%  {chance:20} {less:10.1f}%")
    few = [sum(p < most for p in found.chances) for most in (0.001, 0.01)]
    print(f"p < 0.001 of a true path: {few[0]} of {len(found.chances)}; p < 0.01: {few[1]}")
    print("verdicts:", ", ".join(f"{name} {count}" for name, count in found.verdicts.items()))
    for one_missed in found.missed if chosen.misses else ():
        print(*(f"{x:.5g}" if isinstance(x, float) else x for x in one_missed))


if __name__ == "__main__":
    main()
