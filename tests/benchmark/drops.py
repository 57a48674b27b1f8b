"""Drops of 1 to 6 mm falling for 0.6 s in the Lantern Wheel's air, against scipy drop by drop and a compiled integrator; and
pours of scattered drops, from the lip to the deck."""

import importlib.util
import json
import subprocess
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

from rimfall.kinds.pour.plan import plan as pour
from rimfall.physics import air, bodies, forces, spin, windowed
from rimfall.scene import reading
from rimfall.scene.document import setting_of
from tests.serving import ROOT

from .row import Row, best, in_turn

RADIUS_M, OMEGA_RAD_S, FALLS_S, TOLERANCE = 56.0, np.pi / 10, 0.6, 1e-9
SCIPY_DROPS = 60  # of the 2,000; its time is scaled, for it takes each by itself
CONSTANT_CD = 0.47
COMPILED = "{:,} drops, constant Cd: time over the compiled peer's"


def release(count, drag):
    """A force, and inertial position and velocity (3, count), of drops let go at rest in the wheel 1.2 to 1.7 m up."""
    chance = np.random.default_rng(1)
    diameter = chance.uniform(1e-3, 6e-3, count)
    many = bodies.Bodies(998.2 * np.pi / 6 * diameter**3, diameter, np.full(count, drag))
    position = np.zeros((3, count))
    position[0] = RADIUS_M - chance.uniform(1.2, 1.7, count)
    velocity = np.zeros((3, count))
    velocity[1] = OMEGA_RAD_S * position[0]
    medium = forces.Medium(spin.steady(OMEGA_RAD_S), air.air_at(101.325, 20.0), RADIUS_M)
    return forces.Force(medium, many, np.zeros(count), np.ones(count), np.zeros((3, count))), position, velocity


def flown(count, drag, tolerance):
    """Positions and velocities (3, count) of the drops at the end."""
    force, position, velocity = release(count, drag)
    return windowed.WindowStepper(
        force, position, velocity, FALLS_S, absolute=tolerance, relative=tolerance
    ).propagate()


def ours(count, drag):
    """A function that flies the drops."""
    force, position, velocity = release(count, drag)
    tolerance = {"absolute": TOLERANCE, "relative": TOLERANCE}
    return lambda: windowed.WindowStepper(force, position, velocity, FALLS_S, **tolerance).propagate()


def ours_s(count, drag, times=5):
    return best(ours(count, drag), times)


def timed(work, clock):
    """A function that does the work and gives the seconds it takes by a clock."""

    def once():
        start = clock()
        work()
        return clock() - start

    return once


def against_compiled(count):
    """The row of the drops against `compiled` by turns: processor time, which a busy machine changes least, and beside it what a clock says."""
    mine, peer = ours(count, CONSTANT_CD), compiled(count)
    mine_s, peer_s, ratio = in_turn(*(timed(work, time.process_time) for work in (mine, peer)), for_s=3.0)
    *_, by_clock = in_turn(*(timed(work, time.perf_counter) for work in (mine, peer)), for_s=3.0)
    return Row(COMPILED.format(count), f"{ratio.median:.2f}", "<= 1.0", ratio.median <= 1.0,
               f"processor time, {mine_s * 1e3:.0f} ms against {peer_s * 1e3:.0f} ms, {ratio.low:.2f} to {ratio.high:.2f}; by the clock "
               f"{by_clock.median:.2f}, {by_clock.low:.2f} to {by_clock.high:.2f}; one thread each; {told_errors()}")  # fmt: skip


def scipy_s(count, drag):
    force, position, velocity = release(count, drag)
    ones = [force.take(np.array([k])) for k in range(SCIPY_DROPS)]
    start = time.perf_counter()
    for k, one in enumerate(ones):
        state = np.concatenate([position[:, k], velocity[:, k]])
        solve_ivp(lambda t, y, one=one: np.concatenate([y[3:], one.at(t, y[:3, None], y[3:, None])[:, 0]]), (0, FALLS_S), state,
                  method="DOP853", rtol=TOLERANCE, atol=TOLERANCE)  # fmt: skip
    return (time.perf_counter() - start) * count / SCIPY_DROPS


