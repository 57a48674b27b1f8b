"""Languages: which is spoken to whom, how numbers are written (Babel, which has the Unicode Common Locale Data Repository, as oracle), and that each
catalogue says all that the program says, with its places and its numbers."""

import json
import re
from collections import Counter

import pytest
from babel.messages.plurals import get_plural
from babel.numbers import format_decimal

from rimfall import language
from rimfall.folders import folder
from rimfall.language import speaking, tr, tr_as, tr_many, written
from tests import catalogues, pseudo
from tests.tables import each_row

LANGUAGES = sorted(path.stem for path in catalogues.CATALOGUES.glob("*.po"))
PLACE = re.compile(r"\{(\w+)\}")
FIGURE = re.compile(r"(?<![^\W\d_])\d+(?:[.,]\d+)*")  # but not of a word


@pytest.fixture(scope="module", params=LANGUAGES)
def catalogue(request):
    return catalogues.read(request.param)


def test_every_message_is_translated_and_none_that_is_gone(catalogue):
    said = {(message.context, *texts_of(message)): message for message in catalogue if message.id}
    wanted = {(context, *([text] if many is None else [text, many])) for context, text, many in catalogues.messages()}
    assert sorted(map(str, wanted - said.keys())) == [], "run: python -m tests.catalogues update"
    assert sorted(map(str, said.keys() - wanted)) == [], "run: python -m tests.catalogues update"
    empty = [key for key, message in said.items() if message.fuzzy or not all(strings_of(message))]
    assert empty == []


def test_no_place_and_no_number_changes(catalogue):
    wrong = []
    for message in catalogue:
        if not message.id:
            continue
        for text in strings_of(message):
            alike = [one for one in texts_of(message) if places(one) == places(text)]
            if not any(same_figures(one, text, str(catalogue.locale)) for one in alike):
                wrong.append((texts_of(message), text))
    assert wrong == []


def test_counts_have_the_forms_of_the_language(catalogue):
    plural = get_plural(str(catalogue.locale))
    assert (catalogue.num_plurals, catalogue.plural_expr) == (plural.num_plurals, plural.plural_expr)
    for message in catalogue:
        assert len(strings_of(message)) == (1 if isinstance(message.id, str) else catalogue.num_plurals)


@each_row("language", LANGUAGES)
def test_what_is_spoken_is_what_the_catalogue_says(language):
    said = json.loads((folder("static") / f"vendor/language/{language}.json").read_text(encoding="utf-8"))
    for message in catalogues.read(language):
        if message.id:
            key = texts_of(message)[0]
            key = key if message.context is None else message.context + "\x04" + key
            assert said["messages"][key] == (message.string if isinstance(message.id, str) else list(message.string))


@each_row(("value", "spec"), [(1234.5, ",.2f"), (0.004, ".3f"), (1234567, ",d"), (12, "d"), (-2.5, ".1f")])
def test_numbers_are_written_as_the_language_writes_them(value, spec):
    digits = int(spec[-2]) if spec.endswith("f") else 0
    pattern = "#,##0" + ("." + "0" * digits if digits else "")
    for tag in LANGUAGES:
        with speaking(tag):
            assert written(value, spec) == format_decimal(value, format=pattern, locale=tag)
    assert written(value, spec) == format_decimal(value, format=pattern, locale="en")


# RFC 9110, 12.5.4: the highest quality first, 1 where none is told, never what has 0; what comes first among equals
@each_row(
    ("accepted", "is_chosen"),
    [
        ("de", "de"),
        ("de-AT,de;q=0.9,en;q=0.8", "de"),
        ("en-GB,en;q=0.9,de;q=0.8", "en"),
        ("fr-FR, de;q=0.5, en;q=0.4", "de"),
        ("fr, *;q=0.1", "en"),
        ("en;q=0.2, de;q=0.7", "de"),
        ("de;q=0, en", "en"),
        ("de;q=0", "en"),
        ("", "en"),
        (";;;,,q=,de;q=x", "en"),
        ("../de", "en"),
        ("en;q=nan, de;q=0.1", "de"),
        ("en;q=inf, de", "de"),
        ("de;q=-1, en;q=0.1", "en"),
        ("de;q=2, en;q=0.1", "en"),
        ("de;q=1_0, en;q=0.1", "en"),
        ("DE-ch;Q=0.9, en;q=0.8", "de"),
        ("d\u0435, \uff44\uff45, de\x00", "en"),  # letters that look like these
        ("fr," * 167 + "de", "en"),  # past the 500 characters that are read
        ("fr," * 166 + "den", "en"),
    ],
)
def test_who_chose_nothing_is_spoken_to_as_the_browser_accepts(accepted, is_chosen):
    assert language.chosen(None, accepted) == is_chosen


