"""Names left out are filled in; a scene that was read can be written and read again."""

import json
import time

import numpy as np
import pytest

from rimfall import api
from rimfall.errors import Refused
from rimfall.scene.reading import GREATEST_DOCUMENT_BYTES, read, read_choices, read_export, read_feel, read_size
from tests.scene.documents import drop, pour, scene, throw
from tests.tables import each_row


def names(*motions):
    return [m.name for m in read(json.dumps(scene(*motions))).motions]


def test_a_name_left_out_is_kind_and_number():
    assert names(drop(), throw(name="serve"), throw(), pour(name=None)) == ["drop 1", "serve", "throw 3", "pour 4"]


def test_a_name_filled_in_differs_from_those_given():
    given = names(drop(), drop(name="drop 1"), drop(name="drop 3"), drop(), drop())
    assert given[1:3] == ["drop 1", "drop 3"]
    assert len(set(given)) == 5
    assert len(set(names(drop(name="drop 3"), drop(name="drop 3 again"), drop()))) == 3


def test_what_was_read_can_be_read_again():
    once = read(json.dumps(scene(drop(), throw(), pour(), title="Galley", sampling={"fps": "24000/1001"})))
    assert read(once.model_dump_json()) == once


def test_an_export_asks_with_the_same_document():
    document = scene(drop(), pour())
    exported, part = read_export(json.dumps({"scene": document, "export": {"fps": 25}}))
    assert exported == read(json.dumps(document))
    assert part == read_choices('{"fps": 25}')


MANY = {f"k{number}": number for number in range(30_000)}
TEXT = json.dumps(scene(drop(), title="Galley"))
SECONDS = 0.5  # of processor time


def within(part, inside):
    """The scene with something put where a part begins, as JSON."""
    return TEXT.replace(f'"{part}": ', f'"{part}": {inside}', 1).encode()


HOSTILE = [
    ("brackets in brackets", b"[" * 400_000 + b"]" * 400_000, "document", "more than 200 deep"),
    ("braces in braces", b'{"motions":' * 60_000 + b"1" + b"}" * 60_000, "document", "more than 200 deep"),
    ("a list within a text's place", within("title", "[" * 300_000), "document", "more than 200 deep"),
    ("unknown fields", json.dumps(scene(**MANY)).encode(), "k0", "Field k0 is unknown"),
    ("unknown fields of a habitat", json.dumps(scene(habitat=MANY)).encode(), "habitat.k0", "Field habitat.k0 is unknown"),
    ("unknown fields of a motion", json.dumps(scene(drop(**MANY))).encode(), "motions.0.k0", "is unknown"),
    ("unknown fields of a body", json.dumps(scene(drop(body=MANY))).encode(), "motions.0.body.mass_kg", "Mass is missing"),
    ("a name without end", json.dumps(scene(**{"x" * 900_000: 1})).encode(), "x" * 200, "is unknown"),
    ("a field twice", TEXT[:-1].encode() + b', "motions": []}', "motions", "Field motions is there twice"),
    ("a field many times", TEXT[:-1].encode() + b', "title": "a"' * 60_000 + b"}", "title", "is there twice"),
    ("a field twice in a part", within("habitat", '{"radius_m": 9, ').replace(b", {", b", ", 1), "radius_m", "there twice"),
    ("a whole number without end", within("radius_m", "9" * 900_000), "document", "more than 4,300 digits"),
    ("a whole number of 4,000 digits", within("radius_m", "9" * 4_000), "habitat.radius_m", "Radius was"),
    ("a fraction without end", within("radius_m", "1e999999999999, \"x\": "), "habitat.radius_m", "Radius was"),
    ("half a pair", within("title", '"\\ud800", "x": '), "document", "lone surrogate"),
    ("half a pair in UTF-8", TEXT.encode().replace(b"Galley", b"\xed\xa0\x80"), "document", "no UTF-8"),
    ("a zero byte", TEXT.encode().replace(b"Galley", b"\0"), "document", "control character"),
    ("space", b" " * (GREATEST_DOCUMENT_BYTES - 1) + b"{", "document", "not JSON"),
    ("numbers for motions", json.dumps(scene() | {"motions": [1] * 300_000}).encode(), "motions", "Motions was [1, 1"),
]  # fmt: skip


@each_row(("kind", "document", "field", "says"), HOSTILE)
def test_what_is_made_to_cost_or_confuse_is_refused_at_once(kind, document, field, says):
    refusals = refused_at_once(read, document)
    assert (refusals[0].field, kind) == (field, kind)
    assert says in refusals[0].say


@each_row("reader", [read_feel, read_size, lambda document: read_export(b'{"scene": ' + document + b"}")])
@each_row("document", [document for _, document, _, _ in HOSTILE[:4]])
def test_so_it_is_by_every_reader(reader, document):
    refused_at_once(reader, document)


def refused_at_once(reader, document):
    assert len(document) <= GREATEST_DOCUMENT_BYTES
    began_s = time.process_time()
    with pytest.raises(Refused) as caught:
        reader(document)
    assert time.process_time() - began_s < SECONDS
    assert all(len(one.say) < 1_000 and len(one.was) <= 80 for one in caught.value.refusals)
    return caught.value.refusals


@each_row("part", [np.zeros(3), {1, 2}, np.int64(1), {(1, 2): 3}, 10**5_000])
def test_data_that_json_cannot_hold_is_refused(part):
    for ask in (lambda: api.open_scene({"habitat": part}), lambda: api.size([{"kind": part}])):
        with pytest.raises(Refused, match="what JSON cannot"):
            ask()


def test_a_list_within_itself_is_refused():
    inside = []
    inside.append(inside)
    with pytest.raises(Refused, match="what JSON cannot"):
        api.open_scene({"motions": inside})
