"""Files made for whoever is spoken to in German: their data are those of the English file, byte for byte or number for number; their words are
German, with commas in numbers; and the same scene comes back out of them, whatever is spoken then."""

import json
import re
import struct
from xml.etree import ElementTree

import pytest

from rimfall.exports.formats import FORMATS
from rimfall.exports.options import options_of
from rimfall.exports.recovery import recovered_from
from rimfall.language import speaking
from rimfall.scene import examples, questions
from rimfall.scene.reading import read_export

DATA = ("csv", "forces-csv")  # without a word
DRAWN = ("plot-path-svg", "plot-true-svg", "plot-height-svg", "plot-felt-svg", "map-svg")
SAVED = ("notes", "json", "glb", "usda", "usdc", "usdz", "html", "plot-path-svg", "map-pdf", "plots-pdf")
SVG = "{http://www.w3.org/2000/svg}"


@pytest.fixture(scope="module", params=["pass-to-a-runner", "wheel-and-keel"])
def made(request):
    """made(name): a file in English, in German, and in English again, of what was traced once for all."""
    body = json.dumps({"scene": json.loads(examples.example(request.param)), "export": {}})
    scene, part = read_export(body)
    traced = questions.trace(scene)
    kept = {}

    def make(name):
        if name not in kept:
            kept[name] = []
            for language in ("en", "de", "en"):
                with speaking(language):
                    kept[name].append(FORMATS[name].write(traced, options_of(part, scene)))
        english, german, again = kept[name]
        assert name.endswith("pdf") or english == again
        return english, german

    return make


@pytest.mark.parametrize("name", DATA)
def test_tables_are_the_same_in_every_language(made, name):
    english, german = made(name)
    assert english == german


@pytest.mark.parametrize("name", ["json", "notes", "forces-notes", "glb"])
def test_all_but_words_is_the_same_in_every_language(made, name):
    english, german = map(parts_of, made(name))
    assert english[1:] == german[1:]
    words = list(apart(english[0], german[0]))
    assert words
    assert all(isinstance(one, str) and isinstance(other, str) for one, other in words)


@pytest.mark.parametrize("name", DRAWN)
def test_drawings_have_german_words_and_commas(made, name):
    english, german = (ElementTree.fromstring(file) for file in made(name))
    texts, texte = ({"".join(text.itertext()) for text in file.iter(f"{SVG}text")} for file in (english, german))
    assert texte - texts
    labels = [text for text in texte if len(text) < 40]  # not sources, which number their sections with points
    assert [text for text in labels if re.search(r"\d\.(?!\d{3}\b)\d|\d,\d{3}\b", text)] == []
    assert name not in ("plot-felt-svg", "map-svg") or [
        text for text in labels if re.search(r"\d,\d|\d\.\d{3}\b", text)
    ]
    places = [
        float(one.get(key).removesuffix("px"))
        for one in german.iter()
        for key in ("x", "y", "x1", "y2", "r")
        if one.get(key)
    ]
    assert len(places) > 20


@pytest.mark.parametrize("name", SAVED)
def test_the_same_scene_comes_back_whatever_is_spoken(made, name, tmp_path):
    path = tmp_path / f"file.{FORMATS[name].ending}"
    back = []
    for content in made(name):
        path.write_bytes(content)
        for language in ("en", "de"):
            with speaking(language):
                found = recovered_from(path)
            back.append((json.loads(found.scene), found.export, found.format))
    assert all(one == back[0] for one in back)


def parts_of(file):
    """A JSON file, or a GLB's JSON and its bytes (glTF 2.0, 4.4: the first chunk after a header of 12 bytes)."""
    if file[:4] != b"glTF":
        return (json.loads(file),)
    (length,) = struct.unpack("<I", file[12:16])
    return json.loads(file[20 : 20 + length]), file[20 + length :]


def apart(one, other):
    """(value, the other's) where two documents of one form differ."""
    if isinstance(one, dict):
        assert one.keys() == other.keys()
        for key in one:
            yield from apart(one[key], other[key])
    elif isinstance(one, list):
        assert len(one) == len(other)
        for pair in zip(one, other, strict=True):
            yield from apart(*pair)
    elif one != other:
        yield one, other
