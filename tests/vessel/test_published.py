"""Published values about craft against the program: each row of tests/published/craft/ is asked of the code here.

Not asked, because nothing of a craft's document is what they are about: the wall of a spherical window (STR-04: a hull here is a ring, the air
in it that of a long cylinder, whose stress p R/t is another formula), and the cord of a yo-yo that takes a spin off by flying away (MEC-08:
a spin here is taken off by a joint or by thrusters). RIG-24 is flagged by those who looked it up: no uniform rod ends at its figure.
"""

import importlib
import math
import pkgutil

import numpy as np
import pytest

from rimfall.physics.constants import G0_M_S2, RPM_RAD_S, TURN_RAD
from rimfall.scene.craft.answers import as_data
from rimfall.scene.craft.document import Craft
from rimfall.vessel import balance, hull, joint, slew, spin_up, tether, tumble
from rimfall.vessel.attitude import principal_of, torque_free
from rimfall.vessel.bodies import Body, about_spin_axis, greater_transverse, joined, steiner
from rimfall.vessel.materials import MATERIALS
from rimfall.vessel.solids import Solid, body_of
from tests.published import craft as published
from tests.vessel.tumbling import matrices

MODULES = [importlib.import_module(f"{published.__name__}.{m.name}") for m in pkgutil.iter_modules(published.__path__)]
ROWS = {key: row for module in MODULES for key, row in module.ROWS.items()}
asked = set()


def rows(*keys):
    """Ask a test once for each of these rows."""
    asked.update(keys)
    return pytest.mark.parametrize("row", [pytest.param(ROWS[key], id=key) for key in keys])


def at_gravity(radius_m, gravity_m_s2, density_kg_m3, thickness_m=1.0, load_kg_m2=0.0):
    return hull.Ring(radius_m, math.sqrt(gravity_m_s2 / radius_m), density_kg_m3, thickness_m, load_kg_m2)


@rows("STR-01")
def test_share_of_hoop_stress_that_does_not_depend_on_thickness(row):
    """The bulkheads' mass is spread over the wall, as the source has it."""
    density = row.inputs["rho_hull_kg_m3"] + row.inputs["bulkhead_equiv_kg_m3"]
    ring = at_gravity(row.inputs["radius_m"], row.inputs["g_m_s2"], density)
    assert row.allows(hull.hoop_stress(ring).own_pa)


@rows("STR-02")
def test_share_of_hoop_stress_of_the_load(row):
    structure = ROWS["STR-01"].inputs
    ring = at_gravity(structure["radius_m"], structure["g_m_s2"], 0.0, 0.5, row.inputs["areal_load_kg_m2"])
    assert row.allows(hull.hoop_stress(ring).load_pa * ring.thickness_m)


@rows("STR-03")
def test_hoop_stress_of_own_weight(row):
    ring = at_gravity(row.inputs["radius_m"], row.inputs["g_m_s2"], row.inputs["rho_kg_m3"])
    assert row.allows(hull.hoop_stress(ring).whole_pa)


@rows("MEC-17")
def test_rim_speed_of_a_flywheel_ring(row):
    """The source's mass per length over its section as a density: the stress at the printed speed is the printed one."""
    density = row.inputs["mass_per_length_kg_m"] / (row.inputs["thickness_m"] * row.inputs["width_m"])
    ring = hull.Ring(1.0, 1.0, density, row.inputs["thickness_m"])
    assert row.allows(math.sqrt(row.inputs["stress_Pa"] / hull.hoop_stress(ring).whole_pa))


NAMED = {
    "STR-05": "strong steel",
    "STR-06": "strong aluminium",
    "STR-07": "strong titanium",
    "STR-08": "carbon fibre",
    "STR-09": "aramid",
    "STR-11": "aluminium 6061-T6",
    "STR-12": "aluminium 7075-T6",
    "STR-13": "titanium Ti-6Al-4V",
    "STR-14": "steel 4340",
}


