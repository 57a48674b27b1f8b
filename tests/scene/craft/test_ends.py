"""What a craft's document says of tethers, visitors, its ring and a rock: figures by hand, sentences, and the scenes they lead to."""

import json
import math
import re

import numpy as np
import pytest

from rimfall.physics.constants import G0_M_S2, RPM_RAD_S
from rimfall.scene.craft.answers import as_data
from rimfall.scene.craft.document import Craft
from rimfall.scene.reading import read_craft
from tests.scene.documents import answer
from tests.tables import each_row

RING = {"name": "ring", "solid": "ring", "mass_kg": 90_000.0, "radius_m": 56.0}


def asked(spin_rpm=4.0, units="si", **blocks):
    return as_data(Craft(rimfall_craft=1, spin_rpm=spin_rpm, radius_m=56.0, parts=[RING], **blocks), units)


def said(finding):
    return " ".join(finding["says"]).replace("\u00a0", " ")


ROPE = {"length_m": 200.0, "masses_kg": [40_000.0, 15_000.0]}


def test_a_light_tether_by_hand():
    """Radii in the inverse of the masses; m w² r; half the length, four times the spin, eight times the pull."""
    tether = asked(tether=ROPE | {"to_length_m": 100.0})["tether"]
    assert tether["radii_m"] == pytest.approx([600 / 11, 1600 / 11])
    assert tether["tension_n"] == pytest.approx(40_000 * (4 * RPM_RAD_S) ** 2 * 600 / 11)
    assert tether["tension_along_n"] == pytest.approx([tether["tension_n"]] * 41)
    assert tether["reeled"]["rate_rad_s"] == pytest.approx(16 * RPM_RAD_S)
    assert tether["uniform"] is None
    assert "54.5 m from the first and 145 m from the second" in said(tether)
    gravity = [(4 * RPM_RAD_S) ** 2 * radius for radius in tether["radii_m"]]
    assert tether["gravity_m_s2"] == pytest.approx(gravity)
    assert tether["reeled"]["gravity_m_s2"] == pytest.approx([8 * one for one in gravity])
    assert "the first feels 0.976 g and the second 2.6 g" in said(tether)
    cut = tether["cut"]
    assert cut["speeds_m_s"] == pytest.approx([4 * RPM_RAD_S * radius for radius in tether["radii_m"]])
    assert (cut["directions_deg"], cut["time_s"]) == ((-90.0, 90.0), 60.0)
    assert cut["apart_m"] == pytest.approx(math.hypot(200, 4 * RPM_RAD_S * 200 * 60))
    assert "opposite ways, at 22.8 m/s and 60.9 m/s. After a minute they are 5,030 m apart." in said(tether)
    assert "Reeled in to 100 m it turns at 16 rpm" in said(tether)
    assert "the winch puts in" in said(tether)


def test_what_a_tether_of_a_material_weighs():
    tether = asked(tether=ROPE | {"material": "aramid", "safety": 4.0})["tether"]
    section = tether["tension_n"] * 4 / 3620e6
    assert tether["uniform"]["mass_kg"] == pytest.approx(section * 200 * 1440)
    assert (
        "of aramid, with a safety factor of 4, weighs 122 kg, 0.222 % of what hangs on it. One that tapers would weigh almost the same."
        in said(tether)
    )
    assert not any("without mass" in one for one in tether["assumptions"])
    fast = asked(40.0, tether=ROPE | {"length_m": 800.0, "material": "aluminium 6061-T6"})["tether"]
    assert fast["uniform"] is None
    assert "No tether of one thickness of aluminium 6061-T6" in said(fast)
    assert any("told of a tether without mass" in one for one in fast["assumptions"])


