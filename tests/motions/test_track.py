"""The track of a motion: grid, unwrapped along, the axis, apex, ends and reasons, events with their states."""

import math

import numpy as np
import pytest

from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, POINT, drop, event, kinds, one, one_g, place, throw, trace
from tests.tables import each_row

R, OMEGA = 56.0, OMEGA_LANTERN
RIM = OMEGA * R
TURN_M = math.tau * R
EXACT_M = 1e-10
MIST = {"mass_kg": 5e-7, "diameter_m": 1e-3}
DIFFERENCE_M_S = 1e-3  # of a central difference over 1/24 s


def floater(height_m=1.0, turns=0.0, **where):
    """Thrown antispinward at the speed of the deck there, or nearly: at rest outside, round and round aboard."""
    return throw(height_m, OMEGA * (R - height_m) + turns, 180, 0, **where)


def off_azimuth(traced):
    """The greatest difference, on the deck in metres, between along_m and the azimuth of rotating_m, less whole turns."""
    samples = traced.track.samples
    azimuth = np.arctan2(samples.rotating_m[:, 1], samples.rotating_m[:, 0])
    return np.abs((samples.along_m / R - azimuth + math.pi) % math.tau - math.pi).max() * R


def test_along_does_not_wrap_in_turn_after_turn():
    samples = one(floater()).track.samples
    assert samples.along_m[-1] == pytest.approx(-3 * TURN_M, abs=1e-8)
    assert samples.along_m == pytest.approx(-R * OMEGA * samples.time_s, abs=1e-8)
    assert samples.height_m == pytest.approx(1.0)


def test_along_starts_where_the_place_is_however_many_turns_that_is():
    samples = one(drop(1.2, along_m=5 * TURN_M + 3.0)).track.samples
    assert samples.along_m[0] == pytest.approx(5 * TURN_M + 3.0, abs=EXACT_M)


def test_drift_is_counted_from_the_release_wherever_on_the_deck_that_is():
    """A deck is the same all round: what is dropped 10 m on lands 10 m on, and drifts as much."""
    here, there = (one(drop(1.2, along_m=along)).track.landing for along in (0.0, 10.0))
    assert here.drift_m == pytest.approx(here.along_m, abs=EXACT_M)
    assert (there.along_m, there.drift_m) == pytest.approx((here.along_m + 10.0, here.drift_m), abs=1e-9)


def test_along_is_the_azimuth_of_the_rotating_position():
    for body, air in ((POINT, None), (MIST, AIR)):
        assert off_azimuth(one(throw(1.5, 22.0, 200, 50, body), LANTERN, air)) < EXACT_M


def through_axis(height_m=1.0):
    """Thrown so that outside it flies straight at the axis: its level motion just undoes the turning."""
    level, up = OMEGA * (R - height_m), 12.0
    return throw(height_m, math.hypot(level, up), 180, math.degrees(math.atan2(up, level)))


def test_a_path_through_the_axis_has_the_event_and_steps_by_half_a_turn():
    traced = one(through_axis())
    assert kinds(traced) == ["release", "axis", "apex", "deck"]
    axis = event(traced, "axis")
    assert axis.time_s == pytest.approx(55.0 / 12.0)
    assert axis.height_m == pytest.approx(R, abs=1e-9 * R)
    land = traced.track.landing
    assert land.along_m == pytest.approx(R * (math.pi - OMEGA * land.time_s), abs=1e-6)


def test_the_step_at_the_axis_is_plus_pi_whichever_side_it_comes_from():
    samples = one(through_axis()).track.samples
    at_the_axis = np.argmin(np.abs(samples.time_s - 55.0 / 12.0))  # this one is on the grid
    assert samples.height_m[at_the_axis] == pytest.approx(R)
    after = np.arange(len(samples.time_s)) > at_the_axis
    turned = samples.along_m / R + OMEGA * samples.time_s
    assert turned[~after] == pytest.approx(0.0, abs=1e-9)
    assert turned[after] == pytest.approx(math.pi, abs=1e-6)


def test_after_a_near_pass_of_the_axis_along_still_tells_where_the_body_is():
    """Passing 1e-9 R from the axis counts as through it, yet the body comes out a little to one side."""
    traced = one(throw(R - 0.05, 500.0, 0, 90), {"radius_m": R, "spin_rpm": 0.09})
    assert kinds(traced)[1] == "axis"
    assert off_azimuth(traced) < 1e-9


