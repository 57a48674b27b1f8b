"""The talk maker: a talk from nothing by the keyboard, kept, saved, opened again, and given."""

import json

from rimfall.exports.recovery import document_in
from rimfall.talk.reading import read
from tests.browsing import DRAWN

from .looking import plain, settle, shown_is, stop, type_figure, until
from .test_accessible import found
from .test_layout import out_of_reach

SIZES = [(1440, 900), (1280, 720), (1024, 768), (390, 844), (320, 568)]


def open_maker(page):
    page.locator("#bar").get_by_role("button", name="Talk", exact=True).evaluate("button => button.click()")
    page.get_by_role("heading", name="Talk", exact=True).wait_for()


def lines(page):
    return page.locator(".talk-step b").all_inner_texts()


def told(page, words):
    return until(f"it is told: {words}", lambda: words in plain(page.locator(".talk-told").inner_text()))


def press(page, name):
    """As somebody who has no pointer does."""
    button = page.locator("#talk").get_by_role("button", name=name, exact=True)
    button.focus()
    page.keyboard.press("Enter")


def write(page, label, words):
    page.get_by_label(label, exact=True).focus()
    page.keyboard.press("Control+A")
    page.keyboard.type(words)


def a_file(name, document):
    return {"name": name, "mimeType": "application/json", "buffer": json.dumps(document).encode()}


def test_a_talk_is_made_kept_opened_and_given_by_the_keyboard(page, tmp_path):
    """Each step of it where the one before left off; nothing is pressed by a pointer but the dial's figure."""
    stop(page, 0)
    page.locator("#bar").get_by_role("button", name="Talk", exact=True).focus()
    page.keyboard.press("Enter")
    page.get_by_role("heading", name="Talk", exact=True).wait_for()
    assert page.locator(".talk .kept-none").first.is_visible()

    write(page, "Title of the talk", "Two lobs")
    press(page, "Keep this as a step")
    told(page, "Kept as step 1 of 1.")
    write(page, "Line on the screen", "Two throws from one hand.")
    write(page, "Notes for the speaker", "Hold up the ball.")
    type_figure(page, "habitat.radius_m", "112")
    shown_is(page, "Radius", 112)
    press(page, "Keep this as a step")
    told(page, "Kept as step 2 of 2.")
    write(page, "Line on the screen", "And where does this one land?")
    page.get_by_label("The room is asked").focus()
    page.keyboard.press("ArrowDown")
    press(page, "1/2 , half speed")
    facts = plain(page.locator(".talk-step .small").nth(1).inner_text())
    assert facts == "radius 112 m · ½ speed · asks where Lob out comes down"

    page.locator(".talk-step").nth(1).focus()
    page.keyboard.press("Alt+ArrowUp")
    told(page, "Step 2 is now step 1 of 2.")
    assert lines(page) == ["And where does this one land?", "Two throws from one hand."]
    assert page.evaluate("document.activeElement.textContent").startswith("1And where")
    page.keyboard.press("Control+z")
    assert lines(page) == ["Two throws from one hand.", "And where does this one land?"]
    press(page, "Delete")
    told(page, "was deleted.")
    assert len(lines(page)) == 1
    page.locator(".talk-told").get_by_role("button", name="Undo").press("Enter")
    assert len(lines(page)) == 2

    with page.expect_download() as saved:
        press(page, "Save as a file")
    assert saved.value.suggested_filename == "two-lobs.rimfall-talk.json"
    path = tmp_path / "two-lobs.rimfall-talk.json"
    saved.value.save_as(path)
    talk = read(path.read_bytes())
    assert [(one.step.line, one.scene.habitat.radius_m) for one in talk.steps] == [
        ("Two throws from one hand.", 56),
        ("And where does this one land?", 112),
    ]
    assert (talk.steps[0].step.notes, talk.steps[1].step.pace) == ("Hold up the ball.", 0.5)
    with page.expect_download() as taken:
        press(page, "Take the talk away")
    assert taken.value.suggested_filename == "two-lobs.html"
    assert read(document_in(taken.value.path().read_bytes())).as_data() == talk.as_data()

    page.reload()
    page.locator(DRAWN).wait_for()
    open_maker(page)
    assert lines(page) == ["Two throws from one hand.", "And where does this one land?"]
    assert page.get_by_label("Title of the talk").input_value() == "Two lobs"

    press(page, "Begin another")
    told(page, "A new talk.")
    assert lines(page) == []
    page.get_by_label("Scene file").set_input_files(path)
    told(page, "Two throws from one hand.")
    assert len(lines(page)) == 2
    shown_is(page, "Radius", 56)

    page.get_by_role("button", name="Start presenting", exact=True).press("Enter")
    line = page.locator(".surtitle-line")
    until("the first line is over the stages", lambda: line.inner_text() == "Two throws from one hand.")
    page.keyboard.press("PageDown")
    until("the second is", lambda: line.inner_text() == "And where does this one land?")
    shown_is(page, "Radius", 112)
    page.keyboard.press("Escape")
    page.locator("#talk").wait_for()
    page.keyboard.press("Escape")
    until("the scene's page is back", page.locator("#title").is_visible)


def test_a_wrong_file_is_refused_by_the_field_that_is_wrong(page, troubles):
    troubles.expect("422")
    wrong = {"rimfall_talk": 1, "title": "x", "steps": [{"scene": "same-lob"}, {"change": {"habitat.spin_rpm": -3}}]}
    page.get_by_label("Scene file").set_input_files(a_file("x.rimfall-talk.json", wrong))
    notice = page.locator(".scenes-sheet .notice")
    notice.wait_for()
    assert "x.rimfall-talk.json: Step 2: Spin was -3" in plain(notice.inner_text())
    assert "steps.1.change.habitat.spin_rpm" in notice.inner_text()


def test_the_ready_talks_are_offered_among_the_scenes_and_opened(page):
    page.locator("#bar").get_by_role("button", name="Scenes").click()
    page.get_by_role("button", name="Why the ball comes back").click()
    told(page, "Step 1 of 10")
    assert len(lines(page)) == 10
    page.locator(".talk-step").nth(1).click()
    told(page, "Step 2 of 10")
    until("its seat and stage are shown", lambda: page.locator(".stage-aboard").is_visible())


def test_the_maker_at_every_size(page):
    """Which stages a step shows is seen as it is chosen; nothing is out of reach or wider than the window; axe finds nothing, in either scheme."""
    open_maker(page)
    press(page, "Keep this as a step")
    press(page, "Outside")
    until("its stage is shown", lambda: not page.locator(".stage-aboard").is_visible())
    press(page, "Both")
    until("and both again", lambda: page.locator(".stage-aboard").is_visible())
    page.get_by_label("The room is asked").select_option(index=1)
    wrong = {}
    for scheme, (width, height) in [*(("light", size) for size in SIZES), ("dark", SIZES[3])]:
        page.emulate_media(color_scheme=scheme)
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        wrong[f"{scheme} {width}x{height}"] = out_of_reach(page) + found(page, "#talk")
    page.emulate_media(color_scheme="null")
    assert {size: what for size, what in wrong.items() if what} == {}
