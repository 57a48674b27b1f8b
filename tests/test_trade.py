"""Facts of the trade: what people who stage turning habitats know and a program must show. Common practice, no source,
unless a test names one; each is asked through the scene document.
"""

import math

import numpy as np
import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimfall.physics.constants import RPM_RAD_S
from rimfall.physics.spin import figures, omega_for
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, drop, one, pour, throw, trace
from tests.tables import each_row

HANDBALL = {"mass_kg": 0.45, "diameter_m": 0.18}
R, OMEGA = 56.0, OMEGA_LANTERN
ROUND_OFF = 1e-9  # of a bend, in m2/s3, against that of gravity times speed


def drift(traced):
    return traced.track.landing.along_m - traced.plan.place[0]


def lobs(speed, elevation, height=1.5, habitat=LANTERN, air=None, **where):
    """The drifts of the same throw spinward and antispinward."""
    motions = [throw(height, speed, heading, elevation, HANDBALL, **where) for heading in (0.0, 180.0)]
    return [drift(t) for t in trace(motions, habitat, air).motions]


def test_a_dropped_thing_lands_antispinward():
    """Common practice, no source."""
    assert drift(one(drop(1.2))) < 0
    assert drift(one(drop(1.2, HANDBALL), air=AIR)) < 0


def test_a_thing_thrown_straight_up_lands_spinward():
    """Common practice, no source."""
    assert drift(one(throw(0.0, 4.0, 0, 90))) > 0


@given(st.floats(0.02, 0.5), st.floats(0, 40), st.floats(3, 2000), st.floats(0.5, 30))
def test_a_low_and_slow_throw_goes_further_antispinward(share, elevation, radius, rpm):
    """Common practice, no source: at no more than 40 degrees and half the rim speed at that height."""
    height = min(1.5, radius / 3)
    habitat = {"radius_m": radius, "spin_rpm": min(rpm, 4999 / radius / RPM_RAD_S)}
    speed = share * habitat["spin_rpm"] * RPM_RAD_S * (radius - height)
    motions = [throw(height, min(speed, 3000.0), heading, elevation) for heading in (0.0, 180.0)]
    spinward, antispinward = (drift(t) for t in trace(motions, habitat).motions)
    assert -antispinward > spinward > 0 or -antispinward > abs(spinward)


def test_the_same_lob_both_ways_in_air():
    """Common practice, no source: the opening scene."""
    spinward, antispinward = lobs(6.0, 35.0, air=AIR)
    assert spinward > 0
    assert -antispinward > 1.3 * spinward


def test_a_steep_lob_antispinward_may_land_spinward():
    """6 m/s at 80 degrees on the 56 m, 3 rpm deck, thrown antispinward: 0.48 m spinward, worked out beforehand."""
    landed = drift(one(throw(1.5, 6.0, 180, 80)))
    assert landed == pytest.approx(0.48, abs=0.005)


def test_more_radius_or_more_spin_is_more_gravity():
    """Common practice, no source: by the first power of the radius, the second of the spin."""
    here = figures(R, OMEGA).gravity_m_s2
    assert figures(2 * R, OMEGA).gravity_m_s2 == pytest.approx(2 * here)
    assert figures(R, 2 * OMEGA).gravity_m_s2 == pytest.approx(4 * here)


def test_the_same_gravity_on_a_smaller_radius_needs_more_spin_and_gives_more_coriolis():
    """Common practice, no source."""
    small, large = 20.0, 200.0
    assert omega_for(small, 5.0) > omega_for(large, 5.0)
    bends = []
    for radius in (small, large):
        habitat = {"radius_m": radius, "spin_rpm": omega_for(radius, 5.0) / RPM_RAD_S}
        bends.append(np.linalg.norm(one(throw(1.5, 3.0, 90, 20), habitat).track.samples.coriolis_m_s2[0]))
    assert bends[0] > bends[1]
    assert bends[0] / bends[1] == pytest.approx(math.sqrt(large / small), rel=0.2)


def test_the_larger_the_wheel_the_straighter_the_fall():
    """Common practice, no source: at one g0, by the inverse root of the radius."""
    off = [
        -drift(one(drop(2.0), {"radius_m": r, "spin_rpm": omega_for(r, 9.80665) / RPM_RAD_S})) for r in (20, 100, 1000)
    ]
    assert off == sorted(off, reverse=True)
    assert off[1] / off[2] == pytest.approx(math.sqrt(10), rel=0.05)


