"""`python -m tests.picture`: makes the README's picture anew, the opening scene in mid-flight, as the program draws it."""

import tempfile
from pathlib import Path

from tests.browsing import DRAWN, started
from tests.serving import ROOT, serving

WIDTH, HEIGHT = 1440, 900
MOMENT_S = 0.83


def main():
    with tempfile.TemporaryDirectory() as folder, serving(Path(folder) / "log.txt") as origin, started() as browser:
        page = browser.new_page(viewport={"width": WIDTH, "height": HEIGHT})
        page.goto(origin)
        page.locator(DRAWN).wait_for()
        page.wait_for_timeout(int(MOMENT_S / 0.25 * 1000))  # it opens playing at a quarter of its pace
        page.keyboard.press("Space")
        page.wait_for_timeout(500)
        page.screenshot(path=ROOT / "static" / "opening.png")


if __name__ == "__main__":
    main()
