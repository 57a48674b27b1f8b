"""Two masses on a tether: where they balance, what each feels, what the tether must carry and weigh, reeling, and a cut."""

import numpy as np

from ...language import tr, tr_later
from ...phrases import AND
from ...vessel import tether
from ...vessel.materials import MATERIALS
from .saying import strength_of
from .words import energy, figure, force, gravity, mass, percent, rate, short, velocity

PLACES = 41  # along the tether, where its tension is told
CUT_S = 60.0

ASSUMPTIONS = (
    tr_later("The tether is straight and does not stretch; its ends are points."),
    tr_later("Drawing it in or letting it out leaves the tether's own mass out."),
    tr_later(
        "After a cut the ends are taken to fly on straight; the tether that hangs on each whips about, which is left out."
    ),
)


def finding(asked):
    """The finding as data; None where there is no tether."""
    block = asked.craft.tether
    if block is None:
        return None
    line = _tether(block, asked.spin_rad_s)
    uniform = tether.uniform(line) if line.has_material else None
    tapered = tether.tapered(line) if line.has_material else None
    held = uniform or tether.light(line)
    places = np.linspace(0.0, line.length_m, PLACES)
    reeled = tether.reel(line, block.to_length_m) if block.to_length_m else None
    parted = tether.cut(line, held, CUT_S)
    return {
        "radii_m": held.radii_m,
        "gravity_m_s2": [line.rate_rad_s**2 * radius for radius in held.radii_m],
        "tension_n": held.tension_n,
        "tension_along_n": tether.tension_along_n(line, held, places).tolist(),
        "from_first_m": places.tolist(),
        "uniform": _made(uniform),
        "tapered": _made(tapered),
        "reeled": reeled and vars(reeled),
        "cut": vars(parted),
        "says": [
            *_balance(line, held, asked),
            *_carries(block, line, uniform, tapered, asked),
            *_after(line, reeled, parted, asked),
        ],
        "assumptions": [*map(tr, ASSUMPTIONS), *_left_out(line, uniform), *_strength(block)],
    }


def _tether(block, rate_rad_s):
    if block.material is None:
        return tether.Tether(block.length_m, tuple(block.masses_kg), rate_rad_s)
    material = MATERIALS[block.material]
    carries = material.strength_pa / block.safety, material.density_kg_m3
    return tether.Tether(block.length_m, tuple(block.masses_kg), rate_rad_s, *carries)


def _strength(block):
    return [strength_of(block.material, MATERIALS[block.material].source)] if block.material else []


def _left_out(line, uniform):
    """That nothing is told of a tether that none of its material could be."""
    if line.has_material and uniform is None:
        yield tr("Where it balances, what pulls and what a cut does are told of a tether without mass.")


def _made(loaded):
    """A tether of a material as data; None where none carries it."""
    if loaded is None:
        return None
    return {
        "mass_kg": loaded.tether_mass_kg,
        "areas_m2": loaded.areas_m2,
        "radii_m": loaded.radii_m,
        "tension_n": loaded.tension_n,
    }


def _balance(line, held, asked):
    first, second = (short(radius, asked.units) for radius in held.radii_m)
    yield tr(
        "The two masses turn about a point {first} from the first and {second} from the second.",
        first=first,
        second=second,
    )
    if not line.rate_rad_s:
        yield tr("It does not turn: the tether hangs slack.")
        return
    first, second = (gravity(line.rate_rad_s**2 * radius) for radius in held.radii_m)
    yield tr(
        "At {rate} the first feels {first} and the second {second}.",
        rate=rate(line.rate_rad_s),
        first=first,
        second=second,
    )
    yield tr("The tether pulls hardest where it balances, with {pull}.", pull=force(held.tension_n, asked.units))


def _carries(block, line, uniform, tapered, asked):
    if block.material is None or not line.rate_rad_s:
        return
    of = {"material": tr(block.material), "safety": figure(block.safety)}
    if uniform is None:
        yield tr(
            "No tether of one thickness of {material}, with a safety factor of {safety}, can bear its own pull at this spin, however thick it is.",
            **of,
        )
    else:
        yield tr(
            "A tether of one thickness of {material}, with a safety factor of {safety}, weighs {mass}, {share} of what hangs on it.",
            mass=mass(uniform.tether_mass_kg, asked.units),
            share=percent(uniform.tether_mass_kg / sum(line.masses_kg)),
            **of,
        )
    if tapered is None:
        yield tr("One that tapers would outweigh its ends more than a billion times.")
    elif uniform is None or tapered.tether_mass_kg < 0.98 * uniform.tether_mass_kg:
        yield tr(
            "One that tapers, its section {times} times that of its thinner end where it balances, weighs {mass}.",
            times=figure(tapered.areas_m2[1] / min(tapered.areas_m2)),
            mass=mass(tapered.tether_mass_kg, asked.units),
        )
    else:
        yield tr("One that tapers would weigh almost the same.")


def _after(line, reeled, parted, asked):
    if not line.rate_rad_s:
        return
    if reeled is not None and reeled.length_m != line.length_m:
        yield from _reeled(line, reeled, asked)
    speeds = _both(velocity(speed, asked.units) for speed in parted.speeds_m_s)
    yield tr(
        "If it is cut, the ends fly off straight, at right angles to it and opposite ways, at {speeds}.",
        speeds=speeds,
    )
    yield tr("After a minute they are {distance} apart.", distance=short(parted.apart_m, asked.units))


def _reeled(line, reeled, asked):
    places = {
        "length": short(reeled.length_m, asked.units),
        "rate": rate(reeled.rate_rad_s),
        "gravities": _both(gravity(pull) for pull in reeled.gravity_m_s2),
        "pull": force(reeled.tension_n, asked.units),
    }
    if reeled.length_m < line.length_m:
        yield tr(
            "Reeled in to {length} it turns at {rate}, with {gravities} at its ends and a pull of {pull}.", **places
        )
    else:
        yield tr("Let out to {length} it turns at {rate}, with {gravities} at its ends and a pull of {pull}.", **places)
    work = energy(abs(reeled.work_j))
    yield (
        tr("For that the winch puts in {energy}.", energy=work)
        if reeled.work_j > 0
        else tr("For that the brake takes up {energy}.", energy=work)
    )


def _both(words):
    first, second = words
    return tr(AND, first=first, last=second)
