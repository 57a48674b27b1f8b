"""What is said of bodies is what they do, held to figures worked out beside the program."""

import math
import re

import numpy as np
import pytest
from scipy.special import ellipk

from tests.facts import tells
from tests.scene.documents import answer, drop, scene
from tests.tables import each_row

G0 = 9.80665
STEEL = {"mass_kg": 2.0, "diameter_m": 0.08}


def traced(*motions, **document):
    (motion,) = answer(scene(*motions, **document))["motions"]
    return motion


def words(*motions, **document):
    return " ".join(traced(*motions, **document)["words"])


def hang(height_m, length_m, body=STEEL, **more):
    return {"kind": "hang", "place": {"height_m": height_m}, "length_m": length_m, "body": body} | more


@each_row("duration_s", [7.9, 11.0])
def test_the_plane_of_a_pendulum_is_told_for_all_the_time_that_is_shown(duration_s):
    """At the pole it turns as fast as the ground does the other way (Foucault): 18 degrees a second at 3 rpm, not from first turning
    point to last; the ellipse it draws makes it a little less, as (3/8) of the product of its half axes."""
    table = {"shape": "turntable", "radius_m": 2.0}
    motion = traced(hang(7.5, 7.0, first_angle_deg=5), habitat=table, air=None, sampling={"duration_s": duration_s})
    assert motion["findings"]["plane_turns_deg"] == pytest.approx(-18.0 * duration_s, rel=0.01)
    assert tells(" ".join(motion["words"]), f"clockwise in {duration_s:.2f} s")


def test_what_hangs_still_has_no_swing_and_no_plane():
    table = {"shape": "turntable", "radius_m": 5.0, "spin_rpm": 10}
    place = {"axial_m": 0.5, "height_m": 2.0}
    motion = traced(hang(2.0, 1.0, "cup", place=place), habitat=table)
    assert motion["findings"]["plane_turns_deg"] is None
    assert tells(" ".join(motion["words"]), "stays there")
    assert "plane" not in " ".join(motion["words"])


def test_a_bob_that_goes_over_the_top_is_not_said_to_swing():
    """Once round takes 4 L K(4 g L/v^2)/v (any mechanics text); Coriolis takes it out of its plane by degrees."""
    habitat = {"radius_m": 1000.0, "spin_rpm": 0.9457}
    push = {"first_angle_deg": 0, "speed_m_s": 5.0, "heading_deg": 90}
    motion = traced(hang(3.0, 0.5, **push), habitat=habitat, air=None, sampling={"duration_s": 12.0})
    once_s = 4 * 0.5 * ellipk(4 * G0 * 0.5 / 25.0) / 5.0
    assert motion["findings"]["period_s"] == pytest.approx(once_s, rel=0.05)
    assert motion["findings"]["always_over"]
    assert motion["findings"]["over_the_top"] in (13, 14)  # the last may be cut short
    assert tells(" ".join(motion["words"]), f"goes over the top, once round in {motion['findings']['period_s']:.2f} s")
    assert not any(w in " ".join(motion["words"]) for w in ("swings up", "plane"))
    swings = traced(
        hang(3.0, 0.5, **push | {"speed_m_s": 3.0}), habitat=habitat, air=None, sampling={"duration_s": 6.0}
    )
    assert swings["findings"]["over_the_top"] == 0


@each_row(
    ("thrust", "lean"),
    [(0.0, "floats straight above its pivot and stays"), (1.0, "from the upright, higher than its pivot, 0.")],
)
def test_a_tied_balloon_floats_above_its_pivot(thrust, lean):
    motion = traced(hang(1.0, 1.5, "helium balloon"), habitat={"axial_thrust_m_s2": thrust})
    assert tells(" ".join(motion["words"]), lean)
    assert "below" not in " ".join(motion["words"])
    assert motion["findings"]["plumb_deg"][0] == pytest.approx(math.degrees(math.atan2(thrust, 5.6)), rel=0.1, abs=1e-6)


def test_a_contact_without_a_bounce_is_not_counted_as_one():
    habitat = {"radius_m": 18.795345195964536, "spin_rpm": 6.728146688320585, "ceiling_m": 2.5, "width_m": 6.0}
    body = {"mass_kg": 0.3, "diameter_m": 0.1, "restitution": 0.8, "rolling_resistance": 0.02}
    aim = {"speed_m_s": 4.0757484625086455, "heading_deg": -54.03987338545531, "elevation_deg": 3.0541246589905953}
    motion = traced({"kind": "throw", "place": {"height_m": 1.2}, "bounces": 1, "body": body} | aim, habitat=habitat)
    assert [e["kind"] for e in motion["events"] if "velocity_after_m_s" in e] == ["deck", "wall", "deck"]
    assert tells(" ".join(motion["words"]), "It bounces once and comes to rest")


