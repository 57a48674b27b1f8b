"""The stages at place 4: everybody stands beside a scale that is filled to what they feel at the feet."""

import json
import math
import re
from itertools import combinations

import numpy as np
import pytest

from rimfall.scene import examples
from tests.tables import each_row

from .looking import (
    link_to,
    open_place,
    open_scene,
    pixels,
    scrub,
    settle,
    spoken,
    still_picture,
    stop,
    type_figure,
    until,
)  # fmt: skip
from .test_everywhere import NO_WEBGL

pytestmark = pytest.mark.one_page
STAGES = ("aboard", "outside")
LAPS = "running-laps"
RUN_M_S = 3.5
STANDARD_GRAVITY_M_S2 = 9.80665  # the SI Brochure, 9th edition, section 2.3.4 and appendix 1
PIXEL_SHARE = 0.03  # of a post: three of the hundred or so pixels it is tall
MODULE = re.compile(r"/posts(-\w+)?\.js$")  # as it is, or as a file of the bundle


def laps(**habitat):
    scene = json.loads(examples.example(LAPS))
    scene["habitat"] |= habitat
    return scene


def weight_g(radius_m, spin_rpm, run_m_s):
    """Of who runs spinward at a speed over the deck: centripetal acceleration, v squared over R, of the whole speed."""
    whole_m_s = 2 * math.pi * spin_rpm / 60 * radius_m + run_m_s
    return whole_m_s**2 / radius_m / STANDARD_GRAVITY_M_S2


def weights(page, stage):
    """{name: weight} on the labels of a stage."""
    labels = page.locator(f".stage-{stage} .stage-label:visible").evaluate_all(
        "all => all.map(e => [...e.children].map(part => part.textContent))"
    )
    found = {name.strip(): re.fullmatch("([0-9.]+)(\u00a0g)?", told) for name, told in labels}
    return {name: float(told[1]) for name, told in found.items() if told}


def weighed(page, wanted, stages=STAGES):
    for stage in stages:
        until(f"{wanted} on the stage {stage}", lambda stage=stage: weights(page, stage) == wanted)


def show_labels(page, visibility):
    page.locator(".stage-labels").evaluate_all(
        "(all, visibility) => all.forEach(e => { e.style.visibility = visibility; })", visibility
    )


@pytest.fixture
def running(page):
    """Opens the running laps at a moment with place 4 open: `running(time_s, scene)`."""

    def opened(time_s, scene=None):
        open_scene(page, scene or laps())
        stop(page, time_s)
        open_place(page, 4)
        return page

    return opened


def test_who_runs_spinward_weighs_more_than_who_stands_and_who_runs_back_less(running):
    page = running(1.0)
    speeds = {"running spinward": RUN_M_S, "standing": 0, "running back": -RUN_M_S}
    for radius_m, spin_rpm in ((56, 3), (20, 6)):
        type_figure(page, "habitat.radius_m", str(radius_m))
        type_figure(page, "habitat.spin_rpm", str(spin_rpm))
        wanted = {name: round(weight_g(radius_m, spin_rpm, v), 2) for name, v in speeds.items()}
        weighed(page, wanted)
        for stage in STAGES:
            told = [f"{name} {value:.2f} g" for name, value in wanted.items()]
            until(f"{told} is spoken", lambda stage=stage, told=told: all(one in spoken(page, stage) for one in told))


@pytest.mark.painted
def test_the_scales_come_with_place_4_and_go_with_it(open_page):
    asked = []
    page = open_page(path=f"/{link_to(laps())}")
    page.on("request", lambda request: asked.append(request.url))
    stop(page, 1.0)
    before = {stage: still_picture(page, stage) for stage in STAGES}
    assert not any(MODULE.search(url) for url in asked)
    open_place(page, 4)
    until("three are weighed", lambda: len(weights(page, "aboard")) == 3)
    assert any(MODULE.search(url) for url in asked)
    assert all(still_picture(page, stage) != seen for stage, seen in before.items())
    open_place(page, 2)
    until("nobody is weighed", lambda: weights(page, "aboard") == {})
    for stage, seen in before.items():
        assert still_picture(page, stage) == seen
        assert "at the feet" not in spoken(page, stage)


