"""A real server on a free loopback port, a real browser, and pages that fail their test on any trouble they meet.

`page` is the opening scene, drawn. `open_page(width=390, height=844, path="/#s=…")` opens another. A test that causes a
trouble on purpose, such as a refused request, says so with `troubles.expect("422")`.
"""

import pytest

from tests.browsing import DRAWN, started
from tests.serving import serving


class Troubles:
    """What a page must not do: throw, write an error to the console, or ask another host for anything."""

    def __init__(self, origin):
        self.origin = origin
        self.seen = []
        self.expected = []

    def expect(self, part):
        """A trouble with `part` in its words is meant by this test, and must come."""
        self.expected.append(part)

    def watch(self, page):
        page.on("pageerror", lambda error: self.seen.append(f"error: {error.stack or error}"))
        page.on("console", lambda line: self.seen.append(f"console: {line.text}") if line.type == "error" else None)
        page.on("request", self.check_origin)

    def check_origin(self, request):
        if not request.url.startswith((self.origin + "/", "data:", f"blob:{self.origin}/")):
            self.seen.append(f"left the origin: {request.url}")

    def verdict(self):
        unmeant = [trouble for trouble in self.seen if not any(part in trouble for part in self.expected)]
        missing = [
            f"expected, but never came: {part}" for part in self.expected if not any(part in t for t in self.seen)
        ]
        return unmeant + missing


@pytest.fixture(scope="session")
def base_url(tmp_path_factory):
    """The origin of a server of this test run."""
    with serving(tmp_path_factory.mktemp("server") / "log.txt") as origin:
        yield origin


@pytest.fixture(scope="session")
def browser():
    """A missing browser fails, it never skips."""
    with started() as chromium:
        yield chromium


@pytest.fixture
def troubles(base_url):
    watcher = Troubles(base_url)
    yield watcher
    verdict = watcher.verdict()
    assert not verdict, "\n".join(verdict)


@pytest.fixture
def open_page(browser, base_url, troubles):
    """Opens a page of its own context: `open_page(path="/", width=1440, height=900, ready=DRAWN, **context)`."""
    contexts = []

    def open_one(path="/", width=1440, height=900, ready=DRAWN, **options):
        context = browser.new_context(base_url=base_url, viewport={"width": width, "height": height}, **options)
        contexts.append(context)
        page = context.new_page()
        troubles.watch(page)
        page.goto(path)
        page.locator(ready).wait_for()
        return page

    yield open_one
    for context in contexts:
        context.close()


@pytest.fixture
def page(open_page):
    return open_page()
