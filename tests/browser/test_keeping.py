"""What is kept and taken away: the browser's copy, the link, files; and what is said when something goes wrong."""

import csv
import io
import json

import pytest

from rimfall.scene.examples import SAY, example
from tests.browsing import DRAWN

from .looking import (
    drawn,
    kept,
    number_box,
    saved_scene,
    settle,
    shown_is,
    still_picture,
    stop,
    type_figure,
    until,
)

pytestmark = pytest.mark.one_page


def test_the_browser_keeps_the_scene_over_a_reload(page):
    type_figure(page, "habitat.radius_m", "80")
    shown_is(page, "Radius", 80)
    until("the scene is kept", lambda: (saved_scene(page) or {"habitat": {}})["habitat"].get("radius_m") == 80)
    page.get_by_role("button", name="Hide Lob back on the stages").click()
    until("the address has that", lambda: "&hidden=2" in page.url, page=page)
    page.goto("/")
    page.locator(DRAWN).wait_for()
    shown_is(page, "Radius", 80)
    until("it is hidden still", page.get_by_role("button", name="Show Lob back on the stages").is_visible)


def test_a_broken_copy_in_the_browser_does_not_stop_the_page(page):
    page.evaluate("localStorage.setItem('rimfall.scene', '{broken'); localStorage.setItem('rimfall.view', '[1')")
    page.goto("about:blank")
    page.goto("/")
    page.locator(DRAWN).wait_for()


def test_a_link_carries_the_scene_to_another_browser(page, open_page):
    type_figure(page, "habitat.spin_rpm", "4.5")
    page.locator("#title").click()
    page.keyboard.press("Control+A")
    page.keyboard.type("Écluse & läuten 3 → 4")
    page.keyboard.press("Enter")
    page.get_by_role("button", name="Hide Lob back on the stages").click()
    page.keyboard.press(">")
    page.get_by_role("button", name="Share").click()
    link = until("a link", lambda: page.get_by_label("Link to this scene").input_value())
    assert "#s=" in link
    other = open_page(path=link[link.index("/", 8) :])
    shown_is(other, "Spin", 4.5)
    until("what was hidden is", other.get_by_role("button", name="Show Lob back on the stages").is_visible)
    assert other.locator(".clock .pace").inner_text() == "at ½ speed"
    until("the title came along", lambda: other.locator("#title").inner_text() == "Écluse & läuten 3 → 4")
    until("and the motions", lambda: other.locator("#cards .card").count() == 2)
    page.keyboard.press("Escape")
    page.keyboard.press("<")  # as fast as before


def test_a_broken_link_says_so_and_the_page_stands(open_page):
    page = open_page(path="/#s=nonsense")
    assert drawn(page, "Radius") == 56


def test_the_scene_is_saved_and_opened_again(page, tmp_path):
    type_figure(page, "habitat.radius_m", "120")
    shown_is(page, "Radius", 120)
    page.locator("#foot [data-take=scene]").click()
    with page.expect_download() as got:
        page.get_by_role("button", name="Save").click()
    file = tmp_path / got.value.suggested_filename
    got.value.save_as(file)
    assert json.loads(file.read_text(encoding="utf-8"))["habitat"]["radius_m"] == 120
    page.keyboard.press("Escape")
    type_figure(page, "habitat.radius_m", "30")
    shown_is(page, "Radius", 30)
    page.get_by_role("button", name="Scenes").click()
    page.get_by_label("Scene file").set_input_files(file)
    shown_is(page, "Radius", 120)


def test_a_file_that_the_page_does_not_read_is_opened_by_the_server(page, tmp_path):
    scene = page.request.get("/api/examples/same-lob").json()
    scene["habitat"]["radius_m"] = 90
    file = tmp_path / "lobs.usdz"
    file.write_bytes(page.request.post("/api/export/usdz", data={"scene": scene}).body())
    page.get_by_role("button", name="Scenes").click()
    page.get_by_label("Scene file").set_input_files(file)
    shown_is(page, "Radius", 90)


def test_a_file_that_is_no_scene_changes_nothing(page, tmp_path):
    file = tmp_path / "notes.json"
    file.write_text('{"radius": 12,\n "spin": 4x}', encoding="utf-8")
    page.get_by_role("button", name="Scenes").click()
    page.get_by_label("Scene file").set_input_files(file)
    until("it says so", lambda: "Nothing was changed" in page.locator("dialog[open]").inner_text())
    assert drawn(page, "Radius") == 56