def test_a_tether_that_tapers_by_hand():
    """Equal ends: exp of the square of their speed over the characteristic one, sqrt(2 stress/density) (Moravec 1977)."""
    tether = asked(20.0, tether={"length_m": 800.0, "masses_kg": [1e4, 1e4], "material": "aramid", "safety": 4.0})[
        "tether"
    ]
    ratio = 20 * RPM_RAD_S * 400 / math.sqrt(2 * 3620e6 / 4 / 1440)
    ends, middle, _ = tether["tapered"]["areas_m2"]
    assert middle / ends == pytest.approx(math.exp(ratio**2))
    mass = 2e4 * math.sqrt(math.pi) * ratio * math.exp(ratio**2) * math.erf(ratio)
    assert tether["tapered"]["mass_kg"] == pytest.approx(mass)
    times, weighs = f"{math.exp(ratio**2):.2f}", f"{mass / 1e3:.1f} t"
    assert (
        f"One that tapers, its section {times} times that of its thinner end where it balances, weighs {weighs}."
        in said(tether)
    )
    held = tether["uniform"]
    assert tether["tension_n"] == held["tension_n"]  # its own mass is in it
    pull = (20 * RPM_RAD_S) ** 2 * (1e4 * 400 + held["mass_kg"] / 800 * 400**2 / 2)
    assert tether["tension_n"] == pytest.approx(pull)


@each_row(("masses", "thinner"), [((1e3, 1e4), 0), ((1e4, 1e3), 2)])
def test_the_thinner_end_of_a_tapered_tether_is_told(masses, thinner):
    tether = asked(20.0, tether={"length_m": 800.0, "masses_kg": masses, "material": "aramid", "safety": 4.0})["tether"]
    areas = tether["tapered"]["areas_m2"]
    assert min(areas) == areas[thinner]
    assert f"its section {areas[1] / areas[thinner]:.3g} times that of its thinner end" in said(tether)


def test_a_tether_that_does_not_turn_is_slack():
    still = asked(0.0, tether=ROPE | {"material": "aramid", "to_length_m": 50.0})["tether"]
    assert still["tension_n"] == 0
    assert still["says"][-1] == "It does not turn: the tether hangs slack."


VISITOR = {"mass_kg": 8_000.0, "exhaust_m_s": 3_000.0}


def test_a_visitor_at_the_rim_by_hand():
    dock = asked(dock=VISITOR | {"at": "rim"})["dock"]
    speed = 4 * RPM_RAD_S * 56
    assert dock["speed_m_s"] == pytest.approx(speed)
    assert dock["propellant_kg_s"] == pytest.approx(8_000 * speed**2 / 56 / 3_000)
    assert dock["drift"]["away_m"] == pytest.approx(math.hypot(56, 10 * speed) - 56)
    assert "1,570 kg of propellant a minute: at this rate its whole mass would last 5.09 min" in said(dock)
    ahead = 56 * (
        10 * 4 * RPM_RAD_S - math.atan(10 * 4 * RPM_RAD_S)
    )  # its azimuth on the straight line, seen from the rim that turned under it
    assert dock["drift"] == pytest.approx(
        {"away_m": math.hypot(56, 10 * speed) - 56, "along_m": -ahead, "time_s": 10.0}
    )
    assert (
        f"it is {dock['drift']['away_m']:.3g} m off the rim 10 s later, and the place it left has run {ahead:.3g} m ahead of it"
        in said(dock)
    )
    slow = said(asked(0.05, dock=VISITOR | {"at": "rim"})["dock"])
    assert "ahead of it" not in slow
    assert "its whole mass would last" not in slow


def test_a_floor_on_the_axis_has_nothing_to_match():
    point = {"name": "point", "solid": "point", "mass_kg": 5.0}
    for at in ("rim", "hub"):
        dock = as_data(Craft(rimfall_craft=1, spin_rpm=3.0, parts=[point], dock=VISITOR | {"at": at}))["dock"]
        assert dock["leaving"]["speed_m_s"] == 0.0


def test_a_visitor_at_the_hub_by_hand():
    dock = asked(dock=VISITOR | {"radius_m": 2.0, "thrust_n": 100.0})["dock"]
    momentum = 8_000 * 2.0**2 / 2 * 4 * RPM_RAD_S
    assert dock["time_s"] == pytest.approx(momentum / (100 * 2))
    assert dock["propellant_kg"] == pytest.approx(momentum / (2 * 3_000))
    assert "it must turn at 4 rpm too" in said(dock)


