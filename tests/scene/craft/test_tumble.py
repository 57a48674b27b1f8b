"""What a craft's document says of its tumbling: figures by hand, sentences, and what is refused."""

import math
import re

import numpy as np
import pytest

from rimfall.errors import BadInput
from rimfall.physics.constants import G0_M_S2, RPM_RAD_S
from rimfall.scene.craft.answers import as_data
from rimfall.scene.craft.checks import check
from rimfall.scene.craft.document import Craft
from tests.tables import each_row
from tests.vessel.tumbling import matrices

SOLIDS = {
    "rod": {"solid": "cylinder", "radius_m": 3.0, "length_m": 80.0},
    "disc": {"solid": "disc", "radius_m": 30.0},
    "ball": {"solid": "sphere", "radius_m": 10.0},
    "brick": {"solid": "box", "size_m": [10.0, 30.0, 20.0]},
}


def craft_of(what, **block):
    part = {"name": "hull", "mass_kg": 90_000.0, **SOLIDS[what]}
    return Craft(rimfall_craft=1, spin_rpm=3.0, parts=[part], tumble={"duration_s": 600.0, **block})


def tumbled(what, rates, losses_s=None, **block):
    losses = None if losses_s is None else {"time_s": losses_s}
    return as_data(check(craft_of(what, rates_rpm=rates, dissipation=losses, **block)))["tumble"]


def said(finding):
    return " ".join(finding["says"]).replace("\u00a0", " ")


@each_row(
    ("what", "axis", "lasts", "lasts_with_losses", "says"),
    [
        ("rod", "least", True, False, "ends up turning end over end"),
        ("disc", "greatest", True, True, "spin about z lasts, whatever energy is lost inside"),
        ("ball", "any", True, True, "the same inertia about every axis"),
        ("brick", "middle", False, False, "the middle axis, and spin about it never lasts"),
    ],
)
def test_whether_spin_about_z_lasts(what, axis, lasts, lasts_with_losses, says):
    """Facts of the trade, common practice, no source: a rod goes end over end, a disc does not, a middle axis flips."""
    found = tumbled(what, [0.01, 0.0, 3.0])
    stable = found["stable"]
    assert (stable["axis"], stable["without_dissipation"], stable["with_dissipation"]) == (
        axis,
        lasts,
        lasts_with_losses,
    )
    assert says in said(found)
    assert found["flips"] == (what == "brick")
    assert (found["flip_period_s"] is not None) == (what == "brick")


def test_a_rod_ends_end_over_end_and_a_disc_does_not():
    rod, disc = tumbled("rod", [0.0, 0.003, 3.0], 100.0, duration_s=1200.0), tumbled("disc", [0.3, 0.0, 3.0], 100.0)
    assert rod["nutation_deg"][0] > 40
    assert rod["nutation_deg"][-1] < 0.05
    assert abs(rod["final_axis"][2]) < 1e-9
    across = np.array(rod["rates_rad_s"][-1][:2])  # of all that are alike across it, the one that it came to turn about
    assert rod["final_axis"][:2] == pytest.approx(across / np.linalg.norm(across), abs=1e-3)
    assert rod["final_rpm"] == pytest.approx(math.hypot(0.003, 3.0 * 4.5 / (6400 / 12 + 9 / 4)), rel=1e-3)
    assert disc["nutation_deg"][-1] < disc["nutation_deg"][0]
    assert disc["final_axis"] == pytest.approx([0.0, 0.0, 1.0])
    for found in (rod, disc):
        flat = np.interp(-1.0, -np.array(found["nutation_deg"]), found["time_s"])
        assert found["time_to_flat_s"] == pytest.approx(flat, rel=0.01)
    assert "in a flat spin after" in said(rod)
    assert "of its energy, has gone as heat" in said(rod)


def test_a_spin_without_any_wobble_is_told_what_it_was_given():
    found = tumbled("rod", [0.0, 0.0, 3.0], 600.0)
    assert found["wobble_begun_deg"] == 1.0
    assert set(found["nutation_deg"]) == {90.0}
    assert "from a first wobble of 1°, which nothing here gives it" in said(found).lower()
    assert any("pencil" in one for one in found["assumptions"])


def test_momentum_and_energy_of_the_answer():
    found = tumbled("brick", [0.5, 1.0, 3.0], 200.0)
    inertia = 90_000 / 12 * np.array([30**2 + 20**2, 10**2 + 20**2, 10**2 + 30**2])
    start = inertia * np.array([0.5, 1.0, 3.0]) * RPM_RAD_S
    assert found["angular_momentum_kg_m2_s"] == pytest.approx(start.tolist())
    energy = np.array(found["energy_j"])
    assert energy[0] == pytest.approx(0.5 * start @ (start / inertia))
    assert np.all(np.diff(energy) < 1e-12 * energy[0])
    assert energy[-1] > found["final_energy_j"]
    free = tumbled("brick", [0.5, 1.0, 3.0])
    turned = np.einsum("nij,nj->ni", matrices(np.array(free["quaternion_wxyz"])), free["rates_rad_s"] * inertia)
    np.testing.assert_allclose(turned, np.broadcast_to(start, turned.shape), rtol=1e-9, atol=1e-6)


