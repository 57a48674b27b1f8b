"""What a craft's findings say: facts of the trade (common practice, no source), figures by hand, and what cannot be told."""

import json
import math
import re

import pytest

from rimfall.errors import Refused
from rimfall.physics.constants import RPM_RAD_S
from rimfall.scene.craft import answers, examples
from rimfall.scene.reading import read_craft
from tests.scene.craft import random_crafts
from tests.tables import each_row

RING = {"name": "ring", "solid": "ring", "mass_kg": 90_000, "radius_m": 56}
KEEL = {"name": "keel", "group": "still", "solid": "cylinder", "mass_kg": 60_000, "radius_m": 3, "length_m": 40}
SPINNER = RING | {"name": "spinner", "group": "counter"}


def found(*parts, units="si", spin_rpm=3.0, **blocks):
    document = {"rimfall_craft": 1, "spin_rpm": spin_rpm, "parts": parts or (RING, KEEL)} | blocks
    return answers.as_data(read_craft(json.dumps(document)), units)


def said(finding):
    return " ".join(finding["says"]).replace("\u00a0", " ")


NB = "\u00a0"
MOTOR = {"by": "motor", "torque_n_m": 5_000}


def test_mass_moved_outward_slows_the_spin_and_inward_quickens_it():
    out = found(move={"mass_kg": 500, "from_radius_m": 0, "to_radius_m": 56, "speed_m_s": 1})["move"]
    assert out["after"]["spin_rpm"] == pytest.approx(3 * 90_000 / 90_500)
    assert "500 kg moved outward slows the spin from 3 to 2.9834 rpm" in said(out)
    assert "pushes antispinward" in said(out)
    back = found(move={"mass_kg": 500, "from_radius_m": 56, "to_radius_m": 0, "speed_m_s": 1})["move"]
    assert back["after"]["spin_rpm"] > 3
    assert "pushes spinward" in said(back)
    assert "hauled in" in said(back)
    assert out["sideways_n"] == pytest.approx(2 * 500 * 3 * RPM_RAD_S)


def test_the_still_part_turns_the_other_way_and_a_wheel_would_hold_it():
    by_motor = found(spin_up=MOTOR | {"wheel": {"mass_kg": 40_000, "radius_m": 30}})["spin_up"]
    assert by_motor["still_rate_rpm"] == pytest.approx(-3 * 90_000 * 56**2 / (60_000 * 9 / 2))
    assert by_motor["cancel"]["wheel"]["rate_rpm"] == pytest.approx(3 * 90_000 * 56**2 / (40_000 * 900))
    says = "The still keel would turn the other way at 3,140 rpm unless something holds it; a wheel of 40 t and 30 m at 23.5 rpm would."
    assert says in said(by_motor)
    assert by_motor["time_s"] == pytest.approx(90_000 * 56**2 * 3 * RPM_RAD_S / 5_000)


def test_thrusters_turn_nothing_else():
    burnt = found(spin_up={"by": "thrusters", "thrust_n": 400, "arm_m": 56, "exhaust_m_s": 2_800})["spin_up"]
    assert burnt["propellant_kg"] == pytest.approx(90_000 * 56 * 3 * RPM_RAD_S / 2_800)
    assert burnt["still_rate_rpm"] is None
    assert "nothing else begins to turn" in said(burnt)
    assert "less than 2 %" in " ".join(burnt["assumptions"])
    slow = found(spin_up={"by": "thrusters", "thrust_n": 400, "arm_m": 56, "exhaust_m_s": 10})["spin_up"]
    times = slow["propellant_kg"] / 90_000
    assert f"of propellant, {times:.3g} times the mass of what turns;" in said(slow)


def test_propellant_of_more_than_2_percent_weighs():
    heavy = found(spin_up={"by": "thrusters", "thrust_n": 400, "arm_m": 56, "exhaust_m_s": 400})["spin_up"]
    speed = 56 * 3 * RPM_RAD_S
    assert heavy["propellant_rough_kg"] > 0.02 * 90_000
    assert heavy["propellant_kg"] == pytest.approx(90_000 * math.expm1(speed / 400))
    assert "as if it did not" in " ".join(heavy["assumptions"])


