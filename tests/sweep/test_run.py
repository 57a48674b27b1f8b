"""Runs on this machine: the same bytes every time, stopped and gone on, killed and gone on, and what stands in the way said."""

import csv
import json
import math
import os
import pickle
import signal
import subprocess
import time

import pytest

from rimfall.errors import BadInput
from rimfall.language import speaking, tr
from rimfall.phrases import caution
from rimfall.scene.reading import read
from rimfall.sweep import folder, job, local, parameters
from rimfall.sweep.run import run, sweep_of
from tests.commands import rimfall
from tests.sweep import runs

OVER = (
    "--workers",
    1,
    "--over",
    "habitat.spin_rpm=1..6/6",
    "--over",
    "motions.serve.speed_m_s=4,6,8",
    "--export",
    "csv",
)
LONG = ("--over", "habitat.spin_rpm=1..6/24", "--over", "motions.serve.speed_m_s=4,6", "--export", "csv")
COUNT = 48
IN_PROCESSES = local.each
SUMMED_UP = {"index.csv", "contact.svg", "vary.json"}


@pytest.fixture(autouse=True)
def one_after_another(monkeypatch):
    monkeypatch.setattr(local, "each", runs.one_after_another)


@pytest.fixture(scope="module")
def whole(tmp_path_factory):
    """A long run in air, never stopped, without other processes: its scene file and everything in its folder."""
    at = tmp_path_factory.mktemp("whole")
    file = runs.saved(at, runs.scene(runs.AIR, "handball"))
    with pytest.MonkeyPatch.context() as patched:
        patched.setattr(local, "each", runs.one_after_another)
        done = runs.vary(file, at / "out", *LONG)
    assert done.returncode == 0, done.stderr
    return file, runs.contents(at / "out")


def rows(out):
    with (out / "index.csv").open(encoding="utf-8", newline="") as file:
        return list(csv.DictReader(file))


def test_every_combination_has_its_files_and_its_row(tmp_path):
    done = runs.vary(runs.saved(tmp_path, runs.scene()), tmp_path / "out", *OVER)
    assert (done.returncode, done.stdout.split(";")[0]) == (0, f"18 of 18 combinations are in {tmp_path / 'out'}")
    found = rows(tmp_path / "out")
    assert [row["number"] for row in found] == [str(n) for n in range(1, 19)]
    names = {path.name for path in (tmp_path / "out").iterdir()}
    assert names == {row["csv_file"] for row in found} | SUMMED_UP | {".rimfall"}


def test_the_index_is_rfc_4180(tmp_path):
    document = runs.scene() | {"title": 'a "quoted", one'}
    runs.vary(runs.saved(tmp_path, document), tmp_path / "out", "--over", 'title="x",y')
    text = (tmp_path / "out/index.csv").read_bytes().decode()
    assert text.count("\r\n") == text.count("\n") == 3  # RFC 4180, 2.1: lines end in CRLF
    assert '1,"""x""",' in text  # 2.7: a quote inside quotes is written twice
    assert [row["title"] for row in rows(tmp_path / "out")] == ['"x"', "y"]


def straight(radius_m, rpm, height_m, speed_m_s, up_deg):
    """Where a point thrown spinward in vacuum meets the rim: the straight line of the frame that does not turn against a circle.
    Time, arc along the deck from the release, and speed relative to the deck."""
    omega, start = rpm * math.pi / 30, radius_m - height_m
    out = -speed_m_s * math.sin(math.radians(up_deg))
    across = speed_m_s * math.cos(math.radians(up_deg)) + omega * start
    square, half = out**2 + across**2, start * out
    time_s = (-half + math.sqrt(half**2 + square * (radius_m**2 - start**2))) / square
    x, y = start + out * time_s, across * time_s
    slip = math.hypot(out + omega * y, across - omega * x)
    return time_s, radius_m * (math.atan2(y, x) - omega * time_s), slip


def test_the_index_says_where_straight_lines_meet_the_rim(tmp_path):
    runs.vary(
        runs.saved(tmp_path, runs.scene()), tmp_path / "out", *OVER[:6], "--over", "motions.serve.place.along_m=0,2"
    )
    for row in rows(tmp_path / "out"):
        begins = float(row["motions.serve.place.along_m"])
        time_s, along, speed = straight(
            56.0, float(row["habitat.spin_rpm"]), 1.5, float(row["motions.serve.speed_m_s"]), 35.0
        )
        found = [float(row[f"serve.landing_{f}"]) for f in ("time_s", "along_m", "drift_m", "speed_m_s")]
        assert found == pytest.approx([time_s, along + begins, along, speed], abs=2e-6)  # six places in the file
        assert row["serve.end"] == "landed"
        way = [float(row[f"serve.landing_{f}"]) for f in ("spinward_m", "axial_m")]
        assert (row["serve.landing_turns"], way) == ("0", pytest.approx([along, 0.0], abs=2e-6))


