"""What every file holds, before any format: all things of a trace at every frame, in one view, in the file's axes.

Axes: the rows of `to_file` are the local directions at the origin's place as the file names them; with the origin on the axis
they are those of the reference line, X spinward, Y up and Z along the spin vector, (X, Y, Z) = (y, -x, z) of the rotating
frame, or with Z up (y, -z, -x). On a turntable up is along the spin vector. Lengths are metres; a writer that is asked for
centimetres multiplies by `per_unit`. Times and velocities are the scene's; a writer whose format has a clock of its own
(slow motion, a retime curve) writes `shown_s`, velocities times `pace`, and accelerations times pace squared with velocities times the
pace's own rate of change. Times never fall; a curve may hold them.

Things of the view "rotating" and "inertial" are in the habitat's space (the second's habitat node turns by `angle_rad` about
`axis` through `pivot_m`); those of "inertial_flat" are in the space that does not turn, and belong under the root; meshes
and cameras that ride are always in the habitat's space.
"""

from collections.abc import Callable
from dataclasses import dataclass

import numpy as np

from .clock import Clock
from .options import Options
from .solids import Solid


@dataclass(frozen=True)
class BodyKeys:
    """Where a body is at every frame and at each of its events between them, K instants: frame, time_s, shown_s (K,) as in a Clock;
    position_m (K, 3); alive (K,) bool. Straight lines between them meet a floor where the body does."""

    frame: np.ndarray
    time_s: np.ndarray
    shown_s: np.ndarray
    position_m: np.ndarray
    alive: np.ndarray


@dataclass(frozen=True)
class BodySamples:
    """One body. id: its number in order of birth; name: unique in the file, made of letters, digits and _; motion: its place in the
    scene's list; radius_m: 0 for a point. position_m, velocity_m_s, acceleration_m_s2 (T, 3); alive (T,) bool; keys: the same places
    with the events between frames. attitude: times (n,) of the scene -> unit quaternions (n, 4), w first, in the file's axes; None
    where it does not turn. solid: what it looks like, about its place."""

    id: int
    name: str
    motion: int
    radius_m: float
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    acceleration_m_s2: np.ndarray
    alive: np.ndarray
    keys: BodyKeys
    attitude: Callable | None
    solid: Solid


@dataclass(frozen=True)
class Drops:
    """All drops of all pours, N of them. ids (N,) int, in order of birth; names; motion (N,) int; diameter_m (N,);
    position_m, velocity_m_s, acceleration_m_s2 (T, N, 3); alive (T, N) bool."""

    ids: np.ndarray
    names: list
    motion: np.ndarray
    diameter_m: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray
    acceleration_m_s2: np.ndarray
    alive: np.ndarray


@dataclass(frozen=True)
class FlyingDrops:
    """The same while they are there alone, M instants in all, in order of time and of ids: sample and drop (M,), numbers of the frame's
    sample and of the drop among the N; position_m, velocity_m_s (M, 3)."""

    ids: np.ndarray
    names: list
    motion: np.ndarray
    diameter_m: np.ndarray
    sample: np.ndarray
    drop: np.ndarray
    position_m: np.ndarray
    velocity_m_s: np.ndarray


@dataclass(frozen=True)
class StreamSamples:
    """The unbroken part of a pour as a curve: position_m (T, M, 3) from the lip on; width_m (T, M), 0 while none flows."""

    name: str
    motion: int
    position_m: np.ndarray
    width_m: np.ndarray


@dataclass(frozen=True)
class DrawnPath:
    """A drawn path: position_m (P, 3), its samples and events in order of time."""

    name: str
    motion: int
    position_m: np.ndarray


@dataclass(frozen=True)
class ColouredMesh:
    """A part of the habitat; material: what it is of ("deck").
    position_m (V, 3); faces (F, 3) of vertex numbers, anticlockwise seen from the side that shows;
    normal (V, 3) unit; both_sides: it has no inside; colour (3,) linear RGB of 0 to 1."""

    name: str
    position_m: np.ndarray
    faces: np.ndarray
    normal: np.ndarray
    both_sides: bool
    colour: tuple
    material: str


@dataclass(frozen=True)
class PropSamples:
    """What stands by a motion or goes with it, in the habitat's space: a Solid in the file's axes, of a material ("wood") and a linear
    colour (3,). position_m (T, 3) and turn (T, 4), unit quaternions, w first, of one that moves; None of one that stands."""

    name: str
    material: str
    colour: tuple
    solid: Solid
    position_m: np.ndarray | None
    turn: np.ndarray | None


@dataclass(frozen=True)
class Camera:
    """A vantage. rides: it is in the habitat's space, else in that of the root. position_m (K, 3) and axes (K, 3, 3), rows
    right, up and back in the file's axes; K is 1, or T where it follows something. fov_deg: vertical, one or (T,); aspect: width to height;
    near_m: from where on it sees, past a wall that would hide what moves, or None."""

    name: str
    rides: bool
    position_m: np.ndarray
    axes: np.ndarray
    fov_deg: float | np.ndarray
    aspect: float
    near_m: float | None = None


@dataclass(frozen=True)
class SampledScene:
    """clock: frame, time_s, shown_s and pace (T,), which are here by their own names too. angle_rad, spin_rad_s,
    spin_change_rad_s2 (T,): the habitat's.
    to_file (3, 3), pivot_m (3,) and axis (3,) are in the docstring above. anchor_m (3,): what a writer of 32-bit numbers takes from
    positions and puts on a node over them; zero within 1 km. per_unit: file units in a metre. notes: what the file says of itself.
    attitude: of a habitat that tumbles about pivot_m, times (n,) of the scene -> unit quaternions (n, 4), w first, in the file's axes; None
    of one that turns about `axis`. vectors: its rates and their changes (T, 3) in the file's axes, None likewise."""

    options: Options
    clock: Clock
    angle_rad: np.ndarray
    spin_rad_s: np.ndarray
    spin_change_rad_s2: np.ndarray
    to_file: np.ndarray
    pivot_m: np.ndarray
    axis: np.ndarray
    anchor_m: np.ndarray
    per_unit: float
    balls: list
    drops: Drops | FlyingDrops | None
    streams: list
    lines: list
    meshes: list
    props: list
    cameras: list
    notes: dict
    attitude: Callable | None = None
    vectors: tuple | None = None

    @property
    def turning_rad_s(self):
        """How the habitat turns, and how that changes, as vectors (T, 3) of the file's axes."""
        if self.vectors is not None:
            return self.vectors
        return self.spin_rad_s[:, None] * self.axis, self.spin_change_rad_s2[:, None] * self.axis

    @property
    def frame(self):
        return self.clock.frame

    @property
    def time_s(self):
        return self.clock.time_s

    @property
    def shown_s(self):
        return self.clock.shown_s

    @property
    def pace(self):
        return self.clock.pace
