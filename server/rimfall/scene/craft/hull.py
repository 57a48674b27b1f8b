"""The turning ring as a structure: its hoop stress against what its material may carry, spokes instead, and the largest rings."""

import math
from dataclasses import replace

from ...phrases import listed
from ...vessel import hull
from ...vessel.materials import MATERIALS
from .words import figure, force, gravity, percent, pressure, rate, short

ASSUMPTION = "The ring is thin and its load lies evenly on its floor; joints, doors, bending between spokes and fatigue are left out."
_FULL = "The air pulls on the ring as in a long cylinder; its pull on the ends is left out."
_TUBE = (
    "The ring is a thin tube, its floor as wide as the tube; the air in it pulls along and around it as in a toroidal shell (Young & Budynas, "
    "Roark’s Formulas for Stress and Strain, table 13.1)."
)
_AT_RIM, _WIDEST = 0.02, 1 / 3  # of the floor's radius: how near a torus is to it, and its tube at most
_SHARES = (("own_pa", "its own weight"), ("load_pa", "the load on its floor"), ("pressure_pa", "the air inside"))


def finding(asked):
    """The finding as data; None where there is no hull."""
    block = asked.craft.hull
    if block is None:
        return None
    material = MATERIALS[block.material]
    ring = hull.Ring(
        asked.rim_m,
        asked.spin_rad_s,
        material.density_kg_m3,
        block.thickness_m,
        block.load_kg_m2,
        block.pressure_kpa * 1e3,
        _tube_radius_m(block, asked),
    )
    stress, safe = hull.hoop_stress(ring), material.strength_pa / block.safety
    most = max(stress.whole_pa, ring.air_around_pa)
    largest = _largest(block, ring)
    spokes = _spoke_n(block, ring, asked)
    return {
        "hoop_stress_pa": stress.whole_pa,
        "shares_pa": {name.removesuffix("_pa"): getattr(stress, name) for name, _ in _SHARES},
        "safe_stress_pa": safe,
        "tube_stress_pa": None if ring.tube_radius_m is None else ring.air_around_pa,
        "times_safe": most / safe,
        "margin": _margin(safe, most),
        "spoke_tension_n": spokes,
        "gravity_m_s2": ring.gravity_m_s2,
        "largest": largest,
        "says": [
            *filter(None, _stress(block, ring, stress, safe, asked)),
            *_spokes(block, spokes, asked),
            *_biggest(block, ring, largest, asked),
        ],
        "assumptions": [
            ASSUMPTION,
            _FULL if ring.tube_radius_m is None else _TUBE,
            f"Strength of {block.material}: {material.source}.",
        ],
    }


def _tube_radius_m(block, asked):
    """The radius of the tube that holds the air; None where the whole is full of it out to the rim."""
    if block.tube_radius_m is not None:
        return block.tube_radius_m
    for part in asked.craft.parts:
        tube = getattr(part, "tube_radius_m", None) if part.group == "turning" else None
        if tube is None or tube > _WIDEST * asked.rim_m:
            continue
        if abs(part.radius_m + tube - asked.rim_m) <= _AT_RIM * asked.rim_m:
            return tube
    return None


def _margin(safe_pa, whole_pa):
    """Safe stress over stress, less 1; None where next to nothing pulls."""
    margin = safe_pa / whole_pa - 1 if whole_pa else math.inf
    return margin if math.isfinite(margin) else None


def _spoke_n(block, ring, asked):
    """Pull in each spoke; None where there are none."""
    turning = asked.bodies["turning"].mass_kg
    return hull.spoke_tension_n(turning, ring.gravity_m_s2, block.spokes) if block.spokes else None


