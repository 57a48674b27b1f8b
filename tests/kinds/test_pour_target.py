"""What a cup catches: the crossing of its opening, shares, what runs over, and where it should have stood."""

import math

import numpy as np
import pytest
from scipy.optimize import brentq

from rimfall.physics.free_surface import brim_m3
from rimfall.physics.spin import steady
from tests.motions.scenes import AIR, LANTERN, OMEGA_LANTERN, event, kinds, one, pour
from tests.tables import each_row

R, OMEGA = 56.0, OMEGA_LANTERN
CROSSES_S = 1e-9
PLACE_M = 1e-8


def at_cup(target, habitat=LANTERN, air=None, sampling=None, **parts):
    lip = {
        k: parts.pop(k)
        for k in ("flow_ml_s", "lip_mm", "elevation_deg", "heading_deg", "start_s", "along_m", "axial_m")
        if k in parts
    }
    return one(pour(parts.pop("height_m", 1.1), **lip) | {"target": target} | parts, habitat, air, **(sampling or {}))


def free(time_s, height_m, speed):
    """Place aboard of a free parcel that left spinward: the straight line of the room that does not turn, turned back."""
    line = complex(R - height_m, (OMEGA * (R - height_m) + speed) * time_s)
    return line * np.exp(-1j * OMEGA * time_s)


SPEED = 4 * 30e-6 / (math.pi * 8e-3**2)
DOWN_S = brentq(lambda t: R - abs(free(t, 1.1, SPEED)) - 0.1, 0.1, 1.0, xtol=1e-14)
SPINWARD_M = R * float(np.angle(free(DOWN_S, 1.1, SPEED)))


def test_a_miss_says_where_the_middle_of_the_pour_comes_down():
    findings = at_cup({"along_m": 0.0}).findings
    assert (findings["caught"], findings["spilled_ml"]) == (0.0, pytest.approx(60.0))
    assert findings["move_m"] == pytest.approx([SPINWARD_M, 0.0], abs=PLACE_M)


def test_a_cup_moved_as_told_catches_all():
    traced = at_cup({"along_m": SPINWARD_M})
    assert traced.findings["caught"] == pytest.approx(1.0)
    assert traced.findings["move_m"] == pytest.approx([0.0, 0.0], abs=PLACE_M)
    assert (traced.track.end, kinds(traced)) == ("caught", ["release", "target"])
    assert float(event(traced, "target").time_s) == pytest.approx(DOWN_S, abs=CROSSES_S)
    assert (traced.track.landing, traced.track.no_landing) == (None, "caught")


def opening_s(along_m):
    """When the parcel passes the plane of an opening that stands at along_m, by brentq."""
    middle = (R - 0.1) * np.exp(1j * along_m / R)
    up = -middle / abs(middle)
    gap = lambda t: ((free(t, 1.1, SPEED) - middle) * up.conjugate()).real  # noqa: E731
    return brentq(gap, 0.1, 1.0, xtol=1e-14)


@each_row("beside_m", [-0.0399, -0.03, 0.02, 0.0399])
def test_the_opening_is_flat_and_passed_to_the_nanosecond(beside_m):
    along = SPINWARD_M + beside_m
    traced = at_cup({"along_m": along})
    assert float(traced.track.ends_s) == pytest.approx(opening_s(along), abs=CROSSES_S)
    assert at_cup({"along_m": SPINWARD_M + math.copysign(0.0401, beside_m)}).track.end == "landed"


def test_it_is_passed_downward_only():
    """A fountain under a cup that is upside down for it: rising through the opening is no catch, falling back is."""
    traced = at_cup({"along_m": 0.0, "height_m": 1.3, "diameter_m": 2.0}, elevation_deg=89.0, flow_ml_s=150.0)
    rises = event(traced, "apex")
    assert float(traced.track.ends_s) > rises.time_s
    assert traced.track.end == "caught"


def test_a_fountain_that_only_just_reaches_the_rim_is_seen():
    top = float(event(at_cup({"height_m": 0.1, "along_m": -5.0}, elevation_deg=89.0, flow_ml_s=150.0), "apex").height_m)
    rim = {"along_m": 0.0, "diameter_m": 2.0}
    assert at_cup(rim | {"height_m": top - 1e-6}, elevation_deg=89.0, flow_ml_s=150.0).track.end == "caught"
    assert at_cup(rim | {"height_m": top + 1e-6}, elevation_deg=89.0, flow_ml_s=150.0).track.end == "landed"


def test_what_is_neither_caught_nor_spilled_is_under_way():
    """The scene ends 0.5 s after the first parcel reaches the cup: a quarter of two seconds' pour is in it."""
    findings = at_cup({"along_m": SPINWARD_M}, sampling={"duration_s": DOWN_S + 0.5}).findings
    assert findings["caught"] == pytest.approx(0.25)
    assert findings["spilled_ml"] == 0.0
    early = at_cup({"along_m": SPINWARD_M}, sampling={"duration_s": DOWN_S / 2}).findings
    assert (early["caught"], early["spilled_ml"]) == (0.0, 0.0)


