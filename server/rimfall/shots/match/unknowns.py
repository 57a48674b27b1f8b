"""What is known of a path's habitat and release, what is sought, and the vector of what is sought.

Radius and spin are sought as gravity and spin, in which a wide habitat is nearly linear; a spin below 0 is the mirror habitat.
The release is that of the track's first instant.
"""

from dataclasses import dataclass, replace
from functools import cached_property

import numpy as np

from .flight import State

LEAST_RADIUS_M, GREATEST_RADIUS_M = 0.1, 100_000.0
GREATEST_SPIN_RAD_S = 200.0 * 2.0 * np.pi / 60.0
GREATEST_RIM_M_S = 5_000.0
LEAST_PACE, GREATEST_PACE = 1e-3, 1e3
GREATEST_SPEED_M_S = 3_000.0
_MOST_PLACE_M = 1e6
_LEAST_SPIN_RAD_S = 1e-9
_LEAST_GRAVITY_M_S2 = 1e-9


@dataclass(frozen=True)
class Known:
    """What is known, None for what is not. radius_m, omega_rad_s (above 0), gravity_m_s2; start (3,): along, height, axial; speed_m_s;
    medium: density over that of the flight's `Resistance`, 0 in vacuum; pace: seconds that pass in one of the track."""

    radius_m: float | None = None
    omega_rad_s: float | None = None
    gravity_m_s2: float | None = None
    start: tuple | None = None
    speed_m_s: float | None = None
    medium: float | None = 0.0
    pace: float | None = 1.0

    def but(self, **changes) -> "Known":
        """The same with other knowledge."""
        return replace(self, **changes)


