"""The page in its frame, on the opening scene: processor time of its own thread (what the system counts, not the clock), what it allocates, how
often it asks for a layout; and what the first picture takes of browser, server and workers together."""

import contextlib
import tempfile
import time
from pathlib import Path

import psutil

from tests.browsing import DRAWN
from tests.serving import serving

PLAYS_S, STEPS, LOADS = 4.0, 60, 3
SETTLES_MS = 1500
FRAMES = """for_s => new Promise(done => {
  const ends = performance.now() + for_s * 1000; let count = 0;
  const next = () => { count += 1; if (performance.now() < ends) requestAnimationFrame(next); else done(count); };
  requestAnimationFrame(next);
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
    if watched.page.locator(".play[aria-label=Play]").count():
        watched.page.keyboard.press("Space")
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


def first_picture(browser, tree):
    """Processor seconds until the first picture of a server that has just been started: of browser, server and workers, and of the
    page's own thread."""
    with tempfile.TemporaryDirectory() as folder, serving(
        Path(folder) / "log.txt", tree.folder, tree.environment
    ) as origin, contextlib.closing(Watched(browser, origin)) as watched:  # fmt: skip
        before = _of_browser()
        watched.open()
        whole = _of_browser() - before + _of_server()
        figures = watched.figures()
    return {"whole_s": whole, "script_s": figures["ScriptDuration"], "thread_s": figures["TaskDuration"]}


def _of_browser():
    return _seconds(one for one in psutil.Process().children(recursive=True) if "chrom" in one.name())


def _of_server():
    return _seconds(one for one in psutil.Process().children(recursive=True) if "python" in one.name())


def _seconds(processes):
    return sum(sum(one.cpu_times()[:2]) for one in processes)
