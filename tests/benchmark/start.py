"""How soon a command, the page's first byte and its first picture are there, in processor time: of all processes that it takes."""

import contextlib
import http.client
import subprocess
import tempfile
import time
from pathlib import Path

import psutil

from tests.browsing import DRAWN, started
from tests.serving import SERVE, free_port, serving

from .commit import HERE
from .row import Row, in_turn

PICTURES = 5
# when the first picture is there to its last pixel the page halts, so that what comes after it does not count
HALTS = """addEventListener('rimfall:drawn', () => {
  const gl = document.querySelector('#stages canvas').getContext('webgl2');
  gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, new Uint8Array(4));
  alert('drawn');
}, { once: true })"""


def measure(against=None):
    yield _row("rimfall --version, processor time", version_s, against, 0.3, for_s=3.0)
    yield _row("rimfall serve to the first byte of the page, processor time", first_byte_s, against, 0.8, for_s=10.0)
    with started() as browser:
        counts = [_counted(browser, tree) for tree in (HERE, against) if tree]
        row = _row("the same to the first picture, browser, server and workers, processor time", lambda tree: first_picture_s(browser, tree),
                   against, None, for_s=60.0, most=PICTURES, counts=counts)  # fmt: skip
        yield row


def _row(what, seconds, against, bar_s, counts=(), **turns):
    """A row of seconds(tree), by turns with the other commit; without a bar in seconds the bar is half of the commit's."""
    counted = {"counts": counts[0] if counts else {}, "counts_there": counts[1] if len(counts) > 1 else {}}
    if against is None:
        value = min(seconds(HERE) for _ in range(3))
        reached = None if bar_s is None else value <= bar_s
        return Row(what, f"{value:.2f} s", f"<= {bar_s} s" if bar_s else "", reached, value=value, **counted)
    value, there, ratio = in_turn(lambda: seconds(HERE), lambda: seconds(against), **turns)
    bar = "<= 1/2 of the commit's" if bar_s is None else f"<= {bar_s} s"
    reached = ratio.median <= 0.5 if bar_s is None else value <= bar_s
    return Row(what, f"{value:.2f} s", bar, reached, f"{there:.2f} s there", value, ratio=ratio, **counted)


def version_s(tree):
    before = psutil.Process().cpu_times()
    subprocess.run(
        [tree.python, "-m", "rimfall", "--version"],
        env=tree.environment,
        cwd=tree.folder,
        stdout=subprocess.DEVNULL,
        check=True,
    )
    after = psutil.Process().cpu_times()
    return after.children_user + after.children_system - before.children_user - before.children_system


def first_byte_s(tree):
    """Of the server and its workers, as far as they are by then."""
    port = free_port()
    command = [tree.python, *SERVE, str(port)]
    with subprocess.Popen(command, env=tree.environment, cwd=tree.folder, stdout=subprocess.DEVNULL) as process:
        while True:
            try:
                with contextlib.closing(http.client.HTTPConnection("127.0.0.1", port, timeout=5)) as connection:
                    connection.request("GET", "/")
                    connection.getresponse().read(1)
                    break
            except OSError:
                time.sleep(0.01)
        server = psutil.Process(process.pid)
        used = _seconds([server, *server.children(recursive=True)])
        process.terminate()
    return used


def first_picture_s(browser, tree):
    with (
        _served(tree) as origin,
        contextlib.closing(browser.new_context(viewport={"width": 1280, "height": 720})) as context,
    ):
        page, used = context.new_page(), []
        page.add_init_script(HALTS)
        page.on("dialog", lambda dialog: (used.append(_of("chrom") + _of("python")), dialog.dismiss()))
        before = _of("chrom")
        page.goto(origin, wait_until="commit")
        page.locator(DRAWN).wait_for()
        return used[0] - before


def _counted(browser, tree):
    """Requests and bytes until the first picture is there, and a second longer."""
    from .page import weigh

    with _served(tree) as origin, contextlib.closing(browser.new_context()) as context:
        sent = weigh(context.new_page(), origin)
    return {"requests": len(sent), "bytes": sum(sent.values())}


@contextlib.contextmanager
def _served(tree):
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder) / "log.txt", tree.folder, tree.environment) as origin,
    ):
        yield origin


def _of(name):
    return _seconds(one for one in psutil.Process().children(recursive=True) if name in one.name())


def _seconds(processes):
    return sum(sum(one.cpu_times()[:2]) for one in processes)
