"""Masses, centres and inertia of a craft's groups, and how much of its momentum each holds."""

from ...craft.bodies import greater_transverse, principal


def finding(asked):
    """The finding as data."""
    groups = {name: _group(body) for name, body in asked.bodies.items()}
    return {
        **{name: groups.get(name) for name in ("turning", "still", "counter", "whole")},
        "angular_momentum_kg_m2_s": asked.momenta,
        "spin_to_transverse": {name: _ratio(asked.bodies[name]) for name in ("turning", "whole")},
        "says": [],
        "assumptions": [],
    }


def _group(body):
    values, axes = principal(body)
    return {
        "mass_kg": body.mass_kg,
        "centre_of_mass_m": body.centre_m.tolist(),
        "inertia_kg_m2": body.inertia_kg_m2.tolist(),
        "principal_kg_m2": values.tolist(),
        "principal_axes": axes.tolist(),
    }


def _ratio(body):
    across = greater_transverse(body)
    return float(body.inertia_kg_m2[2, 2]) / across if across else None
