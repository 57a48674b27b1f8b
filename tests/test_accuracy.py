"""How accurate the program is: every row of the design's accuracy table that there is code for, as a bound.

The exact answers are closed forms, or scipy's DOP853 at its tightest on equations written out here anew, in the inertial
frame; nothing of the program computes them. (Rolling comes with rolling.)
"""

import itertools
import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp

from tests.motions.scenes import AIR, POINT, drop, one, throw, trace
from tests.published.drag_law import law_cd_re
from tests.tables import each_row

PATH_SHARE = 1e-10  # of R: vacuum path against the exact straight line
LANDING_S, LANDING_M = 1e-9, 1e-8  # vacuum landing against the exact quadratic
LEAST_NORMAL_M_S = 0.1  # of the landings that bound is for
DRAG_M = 1e-6  # drag path against the other integrator
ENERGY_SHARE = 1e-11  # of the greatest u^2/2 + omega^2 rho^2/2
DEPTH_M = 1e-9  # a contact deeper than this is found

RADII = (2.0, 56.0, 900.0, 10_000.0)
RAMP_SHAPE = ((0.13, 1.6), (0.37, 0.0), (0.55, 0.0), (0.9, 1.2))  # share of the flight, multiple of the spin
each_radius = each_row("radius", RADII)


def wheel(radius, ramp_s=None):
    """A habitat of half a g0 at the deck; with ramp_s its spin goes up, to rest, stays, and comes back within that time."""
    rpm = math.sqrt(4.9 / radius) * 60 / math.tau
    ramp = [{"time_s": a * ramp_s, "spin_rpm": b * rpm} for a, b in RAMP_SHAPE] if ramp_s else []
    return {"radius_m": radius, "spin_rpm": rpm, "spin_ramp": ramp}


def knots(habitat):
    """Times, and rates in rad/s, of a habitat's spin."""
    points = [(0.0, habitat["spin_rpm"])] + [(p["time_s"], p["spin_rpm"]) for p in habitat["spin_ramp"]]
    return np.array([t for t, _ in points]), np.array([r for _, r in points]) * math.tau / 60


def turned(habitat, time_s):
    """The angle turned by times (n,): trapezia under the rate, added up here anew."""
    times, rates = knots(habitat)
    grid = np.union1d(times, time_s)
    rate = np.interp(grid, times, rates)
    angle = np.concatenate([[0.0], np.cumsum(np.diff(grid) * (rate[1:] + rate[:-1]) / 2)])
    return angle[np.searchsorted(grid, time_s)]


def outside(habitat, motion):
    """Exact inertial position (3,) and velocity (3,) at a release at the start time of a throw of the document."""
    place, radius = motion["place"], habitat["radius_m"]
    start = motion["start_s"]
    rho, angle = radius - place["height_m"], place["along_m"] / radius + float(turned(habitat, [start])[0])
    omega = float(np.interp(start, *knots(habitat)))
    speed = motion.get("speed_m_s", 0.0)
    heading, elevation = (math.radians(motion.get(k, 0.0)) for k in ("heading_deg", "elevation_deg"))
    level, up, axial = (speed * math.cos(elevation) * math.cos(heading), speed * math.sin(elevation),
                        speed * math.cos(elevation) * math.sin(heading))  # fmt: skip
    spinward, outward = (
        np.array([-math.sin(angle), math.cos(angle), 0]),
        np.array([math.cos(angle), math.sin(angle), 0]),
    )
    position = rho * outward + [0, 0, place["axial_m"]]
    return position, (level + omega * rho) * spinward - up * outward + [0, 0, axial]


def aboard(habitat, position, time_s):
    """Inertial positions (n, 3) at times (n,) in the rotating frame."""
    c, s = np.cos(turned(habitat, time_s)), np.sin(turned(habitat, time_s))
    x, y, z = position.T
    return np.stack([c * x + s * y, c * y - s * x, z], axis=1)


def slow_throws(radius, omega, last_s):
    """Throws that are all but at rest outside, in several directions, so that they fly for last_s before they land."""
    for share, heading in ((0.3, 0.0), (0.8, 100.0), (0.9, 255.0)):
        rho = 0.4 * radius
        level = -omega * rho + share * 0.9 * radius / last_s * math.cos(math.radians(heading))
        up = 0.2 * radius / last_s
        axial = share * radius / last_s * math.sin(math.radians(heading))
        speed = math.sqrt(level**2 + up**2 + axial**2)
        yield throw(
            radius - rho,
            speed,
            math.degrees(math.atan2(axial, level)),
            math.degrees(math.asin(up / speed)),
            along_m=7.0,
        )


