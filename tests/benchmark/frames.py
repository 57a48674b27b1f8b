"""The page in its frame, on the opening scene: processor time of its own thread (what the system counts, not the clock), what it allocates, how
often it is laid out, as it plays and as the radius is dragged."""

import contextlib
import re
import tempfile
from pathlib import Path

from tests.browsing import DRAWN, started
from tests.serving import serving

from .commit import HERE
from .row import Row, in_turn, quantile

PLAYS_S, STEPS, ROUNDS = 5.0, 60, 3
WARM_FRAMES, WARMS_S = 600, 30.0  # until what it runs is compiled: so many frames, or so long
SAMPLED_B = 512  # one in so many bytes that are allocated is looked at
# how many frames are drawn: each ends with a fence
FRAMES = """([for_s, most]) => new Promise(done => {
  const gl = WebGL2RenderingContext.prototype, { fenceSync } = gl; let count = 0;
  const end = () => { clearTimeout(ends); gl.fenceSync = fenceSync; done(count); }, ends = setTimeout(end, for_s * 1000);
  gl.fenceSync = function (...given) { count += 1; if (count >= most) setTimeout(end); return fenceSync.apply(this, given); };
})"""
ALL = 1e9
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
    """A page, and what its own thread has done so far. as_modules: of its modules as they are, which tells whose a function is."""

    def __init__(self, browser, origin, as_modules=False):
        self._context = browser.new_context(viewport={"width": 1280, "height": 720})
        self.page = self._context.new_page()
        self._session = self._context.new_cdp_session(self.page)
        self._session.send("Performance.enable", {"timeDomain": "threadTicks"})
        self.origin, self.is_warm = origin, False
        if as_modules:
            self.page.route(f"{origin}/", _as_modules)

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

    def allocated_b(self, work):
        """work(), and the bytes allocated meanwhile by whose they are: the page's scripts, three.js, or the engine outside all of them."""
        kept = {"includeObjectsCollectedByMajorGC": True, "includeObjectsCollectedByMinorGC": True}
        self._session.send("HeapProfiler.enable")
        self._session.send("HeapProfiler.startSampling", {"samplingInterval": SAMPLED_B} | kept)
        done = work()
        profile = self._session.send("HeapProfiler.stopSampling")["profile"]
        return done, by_owner(profile["head"])

    def close(self):
        self._context.close()


def by_owner(node, owner="engine", found=None):
    """Bytes of a sampled heap profile below a node; what the engine allocates for a script that calls it is that script's."""
    found = {"page": 0, "three": 0, "engine": 0} if found is None else found
    called = node["callFrame"]
    if called["url"]:
        owner = "three" if "/vendor/" in called["url"] else "page"
    elif called["functionName"].startswith("("):
        owner = "engine"
    found[owner] += node["selfSize"]
    for one in node["children"]:
        by_owner(one, owner, found)
    return found


def _as_modules(route):
    """The page with the modules that its bundle was made from."""
    answer = route.fetch()
    text = re.sub(r'<link rel="modulepreload"[^>]*>', "", answer.text())
    headers = {
        name: value for name, value in answer.headers.items() if name not in ("content-encoding", "content-length")
    }
    route.fulfill(status=answer.status, headers=headers, body=text.replace("vendor/page/main.js", "main.js"))


def play(watched):
    """Has the opening scene play on and on, the first time until what it runs is compiled."""
    page = watched.page
    if page.locator("[aria-label^=Loop][aria-pressed=false]").count():
        page.keyboard.press("l")  # or it would end
    if page.locator(".play[aria-label=Play]").count():
        page.keyboard.press("Space")
    if not watched.is_warm:
        page.evaluate(FRAMES, [WARMS_S, WARM_FRAMES])
    watched.is_warm = True


def playing(watched):
    """Figures of the opening scene as it plays: script ms a frame, layouts a frame."""
    play(watched)
    count, used = watched.used(lambda: watched.page.evaluate(FRAMES, [PLAYS_S, ALL]))
    return {"script_ms": used["ScriptDuration"] / count * 1e3, "task_ms": used["TaskDuration"] / count * 1e3,
            "layouts": used["LayoutCount"] / count, "frames": count}  # fmt: skip


def allocating(watched):
    """Bytes a second as it plays, by whose they are, and those of the page a frame."""
    play(watched)
    count, taken = watched.allocated_b(lambda: watched.page.evaluate(FRAMES, [PLAYS_S, ALL]))
    return {owner: bytes_ / PLAYS_S for owner, bytes_ in taken.items()} | {
        "a_frame": taken["page"] / count,
        "frames": count,
    }


def dragged(watched):
    """Figures of a hand that drags the radius while the scene stands still: script ms a step, layouts a step."""
    if watched.page.locator(".play[aria-label=Pause]").count():
        watched.page.keyboard.press("Space")
    _, used = watched.used(lambda: watched.page.evaluate(DRAG, STEPS))
    return {"script_ms": used["ScriptDuration"] / STEPS * 1e3, "task_ms": used["TaskDuration"] / STEPS * 1e3,
            "layouts": used["LayoutCount"] / STEPS, "styles": used["RecalcStyleCount"] / STEPS}  # fmt: skip


def measure(against=None):
    trees = [tree for tree in (HERE, against) if tree]
    with started() as browser, contextlib.ExitStack() as opened:
        pages = [_opened(browser, tree, opened) for tree in trees]
        plays, drags = _turns(playing, pages), _turns(dragged, pages)
    with started() as browser, contextlib.ExitStack() as opened:
        takes = _turns(allocating, [_opened(browser, tree, opened, as_modules=True) for tree in trees])
    what = "script a frame as the opening scene plays, thread time"
    yield _row(what, plays, "script_ms", "ms", 2.0, "frames", "layouts")
    kb = {owner: quantile([one[owner] for one in takes[0]], 0.5) / 1e3 for owner in ("three", "engine")}
    besides = f"besides three.js {kb['three']:.0f}, the engine {kb['engine']:.0f} kB/s"
    yield _row(
        "the same: what the page's scripts allocate",
        takes,
        "page",
        "kB/s",
        20.0,
        "a_frame",
        "frames",
        scale=1e-3,
        more=besides,
    )
    yield _row("script a step as the radius is dragged, thread time", drags, "script_ms", "ms", 4.0, "layouts")


def _opened(browser, tree, opened, as_modules=False):
    folder = Path(opened.enter_context(tempfile.TemporaryDirectory()))
    origin = opened.enter_context(serving(folder / "log.txt", tree.folder, tree.environment))
    watched = Watched(browser, origin, as_modules)
    opened.callback(watched.close)
    watched.open()
    watched.page.wait_for_timeout(1000)
    return watched


def _turns(figures_of, pages):
    """Figures of each page, by turns."""
    return [list(round_) for round_ in zip(*([figures_of(page) for page in pages] for _ in range(ROUNDS)), strict=True)]


def _row(what, turns, name, unit, bar, *beside, scale=1.0, more=""):
    figures = [[one[name] * scale for one in some] for some in turns]
    given = [iter(some) for some in figures]
    value, note, ratio = quantile(figures[0], 0.5), "", None
    if len(figures) > 1:
        value, there, ratio = in_turn(*(given_.__next__ for given_ in given), for_s=0.0, least=ROUNDS)
        note = f"{there:.2f} {unit} there"
    note = "; ".join(filter(None, [note, *(f"{one} {turns[0][0][one]:.3g}" for one in beside), more]))
    return Row(what, f"{value:.2f} {unit}", f"<= {bar:g} {unit}", value <= bar, note, value, ratio=ratio)
