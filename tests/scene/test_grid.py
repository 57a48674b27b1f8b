"""The grid: sample k is at k/(fps samples_per_frame) s, exactly; first and count say which samples a motion has."""

from fractions import Fraction

import pytest

from rimfall.scene.document import frame_rate
from tests.scene.documents import answer, drop, pour, scene, the_refusal, throw
from tests.tables import each_row

# fps as written, and what it means; film rates: SMPTE ST 12-1
RATES = [
    (23.976, Fraction(24000, 1001)), (24, Fraction(24)), (25, Fraction(25)), (29.97, Fraction(30000, 1001)), (30, Fraction(30)),
    (48, Fraction(48)), (50, Fraction(50)), (59.94, Fraction(60000, 1001)), (60, Fraction(60)), (12.5, Fraction(25, 2)),
    (1, Fraction(1)), (240, Fraction(240)), ("24000/1001", Fraction(24000, 1001)), ("25/2", Fraction(25, 2)), ("48/2", Fraction(24)),
]  # fmt: skip
each_rate = each_row(("fps", "rate"), RATES)


@each_rate
def test_a_frame_rate_is_two_integers(fps, rate):
    assert frame_rate(fps) == rate
    assert answer(scene(drop(), sampling={"fps": fps}))["grid"]["fps"] == [rate.numerator, rate.denominator]


@each_rate
def test_there_are_least_whole_samples_a_frame_for_48_a_second(fps, rate):
    per = answer(scene(drop(), sampling={"fps": fps}))["grid"]["samples_per_frame"]
    assert per * rate >= 48
    assert (per - 1) * rate < 48


@each_rate
def test_every_sample_is_at_its_number_over_the_rate(fps, rate):
    whole = answer(scene(throw(start_s=3.0), sampling={"fps": fps}))
    step = 1 / (rate * whole["grid"]["samples_per_frame"])
    for k, time_s in enumerate(whole["time_s"]):
        assert time_s == pytest.approx(float(k * step), rel=3e-16)


@each_rate
def test_a_motion_has_the_samples_from_release_to_end(fps, rate):
    whole = answer(scene(throw(), throw(start_s=2.34, name="later"), sampling={"fps": fps}))
    sampled = rate * whole["grid"]["samples_per_frame"]
    for motion, start_s in zip(whole["motions"], (0.0, 2.34), strict=True):
        first, last = motion["first"], motion["first"] + motion["count"] - 1
        assert (first - 1) / sampled < start_s <= first / sampled
        assert last / sampled <= motion["landing"]["time_s"] < (last + 1) / sampled
    end_s = max(max(m["landing"]["time_s"], m["companion"]["landing"]["time_s"]) for m in whole["motions"])
    assert whole["time_s"][-2] < end_s <= whole["time_s"][-1], "to the first sample at or after the last end"


def test_a_release_on_the_grid_is_a_sample():
    for start_s in (0.0, 0.5, 1 / 48, 49 / 48):
        (motion,) = answer(scene(throw(start_s=start_s)))["motions"]
        assert motion["first"] == round(start_s * 48)
        assert motion["height_m"][0] == pytest.approx(1.5, abs=1e-9)


@each_row(
    "fps", [0, 0.99, 240.5, 241, -24, "0/1", "1/0", "24", "24/", "/1", "1/2", "-24/1", "24/-1", "24.0/1", " 24/1", "241/1",
            "٢٤/١", "1e2/1", 5e-324, 1e308, 10**30, "12345678/100000", True, None, "", [24], {"n": 24}],
)  # fmt: skip
def test_what_is_no_frame_rate(fps):
    refusal = the_refusal(scene(sampling={"fps": fps}))
    assert (refusal.field, refusal.may_be) == ("sampling.fps", '1 to 240, or "n/d"')


def test_a_pour_stays_on_the_grid_until_its_last_drop_has_landed():
    whole = answer(scene(pour()))
    (motion,) = whole["motions"]
    last_s = motion["stream"]["last_leaves_s"] + motion["landing"]["time_s"] - motion["stream"]["first_leaves_s"]
    assert whole["time_s"][-2] < last_s <= whole["time_s"][-1]
