"""Masses, centres and inertia of a craft's groups, and how much of its momentum each holds."""

import math

from ...language import tr, tr_later, tr_many
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
            tr(
                "Every part is rigid and uniform, the ideal solid that it is named for; what is in no part is left out."
            ),
            *([] if asked.craft.loads is None else [tr("Loads count in the balance alone.")]),
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
    whole = words.mass(asked.bodies["whole"].mass_kg, asked.units)
    parts = [
        tr(_SAME_WAY if group == "counter" and asked.counter_rad_s > 0 else does, mass=_weight(asked, group))
        for group, does in _DOES.items()
        if group in asked.bodies
    ]
    if len(parts) == 1:
        return tr("all of its {mass} turn as one.", mass=whole)
    return tr("it weighs {mass}; {shares}.", mass=whole, shares=listed(parts))


_DOES = {
    "turning": tr_later("{mass} of it turns"),
    "still": tr_later("{mass} of it stays still"),
    "counter": tr_later("{mass} of it turns the other way"),
}
_SAME_WAY = tr_later("{mass} of it turns the same way at its own rate")


def _weight(asked, group):
    return words.mass(asked.bodies[group].mass_kg, asked.units)


def _momentum(asked):
    momenta = asked.momenta
    turning, counter = asked.called("turning"), asked.called("counter")
    if not asked.spin_rad_s and momenta.get("counter"):
        return tr(
            "{turning} does not turn; {counter}, at {rate}, holds {momentum} of angular momentum.",
            turning=turning,
            counter=counter,
            rate=words.rate(asked.counter_rad_s),
            momentum=words.momentum(momenta["counter"]),
        )
    if not asked.spin_rad_s:
        return tr("it does not turn, and holds no angular momentum.")
    if not momenta["turning"]:
        return tr("{turning} has no inertia about its axis, and holds no angular momentum.", turning=turning)
    says = tr(
        "at {rate} {turning} holds {momentum} of angular momentum",
        rate=words.rate(asked.spin_rad_s),
        turning=turning,
        momentum=words.momentum(momenta["turning"]),
    )
    return f"{says}; {_against(asked, counter)}" if momenta.get("counter") else f"{says}."


def _against(asked, counter):
    """What the counter group holds beside what turns, as the rest of a sentence."""
    momenta, rate = asked.momenta, words.rate(asked.counter_rad_s)
    if nothing_left(asked):
        return tr(
            "{counter}, at {rate} the other way, holds just as much against it, and the whole holds none.",
            counter=counter,
            rate=rate,
        )
    share = abs(momenta["counter"] / momenta["turning"])
    if momenta["counter"] > 0:
        return tr(
            "{counter}, at {rate} the same way, adds {share} to it.",
            counter=counter,
            rate=rate,
            share=words.percent(share),
        )
    left = words.momentum(momenta["whole"])
    if share > 1:
        return tr(
            "{counter}, at {rate} the other way, holds more than that against it, and {momentum} is left.",
            counter=counter,
            rate=rate,
            momentum=left,
        )
    return tr(
        "{counter}, at {rate} the other way, holds {share} against it, and {momentum} is left.",
        counter=counter,
        rate=rate,
        share=words.percent(share),
        momentum=left,
    )


def short(asked):
    """What to know of it in a few words: how heavy it is, and whether what turns keeps to its axis."""
    ratio = spin_to_transverse(asked.bodies["turning"])
    keeps = ratio is not None and ratio > 1 + _ALIKE
    weight = _weight(asked, "whole")
    if ratio is None or not asked.spin_rad_s:
        return weight
    if keeps:
        return tr("{mass}, keeps to its axis", mass=weight)
    return tr("{mass}, does not keep to its axis", mass=weight)


def _shape(asked):
    """Whether what turns keeps its axis when it is left to itself: the greatest axis lasts, the least goes over in time, the middle at once."""
    body, name = asked.bodies["turning"], asked.called("turning")
    ratio = spin_to_transverse(body)
    if ratio is None:
        return tr("{turning} is a point: it has no inertia of its own.", turning=name)
    has = {"turning": name, "times": words.times(ratio)}
    if ratio > 1 + _ALIKE:
        return tr(
            "{turning} has {times} the inertia about its spin axis that it has across it: left to itself it keeps turning about that axis.",
            **has,
        )
    if ratio >= 1 - _ALIKE:
        return tr(
            "{turning} has as much inertia about its spin axis as about one across it: left to itself it keeps to neither.",
            turning=name,
        )
    least = sum(principal(body)[0]) - greater_transverse(body) - body.inertia_kg_m2[2, 2]
    if body.inertia_kg_m2[2, 2] > least * (1 + _ALIKE):
        return tr(
            "{turning} has {times} the inertia about its spin axis that it has across it, which is neither the most nor the least: left to itself "
            "it soon turns over, and back, again and again.",
            **has,
        )
    return tr(
        "{turning} has {times} the inertia about its spin axis that it has across it: left to itself it goes over in time, and turns end over "
        "end.",
        **has,
    )


def _overlaps(pairs):
    if not pairs:
        return ""
    named = listed([tr("{one} with {other}", one=one, other=other) for one, other in pairs[:_MOST_NAMED]])
    if len(pairs) <= _MOST_NAMED:
        return tr("some parts fill the same space, and are counted in full all the same: {pairs}.", pairs=named)
    return tr_many(
        "some parts fill the same space, and are counted in full all the same: {pairs}, and {count} more pair.",
        "some parts fill the same space, and are counted in full all the same: {pairs}, and {count} more pairs.",
        len(pairs) - _MOST_NAMED,
        pairs=named,
    )


def _beyond_rim(asked):
    """What turns, and what is aboard, farther from the axis than the floor: left from another radius, most often."""
    turning = [part.name for part in asked.craft.parts if part.group == "turning"]
    reaches = {name: (reach_m(asked.solids[name]), _OUTER) for name in turning}
    reaches |= {load.name: (math.hypot(*load.place_m[:2]), 1.0) for load in asked.craft.loads or ()}
    move = asked.craft.move
    if move is not None:
        reaches[tr("the mass that moves")] = (max(move.from_radius_m, move.to_radius_m), 1.0)
    far = {name: reach for name, (reach, most) in reaches.items() if reach > most * asked.rim_m * (1 + _STEADY)}
    if not far:
        return ""
    farthest, floor = (words.short(one, asked.units) for one in (max(far.values()), asked.rim_m))
    names = list(far)[:_MOST_NAMED]
    if len(far) == 1:
        return tr(
            "{what} reaches beyond the floor, which is {floor} from the axis: {distance}.",
            what=names[0],
            floor=floor,
            distance=farthest,
        )
    more = [tr("{count} more", count=len(far) - _MOST_NAMED)] if len(far) > _MOST_NAMED else []
    return tr(
        "{what} reach beyond the floor, which is {floor} from the axis: up to {distance}.",
        what=listed([*names, *more]),
        floor=floor,
        distance=farthest,
    )
