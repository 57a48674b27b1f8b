"""`rimfall landings`: words and a table, JSON, files; and a line for what is wrong."""

import json
import re

from rimfall.scene import examples
from tests.commands import rimfall
from tests.tables import each_row

OVER = ("--over", "elevation_deg=0..80/9", "--over", "speed_m_s=2..20/10")
GALLEY = examples.example("galley")


def test_words_a_table_and_files(tmp_path):
    done = rimfall(
        "landings", "-", *OVER, "--export", tmp_path / "net.csv", "--export", tmp_path / "net.svg", given=GALLEY
    )
    assert (done.returncode, done.stderr) == (0, "")
    assert sorted(path.name for path in tmp_path.iterdir()) == ["net.csv", "net.notes.json", "net.svg"]
    answer = json.loads(rimfall("landings", "-", "--motion", "serve", *OVER, "--json", given=GALLEY).stdout)
    said = done.stdout.splitlines()
    assert [line.replace("\u00a0", " ") for line in answer["words"]] == said[: len(answer["words"])]
    table = [re.split("  +", line) for line in said if re.match(r"\d+°", line)]
    assert len(table) == 9
    for row, cells in enumerate(table):
        for column, cell in enumerate(cells[1:]):
            k = 10 * row + column
            ending = answer["endings"][int(answer["ended"][k])]
            assert cell == (f"{answer['spinward_m'][k]:.2f}" if ending == "landed" else ending)


@each_row(
    ("options", "says"),
    [
        ((), "--over was not given; it must be given twice"),
        (OVER[:2], "--over was given once; it must be given twice"),
        (("--over", "speed_m_s=-2..20/9", *OVER[:2]), "First speed was -2 m/s; it must be 0 to 3,000 m/s"),
        (("--over", "speed_m_s=2..2/9", *OVER[:2]), "Last speed was 2 m/s; it must be another value than the first"),
        (("--over", "elevation_deg=0,10", *OVER[2:]), "is not a range"),
        (("--over", "height_m=0..80/9", *OVER[2:]), "must be speed_m_s or heading_deg or elevation_deg"),
        ((*OVER, "--motion", "tea"), "a throw of the scene: serve"),
        ((*OVER, "--export", "net.png"), "it may end in .csv, .notes.json, .svg, .pdf"),
        ((*OVER, "--max-seconds", "0"), "must be above 0"),
    ],
)
def test_what_is_wrong_is_a_line_that_names_it(options, says):
    done = rimfall("landings", "-", *options, given=GALLEY)
    assert (done.returncode, done.stdout) == (2, "")
    assert says in done.stderr
    assert done.stderr.count("\n") == 1


def test_which_throw_is_asked_where_there_are_several():
    done = rimfall("landings", "-", *OVER, given=examples.example("same-lob"))
    assert done.returncode == 2
    assert "one of Lob out, Lob back" in done.stderr
