"""The file that plays by itself, opened from disk by a browser without a network."""

import pytest

from rimfall.exports.formats import FORMATS
from rimfall.exports.one_file import talk_file
from rimfall.exports.options import read_options
from rimfall.language import speaking
from rimfall.talk import examples
from rimfall.talk.reading import read as read_talk
from tests.exports.files_of_ours import scene
from tests.scene.documents import trace_of

from .conftest import PAINTING, Troubles
from .looking import LONG_S, PAINTING_OF, changed, looked_at, pictures, pixels, plain, spoken, until
from .test_accessible import found

TALK = read_talk(examples.example("how-big-must-a-wheel-be"))
WITHOUT_WEBGL = """const real = HTMLCanvasElement.prototype.getContext;
HTMLCanvasElement.prototype.getContext = function (kind, ...more) { return kind.startsWith('webgl') ? null : real.call(this, kind, ...more); };"""


@pytest.fixture(scope="module")
def scene_file(tmp_path_factory):
    path = tmp_path_factory.mktemp("away") / "same lob.html"
    path.write_bytes(FORMATS["html"].write(trace_of(scene("same-lob")), read_options({}, scene("same-lob"))))
    return path


@pytest.fixture(scope="module")
def talk_page(tmp_path_factory):
    path = tmp_path_factory.mktemp("away") / "a talk.html"
    path.write_bytes(talk_file(TALK))
    return path


@pytest.fixture
def open_file(browser):
    """Opens a file: `open_file(path, width, height, before=script)`; any request, error or word on the console fails."""
    opened = []

    def open_one(path, width=1000, height=640, before=None, **options):
        context = browser.new_context(viewport={"width": width, "height": height}, **options)
        context.set_default_timeout(LONG_S * 1000)
        context.set_offline(True)
        context.add_init_script(PAINTING)
        if before:
            context.add_init_script(before)
        page = context.new_page()
        troubles = Troubles(path.as_uri().rpartition("/")[0])
        troubles.watch(page)
        PAINTING_OF[page] = "pictures"  # a clock that runs is painted only while somebody looks
        context.on("page", troubles.watch)
        opened.append((context, troubles))
        page.goto(path.as_uri())
        page.locator("body[data-ready]").wait_for()
        return page

    yield open_one
    for context, _ in opened:
        context.close()
    assert [trouble for _, troubles in opened for trouble in troubles.verdict()] == []


def clock_s(page):
    return float(page.locator("#timeline .time b").inner_text())


def test_a_scene_plays_from_disk_and_hides_and_shows(open_file, scene_file):
    page = open_file(scene_file)
    page.locator("#stages[data-drawn-radius]").wait_for()
    assert page.title() == scene("same-lob").title
    assert plain(page.locator("#line").inner_text()).startswith("Lob out lands 5.21 m spinward after 1.06 s; Lob back")
    assert found(page) == []

    before = pictures(page)
    page.keyboard.press(".")
    page.keyboard.press(".")
    assert clock_s(page) == pytest.approx(2 / 24, abs=0.006)
    page.keyboard.press("Space")
    until("the clock runs", lambda: clock_s(page) > 0.3)
    page.keyboard.press("Space")
    changed(page, before, "both stages moved")
    assert "Lob out" in spoken(page, "aboard")

    page.get_by_role("button", name="Lob out", exact=True).click()
    until("it is hidden", lambda: "Lob out" not in spoken(page, "aboard"))
    assert page.locator("#line").inner_text().startswith("Lob back")
    assert page.locator(".launch-ring:visible").count() == 0
    page.get_by_role("button", name="Lob out", exact=True).click()
    until("it is shown again", lambda: "Lob out" in spoken(page, "aboard"))

    page.keyboard.press("v")
    page.keyboard.press("ArrowDown")
    page.keyboard.press("Escape")
    assert page.locator(".stage-aboard .stage-seat").inner_text() != "From the side"
    page.keyboard.press("?")
    about = page.get_by_role("dialog")
    assert "It lands 5.21 m spinward" in plain(about.inner_text())
    assert found(page) == []
    page.keyboard.press("Escape")

    page.set_viewport_size({"width": 320, "height": 568})  # a small phone
    assert page.evaluate("document.documentElement.scrollWidth") <= 320
    for button in page.locator("button:visible").all():
        button.scroll_into_view_if_needed()
        box = button.bounding_box()
        assert min(box["width"], box["height"]) >= 24
    assert page.locator(".lanes").bounding_box()["width"] > 250
    assert found(page) == []


