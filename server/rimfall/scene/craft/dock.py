"""A visitor at the rim or the hub, and when to let go of it so that it leaves the right way."""

import math

from ...language import tr, tr_as, tr_later
from ...vessel import dock
from .words import angle, duration, figure, force, gravity, mass, rate, short, velocity

DRIFT_S = 10.0
_BEHIND_M = 0.005  # less is none worth a word
_WORTH_TELLING_S = 86_400.0  # a visitor that could push for longer has other worries

ASSUMPTIONS = (
    tr_later("The visitor's mass is taken as it is at the start: the propellant it burns is not taken off it."),
    tr_later("Toward 0° is where the craft's x axis points at time 0, and angles grow the way it spins."),
)


def finding(asked):
    """The finding as data; None where nothing docks."""
    block = asked.craft.dock
    if block is None:
        return None
    if not asked.spin_rad_s:
        return {"says": [tr("Nothing turns: it docks as with any craft.")], "assumptions": []}
    come = _at_rim(block, asked) if block.at == "rim" else _at_hub(block, asked)
    leaves, leaving = _leaving(block, asked)
    return {
        **come,
        "leaving": leaves,
        "motions": _motions(block, leaves["wait_s"]),
        "says": [*come["says"], *leaving],
        "assumptions": [*come["assumptions"], *map(tr, ASSUMPTIONS)],
    }


def _at_rim(block, asked):
    held = dock.hold_at_rim(asked.rim_m, asked.spin_rad_s, block.mass_kg, block.exhaust_m_s)
    drift = dock.adrift(asked.rim_m, asked.spin_rad_s, DRIFT_S)
    says = [
        tr("To stay beside the rim it must fly at {speed}.", speed=velocity(held.speed_m_s, asked.units)),
        tr(
            "All the while it must push toward the axis with {push}, {gravity} for those in it.",
            push=force(held.push_n, asked.units),
            gravity=gravity(held.acceleration_m_s2),
        ),
        _burns(block, held, asked.units),
        _adrift(drift, asked.units),
    ]
    return {**vars(held), "drift": vars(drift) | {"time_s": DRIFT_S}, "says": says, "assumptions": []}


def _burns(block, held, units):
    minute = mass(held.propellant_kg_s * 60, units)
    lasts_s = block.mass_kg / held.propellant_kg_s if held.propellant_kg_s else math.inf
    if lasts_s >= _WORTH_TELLING_S:
        return tr("That takes {propellant} of propellant a minute.", propellant=minute)
    return tr(
        "That takes {propellant} of propellant a minute: at this rate its whole mass would last {time}.",
        propellant=minute,
        time=duration(lasts_s),
    )


def _adrift(drift, units):
    places = {"distance": short(drift.away_m, units), "time": f"{figure(DRIFT_S)} s"}
    if drift.along_m > -_BEHIND_M:
        return tr("If it stops pushing, it is {distance} off the rim {time} later.", **places)
    return tr(
        "If it stops pushing, it is {distance} off the rim {time} later, and the place it left has run {ahead} ahead of it.",
        ahead=short(drift.along_m, units),
        **places,
    )


def _at_hub(block, asked):
    inertia = block.mass_kg * block.radius_m**2 / 2
    hub = dock.match_hub(inertia, asked.spin_rad_s, block.thrust_n, block.radius_m, block.exhaust_m_s)
    says = [
        tr("To dock at a hub that turns, it must turn at {rate} too.", rate=rate(asked.spin_rad_s)),
        tr(
            "That takes {time} of thrust and {propellant} of propellant.",
            time=duration(hub.time_s),
            propellant=mass(hub.propellant_kg, asked.units),
        ),
        tr("At a hub that a bearing holds still it need not turn; whoever comes aboard then has the joint to pass."),
    ]
    assumed = tr(
        "It is a full cylinder of {radius} radius, with its thrusters on its side.",
        radius=short(block.radius_m, asked.units),
    )
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
        tr(
            "To leave toward {angle} without an engine, let go of the rim a quarter turn before it points there.",
            angle=toward,
        ),
        tr(
            "For a place of the rim that is at 0° now, that is in {time}, and again every {period}.",
            time=duration(wait, "in"),
            period=every,
        ),
        tr("It leaves at {speed}.", speed=velocity(speed, asked.units)),
    ]


def _degrees(value):
    return "0°" if value == 0 else ("−" if value < 0 else "") + angle(value)


def _motions(block, wait_s):
    """The same as motions of a scene."""
    comes = {
        "kind": "approach",
        "name": tr_as("a name in a scene", "comes"),
        "dock": block.at,
        "mass_kg": block.mass_kg,
        "size_m": 2 * block.radius_m,
    }
    from_outside = {"elevation_deg": -40.0} if block.at == "rim" else {}
    leaves = {"kind": "let_go", "name": tr_as("a name in a scene", "leaves"), "start_s": wait_s}
    return [comes | from_outside, leaves]
