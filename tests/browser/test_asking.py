"""The room is asked where a ball comes down: nothing of it shows before, a click or keys place a guess, and how near they were is told."""

import json

import pytest

from rimfall.exports.one_file import talk_file
from rimfall.talk.reading import read as read_talk

from .looking import plain, until
from .test_accessible import found
from .test_one_file import open_file  # noqa: F401

ASKS = {
    "rimfall_talk": 1,
    "title": "Where does it come down?",
    "steps": [
        {"scene": "same-lob", "line": "Where?", "ask": {"motion": "Lob back", "until_s": 0.6}, "arrows": []},
        {"line": "Twice as far."},
    ],
}
FLIES = "Lob back lands"
LANDS = "10.7"  # m antispinward (tests/scene holds it): in no label, lane, mark or live text before it has
SAID = """() => [...document.querySelectorAll('.stage-label:not([hidden]), .lane-name')].map(one => one.textContent)
  .concat([...document.querySelectorAll('.mark, .stage-view')].map(one => one.getAttribute('aria-label')))"""


@pytest.fixture(scope="module")
def asking(tmp_path_factory):
    path = tmp_path_factory.mktemp("asking") / "asks.html"
    path.write_bytes(talk_file(read_talk(json.dumps(ASKS))))
    return path


def said(page):
    return [plain(text) for text in page.evaluate(SAID)]


def told(page):
    return plain(page.locator(".guess-says").inner_text())


def test_the_room_guesses_before_it_sees(open_file, asking):  # noqa: F811
    page = open_file(asking, 1280, 720)
    until("it waits for guesses", lambda: page.locator(".clock .time").inner_text().startswith("0.60"))
    until("stages are lettered", lambda: any("Lob back" in text for text in said(page)))
    before = said(page)
    assert not [text for text in before if LANDS in text or FLIES in text or text.startswith("Lob back: ")], before
    assert sum(text.startswith("plain gravity") for text in before) <= 1  # the other lob's
    assert told(page) == "Lob back: where does it come down? Click on the deck."

    box = page.locator(".stage-aboard .stage-view").bounding_box()
    page.mouse.click(box["x"] + 0.3 * box["width"], box["y"] + 0.49 * box["height"])
    until("by click", lambda: told(page).endswith("One guess so far."))
    handle = page.locator(".guess-handle:not([hidden])")
    handle.wait_for()
    page.locator(".guess-bar button").first.focus()
    page.keyboard.press("Enter")
    until("by keyboard", lambda: told(page).endswith("2 guesses so far."))
    until("each has a handle", lambda: handle.count() == 2)
    handle.last.focus()
    page.keyboard.press("Shift+Tab")
    page.keyboard.press("Tab")  # by the keyboard: its arrows are its own
    until("where it was let go", lambda: handle.last.get_attribute("aria-valuenow") == "0.00")
    for _ in range(3):
        page.keyboard.press("ArrowLeft")
    until("moved by 0.1 m each", lambda: handle.last.get_attribute("aria-valuenow") == "-0.30")
    assert found(page) == []

    page.keyboard.press("PageDown")
    until("it flies, and none is taken any more", lambda: not page.locator(".guess-bar button:visible").count())
    until(
        "it has come down",
        lambda: told(page).startswith("Lob back: it comes down 10.72 m antispinward. Nearest of 2 guesses: "),
    )
    until("and is shown", lambda: any(FLIES in text for text in said(page)))
    assert page.locator(".surtitle-line").inner_text() == "Where?"
    page.keyboard.press("PageDown")
    until("the guesses go with the step", lambda: not page.locator(".guess-bar").is_visible())
