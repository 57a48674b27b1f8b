"""Two masses on a turning tether: where it balances, what pulls along it, what it weighs, and what reeling and cutting do.

The tether is straight and does not stretch. A uniform tether has one cross-section, a tapered one the same stress everywhere
(H. Moravec, "A non-synchronous orbital skyhook", J. Astronaut. Sci. 25 (1977): exp and erf of the ratio of tip speed to
characteristic speed sqrt(2 stress / density)).
"""

import math
from dataclasses import dataclass

import numpy as np

TAPER_LIMIT = 25.0  # exp of this is 7e10: nobody tapers more, and the mass is told as out of reach


@dataclass(frozen=True)
class Tether:
    """length_m; masses_kg (2,) at its ends; rate_rad_s about the balance point.

    stress_pa and density_kg_m3: what its material may carry, and weighs; both None of a tether without mass.
    """

    length_m: float
    masses_kg: tuple[float, float]
    rate_rad_s: float
    stress_pa: float | None = None
    density_kg_m3: float | None = None

    @property
    def has_material(self) -> bool:
        return self.stress_pa is not None


@dataclass(frozen=True)
class Loaded:
    """A tether that carries its ends. radii_m (2,) from the balance point to each mass; tension_n at the balance point, its
    greatest; tether_mass_kg; areas_m2: cross-section at (first mass, balance point, second mass), None without a material."""

    radii_m: tuple[float, float]
    tension_n: float
    tether_mass_kg: float
    areas_m2: tuple[float, float, float] | None


def light(tether: Tether) -> Loaded:
    """The tether without its own mass."""
    first, second = tether.masses_kg
    whole = first + second
    radii = tether.length_m * second / whole, tether.length_m * first / whole
    return Loaded(radii, first * tether.rate_rad_s**2 * radii[0], 0.0, None)


def uniform(tether: Tether) -> Loaded | None:
    """The tether of one cross-section that just carries its ends and itself; None where none of that material does.

    With m the mass per metre, the balance point lies at (m2 L + m L²/2)/(m1 + m2 + m L) from the first mass and the tension
    there is w²(m1 r + m r²/2), which must be stress x area = (stress/density) m: a cubic in m.
    """
    mass_per_m = _uniform_mass_per_m(tether)
    if mass_per_m is None:
        return None
    first, second = tether.masses_kg
    whole = first + second + mass_per_m * tether.length_m
    radius = (second * tether.length_m + mass_per_m * tether.length_m**2 / 2) / whole
    area = mass_per_m / tether.density_kg_m3
    return Loaded(
        (radius, tether.length_m - radius), tether.stress_pa * area, mass_per_m * tether.length_m, (area, area, area)
    )


def tapered(tether: Tether) -> Loaded | None:
    """The tether with the same stress everywhere; None where it would taper by more than exp(TAPER_LIMIT).

    Area(r) = area at the end x exp(w² (end² - r²)/(2 stress/density)); each side weighs its end mass x sqrt(pi) x exp(x²) erf(x)
    with x the end's speed over sqrt(2 stress/density). It balances where both sides ask the same area.
    """
    steepness = tether.rate_rad_s**2 * tether.density_kg_m3 / (2 * tether.stress_pa)  # x² per square metre
    first, second = tether.masses_kg
    radius = _balance(first, second, tether.length_m, steepness)
    radii = radius, tether.length_m - radius
    if steepness * max(radii) ** 2 > TAPER_LIMIT:
        return None
    ends = [m * tether.rate_rad_s**2 * r / tether.stress_pa for m, r in zip(tether.masses_kg, radii, strict=True)]
    middle = ends[0] * math.exp(steepness * radii[0] ** 2)
    mass = sum(m * tapered_mass_ratio(math.sqrt(steepness) * r) for m, r in zip(tether.masses_kg, radii, strict=True))
    return Loaded(radii, tether.stress_pa * middle, mass, (ends[0], middle, ends[1]))


