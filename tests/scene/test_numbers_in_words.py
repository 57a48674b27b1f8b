"""The words of every kind of motion in every shape: each number, its unit and its side are those of the answer's arrays.

`python -m tests.words --scenes 300` looks at as many as are wanted.
"""

from tests.frozen.asking import KIND_NAMES, SHAPE_NAMES
from tests.motions.scenes import AIR, one, place
from tests.words.sweep import of_seed
from tests.words.tokens import tokens

PAIRS = len(KIND_NAMES) * len(SHAPE_NAMES)  # seeds go through all of them in turn
TRIES = 8  # some scenes are drawn to be refused


def test_every_number_in_the_words_is_one_of_the_answers():
    answered = [next((r for k in range(TRIES) if (r := of_seed(pair + k * PAIRS))), None) for pair in range(PAIRS)]
    assert sum(result is not None for result in answered) >= 0.9 * PAIRS
    assert [number for result in answered if result for number in result[0]] == []
    assert sum(result[1] for result in answered if result) > 10 * PAIRS


def test_numbers_are_read_with_what_they_are_of():
    said = "It lands twice round and 1,234 m spinward after 2.50 s; under plain gravity, 4.7 mm antispinward."
    landed, after, plain = tokens(said)
    assert (landed.value, landed.half, landed.side, landed.cue) == (1234.0, 0.5, "spinward", "lands")
    assert (after.measure, after.shows(2.504), after.shows(2.506)) == ("time", True, False)
    assert (round(plain.value, 9), plain.side, plain.cue) == (0.0047, "antispinward", "under plain gravity")


def test_a_contact_without_a_bounce_is_none():
    """Along an end wall it goes on, and in a ring the last of nine contacts lets it slide on: neither leaves what it met."""
    ball = {"mass_kg": 0.3, "diameter_m": 0.1, "restitution": 0.8, "rolling_resistance": 0.02}
    thrown = {"speed_m_s": 4.07575, "heading_deg": -54.03987, "elevation_deg": 3.05413, "bounces": 1}
    room = {"radius_m": 18.79535, "spin_rpm": 6.72815, "ceiling_m": 2.5, "width_m": 6.0}
    traced = one({"kind": "throw", "place": place(1.2), "body": ball, **thrown}, room, AIR)
    assert "It bounces once and comes to rest" in traced.outcome()[-1]
    assert of_seed(162)[0] == []


def test_drops_that_dripped_are_counted_apart_from_those_of_the_stream():
    """14 drip and a stream breaks into 271: a pour that is too slow for a stream as it begins."""
    assert of_seed(250)[0] == []