def test_mach_is_that_against_the_air_that_stands_still():
    """A ball let go 45 m out on a table at 60 rpm moves at 2 pi 45 m/s through the room: Mach 0.82 at 343.2 m/s."""
    table = {"shape": "turntable", "radius_m": 50.0, "spin_rpm": 60}
    motion = traced(drop(0.5, "tennis ball", place={"axial_m": 45, "height_m": 0.5}), habitat=table)
    assert f"Mach {2 * math.pi * 45 / 343.2:.1f};" in " ".join(motion["assumptions"])
    aboard = traced(drop(1.2, "tennis ball"))
    assert "Mach" not in " ".join(aboard["assumptions"])


def test_air_at_a_floor_that_is_not_where_its_pressure_is_stated_is_told():
    """Isothermal, turning: p = 101.325 exp(omega^2 (1000^2 - 100^2)/(2 R T)), R 287.05, T 293.15."""
    floors = [{"length_m": 20.0, "width_m": 20.0}, {"length_m": 20.0, "width_m": 20.0, "radius_m": 1000.0}]
    habitat = {"shape": "tether", "radius_m": 100.0, "floors": floors}
    kpa = 101.325 * math.exp((math.pi / 10) ** 2 * (1000**2 - 100**2) / (2 * 287.05 * 293.15))
    both = [drop(0.5, {"mass_kg": 1.0, "diameter_m": 0.3}, place={"height_m": 0.5, "floor": floor}) for floor in (0, 1)]
    stated, denser = answer(scene(*both, habitat=habitat, sampling={"duration_s": 0.1}))["motions"]
    assert tells(" ".join(denser["assumptions"]), f"stated at 100 m … 1,000 m out … {kpa:.4g} kPa")
    assert "stated" not in " ".join(stated["assumptions"])


def test_a_sheet_of_paper_is_said_to_drag_air_along_and_a_cup_is_not():
    """A disc of its area broadside on: 8 rho a^3/3 (Lamb, Hydrodynamics, section 102), 9 g of air beside 5 g of paper."""
    radius_m = math.sqrt(0.210 * 0.297 / math.pi)
    grams = 1e3 * 8 / 3 * 1.2041 * radius_m**3
    paper, cup = answer(scene(drop(1.2, "sheet of paper"), drop(1.2, "cup")))["motions"]
    assert tells(" ".join(paper["assumptions"]), f"about {grams:.2g} g on its 5 g")
    assert "drags along" not in " ".join(cup["assumptions"])


def test_what_meets_a_wall_and_no_deck_is_said_to():
    """7 m less half a cup at 2 m/s2: sqrt(2 x 6.9575/2) s and no air to speak of."""
    said = words(drop(1.2, "cup"), habitat={"spin_rpm": 0.0, "width_m": 14, "axial_thrust_m_s2": 2.0})
    assert tells(said, "meets an end wall 6.96 m back along the axis after 2.6 … s and comes to rest there")
    assert "never" not in said


def test_a_walker_on_a_flat_floor_who_outruns_it_is_said_to_leave_it():
    """Nothing presses on beyond omega R/2 antispinward: 1.15 m/s at 11 m and 2 rpm, by omega^2 R = 2 omega v."""
    floors = [{"length_m": 14, "width_m": 5, "ceiling_m": 2.5}]
    habitat = {"shape": "pods", "radius_m": 11.0, "spin_rpm": 2.0, "floors": floors}
    walk = {"kind": "walk", "place": {}, "heading_deg": 180, "for_s": 1.0}
    fast, slow = answer(scene(walk | {"speed_m_s": 3.0}, walk | {"speed_m_s": 1.0}, habitat=habitat))["motions"]
    assert tells(" ".join(fast["words"]), "leaves the floor at once: beyond 1.2 m/s antispinward")
    assert np.all(np.array(fast["findings"]["feet_g"]) == 0.0)
    assert not any(wrong in " ".join(fast["words"]) for wrong in ("feel", "leans"))
    assert slow["findings"]["leaves_s"] is None
    assert tells(" ".join(slow["words"]), "the feet feel … less than standing")


