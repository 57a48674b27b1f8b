"""The commands as a user types them: words and a table, JSON, CSV; and one clear line for what is wrong."""

import csv
import json
import math
import re
import shlex
import socket
import subprocess
import sys
from pathlib import Path

import pytest

from rimfall import __main__ as door
from rimfall.cli.main import COMMANDS, _parser
from rimfall.scene import examples, questions
from tests.commands import in_a_process, rimfall
from tests.scene.documents import trace_of
from tests.tables import each_row

ROOT = Path(__file__).resolve().parents[2]
EXAMPLES = ROOT / "server/rimfall/scene/examples"
STRAIGHT_M = 1e-5  # six places in a file, and the double's own rounding


@each_row("name", COMMANDS)
def test_the_help_of_a_command_says_what_it_does_and_gives_examples_that_it_takes(name):
    told = rimfall(name, "--help").stdout
    does = COMMANDS[name]
    assert f"{does[:1].upper()}{does[1:]}." in told
    examples_of_it = told[told.index("For example:\n") :].splitlines()[1:]
    assert examples_of_it
    for line in examples_of_it:
        program, command, *_ = words = shlex.split(line)
        assert (program, command) == ("rimfall", name)
        assert _parser(words).parse_args(words[1:]).run


@each_row("name", list(examples.SAY))
def test_every_example_is_told_in_words_and_a_table(monkeypatch, name):
    monkeypatch.setattr(questions, "trace", trace_of)  # other tests have most of them already
    done = rimfall("trace", EXAMPLES / f"{name}.json")
    assert (done.returncode, done.stderr) == (0, "")
    for motion in json.loads(examples.example(name))["motions"]:
        assert f"{motion['name']} ({motion['kind']}): " in done.stdout
        assert f"\n{motion['name']} " in done.stdout.split("motion ", 1)[1]


def test_the_table_has_each_figure_under_its_name():
    place = {"along_m": 7.0, "height_m": 1.5, "axial_m": -2.25}
    still = {
        "kind": "drop",
        "name": "let_go",
        "place": place,
        "body": {"mass_kg": 1.0, "diameter_m": 0.0},
        "start_s": 3.0,
    }
    document = {"rimfall": 1, "habitat": {"radius_m": 56.0, "spin_rpm": 3.0}, "air": None, "motions": [still]}
    table = rimfall("trace", "-", given=json.dumps(document)).stdout.split("\nmotion ", 1)[1].splitlines()
    names, release = re.split("  +", f"motion {table[0]}"), re.split("  +", table[1])
    told = dict(zip(names, release, strict=True))
    figures = [float(told[f"{name} m"]) for name in ("along", "height", "axial")]
    assert (figures, float(told["time s"]), float(told["speed m/s"])) == (list(place.values()), 3.0, 0.0)


@each_row(
    ("name", "gravity"),
    [
        ("same-lob", "0.5636 g on the deck, rim"),
        ("under-thrust", "0.5669 g on the deck (0.5636 g outward), rim"),  # 0.6 m/s² of thrust
        ("on-the-bench", "1.035 g on the turntable (0.2684 g outward), rim"),  # the room's 9.80665 m/s² is felt as well
    ],
)
def test_the_gravity_of_a_trace_is_what_is_felt(name, gravity):
    assert gravity in rimfall("trace", EXAMPLES / f"{name}.json").stdout.splitlines()[1]


def test_json_is_the_whole_answer():
    answer = json.loads(rimfall("trace", EXAMPLES / "galley.json", "--json").stdout)
    assert [m["end"] for m in answer["motions"]] == ["landed"] * 3


def test_standard_input_is_read():
    assert "Lob out" in rimfall("trace", "-", given=examples.example("same-lob")).stdout


def test_us_units_change_the_words():
    assert "17.1 ft spinward" in rimfall("trace", EXAMPLES / "same-lob.json", "--units", "us").stdout