def test_two_equal_wheels_against_each_other_leave_nothing_to_hold():
    pair = found(RING, SPINNER, KEEL, counter_rpm=-3, spin_up=MOTOR, slew={"rate_deg_s": 0.1, "angle_deg": 90})
    assert pair["mass"]["angular_momentum_kg_m2_s"]["whole"] == 0
    assert "the whole holds none" in said(pair["mass"])
    assert "The still keel stays still" in said(pair["spin_up"])
    assert pair["slew"]["whole"]["torque_n_m"] == 0
    assert pair["slew"]["wheel"]["torque_n_m"] == pytest.approx(90_000 * 56**2 * 3 * RPM_RAD_S * math.radians(0.1))
    assert "turns like anything else" in said(pair["slew"])


@each_row("seed", range(12))
def test_a_counter_group_without_a_rate_of_its_own_leaves_none(seed):
    document = random_crafts.craft(seed) | {"spin_rpm": 0.3, "counter_rpm": None}
    document["parts"] += [{"name": "other", "group": "counter", "solid": "disc", "mass_kg": 3e4, "radius_m": 30.0}]
    for part in document["parts"]:
        part["place_m"] = [0, 0, 5]
        part |= {name: min(part[name], 50.0) for name in ("radius_m", "length_m") if name in part}
        part |= {"tube_radius_m": part["radius_m"] / 3} if "tube_radius_m" in part else {}
    blocks = ("spin_up", "loads", "ballast", "deploy", "move", "joint", "slew")
    answer = answers.as_data(read_craft(json.dumps({k: v for k, v in document.items() if k not in blocks})))
    momenta = answer["mass"]["angular_momentum_kg_m2_s"]
    assert abs(momenta["whole"]) <= 1e-12 * momenta["turning"]


def test_a_disc_keeps_its_axis_and_a_rod_goes_over():
    disc = found({"name": "disc", "solid": "disc", "mass_kg": 100, "radius_m": 5})["mass"]
    assert "keeps turning about that axis" in said(disc)
    rod = found({"name": "rod", "solid": "cylinder", "mass_kg": 100, "radius_m": 0.5, "length_m": 20})["mass"]
    assert "turns end over end" in said(rod)
    slab = found({"name": "slab", "solid": "box", "mass_kg": 100, "size_m": [9, 2, 4]})["mass"]
    assert "again and again" in said(slab)


def test_a_seized_joint_keeps_the_momentum_and_drags_the_keel_along():
    joint = {"radius_m": 1.2, "load_n": 20_000, "friction_coefficient": 0.002, "passages": 6}
    stuck = found(joint=joint)["joint"]
    rate = 3 * 90_000 * 56**2 / (90_000 * 56**2 + 270_000)
    assert stuck["seized"]["rate_rpm"] == pytest.approx(rate)
    assert stuck["friction_torque_n_m"] == pytest.approx(48)
    assert stuck["turns_a_year"] == pytest.approx(3 * 60 * 24 * 365.25)
    assert "1.58 million turns a year, and each of the 6 passages" in said(stuck)
    assert "go on as one at 2.99713 rpm" in said(stuck)
    down = found(joint=joint, spin_up=MOTOR)["spin_down"]
    assert down["left"]["rate_rpm"] == pytest.approx(rate)
    assert "unless thrusters take it off" in said(down)


def test_a_load_at_the_rim_moves_the_axis_toward_it():
    """A tonne at 56 m of a hundred tonnes in all: 0.56 m, and gravity less on its side."""
    one = found(RING | {"mass_kg": 99_000}, loads=[{"name": "stores", "mass_kg": 1_000, "place_m": [0, 56, 0]}])[
        "balance"
    ]
    assert one["offset_m"] == pytest.approx(0.56)
    assert one["bearing_force_n"] == pytest.approx(100_000 * (3 * RPM_RAD_S) ** 2 * 0.56)
    assert one["gravity"]["least_m_s2"] == pytest.approx((3 * RPM_RAD_S) ** 2 * (56 - 0.56))
    assert one["gravity"]["least_azimuth_deg"] == pytest.approx(90)
    assert "0.56 m off the axis, toward stores (90°)" in said(one)
    assert "Nothing holds its axis" in said(one)
    held = found(
        RING | {"mass_kg": 99_000},
        KEEL | {"mass_kg": 100_000},
        loads=[{"name": "a", "mass_kg": 1_000, "place_m": [0, 56, 0]}],
    )
    assert held["balance"]["bearing_force_free_n"] == pytest.approx(held["balance"]["bearing_force_n"] / 2)


