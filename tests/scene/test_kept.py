"""What was worked out before is not worked out again, and no answer shows it: warm or cold, the same bytes."""

import copy
import json
import threading

import numpy as np
import pytest

from rimfall.errors import Refused
from rimfall.physics import kept
from rimfall.physics.budget import Budget, Stopped, spending
from rimfall.physics.forces import Force
from rimfall.physics.kept import Store, keeping, key_of
from rimfall.physics.rolling import GroundLaw
from rimfall.scene import answers, examples, questions
from rimfall.scene.reading import read
from rimfall.web.work import KEPT, Asked, answered
from tests.frozen import random_scenes
from tests.frozen.random_scenes import Dice
from tests.frozen.seeds import SEEDS
from tests.scene.documents import changed
from tests.tables import each_row

SCENES, EDITS = 12, 3
LOB = json.loads(examples.example("same-lob"))
TRACE = {"arrays": "f4", "units": "si", "hold": None, "held": None, "follower": None}


def told(document, parts="all"):
    """The answer to a document as bytes, or its refusals in words; cold unless a Store is open."""
    try:
        return answers.of_trace(questions.trace(read(json.dumps(document)), parts=parts), f4=True)
    except Refused as error:
        return repr([vars(one) for one in error.refusals]).encode()


def store():
    return Store(32_000_000, 1_000)


def edited(document, dice):
    """A document with something changed, as a hand on the page does: of a motion, of the habitat, of the clock, or words alone."""
    document = copy.deepcopy(document)
    motions, habitat = document["motions"], document["habitat"]
    motion = dice.one_of(motions)
    what = dice.whole(0, 8)
    if what == 0:
        motion["name"] = f"Other {dice.whole(1, 9)}"
    elif what == 1:
        document["title"] = "Another title"
    elif what == 2:
        motion["start_s"] = dice.number(0.0, 1.0)
    elif what == 3:
        place = motion.setdefault("place", {})
        place["axial_m"] = np.nextafter(place.get("axial_m", 0.0), 9.0)
    elif what == 4:
        habitat["radius_m"] = dice.one_of([habitat.get("radius_m"), dice.number(20.0, 90.0)])
    elif what == 5:
        document["sampling"] = document["sampling"] | {"fps": dice.one_of([24, 25, 30])}
    elif what == 6:
        document["air"] = dice.one_of([None, {"pressure_kpa": 80.0}, {"temperature_c": 30.0}])
    elif what == 7:
        document["motions"] = [*reversed(motions)]
    else:
        document["motions"] = [*motions, copy.deepcopy(motion) | {"name": f"Again {len(motions)}"}]
    return document


