"""The same craft with some parts of other sizes or in other places, at equal angular momentum: spin, gravity and energy before and after."""

import math

from ...language import tr, tr_later
from ...physics.constants import RPM_RAD_S
from . import words
from .asked import bodies_of, reach_of, solid_of, spin_inertia
from .saying import sentence, too_fast

_SAME = 1e-9  # relative


def finding(asked):
    """The finding as data; None where it is not asked for."""
    if asked.craft.deploy is None:
        return None
    after = _deployed(asked.craft)
    solids = {part.name: solid_of(part) for part in after.parts}
    inertia = spin_inertia(bodies_of(after.parts, solids), "turning")
    momentum = asked.momenta["turning"]
    rate = momentum / inertia if inertia else (asked.spin_rad_s if not momentum else None)
    states = {
        "before": _state(asked.inertia("turning"), asked.spin_rad_s, reach_of(asked.craft, asked.solids)),
        "after": _state(inertia, rate, reach_of(after, solids)),
    }
    return states | {
        "says": [sentence(said) for said in _says(asked, states) if said],
        "assumptions": [tr(one) for one in _ASSUMPTIONS],
    }


_ASSUMPTIONS = (
    tr_later("Nothing outside acts on it and the joint has no friction: its angular momentum stays the same."),
    tr_later(
        "Only before and after are told: how it swings on the way, and whether its hinges and cables bear that, is left out."
    ),
)


def _deployed(craft):
    changes = {one.name: one.model_dump(exclude_none=True, exclude={"name"}) for one in craft.deploy.parts}
    return craft.model_copy(
        update={"parts": [part.model_copy(update=changes.get(part.name, {})) for part in craft.parts]}
    )


def _state(inertia, rate, rim):
    return {
        "inertia_kg_m2": inertia,
        "rim_radius_m": rim,
        "spin_rpm": None if rate is None else rate / RPM_RAD_S,
        "gravity_m_s2": None if rate is None else rate**2 * rim,
        "energy_j": None if rate is None else inertia * rate**2 / 2,
    }


def _says(asked, states):
    before, after = states["before"], states["after"]
    if after["spin_rpm"] is None:
        yield tr("all that turns would be on its axis: no spin is fast enough to hold its momentum there.")
        return
    if not asked.spin_rad_s:
        yield tr("it does not turn, in either shape.")
        return
    if math.isclose(before["inertia_kg_m2"], after["inertia_kg_m2"], rel_tol=_SAME):
        yield tr("what turns has the same inertia about its axis as before: the spin stays the same.")
        return
    rate, new_rate = (state["spin_rpm"] * RPM_RAD_S for state in (before, after))
    gravity = [words.gravity(state["gravity_m_s2"]) for state in (before, after)]
    rims = [words.short(state["rim_radius_m"], asked.units) for state in (before, after)]
    yield tr(
        "the spin goes from {rate} to {new_rate}, and gravity at its rim from {gravity} at {radius} to {new_gravity} at {new_radius}.",
        rate=words.rate(rate),
        new_rate=words.rate(new_rate, bent=""),
        gravity=gravity[0],
        radius=rims[0],
        new_gravity=gravity[1],
        new_radius=rims[1],
    )
    gain = after["energy_j"] - before["energy_j"]
    yield _energy(gain)
    fast = after["spin_rpm"] * RPM_RAD_S * after["rim_radius_m"]
    yield too_fast(fast, asked.units) and f"{too_fast(fast, asked.units)}."


def _energy(gain):
    if gain > 0:
        return tr("that takes {energy} of work: the momentum stays, the energy grows.", energy=words.energy(gain))
    return tr("{energy} come free on the way, and must be braked.", energy=words.energy(-gain)) if gain < 0 else ""