def test_ballast_in_one_plane_that_cannot_do_it_is_told():
    skew = {"loads": [{"name": "crate", "mass_kg": 1_000, "place_m": [56, 0, 4]}]}
    one = found(**skew, ballast={"planes_m": [1, 1]})["balance"]
    assert one["ballast"] is None
    assert "the two planes must be apart" in said(one)
    two = found(**skew, ballast={"planes_m": [-3, 1]})["balance"]["ballast"]
    heaviest = max(weight["mass_kg"] for weight in two["weights"])
    assert heaviest == pytest.approx(1_000 * 7 / 4)  # a lever about the other plane


def test_which_way_it_pushes_back():
    slew = found(slew={"torque_n_m": 1_000, "angle_deg": 90})["slew"]
    assert slew["torque_axis"] == [0, -1, 0]
    assert slew["wheel"]["rate_deg_s"] == pytest.approx(math.degrees(1_000 / (90_000 * 56**2 * 3 * RPM_RAD_S)))
    assert "to swing its bow to the right it must be pressed upward at the bow" in said(slew)
    assert slew["precession"]["once_round_s"] == pytest.approx(360 / slew["wheel"]["rate_deg_s"])
    timed, rated = (found(slew=one | {"angle_deg": 90})["slew"] for one in ({"time_s": 600}, {"rate_deg_s": 0.15}))
    assert timed == rated
    assert f"for 10{NB}min" in " ".join(timed["says"])


def test_what_is_farther_out_than_the_floor_is_told():
    ring = {name: value for name, value in RING.items() if name != "radius_m"}
    spoke = {"name": "spoke", "solid": "rod", "mass_kg": 900, "length_m": 50, "place_m": [29, 0, 0], "axis": [1, 0, 0]}
    cart = {"mass_kg": 300, "from_radius_m": 3, "to_radius_m": 41, "speed_m_s": 1}
    crew = {"name": "crew", "mass_kg": 960, "place_m": [24, 32, 0]}  # 40 m from the axis
    fits = found(ring, KEEL, radius_m=40, loads=[crew], move=cart | {"to_radius_m": 40})["mass"]
    assert "beyond the floor" not in said(fits)
    one = found(ring, spoke, KEEL, radius_m=40)["mass"]
    assert "Spoke reaches beyond the floor, which is 40 m from the axis: 54 m." in said(one)
    more = found(ring, spoke, KEEL, radius_m=39, loads=[crew], move=cart)["mass"]
    assert (
        "Spoke, crew and the mass that moves reach beyond the floor, which is 39 m from the axis: up to 54 m."
        in said(more)
    )


def test_arms_drawn_in_spin_faster_at_the_cost_of_work():
    after = found(deploy={"parts": [{"name": "ring", "radius_m": 28}]})["deploy"]
    assert after["after"]["spin_rpm"] == pytest.approx(12)
    assert after["after"]["energy_j"] == pytest.approx(4 * after["before"]["energy_j"])
    assert "from 3 rpm to 12 rpm" in said(after)
    onto_the_axis = [{"name": name, "place_m": [0, 0, 0]} for name in ("point", "other")]
    assert "no spin is fast enough" in said(found(POINT, OTHER, deploy={"parts": onto_the_axis})["deploy"])


