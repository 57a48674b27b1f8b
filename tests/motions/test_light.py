"""What the air bears up or holds by a stated area, flown whole: against scipy, published speeds, and forms worked out by hand."""

import math

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq

from rimfall.physics.budget import Budget, spending
from rimfall.physics.constants import RPM_RAD_S
from rimfall.physics.drag import sphere_cd
from tests.motions.scenes import AIR, LANTERN, drop, event, kinds, one, place, throw, trace
from tests.tables import each_row

MOST_CALLS = 500  # of the force in one of these flights; Runge-Kutta steps of order 8 took up to 2,600
OF_SCIPY_M = 1e-6  # design, section 2: against DOP853 at 1e-12 in the inertial frame
RHO = 101325.0 / (287.05 * 293.15)
BALLOON = {"mass_kg": 0.0049, "diameter_m": 0.28, "shell": "hollow", "buoyant": True}
LIGHT = {
    "balloon": BALLOON,
    "balloon of one coefficient": BALLOON | {"drag": 0.47},
    "bubble": {"mass_kg": 8.67e-5, "diameter_m": 0.05, "buoyant": True},
    "of hardly any mass": {"mass_kg": 1e-6, "diameter_m": 0.1, "buoyant": True},
    "heavy": {"mass_kg": 5.0, "diameter_m": 0.5, "buoyant": True},
    "paper": {"mass_kg": 0.005, "diameter_m": 0.01, "drag_area_m2": 0.0736},
    "bubble of a drag area": {"mass_kg": 8.67e-5, "diameter_m": 0.05, "buoyant": True, "drag_area_m2": 0.001},
}
ROOMS = {
    "steady": LANTERN,
    "thrust": LANTERN | {"axial_thrust_m_s2": 1.5},
    "ramp": LANTERN | {"spin_ramp": [{"time_s": 1.0, "spin_rpm": 3.0}, {"time_s": 2.5, "spin_rpm": 5.0}]},
    "turntable": {"shape": "turntable", "radius_m": 5.0, "spin_rpm": 20.0},
}


class Written:
    """The equation of motion of one body (Auton, Hunt & Prud'Homme 1988, C = 1/2), inertial, in numbers: Omega lies along z."""

    def __init__(self, body, room):
        self.body, self.room = body, room
        self.still = room.get("shape") == "turntable"
        knots = [(0.0, room["spin_rpm"]), *((p["time_s"], p["spin_rpm"]) for p in room.get("spin_ramp", []))]
        self.times, self.rates = [t for t, _ in knots], [rpm * RPM_RAD_S for _, rpm in knots]
        self.volume = math.pi / 6 * body["diameter_m"] ** 3 if body.get("buoyant") else 0.0
        self.viscosity = 1.458e-6 * 293.15**1.5 / (293.15 + 110.4)

    def spin(self, t, piece):
        """Omega and its change, about z, in the piece of the ramp that a whole step lies in."""
        if self.still:
            return 0.0, 0.0
        if piece == len(self.rates) - 1:
            return self.rates[-1], 0.0
        slope = (self.rates[piece + 1] - self.rates[piece]) / (self.times[piece + 1] - self.times[piece])
        return self.rates[piece] + slope * (t - self.times[piece]), slope

    def area(self, speed):
        if "drag_area_m2" in self.body:
            return self.body["drag_area_m2"]
        drag, diameter = self.body.get("drag"), self.body["diameter_m"]
        if drag is None:
            drag = float(sphere_cd(np.array([max(self.density * speed * diameter / self.viscosity, 1e-12)]))[0])
        return drag * math.pi / 4 * diameter**2

    def __call__(self, t, state, piece):
        x, y, _, *v = state.tolist()
        omega, change = self.spin(t, piece)
        past = -omega * y - v[0], omega * x - v[1], -v[2]  # Omega x r - v: the air's velocity past the body
        of_air = -(omega**2) * x - change * y, -(omega**2) * y + change * x, 0.0  # Omega x (Omega x r) + Omega' x r
        lifted = 2 * omega * past[1], -2 * omega * past[0], 0.0  # that velocity x 2 Omega
        pull = 0.0, 0.0, -9.80665 if self.still else -self.room.get("axial_thrust_m_s2", 0.0)
        off = x**2 + y**2 - self.room["radius_m"] ** 2
        self.density = RHO * math.exp(omega**2 * off / (2 * 287.05 * 293.15))
        mass, displaced = self.body["mass_kg"], self.density * self.volume
        speed = math.hypot(*past)
        drag = 0.5 * self.density * self.area(speed) * speed
        return v + [
            (drag * past[i] + mass * pull[i] + displaced * (1.5 * of_air[i] - pull[i] + 0.5 * lifted[i]))
            / (mass + 0.5 * displaced)
            for i in range(3)
        ]

    def flown(self, begin, time_s):
        """Positions (n, 3) at rising times, from the state at the first one, no step across a knot."""
        out, state = [], begin
        for k, low in enumerate(self.times):
            high = self.times[k + 1] if k + 1 < len(self.times) else time_s[-1]
            inside = time_s[(time_s >= low) & (time_s < high)] if k + 1 < len(self.times) else time_s[time_s >= low]
            if high > low and time_s[-1] >= low:
                solved = solve_ivp(self, (low, high), state, "DOP853", np.union1d(inside, high), args=(k,), rtol=1e-12, atol=1e-12)  # fmt: skip
                out.append(solved.y[:3, : len(inside)].T)
                state = solved.y[:, -1]
        return np.concatenate(out)