def written(tmp_path, scene, name="paths.csv"):
    file = tmp_path / "scene.json"
    file.write_text(json.dumps(scene), encoding="utf-8")
    done = rimfall("trace", file, "--export", tmp_path / name)
    assert done.returncode == 0, done.stderr
    notes = (tmp_path / name).with_suffix(".notes.json").read_text(encoding="utf-8")
    return (tmp_path / name).read_bytes(), json.loads(notes)


def test_csv_positions_are_the_straight_line_seen_from_the_turning_frame(tmp_path):
    radius, rpm, height = 56.0, 3.0, 1.2
    scene = {"rimfall": 1, "habitat": {"radius_m": radius, "spin_rpm": rpm}, "air": None,
             "motions": [{"kind": "drop", "name": "cup", "place": {"height_m": height}, "body": {"mass_kg": 1, "diameter_m": 0}}]}  # fmt: skip
    table, notes = written(tmp_path, scene)
    rows = list(csv.reader(table.decode("utf-8").split("\n")[:-1]))
    assert ",".join(rows[0]) == "frame,time_s,id,alive,x_m,y_m,z_m,vx_m_s,vy_m_s,vz_m_s"
    assert len(rows) - 1 == notes["file"]["frame_count"]
    omega = rpm * 2 * math.pi / 60
    lands_s = math.acos((radius - height) / radius)  # the exact drop: tan(theta) = omega t
    lands_s = math.tan(lands_s) / omega
    for row in rows[1:]:
        frame, time_s, x, y = int(row[0]), float(row[1]), float(row[4]), float(row[5])
        t = min(time_s, lands_s)
        straight = complex(radius - height, (radius - height) * omega * t) * complex(
            math.cos(omega * t), -math.sin(omega * t)
        )
        assert time_s == pytest.approx((frame - 1001) / 24, abs=1e-6)
        assert (x, y) == pytest.approx((straight.imag, -straight.real), abs=STRAIGHT_M)


def test_csv_is_ordered_finite_and_the_same_twice(tmp_path):
    scene = json.loads(examples.example("galley"))
    first, notes = written(tmp_path, scene)
    again, _ = written(tmp_path, scene, "again.csv")
    assert first == again
    assert b"\r" not in first
    rows = [line.split(",") for line in first.decode().strip().split("\n")[1:]]
    keys = [(int(r[0]), int(r[2])) for r in rows]
    assert keys == sorted(keys)
    assert len(rows) == notes["counts"]["csv_rows"]
    assert all(math.isfinite(float(v)) and "." in v for r in rows for v in (r[1], *r[4:]))
    born = [one["born_s"] for one in notes["ids"]]
    assert born == sorted(born)


def test_the_scene_comes_back_from_the_notes(tmp_path):
    scene = json.loads(examples.example("spin-up"))
    _, notes = written(tmp_path, scene)
    assert notes["scene"]["motions"][1]["start_s"] == 12.0
    table, _ = written(tmp_path, notes["scene"], "second.csv")
    assert table == (tmp_path / "paths.csv").read_bytes()


def test_a_pour_is_expanded_into_drops_that_live_from_breakup_to_landing(tmp_path):
    table, notes = written(tmp_path, json.loads(examples.example("galley")))
    drops = {one["id"] for one in notes["ids"] if one["motion"] == "tea"}
    assert len(drops) > 300
    one = next(body for body in notes["ids"] if body["id"] == max(drops))
    rows = [line.split(",") for line in table.decode().strip().split("\n")[1:]]
    lives = [float(r[0]) for r in rows if int(r[2]) == one["id"]]
    assert {r[3] for r in rows} == {"1"}
    assert one["born_frame"] <= lives[0] < one["born_frame"] + 1
    assert one["ends_frame"] - 1 < lives[-1] <= one["ends_frame"]