@each_row(("heading", "elevation", "leaves_at"), [(0, 90, math.pi), (0, 0, math.pi / 2), (180, 0, -math.pi / 2)])
def test_a_body_that_starts_on_the_axis_leaves_the_way_it_is_thrown(heading, elevation, leaves_at):
    samples = one(throw(R, 1.0, heading, elevation), LANTERN | {"spin_rpm": 0.0}).track.samples
    assert samples.along_m[-1] == pytest.approx(R * leaves_at, abs=1e-8)
    assert math.atan2(samples.rotating_m[-1, 1], samples.rotating_m[-1, 0]) % math.tau == pytest.approx(
        leaves_at % math.tau
    )


def test_the_apex_is_where_the_height_turns():
    traced = one(throw(1.5, 6.0, 180, 35))
    apex = event(traced, "apex")
    assert apex.local_m_s[1] == pytest.approx(0.0, abs=1e-9)
    assert traced.track.apex.height_m == pytest.approx(apex.height_m)
    assert traced.track.samples.height_m.max() <= apex.height_m


def test_a_fall_is_highest_at_its_release():
    traced = one(drop(1.2))
    assert kinds(traced) == ["release", "deck"]
    assert (traced.track.apex.time_s, traced.track.apex.height_m) == (0.0, pytest.approx(1.2))


@each_row(
    ("motion", "habitat", "end", "why"),
    [
        (drop(1.2), {}, "landed", None),
        (floater(), {}, "time limit", "never_meets"),
        (throw(1.5, 9.0, 0, 80), {"ceiling_m": 4.0}, "landed", None),
        (floater() | {"place": {"height_m": 3.0}, "speed_m_s": 16.65}, {"ceiling_m": 4.0}, "time limit", "never_meets"),
        (throw(1.5, 9.0, 90, 10), {"width_m": 2.0}, "landed", None),
    ],
)
def test_every_end_and_the_reason_for_no_landing(motion, habitat, end, why):
    traced = one(motion, LANTERN | habitat)
    assert (traced.track.end, traced.track.no_landing) == (end, why)
    assert (traced.track.landing is None) == (why is not None)


def test_a_scene_that_ends_sooner_ends_the_motion():
    traced = one(floater(), duration_s=2.5)
    assert (traced.track.end, traced.track.no_landing, traced.track.ends_s) == ("duration", "duration", 2.5)


def test_a_scene_that_would_last_longer_leaves_a_motion_its_own_limit():
    traced = one(floater(), duration_s=600)
    assert (traced.track.end, traced.track.no_landing, traced.track.ends_s) == ("time limit", "never_meets", 60.0)


def test_a_motion_that_starts_after_the_scene_ends_never_flies():
    traced = one(drop(1.2, start_s=5.0), duration_s=2.5)
    assert (traced.track.end, traced.track.no_landing, len(traced.track.samples.time_s)) == ("duration", "duration", 0)


@each_row(("spin_rpm", "limit_s"), [(3.0, 60.0), (2.0, 90.0), (0.1, 600.0), (0.0, 60.0)])
def test_the_time_limit_is_60_s_or_three_turns_but_600_s(spin_rpm, limit_s):
    habitat = {"radius_m": 5000.0, "spin_rpm": spin_rpm}
    still_outside = throw(1000.0, 4000.0 * spin_rpm * math.tau / 60, 180, 0, start_s=3.0)
    assert one(still_outside, habitat).track.ends_s == pytest.approx(3.0 + limit_s)


def test_samples_are_on_the_grid_of_the_clock_and_nowhere_else():
    whole = trace([drop(1.2, start_s=0.4)], fps=23.976)
    track = whole.motions[0].track
    k = track.samples.time_s * 24000 / 1001 * whole.samples_per_frame
    assert whole.samples_per_frame == 3
    assert k == pytest.approx(np.round(k), abs=1e-9)
    assert track.first == math.ceil(0.4 * 72000 / 1001)
    assert track.samples.time_s[0] >= 0.4
    assert track.samples.time_s[-1] <= track.ends_s


