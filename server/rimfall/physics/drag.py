"""Drag: a sphere's standard curve, as one smooth law, or a constant coefficient; and what either does to bodies (`Drag`).

Source of the curve: Clift, Grace & Weber, Bubbles, Drops and Particles (1978), table 5.2, Reynolds numbers to 10^5.25. It is printed in
seven pieces that jump at their joints, by up to 0.8 %, and a stepper crawls over a jump. The program flies on one polynomial of degree 11
for ln(Cd Re) in ln(1 + Re/4), fitted so that the farthest it is from the printed curve is least: 2.1 % at worst, 1.0 % rms over the
decades. For what is measured best the fit was held nearer: 0.8 % at Re = 10, 0.2 % at Re = 300, 1.3 % for rain drops of 3 to 5 mm.
Both ends were held too: at rest it is Oseen's 24/Re (1 + 3 Re/16), which it leaves by 1e-5 at Re = 0.01, where the table begins; at
10^5.25 the first three derivatives of Cd by Re vanish, and above it Cd is constant: the drag crisis of a smooth ball is not modelled.
"""

from dataclasses import dataclass

import numpy as np

from .air import Air
from .bodies import Bodies

GREATEST_RE = 10**5.25
_FIRST_RE = 4.0
_LN_CD_RE = (  # powers of z, lowest first: z is -1 at Re = 0 and 1 at GREATEST_RE, and straight in ln(1 + Re/4) between
    6.013669574579489,
    4.171672605070933,
    1.4770189247163512,
    -0.5228019734920846,
    3.3127916991127586,
    1.462945877513082,
    -10.517257258232394,
    -0.3520198416996917,
    11.189078948397714,
    -2.228183265752921,
    -4.194533875830999,
    1.571100780755656,
)
_NO_RATE = 1e-300  # 1/s
_PER_LN = 2.0 / np.log1p(GREATEST_RE / _FIRST_RE)


def sphere_cd_re(re):
    """Cd Re (...) of a sphere at Reynolds numbers re (...) >= 0; 24 at re = 0.

    The drag force is (pi/8) d mu (Cd Re) u: finite and smooth at rest. No branches: this is the program's inner loop.
    """
    z = np.minimum(re, GREATEST_RE)
    z *= 1.0 / _FIRST_RE
    z += 1.0
    np.log(z, out=z)
    z *= _PER_LN
    z -= 1.0
    value = _LN_CD_RE[-1] * z
    for coefficient in _LN_CD_RE[-2:0:-1]:
        value += coefficient
        value *= z
    value += _LN_CD_RE[0]
    np.exp(value, out=value)
    over = np.multiply(re, 1.0 / GREATEST_RE, out=z)
    value *= np.maximum(over, 1.0, out=over)  # above the curve: the last Cd
    return value


def sphere_cd(re):
    """Cd (N,) of a sphere at Reynolds numbers re (N,) > 0, from the smooth curve."""
    re = np.asarray(re, dtype=float)
    return sphere_cd_re(re) / re


@dataclass
class Slowing:
    """How fast drag takes from bodies what is added to their velocities: rates, 1/s, of what is added across their way through the air,
    and along it, and that way, unit vectors (3, ...). All None of what nothing slows. Filled in by a force that is asked to; of the way a
    kind of numbers will do that may be less exact."""

    kind: type = float
    across_1_s: np.ndarray | None = None
    along_1_s: np.ndarray | None = None
    way: np.ndarray | None = None

    def times(self, factor):
        """The rates multiplied by a factor, in place."""
        if self.across_1_s is not None:
            self.across_1_s *= factor
            self.along_1_s *= factor


class Drag:
    """The drag of N bodies: m a = -(pi/8) d^2 rho Cd |u| u, u their velocity through air of density rho.

    scale (N,): `rate_1_s` takes it times |u|, times the density over the deck's.
    """

    def __init__(self, bodies: Bodies, air: Air):
        density, viscosity = air.deck_density_kg_m3, air.viscosity_pa_s
        spheres = np.isnan(bodies.drag_coefficient)
        self._all_spheres = bool(np.all(spheres))
        self._spheres = spheres if np.any(spheres) else None
        area_per_mass = np.pi / 8.0 * bodies.diameter_m**2 / bodies.mass_kg
        self._constant = area_per_mass * density * np.where(spheres, 0.0, bodies.drag_coefficient)
        re_per = bodies.diameter_m * density / viscosity
        self._stokes = np.pi / 8.0 * bodies.diameter_m * viscosity / bodies.mass_kg
        self._constant_per_re = self._constant / np.where(re_per > 0, re_per, 1.0)
        self.scale = self._constant if self._spheres is None else re_per
        self._least_1_s = None if self._spheres is None else np.where(spheres, 24.0 * self._stokes, 0.0)

    def part(self, which):
        """That of a slice of the bodies."""
        part = object.__new__(Drag)
        part.__dict__.update(self.__dict__)
        for name in ("_spheres", "_constant", "_stokes", "_constant_per_re", "scale", "_least_1_s"):
            value = getattr(self, name)
            setattr(part, name, None if value is None else value[which])
        return part

    def rate_1_s(self, scaled_speed):
        """The rate (N,), 1/s, at which bodies take on the air's velocity."""
        if self._spheres is None:
            return scaled_speed
        sphere = sphere_cd_re(scaled_speed)
        sphere *= self._stokes
        return sphere if self._all_spheres else np.where(self._spheres, sphere, self._constant_per_re * scaled_speed)

    def along_1_s(self, rate_1_s):
        """The rate at which drag takes from bodies what is added along their way, rate_1_s being `rate_1_s`: (1 + n) times that, where drag
        over speed grows as its nth power. A constant Cd has n = 1; a sphere about 1 - sqrt(24 / (Cd Re)), within 0.08 of its curve's up to
        Re = 1000 and 0.2 above: near enough for who goes by rounds."""
        if self._spheres is None:
            return 2.0 * rate_1_s
        share = np.maximum(rate_1_s, _NO_RATE)
        np.divide(self._least_1_s, share, out=share)
        np.sqrt(share, out=share)
        np.subtract(2.0, share, out=share)
        share *= rate_1_s
        return share

    def settling_rate_1_s(self, gravity_m_s2):
        """The rate (N,), 1/s, at which the deck's air stops bodies that have come to their settling speed under a gravity (N,): how
        stiff they are. Stokes drag, and the square-law drag (of a sphere with Cd = 1/2) at the speed where it carries the body."""
        if self._spheres is None:
            return np.sqrt(gravity_m_s2 * self._constant)
        square = np.where(self._spheres, 0.5 * self._stokes * self.scale, self._constant)
        return np.where(self._spheres, 24.0 * self._stokes, 0.0) + np.sqrt(gravity_m_s2 * square)
