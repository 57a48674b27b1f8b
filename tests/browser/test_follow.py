"""Phones that follow: what the presenter's page shows they show, at the same time; they place a mark, and come back by themselves."""

import http.client
import json
import re

import pytest

from rimfall import api
from rimfall.scene.examples import example
from tests.browsing import DRAWN
from tests.serving import serving

from .conftest import PAINTING, Troubles
from .looking import LONG_S, plain, stop, until
from .test_accessible import found
from .test_talks_given import begins

SHARE = ("-m", "rimfall", "serve", "--share", "--host", "127.0.0.1", "--no-open", "--workers", "1", "--port")
SCENE = json.loads(example("same-lob"))
PHONE, ACROSS = {"width": 390, "height": 844}, {"width": 844, "height": 390}
VIEW = {"presets": {"aboard": "b", "outside": "d"}, "hidden": [], "chosen": 0, "units": "si"}
NOW = {"step": 3, "of": 10, "title": "The same lob", "line": "Where will it land?", "view": VIEW}
ASK = {"id": "p-1", "motion": "Lob out", "low_m": -20, "high_m": 20}


class Hall:
    """A server that others may follow, and who is there."""

    def __init__(self, browser, origin, log):
        self.browser, self.origin, self.contexts, self.troubles = browser, origin, [], Troubles(origin)
        said = log.read_text()
        self.mine, self.theirs = re.search(r"at (\S+key=\S+)", said)[1], re.search(r"at (\S+#\S+)", said)[1]

    def comes(self, address, **options):
        """A page of a browser of its own."""
        context = self.browser.new_context(**options)
        context.set_default_timeout(LONG_S * 1000)
        context.add_init_script(PAINTING)
        self.contexts.append(context)
        page = context.new_page()
        self.troubles.watch(page)
        page.goto(address)
        return page

    def tell(self, path, body):
        """As the presenter's page does."""
        host = self.origin.removeprefix("http://")
        cookie = f"rimfall-presenter-{host.partition(':')[2]}={self.mine.partition('key=')[2]}"
        one = http.client.HTTPConnection(host, timeout=LONG_S)
        one.request(
            "POST", f"/api/share/{path}", json.dumps(body), {"content-type": "application/json", "cookie": cookie}
        )
        answer = one.getresponse()
        told = json.loads(answer.read())
        one.close()
        assert answer.status == 200, told
        return told


@pytest.fixture
def hall(browser, tmp_path):
    log = tmp_path / "log.txt"
    with serving(log, arguments=SHARE) as origin:
        there = Hall(browser, origin, log)
        yield there
        for context in there.contexts:
            context.close()
    off_network = "ERR_INTERNET_DISCONNECTED"  # as often as it tried again meanwhile
    assert not [trouble for trouble in there.troubles.verdict() if off_network not in trouble]


def line(page):
    return page.locator("#line").inner_text()


def test_two_phones_follow_the_presenter(hall):
    presenter = hall.comes(hall.mine)
    assert presenter.url == f"{hall.origin}/"  # the key stays in no address
    presenter.locator(DRAWN).wait_for()
    upright = hall.comes(hall.theirs, viewport=PHONE, has_touch=True)
    across = hall.comes(hall.theirs, viewport=ACROSS, reduced_motion="reduce", forced_colors="active")
    for page in (upright, across):
        page.get_by_text("Waiting for the presenter").wait_for()
        assert not found(page)

    presenter.keyboard.press("p")
    presenter.locator(".presenting").wait_for()
    title = presenter.locator(".surtitle-line").inner_text()
    for page in (upright, across):
        page.locator(DRAWN).wait_for()
        until("the line", lambda page=page: line(page) == title)
        assert not found(page)
    stop(presenter)  # and so on three pages, whose frames were most of what this test took
    assert upright.locator(".stage:visible").count() == 1
    assert across.locator(".stage:visible").count() == 2

    presenter.keyboard.press("r")
    room = presenter.locator(".room")
    room.get_by_text("2 follow").wait_for()
    assert room.locator("img").evaluate("image => image.complete && image.naturalWidth > 0")
    assert hall.theirs.removeprefix("http://") in room.inner_text()
    assert not found(presenter, ".room")
    presenter.keyboard.press("r")
    assert not room.is_visible()

    presenter.keyboard.press("b")
    upright.get_by_text("look up").wait_for()
    presenter.keyboard.press("b")
    upright.locator("#waiting").wait_for(state="hidden")

    upright.get_by_role("button", name="See it from outside").click()
    upright.locator(".stage-outside").wait_for()
    own = upright.get_by_role("button", name="Look around on my own")
    assert upright.locator(".stage-outside .stage-view").get_attribute("tabindex") == "-1"
    own.press("Enter")
    assert upright.locator(".stage-outside .stage-view").get_attribute("tabindex") == "0"
    upright.get_by_role("button", name="Back to the presenter’s view").press("Space")
    assert own.get_attribute("aria-pressed") == "false"
    upright.get_by_role("button", name="See it from aboard").click()
    presenter.keyboard.press("Escape")
    for page in (upright, across):
        page.get_by_text("The presenter has left the talk.").wait_for()
    presenter.keyboard.press("p")
    for page in (upright, across):
        page.get_by_text("The presenter holds the clock.").wait_for()
    presenter.keyboard.press("Escape")
    follows_a_talk(presenter, upright)