def test_what_a_brick_comes_to_by_hand():
    """L over the greatest moment, about that axis; the share of the energy that has gone; half of the period a flip."""
    found = tumbled("brick", [0.02, 0.01, 3.0], 500.0)
    inertia = 90_000 / 12 * np.array([30**2 + 20**2, 10**2 + 20**2, 10**2 + 30**2])
    momentum = inertia * np.array([0.02, 0.01, 3.0]) * RPM_RAD_S
    size, first = np.linalg.norm(momentum), 0.5 * np.sum(momentum**2 / inertia)
    assert found["final_rpm"] == pytest.approx(size / inertia[0] / RPM_RAD_S)
    assert found["final_energy_j"] == pytest.approx(size**2 / 2 / inertia[0])
    assert found["final_axis"] == pytest.approx([np.sign(found["rates_rad_s"][-1][0]), 0, 0], abs=1e-12)
    share = 100 * (1 - found["final_energy_j"] / first)
    assert (
        f"about its own x axis, and {(first - found['final_energy_j']) / 1e3:.3g} kJ, {share:.3g} % of its energy"
        in said(found)
    )
    assert f"once every {found['flip_period_s'] / 2:.3g} s to begin with" in said(found)


@each_row(("what", "ratio", "rule"), [("disc", 2.0, "this is more"), ("flat", 1.1, "this is less")])
def test_the_rule_that_designers_ask_for(what, ratio, rule):
    """A drum of length l has (1/2)/(1/4 + l²/12r²) times its inertia across; Kalpana One was laid out for 1.2 (Globus et al. 2007)."""
    SOLIDS["flat"] = {"solid": "cylinder", "radius_m": 1.0, "length_m": math.sqrt(12 * (0.5 / 1.1 - 0.25))}
    found = tumbled(what, [0.0, 0.0, 3.0])
    assert found["stable"]["rule"] == 1.2
    assert found["stable"]["spin_to_transverse"] == pytest.approx(ratio)
    assert found["stable"]["margin"] == pytest.approx(ratio / 1.2 - 1)
    assert f"Designers ask for 1.2 or so; {rule}." in said(found)


def test_a_craft_off_its_own_axes():
    """Places count from the centre of mass; momentum is in the craft's axes; how far z is from a principal axis is told."""
    boxes = [
        {
            "name": "hull",
            "mass_kg": 9e4,
            "solid": "box",
            "size_m": [10, 30, 20],
            "axis": [0.3, 0.1, 1.0],
            "place_m": [4, 0, 0],
        },
        {"name": "tank", "mass_kg": 2e4, "solid": "point", "place_m": [-6, 2, 9]},
    ]
    block = {"rates_rpm": [0.5, 0.0, 3.0], "duration_s": 9.0, "places": [{"name": "bow", "place_m": [1, 2, 3]}]}
    whole = as_data(check(Craft(rimfall_craft=1, spin_rpm=3.0, parts=boxes, tumble=block)))
    found, mass = whole["tumble"], whole["mass"]["whole"]
    inertia, omega = np.array(mass["inertia_kg_m2"]), np.array([0.5, 0.0, 3.0]) * RPM_RAD_S
    assert found["angular_momentum_kg_m2_s"] == pytest.approx(inertia @ omega)
    offset = np.array([1, 2, 3]) - mass["centre_of_mass_m"]
    change = np.linalg.solve(inertia, np.cross(inertia @ omega, omega))
    felt = -(np.cross(change, offset) + np.cross(omega, np.cross(omega, offset))) / G0_M_S2
    assert found["places"][0]["felt_g"][0] == pytest.approx(felt)
    nearest = np.abs(np.linalg.eigh(inertia)[1][2]).max()
    assert found["stable"]["off_axis_deg"] == pytest.approx(math.degrees(math.acos(nearest)))
    assert not found["stable"]["aligned"]
    assert "so spun about z it wobbles from the start" in said(found)


def test_the_axis_of_greatest_inertia_of_a_plate_that_leans():
    lean = {"name": "hull", "mass_kg": 9e4, "solid": "box", "size_m": [30, 20, 10], "axis": leant_deg(20.0)}
    block = {"rates_rpm": [0.5, 0.0, 3.0], "dissipation": {"time_s": 50.0}, "duration_s": 600.0}
    found = as_data(check(Craft(rimfall_craft=1, spin_rpm=3.0, parts=[lean], tumble=block)))["tumble"]
    assert found["final_axis"] == pytest.approx(leant_deg(20.0))
    assert "about an axis 20° from its own z axis" in said(found)


def leant_deg(lean_deg):
    return [math.sin(math.radians(lean_deg)), 0.0, math.cos(math.radians(lean_deg))]


