"""Compiled catalogues that are not whole, or of another version of the program: nothing fails, what cannot be told is English, and the log
says why."""

import json
import logging
import os

import pytest

from rimfall import language
from rimfall.errors import BadInput
from rimfall.languages import speaking as asked_for
from tests import pseudo
from tests.tables import each_row

TAG = "xw"
WHOLE = pseudo.catalogue(TAG, "ltr") | {
    "messages": {"A {thing} falls.": "{thing} fällt.", "{count} ball": ["{count} Ball", "{count} Bälle"]},
    "page": ["A {thing} falls.", "gone"],
}


@pytest.fixture
def written(tmp_path, monkeypatch):
    """written(text): makes it the catalogue of the language."""
    monkeypatch.setenv(language.TRIED_OUT, str(tmp_path))

    def write(text):
        (tmp_path / f"{TAG}.json").write_bytes(text if isinstance(text, bytes) else text.encode())

    return write


def is_spoken():
    """Whether the language is there, all that asks for languages agreeing."""
    with language.speaking(TAG):
        is_there = language.spoken() == TAG
        assert language.tr("not told") == "not told"
    assert (TAG in [one["language"] for one in language.offered()]) == is_there
    assert language.chosen(TAG) == (TAG if is_there else "en")
    assert language.chosen(None, f"{TAG}, de;q=0.5") == (TAG if is_there else "de")
    assert (language.page_script(TAG) != "") == is_there
    return is_there


def test_one_that_is_whole_is_spoken(written):
    written(json.dumps(WHOLE))
    assert is_spoken()


@each_row(
    "text",
    [
        "",
        "{",
        json.dumps(WHOLE)[:-40],  # half written
        "null",
        "[]",
        '"text"',
        "[" * 100_000,
        b"\xff\xfe{}",
        *(json.dumps({key: value for key, value in WHOLE.items() if key != left_out}) for left_out in WHOLE.keys() - {"source"}),
        *(
            json.dumps(WHOLE | wrong)
            for wrong in (
                {"language": "de"},
                {"language": None},
                {"direction": "up"},
                {"decimal": 1.5},
                {"group": None},
                {"plural": "import os"},
                {"plural": "n + 5"},
                {"plural": "n / 0"},
                {"categories": 3},
                {"categories": ["one", "</script>"]},
                {"messages": ["A"]},
                {"page": None},
                {"messages": {"A": 5}},
            )
        ),
    ],
)  # fmt: skip
def test_one_that_is_damaged_is_no_language(text, written, caplog):
    written(text)
    with caplog.at_level(logging.WARNING, "rimfall"):
        assert not is_spoken()
    assert f"{TAG}.json cannot be read" in caplog.text
    with pytest.raises(BadInput, match=f"Language was {TAG}; it must be en or de"), asked_for(TAG):
        pass


def test_one_that_is_mended_is_spoken_from_then_on(written, tmp_path):
    written("{")
    assert not is_spoken()
    written(json.dumps(WHOLE))
    os.utime(tmp_path / f"{TAG}.json", ns=(1, 1))
    assert is_spoken()
    (tmp_path / f"{TAG}.json").unlink()
    assert not is_spoken()


@each_row(
    ("english", "said"),
    [
        ("A {thing} falls.", "{body} fällt."),
        ("A {thing} falls.", "Es fällt."),
        ("A {thing} falls.", "{thing.__class__} fällt."),
        ("A {thing} falls.", "{thing!r} fällt."),
        ("A {thing} falls.", "{thing:>999999999} fällt."),
        ("A {thing} falls.", "{thing} {0} fällt."),
        ("A {thing} falls.", "{thing} fällt {."),
        ("A {thing} falls.", "{thing} fällt }."),
        ("A {thing} falls.", ["{thing} fällt.", "{thing} fallen."]),
    ],
)
def test_a_message_that_does_not_fit_its_english_is_not_told(english, said, written):
    written(json.dumps(WHOLE | {"messages": WHOLE["messages"] | {english: said}}))
    with language.speaking(TAG):
        assert language.tr(english, thing="{ball}") == "A {ball} falls."
    if isinstance(said, str):
        assert "A {thing} falls." not in language.page_script(TAG)


@each_row("said", ["{count} Bälle", ["{count} Bälle"], [1, 2], ["{number} Ball", "{number} Bälle"], ["{", "}"], [], {}])
def test_a_count_whose_forms_do_not_fit_is_told_in_english(said, written):
    written(json.dumps(WHOLE | {"messages": {"{count} ball": said}}))
    with language.speaking(TAG):
        assert [language.tr_many("{count} ball", "{count} balls", n) for n in (1, 2)] == ["1 ball", "2 balls"]


def test_what_is_no_catalogue_is_passed_over(tmp_path, monkeypatch):
    for name in ("en.json", "x.json", "XY.json", "de .json", "-.json", "x'y.json", "README.md"):
        (tmp_path / name).write_text(json.dumps(WHOLE), encoding="utf-8")
    (tmp_path / "xf.json").mkdir()
    monkeypatch.setenv(language.TRIED_OUT, str(tmp_path))
    assert language.files().keys() == {"de"}


@each_row("folder", ["/nowhere/at/all", __file__, "", "~"])
def test_a_folder_that_is_none_adds_no_language(folder, monkeypatch):
    monkeypatch.setenv(language.TRIED_OUT, folder)
    assert [one["language"] for one in language.offered()] == ["en", "de"]


def test_where_no_catalogue_was_made_english_is_spoken(monkeypatch, tmp_path):
    monkeypatch.setattr(language.catalogues, "folder", lambda name: tmp_path / name)
    language.catalogues._compiled.cache_clear()
    try:
        assert [one["language"] for one in language.offered()] == ["en"]
        assert language.chosen("de", "de") == "en"
        with language.speaking("de"):
            assert (language.spoken(), language.written(1234.5, ",.1f")) == ("en", "1,234.5")
        with pytest.raises(BadInput, match="Language was de; it must be en"), asked_for("de"):
            pass
    finally:
        language.catalogues._compiled.cache_clear()
