"""`python -m tests.picture`: makes the README's picture anew, the opening scene in mid-flight, as the program draws it."""

import os
import sys
import tempfile
from pathlib import Path

from playwright.sync_api import sync_playwright

from tests.browser.conftest import DRAWN, FLAGS
from tests.find_browser import WHAT_TO_DO, find
from tests.serving import ROOT, serving

WIDTH, HEIGHT = 1440, 900
MOMENT_S = 0.83


def main():
    program = find() or sys.exit(WHAT_TO_DO)
    as_root = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    with (
        tempfile.TemporaryDirectory() as folder,
        serving(Path(folder) / "log.txt") as origin,
        sync_playwright() as playwright,
    ):
        browser = playwright.chromium.launch(executable_path=program, args=FLAGS + as_root)
        page = browser.new_page(viewport={"width": WIDTH, "height": HEIGHT})
        page.goto(origin)
        page.locator(DRAWN).wait_for()
        page.wait_for_timeout(int(MOMENT_S / 0.25 * 1000))  # it opens playing at a quarter of its pace
        page.keyboard.press("Space")
        page.wait_for_timeout(500)
        page.screenshot(path=ROOT / "static" / "opening.png")
        browser.close()


if __name__ == "__main__":
    main()
