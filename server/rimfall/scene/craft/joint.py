"""The bearing between what turns and what does not: friction, wear, what friction does to the still part, and what happens if it seizes."""

from ...language import tr, tr_later, written
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
        return _nothing(tr("all of the craft turns as one: there is nothing for a joint to run against."))
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
    return data | {
        "says": [sentence(said) for said in _says(asked, data) if said],
        "assumptions": [tr(one) for one in _ASSUMPTIONS],
    }


_ASSUMPTIONS = (
    tr_later(
        "Friction is dry and does not change with speed: coefficient times load times radius. Seals, motors and gears are left out."
    ),
    tr_later("How hard the jolt is if it seizes depends on how quickly it does, and on what bends; that is left out."),
)
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
    if not data["relative_rpm"]:
        yield tr(
            "{turning} does not turn against {other}: the joint has nothing to do.",
            turning=asked.called("turning"),
            other=asked.called(asked.across),
        )
        return
    yield _runs(asked, data)
    if not data["heat_w"]:
        yield tr("without friction it warms nothing, and drags nothing along.")
    else:
        yield tr(
            "friction takes {torque} and makes {power} of heat.",
            torque=words.torque(data["friction_torque_n_m"], asked.units),
            power=words.power(data["heat_w"]),
        )
        yield _dragged(asked, data)
    yield _stuck(asked, data)


def _runs(asked, data):
    passages = asked.craft.joint.passages
    places = {
        "rate": words.rate(data["relative_rpm"] * RPM_RAD_S),
        "speed": speed(data["surface_speed_m_s"], asked.units),
        "turns": words.figure(data["turns_a_year"]),
    }
    if not passages:
        return tr("the joint runs at {rate}, {speed} at its bearing: {turns} turns a year.", **places)
    if passages == 1:
        return tr(
            "the joint runs at {rate}, {speed} at its bearing: {turns} turns a year, and what leads through it must bear every one of them.",
            **places,
        )
    return tr(
        "the joint runs at {rate}, {speed} at its bearing: {turns} turns a year, and each of the {passages} passages through it must bear every "
        "one of them.",
        passages=written(passages, ","),
        **places,
    )


def _dragged(asked, data):
    other = asked.called(asked.across)
    if not asked.inertia("turning"):
        return tr(
            "{turning} has no inertia about the axis: friction stops it at once.", turning=asked.called("turning")
        )
    if not data["drag_along_s"]:
        return tr("{other} has no inertia about the axis: friction takes it along at once.", other=other)
    return tr(
        "with nothing to hold it, {other} is dragged along until both turn as one, after {time}.",
        other=other,
        time=words.duration(data["drag_along_s"], "in"),
    )


def _stuck(asked, data):
    stuck = data["seized"]
    if stuck is None:
        return ""
    energy, left = words.energy(stuck["heat_j"]), stuck["rate_rpm"] * RPM_RAD_S
    if abs(left) < _AT_REST * asked.spin_rad_s:
        return tr("if it seizes, all comes to rest, and {energy} become heat, or break something.", energy=energy)
    return tr(
        "if it seizes, {turning} and {other} go on as one at {rate}, and {energy} become heat, or break something.",
        turning=asked.called("turning"),
        other=asked.called(asked.across),
        rate=words.rate_from(left, asked.spin_rad_s),
        energy=energy,
    )
