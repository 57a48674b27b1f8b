"""The page in its frame, on the opening scene: processor time of its own thread (what the system counts, not the clock), what it allocates, how
often it is laid out, as it plays and as the radius is dragged."""

import contextlib
import tempfile
import time
from pathlib import Path

from tests.browsing import DRAWN, started
from tests.serving import serving

from .commit import HERE
from .row import Row, in_turn, quantile

PLAYS_S, WARMS_S, STEPS, ROUNDS = 5.0, 8.0, 60, 3
# how many frames are drawn: each ends with a fence
FRAMES = """for_s => new Promise(done => {
  const gl = WebGL2RenderingContext.prototype, { fenceSync } = gl; let count = 0;
  gl.fenceSync = function (...given) { count += 1; return fenceSync.apply(this, given); };
  setTimeout(() => { gl.fenceSync = fenceSync; done(count); }, for_s * 1000);
})"""
# a hand that drags the radius: a step each time two frames have passed
DRAG = """steps => new Promise(done => {
  const range = document.querySelector('#dials [data-row="habitat.radius_m"] .range');
  let left = steps, wait = 0;
  const next = () => {
    if (wait-- <= 0) { wait = 1; left -= 1; range.value = 0.36 + 0.002 * (steps - left); range.dispatchEvent(new Event('input', {bubbles: true})); }
    if (left) requestAnimationFrame(next); else { range.dispatchEvent(new Event('change', {bubbles: true})); done(); }
  };
  range.dispatchEvent(new Event('pointerdown', {bubbles: true}));
  requestAnimationFrame(next);
})"""


class Watched:
    """A page, and what its own thread has done so far."""

    def __init__(self, browser, origin):
        self._context = browser.new_context(viewport={"width": 1280, "height": 720})
        self.page = self._context.new_page()
        self._session = self._context.new_cdp_session(self.page)
        self._session.send("Performance.enable", {"timeDomain": "threadTicks"})
        self.origin = origin

    def figures(self):
        return {one["name"]: one["value"] for one in self._session.send("Performance.getMetrics")["metrics"]}

    def open(self):
        self.page.goto(self.origin)
        self.page.locator(DRAWN).wait_for()

    def used(self, work):
        """work(), and how far each figure went up by it."""
        before = self.figures()
        done = work()
        after = self.figures()
        return done, {name: after[name] - before[name] for name in after}

    def allocated_b_s(self, for_s):
        """Bytes that scripts take a second while the page is left alone: every rise of what they hold."""
        ends_s, risen, last = time.perf_counter() + for_s, 0.0, self.figures()["JSHeapUsedSize"]
        began_s = time.perf_counter()
        while time.perf_counter() < ends_s:
            self.page.wait_for_timeout(100)
            now = self.figures()["JSHeapUsedSize"]
            risen, last = risen + max(now - last, 0.0), now
        return risen / (time.perf_counter() - began_s)

    def close(self):
        self._context.close()


def playing(watched):
    """Figures of the opening scene as it plays: script ms a frame, bytes a second, layouts a frame."""
    page = watched.page
    if page.locator("[aria-label^=Loop][aria-pressed=false]").count():
        page.keyboard.press("l")  # or it would end
    if page.locator(".play[aria-label=Play]").count():
        page.keyboard.press("Space")
    page.evaluate(FRAMES, WARMS_S)  # until what it runs is compiled
    count, used = watched.used(lambda: watched.page.evaluate(FRAMES, PLAYS_S))
    return {"script_ms": used["ScriptDuration"] / count * 1e3, "task_ms": used["TaskDuration"] / count * 1e3,
            "layouts": used["LayoutCount"] / count, "frames": count, "bytes_s": watched.allocated_b_s(PLAYS_S)}  # fmt: skip


def dragged(watched):
    """Figures of a hand that drags the radius while the scene stands still: script ms a step, layouts a step."""
    if watched.page.locator(".play[aria-label=Pause]").count():
        watched.page.keyboard.press("Space")
    _, used = watched.used(lambda: watched.page.evaluate(DRAG, STEPS))
    return {"script_ms": used["ScriptDuration"] / STEPS * 1e3, "task_ms": used["TaskDuration"] / STEPS * 1e3,
            "layouts": used["LayoutCount"] / STEPS, "styles": used["RecalcStyleCount"] / STEPS}  # fmt: skip


def measure(against=None):
    with contextlib.ExitStack() as opened:
        browser = opened.enter_context(started())
        pages = [_opened(browser, tree, opened) for tree in (HERE, against) if tree]
        plays = _turns(playing, pages)
        drags = _turns(dragged, pages)
    yield _row(
        "script a frame as the opening scene plays, thread time", plays, "script_ms", "ms", 2.0, "frames", "layouts"
    )
    yield _row("the same: what scripts allocate", plays, "bytes_s", "kB/s", 20.0, scale=1e-3)
    yield _row("script a step as the radius is dragged, thread time", drags, "script_ms", "ms", 4.0, "layouts")


def _opened(browser, tree, opened):
    folder = Path(opened.enter_context(tempfile.TemporaryDirectory()))
    origin = opened.enter_context(serving(folder / "log.txt", tree.folder, tree.environment))
    watched = Watched(browser, origin)
    opened.callback(watched.close)
    watched.open()
    watched.page.wait_for_timeout(1000)
    return watched


def _turns(figures_of, pages):
    """Figures of each page, by turns."""
    return [list(round_) for round_ in zip(*([figures_of(page) for page in pages] for _ in range(ROUNDS)), strict=True)]


def _row(what, turns, name, unit, bar, *beside, scale=1.0):
    figures = [[one[name] * scale for one in some] for some in turns]
    given = [iter(some) for some in figures]
    value, note, ratio = quantile(figures[0], 0.5), "", None
    if len(figures) > 1:
        value, there, ratio = in_turn(*(given_.__next__ for given_ in given), for_s=0.0, least=ROUNDS)
        note = f"{there:.2f} {unit} there"
    note = "; ".join(filter(None, [note, *(f"{one} {turns[0][0][one]:.3g}" for one in beside)]))
    return Row(what, f"{value:.2f} {unit}", f"<= {bar:g} {unit}", value <= bar, note, value, ratio=ratio)