@rows(*NAMED)
def test_specific_strength_of_each_material(row):
    (key,) = [key for key in NAMED if ROWS[key] is row]
    material = MATERIALS[NAMED[key]]
    assert row.allows(material.specific_strength_m2_s2 / 1e3)
    assert (material.strength_pa / 1e6, material.density_kg_m3) == (row.inputs["strength_MPa"], row.inputs["rho_kg_m3"])


def test_no_material_is_listed_that_no_source_here_prints():
    assert sorted(MATERIALS) == sorted(NAMED.values())


@rows("STR-10")
def test_breaking_length_is_the_largest_bare_ring_at_one_gravity(row):
    bare = at_gravity(1.0, G0_M_S2, row.inputs["rho_kg_m3"])
    assert row.allows(hull.largest_radius_m(bare, row.inputs["strength_MPa"] * 1e6, G0_M_S2) / 1e3)


@rows("STR-15")
def test_tapered_tether_weighs_so_many_times_its_end(row):
    assert row.allows(tether.tapered_mass_ratio(row.inputs["velocity_ratio"]))


@rows("STR-17")
def test_taper_at_the_characteristic_speed(row):
    """Two equal ends, each at the speed sqrt(2 stress/density)."""
    stress_pa, density_kg_m3, length_m = 1e9, 1500.0, 200.0
    rate = row.inputs["velocity_ratio"] * math.sqrt(2 * stress_pa / density_kg_m3) / (length_m / 2)
    end, middle, _ = tether.tapered(tether.Tether(length_m, (100.0, 100.0), rate, stress_pa, density_kg_m3)).areas_m2
    assert row.allows(middle / end)


@rows("MEC-07")
def test_work_to_reel_two_masses_together(row):
    given = row.inputs
    before = given["separation_before_m"]
    rate = given["speed_before_m_s"] / (before / 2)
    rope = tether.Tether(before, (given["mass_each_kg"],) * 2, rate)
    assert row.allows(tether.reel(rope, given["separation_after_m"]).work_j)


HERE = (0.0, 0.0, 0.0)


def spun(*solids):
    """Inertia about the spin axis of Solids together."""
    return about_spin_axis(joined([body_of(one) for one in solids]))


def wall(inputs, areal_kg_m2):
    """A thin cylinder of so much mass per square metre."""
    radius, length = inputs["radius_m"], inputs["length_m"]
    return Solid("cylinder_shell", 2 * math.pi * radius * length * areal_kg_m2, HERE, radius_m=radius, length_m=length)


def areal(inputs):
    return inputs["areal_kg_m2"] if "areal_kg_m2" in inputs else inputs["thickness_m"] * inputs["rho_kg_m3"]


@rows("RIG-01", "RIG-02", "RIG-07")
def test_thin_cylinders_about_their_axis(row):
    assert row.allows(spun(wall(row.inputs, areal(row.inputs))))


@rows("RIG-10")
def test_a_thin_cylinder_across_its_axis(row):
    assert row.allows(greater_transverse(body_of(wall(row.inputs, areal(row.inputs)))))


def tori(inputs):
    sizes = {"radius_m": inputs["major_radius_m"], "tube_radius_m": inputs["minor_radius_m"]}
    return [Solid("torus", inputs["mass_each_kg"], (0.0, 0.0, z), **sizes) for z in (-40.0, 40.0)]


@rows("RIG-03", "RIG-04")
def test_two_tori_about_their_axis(row):
    assert row.allows(spun(*tori(row.inputs)))


def air(inputs):
    """A full cylinder, and the two half balls at its ends, which about the axis are one ball."""
    radius, length, density = (inputs[name] for name in ("radius_m", "length_m", "rho_kg_m3"))
    ends = Solid("sphere", 4 / 3 * math.pi * radius**3 * density, HERE, radius_m=radius)
    return [Solid("cylinder", math.pi * radius**2 * length * density, HERE, radius_m=radius, length_m=length), ends]