@pytest.mark.painted
def test_the_white_of_a_post_is_the_weight_s_share_of_one_g(running):
    page = running(1.9)
    weighed(page, {"running spinward": 0.81, "running back": 0.36, "standing": 0.56})
    show_labels(page, "hidden")
    seen = pixels(still_picture(page, "aboard"))[..., :3]
    open_place(page, 2)
    bare = pixels(still_picture(page, "aboard"))[..., :3]
    show_labels(page, "")
    white = (seen.min(axis=2) > 225) & (bare.min(axis=2) < 200)
    slate = (seen[..., 2] - seen[..., 0] > 13) & (seen[..., 1] > 60) & (np.abs(seen - bare).max(axis=2) > 20)
    across = (white.sum(axis=0) > 20).nonzero()[0]  # and no bead that an arrow lies over at place 2
    posts = [part for part in np.split(across, (np.diff(across) > 20).nonzero()[0] + 1) if white[:, part].sum() > 40]
    assert len(posts) == 3  # from left to right: back, standing, spinward
    for post, run_m_s in zip(posts, (-RUN_M_S, 0, RUN_M_S), strict=True):
        filled, over = (mask[:, post].any(axis=1).nonzero()[0] for mask in (white, slate))
        share = (filled.max() - filled.min()) / (filled.max() - over.min())
        assert share == pytest.approx(weight_g(56, 3, run_m_s), abs=PIXEL_SHARE)


