"""What a motion asks to be flown, before anything flies, so that all motions of a scene fly in one batch."""

from dataclasses import dataclass

from ..physics.bodies import Body
from .flight import Flown, Release


@dataclass(frozen=True)
class Course:
    """One way to fly: an opening already known (a stream), or None, and a release still to fly, or None."""

    opening: Flown | None
    release: Release | None


@dataclass(frozen=True)
class Stream:
    """A pour, as it leaves the lip and breaks; lengths in metres, times in seconds of the scene.

    regime: "stream" or "drips". breakup_s and breakup_m (along the stream): None where it lands whole or drips.
    drop_diameter_m, drop_interval_s: None where no drop forms.
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


@dataclass(frozen=True)
class Plan:
    """A motion's own course, its companion's under plain gravity (or why there is none), and what the words need.

    start_s and place (along, height, axial): of the release. velocity (spinward, up, axial), relative to the frame there.
    """

    start_s: float
    place: tuple
    velocity: tuple
    body: Body
    course: Course
    companion: Course | None
    none_because: str | None
    stream: Stream | None = None
