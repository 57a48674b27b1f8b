"""Names of files: the same for the same combination, safe everywhere, none twice."""

import csv
import json
import re

from rimfall.scene.reading import read
from rimfall.sweep import folder, grid, parameters
from tests.sweep import runs
from tests.sweep.runs import scene


def stems(*varied):
    made = grid.grid_of(read(json.dumps(scene())), [parameters.parse(text) for text in varied])
    return [folder.file_stem(made, n) for n in range(1, made.count + 1)]


def test_a_name_says_number_and_values():
    assert stems("habitat.spin_rpm=2,2.5", "motions.serve.speed_m_s=4,6")[2] == "0003_spin_rpm=2.5_serve-speed_m_s=4"


def test_great_and_small_values_can_be_told_apart():
    assert stems("motions.serve.place.along_m=1e6,-1e-6") == [
        "0001_serve-place-along_m=1e06",
        "0002_serve-place-along_m=-1e-06",
    ]


def test_names_hold_letters_digits_and_marks_that_every_file_system_takes():
    found = stems(
        "motions.let go.place.along_m=-1.5,1e6", "title=Ä/b:c|<>*?,..", "motions.serve.body=tennis ball,handball"
    )
    assert all(re.fullmatch(r"[0-9]{4}[A-Za-z0-9._=-]{0,116}", name) for name in found)
    assert not any(name.endswith(".") for name in found)


def test_no_two_names_are_the_same_where_letters_have_no_case_and_figures_are_cut():
    found = stems("title=A,a,ä,Ä,ö", "habitat.spin_rpm=1,1.0000001,1.0000002")
    assert len({name.lower() for name in found}) == 15


def test_names_of_many_values_are_cut_to_what_a_file_system_takes():
    fields = [f"motions.{m}.place.{f}" for m in ("serve", "let go") for f in ("along_m", "height_m", "axial_m")]
    found = stems(*(f"{f}=1.23456789,2" for f in fields))
    assert max(map(len, found)) <= 120
    assert len(set(found)) == 64


def test_no_text_of_the_index_is_a_formula_and_numbers_stay_numbers():
    """The list of signs: OWASP, "CSV Injection"."""
    texts = ["=1+1", "+1+1", "-1+1", "@SUM(1)", "\t=1", "\r=1", "\n=1", "＝1", "＋1", "－1+1", "＠a", "-", "--1", "-1-"]
    numbers = ["-1.5", "+2", "-1e-06", "-.5", "0", "", "a=b", "serve", "1-1"]
    (row,) = csv.reader(folder.index_table([texts + numbers]).decode().splitlines(keepends=True))
    assert row == [f"'{text}" for text in texts] + numbers


def test_names_that_would_be_formulas_are_none_in_the_index(tmp_path):
    document = scene() | {"title": "="}
    document["motions"][0]["name"], document["motions"][1]["name"] = "@SUM(A1)", "+cmd"
    file = runs.saved(tmp_path, document)
    over = (
        "--workers",
        1,
        "--over",
        "habitat.spin_rpm=1,2",
        "--over",
        "title=-a,=b",
        "--over",
        "motions.1.place.along_m=-1,1",
    )
    assert runs.vary(file, tmp_path / "out", *over).returncode == 0
    with (tmp_path / "out/index.csv").open(encoding="utf-8", newline="") as index:
        header, *rows = csv.reader(index)
    assert {name[:10] for name in header} >= {"'@SUM(A1)."[:10], "'+cmd.landi"[:10]}
    assert {row[header.index("title")] for row in rows} == {"'-a", "'=b"}
    assert {row[header.index("motions.1.place.along_m")] for row in rows} == {"-1", "1"}
    assert not any(cell[:1] in set("=+@") for row in [header, *rows] for cell in row)
