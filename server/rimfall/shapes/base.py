"""What every habitat shape gives: the protocol, the words for its ground, and what most of them share.

A shape is two classes in one module: its fields in a document (a `TurningPart` of `part.py`), which make a habitat with `habitat()`;
and that habitat, a `Shape`, which all else is asked of. A place is (along, height, axial); what each means is its chart's.
"""

import math
from collections.abc import Iterable
from dataclasses import dataclass
from typing import Any, Protocol

import numpy as np

from ..language import tr_later, tr_later_as
from ..phrases import ALONG_THE_AXIS, OUTWARD
from ..physics import frames
from ..physics.coordinates import RoundChart
from ..physics.spin import Spin

TURNS = 48  # points of an outline round the axis


@dataclass(frozen=True)
class Ground:
    """What is stood on. name: for people; surface: its name as a surface; along: along what places are counted; across: the two
    ways of the third figure of a place, above and below 0; side: which way that points; level: it lies across the axis."""

    name: str
    surface: str
    along: str
    across: tuple[str, str]
    side: str
    level: bool = False


DECK = Ground(
    tr_later_as("what is stood on", "deck"),
    "deck",
    tr_later("along the deck"),
    ALONG_THE_AXIS,
    tr_later("along the spin vector"),
)
FLOOR = Ground(
    tr_later_as("what is stood on", "floor"),
    "floor",
    tr_later("along the floor"),
    ALONG_THE_AXIS,
    tr_later("along the spin vector"),
)
TURNTABLE = Ground(
    tr_later_as("what is stood on", "turntable"),
    "floor",
    tr_later("round the turntable, measured at its edge"),
    OUTWARD,
    tr_later("outward"),
    level=True,
)


@dataclass(frozen=True)
class Words:
    """A shape for people. label: its name; thing: what it is, {radius} its radius; whole: the name of a picture of all of it; weighed:
    where its weight is told; fades: how that changes; stands: where somebody stands; passes: why what is let go does not land."""

    label: str
    thing: str
    whole: str = tr_later("Whole wheel")
    weighed: str = tr_later("floor")
    fades: str = tr_later("Nearer to the axis there is less of it.")
    stands: str = tr_later("in the middle of the first floor")
    passes: str = tr_later("it falls past the end of the deck")


@dataclass(frozen=True)
class RoundHull:
    """The outside of a hull that is round all the way: which of x, y, z count for the distance from its middle (1 or 0 each), and
    how far it goes along the axis to either side, metres."""

    counts: tuple[float, float, float]
    half_width_m: float = math.inf


class Shape(Protocol):
    """A habitat. A floor is the number of the flat floor that is meant, 0 where there is one ground.

    radius_m: of the ground; spin: how it turns; still_air: the air does not turn with it; floors: its flat floors, none where the
    ground is one piece; words_of_ground; section_radius_m: of the circle in which a plane through the axis cuts the ground, None where
    that is straight; floats_share: of the ground's own speed, walked antispinward, at which nothing presses the feet on, None where
    there is no such speed; in_space: there is an outside to be in.
    """

    radius_m: float
    spin: Spin
    still_air: bool
    floors: tuple
    words_of_ground: Ground
    section_radius_m: float | None
    floats_share: float | None
    in_space: bool

    @property
    def pull_m_s2(self) -> tuple[float, float, float]:
        """What pulls at everything aboard, in the turning frame."""
        ...

    @property
    def hub_m(self) -> float:
        """Radius of the column round the axis, 0 where there is none."""
        ...

    def surfaces(self, floor: int = 0) -> tuple:
        """What a body inside can meet (`physics/surfaces.py`)."""
        ...

    def ground(self, floor: int = 0) -> Any:
        """The surface that a ball rolls on."""
        ...

    def chart(self, floor: int = 0) -> Any:
        """What a place means (`physics/coordinates.py`)."""
        ...

    def ground_height_m(self, axial_m: float) -> float:
        """Height of the ground at axial_m."""
        ...

    def ground_gravity_m_s2(self, omega_rad_s: float, axial_m: float = 0.0, floor: int = 0) -> float:
        """Apparent gravity on the ground at axial_m."""
        ...

    def across_m(self, floor: int = 0) -> float:
        """Radius of the circle that holds the room of air."""
        ...

    def headroom_m(self) -> float:
        """Height over the ground that is free."""
        ...

    def sides(self, floor: int, half_m: float) -> tuple:
        """Where the centre of a body of radius half_m may be: the least and the greatest third figure of its place, and a function
        from that figure's size to the least and the greatest height."""
        ...

    def half_length_m(self, floor: int) -> float:
        """How far a floor goes along to either side; infinite where it goes round."""
        ...

    def hull_half_width_m(self, floor: int) -> float:
        """How far the hull goes along the axis to either side."""
        ...

    def ground_radius_m(self, floor: int) -> float:
        """From the axis to the middle of a floor."""
        ...

    @property
    def round_hull(self) -> RoundHull | None:
        """Its outside, where that is round all the way."""
        ...

    def outline_m(self) -> np.ndarray:
        """Points (n, 3) that a picture of the whole must hold, turning frame."""
        ...

    def meshes(self) -> list:
        """Its parts for files, as `mesh.Mesh`, the arrow that points spinward last."""
        ...

    def parts(self) -> Iterable[dict]:
        """Its parts as the page draws them (`drawn.py`)."""
        ...

    def walked_half_m(self) -> float | None:
        """Half of what can be walked on across, None where it is as wide as can be seen."""
        ...

    def ended(self) -> "Shape | None":
        """The same habitat with ends, where it has none: as it is drawn when what goes on outside must be seen past it."""
        ...


@dataclass(frozen=True)
class Turning:
    """What turns about its axis, with a ground at radius_m; how it turns. Most shapes have no floors, no hub and no round hull."""

    radius_m: float
    spin: Spin
    floors = ()
    section_radius_m = None
    hub_m = 0.0
    round_hull = None

    def across_m(self, _floor=0):
        """Radius of the circle that holds the room."""
        return self.radius_m

    def ground_height_m(self, _axial_m) -> float:
        """Height of the ground: none, where its section is straight."""
        return 0.0

    def half_length_m(self, _floor):
        """It goes round."""
        return math.inf

    def ground_radius_m(self, _floor):
        """From the axis to the ground; of what lies across it, to its rim."""
        return self.radius_m

    def ended(self):
        """It has ends."""
        return


@dataclass(frozen=True)
class Ship(Turning):
    """A habitat in space whose ground goes round the axis; axial_thrust_m_s2: its own acceleration along +z."""

    axial_thrust_m_s2: float = 0.0
    still_air = False
    words_of_ground = DECK
    floats_share = 1.0
    in_space = True

    @property
    def pull_m_s2(self):
        """What pulls at everything aboard, in the turning frame: the thrust, felt backward."""
        return 0.0, 0.0, -self.axial_thrust_m_s2

    def chart(self, _floor=0):
        """What a place means."""
        return RoundChart(self.radius_m)

    def ground_gravity_m_s2(self, omega_rad_s, axial_m=0.0, _floor=0):
        """Apparent gravity on the ground at axial_m, away from the axis."""
        return omega_rad_s**2 * (self.radius_m - self.ground_height_m(axial_m))


def rings(corners):
    """Points (n * TURNS, 3) of circles round the axis, given as (rho, z)."""
    ring = np.array([(rho, 0.0, z) for rho, z in corners])
    return frames.turn(ring[:, None], np.linspace(0.0, 2 * np.pi, TURNS, endpoint=False)).reshape(-1, 3)
