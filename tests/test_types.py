"""The public face and the protocols are typed, and a type checker agrees: pyright, as pyproject.toml sets it up."""

import json
import os
import sys
import tomllib
from pathlib import Path

import pytest

from tests import npm_packages

ROOT = Path(__file__).resolve().parent.parent
WRONG = (
    'import rimfall\n\nrimfall.trace("same-lob")\nrimfall.trace(rimfall.open_scene({})).motions["a"].landing.time_s\n'
)


@pytest.fixture(autouse=True)
def room_for_what_is_young(monkeypatch):
    """For node's collector: with its own 16 MB pyright takes a quarter longer."""
    monkeypatch.setenv("NODE_OPTIONS", "--max-semi-space-size=64")


def complaints(settings, folder):
    """(file name, line, message) of every error that pyright finds by these settings, in a folder of their own."""
    (folder / "pyrightconfig.json").write_text(json.dumps(settings), encoding="utf-8")
    done = npm_packages.run("pyright/index.js", "--outputjson", "--pythonpath", sys.executable, "-p", folder, cwd=ROOT)
    found = json.loads(done.stdout)
    assert found["summary"]["filesAnalyzed"] > len(settings["include"]), done.stdout + done.stderr
    errors = [d for d in found["generalDiagnostics"] if d["severity"] == "error"]
    return [(Path(e["file"]).name, e["range"]["start"]["line"] + 1, e["message"]) for e in errors]


def settings_in(folder):
    """Those of pyproject.toml, with paths from a folder."""
    own = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["tool"]["pyright"]
    return own | {
        name: [os.path.relpath(ROOT / path, folder) for path in own[name]] for name in ("include", "extraPaths")
    }


@pytest.mark.long
def test_all_is_typed_but_a_name_in_place_of_a_scene_and_a_landing_that_may_be_none(tmp_path):
    """One run over what is ours and a file with two mistakes: a checker that found nothing wrong anywhere would find nothing there."""
    (tmp_path / "wrong.py").write_text(WRONG, encoding="utf-8")
    settings = settings_in(tmp_path)
    settings["include"].append("wrong.py")
    found = complaints(settings, tmp_path)
    assert [one for one in found if one[0] != "wrong.py"] == []
    assert [line for _, line, _ in found] == [3, 4]
