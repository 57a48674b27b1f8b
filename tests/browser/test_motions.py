"""What rolls, stands, spins and bounces, set on the page: its sentence, its words, its marks and its plot."""

import pytest

from tests.facts import tells

from .looking import answer_of, fold_out, kept, offered, open_place, said, type_figure, until
from .test_shapes import agrees

pytestmark = pytest.mark.one_page


def add(page, button):
    open_place(page, 2)
    count = page.locator("#cards .card").count()
    offered(page, button).click()
    until("its card", lambda: page.locator("#cards .card").count() == count + 1)
    return page.locator("#cards .card").nth(count)


def given(card):
    return card.locator(".given").inner_text().replace("\u00a0", " ").strip()


def test_a_ball_is_put_on_a_ramp_and_set_sliding(page):
    card = add(page, "Add a roll")
    card.get_by_role("button", name="sliding").click()
    kept(page, lambda scene: scene["motions"][-1].get("start") == "sliding")
    assert given(card).startswith("Set sliding at")
    fold_out(card, "Ramp: none")
    card.get_by_role("button", name="On a ramp").click()
    type_figure(page, "motions.2.ramp.slope_deg", "12")
    kept(page, lambda scene: (scene["motions"][-1].get("ramp") or {}).get("slope_deg") == 12)
    assert tells(given(card), "ramp … 12.0° … spinward")
    assert answer_of(page)["motions"][2]["ramp"] is not None
    agrees(page)
    card.get_by_role("button", name="On a ramp").click()
    kept(page, lambda scene: scene["motions"][-1].get("ramp") is None)


def test_a_throw_spins_and_bounces(page):
    card = page.locator("#cards .card").first
    fold_out(card, "Spin and bounce")
    type_figure(page, "motions.0.bounces", "5")
    type_figure(page, "motions.0.ball_spin_rpm", "600")
    kept(page, lambda scene: scene["motions"][0].get("ball_spin_axis") == [0, 0, -1])
    assert tells(given(card), "600 rpm … forward roll")
    assert tells(given(card), "bounce five times")
    answer = agrees(page)
    contacts = [event for event in answer["motions"][0]["events"] if event["kind"] == "deck"]
    assert len(contacts) > 1
    until("a mark says a bounce", lambda: page.locator('.mark[aria-label*="bounces off the deck"]').count() >= 1)
    card.get_by_label("Spins", exact=True).select_option("upright")
    kept(page, lambda scene: scene["motions"][0]["ball_spin_axis"] == [0, 1, 0])
    card.get_by_label("Spins", exact=True).select_option("own")
    card.get_by_label("Axis of its spin: spinward").fill("1")
    page.keyboard.press("Enter")
    kept(page, lambda scene: scene["motions"][0]["ball_spin_axis"] == [1, 1, 0])
    agrees(page)


def test_two_hundred_bounces_leave_the_timeline_usable(page):
    card = page.locator("#cards .card").first
    fold_out(card, "Spin and bounce")
    type_figure(page, "motions.0.bounces", "200")
    fold_out(card, "Body: handball")
    card.get_by_role("button", name="Make these figures your own").click()
    type_figure(page, "motions.0.body.restitution", "0.99")
    kept(page, lambda scene: isinstance(body := scene["motions"][0]["body"], dict) and body["restitution"] == 0.99)
    answer = agrees(page)
    bounces = sum(event["kind"] == "deck" for event in answer["motions"][0]["events"])
    assert bounces > 50
    width = page.locator(".lanes").bounding_box()["width"]
    assert 1 < page.locator(".mark").count() < 2 * (width / 24 + 2)
    page.keyboard.press("3")
    page.locator("#plot svg").wait_for()