def test_what_turns_as_one_turns_about_its_centre_of_mass_wherever_its_drawing_has_the_axis():
    """Nothing holds its axis: two masses 8 m apart are two masses 8 m apart. Where a joint does, it is the joint's."""
    momenta = []
    for shift in (0.0, 3.0, -40.0):
        pair = [
            POINT | {"mass_kg": mass, "name": f"{mass}", "place_m": [at + shift, 0, shift]}
            for mass, at in ((5, 0.0), (15, 8.0))
        ]
        momenta.append(found(*pair)["mass"]["angular_momentum_kg_m2_s"]["whole"])
    assert momenta == pytest.approx([5 * 15 / 20 * 8**2 * 3 * RPM_RAD_S] * 3, rel=1e-12)
    held = found(POINT, KEEL)["mass"]["angular_momentum_kg_m2_s"]["turning"]
    assert held == pytest.approx(5 * 2**2 * 3 * RPM_RAD_S)


POINT = {"name": "point", "solid": "point", "mass_kg": 5, "place_m": [2, 0, 0]}
OTHER = POINT | {"name": "other", "place_m": [-2, 0, 0]}
ALL = {
    "joint": {"radius_m": 1, "load_n": 1, "friction_coefficient": 0.1},
    "spin_up": MOTOR,
    "slew": {"rate_deg_s": 0.1, "angle_deg": 90},
    "loads": [],
    "ballast": {"planes_m": [-1, 1]},
    "move": {"mass_kg": 5, "from_radius_m": 0, "to_radius_m": 2, "speed_m_s": 1},
}
ON_AXIS, THIN_KEEL = POINT | {"place_m": [0, 0, 0]}, {"name": "keel", "group": "still", "solid": "point", "mass_kg": 60}
BEARING = {"radius_m": 1, "load_n": 1, "friction_coefficient": 0.1}
TURN = {"rate_deg_s": 0.1, "angle_deg": 90}
COUNTERED = [  # counter_rpm, spin_rpm, finding, what it says
    (
        -6,
        3,
        "spin_up",
        "With the spinner spun up as well, the still keel would turn the same way as the ring at 3,140 rpm",
    ),
    (3, 3, "spin_up", "With the spinner spun up as well, the still keel would turn the other way at 6,270 rpm"),
    (-1, 3, "spin_up", "With the spinner spun up as well, the still keel would turn the other way at 2,090 rpm"),
    (3, 3, "mass", "90 t of it turns the same way at its own rate"),
    (3, 3, "mass", "at 3 rpm the same way, adds 100 % to it"),
    (-6, 3, "mass", "90 t of it turns the other way"),
    (-6, 3, "mass", "holds more than that against it, and 88.7 million kg m²/s is left"),
    (-3, 0, "mass", "The ring does not turn; the spinner, at 3 rpm, holds 88.7 million kg m²/s of angular momentum"),
    (-6, 3, "slew", "takes 155 kN m for 15 min, pressed the other way: the spinner holds the more momentum"),
    (
        -1,
        3,
        "slew",
        "To turn the axis of the whole, with the spinner, by 90° at 0.1° per second takes 103 kN m for 15 min. If",
    ),
    (
        -3,
        0,
        "slew",
        "To turn the axis of the whole, with the spinner, by 90° at 0.1° per second takes 155 kN m for 15 min.",
    ),
]


@each_row(("counter_rpm", "spin_rpm", "name", "says"), COUNTERED)
def test_a_counter_part_that_does_not_balance(counter_rpm, spin_rpm, name, says):
    """The still keel takes what both hold: (I_t ω_t + I_c ω_c)/I_s, by hand; the one that holds more has the torque on the whole its way."""
    answer = found(RING, KEEL, SPINNER, spin_rpm=spin_rpm, counter_rpm=counter_rpm, spin_up=MOTOR, slew=TURN)
    assert says in said(answer[name])
    ring = 90_000 * 56**2 * RPM_RAD_S
    momenta = answer["mass"]["angular_momentum_kg_m2_s"]
    assert (momenta["turning"], momenta["counter"], momenta["whole"]) == pytest.approx(
        (ring * spin_rpm, ring * counter_rpm, ring * (spin_rpm + counter_rpm))
    )
    assert answer["slew"]["whole"]["torque_n_m"] == pytest.approx(abs(momenta["whole"]) * math.radians(0.1))
    cancel = answer["spin_up"]["cancel"]
    assert cancel["left_kg_m2_s"] == momenta["whole"]
    assert cancel["rate_rpm"] == pytest.approx(-spin_rpm)
    against = counter_rpm * spin_rpm < 0
    assert cancel["inertia_kg_m2"] == (pytest.approx(90_000 * 56**2 * spin_rpm / -counter_rpm) if against else None)


