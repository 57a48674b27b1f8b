"""Broken documents against a real server: each is answered 4xx with a message that names the place, and the server serves on."""

import copy
import http.client
import itertools
import json
import random

import pytest

from rimfall.scene import examples
from tests.serving import serving

SCENE = json.loads(examples.example("galley")) | {"air": {"pressure_kpa": 101.325, "temperature_c": 20.0}}
LEAST_CASES = 200
WRONG = [None, True, "3", "", [], {}, [[]], -1e308, 1e308, -1e9, 10**40, "NaN", {"a": 1}, [1, 2, 3]]
NUMBERS = ["NaN", "Infinity", "-Infinity", "1e999", "-1e999", "1e308", "-1e308", "0x10", "01", "--1", "+1", ".5"]


def paths(value, at=()):
    """Every place in a document."""
    if at:
        yield at
    inside = value.items() if isinstance(value, dict) else enumerate(value) if isinstance(value, list) else ()
    for key, inner in inside:
        yield from paths(inner, (*at, key))


def changed(at, value):
    document = copy.deepcopy(SCENE)
    target = document
    for key in at[:-1]:
        target = target[key]
    target[at[-1]] = value
    return document


def without(at):
    document = copy.deepcopy(SCENE)
    target = document
    for key in at[:-1]:
        target = target[key]
    del target[at[-1]]
    return document


def places():
    return [at for at in paths(SCENE) if at[-1] not in ("ceiling_m", "hub_radius_m", "duration_s", "width_m")]


def wrong_values():
    """A wrong type or an absurd size at every place, each in a field that may not be it."""
    for at, value in itertools.product(places(), WRONG):
        here = SCENE
        for key in at:
            here = here[key]
        plausible = (
            (isinstance(value, str) and isinstance(here, str))
            or (value is None and at[-1] in ("air", "carried", "name", "decks"))
            or (isinstance(value, (list, dict)) and not value and isinstance(here, type(value)))
            or (at[-1] in ("spin_ramp", "decks") and value == [])
        )  # fmt: skip
        if not plausible:
            yield json.dumps(changed(at, value)).encode()


def missing():
    for at in (("rimfall",), ("habitat",), ("motions",), ("habitat", "radius_m"), ("habitat", "spin_rpm"), ("motions", 0, "kind"),
               ("motions", 0, "body"), ("motions", 2, "flow_ml_s"), ("motions", 2, "liquid"), ("motions", 1, "body", "mass_kg")):  # fmt: skip
        yield json.dumps(without(at)).encode()


def unknown():
    for at in ((), ("habitat",), ("air",), ("motions", 0), ("motions", 1, "place"), ("sampling",)):
        yield json.dumps(changed((*at, "größe ☃"), 1)).encode()


def raw():
    """What is not JSON, or not quite."""
    text = json.dumps(SCENE)
    yield from (text.replace("56.0", number, 1).encode() for number in NUMBERS)
    yield from (
        b"",
        b" ",
        b"{",
        b"[",
        b"null",
        b"true",
        b"[]",
        b"{}",
        b'""',
        b"\x00",
        b"{}{}",
        b"{'rimfall': 1}",
        b'{"rimfall": 1,}',
    )
    yield b"\xff\xfe" + text.encode()
    yield text.encode()[:-7]
    yield (b"[" * 50_000) + (b"]" * 50_000)
    yield (b'{"motions":' * 5_000) + b"1" + (b"}" * 5_000)
    yield json.dumps(SCENE | {"title": "\ud800"}).encode()
    yield json.dumps(SCENE | {"title": "x" * 201}).encode()
    yield json.dumps(SCENE | {"motions": SCENE["motions"][:1] * 2}).encode()
    yield json.dumps(SCENE | {"motions": [{}] * 100_000}).encode()
    yield json.dumps(SCENE | {"motions": [1] * 101}).encode()


def shuffled(seed=20, count=120):
    """Two places of the document changed places."""
    chance = random.Random(seed)
    for _ in range(count):
        a, b = chance.sample(places(), 2)
        value = SCENE
        for key in b:
            value = value[key]
        made = changed(a, copy.deepcopy(value))
        if made != SCENE:
            yield json.dumps(made).encode()


@pytest.fixture(scope="module")
def server(tmp_path_factory):
    with serving(tmp_path_factory.mktemp("malformed") / "log.txt") as origin:
        yield origin.removeprefix("http://")


def ask(server, body, path="/api/trace"):
    connection = http.client.HTTPConnection(server, timeout=60)
    connection.request("POST", path, body, {"content-type": "application/json"})
    try:
        answer = connection.getresponse()
        return answer.status, json.loads(answer.read())
    finally:
        connection.close()


def assert_refused(status, answer, body):
    assert 400 <= status < 500, (status, body[:300])
    assert answer["refused"], body[:300]
    for one in answer["refused"]:
        assert set(one) == {"field", "was", "may_be", "say"}
        assert one["field"], body[:300]
        assert one["say"], body[:300]
        assert len(one["was"]) <= 80


def test_every_malformed_document_is_refused_by_name(server):
    bodies = [*wrong_values(), *missing(), *unknown(), *raw()]
    assert len(bodies) >= LEAST_CASES
    for body in bodies:
        assert_refused(*ask(server, body), body)
    assert ask(server, json.dumps(SCENE).encode())[0] == 200


def test_documents_with_places_exchanged_never_break_the_server(server):
    for body in shuffled():
        status, answer = ask(server, body)
        if status != 200:
            assert_refused(status, answer, body)


def test_a_key_given_twice_is_refused_by_its_name(server):
    text = json.dumps(SCENE).replace('"spin_rpm": 3.0', '"spin_rpm": 9999, "spin_rpm": 3.0')
    status, answer = ask(server, text.encode())
    assert_refused(status, answer, text)
    assert "spin_rpm" in answer["refused"][0]["field"]


def test_a_document_in_utf_16_or_with_a_byte_order_mark_is_read(server):
    text = json.dumps(SCENE)
    for body in (text.encode("utf-16"), text.encode("utf-8-sig")):
        assert ask(server, body)[0] == 200
