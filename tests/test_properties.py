"""Laws that must hold whatever the scene: energy, exactness, symmetries, time reversal, and scenes drawn at random."""

import json
import math

import numpy as np
import pytest
from hypothesis import HealthCheck, given, reject, seed, settings
from hypothesis import strategies as st

from rimfall.errors import TooMuch
from rimfall.motions.flight import fly
from rimfall.motions.setting import GREATEST_LIMIT_S, Setting
from rimfall.physics import frames
from rimfall.physics.air import air_at
from rimfall.physics.bodies import Body
from rimfall.physics.budget import Budget, spending
from rimfall.physics.spin import ramped, steady
from rimfall.scene import answers, questions, reading
from rimfall.shapes import Cylinder
from tests.motions.scenes import AIR, one, throw, trace

ENERGY_SHARE = 1e-11  # of the greatest u^2/2 + omega^2 rho^2/2
EXACT_SHARE = 1e-10  # of R
IN_AIR_M = 2e-6  # two paths that each keep within 1e-6 m
THROUGH_M = 1e-6
BACK_SHARE = 1e-9  # of R: there and back again
SCENES, PARTS = 200, 8
MOST = {
    "bytes": 60_000_000,
    "law_calls": 200_000,
    "samples": 100_000,
}  # of a scene that is tried: larger ones take long

radii = st.floats(math.log(0.5), math.log(10_000.0)).map(math.exp)
levels = st.floats(0.01, 2.0)  # g0 at the deck
shares = st.floats(0.02, 0.98)
angles = st.floats(-180, 180)
speeds = st.floats(0.01, 1.5)  # of the rim's


def wheel(radius, level):
    return {"radius_m": radius, "spin_rpm": math.sqrt(level * 9.80665 / radius) * 60 / math.tau}


def rim(habitat):
    return habitat["spin_rpm"] * math.tau / 60 * habitat["radius_m"]


@given(radii, levels, shares, speeds, angles, st.floats(-90, 90), st.floats(-2, 2))
def test_energy_aboard_is_kept(radius, level, share, speed, heading, elevation, thrust):
    habitat = wheel(radius, level)
    motion = throw(share * radius, speed * rim(habitat), heading, elevation)
    samples = one(motion, habitat | {"axial_thrust_m_s2": thrust}).track.samples
    kinetic = np.sum(samples.rotating_velocity_m_s**2, axis=1) / 2
    spinning = (habitat["spin_rpm"] * math.tau / 60) ** 2 * np.sum(samples.rotating_m[:, :2] ** 2, axis=1) / 2
    assert np.ptp(kinetic - spinning + thrust * samples.axial_m) <= ENERGY_SHARE * np.max(kinetic + spinning)


@given(radii, levels, shares, speeds, angles, st.floats(-90, 90))
def test_a_free_path_is_straight_outside(radius, level, share, speed, heading, elevation):
    habitat = wheel(radius, level)
    track = one(throw(share * radius, speed * rim(habitat), heading, elevation), habitat).track
    place, time_s = track.samples.inertial_m, track.samples.time_s
    if len(time_s) > 2:
        line = place[0] + (place[-1] - place[0]) * ((time_s - time_s[0]) / (time_s[-1] - time_s[0]))[:, None]
        assert np.abs(place - line).max() <= EXACT_SHARE * radius * max(1.0, np.abs(place).max() / radius)


@given(radii, levels, shares, speeds, angles, st.floats(-90, 90), st.sampled_from([None, AIR]))
@settings(max_examples=40)
def test_mirrored_along_the_axis_a_throw_flies_the_mirrored_path(radius, level, share, speed, heading, elevation, air):
    habitat, ball = wheel(radius, level), {"mass_kg": 0.002 * radius, "diameter_m": 0.01 * min(radius, 9.0)}
    motions = [throw(share * radius, speed * rim(habitat), h, elevation, ball) for h in (heading, -heading)]
    this, that = (t.track.samples.rotating_m for t in trace(motions, habitat, air).motions)
    assert this * [1, 1, -1] == pytest.approx(that, abs=1e-9 * max(radius, 1.0))


@given(radii, levels, shares, speeds, angles, st.floats(-90, 90), st.floats(-1e3, 1e3))
@settings(max_examples=40)
def test_every_place_along_the_deck_is_like_any_other(radius, level, share, speed, heading, elevation, along):
    habitat = wheel(radius, level)
    here, there = (
        one(throw(share * radius, speed * rim(habitat), heading, elevation, along_m=x), habitat).track
        for x in (0, along)
    )
    assert there.ends_s == pytest.approx(here.ends_s, abs=1e-6)
    n = min(len(here.samples.time_s), len(there.samples.time_s))
    turned = frames.turn(here.samples.rotating_m[:n], along / radius)
    assert there.samples.rotating_m[:n] == pytest.approx(turned, abs=1e-9 * radius)


