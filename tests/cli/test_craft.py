"""`rimfall craft`: words, a table for each question, JSON; the same answer from the API and over HTTP; and a line for what is wrong."""

import json

from rimfall import api
from rimfall.phrases import caution
from rimfall.scene.craft import answers, examples
from tests.commands import rimfall
from tests.tables import each_row
from tests.web.test_api import call

MOTH = examples.example("folding-arms")
HEADERS = {"content-type": "application/json"}


def lines_of(*arguments, given=""):
    done = rimfall("craft", *arguments, given=given)
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout.splitlines()


def test_words_and_a_table_for_each_question():
    lines, answer = lines_of("folding-arms"), api.craft("folding-arms")
    assert [line for line in lines if line in {one.question for one in answers.FINDINGS.values()}] == [
        answers.FINDINGS[name].question for name in answers.FINDINGS if name in answer
    ]
    for name in ("mass", "deploy", "balance"):
        assert {line.replace("\u00a0", " ") for line in answer[name]["says"]} <= set(lines)
    rows = [" ".join(line.split()) for line in lines]
    assert {"after: spin 110 rpm", "angular momentum: turning 13.3 million kg m²/s"} <= set(rows)
    assert lines[-1] == caution()
    only = lines_of("folding-arms", "--only", "deploy", "--units", "us")
    assert only[0] == "What happens when it unfolds?"
    assert only[1].startswith("The spin goes from 3.5 rpm to 110 rpm, and gravity at its rim from 0.549 g at 132 ft")


def test_command_notebook_and_server_answer_alike(tmp_path):
    file = tmp_path / "moth.json"
    file.write_text(MOTH, encoding="utf-8")
    printed = json.loads("\n".join(lines_of(file, "--json")))
    served = call("POST", "/api/craft", content=MOTH, headers=HEADERS)
    assert (served.status_code, served.json()) == (200, printed)
    assert json.loads(json.dumps(api.craft(json.loads(MOTH)))) == printed
    assert api.craft(file) == api.craft("folding-arms")
    us = call("POST", "/api/craft?units=us", content=MOTH, headers=HEADERS).json()
    assert us["mass"]["says"] != printed["mass"]["says"]


def test_a_scene_that_carries_a_craft_is_asked_of_it():
    craft = json.loads(MOTH)
    craft["parts"][0].pop("radius_m")
    scene = {"rimfall": 1, "habitat": {"radius_m": 5, "spin_rpm": craft.pop("spin_rpm")}, "motions": [], "craft": craft}
    answer = call("POST", "/api/craft", content=json.dumps(scene), headers=HEADERS).json()
    assert (answer["rim_radius_m"], answer["craft"]["spin_rpm"], answer["craft"]["parts"][0]["radius_m"]) == (5, 3.5, 5)
    assert lines_of("-", "--only", "mass", given=json.dumps(scene))[1] == "All of its 57 t turn as one."


def test_it_is_made_to_fit_saved_and_asked_again(tmp_path):
    file = tmp_path / "mine.json"
    lines = lines_of(
        "ring-ship", "--radius", "40", "--spin", "3.343", "--save", file, "--only", "mass", "--only", "hull"
    )
    saved = json.loads(file.read_text(encoding="utf-8"))
    assert (saved["radius_m"], saved["spin_rpm"], saved["parts"][0].get("radius_m")) == (40, 3.343, None)
    assert lines_of(file, "--only", "mass", "--only", "hull") == lines
    assert any(line.startswith("At 3.34 rpm the aluminium 6061-T6 ring carries") for line in lines)


@each_row(
    ("arguments", "says"),
    [
        (["ringship"], "There is no file ringship, and no craft to start from of that name; those are ring-ship, "),
        (["ring-ship", "--only", "rock"], "There is no rock to print: the craft's document has no rock; give it one."),
        (
            ["-", "--only", "spin_down"],
            "There is no spin_down to print: the craft's document has no spin_up;",
        ),
        (["ring-ship", "--radius", "wide"], "radius was wide; it must be a number."),
    ],
)
def test_what_is_asked_wrongly_is_a_line(arguments, says):
    bare = {"rimfall_craft": 1, "spin_rpm": 1, "parts": [{"name": "a", "solid": "disc", "mass_kg": 1, "radius_m": 1}]}
    done = rimfall("craft", *arguments, given=json.dumps(bare))
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith(f"rimfall: {says}")


@each_row(
    ("content", "says"),
    [
        ('{"rimfall_craft": 1, "parts": []}', "Parts was []; it must be a list of 1 to 200."),
        (MOTH.replace('"spin_rpm": 3.5,', ""), "Spin is missing; it must be 0 to 200 rpm."),
        ("nonsense", "The document is not JSON at line 1, column 2: expected ident"),
    ],
)
def test_what_is_wrong_is_a_line(content, says):
    done = rimfall("craft", "-", given=content)
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith(f"rimfall: {says}")
    refused = call("POST", "/api/craft", content=content, headers=HEADERS)
    assert refused.status_code == 422
    assert refused.json()["refused"][0]["say"].startswith(says)
