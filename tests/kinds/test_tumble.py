"""A craft that tumbles, and what is dropped and thrown in it: against scipy in the inertial frame, and what is told and refused."""

import json

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.optimize import brentq, minimize_scalar
from scipy.spatial.transform import Rotation

from rimfall.errors import BadInput
from rimfall.exports.plot_lines import apparent_m_s2
from rimfall.motions.trajectory import attitudes
from rimfall.physics.air import air_at
from rimfall.physics.constants import G0_M_S2, RPM_RAD_S
from rimfall.scene.questions import trace
from rimfall.scene.reading import read, read_aim
from rimfall.scene.tumbling import moving_setting
from tests.scene.documents import BALL, answer, drop, scene, throw
from tests.tables import each_row
from tests.vessel.tumbling import matrices

RADIUS_M, BODY = 56.0, {"mass_kg": 0.2, "diameter_m": 0.2, "drag": 0.5}
SKEW = {
    "rimfall_craft": 1,
    "parts": [
        {"name": "ring", "solid": "ring", "mass_kg": 9e4},
        {
            "name": "keel",
            "solid": "cylinder",
            "mass_kg": 6e4,
            "radius_m": 3.0,
            "length_m": 90.0,
            "place_m": [4.0, 1.0, 10.0],
        },
        {"name": "yard", "solid": "box", "mass_kg": 4e4, "size_m": [60.0, 4.0, 4.0], "place_m": [-6.0, 3.0, -2.0]},
    ],
}
BRICK = {"name": "hull", "solid": "box", "mass_kg": 1e4, "size_m": [10.0, 30.0, 20.0]}
FLOOR = {
    "shape": "tumbler",
    "radius_m": 30.0,
    "spin_rpm": 3.0,
    "floors": [{"name": "bow", "radius_m": 30.0, "length_m": 20.0, "width_m": 20.0, "ceiling_m": None}],
}


def tumble(about_x_rpm=0.4, about_y_rpm=-0.3, **more):
    return {"kind": "tumble", "about_x_rpm": about_x_rpm, "about_y_rpm": about_y_rpm, **more}


def traced(*motions, **more):
    return trace(read(json.dumps(scene(*motions, **more))))


def flown(document, number, until_s):
    """The inertial state (6,), how the craft lies (3, 3) and its rates (3,) at a time after a release aboard, by DOP853: Euler's equations, the
    attitude, and a body that the air drags which turns with the craft; and the centre of mass."""
    setting, _ = moving_setting(document)
    let_go = setting.habitat.spin.motion
    inertia = let_go.body.axes @ np.diag(let_go.body.moments) @ let_go.body.axes.T
    inverse, centre = np.linalg.inv(inertia), let_go.centre_m
    motion = document.motions[number]
    air = 0.0
    if document.air is not None:
        density = air_at(document.air.pressure_kpa, document.air.temperature_c).deck_density_kg_m3
        air = 0.5 * density * BODY["drag"] * np.pi * (BODY["diameter_m"] / 2) ** 2 / BODY["mass_kg"]

    def change(_, state):
        place, velocity, (w, *v), rates = state[:3], state[3:6], state[6:10], state[10:]
        v = np.array(v)
        turn = matrices(state[None, 6:10])[0]
        wind = np.cross(turn @ rates, place - centre) - velocity
        spins = [[-0.5 * v @ rates], 0.5 * (w * rates + np.cross(v, rates)), inverse @ np.cross(inertia @ rates, rates)]
        return np.concatenate([velocity, air * np.linalg.norm(wind) * wind, *spins])

    place = (motion.place.along_m, motion.place.height_m, motion.place.axial_m)
    chart = setting.habitat.chart(0)
    rows, position = chart.axes_at(place), chart.position(place)
    e, h = np.radians([motion.elevation_deg, motion.heading_deg])
    aimed = motion.speed_m_s * np.array([np.cos(e) * np.cos(h), np.sin(e), np.cos(e) * np.sin(h)])
    velocity = aimed @ rows + np.cross(let_go.rates_rad_s, position - centre)
    start = np.concatenate([position, velocity, [1.0, 0.0, 0.0, 0.0], let_go.rates_rad_s])
    end = solve_ivp(change, (0, until_s), start, "DOP853", rtol=1e-12, atol=1e-12).y[:, -1]
    return end[:6], matrices(end[None, 6:10])[0], end[10:], centre