def test_velocity_is_the_change_of_the_rotating_position():
    samples = one(throw(1.5, 9.0, 200, 50)).track.samples
    change = (samples.rotating_m[2:] - samples.rotating_m[:-2]) * 24
    assert samples.rotating_velocity_m_s[1:-1] == pytest.approx(change, abs=DIFFERENCE_M_S)


def test_the_change_of_velocity_in_vacuum_is_centrifugal_and_coriolis():
    samples = one(throw(1.5, 9.0, 200, 50)).track.samples
    change = (samples.rotating_velocity_m_s[2:] - samples.rotating_velocity_m_s[:-2]) * 24
    assert (samples.centrifugal_m_s2 + samples.coriolis_m_s2)[1:-1] == pytest.approx(change, abs=DIFFERENCE_M_S)


def test_centrifugal_and_coriolis_are_what_their_names_say():
    samples = one(throw(1.5, 9.0, 200, 50)).track.samples
    omega = np.array([0, 0, OMEGA])
    assert samples.coriolis_m_s2 == pytest.approx(-2 * np.cross(omega, samples.rotating_velocity_m_s))
    assert samples.centrifugal_m_s2 == pytest.approx(-np.cross(omega, np.cross(omega, samples.rotating_m)))


def test_both_frames_are_one_motion():
    track = one(throw(1.5, 9.0, 200, 50)).track
    samples = track.samples
    angle = OMEGA * samples.time_s
    turned = samples.rotating_m[:, 0] * np.cos(angle) - samples.rotating_m[:, 1] * np.sin(angle)
    assert samples.inertial_m[:, 0] == pytest.approx(turned, abs=EXACT_M)
    assert samples.axial_m == pytest.approx(samples.inertial_m[:, 2])
    assert samples.height_m == pytest.approx(R - np.hypot(samples.inertial_m[:, 0], samples.inertial_m[:, 1]))


def test_the_release_is_the_document_and_the_contact_the_surface():
    traced = one(throw(1.5, 9.0, 30, 50, start_s=0.31, along_m=4.0, axial_m=-2.0))
    release, land = traced.track.events[0], traced.track.landing
    assert release.time_s == 0.31
    assert [release.along_m, release.height_m, release.axial_m] == pytest.approx([4.0, 1.5, -2.0])
    assert float(np.linalg.norm(release.local_m_s)) == pytest.approx(9.0)
    assert release.local_m_s[1] == pytest.approx(9.0 * math.sin(math.radians(50)))
    assert land.height_m == pytest.approx(0.0, abs=1e-9)
    assert land.surface == "deck"


def test_incidence_is_from_the_surfaces_normal():
    straight_in = one(throw(5.0, 30.0, 0, -90), {"radius_m": 56.0, "spin_rpm": 0.0})
    assert straight_in.track.landing.incidence_deg == pytest.approx(0.0, abs=1e-6)
    slanted = one(throw(1.5, 9.0, 200, 50)).track.landing
    level = np.hypot(slanted.local_m_s[0], slanted.local_m_s[2])
    assert math.tan(math.radians(slanted.incidence_deg)) == pytest.approx(level / -slanted.local_m_s[1])


def test_a_body_at_rest_on_the_deck_has_no_incidence():
    assert one(drop(0.0), one_g(10.0)).track.landing.incidence_deg is None


def test_at_no_spin_a_body_let_go_stays():
    samples = one(drop(1.2), {"radius_m": 56.0, "spin_rpm": 0.0}).track.samples
    assert np.ptp(samples.rotating_m, axis=0).max() == 0.0
    assert samples.along_m[-1] == 0.0


def test_what_rolls_off_the_middle_of_a_turntable_is_where_its_coordinate_says():
    """Until it leaves the axis its azimuth has no meaning; from then on it is that of its position."""
    table = {"shape": "turntable", "radius_m": 20.0, "spin_rpm": 5.0}
    ball = {"mass_kg": 0.45, "diameter_m": 0.18}
    roll = {"kind": "roll", "place": place(0.0, along_m=-3.0), "speed_m_s": 1.5, "heading_deg": -108.0, "body": ball}
    samples = one(roll, table, duration_s=3.0).track.samples
    along, x, y = samples.along_m[-1], *samples.rotating_m[-1, :2]
    assert math.remainder(along / 20.0 - math.atan2(y, x), math.tau) == pytest.approx(0.0, abs=1e-9)