@dataclass(frozen=True)
class Unknowns:
    """The vector of what is sought where so much is known. has_axial, has_deck: as of the sight; nominal_radius_m: what stands for a
    radius that cannot be seen; most_medium: the densest that is tried; mirrored: whether the habitat turns the other way."""

    known: Known
    has_axial: bool
    has_deck: bool
    nominal_radius_m: float
    least_radius_m: float
    most_medium: float = 1.0
    mirrored: bool = False

    @property
    def side(self):
        """1, or -1 in the mirror."""
        return -1.0 if self.mirrored else 1.0

    @cached_property
    def names(self):
        """Of the vector's members, in order."""
        k, names = self.known, []
        if not self.has_deck and k.radius_m is None:
            names += [] if k.omega_rad_s is not None else ["omega"]
        elif k.gravity_m_s2 is not None:
            names += [] if k.radius_m is not None or k.omega_rad_s is not None else ["omega"]
        else:
            names += ["gravity"] if k.radius_m is None and k.omega_rad_s is None else []
            names += ["omega"] if k.omega_rad_s is None else []
            names += ["log_radius"] if k.radius_m is None and k.omega_rad_s is not None else []
        if k.start is None:
            names += ["along", "height"] + (["axial"] if self.has_axial else [])
        if k.speed_m_s is None:
            names += ["spinward", "up"] + (["axially"] if self.has_axial else [])
        elif k.speed_m_s > 0:
            names += ["elevation"] + (["heading"] if self.has_axial else [])
        names += ["medium"] if k.medium is None else []
        names += ["log_pace"] if k.pace is None else []
        return tuple(names)

    @cached_property
    def _at(self):
        return {name: number for number, name in enumerate(self.names)}

    def _of(self, theta, name, otherwise):
        return theta[:, self._at[name]] if name in self._at else np.full(len(theta), float(otherwise))

    def state(self, theta) -> State:
        """The State of vectors (B, P)."""
        k = self.known
        radius, omega = self._habitat(theta)
        start = (0.0, 0.0, 0.0) if k.start is None else k.start
        place = np.stack([self._of(theta, n, v) for n, v in zip(("along", "height", "axial"), start, strict=True)], -1)
        medium = self._of(theta, "medium", k.medium or 0.0)
        pace = np.exp(self._of(theta, "log_pace", np.log(k.pace or 1.0)))
        return State(radius, omega, place, self._velocity(theta), medium, pace)

    def _habitat(self, theta):
        k, nothing = self.known, np.zeros(len(theta))
        omega = self._of(theta, "omega", 0.0 if k.omega_rad_s is None else self.side * k.omega_rad_s)
        if k.radius_m is not None or not self.has_deck:
            radius = nothing + (k.radius_m or self.nominal_radius_m)
            if k.gravity_m_s2 is not None and "omega" not in self._at and k.omega_rad_s is None:
                omega = nothing + self.side * np.sqrt(k.gravity_m_s2 / radius)
        elif "log_radius" in self._at:
            radius = np.exp(theta[:, self._at["log_radius"]])
        else:
            gravity = self._of(theta, "gravity", k.gravity_m_s2 or 0.0)
            radius = gravity / np.maximum(omega * omega, _LEAST_SPIN_RAD_S**2)
        return radius, omega

    def _velocity(self, theta):
        speed = self.known.speed_m_s
        if speed is None:
            return np.stack([self._of(theta, n, 0.0) for n in ("spinward", "up", "axially")], -1)
        if speed == 0.0:
            return np.zeros((len(theta), 3))
        up, about = self._of(theta, "elevation", 0.0), self._of(theta, "heading", 0.0)
        return speed * np.stack([np.cos(up) * np.cos(about), np.sin(up), np.cos(up) * np.sin(about)], -1)

    def theta(self, state: State):
        """The vectors (B, P) nearest to those of a State; what is known of it is left out."""
        v = state.velocity
        values = {
            "gravity": state.omega_rad_s**2 * state.radius_m,
            "omega": state.omega_rad_s,
            "log_radius": np.log(state.radius_m),
            "along": state.place[:, 0],
            "height": state.place[:, 1],
            "axial": state.place[:, 2],
            "spinward": v[:, 0],
            "up": v[:, 1],
            "axially": v[:, 2],
            "heading": np.arctan2(v[:, 2], v[:, 0]),
            "elevation": np.arctan2(v[:, 1], np.hypot(v[:, 0], v[:, 2]) if self.has_axial else v[:, 0]),
            "medium": state.medium,
            "log_pace": np.log(state.pace),
        }
        return np.stack([values[name] for name in self.names], -1) if self.names else np.zeros((len(v), 0))

    def _most_spin(self):
        radius = self.known.radius_m
        return GREATEST_SPIN_RAD_S if radius is None else min(GREATEST_SPIN_RAD_S, GREATEST_RIM_M_S / radius)

    def within(self, theta, in_air=False):
        """Vectors (B, P) moved into the ranges of the scene document; in_air: but a medium below 0, which no scene has and a fit may
        pass through, is left."""
        theta = theta.copy()
        if "omega" in self._at:
            omega = theta[:, self._at["omega"]] * self.side
            theta[:, self._at["omega"]] = self.side * np.clip(omega, 0.0, self._most_spin())
        low, high = self.least_radius_m, GREATEST_RADIUS_M
        gravity = self.known.gravity_m_s2
        if "gravity" in self._at:
            gravity = theta[:, self._at["gravity"]] = np.maximum(theta[:, self._at["gravity"]], _LEAST_GRAVITY_M_S2)
        if gravity is not None and "omega" in self._at:  # gravity stays as it is, the spin moves
            omega = np.abs(self._of(theta, "omega", 0.0))
            least = np.maximum(np.sqrt(gravity / high), gravity / GREATEST_RIM_M_S)
            omega = np.minimum(np.maximum(omega, least), np.minimum(np.sqrt(gravity / low), GREATEST_SPIN_RAD_S))
            theta[:, self._at["omega"]] = self.side * omega
        for name, most in (("along", _MOST_PLACE_M), ("axial", _MOST_PLACE_M), ("height", GREATEST_RADIUS_M)):
            if name in self._at:
                theta[:, self._at[name]] = np.clip(theta[:, self._at[name]], -most, most)
        for name in ("spinward", "up", "axially"):
            if name in self._at:
                number = self._at[name]
                theta[:, number] = np.clip(theta[:, number], -GREATEST_SPEED_M_S, GREATEST_SPEED_M_S)
        if "log_radius" in self._at:
            number = self._at["log_radius"]
            theta[:, number] = np.clip(theta[:, number], np.log(low), np.log(high))
        if "medium" in self._at and not in_air:
            theta[:, self._at["medium"]] = np.maximum(theta[:, self._at["medium"]], 0.0)
        if "medium" in self._at:
            theta[:, self._at["medium"]] = np.clip(theta[:, self._at["medium"]], -self.most_medium, self.most_medium)
        if "log_pace" in self._at:
            number = self._at["log_pace"]
            theta[:, number] = np.clip(theta[:, number], np.log(LEAST_PACE), np.log(GREATEST_PACE))
        return theta
