"""Masses, centres and inertia of a craft's groups, and how much of its momentum each holds."""

import math

from ...phrases import listed
from ...vessel.bodies import greater_transverse, principal
from ...vessel.overlap import overlapping
from ...vessel.solids import reach_m
from . import words
from .saying import sentence

_MOST_NAMED = 3  # pairs of parts in one place
_ALIKE = 0.0005  # relative: moments of inertia as near as that are alike
_OUTER = 1.05  # of the floor's radius: a hull is a little farther out than its floor
_STEADY = 1e-9  # relative: momenta that cancel to this leave none


def finding(asked):
    """The finding as data."""
    groups = {name: _group(body) for name, body in asked.bodies.items()}
    pairs = overlapping(asked.solids)
    return {
        **{name: groups.get(name) for name in ("turning", "still", "counter", "whole")},
        "angular_momentum_kg_m2_s": {
            group: asked.momenta.get(group) for group in ("turning", "still", "counter", "whole")
        },
        "spin_to_transverse": {name: spin_to_transverse(asked.bodies[name]) for name in ("turning", "whole")},
        "overlaps": [list(pair) for pair in pairs],
        "says": [sentence(said) for said in _says(asked, pairs) if said],
        "assumptions": [
            "Every part is rigid and uniform, the ideal solid that it is named for; what is in no part is left out.",
            *([] if asked.craft.loads is None else ["Loads count in the balance alone."]),
        ],
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


def spin_to_transverse(body):
    """Inertia about z over the greater across it, both through the centre of mass; None where there is none across."""
    across = greater_transverse(body)
    return float(body.inertia_kg_m2[2, 2]) / across if across else None


def nothing_left(asked):
    """Whether the momenta of a craft's groups cancel."""
    momenta = asked.momenta
    return abs(momenta["whole"]) <= _STEADY * max(abs(momentum) for momentum in momenta.values())


def _says(asked, pairs):
    yield _masses(asked)
    yield _momentum(asked)
    yield _shape(asked)
    yield _overlaps(pairs)
    yield _beyond_rim(asked)


def _masses(asked):
    whole, parts = words.mass(asked.bodies["whole"].mass_kg, asked.units), []
    for group, does in (("turning", "turns"), ("still", "stays still"), ("counter", _counter_does(asked))):
        if group in asked.bodies:
            parts.append(f"{words.mass(asked.bodies[group].mass_kg, asked.units)} of it {does}")
    if len(parts) == 1:
        return f"all of its {whole} turn as one."
    return f"it weighs {whole}; {listed(parts)}."


def _counter_does(asked):
    return "turns the same way at its own rate" if asked.counter_rad_s > 0 else "turns the other way"


def _momentum(asked):
    momenta = asked.momenta
    if not asked.spin_rad_s and momenta.get("counter"):
        counter, rate = asked.called("counter"), words.rate(asked.counter_rad_s)
        return f"{asked.called('turning')} does not turn; {counter}, at {rate}, holds {words.momentum(momenta['counter'])} of angular momentum."
    if not asked.spin_rad_s:
        return "it does not turn, and holds no angular momentum."
    if not momenta["turning"]:
        return f"{asked.called('turning')} has no inertia about its axis, and holds no angular momentum."
    says = f"at {words.rate(asked.spin_rad_s)} {asked.called('turning')} holds {words.momentum(momenta['turning'])} of angular momentum"
    if not momenta.get("counter"):
        return f"{says}."
    counter, rate = asked.called("counter"), words.rate(asked.counter_rad_s)
    if nothing_left(asked):
        return f"{says}; {counter}, at {rate} the other way, holds just as much against it, and the whole holds none."
    same = momenta["counter"] > 0
    share = abs(momenta["counter"] / momenta["turning"])
    if same:
        return f"{says}; {counter}, at {rate} the same way, adds {words.percent(share)} to it."
    over = "more than that" if share > 1 else words.percent(share)
    return f"{says}; {counter}, at {rate} the other way, holds {over} against it, and {words.momentum(momenta['whole'])} is left."


def short(asked):
    """What to know of it in a few words: how heavy it is, and whether what turns keeps to its axis."""
    ratio = spin_to_transverse(asked.bodies["turning"])
    keeps = ratio is not None and ratio > 1 + _ALIKE
    left = (
        ""
        if ratio is None or not asked.spin_rad_s
        else ", keeps to its axis"
        if keeps
        else ", does not keep to its axis"
    )
    return f"{words.mass(asked.bodies['whole'].mass_kg, asked.units)}{left}"


def _shape(asked):
    """Whether what turns keeps its axis when it is left to itself: the greatest axis lasts, the least goes over in time, the middle at once."""
    body, name = asked.bodies["turning"], asked.called("turning")
    ratio = spin_to_transverse(body)
    if ratio is None:
        return f"{name} is a point: it has no inertia of its own."
    has = f"{name} has {words.times(ratio)} the inertia about its spin axis that it has across it"
    if ratio > 1 + _ALIKE:
        return f"{has}: left to itself it keeps turning about that axis."
    if ratio >= 1 - _ALIKE:
        return f"{name} has as much inertia about its spin axis as about one across it: left to itself it keeps to neither."
    least = sum(principal(body)[0]) - greater_transverse(body) - body.inertia_kg_m2[2, 2]
    if body.inertia_kg_m2[2, 2] > least * (1 + _ALIKE):
        return f"{has}, which is neither the most nor the least: left to itself it soon turns over, and back, again and again."
    return f"{has}: left to itself it goes over in time, and turns end over end."


def _overlaps(pairs):
    if not pairs:
        return ""
    named = listed([f"{one} with {other}" for one, other in pairs[:_MOST_NAMED]])
    more = f", and {len(pairs) - _MOST_NAMED} more pairs" if len(pairs) > _MOST_NAMED else ""
    return f"some parts fill the same space, and are counted in full all the same: {named}{more}."


def _beyond_rim(asked):
    """What turns, and what is aboard, farther from the axis than the floor: left from another radius, most often."""
    turning = [part.name for part in asked.craft.parts if part.group == "turning"]
    reaches = {name: (reach_m(asked.solids[name]), _OUTER) for name in turning}
    reaches |= {load.name: (math.hypot(*load.place_m[:2]), 1.0) for load in asked.craft.loads or ()}
    move = asked.craft.move
    if move is not None:
        reaches["the mass that moves"] = (max(move.from_radius_m, move.to_radius_m), 1.0)
    far = {name: reach for name, (reach, most) in reaches.items() if reach > most * asked.rim_m * (1 + _STEADY)}
    if not far:
        return ""
    farthest, floor = (words.short(one, asked.units) for one in (max(far.values()), asked.rim_m))
    names = list(far)[:_MOST_NAMED]
    more = [f"{len(far) - _MOST_NAMED} more"] if len(far) > _MOST_NAMED else []
    verb, end = ("reaches", farthest) if len(far) == 1 else ("reach", f"up to {farthest}")
    return f"{listed([*names, *more])} {verb} beyond the floor, which is {floor} from the axis: {end}."
