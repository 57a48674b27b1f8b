"""`rimfall feel` and `rimfall size` as a user types them."""

import json
import re
import xml.etree.ElementTree as ElementTree

import pytest

from tests.cli.test_commands import EXAMPLES
from tests.commands import rimfall
from tests.tables import each_row

GALLEY = EXAMPLES / "galley.json"
HABITAT = json.dumps({"habitat": {"radius_m": 56.0, "spin_rpm": 3.0}})


def test_people_are_told_in_words_tables_sources_and_a_caution():
    done = rimfall("feel", GALLEY)
    assert (done.returncode, done.stderr) == (0, "")
    said = done.stdout
    assert "Standing, you weigh 0.56" in said
    assert "No published limit found" in said
    assert "Turning the head quickly" in said
    assert "none of this is medical advice" in said
    assert "\u00a0" not in said
    sources = said[said.index("\nSources\n") :]
    answer = json.loads(rimfall("feel", GALLEY, "--json").stdout)
    for row in answer["limits"]:
        assert row["source"] in sources
        assert f"{row['study']} {row['year'] or ''}".strip() in said


def test_a_habitat_alone_is_read_from_standard_input():
    assert "Untitled scene" in rimfall("feel", "-", given=HABITAT).stdout


def test_us_units_change_words_figures_levels_and_limits():
    """Of the same habitat, with the international foot of 1959; figures in g, rpm and degrees stay."""
    si, us = (rimfall("feel", "-", "--units", units, given=HABITAT).stdout for units in ("si", "us"))

    def figure(text, label):
        (found,) = re.findall(rf"^ +{re.escape(label)} +(-?[\d.,]+) +(\S+)$", text, re.MULTILINE)
        return float(found[0].replace(",", "")), found[1]

    for label, unit, us_unit, per in (
        ("Rim speed", "m/s", "ft/s", 1 / 0.3048),
        ("Change with height", "g/m", "g/ft", 0.3048),
        ("Dropped from the hand: lands, spinward positive", "m", "ft", 1 / 0.3048),
        ("At the feet", "g", "g", 1.0),
    ):
        (value, told), (shown, us_told) = figure(si, label), figure(us, label)
        assert (told, us_told) == (unit, us_unit)
        assert shown == pytest.approx(value * per, rel=0.01)
    assert "9.84 ft up" in us
    assert "3 m up" in si
    assert "at least 32.8 ft/s" in us
    assert re.search(r"Rim speed, [\d.]+ ft/s\.", us)
    assert not re.search(r"\d ?m(/s)?\b|g/m\b", us[: us.index("\nSources\n")])


def test_what_is_passed_by_little_is_not_said_to_be_passed_one_time():
    here = json.dumps({"habitat": {"radius_m": 56.0, "spin_rpm": 3.0004}})
    (line,) = [
        line
        for line in rimfall("feel", "-", given=here).stdout.splitlines()
        if "Cramer 1985" in line and "at most 3 rpm" in line
    ]
    assert line.endswith("beyond by less than 0.001 rpm")


def test_figures_are_without_powers_of_ten():
    """A limit of one's own may be a million, a small one past by as much, and a turn may take a year."""
    own = [
        {"quantity": "gradient", "bound": bound, "value": value}
        for bound, value in (("at_least", 1e6), ("at_most", 1e-6))
    ]
    said = rimfall(
        "feel", "-", given=json.dumps({"habitat": {"radius_m": 9e4, "spin_rpm": 2e-6}, "own_limits": own})
    ).stdout
    assert "at least 1,000,000 %" in said
    assert "One turn takes" in said
    assert not re.search(r"\d[eE][+-]\d", said)


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


@each_row(
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