@each_row("room", ROOMS)
@each_row("body", LIGHT)
def test_it_flies_as_scipy_says(body, room):
    motion = throw(1.5, 4.0, 150, 50, LIGHT[body], axial_m=2.0 if room == "turntable" else 0.0)
    with spending(Budget()) as budget:
        path = one(motion, ROOMS[room], AIR, duration_s=4.0).track.path
    assert budget.used.steps < MOST_CALLS
    time_s = np.linspace(0.0, path.end_s, 60)
    position, velocity = path.at(time_s)
    expected = Written(LIGHT[body], ROOMS[room]).flown(np.concatenate([position[0], velocity[0]]), time_s)
    assert path.end_s > 0.8
    assert np.abs(position - expected).max() < OF_SCIPY_M


def test_a_body_of_the_airs_density_let_go_stays_where_it_is():
    """Against the air's thinning (the isothermal law of the gas centrifuge, written out)."""
    omega = 6.0 * RPM_RAD_S
    density = RHO * math.exp(-(omega**2) * (56.0**2 - 16.0**2) / (2 * 287.05 * 293.15))
    body = {"mass_kg": density * math.pi / 6 * 0.5**3, "diameter_m": 0.5, "buoyant": True}
    samples = one(drop(40.0, body), LANTERN | {"spin_rpm": 6.0}, AIR).track.samples
    assert len(samples.time_s) == 60 * 48 + 1
    assert np.abs(samples.rotating_m - samples.rotating_m[0]).max() < 1e-9


def test_a_body_of_a_tenth_more_than_the_deck_s_air_sinks_and_of_a_tenth_less_rises():
    neutral = RHO * math.pi / 6 * 0.28**3
    ends = [one(drop(2.0, BALLOON | {"mass_kg": f * neutral}), air=AIR).track.samples.height_m[-1] for f in (1.1, 0.9)]
    assert ends[0] < 2.0 < ends[1]


def settles_m_s(body, gravity_m_s2):
    """Last speed of a fall over a turntable that stands still, ten seconds before a flight's limit."""
    bench = {"shape": "turntable", "radius_m": 5.0, "spin_rpm": 0.0, "outside_gravity_m_s2": gravity_m_s2}
    samples = one(drop(5_000.0, body), bench, AIR | {"pressure_kpa": 1.21 * 287.05 * 293.15e-3}).track.samples
    return float(np.linalg.norm(samples.rotating_velocity_m_s[-480]))


@each_row(
    ("mass_kg", "area_m2", "published_m_s"),
    [(85.0, 1.0 * 0.70, 44.0), (75.0, 0.70 * 0.18, 98.0)],
)
def test_people_fall_as_fast_as_published(mass_kg, area_m2, published_m_s):
    """OpenStax, College Physics, section 5.2, air of 1.21 kg/m3, printed to a metre a second (from memory)."""
    body = {"mass_kg": mass_kg, "diameter_m": 0.3, "drag_area_m2": area_m2}
    assert settles_m_s(body, 9.80) == pytest.approx(published_m_s, abs=0.5)


@each_row("body", [BALLOON, LIGHT["bubble"]])
def test_light_things_settle_where_the_standard_curve_carries_their_weight(body):
    volume, disc = math.pi / 6 * body["diameter_m"] ** 3, math.pi / 4 * body["diameter_m"] ** 2
    viscosity = 1.458e-6 * 293.15**1.5 / (293.15 + 110.4)

    def too_fast(v):
        coefficient = float(sphere_cd(np.array([1.21 * v * body["diameter_m"] / viscosity]))[0])
        return 0.5 * 1.21 * coefficient * disc * v * v - abs(1.21 * volume - body["mass_kg"]) * 9.80665

    assert settles_m_s(body, 9.80665) == pytest.approx(brentq(too_fast, 1e-3, 50.0), rel=1e-9)


