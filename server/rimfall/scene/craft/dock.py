"""A visitor at the rim or the hub, and when to let go of it so that it leaves the right way."""

import math

from ...vessel import dock
from .words import angle, duration, figure, force, gravity, mass, rate, short, velocity

DRIFT_S = 10.0
_WORTH_TELLING_S = 86_400.0  # a visitor that could push for longer has other worries

ASSUMPTIONS = (
    "The visitor's mass is taken as it is at the start: the propellant it burns is not taken off it.",
    "Toward 0° is where the craft's x axis points at time 0, and angles grow the way it spins.",
)


def finding(asked):
    """The finding as data; None where nothing docks."""
    block = asked.craft.dock
    if block is None:
        return None
    if not asked.spin_rad_s:
        return {"says": ["Nothing turns: it docks as with any craft."], "assumptions": []}
    come = _at_rim(block, asked) if block.at == "rim" else _at_hub(block, asked)
    leaves, leaving = _leaving(block, asked)
    return {
        **come,
        "leaving": leaves,
        "motions": _motions(block, leaves["wait_s"]),
        "says": [*come["says"], *leaving],
        "assumptions": [*come["assumptions"], *ASSUMPTIONS],
    }


def _at_rim(block, asked):
    held = dock.hold_at_rim(asked.rim_m, asked.spin_rad_s, block.mass_kg, block.exhaust_m_s)
    drift = dock.adrift(asked.rim_m, asked.spin_rad_s, DRIFT_S)
    push, minute = force(held.push_n, asked.units), mass(held.propellant_kg_s * 60, asked.units)
    lasts_s = block.mass_kg / held.propellant_kg_s if held.propellant_kg_s else math.inf
    lasts = f": at this rate its whole mass would last {duration(lasts_s)}" if lasts_s < _WORTH_TELLING_S else ""
    away = short(drift.away_m, asked.units)
    says = [
        f"To stay beside the rim it must fly at {velocity(held.speed_m_s, asked.units)}.",
        f"All the while it must push toward the axis with {push}, {gravity(held.acceleration_m_s2)} for those in it.",
        f"That takes {minute} of propellant a minute{lasts}.",
        f"If it stops pushing, it is {away} off the rim {figure(DRIFT_S)} s later{_behind(drift.along_m, asked.units)}.",
    ]
    return {**vars(held), "drift": vars(drift) | {"time_s": DRIFT_S}, "says": says, "assumptions": []}


def _behind(along_m, units):
    return f", and the place it left has run {short(along_m, units)} ahead of it" if along_m <= -0.005 else ""


def _at_hub(block, asked):
    inertia = block.mass_kg * block.radius_m**2 / 2
    hub = dock.match_hub(inertia, asked.spin_rad_s, block.thrust_n, block.radius_m, block.exhaust_m_s)
    propellant = mass(hub.propellant_kg, asked.units)
    says = [
        f"To dock at a hub that turns, it must turn at {rate(asked.spin_rad_s)} too.",
        f"That takes {duration(hub.time_s)} of thrust and {propellant} of propellant.",
        "At a hub that a bearing holds still it need not turn; whoever comes aboard then has the joint to pass.",
    ]
    assumed = f"It is a full cylinder of {short(block.radius_m, asked.units)} radius, with its thrusters on its side."
    return {
        **vars(hub),
        "rate_rad_s": asked.spin_rad_s,
        "inertia_kg_m2": inertia,
        "says": says,
        "assumptions": [assumed],
    }


def _leaving(block, asked):
    """When a place of the rim that is at 0° at time 0 lets go of what shall leave toward the block's direction."""
    direction = math.radians(block.leaves_toward_deg)
    azimuth = dock.let_go_azimuth_rad(direction, asked.spin_rad_s)
    wait = dock.wait_s(azimuth, 0.0, asked.spin_rad_s)
    speed = asked.spin_rad_s * asked.rim_m
    data = {"speed_m_s": speed, "azimuth_deg": math.degrees(azimuth) % 360, "wait_s": wait}
    toward, every = _degrees(block.leaves_toward_deg), duration(2 * math.pi / asked.spin_rad_s)
    return data, [
        f"To leave toward {toward} without an engine, let go of the rim a quarter turn before it points there.",
        f"For a place of the rim that is at 0° now, that is in {duration(wait)}, and again every {every}.",
        f"It leaves at {velocity(speed, asked.units)}.",
    ]


def _degrees(value):
    return "0°" if value == 0 else ("−" if value < 0 else "") + angle(value)


def _motions(block, wait_s):
    """The same as motions of a scene."""
    comes = {
        "kind": "approach",
        "name": "comes",
        "dock": block.at,
        "mass_kg": block.mass_kg,
        "size_m": 2 * block.radius_m,
    }
    from_outside = {"elevation_deg": -40.0} if block.at == "rim" else {}
    return [comes | from_outside, {"kind": "let_go", "name": "leaves", "start_s": wait_s}]
