"""`python -m tests.benchmark.flood`: the most memory, bytes, of a process that flies 100,000 drops to the deck and keeps their paths."""

import resource

import numpy as np

from rimfall.motions.flight import fly
from rimfall.motions.setting import Setting
from rimfall.physics import air, spin
from rimfall.physics.bodies import Body
from rimfall.shapes import Cylinder

DROPS = 100_000


def flight():
    """The drops, each of its own size and height, let go at rest in the Lantern Wheel -> list of FlightResult."""
    setting = Setting(Cylinder(56.0, spin.steady(np.pi / 10)), air.air_at(101.325, 20.0), 48, 5.0)
    chance = np.random.default_rng(1)
    sizes, heights = chance.uniform(1e-3, 6e-3, DROPS), chance.uniform(1.2, 1.7, DROPS)
    drops = [Body(998.2 * np.pi / 6 * diameter_m**3, diameter_m) for diameter_m in sizes]
    releases = [
        setting.release(drop, 0.0, (0.0, height_m, 0.0), np.zeros(3))
        for drop, height_m in zip(drops, heights, strict=True)
    ]
    return fly(setting.medium, releases)


if __name__ == "__main__":
    landed = flight()
    assert all(drop.surface is not None for drop in landed)
    print(resource.getrusage(resource.RUSAGE_SELF).ru_maxrss * 1024)
