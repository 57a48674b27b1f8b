"""The file that plays by itself, read as a browser reads it: all it needs is in it, and its policy lets it reach nothing else."""

import base64
import gzip
import hashlib
import json
import re
from dataclasses import replace
from html.parser import HTMLParser

import numpy as np
import pytest

from rimfall.errors import Refused
from rimfall.exports.formats import FORMATS
from rimfall.exports.one_file import page as one_file_page
from rimfall.exports.one_file import talk as one_file_talk
from rimfall.exports.one_file import talk_file
from rimfall.exports.one_file.answers import answers_of
from rimfall.exports.options import read_options
from rimfall.exports.recovery import document_in
from rimfall.language import speaking
from rimfall.phrases import caution
from rimfall.scene.reading import read
from rimfall.talk import examples as talks
from rimfall.talk.reading import read as read_talk
from tests.exports.files_of_ours import scene
from tests.scene.documents import trace_of
from tests.tables import each_row

TITLE = '</script><script>alert(1)</script><!-- \u2028 & "quoted"'


class Parts(HTMLParser):
    """What an HTML file loads, and the text of its scripts and styles."""

    def __init__(self, content):
        super().__init__(convert_charrefs=True)
        self.tags, self.texts, self.inside, self.title = [], [], None, ""
        self.feed(content.decode())
        self.close()

    def handle_starttag(self, tag, attrs):
        self.tags.append((tag, dict(attrs)))
        self.inside = (tag, dict(attrs)) if tag in ("script", "style", "title") else None
        if tag in ("script", "style"):
            self.texts.append((tag, dict(attrs), []))

    def handle_endtag(self, tag):
        self.inside = None

    def handle_data(self, data):
        if self.inside and self.inside[0] == "title":
            self.title += data
        elif self.inside:
            self.texts[-1][2].append(data)

    def all(self, tag):
        return ["".join(text) for name, _, text in self.texts if name == tag]

    def scripts(self):
        """The scripts that run."""
        return ["".join(text) for name, attrs, text in self.texts if name == "script" and not attrs]

    def text(self, tag, number=None):
        (only,) = ("".join(text) for name, attrs, text in self.texts if name == tag and attrs.get("id") == number)
        return only


def hash_of(text):
    return f"'sha256-{base64.b64encode(hashlib.sha256(text.encode()).digest()).decode()}'"


def shown_in(parts):
    return json.loads(gzip.decompress(base64.b64decode(parts.text("script", "rimfall-shown"))))


@pytest.fixture(scope="module")
def named():
    return read(json.dumps(json.loads(scene("same-lob").model_dump_json()) | {"title": TITLE}))


@pytest.fixture(scope="module")
def parts(named):
    return Parts(FORMATS["html"].write(trace_of(named), read_options({"motions": ["Lob out"]}, named)))


def test_nothing_is_loaded_and_nothing_else_may_run(parts):
    """Content Security Policy Level 3: a hash is that of the text between the tags, in UTF-8."""
    policy = next(at["content"] for _, at in parts.tags if at.get("http-equiv") == "Content-Security-Policy")
    rules = dict(rule.strip().split(" ", 1) for rule in policy.split(";"))
    hashed = {"script-src": hash_of(parts.text("script")), "style-src": " ".join(map(hash_of, parts.all("style")))}
    assert {name: rules[name] for name in hashed} == hashed
    assert rules["default-src"] == "'none'"
    assert {rules["font-src"], rules["img-src"]} <= {"data:", "data: blob:"}
    addresses = [at[name] for _, at in parts.tags for name in ("src", "href", "srcset") if name in at]
    assert [address[:10] for address in addresses] == ["data:image"]
    assert set(re.findall(r"url\((.{5})", "".join(parts.all("style")))) == {"data:"}
    assert not any(name.startswith("on") or name == "style" for _, at in parts.tags for name in at)


def test_a_title_that_looks_like_a_script_stays_a_title(parts, named):
    assert [at.get("id") for tag, at in parts.tags if tag == "script"] == ["rimfall-notes", "rimfall-shown", None]
    notes = parts.text("script", "rimfall-notes")
    assert "\u2028" not in notes
    assert json.loads(notes)["title"] == parts.title == TITLE
    assert read(json.dumps(json.loads(notes)["scene"])) == named
    assert json.loads(notes)["caution"]


