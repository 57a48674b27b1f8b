"""Other screens and other eyes: small pages, no WebGL, reduced motion, the keyboard alone."""

import re

import pytest

from tests.browsing import DRAWN
from tests.tables import each_row

from .looking import drawn, open_place, picture, said, scrub, settle, still_picture, stop, until

pytestmark = pytest.mark.one_page
REGION = """() => {
    const parts = '#bar, #page, .stage-aboard, .stage-outside, #timeline, #dials';
    return document.activeElement.closest(parts)?.className || document.activeElement.tagName;
}"""
SIZES = [(1440, 900), (1024, 768), (390, 844)]
# the ground of the desk, the lanes of the timeline, and the keys of the cards
COLOURS = """() => [getComputedStyle(document.querySelector('#timeline').parentElement).backgroundColor].concat(
    [...document.querySelectorAll('.lanes .lane.later, .card .key .lane')].map(e => getComputedStyle(e).stroke))"""
NO_WEBGL = """
const get = HTMLCanvasElement.prototype.getContext;
HTMLCanvasElement.prototype.getContext = function (kind, ...rest) { return /webgl/.test(kind) ? null : get.call(this, kind, ...rest); };
"""


@each_row(("width", "height"), SIZES)
def test_nothing_hangs_over_the_edge_and_controls_are_large_enough_to_hit(page, width, height):
    page.set_viewport_size({"width": width, "height": height})
    stop(page, 0.8)
    settle(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= width
    assert page.evaluate("document.documentElement.scrollHeight") <= height
    for stage in ("aboard", "outside"):
        box = page.locator(f".stage-{stage}").bounding_box()
        assert box["x"] >= 0
        assert box["x"] + box["width"] <= width + 0.5
        assert box["height"] > 150
    small = page.evaluate(
        """() => [...document.querySelectorAll('button, input')]
            .filter(e => e.checkVisibility({visibilityProperty: true}) && e.tabIndex >= 0 && !e.closest('.unseen'))
            .map(e => [e.getAttribute('aria-label') || e.className || e.textContent, e.getBoundingClientRect()])
            .filter(([, r]) => r.width > 0 && (r.width < 23.99 || r.height < 23.99)).map(([name, r]) => `${name} ${r.width}x${r.height}`)"""
    )
    assert small == []


@pytest.mark.painted
def test_without_webgl_flat_plates_take_the_stages(open_page):
    page = open_page(before=NO_WEBGL, ready="#stages svg", width=1024, height=640)
    until("words all the same", lambda: "5.21 m" in said(page, 0))
    stop(page, 0.2)
    early = picture(page, "outside")
    scrub(page, 1.5)
    until("the plates move", lambda: picture(page, "outside") != early)
    # what only 3D shows of place 5 is said, and all else of it is there
    open_place(page, 5)
    page.locator(".way-says").first.wait_for()
    assert "on this plan alone" in page.locator(".aim-caption").inner_text()
    assert page.locator(".aim-plan .way").count() == page.locator(".way-says").count()
    page.get_by_role("button", name="Set up a camera").click()
    until("the camera", lambda: "Without 3D drawing" in page.locator("#shot-camera .lead").nth(1).inner_text())
    assert page.get_by_label("See the stage through it").is_hidden()


@pytest.mark.painted
def test_reduced_motion_is_a_multiple_exposure_that_does_not_turn(page):
    page.set_viewport_size({"width": 1024, "height": 640})
    page.emulate_media(reduced_motion="reduce")
    page.reload()
    page.locator(DRAWN).wait_for()
    assert drawn(page, "Radius") == 56
    stop(page, 0.5)
    assert picture(page, "outside")


def test_forced_colours_keep_the_page(page):
    page.emulate_media(forced_colors="active")
    assert "5.21 m" in said(page, 0)
    for scheme in ("light", "dark"):
        page.emulate_media(forced_colors="active", color_scheme=scheme)
        ground, *drawn = page.evaluate(COLOURS)
        assert len(drawn) >= 4
        for colour in drawn:
            assert contrast(colour, ground) >= 3, (scheme, colour, ground)


def contrast(one, other):
    """Of two CSS colours, as WCAG 2.2 defines it (relative luminance, success criterion 1.4.3)."""

    def luminance(colour):
        parts = [int(part) / 255 for part in re.findall(r"\d+", colour)[:3]]
        red, green, blue = (p / 12.92 if p <= 0.04045 else ((p + 0.055) / 1.055) ** 2.4 for p in parts)
        return 0.2126 * red + 0.7152 * green + 0.0722 * blue

    low, high = sorted((luminance(one), luminance(other)))
    return (high + 0.05) / (low + 0.05)


def test_the_keyboard_alone_reaches_everything(page):
    stop(page, 0)
    seen = []
    for _ in range(150):
        page.keyboard.press("Tab")
        where = page.evaluate(REGION)
        if not seen or seen[-1] != where:
            seen.append(where)
        if "dials" in where:  # the last of them
            break
    reached = " ".join(seen)
    for part in ("stage-aboard", "stage-outside", "timeline", "dials"):
        assert part in reached, reached
    assert (
        reached.index("stage-aboard")
        < reached.index("stage-outside")
        < reached.index("timeline")
        < reached.index("dials")
    )


def test_a_scene_is_opened_played_and_heard_by_keyboard_alone(page):
    heard = page.locator("#heard")
    playing = page.locator(".play[aria-label=Pause]")
    page.keyboard.press("o")
    page.locator("dialog[open] button", has_text="Two running jumps").focus()
    page.keyboard.press("Enter")
    until("it is open", lambda: page.locator("#title").inner_text().startswith("Two running jumps"))
    until("the focus is on it", lambda: page.evaluate("document.activeElement.id") == "title")
    until("it is told", lambda: heard.inner_text().startswith("Two running jumps"))
    page.keyboard.press("Space")
    until("it plays", lambda: playing.count() == 1)
    page.locator("#bar button", has_text="Scenes").focus()
    page.keyboard.press("Space")
    until("it stands again", lambda: playing.count() == 0)
    assert page.locator("dialog[open]").count() == 0
    page.keyboard.press("n")
    second = page.evaluate("document.querySelectorAll('.card .who-name')[1].textContent")
    until("the next motion is told", lambda: heard.inner_text().startswith(second))
    page.keyboard.press(">")
    until("and how fast it plays", lambda: heard.inner_text() == "Playback at ½ speed.")
    page.keyboard.press("<")


def test_the_list_of_keys_opens(page):
    page.keyboard.press("?")
    until("the list", lambda: "frame" in page.locator("dialog[open]").inner_text())


@pytest.mark.painted
def test_idle_costs_nothing(page):
    page.set_viewport_size({"width": 640, "height": 480})
    stop(page, 0.5)
    still_picture(page, "outside")
    frames = page.evaluate(
        """() => new Promise(done => { let n = 0; const draw = WebGL2RenderingContext.prototype.drawElements;
            WebGL2RenderingContext.prototype.drawElements = function (...a) { n += 1; return draw.apply(this, a); };
            setTimeout(() => { WebGL2RenderingContext.prototype.drawElements = draw; done(n); }, 800); })"""
    )
    assert frames == 0
