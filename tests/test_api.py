"""The doorway: its documented examples run as written, and its answers are those of closed forms and of the commands."""

import json
import math
import re
import subprocess
import sys
from pathlib import Path

import numpy as np
import pytest

from rimfall import api
from rimfall.errors import BadInput
from tests.commands import rimfall

ROOT = Path(__file__).resolve().parent.parent
FENCED = re.compile(r"^```python\n(.*?)^```", re.MULTILINE | re.DOTALL)
README = FENCED.findall((ROOT / "README.md").read_text(encoding="utf-8"))
DOCUMENTED = FENCED.findall(api.__doc__)
RADIUS_M, RPM, HEIGHT_M = 56.0, 3.0, 1.5
# The landings are those that tests/cli/test_commands.py has of the same lobs, 17.1 ft spinward; 0.9 g at 2 rpm is a = w^2 R.
SAID = (
    "Lob out lands at 5.21 m after 1.06 s\nLob back lands at -10.72 m after 2.56 s\n",
    "highest: 2.141 m, samples: (51, 3)\n",
    "{'habitat.spin_rpm': 1} 17.37 m\n{'habitat.spin_rpm': 3} 5.21 m\n{'habitat.spin_rpm': 6} 2.15 m\n",
    "Standing, you weigh 0.56 of your Earth weight at the feet and 0.55 at the head. Run spinward at 4.0\u00a0m/s and it is 0.85; run "
    "back, 0.34.\nInside 22 of the 25 published limits; beyond three: two on spin and one on turning the head.\n201 m\n",
    "Throw at 10\u00a0m/s, almost level, 2° up, antispinward: it arrives after 6.0\u00a0s; or 24° up, after 9.6\u00a0s.\n"
    "A degree too high misses by 0.91\u00a0m, a degree to the side by 1.05\u00a0m, 1 % too fast by 0.28\u00a0m.\n"
    "2.29 degrees up, after 6.0 s\n23.7 degrees up, after 9.62 s\n",
    "992 of 1,517 throws come down on the deck, from 0.33\u00a0m to 17.95\u00a0m spinward, after 0.35 to 1.89\u00a0s.\n"
    "Farthest spinward goes the throw at 20.0\u00a0m/s, 32° up: 17.95\u00a0m after 1.10\u00a0s.\n"
    "The ceiling stops 525, the slowest of them at 6.0\u00a0m/s, 78° up.\n(41, 37) 17.95 m\n",
    "This path is possible: a habitat of 56.09\u00a0m in radius that turns at 3.00\u00a0rpm with 0.564\u00a0g at its deck gives it, "
    "0.41\u00a0mm off the points on the average.\n2.98 to 3.02 rpm\n",
    "To bring the turning part to 3\u00a0rpm takes 5\u00a0h 51\u00a0min and 527 turns at 20\u00a0kN\u00a0m, and up to 6.28\u00a0kW; "
    "66.3\u00a0MJ are in it then.\nThe still part would turn the other way at 124\u00a0rpm unless something holds it; "
    "a wheel of 60\u00a0t and 25\u00a0m at 107\u00a0rpm would.\n"
    "2.929 rpm if the joint seizes\n",
    "Derselbe Bogenwurf, in beide Richtungen\n['Bogenwurf hin', 'Bogenwurf zurück']\n",
)
DROP = {
    "rimfall": 1,
    "habitat": {"radius_m": RADIUS_M, "spin_rpm": RPM},
    "air": None,
    "motions": [
        {"kind": "drop", "name": "let go", "place": {"height_m": HEIGHT_M}, "body": {"mass_kg": 0.1, "diameter_m": 0.0}}
    ],
}


def test_the_readme_has_the_examples_of_the_module():
    assert len(DOCUMENTED) == 9
    assert README == DOCUMENTED


def in_a_shell(code, folder, *arguments):
    """What Python says of code in a process of its own, whose warnings are errors, and its errors."""
    done = subprocess.run(
        [sys.executable, "-W", "error", "-c", code, *arguments], cwd=folder, capture_output=True, encoding="utf-8",
        env={"PYTHONPATH": str(ROOT / "server"), "PATH": "", "SYSTEMROOT": ""},
    )  # fmt: skip
    return done.stdout, done.stderr


def test_an_example_runs_as_written(tmp_path):
    assert in_a_shell(DOCUMENTED[0], tmp_path) == (SAID[0], "")


EACH = """
import sys

for code in sys.argv[1:]:
    exec(compile(code, "example", "exec"), {"__name__": "__main__"})
    print("----")
"""


