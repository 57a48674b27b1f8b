"""The scene that made a file comes back from it, whatever the format; what holds none says so."""

import json

import pytest

from rimfall.errors import Refused
from rimfall.exports import FORMATS
from rimfall.exports.options import read_options
from rimfall.exports.recovery import document_in
from rimfall.scene import answers, examples
from rimfall.scene.reading import read
from tests.scene.documents import trace_of
from tests.tables import each_row

WITHOUT = {"csv", "csv-frames", "forces-csv"}  # tables of numbers: their notes carry it
TITLE = 'Läuft "zwei & drei" <mal> 🚀 \\ ]]>'


@each_row("name", sorted(set(FORMATS) - WITHOUT))
@each_row("example", ["galley", "three-pods", "spin-up"])
def test_the_scene_comes_back_from_every_file(name, example):
    document = json.loads(examples.example(example)) | {"title": TITLE}
    found = read(json.dumps(document))
    trace = trace_of(found)
    written = FORMATS[name].write(trace, read_options({"view": "inertial_flat", "to_s": 0.2}, found))
    assert read(document_in(written)) == found


def test_a_title_that_looks_escaped_comes_back_from_a_drawing_as_it_was():
    """XML 1.0, 2.4: &amp;gt; is the text &gt;, to be read once and not twice."""
    found = read(json.dumps(json.loads(examples.example("same-lob")) | {"title": "a &lt; b &gt; c &amp; d"}))
    written = FORMATS["plot-height-svg"].write(trace_of(found), read_options({}, found))
    assert read(document_in(written)).title == "a &lt; b &gt; c &amp; d"


def test_the_answer_of_a_trace_is_a_scene_too():
    found = read(examples.example("same-lob"))
    assert read(document_in(answers.of_trace(trace_of(found)))) == found


@each_row(
    "content",
    [
        b"glTF",
        b"glTF" + bytes(40),
        b"#usda 1.0\n",
        b"PXR-USDC" + bytes(80),
        b"PK\x03\x04",
        b"<svg></svg>",
        b"%PDF-1.4 /Scene <41>",
    ],
)
def test_a_file_that_holds_none_is_refused(content):
    with pytest.raises(Refused) as caught:
        document_in(content)
    assert caught.value.refusals[0].field == "file"


@each_row("content", [b"", b"{", b"[1]", b'{"scene": 1}', b"frame,time_s", b"\xff\xfe"])
def test_what_is_no_file_of_ours_is_refused_as_a_document(content):
    assert document_in(content) == content
    with pytest.raises(Refused):
        read(document_in(content))
