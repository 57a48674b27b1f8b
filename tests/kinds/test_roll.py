"""Balls that start on the ground or on a ramp: where they lie, and what they meet once they have left the ramp."""

import numpy as np
import pytest

from tests.motions.scenes import LANTERN, one, place

BALL = {"mass_kg": 0.45, "diameter_m": 0.18, "rolling_resistance": 0.01}
RAMP = {"slope_deg": 12.0, "heading_deg": 90.0, "length_m": 3.0, "width_m": 1.0}


def roll(**more):
    return {"kind": "roll", "place": place(0.0), "body": BALL} | more


def test_a_ball_lies_on_its_ramp():
    traced = one(roll(ramp=RAMP), LANTERN, duration_s=0.5)
    corners = traced.plan.ramp_m
    normal = np.cross(corners[1] - corners[0], corners[3] - corners[0])
    normal /= np.linalg.norm(normal)
    gaps = (traced.track.samples.rotating_m - corners[0]) @ normal
    assert np.abs(gaps) == pytest.approx(0.09, abs=1e-9)


def test_once_on_the_deck_the_ramp_s_edges_are_no_edges():
    """It comes down along the axis, drifts antispinward past where the ramp's side would be, and meets the wall."""
    traced = one(roll(ramp=RAMP, bounces=20), LANTERN | {"width_m": 14.0}, duration_s=30)
    met = [e.kind for e in traced.track.events if e.kind not in ("apex", "release")]
    assert "edge" not in met
    assert met[0] == "deck"
    assert np.max(np.abs(traced.track.samples.along_m)) > 0.5


def test_over_the_side_of_the_ramp_it_ends():
    traced = one(roll(ramp=RAMP, speed_m_s=1.0, heading_deg=0.0), LANTERN)
    assert traced.track.end == "edge"
    assert traced.track.events[-1].along_m == pytest.approx(0.5, abs=0.01)
