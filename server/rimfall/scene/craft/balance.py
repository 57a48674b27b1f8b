"""Whether what turns stays on its axis with its loads: offset, force on the bearing, gravity round the rim, tilt, and weights against it."""

import math

import numpy as np

from ...language import tr
from ...phrases import listed
from ...physics.constants import G0_M_S2
from ...vessel import balance
from ...vessel.bodies import joined
from ...vessel.solids import Solid, body_of
from . import words
from .asked import place_of
from .saying import sentence

_EVEN_M = 1e-6  # an offset smaller than this is none
_LEVEL_DEG = 1e-6  # a tilt smaller than this is none
_SAME_SIDE_DEG = 1.0
_ROUND_DEG = np.linspace(0.0, 360.0, 73)


def finding(asked):
    """The finding as data; None where neither loads nor ballast are told."""
    craft = asked.craft
    if craft.loads is None and craft.ballast is None:
        return None
    body = _loaded(asked)
    away, azimuth = balance.offset(body)
    whole, omega = asked.bodies["whole"].mass_kg + body.mass_kg - asked.bodies["turning"].mass_kg, asked.spin_rad_s
    shift, tilt = away * body.mass_kg / whole, balance.tilt(body)
    least, greatest = balance.gravity_round(asked.rim_m, shift, omega)
    data = {
        "mass_kg": body.mass_kg,
        "offset_m": away,
        "offset_azimuth_deg": math.degrees(azimuth),
        "bearing_force_n": body.mass_kg * omega**2 * away,
        "bearing_force_free_n": body.mass_kg * omega**2 * (away - shift),
        "bearing_moment_n_m": balance.bearing_moment_n_m(body, omega),
        "axis_moves_m": shift,
        "gravity": {
            "held_m_s2": omega**2 * asked.rim_m,
            "least_m_s2": least,
            "least_azimuth_deg": math.degrees(azimuth),
            "greatest_m_s2": greatest,
            "greatest_azimuth_deg": math.degrees(azimuth) + (180.0 if azimuth <= 0 else -180.0),
            "azimuth_deg": _ROUND_DEG.tolist(),
            "round_m_s2": balance.gravity_at(asked.rim_m, shift, np.radians(_ROUND_DEG) - azimuth, omega).tolist(),
        },
        "tilt_deg": math.degrees(tilt[0]),
        "tilt_azimuth_deg": math.degrees(tilt[1]),
        "lean_deg": math.degrees(tilt[0]),
        "ballast": _ballast(asked, body),
    }
    return data | {"says": [sentence(said) for said in _says(asked, data) if said], "assumptions": _assumptions(asked)}


def _loaded(asked):
    """The Body of what turns with its loads."""
    loads = [body_of(Solid("point", load.mass_kg, place_of(load))) for load in asked.craft.loads or ()]
    return joined([asked.bodies["turning"], *loads])


def _ballast(asked, body):
    block = asked.craft.ballast
    if block is None:
        return None
    radius = block.radius_m or asked.rim_m
    weights = balance.two_plane_weights(body, radius, block.planes_m) if radius else None
    return weights and {
        "radius_m": radius,
        "weights": [
            {"plane_m": one.plane_m, "mass_kg": one.mass_kg, "azimuth_deg": math.degrees(one.azimuth_rad)}
            for one in weights
        ],
    }


def _says(asked, data):
    name = asked.called("turning")
    if data["offset_m"] <= _EVEN_M:
        yield tr("{turning} is balanced: its centre of mass is on the axis.", turning=name)
    else:
        off, side = words.short(data["offset_m"], asked.units), _side(asked, data)
        yield (
            tr(
                "with its loads {turning} has its centre of mass {distance} off the axis, toward {side}.",
                turning=name,
                distance=off,
                side=side,
            )
            if asked.craft.loads
            else tr(
                "{turning} has its centre of mass {distance} off the axis, toward {side}.",
                turning=name,
                distance=off,
                side=side,
            )
        )
        yield _held(asked, data)
        yield _round(asked, data)
    yield _tilted(asked, data)
    yield _weights(asked, data)