@each_row(
    ("habitat", "air", "thrown"),
    [
        ({}, None, drop(1.2, BODY)),
        ({}, None, throw(5.0, 200.0, 50.0, BODY)),
        ({}, {}, throw(5.0, 200.0, 50.0, BODY)),
        (FLOOR, None, throw(3.0, 30.0, 40.0, BODY)),
        (FLOOR, {}, drop(1.2, BODY)),
    ],
)
def test_what_is_let_go_lands_where_scipy_has_it(habitat, air, thrown):
    """At our time of landing scipy's body touches the floor, at our place, as fast, and turned as what goes on turning as it was held."""
    document = read(json.dumps(scene(tumble(), thrown, habitat=habitat, air=air, craft=SKEW)))
    made = trace(document)
    ours, track, spin = made.motions[1].track.landing, made.motions[1].track, made.setting.habitat.spin
    state, turn, rates, centre = flown(document, 1, ours.time_s)
    aboard = turn.T @ (state[:3] - centre) + centre
    moving = turn.T @ state[3:] - np.cross(rates, aboard - centre)
    np.testing.assert_allclose(ours.rotating_velocity_m_s, moving, atol=1e-6)
    down = np.array([1.0, 0.0, 0.0]) if habitat else aboard * (1, 1, 0) / np.hypot(*aboard[:2])
    assert ours.speed_m_s == pytest.approx(np.linalg.norm(moving))
    assert ours.incidence_deg == pytest.approx(np.degrees(np.arccos(moving @ down / np.linalg.norm(moving))))
    assert ours.along_m == pytest.approx(
        aboard[1] if habitat else RADIUS_M * np.arctan2(aboard[1], aboard[0]), abs=1e-6
    )
    (lies,) = attitudes(track.path, spin, np.array([ours.time_s]))
    held = Rotation.from_rotvec(spin.motion.rates_rad_s * ours.time_s).as_matrix()
    np.testing.assert_allclose(matrices(lies[None])[0], turn.T @ held, atol=1e-7)
    assert track.ends_s == ours.time_s
    np.testing.assert_allclose(ours.inertial_m, state[:3], atol=1e-6 if air is not None else 1e-7)
    np.testing.assert_allclose(ours.rotating_m, aboard, atol=1e-6 if air is not None else 1e-7)
    out = np.hypot(*aboard[:2]) if not habitat else aboard[0]
    assert out == pytest.approx((habitat or {"radius_m": RADIUS_M})["radius_m"] - 0.1, abs=1e-6)
    at_start(made)
    half = 0.5 * ours.time_s + 2e-3 * np.arange(-2, 3)
    places, speeds, _ = track.path.both(spin, half)
    bent = track.path.acceleration(spin, half, places, speeds)[2]
    np.testing.assert_allclose(np.array([-1, 16, -30, 16, -1]) / 12 / 2e-3**2 @ places, bent, atol=1e-5)


def test_at_a_ceiling_it_ends_as_at_a_floor():
    low = FLOOR | {"floors": [FLOOR["floors"][0] | {"ceiling_m": 3.0}]}
    document = read(json.dumps(scene(tumble(), throw(8.0, 30.0, 70.0, BODY), habitat=low, air=None, craft=SKEW)))
    track = trace(document).motions[1].track
    state, turn, _, centre = flown(document, 1, track.ends_s)
    assert (turn.T @ (state[:3] - centre) + centre)[0] == pytest.approx(27.1, abs=1e-6)
    assert track.end == "met a surface"


