"""Names left out are filled in; a scene that was read can be written and read again."""

import json

from rimfall.scene.reading import read, read_choices, read_export
from tests.scene.documents import drop, pour, scene, throw


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
