"""Runs every test: `python3 tests/check.py`, with pytest's own arguments after it.

Standard library only. Makes .venv in the checkout, installs Rimfall and its test extra there when what they are made from has
changed, finds a browser or gets one, then runs pytest and ends with pytest's exit code. Browsers, servers and cut-off clients on a crowded
machine are sometimes later than a test waits: a few that fail are run once more, alone, and named; what fails again has failed.
"""

import hashlib
import json
import os
import subprocess
import sys
import venv
from pathlib import Path

from find_browser import WHAT_TO_DO, fetch, find

ROOT = Path(__file__).resolve().parent.parent
VENV = ROOT / ".venv"
PYTHON = VENV / ("Scripts/python.exe" if os.name == "nt" else "bin/python")
STAMP = VENV / "rimfall-installed.txt"
LAST_FAILED = ROOT / ".pytest_cache/v/cache/lastfailed"
FEW = 5  # more than these have failed for another reason than a crowd
MADE_FROM = (
    "pyproject.toml",
    "uv.lock",
    "static/package-lock.json",
    "static/vendor_build.py",
    "tests/package-lock.json",
)


def main():
    if sys.version_info < (3, 11):  # noqa: UP036 - an older Python is told so, instead of failing later
        sys.exit(f"Rimfall needs Python 3.11 or newer; this is {sys.version.split()[0]}.")
    if not works():
        say("making .venv")
        venv.create(VENV, with_pip=True, clear=True, symlinks=os.name != "nt")
    if not installed():
        say("installing Rimfall and what its tests need (a minute or so, the first time)")
        install()
    if subprocess.run([PYTHON, ROOT / "static/vendor_build.py"]).returncode != 0:  # tested is the page as it is shipped
        sys.exit("The page's modules could not be bundled; the reason is above.")
    browser = find(PYTHON) or get_browser()
    say(f"testing, in the browser {browser}")
    # a process more than cores: a browser test waits for its browser most of its time
    workers = os.environ.get("PYTEST_XDIST_AUTO_NUM_WORKERS") or str((os.cpu_count() or 1) + 1)
    environment = os.environ | {"BROWSER_PATH": browser, "PYTEST_XDIST_AUTO_NUM_WORKERS": workers}
    code = pytest(environment)
    if code == 1 and 0 < len(failed := last_failed()) <= FEW:
        say("what failed is run once more, alone")
        code = pytest(environment, "-n0", "--last-failed")
        if code == 0:
            say("failed beside others, passed alone: " + ", ".join(failed))
    sys.exit(code)


def pytest(environment, *more):
    return subprocess.run([PYTHON, "-m", "pytest", *sys.argv[1:], *more], cwd=ROOT, env=environment).returncode


def last_failed():
    """The tests that pytest's cache says failed when they were last run."""
    try:
        return sorted(json.loads(LAST_FAILED.read_text(encoding="utf-8")))
    except (OSError, ValueError):  # run without its cache
        return []


def works():
    """A .venv made by hand, or by the README's other command, is used as it is; one whose Python has gone is made anew."""
    try:
        return subprocess.run([PYTHON, "-m", "pip", "--version"], capture_output=True).returncode == 0
    except OSError:
        return False


def installed():
    vendored = (ROOT / "static/vendor/stamp.txt").is_file()
    return vendored and STAMP.is_file() and STAMP.read_text() == digest()


def digest():
    """Of all that decides what is installed, and of where: an editable install points at its checkout."""
    return hashlib.sha256(b"".join((ROOT / name).read_bytes() for name in MADE_FROM) + bytes(ROOT)).hexdigest()


def install():
    STAMP.unlink(missing_ok=True)
    command = [PYTHON, "-m", "pip", "install", "--quiet", "--disable-pip-version-check", "--editable", f"{ROOT}[test]"]
    if subprocess.run(command).returncode != 0:
        sys.exit("The install failed; the reason is above.")
    if subprocess.run([PYTHON, ROOT / "tests/npm_packages.py"]).returncode != 0:
        sys.exit("What the tests take from npm could not be had; the reason is above.")
    STAMP.write_text(digest())


def get_browser():
    if "BROWSER_PATH" in os.environ:
        sys.exit(f"BROWSER_PATH is {os.environ['BROWSER_PATH']}, which does not start.")
    say("no browser found, getting one")
    return fetch(PYTHON, VENV / "browser") or sys.exit(WHAT_TO_DO)


def say(what):
    print(f"check: {what}", flush=True)


if __name__ == "__main__":
    main()
