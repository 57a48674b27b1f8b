"""What a motion asks to be flown, before anything flies, so that all motions of a scene fly in one batch."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from ..physics import liquids
from ..physics.bodies import Body
from .journey import Start


@dataclass(frozen=True)
class LiquidStream:
    """A pour, as it leaves the lip and breaks; lengths in metres, times in seconds of the scene.

    regime: "stream" or "drips". breakup_s and breakup_m (along the stream): None where it lands whole or drips.
    drop_diameter_m, drop_interval_s: None where no drop forms; drop_count: how many there are, 0 for none. batch: a
    `kinds.pour.batch.Batch` where the parcels do not follow the first one's path, else None.
    """

    lip_m: float
    speed_m_s: float
    regime: str
    weber: float
    ohnesorge: float
    breakup_s: float | None
    breakup_m: float | None
    drop_diameter_m: float | None
    drop_interval_s: float | None
    first_leaves_s: float
    last_leaves_s: float
    drop_count: int = 0
    batch: Any = None

    def diameters_m(self, time_s: np.ndarray, speed_m_s: np.ndarray) -> np.ndarray:
        """Diameter (n,) of the stream, then of the drop, of the first parcel at times (n,) where its speed is speed_m_s (n,)."""
        thin = liquids.thinned_m(self.lip_m, self.speed_m_s, speed_m_s)
        if self.drop_diameter_m is None:
            return thin if self.regime == "stream" else np.full_like(thin, self.lip_m)
        born_s = self.first_leaves_s if self.breakup_s is None else self.breakup_s
        return np.where(time_s >= born_s, self.drop_diameter_m, thin)


@dataclass(frozen=True)
class Plan:
    """A motion's own start, that of its reference under plain gravity (or why there is none), and what the words need.

    start_s and place (along, height, axial) on floor number `floor`: of the release. velocity along the local directions,
    relative to the frame there. surface: name of what a ball lies on from the start, or None; ramp_m: its corners (4, 3), or None.
    findings: of (setting, plan, track) -> what this kind of motion tells beside its path, a dict of numbers, texts, arrays and dicts of
    such; None where it tells nothing more.
    """

    start_s: float
    place: tuple
    velocity: tuple
    body: Body
    course: Start
    flat_gravity: Start | None
    none_because: str | None
    stream: LiquidStream | None = None
    floor: int = 0
    surface: str | None = None
    ramp_m: np.ndarray | None = None
    findings: Callable | None = None