def at_start(made):
    """At its release: the frame's accelerations by Euler's equations, with the velocity that it is given aboard."""
    spin, seen = made.setting.habitat.spin, made.motions[1].track.samples
    inertia, omega = (
        spin.motion.body.axes @ np.diag(spin.motion.body.moments) @ spin.motion.body.axes.T,
        spin.motion.rates_rad_s,
    )
    off, moving = seen.rotating_m[0] - spin.centre_m, seen.rotating_velocity_m_s[0]
    outward, aside = -np.cross(omega, np.cross(omega, off)), -2 * np.cross(omega, moving)
    np.testing.assert_allclose(seen.centrifugal_m_s2[0], outward, atol=1e-12)
    np.testing.assert_allclose(seen.coriolis_m_s2[0], aside, atol=1e-12)
    changes = np.linalg.solve(inertia, np.cross(inertia @ omega, omega))
    whole = np.linalg.norm(outward + aside - np.cross(changes, off))
    assert apparent_m_s2(made.setting, seen)[0] == pytest.approx(whole)


@each_row("habitat", [{}, FLOOR])
def test_a_throw_is_highest_where_it_is_seen_highest_from_aboard(habitat):
    made = traced(tumble(), throw(5.0, 30.0, 60.0, BODY), habitat=habitat, craft=SKEW)
    track, spin = made.motions[1].track, made.setting.habitat.spin

    def lowness(time_s):
        place = track.path.both(spin, np.array([time_s]))[0][0]
        return place[0] if habitat else np.hypot(*place[:2])

    (apex_s,) = [event.time_s for event in track.events if event.kind == "apex"]
    lowest = minimize_scalar(lowness, (0.0, apex_s, track.ends_s), options={"xtol": 1e-9}).x
    assert apex_s == pytest.approx(lowest, abs=1e-5)


def test_what_is_thrown_along_the_axis_of_a_drum_that_goes_over():
    """A drum that turns steadily end over end at w, a throw along its axis from its middle once it lies across: v t sin w t is its radius."""
    lying = {"place": {"height_m": RADIUS_M}, "start_s": 15.0}
    made = traced(tumble(1.0, 0.0), throw(30.0, 90.0, 0.0, BODY, **lying), habitat={"spin_rpm": 0.0}, air=None)
    landing = made.motions[1].track.landing
    flight_s = brentq(lambda t: 30.0 * t * np.sin(RPM_RAD_S * t) - (RADIUS_M - 0.1), 0.0, 10.0)
    assert landing.time_s - 15.0 == pytest.approx(flight_s, abs=1e-9)
    assert landing.axial_m == pytest.approx(30.0 * flight_s * np.cos(RPM_RAD_S * flight_s))


def test_what_it_is_let_go_with():
    """Rates about the axes that they are named for, and its losses; a thing in it is followed for a minute or three turns."""
    setting = moving_setting(read(json.dumps(scene(tumble(losses_s=50.0), drop()))))[0]
    let_go = setting.habitat.spin.motion
    assert let_go.rates_rad_s == pytest.approx(np.array([0.4, -0.3, 3.0]) * RPM_RAD_S)
    assert let_go.losses_s == 50.0
    assert setting.limit_s(0.0) == 60.0
    slow = moving_setting(read(json.dumps(scene(tumble(0.1, 0.0), drop(), habitat={"spin_rpm": 0.5}))))[0]
    turns_1_s = np.hypot(0.1, 0.5) / 60.0  # at first, and about the most
    assert 3 / 1.2 <= slow.limit_s(0.0) * turns_1_s <= 3.0


def test_a_tumble_without_wobble_is_a_steady_spin():
    """Its centre of mass on the axis, nothing across: the same landing as in the wheel that turns steadily."""
    for air in (None, {}):
        body = BALL | {"drag": 0.5}
        still = traced(throw(6.0, 30.0, 35.0, body), air=air).motions[0].track
        moving = traced(tumble(0.0, 0.0), throw(6.0, 30.0, 35.0, body), air=air).motions[1].track
        bound = 1e-9 if air is None else 3e-3  # where it tumbles the air is of one density
        assert moving.landing.time_s == pytest.approx(still.landing.time_s, abs=bound)
        np.testing.assert_allclose(moving.landing.rotating_m, still.landing.rotating_m, atol=10 * bound)
        assert moving.landing.along_m == pytest.approx(still.landing.along_m, abs=10 * bound)


