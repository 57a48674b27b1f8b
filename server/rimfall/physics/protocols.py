"""What the parts of the physics ask of one another: surfaces, charts of places, laws of a line and of the ground, steppers.

Arrays are (3, N) here, a component in a row, and of type float; (N,) is a figure a body. Units are SI.
"""

from typing import Protocol, Self

import numpy as np

from .integrate import Step

Array = np.ndarray
Vector = tuple[float, float, float] | np.ndarray


class Surface(Protocol):
    """What a body meets; the gap is that of its own surface (`surfaces.py`)."""

    @property
    def edge(self) -> bool:
        """Whether it bounds the room and is no thing: passed by a body's centre."""
        ...

    @property
    def flat(self) -> bool:
        """Whether it is a plane."""
        ...

    @property
    def turned(self) -> bool:
        """Whether it turns with the habitat and looks different for it."""
        ...

    def gap(self, position: Array, body_radius_m: Array | float, /) -> Array:
        """Gaps (N,) of centres (3, N), metres."""
        ...

    def gap_rates(self, position: Array, velocity: Array, acceleration: Array, /) -> tuple[Array, Array]:
        """How gaps change (N,), m/s, and how that does, m/s2."""
        ...

    def gap_control(self, position: Array, control: Array, body_radius_m: Array, /) -> Array:
        """Bernstein coefficients (m + 1, N) of the gap along paths position + control (n + 1, 3, N)."""
        ...

    def near(self, position: Array, control: Array, body_radius_m: Array, /) -> Array:
        """Whether (N,) each path could meet it."""
        ...

    def normal(self, position: Array, /) -> Array:
        """Unit normals into the room at centres."""
        ...

    def normal_rate(self, position: Array, velocity: Array, /) -> Array:
        """How fast the normal changes along motions of the centre, 1/s."""
        ...

    def name_at(self, position: Array, /) -> str:
        """The name of the part at a centre (3,)."""
        ...


class Chart(Protocol):
    """What a place (along, height, axial) means on one kind of ground (`coordinates.py`). Positions are (..., 3)."""

    @property
    def winds(self) -> bool:
        """Whether along goes round the axis."""
        ...

    @property
    def bends(self) -> bool:
        """Whether up turns with it."""
        ...

    def position(self, place: Vector, /) -> Array:
        """Places (..., 3) -> positions (..., 3) in the rotating frame."""
        ...

    def axes(self, position: Array, /) -> Array:
        """Rows spinward, up, axial (..., 3, 3) at positions."""
        ...

    def axes_at(self, place: Vector, /) -> Array:
        """The same (3, 3) at one place, also on the axis."""
        ...

    def height(self, position: Array, /) -> Array:
        """Heights (...), metres."""
        ...

    def axial(self, position: Array, /) -> Array:
        """Third figures (...) of places, metres."""
        ...

    def level(self, height_m: float, /) -> Surface:
        """The surface of all places at a height."""
        ...

    def flat(self, start: Vector, places: Array, /) -> Array:
        """Positions (n, 3) of places over flat ground, laid on this ground from the place `start` on."""
        ...


class Law(Protocol):
    """What moves bodies that are held to something, in the turning frame: to a surface (`rolling.py`), to a line (`pendulum.py`).

    rate: the frame's rate and its change, numbers or (N,).
    """

    def take(self, which: Array, /) -> Self:
        """The law of those of an index or mask."""
        ...

    def at(self, rate: tuple[Array | float, Array | float], position: Array, velocity: Array, /) -> tuple[Array, Array]:
        """Accelerations (D, N), and what is watched (..., N): above 0 while the law holds."""
        ...


class Stepper(Protocol):
    """What takes bodies through the air, a step at a time (`integrate.py`, `stiff.py`)."""

    @property
    def done(self) -> bool | Array:
        """Whether the limit is reached, of all or of each (N,)."""
        ...

    def step(self) -> Step:
        """The next step of all."""
        ...

    def keep(self, mask: Array, /) -> None:
        """Go on with the bodies of the mask (N,) only."""
        ...
