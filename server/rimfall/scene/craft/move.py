"""Somebody or something moves along a radius: what the spin does, or what keeps it, and how hard the mass pushes sideways."""

from ...physics.constants import RPM_RAD_S
from ...vessel import move
from . import words
from .saying import sentence


def finding(asked):
    """The finding as data; None where it is not asked for."""
    block = asked.craft.move
    if block is None:
        return None
    keeps_spin = block.holds == "spin"
    course = move.course(
        asked.inertia("turning"),
        asked.spin_rad_s,
        block.mass_kg,
        block.from_radius_m,
        block.to_radius_m,
        block.speed_m_s,
        keeps_spin,
    )
    after = float(course.rate_rad_s[-1])
    torque = float(abs(course.torque_n_m).max())
    data = {
        "holds": block.holds,
        "before": _state(asked, asked.spin_rad_s),
        "after": _state(asked, after),
        "duration_s": float(course.time_s[-1]),
        "sideways_n": float(abs(course.sideways_n).max()),
        "work_j": course.work_j,
        "motor_j": course.motor_j if keeps_spin else None,
        "torque_n_m": torque if keeps_spin else None,
        "power_w": torque * asked.spin_rad_s if keeps_spin else None,
        "time_s": course.time_s.tolist(),
        "radius_m": course.radius_m.tolist(),
        "spin_rpm": (course.rate_rad_s / RPM_RAD_S).tolist(),
        "push_n": course.sideways_n.tolist(),
    }
    return data | {"says": [sentence(said) for said in _says(asked, data) if said], "assumptions": _ASSUMPTIONS}


_ASSUMPTIONS = [
    "The mass counts besides the parts, from its first place on. It moves at the same speed all the way: starting and stopping are left out.",
    "The axis stays where it is: what the mass does to the balance is left out. The joint has no friction.",
    "The sideways push is that of a spin which is steady at each instant; while the spin changes, that takes a little off it.",
]


def _state(asked, rate):
    return {"spin_rpm": rate / RPM_RAD_S, "gravity_m_s2": rate**2 * asked.rim_m}


def _says(asked, data):
    block, units = asked.craft.move, asked.units
    outward = block.to_radius_m > block.from_radius_m
    if block.to_radius_m == block.from_radius_m:
        yield "the mass stays where it is, and so does everything else."
        return
    what = f"{words.mass(block.mass_kg, units)} moved {'outward' if outward else 'inward'}"
    if not asked.spin_rad_s:
        yield f"{what} changes nothing: nothing turns."
        return
    yield _kept(asked, data, what) if block.holds == "spin" else _changed(data, what, outward)
    side = "antispinward" if outward else "spinward"
    push, time = words.force(data["sideways_n"], units), words.duration(data["duration_s"])
    yield f"on the way, which takes {time}, the mass pushes {side} with up to {push}."
    yield _work(data, outward)


def _changed(data, what, outward):
    spins, gravities = (
        _from_to(data, name, unit) for name, unit in (("spin_rpm", 1.0), ("gravity_m_s2", words.G0_M_S2))
    )
    verb = "slows" if outward else "speeds up"
    return f"{what} {verb} the spin {spins}{words.NB}rpm, and gravity at the rim goes {gravities}{words.NB}g."


def _from_to(data, name, unit):
    """A figure before and after, to as many digits as show the change."""
    before, after = (data[at][name] / unit for at in ("before", "after"))
    return f"from {words.precise(before, after - before)} to {words.precise(after, after - before)}"


def _kept(asked, data, what):
    does = "takes" if data["motor_j"] > 0 else "gives back"
    torque, power = words.torque(data["torque_n_m"], asked.units), words.power(data["power_w"])
    where = "from outside" if asked.across is None else "at the joint"
    return f"{what} with the spin kept {does} up to {torque} and {power} {where}, {words.energy(abs(data['motor_j']))} in all."


def _work(data, outward):
    if not data["work_j"]:
        return ""
    if outward:
        return f"it falls outward by itself: {words.energy(abs(data['work_j']))} must be braked."
    return f"it must be hauled in, which takes {words.energy(abs(data['work_j']))}."