@each_row(("at", "toward_deg"), [("rim", 0.0), ("rim", 30.0), ("hub", -135.0)])
def test_what_comes_and_leaves_flies_as_motions_of_a_scene(at, toward_deg):
    """Let go at that moment, what hangs at azimuth 0 leaves toward the wished direction of the room that does not turn."""
    dock = asked(dock=VISITOR | {"at": at, "leaves_toward_deg": toward_deg})["dock"]
    scene = {"rimfall": 1, "habitat": {"radius_m": 56.0, "spin_rpm": 4.0}, "motions": dock["motions"]}
    comes, leaves = answer(scene)["motions"]
    assert comes["kind"] == "approach"
    assert (dock["motions"][0]["size_m"], dock["motions"][0].get("elevation_deg")) == (4.0, {"rim": -40.0}.get(at))
    leaving = dock["leaving"]
    assert leaving["speed_m_s"] == pytest.approx(4 * RPM_RAD_S * 56)
    assert 0 <= leaving["azimuth_deg"] < 360
    assert "and again every 15 s. It leaves at 23.5 m/s." in said(dock)
    places = np.array(leaves["inertial_m"])[-2:]
    moved = places[1] - places[0]
    direction = math.radians(toward_deg)
    assert moved[:2] / np.hypot(*moved[:2]) == pytest.approx([math.cos(direction), math.sin(direction)], abs=1e-6)


METAL = {"material": "aluminium 6061-T6", "thickness_m": 0.05}


def test_a_ring_by_hand():
    """Own weight, load and air: density w² R², load w² R²/t, p R/t."""
    hull = asked(hull=METAL | {"safety": 3.0, "load_kg_m2": 300.0, "pressure_kpa": 101.3, "spokes": 6})["hull"]
    gravity = (4 * RPM_RAD_S) ** 2 * 56
    shares = {"own": 2710 * gravity * 56, "load": 300 * gravity * 56 / 0.05, "pressure": 101.3e3 * 56 / 0.05}
    assert hull["shares_pa"] == pytest.approx(shares)
    assert hull["times_safe"] == pytest.approx(sum(shares.values()) / (290e6 / 3))
    assert hull["spoke_tension_n"] == pytest.approx(90_000 * gravity / 6)
    assert "carries 118 MPa, 1.22 times the 96.7 MPa that are safe" in said(hull)
    assert hull["margin"] == pytest.approx(290e6 / 3 / sum(shares.values()) - 1)
    parts = [f"{100 * share / sum(shares.values()):.3g} % from" for share in shares.values()]
    assert (
        f"Of that, {parts[0]} its own weight, {parts[1]} the load on its floor and {parts[2]} the air inside."
        in said(hull)
    )
    strengths = {"aluminium 6061-T6": (290e6, 2710), "aramid": (3620e6, 1440)}
    for name, (strength, density) in strengths.items():
        bare = strength / 3 / density / gravity
        loaded = strength / 3 / (density * gravity + (300 * gravity + 101.3e3) / 0.05)
        assert hull["largest"][name]["bare_radius_m"] == pytest.approx(bare)
        assert hull["largest"][name]["loaded_radius_m"] == pytest.approx(loaded)
    largest = "could be 3,630 m in radius. With this wall and its load and air the largest that would do is 45.8 m."
    assert largest in said(hull)
    assert "each would pull with 147 kN" in said(hull)
    keel = {"name": "keel", "group": "still", "solid": "cylinder", "mass_kg": 6e4, "radius_m": 3.0, "length_m": 40.0}
    craft = Craft(rimfall_craft=1, spin_rpm=4.0, radius_m=56.0, parts=[RING, keel], hull=METAL | {"spokes": 6})
    assert as_data(craft)["hull"]["spoke_tension_n"] == hull["spoke_tension_n"]  # what stands still hangs on none


def test_the_gravity_that_a_ring_could_carry_is_carried():
    """What the sentence offers, asked again, is just safe."""
    heavy = METAL | {"load_kg_m2": 3_000.0, "pressure_kpa": 20.0}
    hull = asked(8.0, hull=heavy)["hull"]
    assert hull["times_safe"] > 1
    offered = said(hull).partition("The most that this ring could carry is ")[2]
    spin = float(offered.partition(", at ")[2].partition(" rpm")[0])
    assert asked(spin, hull=heavy)["hull"]["times_safe"] == pytest.approx(1.0, abs=0.01)