def test_a_body_of_ones_own_is_solid_or_hollow(page):
    card = add(page, "Add a roll")
    fold_out(card, "Body: handball")
    card.get_by_role("button", name="Make these figures your own").click()
    card.get_by_role("button", name="solid", exact=True).click()
    type_figure(page, "motions.2.body.rolling_resistance", "0.05")
    wanted = {"shell": "solid", "rolling_resistance": 0.05}
    kept(page, lambda scene: isinstance(body := scene["motions"][2]["body"], dict) and wanted.items() <= body.items())
    agrees(page)


def test_the_same_again_antispinward(page):
    page.get_by_role("button", name="More for Lob out").click()
    page.locator(".menu:popover-open").get_by_text("Duplicate, antispinward").click()
    scene = kept(page, lambda scene: len(scene["motions"]) == 3)
    assert scene["motions"][1]["name"] == "Lob out antispinward"
    assert scene["motions"][1]["heading_deg"] == 180
    until("it lands as the lob back does", lambda: said(page, 1) == said(page, 2) != "")


def test_undo_takes_spin_and_axis_back_together(page):
    fold_out(page.locator("#cards .card").first, "Spin and bounce")
    type_figure(page, "motions.0.ball_spin_rpm", "600")
    kept(page, lambda scene: scene["motions"][0].get("ball_spin_rpm") == 600)
    page.locator("h1").click()
    page.get_by_role("button", name="Undo").click()
    kept(page, lambda scene: "ball_spin_axis" not in scene["motions"][0])


def test_the_new_fields_are_in_the_link(page, open_page):
    add(page, "Add a roll")
    page.locator("#cards .card").first.locator(".unfold").click()
    fold_out(page.locator("#cards .card").first, "Spin and bounce")
    type_figure(page, "motions.0.bounces", "4")
    kept(page, lambda scene: scene["motions"][0].get("bounces") == 4)
    page.get_by_role("button", name="Share").click()
    link = until("a link", lambda: page.get_by_label("Link to this scene").input_value())
    other = open_page(path=link[link.index("/", 8) :])
    until("three motions there", lambda: other.locator("#cards .card").count() == 3)
    assert "bounce" in given(other.locator("#cards .card").first)


def test_what_stands_in_words_is_typed_in_words_and_gravity_where_it_is_read(page):
    card = page.locator("#cards .card").first

    def type_in(number, typed):
        card.locator(".given .fig").nth(number).click()
        page.keyboard.press("Control+a")
        page.keyboard.type(typed)
        page.keyboard.press("Enter")

    type_in(2, "axial")
    kept(page, lambda scene: scene["motions"][0]["heading_deg"] == 90)
    type_in(1, "90")
    kept(page, lambda scene: scene["motions"][0]["elevation_deg"] == 90)
    assert given(card) == "Thrown at 6.0 m/s, straight up, facing along the axis."
    type_in(2, "sideways")
    until("what it may be is said", lambda: card.get_by_text("Toward was sideways; it must be").is_visible())

    page.locator(".readout.gravity button.says").click()
    page.keyboard.press("Tab")  # left as it was offered, it changes nothing
    assert answer_of(page)["scene"]["habitat"]["spin_rpm"] == 3
    page.locator(".readout.gravity button.says").click()
    page.keyboard.type("0.8 g")
    page.keyboard.press("Enter")
    # sqrt(0.8 x 9.80665 / 56) rad/s
    kept(page, lambda scene: abs(scene["habitat"]["spin_rpm"] - 3.5743) < 0.001)


def test_the_seat_of_ones_own_camera_leads_to_where_it_is_set_up(page):
    page.locator(".stage-seat").first.click()
    page.get_by_role("button", name="My camera").first.click()
    begin = page.get_by_role("button", name="Set up a camera")
    until("it is in hand and in sight", lambda: begin.evaluate("it => it === document.activeElement"))
    until(
        "it has settled in sight",
        lambda: begin.evaluate("it => it.checkVisibility() && it.getBoundingClientRect().bottom < innerHeight"),
    )
    assert not page.locator(".stage-popover").first.is_visible()
