"""People and craft on the page: each kind is added, changes stage, words and read-outs, and its marks are the API's."""

import pytest

from tests.facts import tells

from .looking import changed, kept, open_place, pictures, said, scrub, spoken, stop, three_figures, type_figure, until
from .test_motions import add, given
from .test_shapes import agrees

pytestmark = pytest.mark.one_page
SMALL = {"width": 1024, "height": 640}  # large enough to be drawn in, and small to paint in software
KINDS = {
    "jump": ("Add a jump", "Jumps … 2.7 m/s … straight up"),
    "walk": ("Add a walk", "Walks … 1.4 m/s … spinward … 5.0 s"),
    "lift": ("Add a lift ride", "lift … 0.0 m … 20 m … 2.00 m/s"),
    "let_go": ("Add someone who lets go of the rim", "1.00 m under the rim … lets go"),
    "approach": ("Add an approach", "Coasts … rim … 5.0 m/s"),
}
OTHERS = {
    "hang": ("Add a hanging thing", "Hangs on a line"),
    "roll": ("Add a roll", "Rolled at"),
    "stand": ("Add a thing on a table", "Stands … table"),
}
OPENING = 2  # motions of the opening scene: the new one is the third


def kept_new(page, button, kind):
    """Adds a motion and waits until the browser keeps it -> its card."""
    card = add(page, button)
    kept(page, lambda scene: scene["motions"][-1]["kind"] == kind)
    return card


def read_out(page, name):
    """The figure of a finding at the clock, without its unit."""
    row = page.locator(f'#at-the-clock tr[data-found="{name}"] td').first
    return row.inner_text().replace("\u00a0", " ").split()[0]


def at_the_clock(answer, name, time_s, motion=OPENING):
    """The API's value of a finding at a time that is a sample's, as the page shows it."""
    told, rate = answer["motions"][motion], answer["grid"]["fps"][0] * answer["grid"]["samples_per_frame"]
    return three_figures(told["findings"][name][round(time_s * rate) - told["first"]])


@pytest.mark.glanced
def test_every_kind_is_added(page):
    page.set_viewport_size(SMALL)
    stop(page, 0.5)
    for kind, (button, sentence) in (KINDS | OTHERS).items():
        before = pictures(page)
        card = kept_new(page, button, kind)
        assert tells(given(card), sentence)
        agrees(page)  # and so it is drawn: one look is enough
        changed(page, before, f"{kind} is on both stages")
        assert said(page, OPENING) != ""
        assert page.evaluate("document.documentElement.scrollWidth") <= SMALL["width"]
        page.keyboard.press("Control+z")
        until("it is gone", lambda: page.locator("#cards .card").count() == OPENING)


def test_a_kind_is_added_by_keyboard(page):
    open_place(page, 2)
    page.get_by_role("button", name="Add a motion").focus()
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Add a walk").focus()
    page.keyboard.press("Enter")
    kept(page, lambda scene: scene["motions"][-1]["kind"] == "walk")
    card = page.locator("#cards .card").nth(OPENING)
    figure = card.locator(".given .fig").first
    figure.focus()
    page.keyboard.press("ArrowUp")
    kept(page, lambda scene: scene["motions"][-1]["speed_m_s"] > 1.4)
    agrees(page)


def test_a_runner_is_lighter_antispinward_and_the_read_outs_say_so(page):
    card = add(page, "Add a walk")
    type_figure(page, f"motions.{OPENING}.speed_m_s", "4")
    type_figure(page, f"motions.{OPENING}.heading_deg", "180")
    kept(page, lambda scene: scene["motions"][-1].get("heading_deg") == 180)
    until("a runner", lambda: given(card).startswith("Runs at 4.0 m/s, antispinward"))
    answer = agrees(page)
    found = answer["motions"][OPENING]["findings"]
    assert found["feet_g"][0] < found["standing_g"]
    stop(page, 1.0)
    open_place(page, 3)
    for name in ("feet_g", "head_g"):
        until(name, lambda name=name: read_out(page, name) == at_the_clock(answer, name, 1.0))
    until("standing", lambda: read_out(page, "standing_g") == three_figures(found["standing_g"]))