@each_row(
    ("document", "says"),
    [
        ('{"rimfall": 1,', "not JSON at line 1"),
        (
            '{"rimfall": 1, "habitat": {"radius_m": -1, "spin_rpm": 3}, "motions": []}',
            "Radius was -1 m; it must be 0.1 to 100,000 m",
        ),
        ('{"rimfall": 1, "habitat": {"radius_m": 5, "spin_rpm": 3, "colour": 1}, "motions": []}', "habitat.colour"),
        ('{"rimfall": 2, "habitat": {"radius_m": 5, "spin_rpm": 3}, "motions": []}', "Document version was 2"),
        ("[]", "an object in braces"),
    ],
)
def test_a_wrong_document_is_one_clear_line_and_exit_code_2(document, says):
    done = rimfall("trace", "-", given=document)
    assert done.returncode == 2
    assert done.stdout == ""
    assert says in done.stderr
    assert done.stderr.count("\n") == 1
    assert "Traceback" not in done.stderr


def test_a_missing_file_is_one_clear_line():
    done = rimfall("trace", "no such file.json")
    assert (done.returncode, done.stderr) == (2, "rimfall: Cannot read no such file.json: No such file or directory.\n")


def test_a_taken_port_is_one_clear_line():
    with socket.socket() as taken:
        taken.bind(("127.0.0.1", 0))
        taken.listen()
        done = in_a_process("serve", "--port", taken.getsockname()[1], "--no-open")
    assert done.returncode == 2
    assert done.stderr.count("\n") == 1
    assert "Choose another with --port" in done.stderr


@each_row(("option", "value"), [("--workers", -1), ("--workers", 513), ("--max-seconds", 0), ("--max-seconds", "nan")])
def test_serving_with_no_such_number_of_workers_or_seconds_is_refused(option, value):
    done = rimfall("serve", "--no-open", option, value)
    assert done.returncode == 2
    assert f"{option} was {value}; it must be" in done.stderr


@each_row("port", ["-1", "65536"])
def test_a_port_out_of_range_is_one_clear_line(port):
    done = rimfall("serve", "--port", port, "--no-open")
    assert done.returncode == 2
    assert "0 to 65535" in done.stderr


def test_a_place_that_cannot_be_written_leaves_nothing_behind(tmp_path):
    target = tmp_path / "folder.csv"
    target.mkdir()
    done = rimfall("trace", EXAMPLES / "same-lob.json", "--export", target)
    assert done.returncode == 2
    assert "Cannot write" in done.stderr
    assert [p.name for p in tmp_path.iterdir()] == ["folder.csv"]


def test_a_table_named_like_its_scene_leaves_the_scene_alone(tmp_path):
    scene = tmp_path / "lob.json"
    scene.write_text(examples.example("same-lob"), encoding="utf-8")
    assert rimfall("trace", scene, "--export", tmp_path / "lob.csv").returncode == 0
    assert scene.read_text(encoding="utf-8") == examples.example("same-lob")
    assert sorted(p.name for p in tmp_path.iterdir()) == ["lob.csv", "lob.json", "lob.notes.json"]


def test_table_and_notes_are_written_both_or_not_at_all(tmp_path):
    (tmp_path / "lob.csv").write_text("of yesterday")
    (tmp_path / "lob.notes.json").mkdir()
    done = rimfall("trace", EXAMPLES / "same-lob.json", "--export", tmp_path / "lob.csv")
    assert done.returncode == 2
    assert done.stderr == f"rimfall: Cannot write {tmp_path / 'lob.notes.json'}: Is a directory.\n"
    assert (tmp_path / "lob.csv").read_text() == "of yesterday"
    assert len(list(tmp_path.iterdir())) == 2


@each_row(
    ("target", "said"),
    [
        (".", "No format goes by the name"),
        ("/", "No format goes by the name"),
        ("lob.xyz", "No format goes by the name lob.xyz; a file may end in .csv"),
        ("no such folder/x.csv", "Cannot write"),
    ],
)
def test_what_is_no_file_name_is_one_clear_line(target, said):
    done = rimfall("trace", EXAMPLES / "same-lob.json", "--export", target)
    assert done.returncode == 2
    assert done.stderr.startswith(f"rimfall: {said}")
    assert done.stderr.count("\n") == 1


