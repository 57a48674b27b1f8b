"""Presenting: the stages fill the window, a clicker's keys are the talk's, and words are large enough to be read from afar."""

import pytest

from .looking import until
from .test_accessible import found

pytestmark = pytest.mark.one_page

PX = "what => parseFloat(getComputedStyle(document.querySelector(what)).fontSize)"
SIZES = {  # px of (stage label, line over the stages, stage title, clock, lanes) in a window so large
    (1280, 720): (24, None, None, None, None),
    (1920, 1080): (28, 50, 40, 52, 24),
    (3840, 2160): (40, None, None, None, None),
}
LEFT = """() => document.querySelector('.stage-aboard').getBoundingClientRect().left > 100 ? 'outside' : 'aboard'"""
PARTS = (".stage-labels", ".surtitle-line", ".stage-title b", ".clock .time", ".lanes svg")


def presents(page):
    page.locator("#bar").get_by_role("button", name="Present").click()
    page.locator(".frame.presenting").wait_for()


def test_a_clicker_presents_and_reaches_nothing_beneath(page):
    """What it presses with a slider in focus, which before changed the spin: the talk has it."""
    loads = page.evaluate("window.here = Math.random()")
    presents(page)
    assert page.locator(".surtitle-line").inner_text() == "The same lob, both ways"
    assert not page.locator("#page").is_visible()
    spin = page.evaluate("() => document.querySelector('#stages').dataset.drawnSpin")
    page.keyboard.press("d")
    slider = page.locator("#dials .range").last
    slider.wait_for()
    slider.focus()
    page.keyboard.press("PageDown")
    until("the clicker's key plays", lambda: page.locator(".transport .play[data-playing=true]").count())
    page.keyboard.press("ArrowUp")
    page.keyboard.press("F5")
    page.keyboard.press("End")
    page.keyboard.press("Space")
    until("and stops", lambda: page.locator(".transport .play[data-playing=false]").count())
    assert page.evaluate("() => document.querySelector('#stages').dataset.drawnSpin") == spin
    assert page.evaluate("window.here") == loads  # F5 has not loaded the page anew
    page.keyboard.press("Tab")  # who goes there by the keyboard has its arrows
    page.keyboard.press("Shift+Tab")
    before = slider.input_value()
    page.keyboard.press("ArrowRight")
    assert slider.input_value() != before
    page.keyboard.press("d")
    for key in ("b", "."):  # either makes it dark, and light again
        page.keyboard.press("b")
        dark = page.locator(".present-dark")
        assert dark.is_visible()
        assert "dark" in page.locator(".present-dark p").text_content()
        assert page.evaluate("() => document.querySelector('#stages').inert")
        page.keyboard.press(key)
        assert not dark.is_visible()
    page.keyboard.press("Escape")
    until("the page is back", lambda: page.locator("#page").is_visible())
    assert page.evaluate("document.activeElement.textContent") == "Present"
    page.keyboard.press("Control+z")


def test_words_grow_with_the_window_and_axe_finds_nothing(page):
    presents(page)
    try:
        for (width, height), sizes in SIZES.items():
            page.set_viewport_size({"width": width, "height": height})
            for part, px in zip(PARTS, sizes, strict=True):
                if px:
                    until(f"{part} at {height}", lambda part=part, px=px: abs(page.evaluate(PX, part) - px) < 0.2)
        page.keyboard.press("Tab")  # what is used by the keyboard does not fade
        for width, height in ((1440, 900), (390, 844), (320, 568)):
            page.set_viewport_size({"width": width, "height": height})
            assert found(page) == []
            assert page.evaluate("document.documentElement.scrollWidth") <= width
        page.keyboard.press("?")
        assert found(page, "dialog[open]") == []
        page.locator("dialog[open]").get_by_role("button", name="the dials, large").click()
        assert page.locator("#dials").is_visible()
        assert found(page) == []
        page.keyboard.press("b")
        assert found(page) == []
    finally:
        page.keyboard.press("Escape")
    assert page.locator(".frame.presenting").count() == 0


def test_the_speaker_s_window_says_what_stands_and_presses_the_same(page):
    presents(page)
    with page.expect_popup() as opened:
        page.keyboard.press("n")
    speaker = opened.value
    speaker.wait_for_selector("body[data-on=true]")
    assert speaker.locator("#line").inner_text() == "The same lob, both ways"
    assert found(speaker) == []
    speaker.locator("#controls").get_by_role("button", name="Dark").click()
    page.locator(".present-dark").wait_for()
    until("it says so", lambda: speaker.locator("#controls [aria-pressed=true]").inner_text() == "Dark", page=speaker)
    speaker.keyboard.press("b")
    page.locator(".present-dark").wait_for(state="hidden")
    speaker.keyboard.press("x")
    until("swapped", lambda: page.evaluate(LEFT) == "outside", page=page)
    speaker.reload()
    speaker.wait_for_selector("body[data-on=true]")
    until("time goes on", lambda: speaker.locator("#gone").inner_text() != "0:00", page=speaker)
    speaker.locator("#again").click()
    until("time is set back", lambda: speaker.locator("#gone").inner_text() == "0:00", page=speaker)
    page.reload()
    speaker.wait_for_selector("body[data-on=false]")
    page.locator("#stages[data-drawn-radius]").wait_for()
    page.keyboard.press("p")
    speaker.wait_for_selector("body[data-on=true]")
    speaker.set_viewport_size({"width": 320, "height": 568})
    assert speaker.evaluate("document.documentElement.scrollWidth") <= 320
    speaker.close()
