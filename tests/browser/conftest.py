"""A real server on a free loopback port, a real browser, and pages that fail their test on any trouble they meet.

`page` is the opening scene, drawn and its clock stopped, for drawing without a graphics processor is most of what a test costs.
`open_page(width=390, height=844, path="/#s=…")` opens another, and with playing=True lets it play. A test that causes a trouble
on purpose, such as a refused request, says so with `troubles.expect("422")`.

Painting in software is most of what a page costs. A test that looks at pictures is marked `painted`; for all others the page does
all it does, laid out, shaders compiled and all, but that nothing is painted: neither a triangle of the stages nor the page round
them, which is of no opacity, so that the browser need not make its pixels.
One that only asks whether `picture` or `pictures` changed is marked `glanced`: nothing is painted but while one is taken.

A page is used by many tests, one after the other: its scripts and the browser's compiled code stay warm. Between two tests it
is left, all that a browser keeps of the site is cleared, and it is loaded anew, which is half of what a small test costs.

In a file marked `one_page` the tests share their `page`: before each the opening scene is opened on it anew, in place 2, with the
clock stopped at 0, and all else is as the test before left it (units, what is unfolded, the scenes that are kept). A test that
changes such a thing puts it back, or asks for a page of its own by `open_page()`. After one that failed the page is loaded anew.

With LATE_MS=300 in the environment each answer of the server reaches the page by chance up to 0.3 s late, and so not in the order
it was asked for: what only works while the server is quick fails then.
"""

import json
import os

import pytest

from rimfall.language import TRIED_OUT
from rimfall.scene.examples import example
from tests import pseudo
from tests.browsing import DRAWN, started
from tests.serving import serving

from .looking import LONG_S, PAINTING_OF, open_place, open_scene, stop

REST = "/static/robots.txt"  # where a page is that no test uses
SIZE = {"width": 1440, "height": 900}
KEPT = "local_storage,indexeddb,cookies,cache_storage,service_workers"  # all that a site may leave, but files it has loaded
CLEAR = """() => new Promise(done => {
  localStorage.clear();
  sessionStorage.clear();
  indexedDB.deleteDatabase('rimfall').onsuccess = () => done();  // once the connections of pages that have gone are closed
})"""

OPENING = json.loads(example("same-lob"))

CLOSE = """() => {
  for (const dialog of document.querySelectorAll('dialog[open]')) dialog.close();
  document.querySelector(':popover-open')?.hidePopover();
  document.activeElement.blur();
}"""

# before all scripts of a page: nothing is painted but what `painting` says, which is kept over a reload; the canvas that nothing is
# painted on is there, but the browser need not lay it over the page anew with each frame, nor paint that page; what is printed is seen
PAINTING = """
try { // the look round that comes to a new page by itself is one test's own
  if (!sessionStorage.getItem('looks round')) localStorage['rimfall.view'] ??= '{"guided":true,"warned":true}';
} catch { /* a blank page has no storage */ }
try { window.painting = sessionStorage.getItem('painting'); } catch { /* a blank page has none */ }
const paints = () => window.painting === 'all' || window.looked;
for (const paint of ['clear', 'drawArrays', 'drawArraysInstanced', 'drawElements', 'drawElementsInstanced']) {
  const real = WebGL2RenderingContext.prototype[paint];
  WebGL2RenderingContext.prototype[paint] = function (...given) { if (paints()) real.apply(this, given); };
}
const unseen = new CSSStyleSheet();
unseen.replaceSync('@media screen { .stages-canvas { visibility: hidden } html, dialog, [popover], ::backdrop { opacity: 0 !important } }');
addEventListener('painting', () => { unseen.disabled = paints() || window.read; });  // who reads looks at no stage
addEventListener('DOMContentLoaded', () => {
  document.adoptedStyleSheets.push(unseen);
  dispatchEvent(new Event('painting'));
});"""
LATE_MS = float(os.environ.get("LATE_MS", 0))
LATE = f"""
const asks = window.fetch;
window.fetch = async (...given) => {{
  const answer = await asks(...given);
  await new Promise(done => setTimeout(done, {LATE_MS} * Math.random()));
  given[1]?.signal?.throwIfAborted();
  return answer;
}};"""
PAINT = """painting => {
  sessionStorage.setItem('painting', painting);
  window.painting = painting;
  dispatchEvent(new Event('painting'));
}"""


class Troubles:
    """What a page must not do: throw, write an error to the console, or ask another host for anything."""

    def __init__(self, origin):
        self.origin = origin
        self.seen = []
        self.where = {}  # of what was seen, the address it is about, or the script
        self.expected = []

    def expect(self, part):
        """A trouble with `part` in its words is meant by this test, and must come."""
        self.expected.append(part)

    def threw(self, error):
        self.seen.append(f"error: {error.stack or error}")

    def wrote(self, line):
        if line.type == "error":
            self.seen.append(f"console: {line.text}")
            self.where[self.seen[-1]] = f" ({line.location['url']})"

    def asked(self, request):
        if not request.url.startswith((self.origin + "/", "data:", f"blob:{self.origin}/")):
            self.seen.append(f"left the origin: {request.url}")

    def heard(self):
        return (("pageerror", self.threw), ("console", self.wrote), ("request", self.asked))

    def watch(self, page):
        for event, hear in self.heard():
            page.on(event, hear)

    def leave(self, page):
        for event, hear in self.heard():
            page.remove_listener(event, hear)

    def verdict(self):
        unmeant = [
            trouble + self.where.get(trouble, "")
            for trouble in self.seen
            if not any(part in trouble for part in self.expected)
        ]
        missing = [
            f"expected, but never came: {part}" for part in self.expected if not any(part in t for t in self.seen)
        ]
        return unmeant + missing