def test_several_files_are_written_at_once_and_their_endings_say_what_they_are(tmp_path):
    names = ("lob.csv", "lob.json", "lob.forces.csv", "lob.frames.zip")
    wanted = [part for name in names for part in ("--export", tmp_path / name)]
    choices = (
        "--view",
        "inertial_flat",
        "--fps",
        "29.97",
        "--up",
        "Z",
        "--unit",
        "cm",
        "--samples",
        2,
        "--only",
        "Lob out",
    )
    done = rimfall("trace", EXAMPLES / "same-lob.json", *wanted, *choices, "--origin", "release", "--first-frame", 1)
    assert (done.returncode, done.stderr) == (0, "")
    assert {p.name for p in tmp_path.iterdir()} == {*names, "lob.notes.json", "lob.forces.json"}
    file = json.loads((tmp_path / "lob.notes.json").read_text(encoding="utf-8"))["file"]
    told = {k: file[k] for k in ("fps", "first_frame", "samples_per_frame", "unit", "up", "view")}
    assert told == {
        "fps": [30000, 1001],
        "first_frame": 1,
        "samples_per_frame": 2,
        "unit": "cm",
        "up": "Z",
        "view": "inertial_flat",
    }


@pytest.mark.parametrize(
    ("choice", "said"),
    [
        (("--fps", "0"), "Shot at was 0 fps; it must be 1 to 240"),
        (("--samples", "3"), "Samples per frame was 3; it must be 1 or 2 or 4 or 8"),
        (("--only", "nobody"), 'Motions was "nobody"; it must be names among Lob out, Lob back'),
        (("--origin", "1,x"), "From height was"),
        (("--to", "1", "--from", "2"), "To was 1 s; it must be 2 s or later"),
        (("--retime", "1001"), "--retime was 1001; it must be FRAME=SECONDS"),
        (("--retime", "9=0,8=1"), "Frame was 8; it must be after frame 9"),
        (("--between", "linear"), "--between was linear; it must be left out"),
    ],
)
def test_a_choice_out_of_range_is_one_clear_line_and_nothing_is_written(choice, said, tmp_path):
    done = rimfall("trace", EXAMPLES / "same-lob.json", "--export", tmp_path / "lob.csv", *choice)
    assert done.returncode == 2
    assert done.stderr.startswith(f"rimfall: {said}")
    assert list(tmp_path.iterdir()) == []


def test_frames_before_time_0_film_rates_and_retime_curves_are_taken(tmp_path):
    """SMPTE ST 12-1: 23.98 is how people write 24000/1001."""
    lobs = EXAMPLES / "same-lob.json"
    for choice, frames, fps in (
        (("--from", "-0.5", "--first-frame", "-10", "--to", "0"), [-22, -10], [24, 1]),
        (("--fps", "23.98", "--to", "0.1"), [1001, 1004], [24000, 1001]),
        (("--fps", "47.95", "--to", "0"), [1001, 1001], [48000, 1001]),
        (("--retime=-5=-0.2,19=0.5", "--between", "linear"), [-5, 19], [24, 1]),
    ):
        assert rimfall("trace", lobs, "--export", tmp_path / "lob.csv", *choice).returncode == 0
        file = json.loads((tmp_path / "lob.notes.json").read_bytes())["file"]
        assert ([file["start_frame"], file["end_frame"]], file["fps"]) == (frames, fps)


def test_a_table_without_rows_is_told(tmp_path):
    stream = {
        "kind": "pour",
        "place": {"height_m": 1.1},
        "flow_ml_s": 100,
        "lip_diameter_mm": 12,
        "duration_s": 1,
        "liquid": "water",
    }
    document = {"rimfall": 1, "habitat": {"radius_m": 56, "spin_rpm": 3}, "motions": [stream]}
    done = rimfall("trace", "-", "--export", tmp_path / "tea.csv", given=json.dumps(document))
    assert done.returncode == 0
    assert done.stderr.startswith(
        f"rimfall: {tmp_path / 'tea.csv'}: The table has no rows: the pour stays an unbroken stream"
    )


