"""The fields that habitats share as a document: radius, spin and how it changes; of those in space, thrust, named levels, a hub."""

from functools import lru_cache
from typing import ClassVar

from ..fields import Strict, choice, linear, listed, log, number, text
from ..language import tr, tr_later, written
from ..physics.constants import RPM_RAD_S
from ..physics.spin import ramped
from .base import DECK, Ground, Words

LEAST_RADIUS_M, GREATEST_RADIUS_M = 0.1, 100_000
GREATEST_SPIN_RPM = 200
GREATEST_RIM_SPEED_M_S = 5_000.0  # of whatever turns farthest from the axis
_LEAST_RPM = 1e-12


class RampPoint(Strict):
    """The spin at a time after the start."""

    time_s: float = number(tr_later("Time"), "s", 0, 4200, above=True)
    spin_rpm: float = number(tr_later("Spin"), "rpm", 0, GREATEST_SPIN_RPM)


class Deck(Strict):
    """A named level, for figures and the page; not a surface."""

    name: str = text(tr_later("Deck"), 60, min_length=1)
    radius_m: float = number(tr_later("Deck radius"), "m", 0, GREATEST_RADIUS_M, above=True)


class TurningPart(Strict):
    """The fields of every habitat. WORDS: its shape for people; GROUND: what is stood on; NEW: its own fields where the page makes
    one afresh."""

    WORDS: ClassVar[Words]
    GROUND: ClassVar[Ground] = DECK
    NEW: ClassVar[dict] = {}

    radius_m: float = number(tr_later("Radius"), "m", LEAST_RADIUS_M, GREATEST_RADIUS_M, shown=log(2, 10_000))
    spin_rpm: float = number(
        tr_later("Spin"), "rpm", 0, GREATEST_SPIN_RPM, shown={"min": 0, "max": 30, "scale": "fine_low"}
    )
    spin_ramp: list[RampPoint] = listed(tr_later("Spin ramp"), 100, [])

    @property
    def spin(self):
        """How it turns: a `Spin`."""
        return _ramped(self.spin_rpm, tuple((p.time_s, p.spin_rpm) for p in self.spin_ramp))

    @property
    def grounds(self):
        """How many grounds there are to be on."""
        return 1

    @property
    def farthest_m(self):
        """The greatest radius at which anything turns."""
        return self.radius_m

    def resized(self, radius_m):
        """The same at another radius."""
        return self.model_copy(update={"radius_m": radius_m})

    def clashes(self):
        """Fields that do not go together: (field, what it was, what it may be)."""
        return ()


class ShipPart(TurningPart):
    """A habitat in space, which may be under thrust; named levels are for figures."""

    axial_thrust_m_s2: float = number(tr_later("Thrust along the axis"), "m/s²", -100, 100, 0.0, shown=linear(-2, 2))
    decks: list[Deck] = listed(tr_later("Decks"), 20, [])

    @property
    def ship(self):
        """What a `Ship` begins with: radius, spin, thrust."""
        return self.radius_m, self.spin, self.axial_thrust_m_s2

    def resized(self, radius_m):
        """The same at another radius, each deck at its height over the ground; where the axis is nearer than that, at its share of the
        radius. The page does the same (static/state/decks.js)."""
        decks = [
            deck.model_copy(update={"radius_m": _moved_m(deck.radius_m, self.radius_m, radius_m)})
            for deck in self.decks
        ]
        return self.model_copy(update={"radius_m": radius_m, "decks": decks})


def _moved_m(deck_m, before_m, after_m):
    kept_m = after_m - (before_m - deck_m)
    if deck_m == before_m:
        kept_m = after_m
    elif kept_m <= 0:
        kept_m = deck_m * after_m / before_m
    return float(f"{kept_m:.12g}")


@lru_cache(maxsize=256)
def _ramped(spin_rpm, points):
    """The Spin of a rate in rpm and points (time_s, spin_rpm); asked for many times in one answer."""
    return ramped(spin_rad_s(spin_rpm), [(time_s, spin_rad_s(rpm)) for time_s, rpm in points])


def spin_rad_s(spin_rpm):
    """A spin in rad/s; one of less than a turn in two million years is none, for its inverse is no number."""
    return spin_rpm * RPM_RAD_S if abs(spin_rpm) >= _LEAST_RPM else 0.0


def shape_field(name):
    """The field that names a shape, `name` where it is left out."""
    return choice(tr_later("Shape"), default=name)


def hub_field():
    """The radius of a column round the axis."""
    return number(tr_later("Hub radius"), "m", 0.01, 100_000, None, shown=log(0.1, 100))


def hub_clashes(part):
    """A hub that is not inside the radius."""
    if (part.hub_radius_m or 0.0) >= part.radius_m:
        yield (
            "hub_radius_m",
            part.hub_radius_m,
            tr("0.01 to below the radius, {length}", length=f"{written(part.radius_m, 'g')} m"),
        )
