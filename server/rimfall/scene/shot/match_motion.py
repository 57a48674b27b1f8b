"""The scene of a matched path: one habitat, one throw, which `trace` flies."""

import json
import math

from ...errors import Refused
from ...language import tr, tr_later
from ...physics.air import air_at
from ...physics.constants import RPM_RAD_S
from ...shapes.part import GREATEST_RIM_SPEED_M_S, GREATEST_SPIN_RPM
from ..reading import read
from .match_reading import OWN_BODY, ROOM_AIR

NAME = tr_later("Matched path")
_OWN_DIAMETER_M = 0.01
_LATEST_START_S = 3600.0
_POINT = {"mass_kg": 1.0, "diameter_m": 0.0}


def scene_of(asked, trial):
    """The scene document, with no defaults filled in, of a Trial's best path; None where no scene may hold it. What is seen in a mirror
    is told as the habitat that it mirrors shows it."""
    state, side = trial.state, trial.problem.unknowns.side
    radius = _clean(float(state.radius_m[0]))
    spin = min(_clean(abs(float(state.omega_rad_s[0])) / RPM_RAD_S), GREATEST_SPIN_RPM)
    spin = min(spin, GREATEST_RIM_SPEED_M_S / radius / RPM_RAD_S)
    place, velocity = state.place[0].tolist(), state.velocity[0].tolist()
    air, body = _air_and_body(asked, trial, radius)
    half = body["diameter_m"] / 2 if isinstance(body, dict) else asked.body.diameter_m / 2
    level = math.hypot(velocity[0], velocity[2])
    throw = {
        "kind": "throw",
        "name": tr(NAME),
        "start_s": _start_s(asked, trial),
        "place": {"along_m": side * place[0], "height_m": max(place[1], half), "axial_m": place[2]},
        "speed_m_s": math.hypot(level, velocity[1]),
        "heading_deg": math.degrees(math.atan2(velocity[2], side * velocity[0])) if level else 0.0,
        "elevation_deg": math.degrees(math.atan2(velocity[1], level)) if level or velocity[1] else 0.0,
        "body": body,
    }
    fps = asked.request.playback_fps or (asked.request.picture.fps if asked.request.picture else None)
    habitat = {"shape": "cylinder", "radius_m": radius, "spin_rpm": spin}
    document = {"rimfall": 1, "title": tr("The nearest free path"), "habitat": habitat, "air": air, "motions": [throw]}
    document |= {"sampling": {"fps": fps}} if fps else {}
    for own in (body, _POINT):
        try:
            throw["body"] = own
            read(json.dumps(document))
            return document
        except Refused:
            document["air"] = None
    return None


def _clean(value):
    """A figure to twelve digits."""
    return float(f"{value:.12g}")


def _start_s(asked, trial):
    same_clock = trial.problem.unknowns.known.pace == 1.0
    return asked.first_s if same_clock and 0.0 <= asked.first_s <= _LATEST_START_S else 0.0


def _air_and_body(asked, trial, radius_m):
    """The air and the body as a document has them."""
    density, known = float(trial.state.medium[0]), asked.request.known
    body = _as_given(known.body)
    if density <= 0.0:
        return None, _POINT if body is None else body
    air = {"pressure_kpa": ROOM_AIR[0], "temperature_c": ROOM_AIR[1]} if known.air is None else known.air.model_dump()
    if asked.body is not None:
        if trial.problem.unknowns.known.medium is None:
            air["pressure_kpa"] = min(max(_clean(density * air["pressure_kpa"]), 0.001), 1000.0)
        return air, body
    diameter = min(_OWN_DIAMETER_M, radius_m / 20)
    per_metre = density * asked.drag_1_m
    deck = air_at(air["pressure_kpa"], air["temperature_c"]).deck_density_kg_m3
    mass = math.pi / 8 * diameter**2 * deck * OWN_BODY.drag / per_metre
    return air, {"mass_kg": min(max(mass, 1e-9), 1e6), "diameter_m": diameter, "drag": OWN_BODY.drag}


def _as_given(body):
    return body if body is None or isinstance(body, str) else body.model_dump()