@rows("RIG-05")
def test_the_air_of_a_hull_about_its_axis(row):
    assert row.allows(spun(*air(row.inputs)))


def caps(radius_m, areal_kg_m2):
    return Solid("sphere_shell", 4 * math.pi * radius_m**2 * areal_kg_m2, HERE, radius_m=radius_m)


@rows("RIG-06")
def test_a_whole_hull_about_its_axis(row):
    """Its steel reaches round the caps as well; soil, tori and air as printed."""
    steel, soil = ROWS["RIG-01"].inputs, ROWS["RIG-02"].inputs
    solids = [wall(one, areal(one)) for one in (steel, soil)] + [caps(steel["radius_m"], areal(steel))]
    for key in ("RIG-03", "RIG-04"):
        solids += tori(ROWS[key].inputs)
    assert row.allows(spun(*solids, *air(ROWS["RIG-05"].inputs)))


@rows("RIG-08", "RIG-09")
def test_a_shield_about_its_axis(row):
    of_caps, of_wall = ROWS["RIG-08"].inputs, ROWS["RIG-07"].inputs
    shield = [caps(of_caps["radius_m"], of_caps["areal_kg_m2"])]
    shield += [wall(of_wall, of_wall["areal_kg_m2"])] if row is ROWS["RIG-09"] else []
    assert row.allows(spun(*shield))


def half(ball, centre_at):
    """Half a ball about its own centre of mass, centre_at radii from the ball's middle, as Steiner's theorem has it."""
    away = np.array([0.0, 0.0, centre_at * ball.radius_m])
    mass = ball.mass_kg / 2
    return mass, body_of(ball).inertia_kg_m2 / 2 - mass * steiner(away)


@rows("RIG-11", "RIG-13")
def test_half_a_ball_about_an_axis_across_the_hull(row):
    """Its centre of mass is 1/2 or 3/8 of the radius from the flat side, which is 50 m from the middle of the hull."""
    radius = row.inputs["radius_m"]
    hollow = row is ROWS["RIG-11"]
    ball = caps(radius, row.inputs["areal_kg_m2"]) if hollow else air(row.inputs | {"length_m": 100.0})[1]
    mass, own = half(ball, 1 / 2 if hollow else 3 / 8)
    offset = 50.0 + radius * (1 / 2 if hollow else 3 / 8)
    assert offset == row.inputs.get("offset_m", 87.5)
    pair = joined([Body(mass, np.array([0.0, 0.0, z]), own) for z in (offset, -offset)])
    assert row.allows(pair.inertia_kg_m2[0, 0] / 2)


def with_moments(spin, transverse):
    return Body(1.0, np.zeros(3), np.diag([transverse, transverse, spin]))


@rows("RIG-14")
def test_spin_to_transverse_of_a_hull(row):
    body = with_moments(row.inputs["I_spin_kg_m2"], row.inputs["I_transverse_kg_m2"])
    assert row.allows(about_spin_axis(body) / greater_transverse(body))


@rows("RIG-15")
def test_torque_that_leads_a_hull_round_the_sun(row):
    momentum = row.inputs["I_spin_kg_m2"] * row.inputs["rate_rpm"] * RPM_RAD_S
    rate = row.inputs["precession_rad_s"]
    torque = slew.gyroscopic_torque((rate, 0.0, 0.0), (0.0, 0.0, momentum))
    assert row.allows(np.linalg.norm(torque))
    assert slew.precession_rad_s(np.linalg.norm(torque), momentum) == pytest.approx(rate)