def setting(radius, spin, air=None):
    """A habitat open all round but for a deck far off, so that nothing is met on the way."""
    return Setting(Cylinder(radius * 1e3, spin), air, 48, None)


def reversed_spin(spin, end_s):
    """The spin that undoes another from its end back: same rates the other way, in the opposite order."""
    points = [(end_s - t, -r) for t, r in zip(spin.times_s[::-1], spin.rates_rad_s[::-1], strict=True) if t < end_s]
    return ramped(-float(spin.rate_rad_s(end_s)), points)


@given(
    st.floats(0.5, 500), st.floats(-2, 2), st.lists(st.floats(-2, 2), max_size=3), st.tuples(*[st.floats(-20, 20)] * 3)
)
@settings(max_examples=60)
def test_time_runs_back_under_the_opposite_spin(rho, rate, rates, velocity):
    """A path flown for 5 s, then with velocity aboard reversed in a habitat that turns the other way, ends where it began."""
    end_s = 5.0
    spin = ramped(rate, [((k + 1) * 1.1, r) for k, r in enumerate(rates)])
    there, back = setting(rho, spin), setting(rho, reversed_spin(spin, end_s))
    release = there.release(Body(1.0, 0.0), 0.0, (0.0, rho * 1e3 - rho, 0.0), velocity)
    outside = fly(there.medium, [release])[0].path.at(np.array([end_s]))
    aboard = frames.inertial_to_rotating(*outside, spin.angle_rad(end_s), spin.rate_rad_s(end_s))
    turned_back = frames.rotating_to_inertial(aboard[0], -aboard[1], 0.0, back.omega_rad_s(0.0))
    again = type(release)(release.room, release.body, 0.0, turned_back[0][0], turned_back[1][0], 60.0)
    home = fly(back.medium, [again])[0].path.at(np.array([end_s]))[0]
    home = frames.turn(home, -back.habitat.spin.angle_rad(end_s))[0]
    assert home == pytest.approx([rho, 0, 0], abs=BACK_SHARE * max(rho, 100.0))


@given(st.floats(0.5, 500), st.floats(0.05, 2), st.tuples(*[st.floats(-20, 20)] * 3))
@settings(max_examples=25)
def test_the_other_spin_is_the_mirror_image_in_air_too(rho, rate, velocity):
    """Turning the other way is the same seen in a mirror: spinward and antispinward change places."""
    ends = []
    for sign in (1.0, -1.0):
        there = setting(rho, steady(sign * rate), air_at(101.325, 20.0))
        release = there.release(Body(0.1, 0.05), 0.0, (0.0, rho * 1e3 - rho, 0.0), velocity * np.array([sign, 1, 1]))
        ends.append(fly(there.medium, [release])[0].path.at(np.array([3.0]))[0][0])
    assert ends[1] * [1, -1, 1] == pytest.approx(ends[0], abs=IN_AIR_M)


@given(
    st.tuples(*[st.floats(-1e4, 1e4)] * 3),
    st.tuples(*[st.floats(-3e3, 3e3)] * 3),
    st.floats(-1e3, 1e3),
    st.floats(-20, 20),
)
def test_both_frames_and_back(position, velocity, angle, omega):
    position, velocity = np.array(position), np.array(velocity)
    there = frames.rotating_to_inertial(position, velocity, angle, omega)
    back = frames.inertial_to_rotating(*there, angle, omega)
    assert back[0] == pytest.approx(position, abs=1e-11)
    assert back[1] == pytest.approx(velocity, abs=1e-9)


# Scenes at random, over the whole document: what a stranger could ask.

DIAMETERS_M = (1e-4, 1e-3, 0.02, 0.2, 3.0)
DENSITIES_KG_M3 = (20.0, 1000.0, 7850.0)


@st.composite
def habitats(draw):
    radius = draw(st.floats(math.log(0.1), math.log(10_000.0)).map(math.exp))
    fastest = min(200.0, 4999.0 / radius * 60 / math.tau)
    spins = st.one_of(
        st.just(0.0),
        st.floats(0, fastest),
        st.just(fastest),
        levels.map(lambda g: min(wheel(radius, g)["spin_rpm"], fastest)),
    )
    out = {
        "radius_m": radius,
        "spin_rpm": draw(spins),
        "axial_thrust_m_s2": draw(st.sampled_from([0.0, 0.0, 0.0, 0.3, -5.0, 100.0])),
    }
    if draw(st.booleans()):
        out["width_m"] = max(0.5, radius * draw(st.floats(0.05, 3)))
    kind = draw(st.sampled_from(["open", "ceiling", "hub", "both"]))
    if kind in ("ceiling", "both"):
        out["ceiling_m"] = radius * draw(st.floats(0.05, 0.7))
    if kind in ("hub", "both"):
        out["hub_radius_m"] = max(0.01, radius * draw(st.floats(0.01, 0.25)))
    times = sorted(draw(st.sets(st.floats(0.01, 100).map(lambda t: round(t, 3)), max_size=3)))
    out["spin_ramp"] = [{"time_s": t, "spin_rpm": draw(spins)} for t in times]
    return out


