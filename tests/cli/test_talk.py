"""`rimfall talk`: the steps in words, the same talk as JSON, over HTTP and in a notebook; saved, and opened again; and a line for what is wrong."""

import json

import rimfall as package
from rimfall.talk import examples
from tests.commands import rimfall
from tests.web.test_api import call

NAME = examples.NAMES[0]
HEADERS = {"content-type": "application/json"}
TALK = {
    "rimfall_talk": 1,
    "title": "Twice the spin",
    "about": "What the spin does.",
    "steps": [
        {"scene": "same-lob", "line": "Two equal throws.", "until_s": 1, "pace": 0.5, "notes": "word " * 62},
        {"change": {"habitat.spin_rpm": 6}, "ask": {"motion": "Lob back", "until_s": 0.5}, "until_s": 0.6},
        {"plays": False, "line": "Nothing moves."},
    ],
}


def printed(*arguments, given=""):
    done = rimfall("talk", *arguments, given=given)
    assert (done.returncode, done.stderr) == (0, "")
    return done.stdout


def test_steps_with_their_lines_scenes_and_lengths():
    """65 words take 30 s at 130 words a minute, two more 1 s; a second at half its pace takes two."""
    assert printed("-", given=json.dumps(TALK)).splitlines() == [
        "Twice the spin",
        "What the spin does.",
        "",
        "1. Two equal throws.",
        "   The same lob, both ways, a cylinder of 56 m at 3 rpm: Lob out and Lob back; plays 2.0 s at 0.5 of its pace.",
        "2. No line",
        "   The same lob, both ways, a cylinder of 56 m at 6 rpm: Lob out and Lob back; plays 0.6 s; asks where Lob back comes down.",
        "3. Nothing moves.",
        "   The same lob, both ways, a cylinder of 56 m at 6 rpm: Lob out and Lob back; stands still.",
        "",
        "3 steps, 34 s: 31 s to say at 130 words a minute, 3 s to watch.",
    ]


def test_command_notebook_and_server_answer_alike_and_the_file_opens_again(tmp_path):
    file, again = tmp_path / "mine.json", tmp_path / "again.json"
    whole = json.loads(printed(NAME, "--json", "--save", file))
    assert json.loads(file.read_text(encoding="utf-8")) == json.loads(examples.example(NAME))
    assert json.loads(printed(file, "--json")) == whole
    again.write_text(json.dumps(whole), encoding="utf-8")
    assert json.loads(printed(again, "--json")) == whole
    assert package.open_talk(file).as_data() == package.open_talk(NAME).as_data() == whole
    assert package.open_talk(json.loads(file.read_text(encoding="utf-8"))).steps[0].scene.title
    assert call("POST", "/api/talk", content=file.read_bytes(), headers=HEADERS).json() == whole
    assert call("GET", f"/api/talks/{NAME}").json() == whole


def test_a_page_that_plays_by_itself_is_written_and_sent_alike_and_opens_again(tmp_path):
    file = tmp_path / "twice.html"
    whole = json.loads(printed("-", "--json", "--export", file, given=json.dumps(TALK)))
    assert json.loads(printed(file, "--json")) == whole
    sent = call("POST", "/api/talk/file", json=TALK)
    assert sent.content == file.read_bytes()
    assert sent.headers["content-type"] == "text/html; charset=utf-8"
    assert sent.headers["content-disposition"] == 'attachment; filename="talk.html"'
    done = rimfall("talk", NAME, "--export", tmp_path / "talk.pdf")
    assert (done.returncode, done.stderr) == (
        2,
        "rimfall: A talk is written as one file that plays by itself, whose name ends in .html; talk.pdf does not.\n",
    )


def test_the_server_lists_talks_and_has_no_others():
    listed = call("GET", "/api/talks").json()["talks"]
    assert [one["id"] for one in listed] == list(examples.NAMES)
    for one in listed:
        talk = json.loads(examples.example(one["id"]))
        assert one == {"id": one["id"], "title": talk["title"], "about": talk["about"], "steps": len(talk["steps"])}
    assert call("GET", "/api/talks/none").status_code == 404


def test_what_is_wrong_is_a_line():
    done = rimfall("talk", "no-such-talk")
    assert (done.returncode, done.stdout) == (2, "")
    assert done.stderr.startswith(
        "rimfall: There is no file no-such-talk, and no talk of that name ready to give; those are why-"
    )
    wrong = json.dumps(TALK | {"steps": [{"scene": "same-lob", "change": {"habitat.spin_rpm": 201}}]})
    done = rimfall("talk", "-", given=wrong)
    assert (done.returncode, done.stderr) == (2, "rimfall: Step 1: Spin was 201 rpm; it must be 0 to 200 rpm.\n")
    (one,) = call("POST", "/api/talk", content=wrong, headers=HEADERS).json()["refused"]
    assert one["field"] == "steps.0.change.habitat.spin_rpm"


def test_its_steps_are_told_in_another_language_and_its_refusals_too():
    title, about, _, first, *_, sum_up = printed(NAME, "--language", "de").splitlines()
    talk = json.loads(printed(NAME, "--json", "--language", "de"))
    assert (title, about, first) == (talk["title"], talk["about"], f"1. {talk['steps'][0]['line']}")
    assert title == "Warum der Ball zurückkommt"
    assert sum_up.startswith("10 Schritte, ")
    refused = rimfall("talk", "no-such-talk", "--language", "de")
    assert refused.returncode == 2
    assert refused.stderr.startswith("rimfall: Es gibt keine Datei no-such-talk")
    assert rimfall("talk", NAME, "--language", "xx").stderr == "rimfall: Language was xx; it must be en or de.\n"