def test_a_throw_along_the_axis_only_bends_antispinward_as_it_falls():
    """Common practice, no source: nothing sends it sideways but its fall."""
    axial, dropped = one(throw(1.5, 4.0, 90, 0)), one(drop(1.5))
    assert drift(axial) == pytest.approx(drift(dropped), abs=1e-9)
    assert axial.track.landing.axial_m == pytest.approx(4.0 * axial.track.landing.time_s)


def test_a_thrower_who_runs_back_as_fast_as_the_deck_floats_the_ball():
    """Common practice, no source."""
    ball = drop(1.5) | {"carried": {"speed_m_s": OMEGA * (R - 1.5), "heading_deg": 180.0}}
    assert one(ball).track.no_landing == "never_meets"


# Which way a path bends: design, section 2.


def bend(samples):
    """Which way a path turns aboard, seen along the axis (n,): over 0 is anticlockwise, the way the habitat turns."""
    force = samples.centrifugal_m_s2 + samples.coriolis_m_s2
    u = samples.rotating_velocity_m_s
    found = u[:, 0] * force[:, 1] - u[:, 1] * force[:, 0]
    size = np.hypot(u[:, 0], u[:, 1]) * np.hypot(force[:, 0], force[:, 1])
    return np.where(np.abs(found) <= ROUND_OFF * size, 0.0, found)


def changes(samples):
    """Indices before which the bend has changed its sign."""
    sign = np.sign(bend(samples))
    kept = np.flatnonzero(sign)
    return kept[1:][np.diff(sign[kept]) != 0]


def turning_radius(velocity, rho, omega):
    """rho* of the design, or None: from velocity (spinward, up) aboard at a distance rho from the axis."""
    level, up = velocity[0] + omega * rho, velocity[1]
    h, v2 = rho * level, level**2 + up**2
    inside = 3 * omega * h - 2 * v2
    return math.sqrt(inside) / omega if v2 < omega * h < 2 * v2 and inside > 0 else None


@each_row("height_m", [0.5, 1.2, 10.0, 40.0])
def test_a_drop_never_changes_its_bend(height_m):
    assert len(changes(one(drop(height_m), fps=240).track.samples)) == 0


@each_row("heading", [0.0, 60.0, -80.0, 90.0])
@each_row("elevation", [-40.0, 0.0, 30.0, 90.0])
def test_what_is_thrown_or_poured_spinward_up_or_along_the_axis_never_changes_its_bend(heading, elevation):
    for speed in (0.3, 3.0, 12.0):
        assert len(changes(one(throw(1.1, speed, heading, elevation), fps=240).track.samples)) == 0


def test_tea_poured_level_antispinward_changes_its_bend_once_064_m_above_the_deck():
    samples = one(throw(1.1, 0.3, 180, 0), fps=240).track.samples
    found = changes(samples)
    assert len(found) == 1
    assert samples.height_m[found[0]] == pytest.approx(0.64, abs=0.02)  # a sample later
    assert R - turning_radius((-0.3, 0.0), R - 1.1, OMEGA) == pytest.approx(0.64, abs=0.005)


def test_the_stream_itself_does_the_same_until_it_breaks():
    flow = 0.3 * math.pi * 4e-3**2 * 1e6  # ml/s that leaves a lip of 8 mm at 0.3 m/s
    traced = one(pour(1.1, flow, 8.0, 180.0), fps=240)
    whole = traced.track.samples.only(traced.track.samples.time_s < (traced.plan.stream.breakup_s or math.inf))
    assert traced.plan.stream.regime == "stream"
    assert len(changes(whole)) == (1 if whole.height_m.min() < 0.62 else 0)


@given(st.floats(0.05, 0.95), st.floats(0.01, 1.8), st.floats(90, 270), st.floats(-85, 85))
def test_a_path_changes_its_bend_at_the_designs_radius_and_nowhere_else(share, speed, heading, elevation):
    rho = R * share
    samples = one(throw(R - rho, speed * OMEGA * rho, heading, elevation), fps=240).track.samples
    level = speed * OMEGA * rho * math.cos(math.radians(elevation)) * math.cos(math.radians(heading))
    there = turning_radius((level, speed * OMEGA * rho * math.sin(math.radians(elevation))), rho, OMEGA)
    found, at = changes(samples), np.hypot(samples.rotating_m[:, 0], samples.rotating_m[:, 1])
    assert len(found) <= 2
    for k in found:
        before = np.flatnonzero(np.sign(bend(samples))[:k])[-1]
        assert there is not None
        assert min(at[before], at[k]) - 1e-6 <= there <= max(at[before], at[k]) + 1e-6