def test_without_webgl_flat_plates_stand_in(open_file, scene_file):
    page = open_file(scene_file, before=WITHOUT_WEBGL)
    page.locator("#stages.stages-flat .stage-plate").first.wait_for()
    page.keyboard.press("End")
    page.locator(".scrub").focus()
    page.keyboard.press("End")
    until("it has landed", lambda: ", landed" in spoken(page, "aboard"))
    assert found(page) == []


def test_a_talk_is_given_from_disk_by_a_clicker_alone(open_file, talk_page):
    page = open_file(talk_page)
    line, steps = page.locator(".surtitle-line"), [one.step for one in TALK.steps]
    until("the first step", lambda: line.inner_text() == steps[0].line)
    assert found(page) == []
    until("its stage is drawn", lambda: is_drawn(page, "outside"))
    for number, step in enumerate(steps[1:], start=2):
        go_on(page, line, step.line)
        assert page.locator(".surtitle-step").inner_text() == f"step {number} of {len(steps)}"
        if number == 2:
            assert step.ask
            until("it is held back", lambda: lanes(page) == "Dropped ball")
            page.keyboard.press("PageDown")
            until("it is revealed", lambda: "lands" in lanes(page))
    until("both stages are drawn", lambda: is_drawn(page, "aboard") and is_drawn(page, "outside"))
    page.keyboard.press("PageUp")
    assert line.inner_text() == steps[-2].line
    page.keyboard.press("Home")
    assert line.inner_text() == steps[0].line

    with page.context.expect_page() as opened:
        page.keyboard.press("n")
    speaker = opened.value
    until("its notes", lambda: speaker.locator("#notes").inner_text().startswith(steps[0].notes[:40]))
    assert found(speaker) == []
    speaker.get_by_role("button", name="Next", exact=True).click()
    until("the next step", lambda: line.inner_text() == steps[1].line)
    until("its notes too", lambda: speaker.locator("#notes").inner_text().startswith(steps[1].notes[:40]))
    speaker.close()

    page.keyboard.press("Escape")  # what is left is a page to choose a step from
    page.set_viewport_size({"width": 390, "height": 844})
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
    assert found(page) == []
    page.get_by_role("button", name="Step 3:").click()
    assert page.locator("#line").inner_text() == steps[2].line
    page.get_by_role("button", name="Present").click()
    assert line.inner_text() == steps[2].line


def test_a_file_made_in_german_is_german_wherever_it_is_opened(open_file, tmp_path):
    path = tmp_path / "ein Vortrag.html"
    with speaking("de"):
        talk = read_talk(examples.example("how-big-must-a-wheel-be"))
        path.write_bytes(talk_file(talk))
    assert talk.title != TALK.title
    page = open_file(path, locale="en-GB")
    assert page.evaluate("document.documentElement.lang") == "de"
    assert page.title() == talk.title
    assert page.locator(".surtitle-line").inner_text() == talk.steps[0].step.line
    assert page.locator(".surtitle-step").inner_text() == f"Schritt 1 von {len(talk.steps)}"
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Vorführen").wait_for()
    page.keyboard.press("?")
    assert talk.about in page.get_by_role("dialog", name="Über diese Datei").inner_text()
    page.keyboard.press("Escape")
    page.keyboard.press("Home")
    until("figures are written so", lambda: "," in page.locator("#timeline .time b").inner_text())


def lanes(page):
    return " ".join(page.locator(".lane-name").all_text_contents())


def is_drawn(page, stage):
    """Whether there is more on it than a ground."""
    box = page.locator(f".stage-{stage}").bounding_box()
    with looked_at(page):
        seen = pixels(page.screenshot(clip=box))
    return len({tuple(colour) for colour in seen[::8, ::8].reshape(-1, 4)}) > 30


def go_on(page, line, wanted):
    """To the next step by the clicker's one key: what is held back comes first, and what stands at its pause point goes on."""
    for _ in range(3):
        page.keyboard.press("PageDown")
        if line.inner_text() == wanted:
            return
    raise AssertionError(f"three presses do not lead to {wanted}")
