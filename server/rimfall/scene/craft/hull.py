"""The turning ring as a structure: its hoop stress against what its material may carry, spokes instead, and the largest rings."""

import math
from dataclasses import replace

from ...language import tr, tr_later, tr_many
from ...phrases import listed
from ...vessel import hull
from ...vessel.materials import MATERIALS
from .saying import strength_of
from .words import figure, force, gravity, percent, pressure, rate, short

ASSUMPTION = tr_later(
    "The ring is thin and its load lies evenly on its floor; joints, doors, bending between spokes and fatigue are left out."
)
_FULL = tr_later("The air pulls on the ring as in a long cylinder; its pull on the ends is left out.")
_TUBE = tr_later(
    "The ring is a thin tube, its floor as wide as the tube; the air in it pulls along and around it as in a toroidal shell (Young & Budynas, "
    "Roark’s Formulas for Stress and Strain, table 13.1)."
)
_AT_RIM, _WIDEST = 0.02, 1 / 3  # of the floor's radius: how near a torus is to it, and its tube at most
_SHARES = {  # of the stress → a share of it, and all of it
    "own_pa": (tr_later("{share} from its own weight"), tr_later("All of it is from its own weight.")),
    "load_pa": (tr_later("{share} from the load on its floor"), tr_later("All of it is from the load on its floor.")),
    "pressure_pa": (tr_later("{share} from the air inside"), tr_later("All of it is from the air inside.")),
}


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
        "shares_pa": {name.removesuffix("_pa"): getattr(stress, name) for name in _SHARES},
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
            tr(ASSUMPTION),
            tr(_FULL if ring.tube_radius_m is None else _TUBE),
            strength_of(block.material, material.source),
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
        yield tr("Nothing pulls at the ring: it does not turn and holds no air.")
        return
    times = whole / safe
    yield _carries(block, ring, whole, safe)
    there = [name for name in _SHARES if getattr(stress, name)]
    if len(there) > 1:
        parts = [tr(_SHARES[name][0], share=percent(getattr(stress, name) / whole)) for name in there]
        yield tr("Of that, {shares}.", shares=listed(parts))
    else:
        yield tr(_SHARES[there[0]][1])
    yield _around(ring, safe, asked.units)
    if max(times, ring.air_around_pa / safe) > 1:
        yield from _would_do(ring, safe, asked.units)


def _carries(block, ring, whole, safe):
    """What the ring carries, and the wish that collides with it where that is too much."""
    places = {"material": tr(block.material), "stress": pressure(whole), "safe": pressure(safe)}
    too_much, turns = whole / safe > 1, bool(ring.rate_rad_s)
    if too_much:
        places |= {"times": figure(whole / safe)}
    if turns:
        bent = "" if too_much else "in"
        places |= {"rate": rate(ring.rate_rad_s, bent), "gravity": gravity(ring.gravity_m_s2)}
    if too_much and turns:
        return tr(
            "{gravity} at the rim wants {rate}; the {material} ring then carries {stress}, {times} times the {safe} that are safe.",
            **places,
        )
    if too_much:
        return tr(
            "Standing still the {material} ring carries {stress}, {times} times the {safe} that are safe.", **places
        )
    if turns:
        return tr("At {rate} the {material} ring carries {stress} of the {safe} that are safe.", **places)
    return tr("Standing still the {material} ring carries {stress} of the {safe} that are safe.", **places)


def _around(ring, safe, units):
    """What the air does in its tube, or would do in one."""
    if not ring.pressure_pa:
        return ""
    if ring.tube_radius_m is None:
        return tr(
            "The air is taken to fill all of it, from the axis to the rim: in a tube along the rim it would pull far less."
        )
    places = {"radius": short(ring.tube_radius_m, units), "stress": pressure(ring.air_around_pa)}
    times = ring.air_around_pa / safe
    if times > 1:
        return tr(
            "Around its tube, {radius} in radius, the air pulls with {stress}, {times} times what is safe.",
            times=figure(times),
            **places,
        )
    return tr("Around its tube, {radius} in radius, the air pulls with {stress}.", **places)


def _would_do(ring, safe, units):
    """The nearest wishes that it could carry: a thicker wall, or another gravity in the same ring."""
    wall = hull.least_thickness_m(ring, safe)
    if wall < ring.radius_m:
        yield tr("A wall of {thickness} would do.", thickness=short(wall, units))
    left = safe - ring.air_along_pa
    if left <= 0 or ring.air_around_pa > safe:
        yield tr("No spin is slow enough for this wall: the air alone is too much for it.")
        return
    most = left / ((ring.density_kg_m3 + ring.load_kg_m2 * ring.loaded_share / ring.thickness_m) * ring.radius_m)
    yield tr(
        "The most that this ring could carry is {gravity}, at {rate}.",
        gravity=gravity(most),
        rate=rate(math.sqrt(most / ring.radius_m)),
    )


def _spokes(block, tension, asked):
    if tension:
        yield tr_many(
            "If {count} spoke held all that turns and the ring carried nothing, it would pull with {pull}.",
            "If {count} spokes held all that turns and the ring carried nothing, each would pull with {pull}.",
            block.spokes,
            pull=force(tension, asked.units),
        )


def _biggest(block, ring, largest, asked):
    bare, loaded = (largest[block.material][f"{key}_radius_m"] for key in ("bare", "loaded"))
    if bare is None:
        return
    yield tr(
        "At {gravity} a bare ring of {material} could be {radius} in radius.",
        gravity=gravity(ring.gravity_m_s2),
        material=tr(block.material),
        radius=short(bare, asked.units),
    )
    if not ring.load_kg_m2 and not ring.pressure_pa:
        return
    if not loaded:
        yield tr(_NONE[bool(ring.load_kg_m2), bool(ring.pressure_pa)])
    else:
        largest = _LARGEST[bool(ring.load_kg_m2), bool(ring.pressure_pa)]
        yield tr(largest, radius=short(loaded, asked.units))


# with a load, with air → the largest radius, or that there is none
_LARGEST = {
    (True, False): tr_later("With this wall and its load the largest that would do is {radius}."),
    (False, True): tr_later("With this wall and its air the largest that would do is {radius}."),
    (True, True): tr_later("With this wall and its load and air the largest that would do is {radius}."),
}
_NONE = {
    (True, False): tr_later("With this wall and its load none would do."),
    (False, True): tr_later("With this wall and its air none would do."),
    (True, True): tr_later("With this wall and its load and air none would do."),
}