@each_radius
@each_row("ramped", [False, True])
def test_a_vacuum_path_is_the_exact_straight_line_for_up_to_ten_turns(radius, ramped):
    omega = math.sqrt(4.9 / radius)
    last_s = min(10 * math.tau / omega, 3 * math.tau / omega if radius > 900 else 60.0)
    habitat = wheel(radius, last_s if ramped else None)
    for motion, traced in zip(
        motions := list(slow_throws(radius, omega, last_s)), trace(motions, habitat).motions, strict=True
    ):
        samples = traced.track.samples
        start, velocity = outside(habitat, motion)
        exact = aboard(habitat, start + velocity * samples.time_s[:, None], samples.time_s)
        assert turned(habitat, samples.time_s[-1:])[0] > math.tau
        assert np.abs(samples.rotating_m - exact).max() < PATH_SHARE * radius


def random_throws(radius, omega, count, seed):
    rng = np.random.default_rng(seed)
    for _ in range(count):
        speed = omega * radius * rng.uniform(0.05, 1.5)
        height, along = radius * rng.uniform(0.0, 0.9), rng.uniform(-3, 3) * radius
        yield throw(
            height, speed, rng.uniform(-180, 180), rng.uniform(-90, 90), along_m=along, start_s=rng.uniform(0, 20)
        )


def exact_landing(habitat, motion):
    """Time from release, and deck azimuth aboard, of a straight line to the deck, and the speed square to it."""
    (x, y, _), (vx, vy, _) = outside(habitat, motion)
    radius = habitat["radius_m"]
    a, b, c = vx * vx + vy * vy, x * vx + y * vy, (math.hypot(x, y) - radius) * (math.hypot(x, y) + radius)
    root = math.sqrt(b * b - a * c)
    time_s = (-b + root) / a if b < 0 else -c / (b + root)
    azimuth = math.atan2(y + vy * time_s, x + vx * time_s) - float(turned(habitat, [motion["start_s"] + time_s])[0])
    return time_s, azimuth, root / radius


@each_radius
@each_row("ramped", [False, True])
def test_a_vacuum_landing_is_that_of_the_exact_quadratic(radius, ramped):
    habitat = wheel(radius, 60.0 if ramped else None)
    motions = list(random_throws(radius, math.sqrt(4.9 / radius), 60, int(radius)))
    checked = 0
    for motion, traced in zip(motions, trace(motions, habitat).motions, strict=True):
        time_s, azimuth, normal = exact_landing(habitat, motion)
        if time_s > 60 or normal < LEAST_NORMAL_M_S or motion["place"]["height_m"] < 1e-9:
            continue
        landing = traced.track.landing
        assert landing.time_s - motion["start_s"] == pytest.approx(time_s, abs=LANDING_S)
        off = (landing.along_m / radius - azimuth + math.pi) % math.tau - math.pi
        assert abs(off) * radius < LANDING_M
        checked += 1
    assert checked >= 25


@each_radius
def test_a_drop_lands_where_the_involute_meets_the_deck(radius):
    habitat = wheel(radius)
    landing = one(drop(0.3 * radius), habitat).track.landing
    angle = math.acos(0.7)
    assert landing.time_s == pytest.approx(math.tan(angle) / math.sqrt(4.9 / radius), abs=LANDING_S)
    assert landing.along_m == pytest.approx(radius * (angle - math.tan(angle)), abs=LANDING_M)


RHO, MU = 101325 / (287.05 * 293.15), 1.458e-6 * 293.15**1.5 / (293.15 + 110.4)  # ISO 2533, 20 C


def flown_by_scipy(habitat, motion, times_s):
    """Inertial positions (n, 3) in air at times (n,) since the release, by another integrator, each stretch of spin alone."""
    body, start = motion["body"], motion["start_s"]
    d, m, cd, thrust = (
        body["diameter_m"],
        body["mass_kg"],
        body.get("drag", "sphere"),
        habitat.get("axial_thrust_m_s2", 0.0),
    )
    knot_times, knot_rates = knots(habitat)

    def rates(t, y):
        omega = np.interp(start + t, knot_times, knot_rates)
        wx, wy, wz = y[3] + omega * y[1], y[4] - omega * y[0], y[5]
        w = math.sqrt(wx * wx + wy * wy + wz * wz)
        rho = RHO * math.exp(
            min(omega**2 * (y[0] ** 2 + y[1] ** 2 - habitat["radius_m"] ** 2) / (2 * 287.05 * 293.15), 0.0)
        )
        c = (law_cd_re(re) / re if (re := rho * w * d / MU) > 0 else 0.0) if cd == "sphere" else cd
        k = math.pi / 8 * d * d * rho * c * w / m
        return [y[3], y[4], y[5], -k * wx, -k * wy, -k * wz - thrust]

    stops = [0.0, *(t - start for t in knot_times if start < t < start + times_s[-1]), times_s[-1]]
    state, found = np.concatenate(outside(habitat, motion)), []
    for a, b in itertools.pairwise(stops):
        inside = times_s[(times_s > a) & (times_s <= b)]
        ends = solve_ivp(
            rates, (a, b), state, "DOP853", np.union1d(inside, [b]), rtol=1e-12, atol=1e-12, max_step=SHORT_S
        ).y
        found.append(ends[:3, : len(inside)])
        state = ends[:, -1]
    return np.concatenate(found, axis=1).T


