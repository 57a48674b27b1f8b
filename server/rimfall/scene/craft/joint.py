"""The bearing between what turns and what does not: friction, wear, what friction does to the still part, and what happens if it seizes."""

from ...phrases import speed
from ...physics.constants import RPM_RAD_S, TURN_RAD
from ...vessel import joint
from . import words
from .saying import sentence

_AT_REST = 1e-9  # of the spin
_YEAR_S = 365.25 * 86_400.0


def finding(asked):
    """The finding as data; None where it is not asked for."""
    block, other = asked.craft.joint, asked.across
    if block is None:
        return None
    if other is None:
        return _nothing("all of the craft turns as one: there is nothing for a joint to run against.")
    rates = asked.spin_rad_s, asked.counter_rad_s if other == "counter" else 0.0
    inertias = asked.inertia("turning"), asked.inertia(other)
    relative = rates[0] - rates[1]
    torque = joint.friction_torque_n_m(block.friction_coefficient, block.load_n, block.radius_m)
    drag, stuck = joint.drag_along_s(inertias, relative, torque), joint.seized(inertias, rates)
    data = {
        "relative_rpm": relative / RPM_RAD_S,
        "surface_speed_m_s": abs(relative) * block.radius_m,
        "friction_torque_n_m": torque,
        "heat_w": torque * abs(relative),
        "turns_a_year": abs(relative) / TURN_RAD * _YEAR_S,
        "drag_along_s": drag,
        "seized": stuck and {"rate_rpm": stuck.rate_rad_s / RPM_RAD_S, "heat_j": stuck.heat_j},
    }
    return data | {"says": [sentence(said) for said in _says(asked, data) if said], "assumptions": _ASSUMPTIONS}


_ASSUMPTIONS = [
    "Friction is dry and does not change with speed: coefficient times load times radius. Seals, motors and gears are left out.",
    "How hard the jolt is if it seizes depends on how quickly it does, and on what bends; that is left out.",
]
_FIGURES = (
    "relative_rpm",
    "surface_speed_m_s",
    "friction_torque_n_m",
    "heat_w",
    "turns_a_year",
    "drag_along_s",
    "seized",
)


def _nothing(say):
    return dict.fromkeys(_FIGURES) | {"says": [sentence(say)], "assumptions": []}


def _says(asked, data):
    block, other = asked.craft.joint, asked.called(asked.across)
    if not data["relative_rpm"]:
        yield f"{asked.called('turning')} does not turn against {other}: the joint has nothing to do."
        return
    yield (
        f"the joint runs at {words.rate(data['relative_rpm'] * RPM_RAD_S)}, {speed(data['surface_speed_m_s'], asked.units)} at its bearing: "
        f"{words.figure(data['turns_a_year'])} turns a year{_through(block.passages)}."
    )
    if not data["heat_w"]:
        yield "without friction it warms nothing, and drags nothing along."
    else:
        yield f"friction takes {words.torque(data['friction_torque_n_m'], asked.units)} and makes {words.power(data['heat_w'])} of heat."
        yield _dragged(asked, data)
    yield _stuck(asked, data)


def _through(passages):
    if not passages:
        return ""
    if passages == 1:
        return ", and what leads through it must bear every one of them"
    return f", and each of the {passages:,} passages through it must bear every one of them"


def _dragged(asked, data):
    other = asked.called(asked.across)
    if not asked.inertia("turning"):
        return f"{asked.called('turning')} has no inertia about the axis: friction stops it at once."
    if not data["drag_along_s"]:
        return f"{other} has no inertia about the axis: friction takes it along at once."
    return f"with nothing to hold it, {other} is dragged along until both turn as one, after {words.duration(data['drag_along_s'])}."


def _stuck(asked, data):
    stuck, other = data["seized"], asked.called(asked.across)
    if stuck is None:
        return ""
    broken = f"{words.energy(stuck['heat_j'])} become heat, or break something"
    left = stuck["rate_rpm"] * RPM_RAD_S
    if abs(left) < _AT_REST * asked.spin_rad_s:
        return f"if it seizes, all comes to rest, and {broken}."
    return f"if it seizes, {asked.called('turning')} and {other} go on as one at {words.rate_from(left, asked.spin_rad_s)}, and {broken}."
