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
        page.add_init_script("localStorage['rimfall.view'] ??= '{\"guided\":true}'")  # without the look round
        page.goto(origin)
        page.locator(DRAWN).wait_for()
        page.keyboard.press("Space")
        page.locator(".scrub").evaluate(
            "(e, t) => { e.value = t; e.dispatchEvent(new Event('input', {bubbles: true})); }", MOMENT_S
        )
        page.locator("#stages[data-frame=still]").wait_for()
        page.wait_for_timeout(500)
        page.screenshot(path=ROOT / "static" / "opening.png")


if __name__ == "__main__":
    main()
