"""What the page shows when something fails: the server slow, gone and back, a scene too heavy, the drawing lost and restored."""

import json
import re

import numpy as np
import pytest

from tests.browsing import DRAWN

from .looking import drawn, number_box, picture, pixels, scrub, shown_is, still_picture, stop, type_figure, until

TRACE, API = "**/api/trace*", re.compile(r"//[^/]+/api/")
LINE = ".state.shown"
TOO_HEAVY = {
    "refused": [
        {
            "field": "work",
            "was": "20 s",
            "may_be": "20 s",
            "say": "The lob out took all of 20 s: give it fewer bounces.",
        }
    ]
}


def line(page):
    """The line over the stages: what it says, and what can be pressed."""
    return page.locator(LINE).inner_text().replace("\u00a0", " ") if page.locator(LINE).count() else ""


def lob_link(page):
    """A link that carries the opening scene with another title."""
    scene = page.request.get("/api/examples/same-lob").json() | {"title": "A heavy scene"}
    packed = page.evaluate(
        """async text => {
            const stream = new Blob([text]).stream().pipeThrough(new CompressionStream('deflate-raw'));
            const bytes = new Uint8Array(await new Response(stream).arrayBuffer());
            return btoa(String.fromCharCode(...bytes)).replaceAll('+', '-').replaceAll('/', '_').replaceAll('=', '');
        }""",
        json.dumps(scene),
    )
    return f"/#s={packed}"


# every text that is in sight, of the whole page, as one string
SEEN = """() => {
    const walker = document.createTreeWalker(document.body, NodeFilter.SHOW_TEXT), texts = [];
    while (walker.nextNode()) {
        const { parentElement: element, data } = walker.currentNode;
        const faded = element.closest('svg') && Number(getComputedStyle(element.closest('svg')).opacity) < 0.5;
        if (data.trim() && element.checkVisibility({ visibilityProperty: true }) && !faded) texts.push(data);
    }
    return texts.join('\\n').replaceAll('\\u00a0', ' ');
}"""
# what the answer to the opening scene says: landings, times, heights, the spin's gravity, how the drift comes about
OLD = re.compile(r"5\.21 m|10\.7 m|1\.06 s|2\.5[0-9] s|0\.56[0-9] ?g|17\.6 m/s|lands|caught")


@pytest.mark.one_page
def test_no_old_answer_stands_beside_new_inputs_in_any_place_until_the_new_one_is_there(page):
    stop(page, 0.5)
    seen = page.evaluate(SEEN)
    assert len(set(OLD.findall(seen))) > 4, seen
    slow, waiting = [True], []
    page.route(TRACE, lambda route: waiting.append(route) if slow else route.continue_())
    for change in (
        lambda: type_figure(page, "habitat.radius_m", "112"),
        lambda: (
            page.get_by_role("button", name="Add a motion").click(),
            page.get_by_role("button", name="Add a drop").click(),
        ),
        lambda: page.keyboard.press("Control+z"),
    ):
        change()
        for place in "1234":
            page.locator("h1").click()
            page.keyboard.press("Escape")
            page.keyboard.press(place)
            seen = page.evaluate(SEEN)
            assert OLD.findall(seen) == [], (place, [line for line in seen.splitlines() if OLD.search(line)])
        page.keyboard.press("2")
    slow.clear()
    for route in waiting:
        route.continue_()
    until("the new answer", lambda: "lands" in page.evaluate(SEEN), page=page)
    assert page.locator("body.behind").count() == 0


def test_a_scene_that_is_opened_changes_words_inputs_and_lanes_in_one_step(page):
    waiting = []
    page.route("**/opened*", lambda route: waiting.append(route))
    page.evaluate(
        """() => {
            window.steps = [];
            const read = () => ['#title', '#cards .said', '.lanes .lane-name'].map(one => document.querySelector(one)?.textContent);
            new MutationObserver(() => window.steps.push(read()))
                .observe(document.body, { subtree: true, childList: true, characterData: true });
        }"""
    )
    page.keyboard.press("j")
    until("it is asked for", lambda: waiting, page=page)
    for route in waiting:
        route.continue_()
    until("it is shown", lambda: "Galley" in page.locator("#title").inner_text(), page=page)
    of_galley = [
        ["Galley" in title, "5.21" not in words, "cup" in lane.lower()]
        for title, words, lane in page.evaluate("window.steps")
    ]
    assert all(len(set(one)) == 1 for one in of_galley)
    assert [True, True, True] in of_galley


@pytest.mark.one_page
def test_a_newer_position_takes_the_place_of_a_slow_one_and_cancel_brings_the_answered_values_back(page):
    waiting = []
    page.route(TRACE, lambda route: waiting.append(route))
    type_figure(page, "habitat.radius_m", "70")
    until("it is said after a second", lambda: "Working out" in line(page) and "56.0 m" in line(page), page=page)
    type_figure(page, "habitat.radius_m", "90")
    type_figure(page, "habitat.radius_m", "110")
    until("the newest is asked, the slow one given up", lambda: len(waiting) >= 3, page=page)
    assert json.loads(waiting[-1].request.post_data)["habitat"]["radius_m"] == 110
    until("it is said again", lambda: "Working out" in line(page), page=page)
    page.get_by_role("button", name="Cancel").click()
    until(
        "the inputs are those of the answer shown", lambda: number_box(page, "habitat.radius_m").input_value() == "56.0"
    )
    until("nothing is waited for", lambda: line(page) == "")
    assert "Cancelled" in page.locator("#notice").inner_text()
    page.unroute_all(behavior="ignoreErrors")
    page.get_by_role("button", name="Retry").click()
    shown_is(page, "Radius", 70)


