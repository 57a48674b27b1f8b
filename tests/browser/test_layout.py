"""Every control is within reach in every window, and what is wanted first is in sight: small windows and a page at 250 to 400 %, and
1280×720."""

import pytest

from .looking import offered, saved_scene, settle, type_figure, until

pytestmark = pytest.mark.one_page
# CSS px: 1280×720 at 400, 300, 267 and 250 %, and two small phones
SMALL = [(320, 180), (427, 240), (480, 270), (512, 288), (320, 568), (390, 664)]
# 1280×720 at 200 %, and where the layouts meet
BETWEEN = [(640, 360), (599, 739), (600, 339), (600, 340)]
WHOLE = {(320, 180), (320, 568), (600, 340)}  # one of each layout: here all places are gone through

# every control that is there: as it stands, or else scrolled to, is it in the window, and is it what a pointer meets in its middle?
UNREACHABLE = """() => {
  const seen = e => e.checkVisibility({ visibilityProperty: true }) && e.tabIndex >= 0 && !e.closest('.unseen') && e.offsetWidth !== 0;
  const lost = [];
  const where = e => {
    const { left, top, width, height } = e.getBoundingClientRect();
    const met = document.elementFromPoint(left + width / 2, top + height / 2);
    const mine = met && (e.contains(met) || met.contains(e) || (e.closest('.lanes') && met.closest('.lanes')));
    const inside = left >= -0.5 && left + width <= innerWidth + 0.5;
    return { atOnce: inside && e.contains(met), reached: inside && mine, met, left, top, width };
  };
  const root = document.querySelector('dialog[open]') ?? document;
  for (const e of root.querySelectorAll('button, input, select, a[href], [contenteditable], [role=slider], .stage-view')) {
    if (!seen(e) || (root === document && e.closest('dialog'))) continue;
    if (where(e).atOnce) continue;
    e.scrollIntoView({ block: 'center', inline: 'center', behavior: 'instant' });
    const { reached, met, left, top, width } = where(e);
    const name = e.getAttribute('aria-label') || e.textContent || e.name;
    if (!reached) lost.push([name, met?.className, left, top, width]);
  }
  return lost;
}"""
WIDE = "[document.documentElement.scrollWidth, innerWidth]"


def out_of_reach(page):
    """What cannot be scrolled into view, and by how much the page is wider than its window, which nobody scrolls to."""
    lost = page.evaluate(UNREACHABLE)
    width, room = page.evaluate(WIDE)
    return lost + [f"the page is {width} px wide"] * (width > room)


def test_at_every_small_size_every_control_can_be_scrolled_into_view(page):
    lost = {}
    for width, height in SMALL + BETWEEN:
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        for place in ("1", "2", "3", "4", "5", "6", "away") if (width, height) in WHOLE else ("2", "away"):
            strip = page.locator(f'#strip [data-place="{place}"]')
            if strip.is_visible():
                strip.click()
            elif place != "away":
                page.keyboard.press(place)
            until("its place", lambda place=place: place == "away" or page.locator(f"#body-{place}").is_visible())
            if place == "4" and (width, height) == SMALL[0]:
                page.locator("#feel-map .map").wait_for(state="attached")
            if place == "5":
                page.locator(".aim-plan .way").first.wait_for(state="attached")
            lost[width, height, place] = out_of_reach(page)
        for stage in ("aboard", "outside"):
            box = page.locator(f".stage-{stage}").bounding_box()
            assert box["height"] >= (100 if height >= 340 and width >= 600 else 150), (stage, box, width, height)
            assert box["width"] >= 180
    page.set_viewport_size({"width": SMALL[0][0], "height": SMALL[0][1]})
    for sheet in ("o", "?", "w"):  # scenes, keys, glossary
        page.keyboard.press(sheet)
        page.locator("dialog[open]").wait_for()
        lost[sheet] = out_of_reach(page)
        page.keyboard.press("Escape")
        until("it is shut", lambda: page.locator("dialog[open]").count() == 0)
    page.locator(".foot .link").nth(1).click()
    page.locator("dialog[open]").wait_for()
    lost["Take it away"] = out_of_reach(page)
    assert {where: what for where, what in lost.items() if what} == {}