def test_a_joint_between_two_that_turn():
    """Of 3 rpm and 1 the other way, 4; friction takes their difference, and both come to the mean."""
    joint = found(RING, SPINNER, counter_rpm=-1, joint=BEARING)["joint"]
    assert joint["relative_rpm"] == pytest.approx(4)
    assert joint["surface_speed_m_s"] == pytest.approx(4 * RPM_RAD_S)
    assert joint["heat_w"] == pytest.approx(0.1 * 4 * RPM_RAD_S)
    assert joint["seized"]["rate_rpm"] == pytest.approx(1)
    assert joint["seized"]["heat_j"] == pytest.approx(90_000 * 56**2 * (2 * RPM_RAD_S) ** 2)


def test_wheels_that_nobody_has_named():
    """As wide as the still part and a twentieth of the turning mass; as heavy as the counter rate asks for; a tenth of the rim without a keel."""
    momentum = 90_000 * 56**2 * 3 * RPM_RAD_S
    for parts, more, mass, radius in (
        ((RING, KEEL), {}, 4_500, 3),
        ((RING, KEEL), {"counter_rpm": -90}, momentum / (90 * RPM_RAD_S) / 9, 3),
        ((RING,), {}, 4_500, 5.6),
    ):
        wheel = found(*parts, spin_up=MOTOR, **more)["spin_up"]["cancel"]["wheel"]
        rate = momentum / (mass * radius**2)
        assert wheel == pytest.approx(
            {"mass_kg": mass, "radius_m": radius, "rate_rpm": rate / RPM_RAD_S, "rim_speed_m_s": rate * radius}
        )


def test_what_a_motor_and_a_turn_take_by_hand():
    answer = found(spin_up=MOTOR, slew={"torque_n_m": 1_000, "angle_deg": 90})
    assert answer["spin_up"]["power_w"] == pytest.approx(5_000 * 3 * RPM_RAD_S)
    across = 90_000 * 56**2 / 2 + 60_000 * (9 / 4 + 1600 / 12)
    rate = 1_000 / (90_000 * 56**2 * 3 * RPM_RAD_S)
    turn = answer["slew"]["rest_to_rest"]
    assert turn["torque_n_m"] == pytest.approx(across * rate**2 / (math.pi / 2))
    assert turn["time_s"] == pytest.approx(math.pi / rate)
    still = found(spin_rpm=0.0, slew={"torque_n_m": 1_000, "angle_deg": 90})["slew"]["rest_to_rest"]
    assert still["torque_n_m"] == pytest.approx(1_000)
    assert still["time_s"] == pytest.approx(math.sqrt(4 * across * (math.pi / 2) / 1_000))  # T = 4 I theta/t^2
    fast = found(slew={"rate_deg_s": 60, "angle_deg": 90})["slew"]
    assert any("nods as well" in one for one in fast["assumptions"])
    assert not any("nods" in one for one in answer["slew"]["assumptions"])


def test_stopping_by_thrusters_takes_more_turns_than_starting():
    """What they carry weighs most while it still turns fast; starting, while it hardly turns."""
    burnt = found(spin_up={"by": "thrusters", "thrust_n": 400, "arm_m": 56, "exhaust_m_s": 40})
    up, down = burnt["spin_up"], burnt["spin_down"]
    assert (up["time_s"], up["propellant_kg"]) == (down["time_s"], down["propellant_kg"])
    assert up["turns"] + down["turns"] == pytest.approx(3 / 60 * up["time_s"])
    assert down["turns"] > 1.1 * up["turns"]
    motor = found(spin_up=MOTOR)
    assert motor["spin_up"]["turns"] == motor["spin_down"]["turns"]