def test_samples_are_as_many_as_a_turn_needs_and_no_more_than_a_file_bears():
    assert len(tumbled("disc", [0.1, 0.0, 3.0], duration_s=1.0)["time_s"]) == 241
    assert (
        len(tumbled("disc", [0.0, 0.0, 3.0], duration_s=2_000.0)["time_s"]) == 1_601
    )  # 16 of each of its hundred turns
    many = tumbled("disc", [0.1, 0.0, 3.0], duration_s=1e6)
    assert len(many["time_s"]) == 4_001
    assert not any("do not show" in one for one in tumbled("disc", [0.1, 0.0, 3.0], duration_s=2_000.0)["assumptions"])


def test_gravity_at_places():
    """Of a steady spin w^2 r, away from the axis through the centre of mass."""
    places = [{"name": "bridge", "place_m": [0.0, 12.0, 5.0]}, {"name": "hub", "place_m": [0.0, 0.0, 5.0]}]
    found = tumbled("disc", [0.0, 0.0, 3.0], places=places)
    bridge, hub = found["places"]
    assert bridge["felt_g"][7] == pytest.approx([0.0, 12 * (3 * RPM_RAD_S) ** 2 / G0_M_S2, 0.0])
    assert hub["greatest_g"] == 0.0
    assert "At bridge gravity is 0.121 g. At hub nothing weighs anything." in said(found)


def test_how_its_momentum_moves_in_words():
    """A disc's stays at an angle, of tangent half of the rates' own; a brick's goes between two."""
    disc = tumbled("disc", [0.5, 0.0, 3.0])
    angle = math.degrees(math.atan(0.5 / 3 / 2))
    assert disc["nutation_deg"] == pytest.approx([angle] * len(disc["time_s"]))
    assert f"its momentum stays {angle:.3g}° from its axis of greatest inertia" in said(disc)
    assert "it turns steadily about its axis of greatest inertia" in said(tumbled("disc", [0.0, 0.0, 3.0]))
    last = said(tumbled("disc", [0.0, 0.0, 3.0], 50.0))
    assert "It is in its last state from the start: it turns at 3 rpm about its own z axis." in last
    brick = tumbled("brick", [3.0, 1.0, 0.5], places=[{"name": "bow", "place_m": [5.0, 9.0, 2.0]}])
    low, high = min(brick["nutation_deg"]), max(brick["nutation_deg"])
    assert high - low > 1
    told = re.search(r"stays between ([\d.]+)° and ([\d.]+)° from its axis of greatest inertia", said(brick))
    assert (float(told[1]), float(told[2])) == pytest.approx((low, high), abs=0.1)
    bow, size = brick["places"][0], np.linalg.norm(brick["places"][0]["felt_g"], axis=1)
    assert (bow["least_g"], bow["greatest_g"]) == pytest.approx((size.min(), size.max()))
    assert "At bow gravity goes from" in said(brick)
    poised = tumbled("brick", [0.0, 0.0, 3.0])
    assert any("pencil" in one for one in poised["assumptions"])


def test_a_craft_at_rest_stays():
    found = tumbled("brick", [0.0, 0.0, 0.0], 100.0)
    assert "let go at rest it stays as it is" in said(found).lower()
    assert (found["time_to_flat_s"], found["final_rpm"]) == (None, 0.0)


def test_few_samples_are_told():
    assert any(
        "do not show each turn" in one for one in tumbled("disc", [0.1, 0.0, 3.0], duration_s=1e6)["assumptions"]
    )


@each_row(
    ("what", "block", "field", "say"),
    [
        (
            "rod",
            {"rates_rpm": [0.0, 0.0, 3.0], "dissipation": {"time_s": 9.0}, "duration_s": 1e6},
            "tumble.duration_s",
            "at most 200000 s",
        ),
        (
            "rod",
            {"rates_rpm": [0.0, 0.0, 0.001], "dissipation": {"time_s": 0.001}, "duration_s": 1e6},
            "tumble.duration_s",
            "at most 100 s: 100,000 times the time in which energy is lost",
        ),
        ("line", {"rates_rpm": [0.0, 0.0, 3.0]}, "parts", "along one line"),
        ("needle", {"rates_rpm": [0.0, 0.0, 3.0]}, "parts", "each at least 1e-09 of the greatest"),
    ],
)
def test_refusals(what, block, field, say):
    lines = {
        "line": {"solid": "rod", "length_m": 10.0},
        "needle": {"solid": "cylinder", "radius_m": 0.001, "length_m": 1e3},
    }
    part = {"name": "hull", "mass_kg": 90_000.0, **(SOLIDS | lines)[what]}
    with pytest.raises(BadInput) as refused:
        check(Craft(rimfall_craft=1, spin_rpm=3.0, parts=[part], tumble=block))
    assert refused.value.refusals[0].field == field
    assert say in refused.value.refusals[0].say