def test_a_refusal_is_seen_in_a_small_window_wherever_one_is(page):
    for width, height in (SMALL[0], SMALL[4]):
        page.set_viewport_size({"width": width, "height": height})
        type_figure(page, "habitat.radius_m", "99999999")
        refusal = page.locator("#dials .refusal:visible")
        refusal.wait_for()
        inside(page, refusal)
        type_figure(page, "habitat.radius_m", "56")
        until("it is taken back", lambda: page.locator("#dials .refusal:visible").count() == 0)
    page.locator('#strip [data-place="2"]').click()
    page.get_by_role("button", name="More for Lob out").click()
    page.get_by_role("button", name="Remove", exact=True).first.click()  # told where no field is
    notice = page.locator("#notice .notice")
    notice.wait_for()
    page.evaluate("scrollTo(0, document.documentElement.scrollHeight)")
    inside(page, notice)


BOX = "e => { const r = e.getBoundingClientRect(); return [r.left, r.top, r.right, r.bottom].map(Math.round); }"


def test_at_1280_by_720_what_is_wanted_first_is_in_sight_and_large_enough(open_page):
    page = open_page(width=1280, height=720)
    stages = page.locator("#stages").evaluate(BOX)
    for dial in ("radius_m", "spin_rpm"):
        track = page.locator(f'[data-row="habitat.{dial}"] .track').bounding_box()
        assert track["width"] > 200
    for kind in ("Add a throw", "Add a roll", "Add a throw", "Add a jump", "Add a drop", "Add a walk"):
        offered(page, kind).click()
    inside(page, page.get_by_role("button", name="Add a motion"))
    until("eight lanes", lambda: page.locator(".lanes .lane.later").count() == 8)
    settle(page)
    _, _, _, foot = page.locator(".lanes").evaluate(BOX)
    drawn = [
        page.locator(".lanes :is(.lane.later, .lane-name)").nth(k).evaluate(BOX)
        for k in range(page.locator(".lanes :is(.lane.later, .lane-name)").count())
    ]
    assert max(bottom for _, _, _, bottom in drawn) <= foot
    left, right = page.locator(".lanes").evaluate(BOX)[::2]
    assert all(left <= x0 and x1 <= right + 1 for x0, _, x1, _ in drawn)
    throws = [motion["place"]["along_m"] for motion in saved_scene(page)["motions"] if motion["kind"] == "throw"]
    assert len(set(throws[1:])) == 3  # but for the two lobs of one hand
    assert page.locator("#stages").evaluate(BOX)[3] > 0.55 * stages[3]


def test_one_press_lays_a_drawing_over_the_stages_and_esc_takes_it_back(page):
    page.set_viewport_size({"width": 1280, "height": 720})
    for place, drawing in (("2", "#cards .card.chosen .drift"), ("3", "#plot .plot"), ("4", "#feel-map .map-box")):
        page.keyboard.press(place)
        page.locator(drawing).wait_for()
        wide = page.locator(drawing).bounding_box()["width"]
        page.keyboard.press("e")
        large = page.locator(f"#large {drawing.split()[-1]}")
        large.wait_for()
        until("it has come in", lambda: page.locator("#large").evaluate(BOX) == page.locator("#stages").evaluate(BOX))
        seen = {}

        def drawn(large=large, wide=wide, seen=seen):
            seen.update(
                large.bounding_box() or {"width": 0}
            )  # none while a plot drawn for the new width takes its place
            return seen["width"] > 1.5 * wide

        until("large", drawn)
        box = seen
        assert box["y"] + box["height"] <= page.locator("#timeline").bounding_box()["y"]
        page.keyboard.press("Escape")
        page.locator(drawing).wait_for()
        assert not page.locator("#large").is_visible()
    page.keyboard.press("e")
    page.keyboard.press("2")  # another place has another drawing
    until("it is back", lambda: not page.locator("#large").is_visible())


def inside(page, element):
    """All of it is in the window, and nothing lies over it."""
    box = element.bounding_box()
    size = page.viewport_size
    assert box["y"] >= 0, box
    assert box["y"] + box["height"] <= size["height"] + 0.5, box
    met = element.evaluate(
        "e => { const r = e.getBoundingClientRect(); return e.contains(document.elementFromPoint(r.left + r.width / 2, r.top + r.height / 2)); }"
    )
    assert met