@pytest.mark.parametrize("part", range(2))
def test_a_scene_that_is_edited_tells_the_same_warm_and_cold(part):
    warm = store()
    for seed in SEEDS[part :: len(SEEDS) * 2 // SCENES]:
        dice = Dice(seed)
        document = random_scenes.scene(seed)
        for _ in range(EDITS):
            with keeping(warm):
                bytes_ = told(document, "own_paths"), told(document)
            assert bytes_ == (told(document, "own_paths"), told(document)), document
            document = edited(document, dice)


@pytest.fixture
def counted(monkeypatch):
    """Calls of the force and of the laws of the ground, counted in a list from now on."""
    called = []
    for cls in (Force, *GroundLaw.__subclasses__()):
        monkeypatch.setattr(cls, "at", _noted(cls.at, called))
    return called


def _noted(before, called):
    def at(*arguments, **named):
        called.append(before)
        return before(*arguments, **named)

    return at


def test_words_and_what_is_told_besides_take_no_path_again(counted):
    warm, name = store(), "garden-sphere"
    document = json.loads(examples.example(name))
    with keeping(warm):
        cold = told(document, "own_paths")
        assert len(counted) > 100  # of the force and of the rolling law
        counted.clear()
        assert told(document, "own_paths") == cold
        assert told(changed(document, "sampling.fps", 25), "own_paths") != cold
        assert len(counted) == 0
        for path, value in (("title", "Other"), ("motions.0.name", "Other"), ("person.height_m", 1.6)):
            told(changed(document, path, value), "own_paths")
        assert len(counted) == 0


def test_a_ball_keeps_its_way_while_another_motion_is_changed(counted):
    ring = json.loads(examples.example("ring"))
    (thrown,) = (one for one in ring["motions"] if one["kind"] == "throw")
    with keeping(store()):
        told(ring, "own_paths")
        thrown["speed_m_s"] += 0.5
        counted.clear()
        told(ring, "own_paths")
    again = len(counted)
    counted.clear()
    told(ring | {"motions": [thrown]}, "own_paths")
    assert again == len(counted) > 0  # no more than it takes alone


def test_what_is_stopped_or_fails_is_not_kept():
    warm, stops = store(), iter([False] * 3)
    with keeping(warm), spending(Budget(stopped=lambda: next(stops, True))), pytest.raises(Stopped):
        questions.trace(read(examples.example("ring")))
    half = len(warm)

    def tell(*_):
        raise RuntimeError("nobody listens")

    with keeping(warm), pytest.raises(RuntimeError):
        questions.trace(read(examples.example("ring")), watch=tell)
    assert len(warm) == half
    with keeping(warm):
        assert told(json.loads(examples.example("ring"))) == told(json.loads(examples.example("ring")))


def test_too_many_samples_are_refused_of_the_same_motion_warm_and_cold():
    document = changed(LOB, "motions.0.bounces", 3)  # which has most samples later than the other has all
    scene, warm, said = read(json.dumps(document)), store(), set()
    with keeping(warm):
        questions.trace(scene)
        for most in range(20, 120, 8):
            with pytest.raises(Refused) as refused:
                questions.trace(scene, most)
            with keeping(None), pytest.raises(Refused) as cold:
                questions.trace(scene, most)
            assert repr([vars(one) for one in refused.value.refusals]) == repr(
                [vars(one) for one in cold.value.refusals]
            )
            said.add(refused.value.refusals[0].field)
    assert len(said) > 1


def test_arrays_that_are_kept_cannot_be_written():
    with keeping(store()):
        first, again = (questions.trace(read(examples.example("same-lob"))) for _ in range(2))
    assert again.motions[0].track is first.motions[0].track
    for array in (first.motions[0].track.samples.height_m, first.motions[0].track.path.path_m):
        with pytest.raises(ValueError, match="read-only"):
            array[0] = 0.0


def test_a_store_is_bounded_in_count_and_bytes():
    bounded = Store(100_000, 5)
    with keeping(bounded):
        for size in (*range(100, 1_000, 100), 100_000):
            kept.kept(np.zeros, size)
        assert len(bounded) == 5
        assert kept.kept(np.zeros, 900) is kept.kept(np.zeros, 900)
        assert kept.kept(np.zeros, 100_000) is not kept.kept(np.zeros, 100_000)  # too large a share of it
        for size in range(2_000, 3_000, 100):
            kept.kept(np.zeros, size)
    assert bounded.nbytes <= 100_000
    assert 1 < len(bounded) < 5
    bounded.clear()
    assert (len(bounded), bounded.nbytes) == (0, 0)


def test_threads_share_a_store():
    shared, same = store(), []
    document = json.loads(examples.example("same-lob"))

    def ask():
        with keeping(shared):
            same.extend(told(changed(document, "motions.0.speed_m_s", 5.0 + i % 3)) for i in range(4))

    threads = [threading.Thread(target=ask) for _ in range(4)]
    for one in threads:
        one.start()
    for one in threads:
        one.join()
    assert len(same) == 16
    assert len(set(same)) == 3


@each_row(
    ("one", "other"),
    [
        (0.0, -0.0),
        (1, True),
        (1, 1.0),
        (1.0, np.nextafter(1.0, 2.0)),
        (("ab", "c"), ("a", "bc")),
        (((1,), 2), ((1, 2),)),
        (None, "None"),
        (np.zeros(2), np.zeros((2, 1))),
        (np.zeros(2), np.zeros(2, dtype="f4")),
        (np.zeros(2), [0.0, 0.0]),
    ],
)
def test_inputs_that_differ_at_all_have_another_key(one, other):
    assert key_of(len, one) != key_of(len, other)
    assert key_of(len, one) == key_of(len, copy.deepcopy(one)) != key_of(max, one)


def test_what_cannot_be_told_apart_is_refused():
    with pytest.raises(TypeError, match="object"):
        key_of(len, object())


def test_a_worker_answers_the_page_from_what_it_has_kept(counted):
    KEPT.clear()
    body = examples.example("same-lob").encode()

    def ask(parts):
        return answered(Asked("trace", body, TRACE | {"parts": parts}, 600.0), None, lambda: False).body

    moving = ask("own_paths")
    calls = len(counted)
    assert calls > 0
    counted.clear()
    whole = ask("all")
    assert len(counted) < 2 * calls  # why they drift is flown now, and nothing else
    counted.clear()
    assert (ask("own_paths"), ask("all")) == (moving, whole)
    assert not counted
    KEPT.clear()
    assert (ask("all"), ask("own_paths")) == (whole, moving)