@each_row("share", [0.019, 0.021])
def test_propellant_weighs_from_2_percent(share):
    exhaust = 3 * RPM_RAD_S * 56 / share
    burnt = found(spin_up={"by": "thrusters", "thrust_n": 400, "arm_m": 56, "exhaust_m_s": exhaust})["spin_up"]
    assert burnt["propellant_rough_kg"] == pytest.approx(90_000 * share)
    expected = share if share < 0.02 else math.expm1(share)
    assert burnt["propellant_kg"] == pytest.approx(90_000 * expected, rel=1e-12)


@each_row(("start", "end"), [(10.0, 40.0), (40.0, 10.0)])
def test_what_a_moving_mass_takes_by_hand(start, end):
    way = {"mass_kg": 500, "from_radius_m": start, "to_radius_m": end, "speed_m_s": 2}
    kept = found(move=way | {"holds": "spin"})["move"]
    omega = 3 * RPM_RAD_S
    assert kept["torque_n_m"] == pytest.approx(2 * 500 * 40 * omega * 2)
    assert kept["power_w"] == pytest.approx(2 * 500 * 40 * omega**2 * 2)
    assert kept["before"]["gravity_m_s2"] == pytest.approx(omega**2 * 56)
    free = found(move=way)["move"]
    fastest = omega * (1 if end > start else (90_000 * 56**2 + 500 * 1600) / (90_000 * 56**2 + 500 * 100))
    assert free["sideways_n"] == pytest.approx(2 * 500 * fastest * 2)


def test_a_deployed_ring_has_the_gravity_and_energy_of_its_spin():
    states = found(deploy={"parts": [{"name": "ring", "radius_m": 28}]})["deploy"]
    for state, rpm, radius in ((states["before"], 3, 56), (states["after"], 12, 28)):
        assert state["gravity_m_s2"] == pytest.approx((rpm * RPM_RAD_S) ** 2 * radius)
        assert state["energy_j"] == pytest.approx(90_000 * radius**2 * (rpm * RPM_RAD_S) ** 2 / 2)


def test_gravity_round_a_rim_is_least_on_the_heavy_side_and_greatest_opposite():
    """The loads count in what the axis moves by: 1 of 160 tonnes at 56 m."""
    for place, least, greatest in (([0, 56, 0], 90, -90), ([0, -56, 0], -90, 90), ([56, 0, 0], 0, 180)):
        load = {"name": "stores", "mass_kg": 10_000, "place_m": place}
        one = found(loads=[load])["balance"]
        gravity = one["gravity"]
        assert one["axis_moves_m"] == pytest.approx(10_000 * 56 / 160_000)
        assert (gravity["least_azimuth_deg"], gravity["greatest_azimuth_deg"]) == pytest.approx((least, greatest))
        by_azimuth = dict(zip(gravity["azimuth_deg"], gravity["round_m_s2"], strict=True))
        assert by_azimuth[least % 360] == pytest.approx(gravity["least_m_s2"])
        assert by_azimuth[greatest % 360] == pytest.approx(gravity["greatest_m_s2"])
        assert gravity["greatest_m_s2"] == pytest.approx((3 * RPM_RAD_S) ** 2 * (56 + 3.5))


@each_row("spin_rpm", [5e-324, 1e-320, 1e-160])
def test_a_spin_that_has_no_inverse_is_none(spin_rpm):
    every = ALL | {
        "tumble": {"rates_rpm": [0, spin_rpm, spin_rpm], "dissipation": {"time_s": 9}},
        "dock": {"at": "rim", "mass_kg": 8_000, "exhaust_m_s": 3_000},
        "tether": {"length_m": 9, "masses_kg": [1, 2], "material": "aramid", "to_length_m": 3},
        "hull": {"material": "aramid", "thickness_m": 0.1},
    }
    tiny, none = (found(RING, KEEL, SPINNER, spin_rpm=rpm, counter_rpm=-rpm, **every) for rpm in (spin_rpm, 0.0))
    assert said(tiny["dock"]) == "Nothing turns: it docks as with any craft."
    for name in set(tiny) & set(answers.FINDINGS):
        assert said(tiny[name]) == said(none[name])