def compiled(count):
    """A function that flies the drops, constant Cd, with heyoka's Taylor integrator in batch mode, and returns their states (6, count) at the
    end: what `ours_s` gives, at the same tolerance. Compiled once."""
    import heyoka as hy

    x, y, z, vx, vy, vz = hy.make_vars("x", "y", "z", "vx", "vy", "vz")
    medium = air.air_at(101.325, 20.0)
    ux, uy, uz = vx + OMEGA_RAD_S * y, vy - OMEGA_RAD_S * x, vz
    density = hy.exp((x * x + y * y - RADIUS_M**2) * (OMEGA_RAD_S**2 * medium.thinning_s2_m2))
    # the square root of a sum that starts at 0 has no Taylor series there: a speed of 1e-8 m/s stands in
    rate = hy.par[0] * density * hy.sqrt(ux * ux + uy * uy + uz * uz + 1e-16)
    system = [(x, vx), (y, vy), (z, vz), (vx, -rate * ux), (vy, -rate * uy), (vz, -rate * uz)]
    width = hy.recommended_simd_size()
    _, position, velocity = release(count, CONSTANT_CD)
    force, *_ = release(count, CONSTANT_CD)
    states = np.concatenate([position, velocity])
    batch = hy.taylor_adaptive_batch(system, states[:, :width].copy(), tol=TOLERANCE, pars=np.zeros((1, width)))
    rates, states_at_end = force._drag.scale, np.empty_like(states)

    def fly():
        for first in range(0, count - width + 1, width):
            batch.set_time(0.0)
            batch.state[:] = states[:, first : first + width]
            batch.pars[0] = rates[first : first + width]
            batch.propagate_until(FALLS_S)
            states_at_end[:, first : first + width] = batch.state
        return states_at_end

    return fly


def told_errors(count=400):
    """How far off both are at the end, against the same flights at a ten-thousandth of the tolerance."""
    exact, near = (flown(count, CONSTANT_CD, tolerance)[0] for tolerance in (1e-4 * TOLERANCE, TOLERANCE))
    off, peers_off = (np.abs(positions - exact).max() for positions in (near, compiled(count)()[:3]))
    return f"positions off by {off:.1e} m against {peers_off:.1e} m"


def scattered(lasts_s):
    """A setting, and a pour of scattered drops in it: about 450 a second."""
    lip = {"flow_ml_s": 12.0, "lip_diameter_mm": 2.0, "duration_s": lasts_s, "jitter": 0.3, "liquid": "water"}
    motion = {"kind": "pour", "place": {"height_m": 2.0}} | lip
    document = {"rimfall": 1, "habitat": {"radius_m": RADIUS_M, "spin_rpm": 3.0}, "motions": [motion]}
    scene = reading.read(json.dumps(document))
    return setting_of(scene)[0], scene.motions[0]


def scattered_s(count):
    """Time a drop takes when about so many are poured, and how many they are."""
    drops = len(pour(*scattered(1.0)).stream.batch.drops)
    setting, motion = scattered(count / drops)
    made = len(pour(setting, motion).stream.batch.drops)
    return best(lambda: pour(setting, motion), 3) / made, made


def measure():
    for name, drag, bar in (("constant Cd", CONSTANT_CD, 1000), ('"sphere"', np.nan, 1000)):
        ratio = scipy_s(2000, drag) / (mine := ours_s(2000, drag))
        yield Row(f"2,000 drops, {name}: times faster than scipy DOP853", f"{ratio:.0f} x", f">= {bar} x", ratio >= bar,
                  f"{mine * 1e3:.1f} ms; scipy's {SCIPY_DROPS} drops scaled")  # fmt: skip
    mine = ours_s(20_000, CONSTANT_CD)
    if importlib.util.find_spec("heyoka"):
        yield against_compiled(20_000)
    else:
        yield Row(COMPILED.format(20_000), "-", "<= 1.0", None, "the peer is not here")
    growth = ours_s(200_000, CONSTANT_CD, 2) / 10 / mine
    yield Row("time per drop, 200,000 against 20,000", f"{growth:.2f}", "<= 1.5", growth <= 1.5)
    command = [sys.executable, "-m", "tests.benchmark.flood"]
    most = int(subprocess.run(command, cwd=ROOT, stdout=subprocess.PIPE, check=True).stdout)
    yield Row("100,000 drops to the deck, their paths kept: most memory", f"{most / 1e6:.0f} MB", "<= 2 GB", most <= 2e9,
              "of the process, with the program")  # fmt: skip
    (few, _), (many, made) = scattered_s(1_000), scattered_s(5_000)
    yield Row("a pour of 5,000 scattered drops: time per drop against one of 1,000", f"{many / few:.2f}", "<= 1.5", many / few <= 1.5,
              f"{made:,} drops in {many * made * 1e3:.0f} ms, each with its own size, birth and path")  # fmt: skip