def test_momentum_of_the_craft_in_the_answer_stays():
    made = answer(scene(tumble(losses_s=20.0), craft=SKEW, sampling={"duration_s": 40.0}))
    found, setting = made["motions"][0]["findings"], moving_setting(read(json.dumps(scene(tumble(), craft=SKEW))))[0]
    quaternions = np.array(made["tumbling"]["quaternion_wxyz"])
    assert len(quaternions) == made["grid"]["count"] == len(found["quaternion_wxyz"])
    np.testing.assert_allclose(quaternions, found["quaternion_wxyz"])
    assert made["tumbling"]["centre_m"] == pytest.approx(setting.habitat.spin.centre_m.tolist())
    assert made["motions"][0]["attitude_wxyz"] is None
    nutation = np.array(found["nutation_deg"])
    assert nutation[-1] < 0.2 * nutation[0]


def test_gravity_at_the_floor_of_a_craft_off_its_axis():
    """At the start, of Euler's equations with numpy's inverse: the floor's middle about the craft's centre of mass."""
    whole = answer(scene(tumble(), craft=SKEW))
    made = whole["motions"][0]["findings"]
    let_go = moving_setting(read(json.dumps(scene(tumble(), craft=SKEW))))[0].habitat.spin.motion
    inertia = let_go.body.axes @ np.diag(let_go.body.moments) @ let_go.body.axes.T
    omega = np.array([0.4, -0.3, 3.0]) * RPM_RAD_S
    change = np.linalg.inv(inertia) @ np.cross(inertia @ omega, omega)
    offset = np.array([RADIUS_M, 0.0, 0.0]) - let_go.centre_m
    felt = -(np.cross(change, offset) + np.cross(omega, np.cross(omega, offset))) / G0_M_S2
    np.testing.assert_allclose(np.linalg.norm(made["felt_g"][0]), np.linalg.norm(felt), rtol=1e-9)
    assert whole["habitat"]["felt_g"] == pytest.approx(np.linalg.norm(felt))
    leans_deg = np.degrees(np.arccos(felt[0] / np.linalg.norm(felt)))
    assert whole["habitat"]["felt_lean_deg"] == pytest.approx(leans_deg)
    momentum = np.linalg.norm(inertia @ omega)
    assert made["final_rpm"] == pytest.approx(momentum / np.linalg.eigvalsh(inertia)[2] / RPM_RAD_S)
    assert np.linalg.norm(let_go.centre_m) > 1.0


def test_a_flip_is_shown_whole_and_told_by_its_half_period():
    """Left to itself the scene lasts until the craft has gone over and come back."""
    made = trace(read(json.dumps(scene(tumble(0.01, 0.0), craft={"rimfall_craft": 1, "parts": [BRICK]})))).motions[0]
    assert made.track.ends_s >= made.findings["flip_period_s"] * (1 - 1e-9)
    told = made.kind.in_short(made, "si")
    assert told == f"turns over every {made.findings['flip_period_s'] / 2:.2f}\u00a0s"


def test_a_flip_longer_than_ten_minutes_is_not_shown_whole_and_the_fastest_of_one_is_found():
    """Where nothing of the momentum L is left about the middle axis, of moments a, b and energy E: L_a² + L_b² = L², L_a²/a + L_b²/b = 2 E."""
    craft = {"rimfall_craft": 1, "parts": [BRICK]}
    slow = traced(tumble(1e-3, 0.0), habitat={"spin_rpm": 0.3}, craft=craft)
    assert slow.motions[0].findings["flip_period_s"] > 1000
    assert slow.motions[0].track.ends_s == 600.0
    x, y, _ = moments = np.array([30**2 + 20**2, 10**2 + 20**2, 10**2 + 30**2])
    start = np.array([1e-3, 0.0, 0.3])
    squares = np.linalg.solve([[1, 1], [1 / x, 1 / y]], [np.sum((moments * start) ** 2), moments @ start**2])
    fastest = np.sqrt(squares @ [1 / x**2, 1 / y**2]) * RPM_RAD_S
    assert fastest > 1.1 * 0.3 * RPM_RAD_S
    assert fastest < slow.setting.habitat.spin.fastest_rad_s < 1.2 * fastest