ODD = [
    ([POINT], "nothing for a joint to run against"),
    ([POINT, OTHER], "nothing aboard for a motor to push against"),
    ([POINT], "is a point: it has no inertia of its own"),
    ([POINT], "has no inertia about its axis, and holds no angular momentum"),
    ([ON_AXIS], "has no inertia about the axis"),
    ([POINT, THIN_KEEL], "the still keel has no inertia about the axis"),
    (
        [RING, KEEL, KEEL | {"name": "tank", "mass_kg": 1}],
        "fill the same space, and are counted in full all the same: keel with tank",
    ),
    ([RING | {"mass_kg": 1e12}, KEEL | {"mass_kg": 1}], "the two go on as one at 3 rpm"),
    ([ON_AXIS, KEEL], "the point has no inertia about the axis: friction stops it at once"),
]


@each_row(("parts", "says"), ODD)
def test_what_cannot_be_told_is_a_sentence(parts, says):
    answer = found(*parts, **ALL)
    assert says in " ".join(said(answer[name]) for name in answers.FINDINGS if name in answer).lower()


def test_two_hundred_parts_and_no_more():
    many = [POINT | {"name": f"point {n}"} for n in range(200)]
    assert found(*many)["mass"]["turning"]["mass_kg"] == pytest.approx(1000)
    with pytest.raises(Refused):
        found(*many, RING)


def numbers(data):
    if isinstance(data, dict):
        for value in data.values():
            yield from numbers(value)
    elif isinstance(data, list):
        for value in data:
            yield from numbers(value)
    elif isinstance(data, float):
        yield data


@each_row(("seed", "of"), [(seed, of) for seed in range(60) for of in (random_crafts.craft, random_crafts.whole)])
def test_any_craft_has_finite_figures_and_whole_sentences(seed, of):
    document = of(seed)
    try:
        craft = read_craft(json.dumps(document))
    except Refused:
        return
    answer = answers.as_data(craft, ("si", "us")[seed % 2])
    assert all(math.isfinite(number) for number in numbers(answer))
    for name in answers.FINDINGS:
        for sentence in answer.get(name, {}).get("says", ()):
            assert sentence[0].isupper() or not sentence[0].isalpha()
            assert sentence.endswith(".")
            assert not re.search(r"\b(?:nan|inf|None|null)\b|  |\.\.|(?<![\d^])-\d", sentence), sentence


@each_row("seed", range(8))
def test_parts_in_another_order_are_the_same_craft(seed):
    document = random_crafts.craft(seed) | {"spin_rpm": 0.01, "counter_rpm": None}
    for name in ("spin_up", "move", "ballast", "loads", "deploy"):
        document.pop(name, None)
    try:
        one = answers.as_data(read_craft(json.dumps(document)))
    except Refused:
        return
    other = answers.as_data(read_craft(json.dumps(document | {"parts": document["parts"][::-1]})))
    for name in ("joint", "slew"):
        assert one.get(name) == other.get(name)
    assert one["mass"]["whole"] == other["mass"]["whole"]


def test_the_five_craft_to_start_from_are_whole_and_their_words_are_plain():
    for name in examples.SAY:
        answer = answers.as_data(read_craft(examples.example(name)))
        assert answer["craft"]["title"]
        assert answer["mass"]["overlaps"] == []
        assert all(said(answer[finding]) for finding in answers.FINDINGS if finding in answer)
        assert "local codes by licensed people" in answer["caution"]


def test_in_us_units_the_words_change_and_no_figure():
    si, us = (found(units=units, **ALL) for units in ("si", "us"))
    for name in answers.FINDINGS:
        one, other = (
            {k: v for k, v in answer.get(name, {}).items() if k not in ("says", "assumptions")} for answer in (si, us)
        )
        assert one == other
    assert "198,000 lb of it turns" in said(us["mass"])
    assert "3,690 lbf ft" in said(us["spin_up"])
