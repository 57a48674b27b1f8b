"""The API's description of itself: it is valid, it describes every route, and answers are what it says, field by field.

Valid means by the JSON schema of the OpenAPI Initiative for version 3.1 (https://spec.openapis.org/oas/3.1/schema/2022-10-07), of
which schemathesis carries a copy. What the requests may be is held by `test_schemathesis.py`.
"""

import copy
import json
from functools import cache

import jsonschema_rs
from pydantic_core import to_json
from schemathesis.specs.openapi.definitions import OPENAPI_31

from rimfall.errors import Refused
from rimfall.exports.page_drawings import map_of_limits
from rimfall.scene import answers, examples, questions
from rimfall.scene.craft import answers as craft_answers
from rimfall.scene.craft import examples as crafts
from rimfall.scene.feel import answers as feel_answers
from rimfall.scene.reading import read, read_craft, read_size
from rimfall.scene.size import answers as size_answers
from rimfall.shapes.drawn import drawn
from rimfall.web.api import router
from tests.frozen import random_scenes
from tests.scene.craft import random_crafts
from tests.scene.documents import trace_of
from tests.tables import each_row
from tests.web.described import SCHEMA

UNITS = ("si", "us")
OPEN = (
    "held",
    "width",
    "drawing_width",
    "draw",
    "name",
    "radius_m",
    "fps",
    "first_frame",
    "aspect",
)  # parameters that are no list of words


@cache
def validator(name):
    """Of the components' schema of that name."""
    return jsonschema_rs.Draft202012Validator(
        {"$ref": f"#/components/schemas/{name}", "components": SCHEMA["components"]}
    )


def is_valid(name, data):
    """As JSON says it, since tuples are lists there."""
    if validator(name).is_valid(data):
        return
    faults = [f"{'/'.join(map(str, e.instance_path))}: {e.message[:200]}" for e in validator(name).iter_errors(data)]
    raise AssertionError(faults[:5])


def of_json(data):
    return json.loads(to_json(data))


def test_the_schema_is_a_valid_document():
    assert [e.message for e in jsonschema_rs.validator_for(OPENAPI_31).iter_errors(SCHEMA)] == []
    for model in SCHEMA["components"]["schemas"].values():
        jsonschema_rs.meta.validate(model | {"$schema": "https://json-schema.org/draft/2020-12/schema"})


def test_every_reference_leads_somewhere():
    def references(data):
        if isinstance(data, dict):
            yield from [data["$ref"]] if isinstance(data.get("$ref"), str) else ()
            for inner in data.values():
                yield from references(inner)
        elif isinstance(data, list):
            for inner in data:
                yield from references(inner)

    for reference in set(references(SCHEMA)):
        at = SCHEMA
        for part in reference.removeprefix("#/").split("/"):
            at = at[part.replace("~1", "/")]


def test_every_route_is_described_with_bodies_answers_refusals_and_words():
    routes = {(route.path, method.lower()) for route in router.routes for method in route.methods}
    assert {(path, method) for path, methods in SCHEMA["paths"].items() for method in methods} == routes
    for path, methods in SCHEMA["paths"].items():
        for method, operation in methods.items():
            assert ("requestBody" in operation) == (method == "post")
            statuses = {"200", "400", "408", "414", "431", "500", "503"} | ({"404"} if "{name}" in path else set())
            statuses |= {"422"} if any(one["in"] == "query" for one in operation.get("parameters", ())) else set()
            assert set(operation["responses"]) == statuses | (
                {"413", "415", "422", "501"} if method == "post" else set()
            )
            for parameter in operation.get("parameters", ()):
                assert parameter["description"]
                assert "enum" in parameter["schema"] or parameter["name"] in OPEN
            for body in operation.get("requestBody", {}).get("content", {}).values():
                assert body["examples"]
                for example in body["examples"].values():
                    value = SCHEMA["components"]["examples"].get(example.get("$ref", "").split("/")[-1], example)[
                        "value"
                    ]
                    if "schema" not in body and path != "/api/recover":  # a table has no schema
                        assert isinstance(value, str)
                        continue
                    model = body.get("schema", {"$ref": "Scene"})["$ref"].split("/")[-1]
                    is_valid(model, json.loads(value) if isinstance(value, str) else value)