@pytest.mark.painted
def test_a_post_is_no_taller_than_three_g_whatever_is_felt_and_is_parted_where_it_does_not_measure(running):
    page = running(0, laps(radius_m=268, spin_rpm=6.88))
    wanted = {"running spinward": RUN_M_S, "standing": 0, "running back": -RUN_M_S}
    weighed(page, {name: round(weight_g(268, 6.88, v), 1) for name, v in wanted.items()}, stages=["aboard"])
    show_labels(page, "hidden")
    seen = pixels(still_picture(page, "aboard"))[..., :3]
    show_labels(page, "")
    white = seen.min(axis=2) > 225
    across = (white.sum(axis=0) > 60).nonzero()[0]
    posts = np.split(across, (np.diff(across) > 10).nonzero()[0] + 1)
    assert len(posts) == 3
    for post in (posts[0], posts[2]):  # nearest and not behind anybody
        rows = white[:, post[len(post) // 3]].nonzero()[0]
        foot, top = rows.max(), rows.min()
        assert 10 < top < foot < len(seen) - 10
        parted = np.diff(rows).argmax()  # ticks and the collar part it by a pixel or three
        assert rows[parted + 1] - rows[parted] > 5
        assert (foot - (rows[parted] + rows[parted + 1]) / 2) / (foot - top) == pytest.approx(2.6 / 3, abs=0.06)
        assert (foot - top) / 3 > 40  # px: so tall, at least, is who stands beside it


# [what, box] of all words and controls of the stages' corners, the desk and the head of the page, and the box that clips each
CORNERS = """() => {
  const words = '.stage-title b, .clock .time, .clock .pace, .dial .lab, .readout .says, .lanes svg text, .place.open .question, .foot h2';
  const controls = '.stage-tools button, .transport button, .dial .val, .lock, #strip [data-place], .foot .link, .bar button';
  const box = r => [r.left, r.top, r.right, r.bottom];
  const seen = e => e.checkVisibility({ visibilityProperty: true });
  const boxOf = e => {            // of the letters: about a sixth of a line's height is clear over and under them
    const range = document.createRange();
    range.selectNodeContents(e);
    const { left, top, right, bottom, height } = range.getBoundingClientRect();
    return [left, top + height / 6, right, bottom - height / 6];
  };
  const within = e => box(e.closest('.stage, .dial, .readouts, .timeline, .page').getBoundingClientRect());
  return [...document.querySelectorAll(words)].filter(seen).map(e => [e.textContent, boxOf(e), within(e)])
    .concat([...document.querySelectorAll(controls)].filter(seen).map(e => [e.title || e.textContent, box(e.getBoundingClientRect()), within(e)]));
}"""


ZOOMED = [(720, 450), (820, 600), (640, 512), (899, 559), (1366, 500)]


def test_on_a_page_zoomed_to_twice_its_size_nothing_covers_anything_and_nothing_is_cut(open_page):
    page = open_page(path=f"/{link_to(laps())}", width=ZOOMED[0][0], height=ZOOMED[0][1])
    stop(page, 0)
    for width, height in ZOOMED:
        page.set_viewport_size({"width": width, "height": height})
        for place in ("4", "away"):
            page.locator(f'#strip [data-place="{place}"]').click()
            settle(page)
            check_corners(page.evaluate(CORNERS), width, height)


def check_corners(drawn, width, height):
    told = [what for what, _, _ in drawn]
    assert {"Aboard", "Outside", "Radius", "Spin", "Hold gravity (H)", "Hold spin"} <= set(told)
    assert len(told) > 25
    for what, (left, top, right, bottom), (x0, y0, x1, y1) in drawn:
        assert max(x0, 0) - 0.5 <= left < right <= min(x1, width) + 0.5, (what, "is cut", width, height)
        assert max(y0, 0) - 0.5 <= top < bottom <= min(y1, height) + 0.5, (what, "is cut", width, height)
    for (one, a, _), (other, b, _) in combinations(drawn, 2):
        apart = a[2] <= b[0] + 1 or b[2] <= a[0] + 1 or a[3] <= b[1] + 1 or b[3] <= a[1] + 1
        assert apart, (one, other, width, height)


def test_a_lift_is_weighed_at_the_clock(page):
    open_scene(page, json.loads(examples.example("spoke-lift")))
    stop(page, 1.0)
    open_place(page, 4)
    answer = page.request.post("/api/trace", data=json.loads(examples.example("spoke-lift"))).json()
    rate = answer["grid"]["fps"][0] * answer["grid"]["samples_per_frame"]
    told = []
    for time_s in (1.0, 8.0):
        scrub(page, time_s)
        found = {
            one["name"]: one["findings"]["apparent_g"][round(time_s * rate) - one["first"]] for one in answer["motions"]
        }
        told.append({name: round(value, 2 if value >= 0.0995 else 3) for name, value in found.items()})
        weighed(page, told[-1], stages=["aboard"])
    assert told[0] != told[1]


def test_who_jumps_weighs_nothing_in_the_air(page):
    open_scene(page, json.loads(examples.example("two-jumps")))
    stop(page, 0.5)
    open_place(page, 4)
    weighed(page, {"spinward": 0.0, "antispinward": 0.0})


def test_who_stands_by_a_throw_is_weighed_as_the_api_says_and_follows_the_dial(page):
    stop(page, 0.5)
    open_place(page, 4)
    for radius_m in (56, 80):
        type_figure(page, "habitat.radius_m", str(radius_m))
        done = page.request.post("/api/feel", data={"habitat": {"radius_m": radius_m, "spin_rpm": 3}})
        wanted = round(done.json()["figures"]["feet_g"], 2)
        assert wanted == round(weight_g(radius_m, 3, 0), 2)
        weighed(page, {"standing": wanted}, stages=["aboard"])


@each_row(("width", "height"), [(1440, 900), (390, 844)])
def test_no_label_lies_on_another(running, width, height):
    page = running(0)
    page.set_viewport_size({"width": width, "height": height})
    settle(page)
    until("somebody is weighed", lambda: weights(page, "aboard"))
    for time_s in (0.0, 0.2, 0.6, 1.2, 2.0):
        scrub(page, time_s)
        settle(page)
        for stage in STAGES:
            boxes = page.locator(f".stage-{stage} .stage-label:visible").evaluate_all(
                "all => all.map(e => { const r = e.getBoundingClientRect(); return [r.left, r.top, r.right, r.bottom]; })"
            )
            for a, b in combinations(boxes, 2):
                assert a[2] <= b[0] or b[2] <= a[0] or a[3] <= b[1] or b[3] <= a[1], (time_s, stage, a, b)
        assert weights(page, "aboard")


def test_with_reduced_motion_all_are_weighed_too(running, page):
    page.emulate_media(reduced_motion="reduce")
    running(1.0)
    until("three are weighed", lambda: len(weights(page, "aboard")) == 3)


def test_without_webgl_the_plates_draw_and_tell_it(open_page):
    page = open_page(f"/{link_to(laps())}", before=NO_WEBGL, ready="#stages svg")
    assert page.locator(".weight-post").count() == 0
    open_place(page, 4)
    stop(page, 1.0)
    for stage in STAGES:
        until("three posts", lambda stage=stage: page.locator(f".stage-{stage} .weight-post").count() == 3)
        until("their words", lambda stage=stage: "running back 0.36 g, standing 0.56 g" in spoken(page, stage))
        felt = page.locator(f".stage-{stage} .weight-felt").evaluate_all("all => all.map(e => e.getTotalLength())")
        assert felt[0] / felt[1] == pytest.approx(weight_g(56, 3, RUN_M_S) / weight_g(56, 3, -RUN_M_S), rel=0.02)
