"""Somebody or something moves along a radius: what the spin does, or what keeps it, and how hard the mass pushes sideways."""

from ...language import tr, tr_later
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
    return data | {
        "says": [sentence(said) for said in _says(asked, data) if said],
        "assumptions": [tr(one) for one in _ASSUMPTIONS],
    }


_ASSUMPTIONS = (
    tr_later(
        "The mass counts besides the parts, from its first place on. It moves at the same speed all the way: starting and stopping are left "
        "out."
    ),
    tr_later("The axis stays where it is: what the mass does to the balance is left out. The joint has no friction."),
    tr_later(
        "The sideways push is that of a spin which is steady at each instant; while the spin changes, that takes a little off it."
    ),
)


def _state(asked, rate):
    return {"spin_rpm": rate / RPM_RAD_S, "gravity_m_s2": rate**2 * asked.rim_m}


def _says(asked, data):
    block, units = asked.craft.move, asked.units
    outward = block.to_radius_m > block.from_radius_m
    if block.to_radius_m == block.from_radius_m:
        yield tr("the mass stays where it is, and so does everything else.")
        return
    mass = words.mass(block.mass_kg, units)
    what = tr("{mass} moved outward", mass=mass) if outward else tr("{mass} moved inward", mass=mass)
    if not asked.spin_rad_s:
        yield tr("{what} changes nothing: nothing turns.", what=what)
        return
    yield _kept(asked, data, what) if block.holds == "spin" else _changed(data, what, outward)
    push, time = words.force(data["sideways_n"], units), words.duration(data["duration_s"])
    yield (
        tr("on the way, which takes {time}, the mass pushes antispinward with up to {push}.", time=time, push=push)
        if outward
        else tr("on the way, which takes {time}, the mass pushes spinward with up to {push}.", time=time, push=push)
    )
    yield _work(data, outward)


def _changed(data, what, outward):
    spins, gravities = (
        _before_and_after(data, name, unit) for name, unit in (("spin_rpm", 1.0), ("gravity_m_s2", words.G0_M_S2))
    )
    places = {
        "what": what,
        "spin": spins[0],
        "new_spin": spins[1],
        "gravity": gravities[0],
        "new_gravity": gravities[1],
    }
    if outward:
        return tr(
            "{what} slows the spin from {spin} to {new_spin}\u00a0rpm, and gravity at the rim goes from {gravity} to {new_gravity}\u00a0g.",
            **places,
        )
    return tr(
        "{what} speeds up the spin from {spin} to {new_spin}\u00a0rpm, and gravity at the rim goes from {gravity} to {new_gravity}\u00a0g.",
        **places,
    )


def _before_and_after(data, name, unit):
    """A figure before and after, to as many digits as show the change."""
    before, after = (data[at][name] / unit for at in ("before", "after"))
    return words.precise(before, after - before), words.precise(after, after - before)


def _kept(asked, data, what):
    takes, alone = data["motor_j"] > 0, asked.across is None
    places = {
        "what": what,
        "torque": words.torque(data["torque_n_m"], asked.units),
        "power": words.power(data["power_w"]),
        "energy": words.energy(abs(data["motor_j"])),
    }
    if takes and alone:
        return tr(
            "{what} with the spin kept takes up to {torque} and {power} from outside, {energy} in all.",
            **places,
        )
    if takes:
        return tr("{what} with the spin kept takes up to {torque} and {power} at the joint, {energy} in all.", **places)
    if alone:
        return tr(
            "{what} with the spin kept gives back up to {torque} and {power} from outside, {energy} in all.",
            **places,
        )
    return tr(
        "{what} with the spin kept gives back up to {torque} and {power} at the joint, {energy} in all.", **places
    )


def _work(data, outward):
    if not data["work_j"]:
        return ""
    energy = words.energy(abs(data["work_j"]))
    if outward:
        return tr("it falls outward by itself: {energy} must be braked.", energy=energy)
    return tr("it must be hauled in, which takes {energy}.", energy=energy)