def test_gravity_at_the_floor_of_a_steady_spin():
    found = answer(scene(tumble(0.0, 0.0)))["motions"][0]["findings"]
    assert found["floor_greatest_g"] == pytest.approx(RADIUS_M * (3 * RPM_RAD_S) ** 2 / G0_M_S2)
    assert found["floor_least_g"] == pytest.approx(found["floor_greatest_g"])


@each_row(
    ("motions", "more", "words"),
    [
        ([tumble(0.0, 0.0)], {}, "turns steadily about its axis of greatest inertia"),
        ([tumble()], {"craft": SKEW}, "of greatest inertia"),
        (
            [tumble(0.01, 0.0)],
            {
                "habitat": {"spin_rpm": 3.0},
                "craft": {
                    "rimfall_craft": 1,
                    "parts": [BRICK],
                },
            },
            "turns right over and back, once every 89",
        ),
        ([tumble(0.3, losses_s=5.0)], {}, "is in a flat spin after"),
        ([tumble(0.3, losses_s=500.0)], {}, "past the end of the scene"),
    ],
)
def test_words(motions, more, words):
    made = answer(scene(*motions, **more))["motions"][0]
    assert words in " ".join(made["words"])
    assert ("mass is spread evenly" in " ".join(made["assumptions"])) == ("craft" not in more)


@each_row(
    ("motion", "more", "says"),
    [
        (
            tumble(),
            {"craft": SKEW},
            "momentum stays between {low:.1f}° and {high:.1f}° from its axis of greatest inertia.",
        ),
        (tumble(1.5, 0.0), {}, "momentum stays {high:.0f}° from its axis of greatest inertia."),
        (tumble(), {}, "momentum stays {high:.1f}° from its axis of greatest inertia."),
        (
            tumble(0.3, losses_s=500.0),
            {},
            "is {high:.1f}° from its axis of greatest inertia at first, and {low:.1f}° in the end.",
        ),
        (tumble(), {"craft": SKEW}, "On the floor gravity goes from {floor_least_g:.3g} to {floor_greatest_g:.3g} g."),
        (tumble(0.0, 0.0), {}, "On the floor gravity is {floor_greatest_g:.3g} g."),
        (tumble(0.0, 0.0), {"habitat": {"spin_rpm": 0.0}}, "On the floor nothing weighs anything."),
        (tumble(0.3, losses_s=5.0), {}, "It is in a flat spin after {time_to_flat_s:.2f} s, at {final_rpm:.3g} rpm."),
        (
            tumble(0.3, losses_s=500.0),
            {},
            "It would be in a flat spin after {time_to_flat_s:.0f} s, past the end of the scene, at {final_rpm:.3g} rpm.",
        ),
        (
            tumble(0.01, 0.0, losses_s=300.0),
            {"craft": {"rimfall_craft": 1, "parts": [BRICK]}},
            "right over and back, once every {half:.2f} s at first.",
        ),
    ],
)
def test_figures_in_words(motion, more, says):
    """Those of the answer's own findings, by its least and greatest."""
    made = answer(scene(motion, **more))["motions"][0]
    found, nutation = made["findings"], made["findings"]["nutation_deg"]
    half = (found["flip_period_s"] or 0.0) / 2
    said = says.format(**found | {"low": min(nutation), "high": max(nutation), "half": half})
    assert said in " ".join(made["words"]).replace("\u00a0", " ")


def test_one_that_is_not_flat_in_time_only_tumbles():
    late, soon = (answer(scene(tumble(0.3, losses_s=losses_s)))["motions"][0] for losses_s in (500.0, 5.0))
    assert late["in_short"] == "tumbles for 60.00\u00a0s"
    assert late["prose"]["past"] == "The craft tumbled for about sixty seconds."
    assert soon["in_short"].startswith("is in a flat spin after")
    assert "into a flat spin within" in soon["prose"]["past"]