SHORT_S = 0.1  # longer steps of scipy's own stumble where drag begins from rest
TENNIS, SHOT = {"mass_kg": 0.0577, "diameter_m": 0.067}, {"mass_kg": 7.26, "diameter_m": 0.12, "drag": 0.47}
DRIZZLE, FOAM = {"mass_kg": 5.24e-7, "diameter_m": 1e-3}, {"mass_kg": 0.02, "diameter_m": 0.25}
DRAG_CASES = [
    pytest.param(wheel(2.0), throw(1.0, 2.5, 200, 60, TENNIS), id="2 m"),
    pytest.param(wheel(2.0, 3.0), throw(1.9, 4.0, 180, 0, SHOT | {"mass_kg": 0.5}), id="2 m, ramped"),
    pytest.param(wheel(56.0), throw(1.5, 14.0, 180, 35, TENNIS, 3.3), id="56 m"),
    pytest.param(wheel(56.0, 8.0), throw(20.0, 25.0, 160, 20, SHOT), id="56 m, ramped, constant Cd"),
    pytest.param(wheel(56.0), throw(30.0, 3.0, 90, 10, DRIZZLE), id="56 m, 1 mm"),
    pytest.param(wheel(900.0), throw(1.5, 95.0, 180, 25, FOAM), id="900 m, foam"),
    pytest.param(wheel(900.0, 30.0), throw(300.0, 60.0, 30, 60, TENNIS), id="900 m, ramped"),
    pytest.param(wheel(10_000.0), throw(6000.0, 200.0, 180, 30, SHOT), id="10 km, constant Cd"),
    pytest.param(wheel(10_000.0), throw(9990.0, 300.0, 250, 0, TENNIS), id="10 km, from near the axis"),
    pytest.param(wheel(10_000.0, 40.0), throw(800.0, 30.0, 0, 0, DRIZZLE), id="10 km, ramped, 1 mm"),
    # Long fast flights in thin drag, drawn at random, whose errors were the greatest of 3,000:
    pytest.param({"radius_m": 7336.052835660516, "spin_rpm": 0.13942868609552667, "spin_ramp": []},
                 throw(2806.3426834848447, 72.46653101845499, 180, 61.255242248166226,
                       {"mass_kg": 0.27559879511911517, "diameter_m": 0.04071252421229652}, 5.0), id="7.3 km"),
    pytest.param({"radius_m": 9673.973578960966, "spin_rpm": 0.23641884126287796, "spin_ramp": [
                     {"time_s": 17.58838222866576, "spin_rpm": 0.4304045123617951},
                     {"time_s": 26.60979291917877, "spin_rpm": 0.1863848250567599},
                     {"time_s": 31.47363833431666, "spin_rpm": 0.42350282990306}]},
                 throw(6439.082270201056, 168.57940151835533, 77.87231486008363, 74.3250038298983,
                       {"mass_kg": 0.15775999481121084, "diameter_m": 0.033803983893327054}, 5.0), id="9.7 km, ramped"),
    pytest.param({"radius_m": 678.761459963604, "spin_rpm": 0.49100219040816284, "spin_ramp": [
                     {"time_s": 15.554756836208357, "spin_rpm": 0.9676644255009746},
                     {"time_s": 18.677873396604163, "spin_rpm": 0.13124095201432984},
                     {"time_s": 23.601303528664808, "spin_rpm": 0.2191897655428304}]},
                 throw(436.0996162109331, 45.877715383894895, 180, 25.08174907497994,
                       {"mass_kg": 0.0067896369178720726, "diameter_m": 0.011846346785568349}), id="680 m, ramped"),
]  # fmt: skip


