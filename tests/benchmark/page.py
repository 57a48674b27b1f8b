"""The page in a browser without a graphics processor: the slider's answer on both stages, and the weight of the page."""

import contextlib
import tempfile
from itertools import count
from pathlib import Path
from urllib.parse import urlsplit

from tests.browsing import DRAWN, started
from tests.serving import serving

from .commit import HERE
from .row import Row, in_turn, quantile

MOVES, ROUNDS = 100, 3
# One move of the radius slider: from its input event to render() returning with that value's answer, then to the last pixel.
MOVE = """value => new Promise(done => {
  const stages = document.querySelector('#stages'), range = document.querySelector('#dials [data-row="habitat.radius_m"] .range');
  const from = performance.now();
  const drawn = () => {
    const returned = performance.now() - from;
    stages.removeEventListener('rimfall:drawn', drawn);
    const gl = stages.querySelector('canvas').getContext('webgl2');
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
    done([returned, performance.now() - from - returned]);
  };
  stages.addEventListener('rimfall:drawn', drawn);
  range.value = value;
  range.dispatchEvent(new Event('input', {bubbles: true}));
})"""


def measure(against=None):
    with started() as browser, contextlib.ExitStack() as opened:
        pages = [_opened(browser, tree, opened) for tree in (HERE, against) if tree]
        (page, sent), *_ = pages
        weight, script = sum(sent.values()), sum(size for path, size in sent.items() if path.endswith(".js"))
        yield Row("requests for the opening page", f"{len(sent)}", "<= 30", len(sent) <= 30)
        yield Row("page weight, compressed", f"{weight / 1e3:.0f} kB", "<= 700 kB", weight <= 700_000)
        yield Row("script in that", f"{script / 1e3:.0f} kB", "<= 350 kB", script <= 350_000)
        for one, _ in pages:
            if one.locator(".play[aria-label=Pause]").count():
                one.keyboard.press("Space")
        yield _drawn(*(one for one, _ in pages))
        moves = [page.evaluate(MOVE, 0.36 + 0.002 * k) for k in range(MOVES)]
        answered, finished = (quantile([m[i] for m in moves], 0.95) for i in (0, 1))
        yield Row("slider to render() returning with its answer: p95", f"{answered:.0f} ms", "<= 50 ms", answered <= 50)
        yield Row(
            "a frame drawn to the last pixel, after that: p95", f"{finished:.0f} ms", "<= 100 ms", finished <= 100
        )


def _opened(browser, tree, opened):
    """A page of that tree, and what was sent for it."""
    folder = Path(opened.enter_context(tempfile.TemporaryDirectory()))
    origin = opened.enter_context(serving(folder / "log.txt", tree.folder, tree.environment))
    page = opened.enter_context(
        contextlib.closing(browser.new_context(viewport={"width": 1280, "height": 720}))
    ).new_page()
    return page, weigh(page, origin)


def _drawn(page, other=None):
    """From a move of the slider to the last pixel of its picture, by turns with the other page."""
    asks = [_slowest(one) for one in (page, other) if one]
    for ask in asks:
        ask()  # what it runs is compiled
    value, note, ratio = quantile([asks[0]() for _ in range(ROUNDS)], 0.5), "", None
    if other:
        value, there, ratio = in_turn(*asks, for_s=0.0, least=ROUNDS)
        note = f"{there:.0f} ms there"
    what, bar = "slider to drawn, to the last pixel: p95", "<= 33 ms on a quiet machine"
    return Row(what, f"{value:.0f} ms", bar, True if value <= 33 else None, note, value, ratio=ratio)


def _slowest(page):
    """A function that moves the slider a hundred times, never twice to one place, and gives the 95th of what that took, ms."""
    rounds = count()

    def slowest_ms():
        past = 0.0002 * next(rounds)
        return quantile([sum(page.evaluate(MOVE, 0.36 + past + 0.002 * k)) for k in range(MOVES)], 0.95)

    return slowest_ms


def weigh(page, origin):
    """Path → bytes as sent of all that is fetched until the first answer is on screen, and a second longer."""
    session = page.context.new_cdp_session(page)
    session.send("Network.enable")
    paths, sent = {}, {}
    session.on("Network.requestWillBeSent", lambda event: paths.update({event["requestId"]: event["request"]["url"]}))
    session.on("Network.loadingFinished", lambda event: sent.update({event["requestId"]: event["encodedDataLength"]}))
    page.goto(origin)
    page.locator(DRAWN).wait_for()
    page.wait_for_timeout(1000)
    return {urlsplit(paths[one]).path: size for one, size in sent.items()}