@rows("RIG-25")
def test_stiffness_of_a_spinning_body(row):
    """As of a spring that swings what is across the axis as fast as the axis goes round the momentum: I_t times the square of that rate."""
    across, momentum = row.inputs["I_transverse_kg_m2"], row.inputs["H_N_m_s"]
    body = principal_of(with_moments(ROWS["RIG-14"].inputs["I_spin_kg_m2"], across))
    rates = np.array([1e-4 * momentum / across, 0.0, momentum / ROWS["RIG-14"].inputs["I_spin_kg_m2"]])
    axis = matrices(torque_free(body, rates).at(np.array([0.0, 1.0])).quaternion_wxyz)[:, :, 2]
    tilted = np.array([1e-4, 0.0, 1.0]) / math.hypot(1e-4, 1.0)
    first, last = axis - np.outer(axis @ tilted, tilted)
    turned = math.acos(first @ last / np.linalg.norm(first) / np.linalg.norm(last))
    assert row.allows(across * turned**2)


@rows("STR-18")
def test_mass_ratio_of_the_rocket_equation(row):
    """As of thrusters that carry their propellant round with them, to the speed that is given."""
    exhaust, arm, dry = row.inputs["Isp_s"] * G0_M_S2, 20.0, 700.0
    run = spin_up.by_thrusters(dry * arm**2, row.inputs["delta_v_m_s"] / arm, 5.0, arm, exhaust, weighed=True)
    assert row.allows(1 + run.propellant_kg / dry)


@rows("MEC-11")
def test_energy_lost_from_a_wobble_to_a_pure_spin(row):
    """As the finding on tumbling has it, of a box with those moments."""
    across, spin, rate = (row.inputs[name] for name in ("I_transverse_kg_m2", "I_spin_kg_m2", "rate_rad_s"))
    wide, mass = (
        math.sqrt(6 * spin),
        1.0,
    )  # of a plate: m a^2/6 about its axis, half of that across it, and a little for its thickness
    plate = {"name": "plate", "solid": "box", "mass_kg": mass, "size_m": [wide, wide, 0.001]}
    assert spin == pytest.approx(2 * across)
    aside = spin * rate * math.tan(math.radians(row.inputs["nutation_deg"])) / across
    block = {
        "rates_rpm": [aside / RPM_RAD_S, 0.0, rate / RPM_RAD_S],
        "dissipation": {"time_s": 60.0},
        "duration_s": 1.0,
    }
    found = as_data(Craft(rimfall_craft=1, spin_rpm=1.0, parts=[plate], tumble=block))["tumble"]
    assert found["nutation_deg"][0] == pytest.approx(row.inputs["nutation_deg"], abs=1e-4)
    assert row.allows(found["energy_j"][0] - found["final_energy_j"])
    assert found["final_rpm"] * RPM_RAD_S == pytest.approx(2.071, abs=5e-4)  # printed beside it


@rows("RIG-16")
def test_spin_to_transverse_of_a_drum_with_flat_ends(row):
    """Wall and ends of one thickness, as the finding on mass tells it."""
    length = row.inputs["length_over_radius"]
    ends = [
        {"name": f"end {z}", "solid": "disc", "mass_kg": 1.0, "radius_m": 1.0, "place_m": [0, 0, z * length / 2]}
        for z in (-1, 1)
    ]
    drum = {"name": "wall", "solid": "cylinder_shell", "mass_kg": 2 * length, "radius_m": 1.0, "length_m": length}
    answer = as_data(Craft(rimfall_craft=1, spin_rpm=1.0, parts=[drum, *ends]))
    assert row.allows(answer["mass"]["spin_to_transverse"]["turning"])


@rows("MEC-01", "MEC-02")
def test_time_to_spin_up_a_wheel_with_rim_rockets(row):
    radius = row.inputs["radius_m"]
    inertia = spun(Solid("ring", row.inputs["mass_kg"], HERE, radius_m=radius))
    rate = math.sqrt(row.inputs["g_used_m_s2"] / radius)
    thrust = row.inputs["rockets"] * row.inputs["thrust_each_N"]
    assert row.allows(spin_up.by_thrusters(inertia, rate, thrust, radius, 3000.0, weighed=False).time_s)