def test_objects_of_answers_are_closed_and_every_field_of_theirs_is_explained():
    for name, model in SCHEMA["components"]["schemas"].items():
        if model.get("type") == "object":
            assert model["additionalProperties"] is False, name
            for field, described in model["properties"].items():
                parts = [described, *described.get("anyOf", ()), *described.get("oneOf", ())]
                assert any(set(part) & {"description", "$ref", "const"} for part in parts), f"{name}.{field}"


@each_row("number", range(len(examples.SAY)))
def test_the_answer_to_an_example_is_what_the_schema_says(number):
    document = examples.example(list(examples.SAY)[number])
    scene, units = read(document), UNITS[number % 2]
    is_valid("Scene", json.loads(document))
    trace = trace_of(scene)
    is_valid("Trace", json.loads(answers.of_trace(trace, units, f4=True)))
    if number % 5 == 0:  # as lists an answer takes long to check
        is_valid("Trace", json.loads(answers.of_trace(trace, units)))
    is_valid("Mesh", of_json({"habitats": [drawn(scene.habitat.habitat())]}))
    is_valid("Feel", of_json(feel_answers.as_data(feel_answers.feel(scene), units)))
    is_valid("Map", of_json(map_of_limits(scene, 400, (), units)))


@each_row("seed", range(77))
def test_the_answer_to_a_scene_drawn_at_random_is_what_the_schema_says(seed):
    """Seeds go through every shape with every kind of motion."""
    document = random_scenes.scene(seed)
    try:
        scene = read(json.dumps(document))
        trace = questions.trace(scene)
    except Refused as refused:
        is_valid("Refused", refused.as_dict())
        return
    is_valid("Scene", document)
    is_valid("Trace", json.loads(answers.of_trace(trace, f4=True)))


def test_the_answers_to_craft_are_what_the_schema_says():
    for number, name in enumerate(crafts.SAY):
        answer = craft_answers.as_data(read_craft(crafts.example(name)), UNITS[number % 2])
        is_valid("Craft", json.loads(crafts.example(name)))
        is_valid("Coped", of_json(answer))
        is_valid("Coped", of_json(craft_answers.with_figures(answer)))
    for seed in range(20):
        try:
            craft = read_craft(json.dumps(random_crafts.craft(seed)))
        except Refused as refused:
            is_valid("Refused", refused.as_dict())
            continue
        is_valid("Coped", of_json(craft_answers.as_data(craft)))


def test_an_undeclared_field_and_a_missing_one_fail():
    trace = json.loads(answers.of_trace(trace_of(read(examples.example("galley")))))
    for at in (trace, trace["motions"][0], trace["motions"][0]["events"][0], trace["habitat"]):
        for spoil in (lambda part: part.update(more=1), lambda part: part.pop(next(iter(part)))):
            kept = copy.copy(at)
            spoil(at)
            assert not validator("Trace").is_valid(trace)
            at.clear()
            at.update(kept)
    assert validator("Trace").is_valid(trace)


@each_row("units", UNITS)
def test_the_answer_to_wishes_is_what_the_schema_says(units):
    for one in SCHEMA["paths"]["/api/size"]["post"]["requestBody"]["content"]["application/json"]["examples"].values():
        is_valid("SizeRequest", one["value"])
        is_valid("Size", of_json(size_answers.as_data(read_size(json.dumps(one["value"])), units)))
    for seed in range(40):
        wishes = random_scenes.wishes(seed)
        try:
            answer = size_answers.as_data(read_size(json.dumps(wishes)), units)
        except Refused:
            continue
        is_valid("SizeRequest", wishes)
        is_valid("Size", of_json(answer))
