"""A spinning habitat: its shape, what follows from radius and spin, and the surfaces inside it."""

from dataclasses import dataclass

from .constants import G0_M_S2, TURN_RAD
from .shapes import Ship
from .surfaces import Drum, Plane


@dataclass(frozen=True)
class Habitat(Ship):
    """A drum (cylinder) of radius_m that turns by `spin`.

    width_m: between end walls, None for open ends. ceiling_m: height of a ceiling above the deck, or None.
    hub_radius_m: radius of a column round the axis, or None. axial_thrust_m_s2: the ship's own acceleration along +z.
    """

    width_m: float | None = None
    ceiling_m: float | None = None
    hub_radius_m: float | None = None

    def ground(self, _floor=0):
        """What a ball rolls on."""
        return Drum("deck", self.radius_m, hollow=True)

    def ground_height_m(self, _axial_m):
        """Height of the deck: none."""
        return 0.0

    def surfaces(self, _floor=0):
        """What a body inside can meet. Behind a ceiling the hub cannot be met."""
        out = [self.ground()]
        if self.ceiling_m is not None:
            out.append(Drum("ceiling", self.radius_m - self.ceiling_m, hollow=False))
        elif self.hub_radius_m is not None:
            out.append(Drum("hub", self.hub_radius_m, hollow=False))
        if self.width_m is not None:
            out += [Plane("wall", (0.0, 0.0, side), -self.width_m / 2) for side in (1.0, -1.0)]
        return tuple(out)


@dataclass(frozen=True)
class Figures:
    """What follows from radius and spin at one place: rate, gravity, rim speed, period (None at rest)."""

    omega_rad_s: float
    gravity_m_s2: float
    gravity_g: float
    rim_speed_m_s: float
    period_s: float | None


def figures(radius_m, omega_rad_s):
    """Figures at radius_m of a habitat that turns at omega_rad_s: apparent gravity is omega^2 r."""
    gravity = omega_rad_s**2 * radius_m
    period = TURN_RAD / abs(omega_rad_s) if omega_rad_s else None
    return Figures(omega_rad_s, gravity, gravity / G0_M_S2, abs(omega_rad_s) * radius_m, period)


def radius_for(gravity_m_s2=None, rim_speed_m_s=None, omega_rad_s=0.0):
    """Radius, metres, at which omega_rad_s gives the gravity or the rim speed named. Raises ValueError at no spin."""
    if not omega_rad_s:
        raise ValueError("at no spin no radius gives gravity or rim speed")
    return gravity_m_s2 / omega_rad_s**2 if gravity_m_s2 is not None else rim_speed_m_s / abs(omega_rad_s)


def omega_for(radius_m, gravity_m_s2=None, rim_speed_m_s=None):
    """Spin, rad/s, that gives the gravity or the rim speed named at radius_m."""
    return (gravity_m_s2 / radius_m) ** 0.5 if gravity_m_s2 is not None else rim_speed_m_s / radius_m
