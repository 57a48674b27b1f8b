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


OMEGA = 3.0 * np.pi / 30


def let_go(count, lasts_s, bounces, restitution=0.7):
    """Times (N,), places (N, 2) and how many rows come before the first contact, of a point let go 2 m over a deck of 56 m radius that turns
    at 3 rpm, in closed form: straight lines in the inertial frame; at the deck what is outward of its velocity against that is turned
    round and lessened, so often, and then it lies there."""
    time_s, places, first = np.linspace(0.0, lasts_s, count), [], count
    begins_s, place, velocity = 0.0, np.array([54.0, 0.0]), np.array([0.0, OMEGA * 54.0])

    def meets(p, v):  # |p + v t| = 56
        a, b, c = v @ v, p @ v, p @ p - 56.0**2
        return (-b + np.sqrt(b * b - a * c)) / a

    azimuth, ends_s = 0.0, meets(place, velocity)
    for n, t in enumerate(time_s):
        while t > ends_s:
            first = min(first, n)
            place, azimuth = place + velocity * (ends_s - begins_s), 0.0
            out, along = place / 56.0, np.array([-place[1], place[0]]) / 56.0
            rate = velocity @ along, velocity @ out
            begins_s, bounces = ends_s, bounces - 1
            velocity = rate[0] * along - restitution * rate[1] * out if bounces >= 0 else OMEGA * 56.0 * along
            ends_s = begins_s + meets(place * (1 - 1e-12), velocity) if bounces >= 0 else np.inf
        lies = bounces < 0
        spot = place + velocity * (t - begins_s)
        azimuth = (
            np.arctan2(place[1], place[0]) - OMEGA * begins_s if lies else np.arctan2(spot[1], spot[0]) - OMEGA * t
        )
        places.append([56.0 * azimuth, 0.0 if lies else 56.0 - np.hypot(*spot)])
    return time_s, np.array(places), first


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
