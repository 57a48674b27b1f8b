"""The browser that the tests, the benchmark and the README's picture drive, and how it is started here."""

import contextlib
import os

from playwright.sync_api import sync_playwright

from tests.find_browser import WHAT_TO_DO, find

FLAGS = [
    "--use-angle=swiftshader",
    "--enable-unsafe-swiftshader",
    "--disable-gpu-compositing",  # without a GPU the page around the stages is drawn at half the work by the plain way
    "--disable-gpu-rasterization",
    "--disable-background-networking",
    "--disable-component-update",
    "--disable-sync",
    "--no-first-run",
    "--host-resolver-rules=MAP * ~NOTFOUND , EXCLUDE 127.0.0.1",
]
DRAWN = "#stages[data-drawn-radius]"  # set by the page once an answer is on screen


class NoBrowser(Exception):
    """None is here; its words say what to do."""


@contextlib.contextmanager
def started():
    """Yields a browser, drawing in software; raises NoBrowser."""
    program = find()
    if program is None:
        raise NoBrowser(WHAT_TO_DO)
    as_root = ["--no-sandbox"] if hasattr(os, "geteuid") and os.geteuid() == 0 else []
    with sync_playwright() as playwright:
        browser = playwright.chromium.launch(executable_path=program, args=FLAGS + as_root)
        yield browser
        browser.close()
