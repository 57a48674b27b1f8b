"""How one body goes on that touches two surfaces at once: along both, along one of them, or off both."""

from dataclasses import dataclass
from itertools import product

import numpy as np

from .aboard import cross, dot
from .corner import unit
from .cornered import HOLDS_LESS, Cornered
from .rolling import GONE_M_S, NO_SLIP_M_S, ROLLS, SEED_M_S, SLIDES, STANDS

_AT_ONCE_S = 1e-4


@dataclass(frozen=True)
class Way:
    """How one body goes on: the surfaces that bear it (none: it flies), its mode, and its velocity (6, 1)."""

    parts: tuple
    mode: object
    velocity: np.ndarray


def way_on(surface, one, rate, position, velocity, turns, late=False):
    """The Way in which one body at a Corner goes on from a state (6, 1). one: its Riders; turns: whether it can roll; late: whether it
    has dithered here: a slip that friction would end at once is then none."""
    n = surface.normal(position[:3])
    if late and turns:
        velocity = _ended(surface, one, rate, position, velocity, n)
    still = not np.any(np.abs(velocity) > GONE_M_S)
    if still:
        law = Cornered(surface, one, (ROLLS, ROLLS) if turns else STANDS)
        figures, way = law.held(rate, position, velocity, HOLDS_LESS)
        if np.all(figures > 0):
            return Way(surface.parts, law.mode, np.zeros_like(velocity))
        velocity = np.concatenate([SEED_M_S * unit(way), np.zeros_like(way)])
    leaves = None
    for mode in _modes(one, n, velocity) if turns else (STANDS,):
        law = Cornered(surface, one, mode)
        going, seeds = _seeded(law, one, rate, position, law.tangent(velocity, n), n)
        now = law.forces(rate, position, going)
        presses = now.presses(0.5)[:, 0]
        grips = all(law.grip(i, now, n, HOLDS_LESS)[0] > 0 for i in law.rolls)
        grips = grips and not _fades(law, now, position, going, seeds)
        if grips and np.all(presses > 0):
            return Way(surface.parts, mode, going)
        if grips and leaves is None:
            leaves = presses, going
    if leaves is None:
        return Way((), None, velocity)
    bears = tuple(part for part, press in zip(surface.parts, leaves[0], strict=True) if press > 0)
    return Way(bears, None, leaves[1])


def _ended(surface, one, rate, position, velocity, n):
    """Velocity (6, 1) without what slips friction would end within _AT_ONCE_S."""
    now = Cornered(surface, one, (SLIDES, SLIDES)).forces(rate, position, velocity)
    out = velocity.copy()
    for i in (0, 1):
        slip = Cornered.slip(n[:, i], out[:3], out[3:])
        loses_m_s2 = one.friction * np.abs(now.press[i]) * (1.0 + 1.0 / one.inertia_factor)
        out[3:] += np.where(np.sqrt(dot(slip, slip)) <= _AT_ONCE_S * loses_m_s2, cross(n[:, i], slip), 0.0)
    return out


def _modes(one, n, velocity):
    """What a ball may do at the two, the likelier first: it rolls only where it does not slip and has friction."""
    may = []
    for i in (0, 1):
        slip = Cornered.slip(n[:, i], velocity[:3], velocity[3:])
        rolls = np.sqrt(dot(slip, slip))[0] <= NO_SLIP_M_S and one.friction[0] > 0
        may.append((ROLLS, SLIDES) if rolls else (SLIDES,))
    return product(*may)


def _seeded(law, one, rate, position, velocity, n):
    """Velocity (6, 1) with a slip of no account where it is about to slip and does not yet: against the push it would need; and those
    slips, surface by surface."""
    seeds = {}
    for i in (0, 1):
        slip = law.slip(n[:, i], velocity[:3], velocity[3:])
        if law.mode == STANDS or i in law.rolls or one.friction[0] == 0 or np.sqrt(dot(slip, slip))[0] > GONE_M_S:
            continue
        rolling = Cornered(law.surface, one, tuple(ROLLS if j == i else m for j, m in enumerate(law.mode)))
        needed = rolling.forces(rate, position, rolling.tangent(velocity, n)).friction[:, i]
        way = -SEED_M_S * unit(needed)
        velocity, seeds[i] = velocity.copy(), way
        velocity[3:] += cross(way, n[:, i])
    return velocity, seeds


def _fades(law, now, position, velocity, seeds):
    """Whether a slip that was put in would be gone at once: then it does not slip."""
    acceleration = np.concatenate([now.change, now.spun_change])
    rates = law.fading_rates(position, velocity, acceleration)
    slides = [i for i in (0, 1) if i not in law.rolls]
    return any(dot(rates[slides.index(i)], way)[0] < 0 for i, way in seeds.items())