def test_a_cup_that_is_too_small_runs_over():
    findings = at_cup({"along_m": SPINWARD_M, "depth_m": 0.01}).findings
    holds = math.pi * 0.04**2 * 0.01 * 1e6
    assert (findings["caught_ml"], findings["overflows_ml"]) == (pytest.approx(holds), pytest.approx(60.0 - holds))
    assert findings["level_m"] == pytest.approx(0.01)


def test_scattered_drops_are_shared_between_cup_and_deck_by_volume():
    traced = at_cup({"along_m": -0.05, "height_m": 0.1, "diameter_m": 0.1, "depth_m": 0.1}, height_m=8.0, flow_ml_s=12.0, lip_mm=4.0,
                    jitter=0.1, seed=1, elevation_deg=-90.0, air=AIR)  # fmt: skip
    near = traced.findings["move_m"]
    moved = at_cup({"along_m": -0.05 + near[0], "axial_m": near[1], "diameter_m": 0.1, "depth_m": 0.1}, height_m=8.0, flow_ml_s=12.0, lip_mm=4.0,
                   jitter=0.1, seed=1, elevation_deg=-90.0, air=AIR)  # fmt: skip
    findings, batch = moved.findings, moved.plan.stream.batch
    caught = findings["drops"]["caught"].astype(bool)
    assert 0.1 < findings["caught"] < 0.95
    assert findings["caught_ml"] == pytest.approx(math.fsum(batch.volume_m3[batch.drops[caught]]) * 1e6)
    assert findings["caught_ml"] + findings["spilled_ml"] == pytest.approx(24.0)
    assert f"; {24.0 - findings['caught_ml']:.0f}\u00a0ml are spilled" in moved.outcome("si")[0]
    assert findings["move_m"] == pytest.approx([0.0, 0.0], abs=1e-9)
    assert findings["first_caught_s"] == pytest.approx(np.min(findings["drops"]["ends_s"][caught]))
    ends = batch.paths.turning(steady(OMEGA), batch.drops[caught], findings["drops"]["ends_s"][caught])[0]
    assert R - np.hypot(ends[:, 0], ends[:, 1]) == pytest.approx(0.1, abs=1e-4)  # a flat opening in a round height


def test_under_thrust_the_liquid_lies_tilted_and_the_cup_holds_less():
    """tan(tilt) = a / (w^2 rho): the surface is square to the apparent gravity there."""
    thrust, rim = 1.0, 0.1
    traced = at_cup({"diameter_m": 1.0, "axial_m": -0.1, "depth_m": 0.1}, LANTERN | {"axial_thrust_m_s2": thrust})
    findings, tilt = traced.findings, math.atan(thrust / (OMEGA**2 * (R - rim)))
    assert findings["level_tilt_deg"] == pytest.approx(math.degrees(tilt))
    assert findings["caught_ml"] == pytest.approx(60.0)
    small = at_cup(
        {"along_m": SPINWARD_M, "axial_m": -0.12, "diameter_m": 0.2, "depth_m": 0.02},
        LANTERN | {"axial_thrust_m_s2": thrust},
    ).findings
    assert small["caught_ml"] == pytest.approx(min(60.0, brim_m3(0.02, 0.1, tilt) * 1e6))


def test_on_a_flat_floor_it_leans_with_the_place():
    """atan(along / (R - height)) on a pod's floor."""
    pods = {"shape": "pods", "radius_m": 24.0, "spin_rpm": 4.0, "floors": [{"length_m": 12.0, "width_m": 6.0}]}
    findings = at_cup({"along_m": 3.0, "diameter_m": 1.0}, pods, along_m=2.8).findings
    assert findings["caught"] == pytest.approx(1.0)
    assert findings["level_tilt_deg"] == pytest.approx(math.degrees(math.atan(3.0 / 23.9)))


def test_on_a_turntable_it_is_the_bucket_s_parabola():
    """Slope w^2 rho / g of z = w^2 rho^2 / 2g; move_m is spinward at the edge, and outward."""
    table = {"shape": "turntable", "radius_m": 1.0, "spin_rpm": 30.0}
    findings = at_cup(
        {"axial_m": 0.4, "diameter_m": 0.4, "depth_m": 0.1}, table, height_m=0.4, axial_m=0.35, flow_ml_s=15.0
    ).findings
    assert findings["caught"] > 0
    assert findings["level_tilt_deg"] == pytest.approx(math.degrees(math.atan(math.pi**2 * 0.4 / 9.80665)))


def test_without_spin_nothing_in_the_cup_has_a_level():
    traced = at_cup(
        {"along_m": 0.0, "height_m": 0.5, "diameter_m": 0.5}, {"radius_m": 56.0, "spin_rpm": 0.0}, elevation_deg=-90.0
    )
    assert traced.findings["caught"] == pytest.approx(1.0)
    assert (traced.findings["level_m"], traced.findings["level_tilt_deg"]) == (None, None)


