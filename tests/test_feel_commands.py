"""`rimfall feel` and `rimfall size` as a user types them."""

import json
import xml.etree.ElementTree as ElementTree

import pytest

from tests.test_cli import EXAMPLES, rimfall

GALLEY = EXAMPLES / "galley.json"
HABITAT = json.dumps({"habitat": {"radius_m": 56.0, "spin_rpm": 3.0}})


def test_people_are_told_in_words_tables_sources_and_a_caution():
    done = rimfall("feel", GALLEY)
    assert (done.returncode, done.stderr) == (0, "")
    said = done.stdout
    assert "Standing, you weigh 0.56" in said
    assert "No published limit found" in said
    assert "Turning the head quickly" in said
    assert "not medical advice" in said
    assert "\u00a0" not in said
    sources = said[said.index("\nSources\n") :]
    answer = json.loads(rimfall("feel", GALLEY, "--json").stdout)
    for row in answer["limits"]:
        assert row["source"] in sources
        assert f"{row['study']} {row['year'] or ''}".strip() in said


def test_a_habitat_alone_is_read_from_standard_input():
    assert "Untitled scene" in rimfall("feel", "-", given=HABITAT).stdout


def test_us_units_change_the_words():
    assert "ft/s" in rimfall("feel", GALLEY, "--units", "us").stdout


def test_the_map_is_written_whole(tmp_path):
    for name in ("limits.svg", "limits.pdf"):
        done = rimfall("feel", GALLEY, "--map", tmp_path / name)
        assert (done.returncode, done.stderr) == (0, "")
    assert ElementTree.fromstring((tmp_path / "limits.svg").read_text(encoding="utf-8")).tag.endswith("svg")
    assert (tmp_path / "limits.pdf").read_bytes().startswith(b"%PDF")
    done = rimfall("feel", GALLEY, "--map", tmp_path / "limits.bmp")
    assert done.returncode == 2
    assert "limits.bmp" in done.stderr
    assert sorted(p.name for p in tmp_path.iterdir()) == ["limits.pdf", "limits.svg"]


def test_the_smallest_habitat_of_two_wishes():
    done = rimfall("size", "--exactly", "gravity=1", "--most", "spin=2")
    assert (done.returncode, done.stderr) == (0, "")
    assert "224 m" in done.stdout
    answer = json.loads(rimfall("size", "--exactly", "gravity=1", "--most", "spin=2", "--json").stdout)
    assert answer["smallest"]["radius_m"] == pytest.approx(223.6, abs=0.05)  # 1 g at 2 rpm


def test_wishes_of_a_file_and_of_options_go_together():
    wishes = json.dumps(
        {
            "wishes": [{"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 1}],
            "person": {"height_m": 1.6},
        }
    )
    answer = json.loads(rimfall("size", "-", "--most", "spin=2", "--height", "1.8", "--json", given=wishes).stdout)
    assert len(answer["wishes"]) == 2
    assert answer["person"]["height_m"] == 1.8


def test_an_impossible_wish_is_an_answer_and_no_failure():
    done = rimfall("size", "--exactly", "gravity=1", "--most", "spin=2", "--most", "radius=60")
    assert (done.returncode, done.stderr) == (0, "")
    assert "60" in done.stdout


@pytest.mark.parametrize(
    ("arguments", "said"),
    [
        (("--exactly", "gravity"), "gravity"),
        (("--exactly", "gravity=lots"), "lots"),
        (("--exactly", "gravity=nan"), "nan"),
        (("--exactly", "gravity=-1"), "-1"),
        (("--exactly", "taste=1"), "taste"),
        (("--study", "nobody_1900"), "nobody_1900"),
        (("--most", "spin=2", "--height", "tall"), "tall"),
        ((), "wishes"),
        (("nowhere.json",), "nowhere.json"),
    ],
)
def test_what_cannot_be_wished_is_one_clear_line(arguments, said):
    done = rimfall("size", *arguments)
    assert done.returncode == 2
    assert done.stdout == ""
    assert said in done.stderr.lower()
    assert "Traceback" not in done.stderr
