"""Aim, landings and match: how long they take and how much is worked out for them, each against scipy doing the same one throw by one.

scipy's side is written out here in the inertial frame: DOP853 through the air of a wheel that turns, an event where the deck is met,
for an aim a root of where the throw is at each flight time of the curve that the answer is read from, and for a match least squares of what
the points show over radius, spin and release, from starts all over the habitats.
"""

import contextlib
import json
import math
import time

import numpy as np
from scipy.integrate import solve_ivp
from scipy.optimize import least_squares, root

from rimfall.physics.budget import Budget, spending
from rimfall.scene.reading import read_aim, read_landings, read_match
from rimfall.scene.shot import aim, landings, match

from .row import Row, best

RADIUS_M, RPM = 30.0, 4.0
OMEGA_RAD_S = RPM * math.tau / 60
HEIGHT_M, TOLERANCE = 1.5, 1e-9
BODY = {"mass_kg": 0.2, "diameter_m": 0.1, "drag": 0.47}
DEG = math.radians
TO = {"along_m": -RADIUS_M * math.tau / 3, "height_m": 1.4}
HARD_AIMS = (  # in air, flights of up to 60 s
    ("at a fixed elevation", {"elevation_deg": 20.0}),
    ("at a speed none arrives with", {"speed_m_s": 12.0}),
    ("at a speed that hangs about the axis", {"speed_m_s": 23.0}),
    ("for a flight time", {"flight_s": 6.0}),
)
SCIPY_AIMS, SCIPY_THROWS, SCIPY_FITS = 6, 25, 7  # one by one; their time is scaled


def scene(air):
    throw = {"kind": "throw", "name": "serve", "place": {"height_m": HEIGHT_M}, "body": BODY}
    habitat = {"radius_m": RADIUS_M, "spin_rpm": RPM}
    return {"rimfall": 1, "habitat": habitat, "air": {} if air else None, "motions": [throw]}


def worked(find, request, times):
    """Seconds of the quickest of some runs, what was found, and what it took in words."""
    budget = Budget()
    with spending(budget):
        found = find(request)
    used = budget.used
    return best(lambda: find(request), times), found, f"{used.steps:,} steps, {used.law_calls:,} evaluations"


def moves(air):
    """A function of time and state (6,), inertial: drag in air that turns with the wheel and thins toward the axis, or nothing."""
    gas = 287.05 * 293.15
    factor = 0.5 * 0.47 * math.pi / 4 * 0.1**2 / 0.2 * 101_325.0 / gas if air else 0.0

    def rates(_, state):
        x, y, _, vx, vy, vz = state
        wind = np.array([-OMEGA_RAD_S * y - vx, OMEGA_RAD_S * x - vy, -vz])
        thin = factor * math.exp(-(OMEGA_RAD_S**2) * (RADIUS_M**2 - x * x - y * y) / (2 * gas))
        return np.concatenate([state[3:], thin * math.sqrt(wind @ wind) * wind])

    return rates


def start(spinward, up, axial):
    """The state (6,) of a throw at a velocity relative to the turning hand."""
    rho = RADIUS_M - HEIGHT_M
    return np.array([rho, 0.0, 0.0, -up, OMEGA_RAD_S * rho + spinward, axial])


def aims_s(air, flights):
    """Seconds that scipy takes to hit the hands at each of the flight times (n,), one after the other, scaled from some of them."""
    some = flights[np.linspace(0, len(flights) - 1, SCIPY_AIMS).astype(int)]
    rates, began = moves(air), time.perf_counter()
    for flight_s in some:
        angle = TO["along_m"] / RADIUS_M + OMEGA_RAD_S * flight_s
        hands = (RADIUS_M - TO["height_m"]) * np.array([math.cos(angle), math.sin(angle), 0.0])

        def off(velocity, flight_s=flight_s, hands=hands):
            end = solve_ivp(rates, (0, flight_s), start(*velocity), "DOP853", rtol=TOLERANCE, atol=TOLERANCE)
            return end.y[:3, -1] - hands

        straight = (hands - start(0, 0, 0)[:3]) / flight_s - start(0, 0, 0)[3:]
        root(off, [straight[1], -straight[0], straight[2]], tol=1e-6)
    return (time.perf_counter() - began) * len(flights) / len(some)


def landings_s(found):
    """Seconds that scipy takes to land all throws of a Found, one after the other, scaled from some of them."""
    figures, count = found.landings.figures, len(found.landings.ended)
    rates, began = moves(air=True), time.perf_counter()

    def lands(_, state):
        return RADIUS_M - BODY["diameter_m"] / 2 - math.hypot(state[0], state[1])

    lands.terminal, lands.direction = True, -1
    for k in np.linspace(0, count - 1, SCIPY_THROWS).astype(int):
        speed, up = figures["speed_m_s"][k], DEG(figures["elevation_deg"][k])
        first = start(speed * math.cos(up), speed * math.sin(up), 0.0)
        solve_ivp(rates, (0, 60), first, "DOP853", events=lands, rtol=TOLERANCE, atol=TOLERANCE)
    return (time.perf_counter() - began) * count / SCIPY_THROWS