def test_a_file_is_the_one_that_trace_writes(tmp_path):
    runs.vary(runs.saved(tmp_path, runs.scene()), tmp_path / "out", *OVER, "--view", "inertial", "--fps", "25")
    document = runs.scene()
    document["habitat"]["spin_rpm"], document["motions"][0]["speed_m_s"] = 2.0, 8.0
    alone = tmp_path / "alone.csv"
    one = runs.saved(tmp_path, document)
    assert rimfall("trace", one, "--export", alone, "--view", "inertial", "--fps", "25").returncode == 0
    (file,) = (tmp_path / "out").glob("0006_*.csv")
    assert file.read_bytes() == alone.read_bytes()


def test_the_same_run_gives_the_same_bytes_whatever_the_workers(tmp_path, whole, monkeypatch):
    file, wanted = whole
    monkeypatch.setattr(local, "each", IN_PROCESSES)
    assert runs.vary(file, tmp_path / "out", *LONG, "--workers", 2).returncode == 0
    assert runs.contents(tmp_path / "out") == wanted


def test_ctrl_c_stops_and_the_same_command_goes_on(tmp_path, whole):
    file, wanted = whole
    code, said, done = runs.stopped(signal.SIGINT, file, tmp_path / "out", *LONG)
    assert code == 130
    assert "the same command goes on from here" in said
    assert "Traceback" not in said
    assert 5 <= done < COUNT
    assert_goes_on(tmp_path / "out", file, wanted)


def test_a_killed_run_goes_on_and_leaves_no_process_behind(tmp_path, whole):
    file, wanted = whole
    code, group, done = runs.stopped(signal.SIGKILL, file, tmp_path / "out", *LONG)
    assert code == -signal.SIGKILL
    assert 5 <= done < COUNT
    give_up = time.monotonic() + 120
    while time.monotonic() < give_up and lives(group):
        time.sleep(0.05)
    assert not lives(group)
    assert_goes_on(tmp_path / "out", file, wanted)


def assert_goes_on(out, file, wanted):
    """Every file there is whole; what was done is not done again; at the end all is as if it had never stopped."""
    there = {name: data for name, data in runs.contents(out).items() if not name.endswith(".part")}
    assert {name: wanted[name] for name in there} == there
    before = {path: path.stat().st_mtime_ns for path in runs.records(out)}
    assert runs.vary(file, out, *LONG).returncode == 0
    assert {path: path.stat().st_mtime_ns for path in before} == before
    assert runs.contents(out) == wanted


def lives(group):
    try:
        os.killpg(group, 0)
    except ProcessLookupError:
        return False
    return True


def test_a_file_that_was_lost_or_cut_is_made_again(tmp_path):
    file, out = runs.saved(tmp_path, runs.scene()), tmp_path / "out"
    runs.vary(file, out, *OVER)
    wanted = runs.contents(out)
    files = sorted(out.glob("0*.csv"))
    files[0].unlink()
    files[1].write_bytes(files[1].read_bytes()[:-10])
    (out / ".rimfall/000003.json").write_text('{"files": ')
    (out / ".rimfall/000004.json").write_text("[]")
    assert runs.vary(file, out, *OVER).returncode == 0
    assert runs.contents(out) == wanted


def test_a_folder_of_another_run_or_of_other_things_is_refused(tmp_path):
    file, out = runs.saved(tmp_path, runs.scene()), tmp_path / "out"
    runs.vary(file, out, *OVER)
    before = runs.contents(out)
    done = runs.vary(file, out, *OVER, "--fps", "25")
    assert (done.returncode, done.stderr.count("\n")) == (2, 2)  # with the line of what was checked
    assert f"{out} holds another run (its vary.json differs in export)" in done.stderr
    assert runs.contents(out) == before
    done = runs.vary(file, tmp_path, *OVER)
    assert done.returncode == 2
    assert "holds other files" in done.stderr


def test_places_that_cannot_be_written_are_said(tmp_path):
    file = runs.saved(tmp_path, runs.scene())
    for out in (file, file / "inside", "/proc/rimfall"):
        done = runs.vary(file, out, *OVER)
        assert done.returncode == 2
        assert f"Cannot write into {out}" in done.stderr
        assert "Traceback" not in done.stderr


def test_a_full_disk_is_said_and_leaves_whole_files_only(tmp_path):
    file, out = runs.saved(tmp_path, runs.scene(runs.AIR, "handball")), tmp_path / "out"
    command = runs.command(file, out, *OVER)
    limited = [
        "sh",
        "-c",
        'ulimit -f 12 && exec "$@"',
        "sh",
        *command,
    ]  # no file over 6 kB: the longer flights have more
    done = subprocess.run(limited, cwd=runs.ROOT, capture_output=True, encoding="utf-8", timeout=300)
    assert done.returncode == 2
    assert "Cannot write " in done.stderr
    assert "File too large" in done.stderr
    assert not list(out.rglob("*.part"))
    there = runs.contents(out)
    assert runs.vary(file, out, *OVER).returncode == 0
    assert {name: runs.contents(out)[name] for name in there} == there