@each_row(
    ("wanted", "is_chosen"), [("de", "de"), ("en", "en"), ("xx", "en"), ("../../de", "en"), ("", "en"), (None, "en")]
)
def test_what_was_chosen_is_spoken_where_it_is_offered(wanted, is_chosen):
    assert language.chosen(wanted) == is_chosen


def test_texts_counts_and_contexts_are_found_and_filled(tmp_path, monkeypatch):
    messages = {
        "A {thing} falls.": "{thing} fällt.",
        "on\x04the deck": "dem Deck",
        "{count} ball": ["{count} Ball", "{count} Bälle"],
    }
    made = pseudo.catalogue("xa", "ltr") | {"messages": messages, "page": ["on\x04the deck"]}
    (tmp_path / "xa.json").write_text(json.dumps(made), encoding="utf-8")
    monkeypatch.setenv(language.TRIED_OUT, str(tmp_path))
    with speaking("xa"):
        assert tr("A {thing} falls.", thing="Ein Ball") == "Ein Ball fällt."
        assert (tr_as("on", "the deck"), tr_as("the", "the deck"), tr("not told")) == (
            "dem Deck",
            "the deck",
            "not told",
        )
        assert [tr_many("{count} ball", "{count} balls", n) for n in (0, 1, 2, 1000)] == [
            "0 Bälle", "1 Ball", "2 Bälle", "1.000 Bälle",
        ]  # fmt: skip
        assert language.spoken() == "xa"
        with speaking("nowhere"):
            assert (language.spoken(), tr("A {thing} falls.", thing="ball")) == ("en", "A ball falls.")
    assert language.spoken() == "en"
    assert {"language": "xa", "name": "xa", "direction": "ltr"} in language.offered()
    assert json.loads(language.page_script("xa").partition("=")[2].rstrip(";\n"))["messages"] == {
        "on\x04the deck": "dem Deck"
    }
    assert language.page_script("en") == ""


def test_what_comes_into_a_place_keeps_its_direction_among_words_from_right_to_left(tmp_path, monkeypatch):
    """By isolates, as Unicode's bidirectional algorithm (UAX #9, 2.4.2) has them."""
    made = pseudo.catalogue("xb", "rtl") | {"messages": {"{length} away": "{length} بعيد"}, "page": []}
    (tmp_path / "xb.json").write_text(json.dumps(made), encoding="utf-8")
    monkeypatch.setenv(language.TRIED_OUT, str(tmp_path))
    with speaking("xb"):
        assert tr("{length} away", length="5 m") == "\N{FIRST STRONG ISOLATE}5 m\N{POP DIRECTIONAL ISOLATE} بعيد"


def texts_of(message):
    return (message.id,) if isinstance(message.id, str) else tuple(message.id)


def strings_of(message):
    return (message.string,) if isinstance(message.string, str) else tuple(message.string)


def places(text):
    return Counter(PLACE.findall(text))


def same_figures(english, text, language):
    """Whether a text has the numbers of its English: each as the language writes it, or as it stands there, being the number of a section or what
    is to be typed."""
    signs = str.maketrans(",.", format_decimal(1234.5, locale=language)[1::4])
    left = Counter(FIGURE.findall(text))
    for figure in FIGURE.findall(english):
        written = figure.translate(signs)
        left.subtract([written if left[written] > 0 else figure])
    return not any(left.values())