@pytest.mark.one_page
def test_a_server_that_goes_and_comes_back_needs_no_reload_in_any_place(page, troubles):
    troubles.expect("ERR_FAILED")
    page.route(API, lambda route: route.abort())
    type_figure(page, "habitat.radius_m", "75")
    until("it is said", lambda: "does not answer" in line(page) and "56.0 m" in line(page))
    assert drawn(page, "Radius") == 56
    page.locator("h1").click()
    page.keyboard.press("Escape")
    page.keyboard.press("4")
    page.keyboard.press("3")
    page.get_by_role("button", name="Scenes").click()
    until("it is said in the sheet too", lambda: page.locator("dialog[open] .state.shown").count() == 1)
    page.locator("dialog[open]").get_by_role("button", name="Retry now").click()
    page.unroute(API)
    page.locator("dialog[open] .shipped-list button").first.wait_for()
    page.keyboard.press("Escape")
    shown_is(page, "Radius", 75)
    page.locator("#plot svg.plot").wait_for()
    page.keyboard.press("4")
    page.locator("#feel-map svg .limit").first.wait_for(state="attached")
    until("nothing is left to say", lambda: line(page) == "")


def test_a_link_that_waits_says_so_and_is_told_apart_from_a_heavy_one(page, troubles):
    link = lob_link(page)
    waiting = []
    page.goto("about:blank")
    page.route(TRACE, lambda route: waiting.append(route))
    page.goto(link)
    until("the shell stands and says it", lambda: "Opening the scene of the link" in line(page))
    assert page.locator("#title").inner_text() == "A heavy scene"
    until("the question", lambda: waiting, page=page)
    busy = {"refused": [{"field": "server", "was": "busy", "may_be": "later", "say": "Busy."}]}
    troubles.expect("503")
    waiting.pop().fulfill(status=503, json=busy, headers={"retry-after": "1"})
    until("a busy server is no error", lambda: "The server is busy" in line(page), page=page)
    until("it is asked again", lambda: waiting, page=page)
    troubles.expect("422")
    waiting.pop().fulfill(status=422, json=TOO_HEAVY)
    page.locator(DRAWN).wait_for()  # the first scene, with an answer that was ready
    said = page.locator("#notice").inner_text()
    assert "too heavy" in said
    assert "fewer bounces" in said
    assert "bad" not in said
    assert page.locator("#title").inner_text() == "The same lob, both ways"


LOSE = """() => {
    window.losing = document.querySelector('.stages-canvas').getContext('webgl2').getExtension('WEBGL_lose_context');
    window.losing.loseContext();
}"""
RESTORE = "() => window.losing.restoreContext()"


def flat(page):
    return page.locator("#stages.stages-flat svg.stage-plate").count() == 2


@pytest.mark.painted
def test_a_lost_drawing_is_said_flat_plates_stand_in_and_the_same_picture_comes_back(open_page):
    page = open_page(width=1024, height=640)

    def seen():
        scrub(page, 1.2)
        scrub(page, 0.5)  # labels keep their place from frame to frame
        return [pixels(still_picture(page, stage)) for stage in ("aboard", "outside")]

    def same():
        return max(np.abs(now - then).mean() for now, then in zip(seen(), before, strict=True)) < 0.01

    stop(page, 0.5)
    before = seen()
    for _ in range(2):
        page.evaluate(LOSE)
        until("flat plates at once", lambda: flat(page))
        assert "lost its 3D drawing" in line(page)
        early = picture(page, "outside")
        scrub(page, 1.2)
        until("the plates move", lambda early=early: picture(page, "outside") != early)
        page.evaluate(RESTORE)
        until("the stages are back", lambda: not flat(page) and line(page) == "")
    assert same()
    page.evaluate(LOSE)
    until("flat plates once more", lambda: flat(page))
    page.get_by_role("button", name="Try again").click()
    until("drawn on another canvas", lambda: not flat(page) and line(page) == "")
    assert same()


@pytest.mark.painted
def test_a_drawing_lost_while_the_page_is_hidden_is_there_when_it_is_seen(page):
    """A hidden page has no frames: what happens there must not wait for one."""
    page.set_viewport_size({"width": 1024, "height": 640})
    stop(page, 0.5)
    page.evaluate("window.requestAnimationFrame = () => 0")
    page.evaluate(LOSE)
    until("flat plates at once", lambda: flat(page))
    assert page.locator(".stage-plate path").count() > 4
    page.evaluate(RESTORE)
    until("the stages are back", lambda: not flat(page) and line(page) == "")
    assert page.locator("#stages").get_attribute("data-frame") == "drawn"
