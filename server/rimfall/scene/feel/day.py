"""A day aboard, as the paragraphs about it need it: where it is, and its figures."""

import math
from dataclasses import dataclass

from ...comfort.grounds import on_the
from ...language import tr
from ...phrases import ALONG_THE_AXIS, speed
from ...physics.constants import G0_M_S2
from ...shapes import Shape
from ...shapes.base import Words
from .saying import Exact, Rounded

SLIGHT = 0.02  # of one's weight: too small to notice; our own choice
SLIGHT_G = 0.1  # of weight on Earth: more than that is noticed, however heavy one is; our own choice
SLIGHT_DEG = 1.0  # of lean: too small to notice; our own choice
WEIGHTLESS_G = 0.001  # below it nothing stays put by its weight; our own choice
_ALIKE = 0.02  # share by which two speeds differ that are taken for one; our own choice
_ALONG_DEG = 45.0  # of lean: more along the deck than onto it
_WALL_DEG = 89.5  # of lean: the floor is a wall


@dataclass(frozen=True)
class Day:
    """The habitat, and the words for its shape; the person of the scene; v: figures by name; units "si" or "us"; turns: the six
    `HeadTurn`s; say: how its figures are told, exactly or rounded (`saying.py`)."""

    habitat: Shape
    words: Words
    person: object
    v: dict
    units: str
    turns: tuple
    say: Exact | Rounded

    @property
    def radius_m(self):
        """From the axis to the ground."""
        return self.habitat.radius_m

    @property
    def thrust_m_s2(self):
        """The ship's own acceleration."""
        return -self.habitat.pull_m_s2[2] if self.habitat.in_space else 0.0

    @property
    def table(self):
        """Whether it is a turntable under the gravity of a room."""
        return self.habitat.words_of_ground.level

    @property
    def flat(self):
        """Whether the floor is flat and goes round the axis."""
        return bool(self.habitat.floors)

    @property
    def ground(self):
        """What is stood on."""
        return self.habitat.words_of_ground.name

    @property
    def stood_on(self):
        """The same after "on the", "from the", "level with the"."""
        return on_the(self.ground)

    @property
    def weightless(self):
        """Whether there is no weight worth the name."""
        return self.v["feet_g"] < WEIGHTLESS_G

    @property
    def wall(self):
        """Whether thrust alone pulls, along the deck."""
        return self.still and not self.table and not self.weightless and self._on_its_side

    @property
    def hidden(self):
        """Whether thrust along the deck all but hides the spin."""
        return not self.still and not self.table and not self.weightless and self._on_its_side

    @property
    def flung(self):
        """Whether a turntable flings outward whoever stands on it, and nothing else pulls."""
        return self.table and not self.weightless and self._on_its_side

    @property
    def _on_its_side(self):
        return (self.v["floor_lean_deg"] or 0.0) > _WALL_DEG

    @property
    def still(self):
        """Whether it does not turn."""
        return not self.v["spin_rpm"]

    @property
    def aft(self):
        """Which way the thrust draws what is loose."""
        return tr("back along the axis") if self.thrust_m_s2 > 0 else tr("along the axis")

    def aft_by(self, length_m):
        """So far that way."""
        return tr(ALONG_THE_AXIS[self.thrust_m_s2 > 0], length=self.say.length(length_m))

    def slight(self, felt_g):
        """Whether a push, or a change of weight, is too small to notice beside one's weight, and by itself."""
        return abs(felt_g) < min(SLIGHT * self.v["feet_g"], SLIGHT_G)

    def floating(self, pace_m_s):
        """Whether a pace against the spin is "at" the one at which the feet leave the floor, "past" it, or neither (None)."""
        floats = self.v["float_speed_m_s"]
        if floats is None:
            return None
        if abs(pace_m_s - floats) <= _ALIKE * floats or speed(pace_m_s, self.units) == speed(floats, self.units):
            return "at"
        return "past" if pace_m_s > floats else None

    def only_thrust(self, felt_g):
        """Whether a felt weight is the ship's thrust alone, which draws along the deck, and next to nothing presses on it."""
        along_g = abs(self.thrust_m_s2) / G0_M_S2
        pressing, standing = felt_g**2 - along_g**2, self.v["feet_g"] ** 2 - along_g**2
        return bool(along_g) and pressing <= SLIGHT**2 * max(standing, 0.0)

    def times_round(self, along_m):
        """How often round the habitat a way along its deck goes; 0 on flat ground."""
        return 0.0 if self.table or self.flat else abs(along_m) / (2 * math.pi * self.radius_m)

    def off(self, drift_m):
        """A drift along the ground: "0.14 m antispinward"."""
        length = self.say.length(abs(drift_m))
        return tr("{length} spinward", length=length) if drift_m > 0 else tr("{length} antispinward", length=length)

    def past_the_axis(self, up_m):
        """Whether a point so high over the feet is at the axis or beyond."""
        return not self.table and up_m >= self.radius_m


def day_of(scene, figures, units, say=Exact):
    """The Day of a Scene and its ComfortFigures."""
    part = scene.habitat
    return Day(part.habitat(), part.WORDS, scene.person, figures.values, units, figures.head_turns, say(units))


def tipped(day):
    """How the ship's thrust tips down, in a sentence; None without thrust."""
    lean = day.v["floor_lean_deg"]
    if lean is None:
        return None
    tips = tr("The ship's thrust tilts “down” by {angle}, {way}", angle=day.say.angle(lean), way=day.aft)
    if day.hidden:
        return tr("{tips}: it all but hides the spin, and the deck is nearly a wall.", tips=tips)
    if lean > _ALONG_DEG:
        return tr("{tips}: it pulls more along the deck than onto it.", tips=tips)
    if lean < SLIGHT_DEG:
        return tr("{tips}: too little to notice.", tips=tips)
    return tr("{tips}, and you stand leaning against it.", tips=tips)