def test_a_thicker_wall_that_would_do_just_does():
    block = METAL | {"safety": 3.0, "load_kg_m2": 300.0, "pressure_kpa": 101.3}
    words = said(asked(hull=block)["hull"])
    assert words.startswith("1 g at the rim wants 4 rpm; the aluminium 6061-T6 ring then carries 118 MPa, 1.22 times")
    wall = float(re.search(r"A wall of ([\d.]+) mm would do", words)[1]) / 1e3
    assert asked(hull=block | {"thickness_m": wall})["hull"]["times_safe"] == pytest.approx(1.0, abs=0.01)


def test_a_ring_that_is_a_tube_holds_its_air_there():
    """The torus at the rim is that tube; a third of the radius is too wide for one."""
    block = METAL | {"pressure_kpa": 101.3, "load_kg_m2": 300.0}
    tube = {"name": "ring", "solid": "torus_shell", "mass_kg": 90_000, "tube_radius_m": 4.0}
    base = {"rimfall_craft": 1, "spin_rpm": 4, "radius_m": 56.0, "hull": block}
    drawn = as_data(read_craft(json.dumps(base | {"parts": [tube]})))["hull"]
    given = asked(hull=block | {"tube_radius_m": 4.0})["hull"]
    for name in ("shares_pa", "tube_stress_pa", "times_safe", "says"):
        assert drawn[name] == given[name]
    assert given["shares_pa"]["pressure"] == pytest.approx(101.3e3 * 4 / (2 * 0.05))
    assert given["shares_pa"]["load"] == pytest.approx(300 * (4 * RPM_RAD_S) ** 2 * 56**2 / 0.05 / math.pi)
    assert "Around its tube, 4 m in radius, the air pulls with 8.44 MPa." in said(given)
    full = asked(hull=block)["hull"]
    assert full["tube_stress_pa"] is None
    assert "in a tube along the rim it would pull far less" in said(full)
    burst = asked(hull=block | {"tube_radius_m": 4.0, "pressure_kpa": 2_000})["hull"]
    assert burst["times_safe"] == pytest.approx(burst["tube_stress_pa"] / burst["safe_stress_pa"])
    assert "none would do" in said(burst)
    split = asked(hull=block | {"tube_radius_m": 4.0, "pressure_kpa": 1_500})["hull"]
    assert split["hoop_stress_pa"] < split["safe_stress_pa"] < split["tube_stress_pa"]  # along it well, around it not
    wall_m = split["tube_stress_pa"] / split["safe_stress_pa"] * 0.05
    assert f"A wall of {wall_m * 1e3:.1f} mm would do. No spin is slow enough for this wall" in said(split)
    inside = base | {"parts": [RING, tube | {"name": "inner", "radius_m": 46.0}]}
    assert as_data(read_craft(json.dumps(inside)))["hull"]["tube_stress_pa"] is None


def test_the_largest_rings_are_just_safe():
    block = METAL | {"load_kg_m2": 300.0, "pressure_kpa": 10.0}
    largest = asked(hull=block)["hull"]["largest"]["titanium Ti-6Al-4V"]["loaded_radius_m"]
    spin = math.sqrt((4 * RPM_RAD_S) ** 2 * 56 / largest) / RPM_RAD_S
    document = Craft(
        rimfall_craft=1, spin_rpm=spin, radius_m=largest, parts=[RING], hull=block | {"material": "titanium Ti-6Al-4V"}
    )
    assert as_data(document)["hull"]["times_safe"] == pytest.approx(1.0, rel=1e-12)


def test_a_ring_that_nothing_pulls_at():
    still = asked(0.0, hull=METAL)["hull"]
    assert still["says"] == ["Nothing pulls at the ring: it does not turn and holds no air."]
    assert still["margin"] is None
    assert still["largest"]["aramid"]["bare_radius_m"] is None
    pressed = asked(0.0, hull=METAL | {"pressure_kpa": 101.3})["hull"]
    assert pressed["says"][0].startswith("Standing still")


