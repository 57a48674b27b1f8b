"""The same body, place and velocity under plain gravity: what the motion would be on ordinary ground.

The ground is flat, gravity is that of the deck at the release, the air has the deck's density and is at rest. Its
(along, height, axial) are read as a place of the habitat, so that it is drawn rolled onto the curved deck.
"""

from dataclasses import dataclass

import numpy as np

from ..physics.budget import spend
from .journey import ON_THE_GROUND, Journey
from .plan import Plan
from .setting import Setting
from .track import grid_span, grid_times
from .trajectory import of_legs

_SAMPLE_BYTES = 48  # of memory: two places


@dataclass(frozen=True)
class FlatGravityReference:
    """first and count of its grid samples; places_m and rotating_m (count, 3); ends_s, and last_m (3,), its place then; landing as a
    dict, or None."""

    first: int
    count: int
    places_m: np.ndarray
    rotating_m: np.ndarray
    ends_s: float
    landing: dict | None
    last_m: np.ndarray


def of_journey(setting: Setting, plan: Plan, journey: Journey, until_s: float) -> FlatGravityReference:
    """The reference to a motion whose Journey over flat ground is known; what only rolls is shown until until_s."""
    path = of_legs(journey.legs)
    end_s = path.end_s if plan.surface is None else min(path.end_s, until_s)
    first, count = grid_span(setting.rate, path.begin_s, end_s)
    spend(bytes=_SAMPLE_BYTES * count)
    times = np.clip(grid_times(setting.rate, first, count), path.begin_s, end_s)
    read = path.at(np.append(times, end_s))[0]
    places, last = read[:-1], read[-1]
    met = next((h for h in journey.events if h.kind in ON_THE_GROUND and h.time_s <= end_s), None)
    landing = None if met is None else _landing(plan, met.position_m, met.velocity_m_s, met.time_s)
    drawn = setting.habitat.chart(plan.floor).flat(np.array(plan.place), places)
    return FlatGravityReference(first, count, places, drawn, end_s, landing, last)


def _landing(plan, place, velocity, time_s):
    speed = float(np.linalg.norm(velocity))
    incidence = float(np.degrees(np.arccos(np.clip(-velocity[1] / speed, -1.0, 1.0)))) if speed else None
    return {
        "time_s": float(time_s),
        "along_m": float(place[0]),
        "axial_m": float(place[2]),
        "drift_m": float(place[0] - plan.place[0]),
        "speed_m_s": speed,
        "incidence_deg": incidence,
    }
