"""One throw that arrives, or nearly, as plain data: how it is thrown, how it comes in, what is in its way, where it goes."""

import numpy as np

from ...motions.apexes import AXIS_SHARE
from ...physics import frames
from ...physics.constants import TURN_RAD
from ...shots.catch import relative
from ...shots.shooting import Shooting
from ...shots.throws import speed_heading_elevation
from ..json_arrays import finite

_A_SECOND, _LEAST, _MOST = 24, 25, 120  # points of a path
_PARTS = 25  # of a flight, between which it goes less than half round


def way_of(aimed, throw, exactly, errors_m, units):
    """The data of a Throw; exactly: its speed, heading and elevation; errors_m (3,): how far errors make it miss."""
    thrower, target = aimed.aim.question.thrower, aimed.aim.question.target
    start_s, catch = thrower.hand.time_s, throw.catch
    blocked = catch.surface is not None
    samples = path_of(aimed, catch.flight.path, start_s, catch.ends_s)
    meets_s = start_s + throw.flight_s
    moving = _meant(aimed, throw) if blocked else relative(thrower, target, catch.flight, catch.time_s)[1]
    back = tuple(float(each[0]) for each in speed_heading_elevation(-moving[None]))
    speed, heading, elevation = exactly
    return {
        "speed_m_s": speed,
        "heading_deg": heading,
        "elevation_deg": elevation,
        "flight_s": throw.flight_s,
        "misses_m": 0.0 if blocked and aimed.aim.nearest is None else catch.misses_m,
        "turns": _turns(aimed, throw),
        "arrives": {
            "speed_m_s": float(np.linalg.norm(moving)),
            "velocity_m_s": moving.tolist(),
            "from_heading_deg": back[1],
            "from_elevation_deg": back[2],
        },
        "meets": _hands_at(aimed, meets_s),
        "blocked_by": _blocked(aimed, catch, samples) if blocked else None,
        "sensitivity": dict(
            zip(("speed_1_percent_m", "elevation_1_deg_m", "heading_1_deg_m"), errors_m.tolist(), strict=True)
        ),
        "path": samples,
    }


def path_of(aimed, path, start_s, end_s):
    """Points of a path from the release to end_s, as arrays."""
    setting, chart = aimed.setting, aimed.setting.habitat.chart(aimed.plan.floor)
    count = int(np.clip(np.ceil(_A_SECOND * (end_s - start_s)) + 1, _LEAST, _MOST))
    times = np.linspace(start_s, end_s, count)
    inertial = path.at(times)[0]
    angle = setting.habitat.spin.angle_rad(times)
    rotating = frames.turn(inertial, -angle)
    if chart.winds:
        swept = np.concatenate([[0.0], np.cumsum(frames.azimuth_steps(inertial))]) - (angle - angle[0])
        along = aimed.plan.place[0] + setting.habitat.radius_m * swept
    else:
        along = chart.along(rotating)
    arrays = {
        "time_s": times,
        "along_m": along,
        "height_m": chart.height(rotating),
        "axial_m": chart.axial(rotating),
        "rotating_m": rotating,
        "inertial_m": inertial,
    }
    return {name: finite(array) for name, array in arrays.items()}


def _turns(aimed, throw):
    """Turns about the axis as seen aboard until it arrives, spinward above 0."""
    question = aimed.aim.question
    start_s = question.thrower.hand.time_s
    shares = np.linspace(0.0, 1.0, _PARTS)[1:]
    if throw.catch.surface is None:
        inertial = throw.catch.flight.path.at(start_s + shares * throw.flight_s)[0]
    else:
        throws = np.repeat(throw.velocity[None], len(shares), axis=0)
        inertial = Shooting(question.thrower).arrive(throws, shares * throw.flight_s)[0]
    inertial = np.concatenate([question.thrower.hand.position_m[None], inertial])
    if np.hypot(*inertial[0, :2]) <= AXIS_SHARE * aimed.setting.habitat.radius_m:
        inertial = inertial[1:]
    spin = aimed.setting.habitat.spin
    turned = float(spin.angle_rad(start_s + throw.flight_s) - spin.angle_rad(start_s))
    return (float(np.sum(frames.azimuth_steps(inertial))) - turned) / TURN_RAD


def _meant(aimed, throw):
    """Velocity relative to the hands (3,), along the local directions, of a throw as if nothing were in its way."""
    question, spin = aimed.aim.question, aimed.setting.habitat.spin
    lasts = np.array([throw.flight_s])
    time = question.thrower.hand.time_s + lasts
    states = Shooting(question.thrower).arrive(throw.velocity[None], lasts)
    position, velocity = frames.inertial_to_rotating(*states, spin.angle_rad(time), spin.rate_rad_s(time))
    rows = aimed.setting.habitat.chart(aimed.plan.floor).axes(position)[0]
    return rows @ (velocity[0] - question.target.seen(time)[1][0])


def _place(aimed, position):
    """Figures of a position (3,) in the turning frame."""
    chart = aimed.setting.habitat.chart(aimed.plan.floor)
    round_m = aimed.setting.habitat.radius_m * np.arctan2(position[1], position[0])
    along = float(round_m if chart.winds else chart.along(position))
    return {"along_m": along, "height_m": float(chart.height(position)), "axial_m": float(chart.axial(position))}


def _hands_at(aimed, time_s):
    """Where the hands are then."""
    position = aimed.aim.question.target.seen(np.array([time_s]))[0][0]
    angle = float(aimed.setting.habitat.spin.angle_rad(time_s))
    place = _place(aimed, position)
    if not hasattr(aimed.to, "motion"):
        place["along_m"] = aimed.to.along_m
    return {
        "time_s": time_s,
        **place,
        "rotating_m": position.tolist(),
        "inertial_m": frames.turn(position, angle).tolist(),
    }


def _blocked(aimed, catch, samples):
    """What is in the way, and the moment at which it is met."""
    setting, path = aimed.setting, catch.flight.path
    time = np.array([path.end_s])
    spin = setting.habitat.spin
    inertial = path.at(time)
    position, velocity = frames.inertial_to_rotating(*inertial, spin.angle_rad(time), spin.rate_rad_s(time))
    kind = "edge" if catch.surface.edge else catch.surface.name_at(position[0])
    speed = float(np.linalg.norm(velocity))
    into = -np.asarray(catch.surface.normal(position[0]), dtype=float).ravel()
    incidence = float(np.degrees(np.arccos(np.clip(velocity[0] @ into / speed, -1.0, 1.0)))) if speed else None
    return {
        "kind": kind,
        "surface": None if catch.surface.edge else kind,
        "time_s": path.end_s,
        "after_s": path.end_s - path.begin_s,
        "along_m": float(samples["along_m"][-1]),
        "height_m": float(samples["height_m"][-1]),
        "axial_m": float(samples["axial_m"][-1]),
        "rotating_m": position[0].tolist(),
        "inertial_m": inertial[0][0].tolist(),
        "velocity_m_s": (setting.habitat.chart(aimed.plan.floor).axes(position)[0] @ velocity[0]).tolist(),
        "speed_m_s": speed,
        "incidence_deg": incidence,
    }