def test_a_flip_as_prose_and_what_is_assumed_of_losses():
    """About the half of the period in words; that energy goes is assumed only where it does."""
    craft = {"rimfall_craft": 1, "parts": [BRICK]}
    for losses_s in (None, 300.0):
        made = answer(scene(tumble(0.01, 0.0, losses_s=losses_s), craft=craft))["motions"][0]
        assert made["findings"]["flip_period_s"] == pytest.approx(178.2, abs=0.1)
        assert made["prose"]["past"] == "The craft turned right over and back, once in about eighty-nine seconds."
        assert ("Energy goes" in " ".join(made["assumptions"])) == (losses_s is not None)


def test_what_is_dropped_has_no_companion_and_no_causes():
    made = answer(scene(tumble(), drop()))["motions"][1]
    assert made["companion"]["none_because"] == made["landing"]["drift_parts_none"] == "tumbles"


@each_row("air", [None, {}, {"pressure_kpa": 70.0}])
def test_what_is_left_out_of_a_fall_in_it_is_told(air):
    """That it ends at its first contact, and, in air, that this is of one density: of no other where its floor is nearer to the axis."""
    two = FLOOR | {"floors": [*FLOOR["floors"], FLOOR["floors"][0] | {"name": "stern", "radius_m": 20.0}]}
    inner = {"height_m": 1.2, "floor": 1}
    for habitat, things in (({}, [drop(), throw()]), (two, [drop(place=inner), throw(place=inner)])):
        for thing in things:
            said = " ".join(
                answer(scene(tumble(), thing, habitat=habitat, air=air, craft=SKEW))["motions"][1]["assumptions"]
            )
            assert "followed to what it first meets" in said
            assert ("one pressure and one density all through" in said) == (air is not None)
            assert "pressure is stated at" not in said
    still = answer(scene(drop(), air=air))["motions"][0]["assumptions"]
    assert not any("tumbles" in one for one in still)


def test_nothing_is_aimed_in_it():
    request = {
        "scene": scene(tumble(), throw()),
        "motion": "throw 2",
        "to": {"height_m": 1.0},
        "fixed": {"flight_s": 1.0},
    }
    with pytest.raises(BadInput) as refused:
        read_aim(json.dumps(request))
    (one,) = refused.value.refusals
    assert one.say == (
        "Where to aim and where throws land is not worked out in a craft that tumbles: take tumble 1 out of the scene to ask."
    )


@each_row(
    ("document", "field"),
    [
        (scene(tumble(), tumble()), "motions.1.kind"),
        (scene(tumble(), {"kind": "walk"}), "motions.1.kind"),
        (scene(tumble(), drop(bounces=1)), "motions.1.bounces"),
        (scene(tumble(), throw(ball_spin_rpm=5.0, ball_spin_axis=[0, 1, 0])), "motions.1.ball_spin_rpm"),
        (scene(tumble(), drop(body=BALL | {"buoyant": True})), "motions.1.body.buoyant"),
        (scene(tumble(start_s=1.0)), "motions.0.start_s"),
        (scene(tumble(place={"axial_m": 1.0})), "motions.0.place.axial_m"),
        (scene(tumble(), habitat={"axial_thrust_m_s2": 1.0}), "habitat.axial_thrust_m_s2"),
        (scene(tumble(), habitat={"spin_ramp": [{"time_s": 5, "spin_rpm": 1}]}), "habitat.spin_ramp"),
        (scene(tumble(), habitat={"shape": "turntable", "radius_m": 2.0}), "motions.0.kind"),
        (
            scene(
                tumble(),
                craft={
                    "rimfall_craft": 1,
                    "parts": [{"name": "line", "solid": "rod", "mass_kg": 1.0, "length_m": 9.0}],
                },
            ),
            "craft.parts",
        ),
    ],
)
def test_refusals(document, field):
    with pytest.raises(BadInput) as refused:
        read(json.dumps(document))
    assert refused.value.refusals[0].field == field