def test_every_example_runs_as_written(tmp_path):
    """In one process, each with names of its own: most of what one takes is the start."""
    said, complained = in_a_shell(EACH, tmp_path, *DOCUMENTED)
    assert complained == ""
    assert tuple(said.split("----\n")) == (*SAID, "")


def test_a_drop_falls_as_its_straight_line_says():
    motion = api.trace(api.open_scene(DROP)).motions["let go"]
    omega, start = RPM * math.pi / 30, RADIUS_M - HEIGHT_M
    time_s = math.sqrt(RADIUS_M**2 - start**2) / (omega * start)  # the tangent from the release to the rim
    along = RADIUS_M * (math.acos(start / RADIUS_M) - omega * time_s)
    assert (motion.landing.kind, motion.end) == ("deck", "landed")
    assert (motion.landing.time_s, motion.landing.along_m) == pytest.approx((time_s, along), abs=1e-9)
    line = np.stack([np.full_like(motion.time_s, start), omega * start * motion.time_s, 0 * motion.time_s], axis=1)
    np.testing.assert_allclose(motion.inertial_m, line, atol=1e-9)
    turned = motion.rotating_m[:, 0] + 1j * motion.rotating_m[:, 1]
    np.testing.assert_allclose(turned * np.exp(1j * omega * motion.time_s), line[:, 0] + 1j * line[:, 1], atol=1e-9)


def test_scenes_come_from_files_dicts_and_names(tmp_path):
    file = tmp_path / "scene.json"
    file.write_text(json.dumps(DROP), encoding="utf-8")
    assert api.open_scene(file) == api.open_scene(str(file)) == api.open_scene(DROP)
    assert api.open_scene("galley").title
    for wrong in ("no such thing", DROP | {"habitat": {"radius_m": -1, "spin_rpm": 3}}):
        with pytest.raises(BadInput):
            api.open_scene(wrong)


def test_an_export_is_the_file_of_the_command(tmp_path):
    scene = tmp_path / "scene.json"
    scene.write_text(json.dumps(DROP), encoding="utf-8")
    path = api.export(api.open_scene(DROP), tmp_path / "ours.csv", view="inertial", fps=25, unit="cm")
    command = ["trace", scene, "--export", tmp_path / "theirs.csv", "--view", "inertial", "--fps", "25", "--unit", "cm"]
    assert rimfall(*command).returncode == 0
    assert path.read_bytes() == (tmp_path / "theirs.csv").read_bytes()
    for wrong in (
        {"path": tmp_path / "ours.xyz"},
        {"path": tmp_path / "no.csv", "fps": 0},
        {"path": tmp_path / "a/b.csv"},
    ):
        with pytest.raises(BadInput):
            api.export(api.open_scene(DROP), **wrong)
    assert {p.name for p in tmp_path.iterdir()} >= {"ours.csv"}
    assert not (tmp_path / "no.csv").exists()


def test_values_may_be_numpy_s():
    scene = api.open_scene(DROP)
    found = api.vary(scene, {"habitat.spin_rpm": np.linspace(1, 2, 3), "motions.0.bounces": np.arange(2)})
    assert [s.motions[0].bounces for _, s in found] == [0, 1] * 3


def test_varied_scenes_come_in_order_and_are_checked_before_the_first():
    scene = api.open_scene(DROP)
    found = list(api.vary(scene, {"habitat.spin_rpm": [1, 2], "motions.let go.place.height_m": [1.0, 2.5]}))
    assert [tuple(values.values()) for values, _ in found] == [(1, 1), (1, 2.5), (2, 1), (2, 2.5)]
    assert [(s.habitat.spin_rpm, s.motions[0].place.height_m) for _, s in found] == [(1, 1), (1, 2.5), (2, 1), (2, 2.5)]
    with pytest.raises(BadInput, match=r"Spin was 900 rpm"):
        api.vary(scene, {"habitat.spin_rpm": [1, 900]})
    # any value of the document, not only figures
    bodies = [{"mass_kg": 0.2, "diameter_m": 0.1}, "handball"]
    assert [s.motions[0].body for _, s in api.vary(scene, {"motions.0.body": bodies})][1] == "handball"


def test_another_language_is_that_of_words_and_of_nothing_else():
    with api.speaking("de"):
        german = api.trace(api.open_scene("same-lob"))
    english = api.trace(api.open_scene("same-lob"))
    assert german.scene.title != english.scene.title
    for one, other in zip(english.motions.values(), german.motions.values(), strict=True):
        assert one.words != other.words
        assert np.array_equal(one.inertial_m, other.inertial_m)
    with pytest.raises(BadInput, match="Language was de_DE; it must be en or de"), api.speaking("de_DE"):
        pass