def _largest(block, ring):
    """Of each material, the largest radius at the ring's gravity: bare, and with the document's load, wall and air; None where any would do."""
    rows = {}
    for name, material in MATERIALS.items():
        safe = material.strength_pa / block.safety
        loaded = replace(ring, density_kg_m3=material.density_kg_m3)
        bare = hull.Ring(ring.radius_m, ring.rate_rad_s, material.density_kg_m3, ring.thickness_m)
        radii = {
            key: hull.largest_radius_m(one, safe, ring.gravity_m_s2)
            for key, one in (("bare", bare), ("loaded", loaded))
        }
        rows[name] = {
            "strength_pa": material.strength_pa,
            "density_kg_m3": material.density_kg_m3,
            "source": material.source,
            **{f"{key}_radius_m": radius if math.isfinite(radius) else None for key, radius in radii.items()},
        }
    return rows


def _stress(block, ring, stress, safe, asked):
    whole = stress.whole_pa
    if not whole:
        yield "Nothing pulls at the ring: it does not turn and holds no air."
        return
    times = whole / safe
    if times > 1:
        yield f"{_wish(ring, block)} carries {pressure(whole)}, {figure(times)} times the {pressure(safe)} that are safe."
    else:
        at = f"At {rate(ring.rate_rad_s)}" if ring.rate_rad_s else "Standing still"
        yield f"{at} the {block.material} ring carries {pressure(whole)} of the {pressure(safe)} that are safe."
    parts = [f"{percent(share / whole)} from {of}" for name, of in _SHARES if (share := getattr(stress, name))]
    yield f"Of that, {listed(parts)}." if len(parts) > 1 else f"All of it is from {parts[0].partition(' from ')[2]}."
    yield _around(ring, safe, asked.units)
    if max(times, ring.air_around_pa / safe) > 1:
        yield from _would_do(ring, safe, asked.units)


def _around(ring, safe, units):
    """What the air does in its tube, or would do in one."""
    if not ring.pressure_pa:
        return ""
    if ring.tube_radius_m is None:
        return "The air is taken to fill all of it, from the axis to the rim: in a tube along the rim it would pull far less."
    pulls = f"Around its tube, {short(ring.tube_radius_m, units)} in radius, the air pulls with {pressure(ring.air_around_pa)}"
    times = ring.air_around_pa / safe
    return f"{pulls}, {figure(times)} times what is safe." if times > 1 else f"{pulls}."


def _wish(ring, block):
    """The wish that collides with what the ring can carry, up to the verb."""
    if not ring.rate_rad_s:
        return f"Standing still the {block.material} ring"
    return f"{gravity(ring.gravity_m_s2)} at the rim wants {rate(ring.rate_rad_s)}; the {block.material} ring then"


def _would_do(ring, safe, units):
    """The nearest wishes that it could carry: a thicker wall, or another gravity in the same ring."""
    wall = hull.least_thickness_m(ring, safe)
    if wall < ring.radius_m:
        yield f"A wall of {short(wall, units)} would do."
    left = safe - ring.air_along_pa
    if left <= 0 or ring.air_around_pa > safe:
        yield "No spin is slow enough for this wall: the air alone is too much for it."
        return
    most = left / ((ring.density_kg_m3 + ring.load_kg_m2 * ring.loaded_share / ring.thickness_m) * ring.radius_m)
    yield f"The most that this ring could carry is {gravity(most)}, at {rate(math.sqrt(most / ring.radius_m))}."


def _spokes(block, tension, asked):
    if tension:
        pull = force(tension, asked.units)
        yield f"If {block.spokes} spokes held all that turns and the ring carried nothing, each would pull with {pull}."


def _biggest(block, ring, largest, asked):
    bare, loaded = (largest[block.material][f"{key}_radius_m"] for key in ("bare", "loaded"))
    if bare is None:
        return
    yield f"At {gravity(ring.gravity_m_s2)} a bare ring of {block.material} could be {short(bare, asked.units)} in radius."
    more = [word for word, there in (("load", ring.load_kg_m2), ("air", ring.pressure_pa)) if there]
    if more:
        of = f"With this wall and its {listed(more)}"
        yield f"{of} the largest that would do is {short(loaded, asked.units)}." if loaded else f"{of} none would do."
