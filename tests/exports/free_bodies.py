"""Bodies thrown in vacuum, worked out here as the straight lines they are, and the files that are made of them."""

import json
import math

import numpy as np

from rimfall.exports import gltf
from rimfall.exports.options import read_options
from rimfall.exports.scene_sampling import sample_scene
from rimfall.scene.reading import read
from tests.exports.glb import Glb
from tests.scene.documents import POINT, drop, pour, scene, throw, trace_of

VIEWS = ("rotating", "inertial", "inertial_flat")
RADIUS_M, OMEGA = 56.0, 3.0 * 2 * math.pi / 60
WITHIN_M = 1e-5
MOTIONS = [drop(1.2, POINT), throw(9.0, 30.0, 40.0, POINT, start_s=0.3), throw(6.0, 180.0, 80.0, POINT)]
NAMES = ["ball_drop_1", "ball_throw_2", "ball_throw_3"]
MANY = scene(pour(duration_s=9.0), air=None, sampling={"fps": 24})


def sampled_of(document, **choices):
    found = read(json.dumps(document))
    return sample_scene(trace_of(found), read_options(choices, found), scenery=True)


def glb_of(document, **choices):
    return Glb(gltf.glb(sampled_of(document, **choices)))


def exact(motion, times, radius_m=RADIUS_M, omega=OMEGA):
    """A free body as its straight line: complex places (n,) of the frame that does not turn, axial ones (n,), and when it
    lands; from then on it lies on the deck and goes round with it."""
    start_s = motion.get("start_s", 0.0)
    speed = motion.get("speed_m_s", 0.0)
    heading, up = (math.radians(motion.get(k, 0.0)) for k in ("heading_deg", "elevation_deg"))
    rho = radius_m - motion["place"]["height_m"]
    turn = np.exp(1j * omega * start_s)
    way = turn * (-speed * math.sin(up) + 1j * (speed * math.cos(up) * math.cos(heading) + omega * rho))
    start = turn * rho
    a, b, c = abs(way) ** 2, (start.conjugate() * way).real, rho**2 - radius_m**2
    end_s = start_s + (-b + math.sqrt(b * b - a * c)) / a
    flown = np.clip(times, start_s, end_s) - start_s
    waits = np.exp(1j * omega * (np.minimum(times, start_s) - start_s))
    lies = np.exp(1j * omega * (np.maximum(times, end_s) - end_s))
    return (start + way * flown) * waits * lies, speed * math.cos(up) * math.sin(heading) * flown, end_s


def in_file(place, axial):
    """(n, 3) of the file: X = y, Y = -x, Z = z."""
    return np.stack([place.imag, -place.real, axial], 1)
