"""Small scenes for tests: a habitat, its motions, and what came of them."""

import json
import math

from rimfall.physics.constants import RPM_RAD_S
from rimfall.scene import questions, reading

POINT = {"mass_kg": 1.0, "diameter_m": 0.0}
LANTERN = {"radius_m": 56.0, "spin_rpm": 3.0}
AIR = {"pressure_kpa": 101.325, "temperature_c": 20.0}
OMEGA_LANTERN = 3.0 * RPM_RAD_S


def read(motions, habitat, air=None, **sampling):
    """A Scene of motions (dicts) in a habitat (dict), in vacuum unless told otherwise."""
    document = {"rimfall": 1, "habitat": habitat, "air": air, "motions": motions, "sampling": sampling}
    return reading.read(json.dumps(document))


def trace(motions, habitat=LANTERN, air=None, **sampling):
    """The Trace of those motions."""
    return questions.trace(read(motions, habitat, air, **sampling))


def one(motion, habitat=LANTERN, air=None, **sampling):
    """What came of a single motion: a Traced."""
    return trace([motion], habitat, air, **sampling).motions[0]


def place(height_m, along_m=0.0, axial_m=0.0):
    return {"along_m": along_m, "height_m": height_m, "axial_m": axial_m}


def drop(height_m, body=POINT, start_s=0.0, **where):
    return {"kind": "drop", "place": place(height_m, **where), "body": body, "start_s": start_s}


def throw(height_m, speed_m_s, heading_deg=0.0, elevation_deg=0.0, body=POINT, start_s=0.0, **where):
    return {
        "kind": "throw",
        "place": place(height_m, **where),
        "speed_m_s": speed_m_s,
        "heading_deg": heading_deg,
        "elevation_deg": elevation_deg,
        "body": body,
        "start_s": start_s,
    }


def pour(height_m, flow_ml_s=30.0, lip_mm=8.0, heading_deg=0.0, elevation_deg=0.0, start_s=0.0, **where):
    return {
        "kind": "pour",
        "place": place(height_m, **where),
        "heading_deg": heading_deg,
        "elevation_deg": elevation_deg,
        "flow_ml_s": flow_ml_s,
        "lip_diameter_mm": lip_mm,
        "duration_s": 2.0,
        "liquid": "water",
        "start_s": start_s,
    }


def kinds(traced):
    """The kinds of a motion's events, in order."""
    return [event.kind for event in traced.track.events]


def event(traced, kind):
    """The first event of a kind."""
    return next(e for e in traced.track.events if e.kind == kind)


def one_g(radius_m):
    """A habitat with standard gravity at its deck (CGPM 1901)."""
    return {"radius_m": radius_m, "spin_rpm": math.sqrt(9.80665 / radius_m) / RPM_RAD_S}