@rows("MEC-03")
def test_rate_of_a_rod_after_its_end_thrusters_fire(row):
    length = row.inputs["length_m"]
    inertia = spun(Solid("rod", row.inputs["mass_kg"], HERE, (1.0, 0.0, 0.0), length_m=length))
    for_one = spin_up.by_motor(inertia, RPM_RAD_S, 2 * row.inputs["thrust_each_end_N"] * length / 2).time_s
    assert row.allows(row.inputs["time_s"] / for_one)


@rows("MEC-04")
def test_thrust_of_rim_rockets_on_a_disc(row):
    given = row.inputs
    places = [
        (given["radius_m"], 0.0, 0.0),
        (-given["radius_m"], 0.0, 0.0),
        (0.0, given["radius_m"], 0.0),
        (0.0, -given["radius_m"], 0.0),
    ]
    rockets = [Solid("point", given["rocket_mass_each_kg"], place) for place in places[: given["rockets"]]]
    inertia = spun(Solid("disc", given["disc_mass_kg"], HERE, radius_m=given["radius_m"]), *rockets)
    with_one_newton = spin_up.by_motor(
        inertia, given["rate_rpm"] * RPM_RAD_S, given["rockets"] * given["radius_m"]
    ).time_s
    assert row.allows(with_one_newton / given["time_s"])


@rows("MEC-06")
def test_spin_after_masses_are_drawn_in(row):
    """As a ring whose inertia is the printed one, drawn in to the radius at which it is the other."""
    before, after = row.inputs["I_before_kg_m2"], row.inputs["I_after_kg_m2"]
    ring = {"name": "arms", "solid": "ring", "mass_kg": before, "radius_m": 1.0}
    drawn_in = {"parts": [{"name": "arms", "radius_m": math.sqrt(after / before)}]}
    states = as_data(
        Craft(rimfall_craft=1, spin_rpm=60 * row.inputs["rate_before_rev_s"], parts=[ring], deploy=drawn_in)
    )["deploy"]
    assert row.allows(states["after"]["spin_rpm"] / 60)
    assert states["before"]["energy_j"] == pytest.approx(29.6, abs=0.05)  # printed beside it
    assert states["after"]["energy_j"] == pytest.approx(191, abs=0.5)


@rows("MEC-12")
def test_gyroscopic_couple_on_a_rotor(row):
    momentum = row.inputs["mass_kg"] * row.inputs["radius_of_gyration_m"] ** 2 * row.inputs["rate_rpm"] * RPM_RAD_S
    couple = slew.gyroscopic_torque((0.0, row.inputs["precession_rad_s"], 0.0), (0.0, 0.0, momentum))
    assert row.allows(couple[0] / 1e3)


@rows("MEC-13")
def test_inertia_that_holds_a_momentum_at_a_rate(row):
    """What the counter group needs at its rate, against a ring that holds the printed momentum."""
    ring = {"name": "ring", "solid": "ring", "mass_kg": row.inputs["H_N_m_s"] / RPM_RAD_S, "radius_m": 1.0}
    craft = Craft(
        rimfall_craft=1,
        spin_rpm=1.0,
        counter_rpm=-row.inputs["rate_rpm"],
        parts=[ring],
        spin_up={"by": "motor", "torque_n_m": 1.0},
    )
    assert row.allows(as_data(craft)["spin_up"]["cancel"]["inertia_kg_m2"])


@rows("MEC-14")
def test_torque_of_a_turn_from_rest_to_rest(row):
    angle = math.radians(row.inputs["angle_deg"])
    torque, time = slew.rest_to_rest(row.inputs["I_kg_m2"], angle, 2 * angle / row.inputs["time_s"])
    assert row.allows(torque)
    assert time == pytest.approx(row.inputs["time_s"])