def test_a_lift_presses_sideways_and_its_read_out_follows_the_clock(page):
    kept_new(page, "Add a lift ride", "lift")
    type_figure(page, f"motions.{OPENING}.acceleration_m_s2", "0.5")
    kept(page, lambda scene: scene["motions"][-1].get("acceleration_m_s2") == 0.5)
    answer = agrees(page)
    open_place(page, 3)
    stop(page)
    shown = []
    for time_s in (1.0, 3.0):
        scrub(page, time_s)
        wanted = at_the_clock(answer, "sideways_m_s2", time_s)
        until(f"the push at {time_s}", lambda wanted=wanted: read_out(page, "sideways_m_s2") == wanted)
        shown.append(wanted)
    assert shown[0] != shown[1]
    aboard = page.locator(".stage-aboard .stage-label", has_text="pressed spinward")  # it goes up: 2 omega v, spinward
    until("its figure on the stage", lambda: aboard.count() > 0)
    push = page.locator('#at-the-clock tr[data-found="sideways_m_s2"] td')
    assert push.inner_text().endswith("m/s² spinward")
    mark = page.locator('.mark[aria-label*="Lift: arrives"]')
    assert mark.count() == 1


def test_a_lift_without_speeding_up_has_none_written(page):
    kept_new(page, "Add a lift ride", "lift")
    box = page.locator(f'[data-row="motions.{OPENING}.acceleration_m_s2"] .val input')
    assert box.input_value() == "none"
    box.fill("1")
    box.press("Enter")
    kept(page, lambda scene: scene["motions"][-1]["acceleration_m_s2"] == 1)
    box.fill("none")
    box.press("Enter")
    kept(page, lambda scene: scene["motions"][-1]["acceleration_m_s2"] is None)


def test_who_lets_go_has_a_line_and_a_mark_where_the_rim_sweeps_by(page):
    kept_new(page, "Add someone who lets go of the rim", "let_go")
    answer = agrees(page)
    passes = answer["motions"][OPENING]["findings"]["sweeps_by"]
    assert passes
    until("its mark", lambda: page.locator('.mark[aria-label*="sweeps by"]').count() >= 1)
    stop(page, 3.0)
    open_place(page, 3)
    until("the line", lambda: read_out(page, "line_m") == at_the_clock(answer, "line_m", 3.0))


def test_a_craft_reaches_its_dock(page):
    kept_new(page, "Add an approach", "approach")
    answer = agrees(page)
    dock = next(event for event in answer["motions"][OPENING]["events"] if event["kind"] == "dock")
    mark = page.locator('.mark[aria-label*="reaches the dock"]').first
    mark.wait_for()
    assert f"{dock['time_s']:.2f} s" in mark.get_attribute("aria-label")
    mark.click()
    until("the stage says it has arrived", lambda: ", arrived" in spoken(page, "aboard"))
    card = page.locator("#cards .card").nth(OPENING)
    card.get_by_role("button", name="hub", exact=True).click()
    kept(page, lambda scene: scene["motions"][-1].get("dock") == "hub")
    until("the hub in its sentence", lambda: given(card).startswith("Coasts in to the hub"))


def test_the_same_jump_antispinward(page):
    add(page, "Add a jump")
    page.get_by_role("button", name="More for Jump").click()
    page.locator(".menu:popover-open").get_by_text("Duplicate, antispinward").click()
    scene = kept(page, lambda scene: len(scene["motions"]) == OPENING + 2)
    assert scene["motions"][-1]["heading_deg"] == 180


def test_the_link_carries_what_a_kind_has(page, open_page):
    add(page, "Add a walk")
    type_figure(page, f"motions.{OPENING}.speed_m_s", "0")
    kept(page, lambda scene: scene["motions"][-1]["speed_m_s"] == 0)
    page.get_by_role("button", name="Share").click()
    link = until("a link", lambda: page.get_by_label("Link to this scene").input_value())
    other = open_page(path=link[link.index("/", 8) :])
    until("three motions there", lambda: other.locator("#cards .card").count() == OPENING + 1)
    assert given(other.locator("#cards .card").nth(OPENING)).startswith("Walks at 0.0 m/s")


def test_every_kind_is_added_on_a_phone_and_the_page_to_print_tells_it(page, open_page):
    page.set_viewport_size({"width": 390, "height": 844})
    for number, (kind, (button, sentence)) in enumerate(KINDS.items(), start=OPENING):
        card = kept_new(page, button, kind)
        assert tells(given(card), sentence)
        until("its words", lambda number=number: said(page, number) != "")
        assert page.evaluate("document.documentElement.scrollWidth") <= 390
    page.set_viewport_size(SMALL)
    page.get_by_role("button", name="Share").click()
    link = until("a link", lambda: page.get_by_label("Link to this scene").input_value())
    brief = open_page(path=f"/brief{link[link.index('#') :]}", ready="body[data-ready]")
    for count, (_, sentence) in enumerate(KINDS.values(), start=OPENING):
        told = brief.locator("#moves .move").nth(count).inner_text().replace("\u00a0", " ")
        assert tells(told, sentence.split(" … ")[0])
    assert brief.locator("#moves .found").count() >= len(KINDS)