def tapered_mass_ratio(speed_ratio: float) -> float:
    """Mass of a tapered tether over that of its end: sqrt(pi) x exp(x²) erf(x), x the end's speed over sqrt(2 stress/density)."""
    return math.sqrt(math.pi) * speed_ratio * math.exp(speed_ratio**2) * math.erf(speed_ratio)


def tension_along_n(tether: Tether, loaded: Loaded, from_first_m: np.ndarray) -> np.ndarray:
    """Tension (n,) of a light or a uniform tether at distances (n,) from the first mass."""
    mass_per_m = loaded.tether_mass_kg / tether.length_m
    offset = from_first_m - loaded.radii_m[0]  # from the balance point, toward the second mass
    return loaded.tension_n - mass_per_m * tether.rate_rad_s**2 * offset**2 / 2


def _uniform_mass_per_m(tether: Tether) -> float | None:
    first, second = tether.masses_kg
    length, whole = tether.length_m, first + second
    mass_unit = whole / length  # masses per metre are counted in these, so that the cubic is well scaled
    speed_ratio = tether.rate_rad_s**2 * length**2 * tether.density_kg_m3 / tether.stress_pa
    if speed_ratio == 0:
        return 0.0
    a, b = first / whole, second / whole
    lever = np.polynomial.Polynomial([b, 0.5])
    sum_of_masses = np.polynomial.Polynomial([1.0, 1.0])
    own = np.polynomial.Polynomial([0.0, 1.0])
    balance = speed_ratio * (a * lever * sum_of_masses + own / 2 * lever**2) - own * sum_of_masses**2
    roots = balance.roots()
    real = roots[np.abs(roots.imag) <= 1e-9 * np.abs(roots)].real
    carrying = real[real > 0]
    if not len(carrying):
        return None
    root, slope = carrying.min(), balance.deriv()
    for _ in range(3):  # a root far smaller than the others is found to their digits only
        root -= balance(root) / slope(root)
    return float(root) * mass_unit


def _balance(first_kg, second_kg, length_m, steepness):
    """Distance from the first mass at which m r exp(steepness r²) is the same of both sides; the difference of logs only rises."""
    low, high = 0.0, length_m
    for _ in range(200):
        middle = (low + high) / 2
        if middle in (low, high):
            break
        other = length_m - middle
        excess = math.log(first_kg / second_kg) + math.log(middle / other) + steepness * (middle**2 - other**2)
        low, high = (low, middle) if excess > 0 else (middle, high)
    return (low + high) / 2


@dataclass(frozen=True)
class Reeled:
    """After reeling: length_m, rate_rad_s, gravity_m_s2 (2,) at the ends, tension_n, work_j that the winch has put in."""

    length_m: float
    rate_rad_s: float
    gravity_m_s2: tuple[float, float]
    tension_n: float
    work_j: float


def reel(tether: Tether, to_length_m: float) -> Reeled:
    """Both ends as points on a tether without mass, reeled at equal angular momentum."""
    shorter = tether.length_m / to_length_m
    rate = tether.rate_rad_s * shorter**2
    after = light(Tether(to_length_m, tether.masses_kg, rate))
    first, second = tether.masses_kg
    energy = first * second / (first + second) * (tether.length_m * tether.rate_rad_s) ** 2 / 2
    gravity = tuple(rate**2 * radius for radius in after.radii_m)
    return Reeled(to_length_m, rate, gravity, after.tension_n, energy * (shorter**2 - 1))


@dataclass(frozen=True)
class Parted:
    """After a cut: speeds_m_s (2,) of the ends; directions_deg (2,) of their flight, from the way from first to second toward the spin; apart_m
    after time_s."""

    speeds_m_s: tuple[float, float]
    directions_deg: tuple[float, float]
    apart_m: float
    time_s: float


def cut(tether: Tether, loaded: Loaded, time_s: float = 60.0) -> Parted:
    """Both ends go on straight: their distance is the hypotenuse of the tether and of how far they go from each other."""
    speeds = tuple(tether.rate_rad_s * radius for radius in loaded.radii_m)
    return Parted(
        speeds, (-90.0, 90.0), math.hypot(tether.length_m, tether.rate_rad_s * tether.length_m * time_s), time_s
    )