@pytest.mark.parametrize(("habitat", "motion"), DRAG_CASES)
def test_a_path_in_air_is_that_of_another_integrator(habitat, motion):
    path = one(motion, habitat, AIR).track.path
    times = np.linspace(0, min(path.end_s - motion["start_s"], 60.0), 25)[1:]
    ours, _ = path.at(motion["start_s"] + times)
    assert path.end_s - motion["start_s"] > 0.2
    assert np.abs(ours - flown_by_scipy(habitat, motion, times)).max() < DRAG_M


def test_a_path_in_air_under_thrust_is_that_of_another_integrator():
    habitat = wheel(56.0) | {"axial_thrust_m_s2": 1.5}
    motion = throw(30.0, 12.0, 180, 40, TENNIS)
    path = one(motion, habitat, AIR).track.path
    times = np.linspace(0, path.end_s, 12)[1:]
    assert np.abs(path.at(times)[0] - flown_by_scipy(habitat, motion, times)).max() < DRAG_M


@each_radius
@each_row("thrust", [0.0, 0.7])
def test_energy_aboard_is_kept(radius, thrust):
    habitat = wheel(radius) | {"axial_thrust_m_s2": thrust}
    omega = math.sqrt(4.9 / radius)
    for traced in trace(list(random_throws(radius, omega, 20, 5)), habitat).motions:
        samples = traced.track.samples
        if len(samples.time_s) < 2:
            continue
        kinetic = np.sum(samples.rotating_velocity_m_s**2, axis=1) / 2
        spinning = omega**2 * np.sum(samples.rotating_m[:, :2] ** 2, axis=1) / 2
        kept = kinetic - spinning + thrust * samples.axial_m
        assert np.ptp(kept) <= ENERGY_SHARE * np.max(kinetic + spinning)


def met(traced):
    """The first surface it meets that is no ground, or None."""
    return next((e.kind for e in traced.track.events if e.surface not in (None, "deck")), None)


def passing(radius, miss_m, heading=0.0):
    """A throw, where the wheel is at rest, that passes the axis at a distance of 0.1 R + miss_m in a straight line."""
    nearest = 0.1 * radius + miss_m
    return throw(0.5 * radius, radius / 40, heading, math.degrees(math.acos(nearest / (0.5 * radius))))


@each_radius
@each_row("depth_m", [1e-3, 1e-6, 2 * DEPTH_M])
def test_a_graze_of_the_hub_deeper_than_a_billionth_is_found(radius, depth_m):
    still = {"radius_m": radius, "spin_rpm": 0.0, "hub_radius_m": 0.1 * radius}
    assert met(one(passing(radius, -depth_m), still)) == "hub"
    assert met(one(passing(radius, +depth_m), still)) is None


@each_row("depth_m", [1e-3, 1e-6, 2 * DEPTH_M])
def test_a_graze_of_a_wall_at_the_top_of_its_arc_is_found(depth_m):
    """Under thrust a throw along the axis rises to v^2/2a: the wall stands there, a hair less or more."""
    habitat = wheel(56.0) | {"axial_thrust_m_s2": 2.0, "width_m": 400.0}
    for below, wall in ((-depth_m, "wall"), (depth_m, None)):
        assert met(one(throw(30.0, 3.0, 90, 0, axial_m=200.0 - 2.25 - below), habitat)) == wall


@each_row("radius", [56.0, 10_000.0])
@each_row("depth_m", [1e-6, 2 * DEPTH_M])
def test_a_graze_of_the_ceiling_in_air_is_found_inside_a_step(radius, depth_m):
    """The ceiling is put a hair below, or above, the highest point of the same flight without one."""
    motion = throw(1.5, math.sqrt(4.9 * radius) / 4, 180, 60, TENNIS)
    apex = one(motion, wheel(radius), AIR).track.apex
    top = apex.height_m + 0.067 / 2
    assert len(one(motion, wheel(radius), AIR).track.path.start_s) < 60  # long steps
    assert met(one(motion, wheel(radius) | {"ceiling_m": top - depth_m}, AIR)) == "ceiling"
    assert met(one(motion, wheel(radius) | {"ceiling_m": top + depth_m}, AIR)) is None


def test_a_path_that_meets_nothing_is_a_point_at_rest_outside():
    """The straight line of no length: thrown back at the speed of the deck there it is where it was, ten turns on."""
    radius, omega = 2.0, math.sqrt(4.9 / 2.0)
    samples = one(throw(1.0, omega, 180, 0, POINT), wheel(radius)).track.samples
    assert omega * samples.time_s[-1] > 10 * math.tau
    assert np.ptp(samples.inertial_m, axis=0).max() < PATH_SHARE * radius