@rows("MEC-15")
def test_a_mass_that_balances_four(row):
    """In their own plane; the two weights of two-plane balancing are halves of it in planes as far on either side."""
    given = row.inputs
    turned = zip(given["masses_kg"], given["radii_m"], map(math.radians, given["angles_deg"]), strict=True)
    four = joined([body_of(Solid("point", m, (r * math.cos(a), r * math.sin(a), 0.0))) for m, r, a in turned])
    weights = balance.two_plane_weights(four, given["balance_radius_m"], (-1.0, 1.0))
    assert row.allows(sum(one.mass_kg for one in weights))
    assert [math.degrees(one.azimuth_rad) % 360 for one in weights] == pytest.approx(
        [201.4, 201.4], abs=0.2
    )  # printed: 201.48


@rows("MEC-18")
def test_power_that_a_foot_step_bearing_takes(row):
    """Of uniform pressure: it acts as at two thirds of its radius."""
    torque = joint.friction_torque_n_m(
        row.inputs["friction"], row.inputs["load_N"], 2 / 3 * row.inputs["shaft_radius_m"]
    )
    assert row.allows(torque * row.inputs["rate_rpm"] * RPM_RAD_S)


@rows("MEC-20")
def test_speed_of_a_torus_past_its_shield(row):
    """As the surface speed of a joint as large."""
    parts = [
        {"name": "torus", "solid": "ring", "mass_kg": 1.0, "radius_m": row.inputs["radius_m"]},
        {"name": "shield", "group": "still", "solid": "ring", "mass_kg": 1.0, "radius_m": row.inputs["radius_m"]},
    ]
    block = {"radius_m": row.inputs["radius_m"], "load_n": 0.0, "friction_coefficient": 0.0}
    answer = as_data(Craft(rimfall_craft=1, spin_rpm=row.inputs["rate_rpm"], parts=parts, joint=block))
    assert row.allows(answer["joint"]["surface_speed_m_s"])


@rows("RIG-17")
def test_wobble_of_a_thin_disc(row):
    """How fast its axis goes round in the room, over its spin, at a hundredth of a radian."""
    body = principal_of(body_of(Solid("disc", 1.0, (0.0, 0.0, 0.0), radius_m=0.1)))
    axis = matrices(torque_free(body, [0.02, 0.0, 1.0]).at(np.array([0.0, 1.0])).quaternion_wxyz)[:, :, 2]
    momentum = np.array([0.01, 0.0, 1.0]) / math.hypot(
        0.01, 1.0
    )  # half the inertia across that there is about the axis
    first, last = axis - np.outer(axis @ momentum, momentum)
    turned = math.acos(first @ last / np.linalg.norm(first) / np.linalg.norm(last))
    assert row.allows(turned)


@rows("RIG-18")
def test_free_precession_of_a_rigid_earth(row):
    """In turns of the spin, which a sidereal day is."""
    across = row.inputs["A_over_C_minus_A"]
    body = principal_of(Body(1.0, np.zeros(3), np.diag([across, across, across + 1])))
    assert row.allows(torque_free(body, [1e-6, 0.0, TURN_RAD]).period_s)


@rows("RIG-20")
def test_period_of_the_rates_of_a_body_of_three_moments(row):
    given = row.inputs
    body = principal_of(Body(1.0, np.zeros(3), np.diag([given["I1"], given["I2"], given["I3"]])))
    assert row.allows(tumble.flip_period_s(body, [given["w1_rad_s"], given["w2_rad_s"], given["w3_rad_s"]]))


@rows("RIG-23")
def test_flat_spin_of_a_rod(row):
    size = {"radius_m": row.inputs["diameter_m"] / 2, "length_m": row.inputs["length_m"]}
    part = {"name": "rod", "solid": "cylinder", "mass_kg": 14.0, **size}
    block = {"rates_rpm": [0.0, 0.0, 600.0], "dissipation": {"time_s": 600.0}, "duration_s": 1.0}
    found = as_data(Craft(rimfall_craft=1, spin_rpm=100.0, parts=[part], tumble=block))["tumble"]
    assert row.allows(found["final_rpm"] / 600)


def test_every_row_is_asked():
    assert asked == set(ROWS)