@each_row("host", ["a..b", "x" * 80, "rimfall.invalid", "256.0.0.1"])
def test_a_host_that_is_none_is_one_clear_line(host):
    done = rimfall("serve", "--host", host, "--port", 0, "--no-open")
    assert done.returncode == 2
    assert done.stderr.startswith(f"rimfall: Cannot serve on {host}")
    assert done.stderr.count("\n") == 1


def test_a_terminal_that_lacks_a_letter_is_no_reason_to_stop():
    scene = examples.example("same-lob").replace("The same lob", "Der Rückwurf 🚀")
    told = in_a_process("trace", "-", given=scene, environment={"PYTHONIOENCODING": "ascii:strict"})
    assert (told.returncode, told.stderr) == (0, "")
    assert told.stdout.startswith("Der R?ckwurf ?")
    as_json = in_a_process("trace", "-", "--json", given=scene, environment={"PYTHONIOENCODING": "ascii:strict"})
    assert json.loads(as_json.stdout)["scene"]["title"].startswith("Der Rückwurf 🚀")


def test_several_wrong_fields_are_a_line_each():
    done = rimfall("trace", "-", given='{"rimfall": 1, "habitat": {"radius_m": -1, "spin_rpm": -1}, "motions": []}')
    assert done.returncode == 2
    assert [line.split(" was ")[0] for line in done.stderr.splitlines()] == ["rimfall: Radius", "rimfall: Spin"]


def test_a_pour_too_long_for_a_table_is_refused_and_nothing_is_written(tmp_path):
    scene = json.loads(examples.example("galley"))
    scene["motions"][2]["duration_s"] = 600.0
    done_in = tmp_path / "tea.csv"
    done = rimfall("trace", "-", "--export", done_in, "--rows", "all", given=json.dumps(scene))
    assert done.returncode == 2
    assert "tea" in done.stderr
    assert list(tmp_path.iterdir()) == []


def test_to_tell_the_version_nothing_is_loaded_that_takes_its_time():
    code = "import sys; sys.argv = ['rimfall', '--version']; from rimfall.__main__ import run\ntry: run()\nexcept SystemExit: pass\n"
    code += "print([name for name in ('numpy', 'pydantic', 'pxr', 'fpdf', 'starlette') if name in sys.modules])"
    done = subprocess.run([sys.executable, "-c", code], capture_output=True, encoding="utf-8", check=True)
    assert done.stdout.splitlines()[1] == "[]"


def test_python_m_rimfall_and_rimfall_are_the_same_command():
    assert in_a_process("--version").stdout.startswith("rimfall ")


def test_a_process_of_its_own_says_and_returns_the_same():
    for arguments, given in (
        (("trace", EXAMPLES / "same-lob.json"), ""),
        (("trace", "-"), "[]"),
        (("serve", "--port", "-1"), ""),
        (("trace", "--fps", "many", "-"), ""),
    ):
        alone, here = in_a_process(*arguments, given=given), rimfall(*arguments, given=given)
        assert (alone.returncode, alone.stdout, alone.stderr) == (here.returncode, here.stdout, here.stderr)


def test_ctrl_c_while_the_program_loads_prints_no_traceback(monkeypatch, capsys):
    class Interrupted:
        @staticmethod
        def find_spec(name, path=None, target=None):
            if name == "rimfall.cli.main":
                raise KeyboardInterrupt

    monkeypatch.delitem(sys.modules, "rimfall.cli.main", raising=False)
    monkeypatch.setattr(sys, "meta_path", [Interrupted, *sys.meta_path])
    assert door.run() == 130
    assert capsys.readouterr() == ("", "")


@each_row("wishes", ["5", "null", '"abc"', '{"a": 1}'])
def test_wishes_that_are_no_list_are_refused_by_name_with_those_of_the_options_as_well(wishes):
    done = rimfall("size", "-", "--most", "radius=60", given=f'{{"wishes": {wishes}}}')
    assert done.returncode == 2
    assert done.stderr.startswith("rimfall: ")
    assert "ishes" in done.stderr
    assert "Traceback" not in done.stderr
