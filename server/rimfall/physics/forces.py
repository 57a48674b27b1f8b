"""The acceleration of many bodies in air that turns, in the inertial frame, for `integrate.py`. Arrays are (3, N) inside."""

from dataclasses import dataclass

import numpy as np

from . import buoyancy
from .air import Air
from .bodies import Bodies
from .drag import Drag
from .kept import told_once
from .magnus import MagnusLift
from .room import fresh
from .spin import Spin

_JUST_BEFORE = 1.0 - 1e-12  # of a time
_NO_SPEED = 1e-300  # m/s


@told_once
@dataclass(frozen=True)
class Medium:
    """The air, and how it turns.

    spin: of the habitat. air: None in vacuum. deck_radius_m: where the air has its stated pressure.
    """

    spin: Spin
    air: Air | None
    deck_radius_m: float


class Force:
    """Drag and lift of the turning air, and a pull, on N bodies whose elapsed time 0 is start_s (N,).

    turns (N,): 1 for a body whose room turns with the habitat, else 0. pull_m_s2 (3, N): a constant acceleration in the
    body's room, turning with it where that turns. air_turns (N,): 1 where the air turns too, 0 where it is still and of
    one density; as `turns` unless given. spin_rad_s (3, N): the bodies' own spin, inertial, constant; None for none, and
    no lift. Drag: `drag.py`, by the velocity relative to the air, which turns with the spin of that instant. Lift:
    `magnus.py`, by the spin less the air's. What is buoyant: `buoyancy.py`.
    """

    def __init__(self, medium: Medium, bodies: Bodies, start_s, turns, pull_m_s2, spin_rad_s=None, air_turns=None):
        self._medium, self._bodies, self._start_s = medium, bodies, start_s
        self._turns, self._pull = turns, pull_m_s2
        self._air_turns = turns if air_turns is None else air_turns
        self._any_pull = bool(pull_m_s2.any())
        self._turned_pull = self._any_pull and bool(pull_m_s2[:2, turns != 0].any())
        self._spin, self._lift, self._buoyancy = None, None, buoyancy.of_bodies(bodies, medium)
        if medium.air is not None:
            self._prepare(medium.air, spin_rad_s)

    def _prepare(self, air, spin_rad_s):
        """What does not change with time, worked out once."""
        self._drag = Drag(self._bodies, air)
        spin = self._medium.spin
        self._add_lift(spin, spin_rad_s)
        with np.errstate(divide="ignore"):  # the drag's scale is a factor in the exponent of the density
            self._in_exponent = np.log(self._drag.scale) if self._lift is None else 0.0
        self._steady = self._turning(spin.rates_rad_s[0]) if spin.steady else None

    def _add_lift(self, spin, spin_rad_s):
        """Lift, unless no ball spins in the air for all time."""
        if spin_rad_s is None:
            return
        lift = MagnusLift(self._bodies, spin_rad_s)
        self._lift = lift.with_steady(spin.rates_rad_s[0] * self._air_turns) if spin.steady else lift
        self._spin = None if self._lift is None else spin_rad_s

    @property
    def coasts(self):
        """Whether every body's inertial path is a parabola: no air, and no pull that the turning turns."""
        return self._medium.air is None and not (self._turned_pull and np.any(self._medium.spin.rates_rad_s))

    @property
    def jumps(self):
        """Whether the force jumps where the change of the spin does; at that instant it is still that of before."""
        return self._buoyancy is not None and not self._medium.spin.steady

    @property
    def pull_m_s2(self):
        """The pull (3, N), m/s2."""
        return self._pull

    def take(self, which):
        """The force on those of the index, mask or slice."""
        if isinstance(which, slice):
            return self._part(which)
        spin = None if self._spin is None else self._spin[:, which]
        each = (v[..., which] for v in (self._start_s, self._turns, self._pull))
        return Force(self._medium, self._bodies.take(which), *each, spin, self._air_turns[which])

    def _part(self, which):
        """The same of a slice, nothing worked out anew."""
        part = object.__new__(Force)
        part.__dict__.update(self.__dict__)
        part._bodies = self._bodies.take(which)
        for name in ("_start_s", "_turns", "_pull", "_air_turns", "_spin", "_in_exponent"):
            value = self.__dict__.get(name)
            setattr(part, name, value[..., which] if np.ndim(value) else value)
        for name in ("_drag", "_lift", "_buoyancy"):
            whole = self.__dict__.get(name)
            setattr(part, name, whole and whole.part(which))
        if self.__dict__.get("_steady") is not None:
            part._steady = tuple(figure[which] for figure in self._steady)
        return part

    def at(self, elapsed_s, position, velocity, slowing=None, room=fresh, out=None):
        """Acceleration (3, N), m/s2, at elapsed_s (a number or (N,)) of inertial position and velocity (3, N); or each at K instants:
        (K, N), (3, K, N). slowing: a `drag.Slowing` that is filled in, where given. room: where arrays come from
        (`room.py`), what is filled in among them. out: where it is written, the velocity itself perhaps; new memory where none is given."""
        if out is None or self._buoyancy is not None:  # what is buoyant goes by the velocity once more
            out = np.empty(position.shape)
        if self._medium.air is None:
            out[:] = 0.0
        else:
            self._add_drag_and_lift(elapsed_s, position, velocity, out, slowing, room)
        if self._buoyancy is not None:
            return self._borne(elapsed_s, position, velocity, out, slowing)
        if self._any_pull:
            self._add_pull(elapsed_s, out)
        return out

    def _borne(self, elapsed_s, position, velocity, forced, slowing):
        """Acceleration (3, N) of what drag and lift give `forced` (3, N), the air's own pressure and the pull added; the rates at which drag
        slows, where given, are those of the mass that is moved."""
        spin = self._medium.spin
        pull = np.zeros_like(position)
        self._add_pull(elapsed_s, pull)
        omega = spin.rate_rad_s(self._start_s + elapsed_s) * self._air_turns
        change = spin.change_rad_s2(self._start_s + _JUST_BEFORE * elapsed_s) * self._air_turns
        through = velocity.copy()
        through[0] += omega * position[1]
        through[1] -= omega * position[0]
        return self._buoyancy.at(forced, pull, (omega, change), position, through, slowing)

    def _turning(self, rate_rad_s):
        """Spin (N,), and what it does to the air: the exponent of its density is share (rho^2 - R^2)."""
        omega = rate_rad_s * self._air_turns
        share = omega * omega * self._medium.air.thinning_s2_m2
        return omega, -omega, share, self._in_exponent - share * self._medium.deck_radius_m**2

    def _add_drag_and_lift(self, elapsed_s, position, velocity, wind, slowing, room):
        """Fill in the acceleration: first the air's velocity past each body, then what it does."""
        turning = self._steady
        if self._medium.spin.tumbles:
            self._add_tumbling_drag(elapsed_s, position, velocity, wind, slowing)
            return
        if turning is None:
            turning = self._turning(self._medium.spin.rate_rad_s(self._start_s + elapsed_s))
        omega, back, share, offset = turning
        x, y = position[0], position[1]
        speed, thin, aside = squares = room("work", wind.shape)
        np.subtract(np.multiply(y, back, out=aside), velocity[0], out=wind[0])
        np.subtract(np.multiply(x, omega, out=aside), velocity[1], out=wind[1])
        np.negative(velocity[2], out=wind[2])
        np.multiply(wind, wind, out=squares)
        speed += thin
        speed += aside
        np.sqrt(speed, out=speed)
        if slowing is not None:
            np.maximum(speed, _NO_SPEED, out=aside)
            slowing.way = np.divide(wind, aside, out=room("way", wind.shape, slowing.kind))
        # Density over the deck's, carried on smoothly past the hull, where a step may end.
        np.multiply(x, x, out=thin)
        thin += np.multiply(y, y, out=aside)
        thin *= share
        thin += offset
        np.exp(thin, out=thin)
        lift = None
        if self._lift is not None:
            lift = self._lift.at(omega, wind, speed)
            lift *= self._medium.air.deck_density_kg_m3 * thin
            speed *= self._drag.scale
        speed *= thin
        rate = self._drag.rate_1_s(speed)
        wind *= rate
        if lift is not None:
            wind += lift
        if slowing is not None:
            slowing.across_1_s, slowing.along_1_s = rate, self._drag.along_1_s(rate)

    def _add_tumbling_drag(self, elapsed_s, position, velocity, wind, slowing):
        """The same of air whose axis moves: it turns with the craft, and is of one density all through."""
        time_s = self._start_s + elapsed_s
        carried = np.moveaxis(self._medium.spin.carries(time_s, np.moveaxis(position, 0, -1)), -1, 0)
        wind[:] = np.where(self._air_turns != 0, carried, 0.0) - velocity
        speed = np.sqrt(np.sum(wind * wind, axis=0))
        rate = self._drag.rate_1_s(self._drag.scale * speed)
        if slowing is not None:
            slowing.way = wind / np.maximum(speed, _NO_SPEED)
            slowing.across_1_s, slowing.along_1_s = rate, self._drag.along_1_s(rate)
        wind *= rate

    def _add_pull(self, elapsed_s, out):
        if not self._turned_pull:
            out += self._pull.reshape(3, *(1,) * (out.ndim - 2), -1)
            return
        px, py, pz = self._pull
        angle = self._medium.spin.angle_rad(self._start_s + elapsed_s) * self._turns
        c, s = np.cos(angle), np.sin(angle)
        out[0] += c * px - s * py
        out[1] += s * px + c * py
        out[2] += pz


def settling_rates_1_s(medium, bodies: Bodies, pull_m_s2):
    """`Drag.settling_rate_1_s` (N,) under the spin's gravity at the deck and a pull (N,), m/s2; 0 in vacuum."""
    if medium.air is None:
        return np.zeros(len(bodies.mass_kg))
    gravity = float(np.max(medium.spin.rates_rad_s**2)) * medium.deck_radius_m + pull_m_s2
    return Drag(bodies, medium.air).settling_rate_1_s(gravity)