def follows_a_talk(presenter, phone):
    """The first two steps of a ready talk: line, step and hold, a guess, and how far off it was once the ball has come down."""
    talk = api.open_talk("why-the-ball-comes-back")
    of, (first, asks) = len(talk.steps), talk.steps[:2]
    begins(presenter, talk.title, of)
    until("the first line", lambda: line(phone) == first.step.line)
    assert phone.locator("#step").inner_text() == f"step 1 of {of}"
    presenter.keyboard.press("PageDown")
    until("the second line", lambda: line(phone) == asks.step.line)
    assert phone.locator("#step").inner_text() == f"step 2 of {of}"
    path = api.trace(asks.scene).motions[asks.step.ask.motion]
    off = f"{abs(path.landing.along_m - path.along_m[0]):.2f} m"
    slider = phone.get_by_role("slider", name=f"Where will “{asks.step.ask.motion}” land?")
    slider.wait_for()
    assert off not in plain(phone.locator("body").inner_text())
    assert phone.locator("#holds").inner_text() == "The presenter holds the clock."
    phone.get_by_role("button", name="Place my mark").click()  # where it is let go
    until("the mark", lambda: phone.locator("#holds").inner_text() == "1 of 2 marks placed")
    until("it with the presenter", lambda: "One guess so far." in presenter.locator(".guess-bar").inner_text())
    presenter.keyboard.press("l")
    stage = presenter.locator(".stage-aboard").bounding_box()
    presenter.mouse.move(stage["x"] + 0.25 * stage["width"], stage["y"] + 0.5 * stage["height"])
    dot = phone.locator(".stage-aboard .present-dot")
    where = "dot => Math.round(parseFloat(dot.style.left)) + ' ' + Math.round(parseFloat(dot.style.top))"
    until("the bright dot", lambda: dot.is_visible() and dot.evaluate(where) == "25 50")
    presenter.keyboard.press("l")
    until("no dot", lambda: not dot.is_visible())
    presenter.keyboard.press("PageDown")
    until("how far off it was", lambda: f"{off} off" in plain(phone.locator(".verdict").inner_text()))
    assert line(phone) == asks.step.line
    assert not slider.is_visible()


def test_a_phone_places_a_mark_sees_how_near_it_was_and_comes_back(hall):
    phone = hall.comes(hall.theirs, viewport={"width": 320, "height": 568}, has_touch=True)
    scene = hall.tell("scenes", SCENE)
    still = {"time_s": 0.5, "pace": 1, "playing": False}
    hall.tell("now", NOW | scene | {"clock": still, "ask": ASK})
    phone.locator(DRAWN).wait_for()
    assert phone.locator("#step").inner_text() == "step 3 of 10"
    slider = phone.get_by_role("slider", name="Where will “Lob out” land?")
    ends = phone.locator(".mark-ends span").all_inner_texts()
    assert ends == ["20.0\u00a0m antispinward", "20.0\u00a0m spinward"]
    slider.press("ArrowRight")
    phone.get_by_role("button", name="A tenth of a metre more").tap()
    assert phone.locator("#guess output").inner_text() == "0.2\u00a0m spinward"
    assert phone.evaluate("document.documentElement.scrollWidth <= innerWidth")
    place = phone.get_by_role("button", name="Place my mark")
    place.tap()
    phone.get_by_text("Your mark stands at 0.2\u00a0m spinward.").wait_for()
    until("the count", lambda: phone.locator("#holds").inner_text() == "1 of 1 marks placed")
    stage = phone.locator(".stage-aboard .stage-view")
    stage.tap(position={"x": 200, "y": 0.6 * stage.bounding_box()["height"]})  # on the deck
    until("a mark where it was pressed", lambda: phone.locator("#guess output").inner_text() != "0.2\u00a0m spinward")
    assert not found(phone)
    for box in phone.locator("button:visible").all():
        size = box.bounding_box()
        assert min(size["width"], size["height"]) >= 24

    down = ASK | {"revealed": True, "down": True, "landing_m": 5.2, "marks": [0.2, 9, -7.5]}
    hall.tell("now", NOW | scene | {"clock": still | {"time_s": 1.2}, "ask": down, "line": "It lands here."})
    phone.get_by_text("5.0\u00a0m off").wait_for()
    assert phone.locator(".mark-told").inner_text() == "It lands 5.20\u00a0m spinward."
    assert phone.locator(".verdict").inner_text().split("\n")[-1].endswith("nearer than 1 of 2 others")
    assert not slider.is_visible()
    assert line(phone) == "It lands here."
    assert not found(phone)

    phone.context.set_offline(True)
    phone.get_by_text("Connection lost, trying again").wait_for()
    assert line(phone) == "It lands here."  # what was told last stays
    hall.tell("now", NOW | scene | {"clock": still, "line": "Meanwhile"})
    phone.context.set_offline(False)
    until("the line", lambda: line(phone) == "Meanwhile")
    assert phone.locator("#state").inner_text() == "following"

    hall.troubles.expect("403")
    wrong = hall.comes(hall.theirs[:-2] + "xx", viewport=PHONE)
    wrong.get_by_text("Scan the code on the screen again.").wait_for()
    hall.comes(f"{hall.origin}/follow", viewport=PHONE).get_by_text(
        "Scan the code on the presenter’s screen"
    ).wait_for()