def places(radius_m, omega_rad_s, height_m, velocity, time_s):
    """Places aboard (n, 3) of a throw at times (n,), integrated in vacuum by solve_ivp."""
    rho, (spinward, up, axial) = radius_m - height_m, velocity
    first = np.array([rho, 0.0, 0.0, -up, omega_rad_s * rho + spinward, axial])
    seen = solve_ivp(
        lambda _, state: [*state[3:], 0.0, 0.0, 0.0],
        (0, time_s[-1]),
        first,
        "DOP853",
        t_eval=time_s,
        rtol=TOLERANCE,
        atol=TOLERANCE,
    ).y
    along = radius_m * (np.unwrap(np.arctan2(seen[1], seen[0])) - omega_rad_s * time_s)
    return np.stack([along, radius_m - np.hypot(seen[0], seen[1]), seen[2]], axis=1)


def seen_path():
    """Times (60,) and places (60, 3) of a lob across a wheel, with 2 cm of noise."""
    time_s = np.linspace(0.0, 1.6, 60)
    path = places(RADIUS_M, OMEGA_RAD_S, HEIGHT_M, (3.0, 4.0, 1.0), time_s)
    return time_s, path + np.random.default_rng(15).normal(0.0, 0.02, path.shape)


def fits_s(time_s, seen):
    """Seconds that scipy takes to fit radius, spin, height and velocity from a start in every part of the habitats there are, one fit after
    the other and every trial a flight of its own, scaled from some of them."""

    def off(figures):
        radius_m, omega, height_m, *velocity = figures
        return ((places(radius_m, omega, height_m, velocity, time_s) - seen) / 0.02).ravel()

    starts = [(r, math.sqrt(g / r)) for r in np.geomspace(5, 2_000, 10) for g in np.geomspace(0.3, 20, 7)]
    some, began = starts[:: len(starts) // SCIPY_FITS], time.perf_counter()
    for radius_m, omega in some:
        start_at = [radius_m, omega, 1.5, 2.0, 3.0, 0.5]
        with contextlib.suppress(ValueError):  # a trial that leaves every habitat
            least_squares(off, start_at, x_scale=np.maximum(np.abs(start_at), 0.1), max_nfev=60)
    return (time.perf_counter() - began) * len(starts) / len(some), len(starts)


def measure():
    for name, air, bar_s in (("vacuum", False, 0.06), ("air", True, 0.25)):
        request = {"scene": scene(air), "motion": "serve", "to": TO, "fixed": {"speed_m_s": 12.0}, "flight_max_s": 20.0}
        took_s, found, counts = worked(aim.find, read_aim(json.dumps(request)), times=3)
        flights = np.asarray(aim.as_data(found)["by_flight"]["flight_s"])
        ratio = aims_s(air, flights) / took_s
        note = f"{len(found.there.aim.ways)} ways; {counts}; scipy at {len(flights)} flight times takes {ratio:,.0f} times as long"
        yield Row(
            f"aim a third of the way round, in {name}",
            f"{took_s * 1e3:.0f} ms",
            f"<= {bar_s * 1e3:.0f} ms",
            took_s <= bar_s,
            note,
        )
    for name, fixed in HARD_AIMS:
        request = {"scene": scene(air=True), "motion": "serve", "to": TO, "fixed": fixed}
        took_s, found, counts = worked(aim.find, read_aim(json.dumps(request)), times=3)
        note = f"{len(found.there.aim.ways)} ways; {counts}"
        yield Row(f"aim {name}, in air", f"{took_s * 1e3:.0f} ms", "<= 250 ms", took_s <= 0.25, note)
    over = [
        {"field": "elevation_deg", "first": 0, "last": 80, "count": 100},
        {"field": "speed_m_s", "first": 2, "last": 20, "count": 100},
    ]
    request = read_landings(json.dumps({"scene": scene(air=True), "motion": "serve", "over": over}))
    took_s, found, counts = worked(landings.find, request, times=2)
    note = f"{counts}; scipy takes {landings_s(found) / took_s:,.0f} times as long"
    yield Row("landings of 10,000 throws in air", f"{took_s:.2f} s", "<= 1.5 s", took_s <= 1.5, note)
    time_s, seen = seen_path()
    names = ("time_s", "along_m", "height_m", "axial_m")
    rows = [dict(zip(names, map(float, row), strict=True)) for row in np.column_stack([time_s, seen])]
    request = read_match(json.dumps({"track": rows, "accuracy_m": 0.02, "known": {"air": None}}))
    took_s, answer, counts = worked(match.as_data, request, times=2)
    one_by_one_s, starts = fits_s(time_s, seen)
    note = f"{answer['verdict']}; {counts}; scipy from {starts} starts takes {one_by_one_s / took_s:,.0f} times as long"
    yield Row("match of 60 points", f"{took_s:.2f} s", "<= 1 s", took_s <= 1.0, note)
