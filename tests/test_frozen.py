"""What the program answers is what it answered when tests/frozen/ was written: words to the letter, numbers to rounding.

After a change of answers that is meant, `python -m tests.frozen renew` writes them anew.
"""

import functools

import pytest

from tests.frozen import kept, trees

CHUNKS = 12
answers = functools.cache(kept.kept)
documents = functools.cache(kept.documents)


def test_the_same_documents_are_asked_about():
    assert list(answers()) == list(documents())


@pytest.mark.parametrize("chunk", range(CHUNKS))
def test_answers_are_those_that_were_frozen(chunk):
    lines = []
    for name in list(documents())[chunk::CHUNKS]:
        lines += kept.changes(name, answers()[name], kept.answers_to(name, documents()[name]))
    assert not lines, "\n".join([f"{len(lines)} values differ:", *lines[:40]])


LONG_LIST = [0.1 * i for i in range(100)]


@pytest.mark.parametrize(
    ("now", "path"),
    [
        ({"words": ["It lands."], "path": LONG_LIST, "count": 3, "speed": 2.0 * (1 + 1e-8)}, "speed"),
        ({"words": ["It lands"], "path": LONG_LIST, "count": 3, "speed": 2.0}, "words.0"),
        ({"words": ["It lands."], "path": LONG_LIST, "count": 3.0, "speed": 2.0}, "count"),
        ({"words": ["It lands."], "path": LONG_LIST[:99], "count": 3, "speed": 2.0}, "path.array.0"),
        (
            {"words": ["It lands."], "path": [*LONG_LIST[:50], 5.1, *LONG_LIST[51:]], "count": 3, "speed": 2.0},
            "path.norm",
        ),
        ({"words": ["It lands."], "path": LONG_LIST[::-1], "count": 3, "speed": 2.0}, "path.first"),
        ({"words": [], "path": LONG_LIST, "count": 3, "speed": 2.0}, "words (length)"),
        ({"words": ["It lands."], "path": LONG_LIST, "count": 3}, "speed"),
    ],
)
def test_a_change_is_named_by_its_path(now, path):
    was = {"words": ["It lands."], "path": LONG_LIST, "count": 3, "speed": 2.0}
    assert list(trees.differences(trees.measured(was), trees.measured(was), equal=trees.close)) == []
    changed = list(trees.differences(trees.measured(was), trees.measured(now), equal=trees.close))
    assert changed[0][0] == path


def test_two_numbers_of_an_array_that_change_places_are_seen():
    swapped = [*LONG_LIST[:40], LONG_LIST[41], LONG_LIST[40], *LONG_LIST[42:]]
    changed = list(
        trees.differences(trees.measured({"path": LONG_LIST}), trees.measured({"path": swapped}), equal=trees.close)
    )
    assert [path for path, _, _ in changed] == ["path.sums"]


def test_rounding_is_no_change():
    was = {"path": LONG_LIST, "speed": 2.0}
    now = {"path": [x * (1 + 1e-13) for x in LONG_LIST], "speed": 2.0 * (1 + 1e-13)}
    assert list(trees.differences(trees.measured(was), trees.measured(now), equal=trees.close)) == []