def test_its_answer_is_the_trace(parts, named):
    shown = shown_in(parts)
    (answer,) = shown["answers"]
    for motion, traced in zip(answer["trace"]["motions"], trace_of(named).motions, strict=True):
        packed = motion["rotating_m"]
        offsets = np.frombuffer(base64.b64decode(packed["f4"]), "<f4").reshape(packed["shape"])
        assert np.allclose(offsets + motion["anchor_m"], traced.track.samples.rotating_m, atol=1e-5, rtol=0)
    assert [told["words"] for told in answer["words"]] == [one.outcome() for one in trace_of(named).motions]
    assert shown["hidden"] == ["Lob back"]


def test_scenes_in_one_habitat_have_one_drawing():
    trace = trace_of(scene("same-lob"))
    same = json.loads(b"{%b}" % answers_of([trace, replace(trace)]))
    assert len(same["meshes"]) == 1
    assert [one["mesh"] for one in same["answers"]] == [0, 0]


def test_where_the_page_was_not_built_it_says_what_to_run(monkeypatch, tmp_path):
    monkeypatch.setattr(one_file_page, "folder", lambda name: tmp_path / name)
    with pytest.raises(Refused, match=r"python static/vendor_build\.py"):
        FORMATS["html"].write(trace_of(scene("same-lob")), read_options({}, scene("same-lob")))


@each_row("name", talks.NAMES)
def test_a_ready_talk_is_one_file_of_four_megabytes_at_most(name):
    """Of every step its answer, and of its dials' moves answers on the way; the talk opens again from it."""
    talk = read_talk(talks.example(name))
    file = talk_file(talk)
    assert len(file) <= 4_000_000
    assert read_talk(document_in(file)).as_data() == talk.as_data()
    shown = shown_in(Parts(file))
    assert len(shown["scenes"]) == len(talk.steps)
    for number, step in zip(shown["scenes"], talk.steps, strict=True):
        assert shown["answers"][number]["trace"]["scene"] == step.scene.model_dump(mode="json")
        assert (str(number) in shown["felt"]) or step.step.place != 4
    for move in shown["moves"]:
        radii = [
            shown["answers"][k]["trace"]["scene"]["habitat"]["radius_m"]
            for k in (move["from"], *move["answers"], move["to"])
        ]
        assert radii in (sorted(radii), sorted(radii, reverse=True))


def test_a_talk_that_grows_too_heavy_has_fewer_answers_on_the_way(monkeypatch):
    changes = [{"scene": "same-lob"}, {"change": {"habitat.spin_rpm": 4}}]
    talk = read_talk(json.dumps({"rimfall_talk": 1, "title": "Dials", "steps": changes}))
    told = []
    whole = talk_file(talk, lambda done, of: told.append((done, of)))
    assert told == [(k, 17) for k in range(17)]
    for most, light in ((15, len(whole)), (7, len(whole) - 1), (0, 1)):
        monkeypatch.setattr(one_file_talk, "LIGHT_BYTES", light)
        moves = shown_in(Parts(talk_file(talk)))["moves"]
        assert [len(move["answers"]) for move in moves] == [most]


def test_in_german_its_words_are_german_and_a_second_script_brings_them(named):
    with speaking("de"):
        parts = Parts(FORMATS["html"].write(trace_of(named), read_options({}, named)))
        told = shown_in(parts)["answers"], caution()
    assert next(at["lang"] for tag, at in parts.tags if tag == "html") == "de"
    assert {at.get("aria-label") for _, at in parts.tags} >= {"Bühnen", "Uhr"}
    messages, script = parts.scripts()
    assert json.loads(messages.removeprefix("globalThis.rimfallLanguage=").rstrip(";\n"))["language"] == "de"
    policy = next(at["content"] for _, at in parts.tags if at.get("http-equiv") == "Content-Security-Policy")
    assert f"script-src {hash_of(messages)} {hash_of(script)};" in policy
    assert json.loads(parts.text("script", "rimfall-notes"))["caution"] == told[1] != caution()
    assert [one["words"] for one in told[0][0]["words"]] != [one.outcome() for one in trace_of(named).motions]
    assert document_in(FORMATS["html"].write(trace_of(named), read_options({}, named)))