def test_a_rock_by_hand():
    """Spun for 0.3 g: density R g/4 over its middle."""
    rock = asked(rock={"density_kg_m3": 2_600.0, "radius_m": 500.0, "gravity_g": 0.3})["rock"]
    assert rock["mean_tension_pa"] == pytest.approx(2_600 * 500 * 0.3 * G0_M_S2 / 4)
    assert rock["weightless_period_s"] == pytest.approx(math.sqrt(3 * math.pi / (6.67430e-11 * 2_600)))
    assert rock["lining_n"] == pytest.approx(rock["mean_tension_pa"] * math.pi * 500**2)
    density, radius, wished = 2_600.0, 500.0, 0.3 * G0_M_S2
    mass = 4 / 3 * math.pi * radius**3 * density
    assert rock["own_gravity_m_s2"] == pytest.approx(6.67430e-11 * mass / radius**2)
    assert rock["rate_rad_s"] ** 2 * radius - rock["own_gravity_m_s2"] == pytest.approx(wished)
    assert rock["weightless_rate_rad_s"] ** 2 * radius == pytest.approx(rock["own_gravity_m_s2"])
    assert rock["lining_area_m2"] == pytest.approx(rock["lining_n"] / 2000e6)
    share = 100 * rock["lining_area_m2"] / (math.pi * radius**2)
    assert (
        f"needs {rock['lining_area_m2']:.3g} m² of strong steel in every section through the axis, {share:.3g} % of that section"
        in said(rock)
    )
    assert [one["tension_pa"] for one in rock["strengths"]] == [10e6, 25.0]  # as `rock.py` has them from their sources
    assert [one["largest_radius_m"] for one in rock["strengths"]] == pytest.approx(
        [4 * one / (density * wished) for one in (10e6, 25.0)]
    )
    assert f"bear that, with {100 * rock['strengths'][0]['times']:.3g} % of its strength" in said(rock)
    assert "until it turns once in 2 h 3 min" in said(rock)
    assert "rubble bears 25 Pa, and flies apart" in said(rock)
    large = asked(rock={"density_kg_m3": 2_600.0, "radius_m": 8_000.0, "gravity_g": 1.0})["rock"]
    assert "That is 5.1 times what rock without a crack bears" in said(large)
    assert "The largest ball of uncracked rock that would hold is 1,570 m in radius" in said(large)


def test_what_is_not_asked_is_not_answered():
    assert not {"tether", "dock", "hull", "rock"} & set(asked())


@each_row(
    ("block", "fault"),
    [
        ({"hull": METAL | {"material": "wet paper"}}, "hull.material"),
        ({"tether": ROPE | {"material": "string"}}, "tether.material"),
        ({"tether": ROPE | {"length_m": 0.0}}, "tether.length_m"),
        ({"tether": ROPE | {"masses_kg": [1.0]}}, "tether.masses_kg"),
        ({"hull": METAL | {"spokes": -1}}, "hull.spokes"),
        ({"rock": {"density_kg_m3": 2_600.0, "radius_m": 500.0, "gravity_g": 0.0}}, "rock.gravity_g"),
    ],
)
def test_refusals_name_the_field(block, fault):
    with pytest.raises(ValueError, match=fault.rpartition(".")[2]):
        Craft(rimfall_craft=1, spin_rpm=4.0, radius_m=56.0, parts=[RING], **block)


@each_row("units", ["si", "us"])
def test_sentences_end_and_hold_no_nan(units):
    blocks = {
        "tether": ROPE | {"material": "carbon fibre", "to_length_m": 400.0},
        "dock": VISITOR,
        "hull": METAL,
        "rock": {"density_kg_m3": 3_000.0, "radius_m": 1e7, "gravity_g": 100.0},
    }
    for spin_rpm in (1e-6, 0.5, 200.0):
        answer = asked(spin_rpm, units, **blocks)
        for name in blocks:
            for sentence in [*answer[name]["says"], *answer[name]["assumptions"]]:
                assert sentence.endswith("."), sentence
                assert not any(word in sentence.lower() for word in ("nan", " inf ", "none")), sentence