def room(habitat):
    """Height of what lies overhead, and half the width."""
    top = habitat.get("ceiling_m", habitat["radius_m"] - habitat.get("hub_radius_m", 0.0))
    return top, habitat.get("width_m", 2e3) / 2


@st.composite
def motions(draw, habitat, air):
    top, side = room(habitat)
    fits = [d for d in DIAMETERS_M if d < 0.9 * min(habitat["radius_m"] / 2, top, 2 * side)] + ([] if air else [0.0])
    kind = draw(
        st.sampled_from(["drop", "throw", "throw", "pour"] if min(habitat["radius_m"], top, side) > 0.2 else ["throw"])
    )
    size = 0.008 if kind == "pour" else draw(st.sampled_from(fits))
    height = draw(st.one_of(st.floats(size / 2, top - size / 2), st.sampled_from([size / 2, top - size / 2])))
    axial = draw(st.one_of(st.just(0.0), st.sampled_from([side - size / 2, size / 2 - side])))
    place = {"along_m": draw(st.floats(-1e6, 1e6)), "height_m": height, "axial_m": axial}
    out = {"kind": kind, "place": place, "start_s": draw(st.one_of(st.just(0.0), st.floats(0, 100)))}
    aim = {"heading_deg": draw(angles), "elevation_deg": draw(st.sampled_from([-90.0, -10.0, 0.0, 35.0, 90.0]))}
    if kind == "pour":
        flow = draw(st.floats(math.log(0.1), math.log(1000)).map(math.exp))
        return out | aim | {"flow_ml_s": flow, "lip_diameter_mm": 8.0, "duration_s": 2.0, "liquid": "water"}
    mass = max(1e-9, draw(st.sampled_from(DENSITIES_KG_M3)) * math.pi / 6 * max(size, 1e-3) ** 3)
    out["body"] = {"mass_kg": mass, "diameter_m": size, "drag": draw(st.sampled_from(["sphere", 0.0, 0.47, 5.0]))}
    fast = max(1.0, rim(habitat))
    return (
        out
        if kind == "drop"
        else out | aim | {"speed_m_s": draw(st.one_of(st.just(min(fast, 3e3)), st.floats(0, min(2 * fast, 3e3))))}
    )


@st.composite
def documents(draw):
    habitat = draw(habitats())
    air = draw(st.sampled_from([None, AIR, {"pressure_kpa": 0.01, "temperature_c": -100.0}]))
    listed = [draw(motions(habitat, air)) for _ in range(draw(st.integers(1, 3)))]
    return {"rimfall": 1, "habitat": habitat, "air": air, "motions": listed}


def no_surface_is_passed(traced, whole):
    """Between release and end, at 2,000 moments, a body's surface is on its own side of every surface of the room."""
    path, stream = traced.track.path, traced.plan.stream
    times = np.linspace(path.begin_s, path.end_s, 2000)
    radius = np.full(len(times), traced.plan.body.diameter_m / 2)
    if (
        stream is not None
    ):  # a stream flies as a thread, a drop is thicker than the lip it hangs from: these begin anywhere
        if stream.drop_diameter_m is None or stream.breakup_s is None:
            radius[:] = 0.0
        radius[times <= (stream.breakup_s or 0.0)] = 0.0
        if path.end_s == (stream.breakup_s or path.begin_s):
            return True
    position = path.at(times)[0].T
    rounding = 1e-14 * whole.scene.habitat.radius_m
    return all(surface.gap(position, radius).min() > -THROUGH_M - rounding for surface in whole.setting.room().surfaces)


def ends_within_its_limits(traced, whole):
    start, end = traced.plan.start_s, traced.track.ends_s
    return start <= end <= start + GREATEST_LIMIT_S and end <= whole.setting.limit_s(start) + 1e-9


@pytest.mark.parametrize("part_of_them", range(PARTS))
def test_any_scene_is_traced_to_a_good_end(part_of_them):
    """In parts, each of scenes of its own, so that they are shared out among the processes of a run."""
    limits = settings(
        max_examples=SCENES // PARTS, suppress_health_check=[HealthCheck.too_slow, HealthCheck.data_too_large]
    )
    seed(part_of_them)(limits(given(documents())(check_to_a_good_end)))()


def check_to_a_good_end(document):
    try:
        with spending(Budget(**MOST)):
            whole = questions.trace(reading.read(json.dumps(document)))
    except TooMuch:  # each drop of a pour flies its own path while the spin changes: hours of them are refused by name
        reject()
    json.loads(answers.of_trace(whole), parse_constant=pytest.fail)
    for traced in whole.motions:
        times = [e.time_s for e in traced.track.events]
        assert times == sorted(times)
        assert ends_within_its_limits(traced, whole)
        assert no_surface_is_passed(traced, whole)
        assert (traced.track.landing is None) == (traced.track.no_landing is not None)