def test_across_the_reference_line_the_move_is_the_short_way():
    half = math.pi * R
    findings = at_cup({"along_m": half + 0.1}, along_m=half - 0.1).findings
    assert findings["move_m"][0] == pytest.approx(SPINWARD_M - 0.2, abs=PLACE_M)


def test_what_never_comes_down_to_the_rim_has_no_move():
    findings = at_cup({"along_m": 0.2, "height_m": 1.2}).findings
    assert (findings["move_m"], findings["caught"], findings["first_caught_s"]) == (None, 0.0, None)


TABLE = {"height_m": 0.85, "along_m": SPINWARD_M + 0.2}  # a rim on a table 0.76 m high
FOOT_M = 0.76


def falls_to(height_m):
    """When a free parcel of the pour above comes down to a height, and how far spinward at its own radius, by brentq."""
    down_s = brentq(lambda t: R - abs(free(t, 1.1, SPEED)) - height_m, 0.05, 1.0, xtol=1e-14)
    return down_s, (R - height_m) * float(np.angle(free(down_s, 1.1, SPEED)))


def test_what_misses_a_cup_on_a_table_ends_on_the_table_and_is_told_there():
    traced = at_cup(TABLE)
    down_s, spinward_m = falls_to(FOOT_M)
    assert (traced.track.end, kinds(traced)[-1], traced.track.landing) == ("landed", "table", None)
    assert float(traced.track.ends_s) == pytest.approx(down_s, abs=CROSSES_S)
    down = traced.findings["comes_down"]
    assert (down["on"], down["way"]["spinward_m"]) == ("table", pytest.approx(spinward_m, abs=PLACE_M))
    assert traced.flat_gravity.landing["time_s"] == pytest.approx(math.sqrt(2 * (1.1 - FOOT_M) / (OMEGA**2 * R)))
    assert any(
        "comes down on the table" in sentence and "under plain gravity" in sentence for sentence in traced.outcome()
    )
    assert traced.findings["spilled_ml"] == pytest.approx(60.0)


@each_row("target", [{"along_m": 3.0}, {"height_m": 0.3, "along_m": SPINWARD_M + 0.2}])
def test_past_the_table_or_without_one_it_goes_on_to_the_deck(target):
    """A table is 0.68 m wide; a cup whose foot is nearer to the deck than 0.25 m stands on none."""
    traced = at_cup(TABLE | target)
    assert traced.track.landing.kind == "deck"
    assert traced.findings["comes_down"] is None


def test_each_drop_of_its_own_ends_on_the_table_too():
    traced = at_cup(TABLE, tilt=[{"time_s": 1.0, "elevation_deg": -20.0, "flow_ml_s": 20.0}], jitter=0.1)
    ends = traced.plan.stream.batch.paths.turning(
        steady(OMEGA), np.arange(len(traced.plan.stream.batch.ends_s)), traced.plan.stream.batch.ends_s
    )[0]
    assert R - np.hypot(ends[:, 0], ends[:, 1]) == pytest.approx(FOOT_M, abs=1e-9)


def test_what_is_caught_keeps_its_drift_its_causes_and_plain_gravity():
    """Poured straight down nothing but Coriolis moves it along the deck: all of the way is its part."""
    traced = at_cup({"height_m": 0.85, "along_m": -0.01}, elevation_deg=-90.0)
    down = traced.findings["comes_down"]
    way, parts = down["way"], down["drift_parts_m"]
    assert (traced.track.end, down["on"]) == ("caught", "target")
    assert sum(parts[name] for name in parts["order"]) == pytest.approx(way["spinward_m"], abs=1e-12)
    assert parts["centrifugal"] == pytest.approx(0.0, abs=1e-12)
    assert parts["coriolis"] == pytest.approx(
        way["spinward_m"], abs=1e-6
    )  # the opening is flat, the level beside it round
    fall_s = float(traced.flat_gravity.landing["time_s"])
    assert SPEED * fall_s + OMEGA**2 * R * fall_s**2 / 2 == pytest.approx(1.1 - 0.85)
    words = " ".join(traced.outcome())
    for part in ("all of it", "comes down at the rim of the cup", "under plain gravity", "Coriolis shifts that"):
        assert part in words


def test_even_where_all_is_caught_it_says_how_far_off_at_the_rim():
    beside = at_cup({"along_m": SPINWARD_M + 0.02}).outcome()[0]
    assert "all of it" in beside
    assert "comes down 20.0\u00a0mm antispinward from the middle of the cup" in beside.replace(
        "2.0\u00a0cm", "20.0\u00a0mm"
    )
    assert "in the middle of the cup" in at_cup({"along_m": SPINWARD_M}).outcome()[0]