def test_a_drag_area_stands_for_a_coefficient_on_the_body_s_own_disc():
    stated = {"mass_kg": 0.45, "diameter_m": 0.18, "drag_area_m2": 0.5 * math.pi / 4 * 0.18**2, "drag": 3.0}
    found = one(throw(1.5, 6.0, 180, 35, stated), air=AIR).track.landing
    plain = one(throw(1.5, 6.0, 180, 35, {"mass_kg": 0.45, "diameter_m": 0.18, "drag": 0.5}), air=AIR)
    assert found.rotating_m == pytest.approx(plain.track.landing.rotating_m, abs=1e-9)


def test_what_falls_back_on_others_goes_ahead_on_a_balloon():
    """It rises, drifts spinward as it does, and when the ship pushes it goes the way of the push; a ball goes the other."""
    room = LANTERN | {"axial_thrust_m_s2": 0.4}
    light, heavy = trace([drop(1.2, BALLOON), drop(1.2, {"mass_kg": 1.0, "diameter_m": 0.28})], room, AIR).motions
    light, heavy = light.track.samples, heavy.track.samples
    assert (light.height_m[-1], light.along_m[20], light.axial_m[-1]) > (2.0, 0.0, 0.5)
    assert light.along_m[20] > 0 > heavy.along_m[20]
    assert heavy.axial_m[-1] < 0 < light.axial_m[-1]
    braked = LANTERN | {"spin_ramp": [{"time_s": 4.0, "spin_rpm": 1.0}]}
    steady, slowed = (one(drop(1.2, BALLOON), h, AIR).track.samples.along_m[100] for h in (LANTERN, braked))
    assert slowed < steady


def test_it_comes_to_rest_under_the_ceiling():
    room = LANTERN | {"ceiling_m": 4.0, "width_m": 14.0}
    traced = one(drop(1.2, BALLOON | {"rolling_resistance": 0.02}), room, AIR)
    assert kinds(traced) == ["release", "ceiling", "rest"]
    assert (traced.track.end, traced.track.no_landing) == ("rest", "met_ceiling")
    assert float(event(traced, "rest").height_m) == pytest.approx(4.0 - 0.14, abs=1e-9)


def test_it_rebounds_off_the_ceiling_as_often_as_it_may():
    room = LANTERN | {"ceiling_m": 4.0}
    traced = one(drop(1.2, BALLOON | {"restitution": 0.8}) | {"bounces": 2}, room, AIR)
    assert kinds(traced)[:4] == ["release", "ceiling", "ceiling", "ceiling"]
    assert traced.track.events[1].after_m_s[1] == pytest.approx(-0.8 * traced.track.events[1].local_m_s[1])


@each_row(("shell", "beta"), [("solid", 2 / 5), ("hollow", 2 / 3)])
def test_down_a_ramp_the_air_it_moves_slows_it_but_does_not_turn(shell, beta):
    """Without drag: (m + M/2 + beta m) a = (m - M) g sin(slope), M the displaced air; the balance by hand."""
    mass_kg, displaced = 0.02, RHO * math.pi / 6 * 0.28**3
    body = BALLOON | {"mass_kg": mass_kg, "shell": shell, "drag": 0.0}
    ramp = {"slope_deg": 20.0, "length_m": 100.0, "width_m": 2.0}
    roll = {"kind": "roll", "place": place(0.0, axial_m=20.0), "body": body, "ramp": ramp}
    bench = {"shape": "turntable", "radius_m": 100.0, "spin_rpm": 0.0}
    samples = one(roll, bench, AIR, duration_s=2.0).track.samples
    gained = (mass_kg - displaced) * 9.80665 * math.sin(math.radians(20.0)) / (mass_kg * (1 + beta) + displaced / 2)
    assert np.linalg.norm(samples.rotating_velocity_m_s[-1]) == pytest.approx(2.0 * gained, abs=1e-8)


EXTREMES = [
    {"mass_kg": mass, "diameter_m": diameter, "buoyant": buoyant, "drag_area_m2": area}
    for mass in (1e-9, 1e6)
    for diameter in (1e-4, 10.0)
    for buoyant, area in ((True, None), (True, 1000.0), (False, 1000.0), (True, 0.0))
]


@each_row("body", EXTREMES)
def test_the_ends_of_every_range_fly(body):
    room = LANTERN | {"ceiling_m": 30.0, "axial_thrust_m_s2": 0.2, "spin_ramp": [{"time_s": 1.5, "spin_rpm": 6.0}]}
    samples = one(throw(12.0, 3.0, 40, 30, body), room, AIR, duration_s=3.0).track.samples
    assert len(samples.time_s) > 2
    assert np.isfinite(samples.rotating_velocity_m_s).all()
