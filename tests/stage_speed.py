"""`python -m tests.stage_speed [--tree FOLDER]`: how long a frame of the opening scene's stages takes at 1280 x 720 in software rendering, to its
last pixel, at each of the steps by which a slow machine draws fewer of them (static/views/webgl.js); several trees by turns, to compare."""

import argparse
import contextlib
import statistics
import tempfile
from pathlib import Path

from tests.benchmark.commit import HERE
from tests.benchmark.frames import _as_modules
from tests.browsing import DRAWN, started
from tests.serving import serving

STEPS = (1.0, 0.84, 0.71, 0.6, 0.5)
FRAMES, ROUNDS = 12, 5
# a frame is over when a pixel of it can be read
TIMED = """([ratio, count]) => {
  const { stages, picture } = globalThis.watched, gl = picture.renderer.getContext(), took = [], pixel = new Uint8Array(4);
  picture.timer.adapted = () => ratio;
  for (let k = -2; k < count; k += 1) {
    stages.clock.seek(0.2 + 0.1 * (k + 2));
    const from = performance.now();
    stages.drawHalves(false);
    gl.readPixels(0, 0, 1, 1, gl.RGBA, gl.UNSIGNED_BYTE, pixel);
    if (k >= 0) took.push(performance.now() - from);
  }
  return took;
}"""


def watching(route):
    """The module of the stages, which then tells where they are."""
    answer = route.fetch()
    text = answer.text().replace(
        "    this.listen();", "    globalThis.watched = { stages: this, picture };\n    this.listen();", 1
    )
    route.fulfill(response=answer, body=text)


def opened(browser, tree, stack):
    folder = Path(stack.enter_context(tempfile.TemporaryDirectory()))
    origin = stack.enter_context(serving(folder / "log.txt", tree, {"PYTHONPATH": f"{tree}/server"}))
    page = browser.new_context(viewport={"width": 1280, "height": 720}, base_url=origin).new_page()
    page.route(f"{origin}/", _as_modules)
    page.route("**/views/stage.js", watching)
    page.goto("/")
    page.locator(DRAWN).wait_for()
    page.wait_for_timeout(3000)
    page.keyboard.press("Space")
    return page


def main():
    ask = argparse.ArgumentParser(description=__doc__)
    ask.add_argument(
        "--tree", action="append", default=[], help="another checkout, with what its build fetches in place"
    )
    trees = [HERE.folder, *(Path(one) for one in ask.parse_args().tree)]
    with started() as browser, contextlib.ExitStack() as stack:
        pages = [opened(browser, tree, stack) for tree in trees]
        for ratio in STEPS:
            rounds = [
                [statistics.median(page.evaluate(TIMED, [ratio, FRAMES])) for page in pages] for _ in range(ROUNDS)
            ]
            best = [min(times) for times in zip(*rounds, strict=True)]
            print(f"{ratio:.2f}", *(f"{ms:7.1f} ms {1000 / ms:6.1f} frames a second" for ms in best), sep="   ")


if __name__ == "__main__":
    main()