def test_a_rider_whom_a_lift_outbrakes_is_said_to_leave_its_floor():
    """0.99 m/s2 of weight does not slow a rider by 1.5: as the brakes come on, 60/8 s after the start."""
    habitat = {"radius_m": 1000.0, "spin_rpm": 0.3}
    ride = {"kind": "lift", "place": {}, "to_height_m": 60, "top_speed_m_s": 8}
    hard, soft = answer(scene(ride | {"acceleration_m_s2": 1.5}, ride | {"acceleration_m_s2": 0.5}, habitat=habitat))[
        "motions"
    ]
    assert hard["findings"]["leaves_s"] == pytest.approx(7.5, abs=1e-9)
    assert tells(" ".join(hard["words"]), "leaves the cabin’s floor after 7.50 s")
    assert hard["findings"]["most_tilt_deg"] < 90
    assert soft["findings"]["leaves_s"] is None
    assert "leaves" not in " ".join(soft["words"])


@each_row(("thrust", "off_m", "axial_m"), [(0.5, 240.0, -240.0), (0.0, 160.0, 160.0), (0.05, 120.0, 120.0)])
def test_an_approach_that_thrust_bends_is_said_to_begin_where_it_does(thrust, off_m, axial_m):
    """Back from the dock for 40 s at 4 m/s: 160 m less a t^2/2."""
    approach = {
        "kind": "approach",
        "dock": "hub",
        "place": {"axial_m": 7.0},
        "speed_m_s": 4.0,
        "heading_deg": 90,
        "from_m": 160,
    }
    motion = traced(approach, habitat={"width_m": 14, "axial_thrust_m_s2": thrust})
    assert motion["findings"]["starts_off_m"] == pytest.approx(off_m, abs=1e-6)
    assert motion["findings"]["starts_axial_m"] == pytest.approx(axial_m, abs=1e-6)
    side = "back along the axis" if axial_m < 0 else "along the axis"
    assert tells(" ".join(motion["words"]), f"begins {off_m:.2f} m … {side} … not 160.00 m") == (thrust > 0)


def test_drops_that_drip_and_drops_of_a_stream_are_told_apart():
    """Below a Weber number of 4 it drips (the liquid's own bound): at the lip's flow of 8 ml/s at first, none at the end."""
    tilt = [
        {"time_s": 0.5, "elevation_deg": -30.0, "flow_ml_s": 70.0},
        {"time_s": 1.7, "elevation_deg": 0.0, "flow_ml_s": 0.0},
    ]
    pour = {
        "kind": "pour",
        "place": {"height_m": 1.6},
        "flow_ml_s": 8.0,
        "lip_diameter_mm": 8.0,
        "duration_s": 1.7,
        "liquid": "water",
    }
    motion = traced(pour | {"tilt": tilt})
    drops = motion["findings"]["drops"]
    born_s = np.sort(drops["born_s"])
    said = " ".join(motion["words"])
    first, streamed, last = (1 if n == "one" else int(n) for n in re.findall(r"(\d+|one) drops? of", said))
    assert first + streamed + last == len(born_s) == motion["stream"]["drop_count"]
    assert (first, streamed, last) == (drops["dripped_first"], drops["of_stream"], drops["dripped_later"])
    breaks = motion["stream"]["regime"] == "drips"
    assert breaks
    assert tells(said, "Too slow for a stream at first … The stream that follows … as the flow ends it drips")
    assert first < 10 > last


def test_where_a_stream_breaks_is_told_as_the_band_of_two_published_laws():
    """3 mm of water at 2 m/s: 251.6 diameters by Grant and Middleman (1966), 155 +- 15 by Weber's theory (12 sqrt(We) (1 + 3 Oh))."""
    flow = 2.0 * math.pi / 4 * 3.0**2  # ml/s
    pour = {
        "kind": "pour",
        "place": {"height_m": 2.0},
        "elevation_deg": -90,
        "flow_ml_s": flow,
        "lip_diameter_mm": 3.0,
        "liquid": "water",
    }
    said = words(pour | {"duration_s": 0.5})
    least, most = (float(n) for n in re.search(r"between ([\d.]+).m and ([\d.]+).m on it breaks", said).groups())
    assert most == pytest.approx(251.6 * 0.003, abs=0.005)
    assert least == pytest.approx(155 * 0.003, abs=15 * 0.003)