class Pages:
    """Pages at rest, by the options of their context, to be opened again."""

    def __init__(self, browser, origin):
        self.browser, self.origin, self.resting = browser, origin, {}

    def take(self, options, painting):
        """An empty page of a context with these options that nothing has been kept in. painting: as `_painting` has it."""
        resting = self.resting.setdefault(_key(options), [])
        if resting:
            page = resting.pop()
        else:
            context = self.browser.new_context(base_url=self.origin, **options)
            context.add_init_script(PAINTING)
            if LATE_MS:
                context.add_init_script(LATE)
            page = context.new_page()
            page.set_default_timeout(LONG_S * 1000)
            page.goto(REST)
        paint(page, painting)
        return page

    def give_back(self, page, options):
        """Leave it as it was taken; a page that was closed, or opened others, goes with its context."""
        context = page.context
        if page.is_closed() or context.pages != [page]:
            context.close()
            return
        page.unroute_all(behavior="ignoreErrors")
        page.goto(REST)  # a page that goes writes what it has not yet, so it is cleared after that
        page.evaluate(CLEAR)
        page.emulate_media(media="null")
        page.mouse.up()
        page.mouse.move(0, 0)
        session = context.new_cdp_session(page)
        session.send("Storage.clearDataForOrigin", {"origin": self.origin, "storageTypes": KEPT})
        session.detach()
        self.resting[_key(options)].append(page)


class OnePage:
    """The page that the tests of one file share."""

    def __init__(self, pages):
        self.pages, self.file, self.page = pages, None, None

    def take(self, file, painting, troubles):
        if file != self.file:
            self.drop()
            self.file = file
        if self.page:
            troubles.watch(self.page)
            paint(self.page, painting)
            self.again(self.page)
            return self.page
        self.page = self.pages.take({}, painting)
        troubles.watch(self.page)
        self.page.set_viewport_size(SIZE)
        self.page.goto("/")
        self.page.locator(DRAWN).first.wait_for()
        stop(self.page)
        return self.page

    def again(self, page):
        page.unroute_all(behavior="ignoreErrors")
        page.emulate_media(media="null", color_scheme="null", reduced_motion="null", forced_colors="null")
        page.mouse.up()
        page.mouse.move(0, 0)
        page.set_viewport_size(SIZE)
        page.evaluate(CLOSE)
        open_scene(page, OPENING)
        if not page.locator("#body-2").is_visible():
            open_place(page, 2)

    def drop(self):
        if self.page:
            self.pages.give_back(self.page, {})
        self.page = None


def _painting(node):
    """What is painted in a test: "all", "pictures" (while one is taken), or "nothing"."""
    return (
        "pictures" if node.get_closest_marker("glanced") else "all" if node.get_closest_marker("painted") else "nothing"
    )


def paint(page, painting):
    page.evaluate(PAINT, painting)
    PAINTING_OF[page] = painting


def _key(options):
    return json.dumps(options, sort_keys=True)


@pytest.fixture(scope="session")
def base_url(tmp_path_factory):
    """The origin of a server of this test run, which speaks the languages of `tests/pseudo.py` besides."""
    pseudo.write(languages := tmp_path_factory.mktemp("languages"))
    environment = {TRIED_OUT: str(languages)}
    log = tmp_path_factory.mktemp("server") / "log.txt"
    with serving(log, environment=environment, arguments=("-m", "tests.served")) as origin:
        yield origin


@pytest.fixture(scope="session")
def browser():
    """A missing browser fails, it never skips."""
    with started() as chromium:
        yield chromium


@pytest.fixture(scope="session")
def pages(browser, base_url):
    return Pages(browser, base_url)


@pytest.fixture
def troubles(base_url):
    watcher = Troubles(base_url)
    yield watcher
    verdict = watcher.verdict()
    assert not verdict, "\n".join(verdict)


@pytest.fixture
def open_page(request, pages, troubles):
    """Opens a page in a browser of its own, as it were: `open_page(path="/", width=1440, height=900, ready=DRAWN, **context)`.
    With `before`, a script that runs before the page's own."""
    opened, before_it, painting = [], [], _painting(request.node)

    def open_one(path="/", *, width=1440, height=900, ready=DRAWN, before=None, playing=False, **options):
        page = pages.take(options, painting)
        opened.append((page, options))
        page.set_viewport_size({"width": width, "height": height})
        if before:  # in a session, and with it gone: the context, whose code is compiled, is another test's again
            before_it.append(page.context.new_cdp_session(page))
            before_it[-1].send("Page.enable")
            before_it[-1].send("Page.addScriptToEvaluateOnNewDocument", {"source": before})
        troubles.watch(page)
        page.goto(path)
        page.locator(ready).first.wait_for()
        if not playing:
            stop(page)
        return page

    yield open_one
    for session in before_it:
        session.detach()
    for page, options in opened:
        troubles.leave(page)
        pages.give_back(page, options)


FAILED = pytest.StashKey[bool]()


@pytest.hookimpl(wrapper=True)
def pytest_runtest_makereport(item):
    report = yield
    if report.failed:
        item.stash[FAILED] = True
    return report


@pytest.fixture(scope="session")
def one_page(pages):
    return OnePage(pages)


@pytest.fixture
def page(request, one_page, troubles, open_page):
    node = request.node
    if node.get_closest_marker("one_page") is None:
        yield open_page()
        return
    page = one_page.take(node.path, _painting(node), troubles)
    yield page
    troubles.leave(page)
    if node.stash.get(FAILED, False) or page.is_closed() or page.context.pages != [page]:
        one_page.drop()
