"""Where throws come down: those of a grid of two of speed, heading and elevation, each flown as `trace` flies it until it first meets
something. Arrays (N,) are row-major: the first figure that varies is the slow one."""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from ..motions.journey import ON_THE_GROUND
from ..motions.plan import Plan
from ..motions.ways import Ways
from .throws import OPEN, Thrower, aimed, ended

FIGURES = ("speed_m_s", "heading_deg", "elevation_deg")
LANDED, CEILING, HUB, WALL, NEVER, EDGE = ENDINGS = (
    "landed",
    "ceiling",
    "hub",
    "wall",
    "never",
    "edge",
)  # edge: of a flat floor
GREATEST_THROWS = 40_000
_MET = {**dict.fromkeys(ON_THE_GROUND, LANDED), **{name: name for name in (CEILING, HUB, WALL, EDGE)}, OPEN: NEVER}
_TOUCH = 1e-6  # gap, metres and share of the radius, at which a thing touches a surface


@dataclass(frozen=True)
class Varied:
    """One figure of a throw, of FIGURES, and its values, evenly spaced."""

    field: str
    values: np.ndarray


@dataclass(frozen=True)
class Landings:
    """What becomes of N throws. over: the two figures that vary, of rows and of columns; figures: all three of every throw, (N,) each, by
    name; ended (N,): index into ENDINGS. At the end: time_s, of the scene; place_m (N, 3) of the body's centre, its along not wrapped;
    turns, spinward_m, across_m and round_m (None where the ground does not go round): how far from the release, as `motions.ways`
    counts; speed_m_s aboard; incidence_deg, from the normal of what is met, 0 where nothing is."""

    over: tuple[Varied, Varied]
    figures: dict[str, np.ndarray]
    start_s: float
    ended: np.ndarray
    time_s: np.ndarray
    place_m: np.ndarray
    turns: np.ndarray
    spinward_m: np.ndarray
    across_m: np.ndarray
    round_m: np.ndarray | None
    speed_m_s: np.ndarray
    incidence_deg: np.ndarray

    @property
    def shape(self) -> tuple[int, int]:
        """Rows and columns."""
        return len(self.over[0].values), len(self.over[1].values)

    @property
    def landed(self) -> np.ndarray:
        """Which throws (N,) come down on the ground."""
        return self.ended == 0

    @property
    def in_all_m(self) -> np.ndarray:
        """All the way along the ground (N,), whole turns included."""
        return self.spinward_m if self.round_m is None else self.spinward_m + self.turns * self.round_m

    def count(self, ending: str) -> int:
        """How many ended so."""
        return int(np.count_nonzero(self.ended == ENDINGS.index(ending)))


def landings_of(
    thrower: Thrower,
    plan: Plan,
    over: tuple[Varied, Varied],
    own: dict[str, float],
    watch: Callable[[int], None] | None = None,
) -> Landings:
    """Landings of throws over two figures; own: the third, by name; plan: of any such throw of the thrower. watch(done) is told how many
    have ended; what it raises stops the work."""
    rows, columns = np.meshgrid(over[0].values, over[1].values, indexing="ij")
    figures = {over[0].field: rows.ravel(), over[1].field: columns.ravel()}
    figures |= {name: np.full(rows.size, value) for name, value in own.items()}
    throws = ended(thrower, aimed(*(figures[name] for name in FIGURES)), watch)
    habitat = thrower.setting.habitat
    chart = habitat.chart(thrower.floor)
    position = throws.rotating_m
    ways = Ways(habitat, plan).figures(thrower.place, throws.along_m - thrower.place[0], position)
    return Landings(
        over,
        figures,
        thrower.hand.time_s,
        np.array([ENDINGS.index(_MET[name]) for name in throws.met.tolist()]),
        throws.time_s,
        np.stack([throws.along_m, chart.height(position), chart.axial(position)], axis=1),
        *ways,
        np.linalg.norm(throws.rotating_velocity_m_s, axis=1),
        _incidence_deg(thrower, throws),
    )


def _incidence_deg(thrower, throws):
    """Angle (N,) between each motion and the normal of the surface that it meets."""
    habitat, body_m = thrower.setting.habitat, thrower.hand.body.radius_m
    position, velocity = throws.rotating_m.T, throws.rotating_velocity_m_s.T
    speed, into = np.linalg.norm(velocity, axis=0), np.zeros(len(throws.met))
    free = (throws.met != OPEN) & (speed > 0)
    for surface in thrower.hand.room.surfaces:
        touches = free & (
            np.abs(surface.gap(position, np.full(len(into), body_m))) <= _TOUCH * (1.0 + habitat.radius_m)
        )
        normal = surface.normal(position[:, touches])
        into[touches] = -np.einsum("kn,kn->n", velocity[:, touches], normal) / speed[touches]
        free &= ~touches
    met = (throws.met != OPEN) & (speed > 0) & ~free
    return np.where(met, np.degrees(np.arccos(np.clip(into, -1.0, 1.0))), 0.0)
