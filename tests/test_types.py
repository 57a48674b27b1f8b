"""The public face and the protocols are typed, and a type checker agrees: pyright, as pyproject.toml sets it up."""

import json
import sys
from pathlib import Path

from tests import npm_packages

ROOT = Path(__file__).resolve().parent.parent
WRONG = (
    'import rimfall\n\nrimfall.trace("same-lob")\nrimfall.trace(rimfall.open_scene({})).motions["a"].landing.time_s\n'
)


def complaints(project):
    """(file name, line, message) of every error that pyright finds in a project's folder."""
    done = npm_packages.run("pyright/index.js", "--outputjson", "--pythonpath", sys.executable, "-p", project, cwd=ROOT)
    found = json.loads(done.stdout)
    assert found["summary"]["filesAnalyzed"] >= 1, done.stdout + done.stderr
    errors = [d for d in found["generalDiagnostics"] if d["severity"] == "error"]
    return [(Path(e["file"]).name, e["range"]["start"]["line"] + 1, e["message"]) for e in errors]


def test_the_public_face_and_the_protocols_are_typed():
    assert complaints(ROOT) == []


def test_a_name_in_place_of_a_scene_and_a_landing_that_may_be_none_are_found(tmp_path):
    """A checker that found nothing wrong anywhere would pass the test above."""
    (tmp_path / "wrong.py").write_text(WRONG, encoding="utf-8")
    (tmp_path / "pyrightconfig.json").write_text(json.dumps({"extraPaths": [str(ROOT / "server")]}), encoding="utf-8")
    assert [line for _, line, _ in complaints(tmp_path)] == [3, 4]