def _side(asked, data):
    """Where the heavy side is: by the one load that is there, or by its azimuth."""
    azimuth = data["offset_azimuth_deg"]
    for load in asked.craft.loads or ():
        x, y, _ = load.place_m
        if (x or y) and abs((math.degrees(math.atan2(y, x)) - azimuth + 180) % 360 - 180) < _SAME_SIDE_DEG:
            return f"{load.name} ({words.angle_to(azimuth)})"
    return words.angle_to(azimuth)


def _held(asked, data):
    if not asked.spin_rad_s:
        return ""
    force, free = (words.force(data[name], asked.units) for name in ("bearing_force_n", "bearing_force_free_n"))
    if asked.across is None:
        return tr(
            "nothing holds its axis, so it turns about its centre of mass; to hold the axis in place would take {force}.",
            force=force,
        )
    return tr(
        "the joint takes {force}, which goes round with it, or {free_force} where the rest of the craft is free to give way.",
        force=force,
        free_force=free,
    )


def _round(asked, data):
    gravity = data["gravity"]
    if not gravity["held_m_s2"]:
        return ""
    least, most = gravity["least_m_s2"] / G0_M_S2, gravity["greatest_m_s2"] / G0_M_S2
    shown = [words.precise(one, most - least) for one in (least, most)]
    away = words.short(data["axis_moves_m"], asked.units)
    if shown[0] == shown[1]:
        return tr("left free it turns about a point {distance} from its axis, which nobody feels.", distance=away)
    return tr(
        "left free it turns about a point {distance} from its axis: round the rim gravity goes from {least}\u00a0g on the heavy side to "
        "{most}\u00a0g on the light one.",
        distance=away,
        least=shown[0],
        most=shown[1],
    )


def _tilted(asked, data):
    if data["tilt_deg"] < _LEVEL_DEG:
        return ""
    tilt = words.angle(data["tilt_deg"])
    if asked.across is None or not asked.spin_rad_s:
        return tr(
            "it is skew as well: left free it would turn about an axis {angle} from its own, and the floor would lean by as much.",
            angle=tilt,
        )
    return tr(
        "it is skew as well: left free it would turn about an axis {angle} from its own, and the floor would lean by as much; held, it twists the "
        "joint with {torque}.",
        angle=tilt,
        torque=words.torque(data["bearing_moment_n_m"], asked.units),
    )


def _weights(asked, data):
    ballast = data["ballast"]
    if asked.craft.ballast is None:
        return ""
    if data["offset_m"] <= _EVEN_M and data["tilt_deg"] < _LEVEL_DEG:
        return tr("it needs no weights.")
    if not (asked.craft.ballast.radius_m or asked.rim_m):
        return tr("weights need a radius: all that turns is on the axis, and so is the floor.")
    if ballast is None:
        return tr("weights in one plane cannot balance it, because it is skew: the two planes must be apart.")
    places = {
        "weights": listed([_weight(one, asked.units) for one in ballast["weights"]]),
        "distance": words.short(ballast["radius_m"], asked.units),
    }
    if sum(one["mass_kg"] for one in ballast["weights"]) > asked.bodies["turning"].mass_kg:
        return tr(
            "{weights}, {distance} from the axis, balance it, but together they weigh more than {turning} itself.",
            turning=asked.called("turning"),
            **places,
        )
    return tr("{weights}, {distance} from the axis, balance it.", **places)


def _weight(one, units):
    return tr(
        "{mass} at {azimuth} in the plane at {place}",
        mass=words.mass(one["mass_kg"], units),
        azimuth=words.angle_to(one["azimuth_deg"]),
        place=words.signed(one["plane_m"], units),
    )


def _assumptions(asked):
    return [
        tr("Azimuths are counted from x toward y, the way it turns. Loads and weights are points."),
        tr("The rim is round, and its middle is on the axis of the drawing."),
        *([tr("A counter-turning part is taken to be balanced.")] if "counter" in asked.bodies else []),
    ]
