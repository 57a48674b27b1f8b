"""The dropped cup against the closed form of a drop in a turning cylinder without air.

A body let go at radius R - h moves on at omega (R - h) along the tangent, and meets the deck where the line has the length
sqrt(R^2 - (R - h)^2): the line has then turned by theta, cos(theta) = (R - h)/R, while the deck has turned by omega t =
tan(theta). So it falls behind by R (tan(theta) - theta). A sphere meets the deck when its own surface does, at R - d/2.
"""

import math

import pytest

from tests.scene.documents import POINT, answer, drop, scene
from tests.tables import each_row

BALL = {"mass_kg": 0.25, "diameter_m": 0.085}  # the cup's own size


def closed_form(radius_m, rpm, height_m, diameter_m=0.0):
    """Time of fall and drift, spinward positive."""
    omega = rpm * 2 * math.pi / 60
    start, end = radius_m - height_m, radius_m - diameter_m / 2
    theta = math.acos(start / end)
    return math.tan(theta) / omega, radius_m * (theta - math.tan(theta))


@each_row(
    ("radius_m", "rpm", "height_m", "body", "diameter_m"),
    [
        (56.0, 3.0, 1.2, POINT, 0.0),
        (56.0, 3.0, 1.2, BALL, 0.085),
        (56.0, 3.0, 28.0, BALL, 0.085),
        (2.0, 20.0, 1.0, POINT, 0.0),
        (10_000.0, 0.3, 1.2, BALL, 0.085),
        (250.0, 1.9, 100.0, POINT, 0.0),
    ],
)
def test_a_drop_lands_where_the_closed_form_says(radius_m, rpm, height_m, body, diameter_m):
    document = scene(drop(height_m, body), habitat={"radius_m": radius_m, "spin_rpm": rpm}, air=None)
    landing = answer(document)["motions"][0]["landing"]
    time_s, drift_m = closed_form(radius_m, rpm, height_m, diameter_m)
    assert landing["time_s"] == pytest.approx(time_s, abs=1e-9)
    assert landing["drift_m"] == pytest.approx(drift_m, abs=1e-8)
    assert landing["axial_m"] == 0


def test_air_changes_the_fall_of_a_cup_by_little():
    landing = answer(scene(drop(1.2, "cup")))["motions"][0]["landing"]
    time_s, drift_m = closed_form(56.0, 3.0, 1.2, 0.085)
    assert landing["time_s"] == pytest.approx(time_s, rel=0.01)
    assert landing["drift_m"] == pytest.approx(drift_m, rel=0.05)
    assert landing["time_s"] != pytest.approx(time_s, rel=1e-6)


def test_words_say_the_same():
    (motion,) = answer(scene(drop(1.2, BALL), air=None))["motions"]
    time_s, drift_m = closed_form(56.0, 3.0, 1.2, 0.085)
    assert f"{-drift_m:.2f}\u00a0m antispinward after {time_s:.2f}\u00a0s" in motion["words"][0]