def test_paths_are_taken_away_as_csv_with_their_notes(page):
    page.locator("#foot [data-take=paths]").click()
    got = []
    page.on("download", lambda one: got.append(one))
    page.get_by_role("button", name="Save").click()
    until("both files", lambda: len(got) == 2, page=page)
    files = {one.suggested_filename: one.path().read_text(encoding="utf-8") for one in got}
    table = next(text for name, text in files.items() if name.endswith(".csv"))
    notes = json.loads(next(text for name, text in files.items() if name.endswith(".json")))
    rows = list(csv.DictReader(io.StringIO(table)))
    assert rows[0]["frame"] == "1001"
    assert {row["id"] for row in rows} == {"0", "1"}
    assert notes["scene"]["title"] == "The same lob, both ways"


@pytest.mark.painted
def test_every_example_opens_without_trouble(page):
    """From the list of scenes the last, and from there by the key for the next one round to it again."""
    page.set_viewport_size({"width": 640, "height": 480})  # painted, and cheaply
    page.keyboard.press("o")
    items = page.locator("dialog[open] [data-example]")
    items.first.wait_for()
    titles = items.locator("b").all_inner_texts()
    items.last.click()
    opened = []
    for title in [titles[-1], *titles[:-1]]:
        until(f"{title} on the page", lambda title=title: page.locator("#title").inner_text() == title)
        opened.append(title)
        if page.locator("#cards .card").count():
            until("its words", lambda: page.locator("#cards .said").first.text_content() != "")
        settle(page)
        page.keyboard.press("j")
    assert sorted(opened) == sorted(json.loads(example(name))["title"] for name in SAY)


@pytest.mark.painted
def test_a_refusal_stands_at_its_field_and_the_picture_stays(page, troubles):
    page.set_viewport_size({"width": 1024, "height": 640})
    stop(page, 0.5)
    before = still_picture(page, "aboard")  # the refusal hangs over a corner of the other
    type_figure(page, "habitat.spin_rpm", "4000")
    row = page.locator('#dials [data-row="habitat.spin_rpm"]')
    until("the refusal at the dial", lambda: "4000" in row.inner_text())
    assert "0 to 200" in row.inner_text()
    until("and for a screen reader", lambda: "4000" in page.locator("#alert").inner_text())
    assert still_picture(page, "aboard") == before
    assert drawn(page, "Spin") == 3


def test_a_document_the_server_refuses_says_which_field(page, troubles):
    troubles.expect("422")
    page.locator("#cards .card").nth(0).locator("p .fig").first.click()
    page.keyboard.press("Escape")
    type_figure(page, "motions.0.place.height_m", "70")
    until("the refusal", lambda: "outside every surface" in page.locator("#page").inner_text())
    untold = page.locator("#cards .card .said").first
    assert untold.inner_text() == "", "the outcome of another height is not told"


def test_height_against_distance_is_plotted_and_tabled(page):
    page.keyboard.press("3")
    page.locator("#place-3 svg.plot, #place-3 .plot svg").first.wait_for()
    page.keyboard.press("t")
    until("its table", lambda: page.locator("#place-3 table:visible").count() >= 1)


def test_the_fields_are_those_of_the_server(page):
    fields = page.evaluate("fetch('/api/fields').then(r => r.json())")["fields"]
    name = number_box(page, "habitat.radius_m").get_attribute("aria-label")
    assert name == fields["habitat.radius_m"]["label"]


def test_a_dial_that_follows_after_a_slow_answer_is_kept_too(page):
    slow, waiting = [True], []
    page.route("**/api/trace*", lambda route: waiting.append(route) if slow else route.continue_())
    page.locator("h1").click()
    page.keyboard.press("Escape")
    page.keyboard.press("h")
    type_figure(page, "habitat.radius_m", "224")
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 224)
    slow.clear()
    for route in waiting:
        route.continue_()
    # gravity goes as spin squared times radius: four times the radius is half the spin
    kept(page, lambda scene: abs(scene["habitat"]["spin_rpm"] - 1.5) < 1e-6)
    page.unroute_all()
    page.keyboard.press("Escape")
    page.keyboard.press("h")