def test_what_is_refused_in_one_combination_is_named_and_the_rest_goes_on(tmp_path):
    file, out = runs.saved(tmp_path, runs.scene()), tmp_path / "out"
    over = ("--over", "motions.serve.name=serve,volley", "--over", "habitat.spin_rpm=2,3")
    for _ in range(2):  # gone on with, it is refused again
        done = runs.vary(file, out, *over, "--export", "csv", "--only", "serve", "--workers", 1)
        found = rows(out)
        assert [bool(row["refused"]) for row in found] == [False, False, True, True]
        assert [bool(row["csv_file"]) for row in found] == [True, True, False, False]
        assert done.returncode == 2
        named = [line for line in done.stderr.splitlines() if line.startswith("rimfall: combination ")]
        assert [line.split(":")[1].strip() for line in named] == ["combination 3", "combination 4"]
        assert "volley" in named[0]


def test_a_run_in_another_language_speaks_it_in_every_process_and_is_another_run(monkeypatch, tmp_path):
    file, out = runs.saved(tmp_path, runs.scene()), tmp_path / "out"
    over = ("--over", "motions.serve.name=serve,volley", "--export", "notes", "--only", "serve", "--workers", 1)
    monkeypatch.setattr(local, "each", IN_PROCESSES)
    done = runs.vary(file, out, *over, "--language", "de")
    assert (done.returncode, done.stdout.split(";")[0]) == (2, f"1 von 2 Kombinationen sind in {out}")
    assert "rimfall: Kombination 2: " in done.stderr
    with speaking("de"):
        words, caution_there = tr("names among {names}", names="volley, let go"), caution()
    assert words in rows(out)[1]["refused"]
    (notes,) = out.glob("0001*.notes.json")
    assert json.loads(notes.read_bytes())["caution"] == caution_there != caution()
    assert "Kombinationen" in (out / "contact.svg").read_text(encoding="utf-8")
    again = runs.vary(file, out, *over)
    assert again.returncode == 2
    assert f"{out} holds another run (its vary.json differs in language)" in again.stderr


def test_a_process_without_the_language_of_a_run_works_nothing_out_in_another():
    """As a cluster's worker whose install has no such catalogue; what it raises comes back pickled."""
    sweep = job.Sweep(json.dumps(runs.scene()), (("habitat.spin_rpm", (1, 2)),), ("notes",), "{}", "xx")
    with pytest.raises(BadInput, match="Language was xx; it must be en or de") as refused:
        job.work(sweep, 1)
    assert str(pickle.loads(pickle.dumps(refused.value))) == str(refused.value)


def test_bad_asking_is_refused_before_anything_is_made(tmp_path):
    file = runs.saved(tmp_path, runs.scene())
    for wrong, part in (
        (("--export", "csv"), "Nothing is varied"),
        ((*OVER, "--export", "obj"), "--export was obj; it must be csv"),
        ((*OVER, "--fps", "1000"), "1 to 240"),
        ((*OVER, "--workers", "0"), "--workers was 0"),
        (("--over", "habitat.spin_rpm=1,900"), "Spin was 900 rpm; it must be 0 to 200 rpm"),
    ):
        done = runs.vary(file, tmp_path / "out", *wrong)
        assert done.returncode == 2
        assert part in done.stderr
        assert not (tmp_path / "out").exists()


def test_json_says_what_it_came_to(tmp_path):
    done = runs.vary(runs.saved(tmp_path, runs.scene()), tmp_path / "out", *OVER, "--json")
    answer = json.loads(done.stdout)
    assert (answer["count"], answer["refused"], answer["failed"], done.stderr) == (18, {}, {}, "")
    assert all((tmp_path / "out" / name).is_file() for name in answer["files"])


def test_the_folder_says_what_was_asked_and_holds_the_scene(tmp_path):
    runs.vary(runs.saved(tmp_path, runs.scene()), tmp_path / "out", *OVER, "--up", "Z")
    said = json.loads((tmp_path / "out" / folder.REQUEST).read_bytes())
    assert said["over"][1] == {"path": "motions.serve.speed_m_s", "values": [4, 6, 8]}
    assert said["export"] == {"formats": ["csv"], "options": {"up": "Z"}}
    assert said["scene"]["motions"][0]["speed_m_s"] == 6.0


def test_what_failed_by_a_fault_of_ours_is_not_told_as_refused(monkeypatch, tmp_path):
    document = read(json.dumps(runs.scene()))
    sweep, grid = sweep_of(document, [parameters.parse("habitat.spin_rpm=1,2,3")])

    def second_fails(sweep, numbers, _workers):
        yield from ((n, ZeroDivisionError("by zero") if n == 2 else job.work(sweep, n)) for n in numbers)

    monkeypatch.setattr(local, "each", second_fails)
    done = run(sweep, grid, tmp_path, quiet=True)
    assert (done.count, done.refused, list(done.failed)) == (3, {}, [2])
    assert [row["refused"] for row in rows(tmp_path)][::2] == ["", ""]
