"""Paths for the tests of a match: what `trace` flies, with seeded noise, and what cannot be."""

import numpy as np

from rimfall import open_scene, trace

POINT = {"mass_kg": 1.0, "diameter_m": 0.0}
ROOM_AIR = {"pressure_kpa": 101.325, "temperature_c": 20.0}
G0_M_S2 = 9.80665


def flown(count=60, air=None, habitat=None, **throw):
    """Times (N,) and places (N, 3) of a throw until it lands, evenly, as `trace` tells them."""
    habitat = {"shape": "cylinder", "radius_m": 56.0, "spin_rpm": 3.0} | (habitat or {})
    motion = {
        "kind": "throw",
        "name": "it",
        "place": {"height_m": 1.5},
        "speed_m_s": 6.0,
        "elevation_deg": 35.0,
        "body": POINT,
    }
    scene = {"rimfall": 1, "habitat": habitat, "air": air, "motions": [motion | throw], "sampling": {"fps": 48}}
    path = trace(open_scene(scene)).motions["it"]
    flying = np.flatnonzero(path.time_s < (path.landing.time_s if path.landing else np.inf))
    some = np.unique(np.linspace(0, len(flying) - 1, min(count, len(flying))).round().astype(int))
    return path.time_s[some], np.stack([path.along_m, path.height_m, path.axial_m], axis=-1)[some]


def rows(time_s, places, sd=0.0, seed=1, axial=True):
    """Rows of a track, each figure with noise of a standard deviation."""
    noisy = places + np.random.default_rng(seed).normal(0.0, sd, places.shape) if sd else places
    names = ("along_m", "height_m", "axial_m")[: 3 if axial else 2]
    return [
        {"time_s": float(t)} | dict(zip(names, map(float, p), strict=False)) for t, p in zip(time_s, noisy, strict=True)
    ]


def impossible():
    """Five paths that cannot be, by name: times and places."""
    time_s, lob = flown()
    t = np.linspace(0.0, 0.72, 40)
    wiggle, mirrored, pushed = lob.copy(), lob.copy(), lob.copy()
    wiggle[:, 1] += 0.2 * np.sin(15.0 * time_s)
    mirrored[:, 0] *= -1.0
    pushed[:, 2] += 0.5 * time_s**2
    fall = np.stack([0.0 * t, 1.5 - 0.5 * 5.527 * t * t, 0.0 * t], axis=-1)
    parabola = np.stack([4.9 * time_s, 1.5 + 3.4 * time_s - 0.5 * 5.527 * time_s**2, 0.0 * time_s], axis=-1)
    return {
        "wiggle": (time_s, wiggle),
        "straight fall": (t, fall),
        "mirrored": (time_s, mirrored),
        "parabola": (time_s, parabola),
        "pushed along the axis": (time_s, pushed),
    }
