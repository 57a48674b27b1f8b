"""schemathesis asks every address what the API's own description says may be asked, and what it says may not, and holds the answers
against it with all of its checks: the examples, every corner of every field, and requests drawn by chance. In process, and the same
requests each time.

Two things are told to it. A scene has rules that no JSON schema can say (a throw starts inside the room, drops fit the air), so a
body that fits the description may be refused with 422: `positive_data_acceptance` expects that too, and a check of our own holds that
each such refusal is one of those rules and never one of a single field. And a model is read by one function wherever it comes: its
corners are gone through once (habitats and motions at `/api/trace`, people at `/api/feel`, craft at `/api/craft`, and so each body that
several addresses take: `GONE_THROUGH`), and where else it comes it is one value: a scene in a talk, a place and a body in a throw, feet
on the deck in a walk, decks and a changing spin in a cylinder, floors in pods, what all parts of a craft share in a ring. What several
habitats or motions have, described word for word alike, is asked of the first that has it, and left out of the others. Of the examples,
four.
"""

import copy
import json
import re
from collections import Counter

import pydantic
import pytest
import schemathesis
from schemathesis.config import SchemathesisConfig
from schemathesis.engine import events, from_schema
from schemathesis.generation import GenerationMode

from rimfall.scene import examples
from rimfall.web import answering
from rimfall.web.app import make_app
from rimfall.web.schema.operations import OPERATIONS
from tests.web.described import SCHEMA

SCENE = json.loads(examples.example("same-lob"))
OTHERS = [{"name": "Smaller", "habitat": {"radius_m": 20.0, "spin_rpm": 4.0}}]
THROW = SCENE | {"motions": SCENE["motions"][:1], "air": None}
PEOPLE = {"person": {"height_m": 1.6}, "own_limits": []}
THINGS = {"place": {"height_m": 1.5}, "body": "handball"}
FEET = {"place": {"along_m": 1.0}, "carried": None}
FLOORS = {"floors": [{"width_m": 6.0}, {"width_m": 7.0}]}
TURNING = {"spin_ramp": [{"time_s": 2.0, "spin_rpm": 4.0}], "decks": [{"name": "Upper", "radius_m": 2.0}]}
LANDINGS = next(
    iter(SCHEMA["paths"]["/api/landings"]["post"]["requestBody"]["content"]["application/json"]["examples"].values())
)
CARRIED = {"craft": None}
SOLID = {"name": "part", "group": "still", "mass_kg": 5.0, "place_m": [0, 0, 0], "axis": [0, 0, 1], "radius_m": 2.0}
ONE_VALUE = {
    "Scene": {"compare": OTHERS, **PEOPLE, **CARRIED},
    "FeelRequest": {"habitat": SCENE["habitat"], "motions": SCENE["motions"], "compare": OTHERS, **CARRIED},
    "AimRequest": {"scene": THROW, "motion": THROW["motions"][0]["name"]},
    "LandingsRequest": {name: LANDINGS["value"][name] for name in ("scene", "motion")},
    "CameraRequest": {"scene": SCENE},
    "Step": {"scene": SCENE | {"motions": SCENE["motions"][:1]}},
    "ExportRequest": {"scene": SCENE | {"motions": SCENE["motions"][:1], "sampling": {"fps": 2}}},
    **dict.fromkeys(("Drop", "Stand", "Hang", "Roll", "Pour"), THINGS | FEET),
    **dict.fromkeys(("Jump", "Lift"), FEET),
    **dict.fromkeys(("TorusPart", "SpherePart", "PodsPart", "TurntablePart"), TURNING),
    **dict.fromkeys(("TetherPart", "TumblerPart"), TURNING | FLOORS),
    **dict.fromkeys(("Point", "Rod", "Disc", "Cylinder", "CylinderShell", "Box", "Sphere"), SOLID),
    **dict.fromkeys(("SphereShell", "Torus", "TorusShell", "Cone"), SOLID),
}
GONE_THROUGH = {  # where, of the bodies that several addresses take; at the others a body is its required fields, of one value
    "FeelRequest": "/api/feel",
    "Craft": "/api/craft",
    "Talk": "/api/talk",
    "LandingsRequest": "/api/landings",
    "ExportRequest": "/api/export/{name}",
}
NO_SCHEMA_SAYS = {"fps"}  # a frame rate as a fraction: the pattern cannot say that it lies between 1 and 240
DRAWN = 8  # requests for each way of drawing them
EVERY_CHECK = {
    "not_a_server_error", "status_code_conformance", "content_type_conformance", "response_headers_conformance",
    "response_schema_conformance", "positive_data_acceptance", "negative_data_rejection", "missing_required_header",
    "unsupported_method", "allow_header_conformance", "ignored_auth", "use_after_free", "ensure_resource_availability",
    "object_level_authorization", "refused_for_what_no_schema_says",
}  # fmt: skip
CHECKS = {
    "positive_data_acceptance": {"expected-statuses": ["200", "422"]},
    "negative_data_rejection": {"expected-statuses": ["404", "413", "415", "422"]},
}


@schemathesis.check
def refused_for_what_no_schema_says(ctx, response, case):
    """A request that fits the description is refused for no single field."""
    if response.status_code != 422 or case.meta.generation.mode != GenerationMode.POSITIVE:
        return
    fields = {one["field"] for one in response.json()["refused"]}
    assert fields & set(case.query or ()) <= {"held", "follower"}, f"a query that fits is refused: {fields}"
    model = OPERATIONS[case.operation.path, case.method.lower()].body
    if model is None:  # what bytes are a file that Rimfall wrote no schema says
        assert fields <= {"file", "radius_m"}
        return
    faults = [one for one in _faults(model, response.request.body) if one["type"] not in NO_SCHEMA_SAYS]
    assert not faults, f"a body that fits is refused for one field: {faults}"


def _faults(model, body):
    """What a model has against a body, field by field."""
    try:
        model.model_validate_json(body)
    except pydantic.ValidationError as error:
        return error.errors(include_url=False, include_context=False)
    return []


@schemathesis.deserializer("application/x-ndjson")
def lines(ctx, response):
    """A stream as the description has it: an item a line."""
    return [json.loads(line) for line in response.content.splitlines()]


def _renamed(data):
    """With each reference to a model turned to what is asked in its place."""
    return json.loads(re.sub(r"(#/components/schemas/\w+)", r"\1Asked", json.dumps(data)))


def _families():
    """The names of the models that are one kind of a thing each: motions, habitats."""
    fields = SCHEMA["components"]["schemas"]["Scene"]["properties"]
    for choice in (fields["motions"]["items"], fields["habitat"]):
        yield [one["$ref"].rsplit("/", 1)[1] for one in choice["oneOf"]]


def _shared():
    """model -> the fields, with a default, that one before it in its family has, described alike."""
    shared, models = {}, SCHEMA["components"]["schemas"]
    for family in _families():
        before = []
        for name in family:
            fields = models[name]["properties"]
            shared[name] = {f for f, one in fields.items() if "default" in one and (f, one) in before}
            before += fields.items()
    return shared


def _of_one_value(name, model):
    """A model with those fields that are gone through elsewhere left out, or held to one value."""
    held = {field: value for field, value in ONE_VALUE.get(name, {}).items() if field in model.get("properties", ())}
    left = SHARED.get(name, set()) - set(held)
    fields = {field: one for field, one in model.get("properties", {}).items() if field not in left}
    fields |= {field: {"enum": [value]} for field, value in held.items()}
    return model | ({"properties": fields} if held or left else {})


def _as_in(example, name):
    """A model of the fields alone that it needs, each of the value that it has in an example; a title may be any."""
    model, given = SCHEMA["components"]["schemas"][name], example["value"]
    needs = [
        *model["required"],
        *(("rimfall_craft", "radius_m", "spin_rpm") if name == "Craft" else ()),
    ]  # alone, without a scene
    fields = {field: model["properties"][field] if field == "title" else {"enum": [given[field]]} for field in needs}
    return model | {"required": needs, "properties": fields}


SHARED = _shared()


ASKED = {
    f"{name}Asked": _renamed(_of_one_value(name, model)) for name, model in SCHEMA["components"]["schemas"].items()
}


def described(address):
    """What schemathesis asks at one address."""
    part = copy.deepcopy(SCHEMA | {"paths": {address: SCHEMA["paths"][address]}})
    part["components"]["schemas"] |= ASKED  # under other names: in answers a model stays what it is
    for parameter in part["paths"][address].get("get", {}).get("parameters", ()):
        if parameter["in"] == "path":
            parameter["schema"]["enum"] = parameter["schema"]["enum"][:4]
    for body in part["paths"][address].get("post", {}).get("requestBody", {}).get("content", {}).values():
        body["examples"] = dict(list(body["examples"].items())[:4])  # the answers to all are in `test_schema.py`
        if "schema" in body:
            name = body["schema"]["$ref"].rsplit("/", 1)[1]
            if GONE_THROUGH.get(name, address) != address:
                part["components"]["schemas"][f"{name}Asked"] = _as_in(next(iter(body["examples"].values())), name)
            body["schema"] = _renamed(body["schema"])
    drawn = {"max-examples": DRAWN, "deterministic": True, "database": "none", "no-shrink": True}
    phases = {"stateful": {"enabled": False}}  # nothing is made that another request could ask for
    config = SchemathesisConfig.from_dict(
        {"seed": 1, "generation": drawn, "phases": phases, "checks": CHECKS, "request-timeout": 300}
    )
    asked = schemathesis.openapi.from_dict(part, config=config)
    # the name by which schemathesis calls an app in process, and time enough on a busy machine
    asked.app = make_app(served_as="testserver", max_seconds=300)
    return asked


def test_a_body_that_several_addresses_take_is_gone_through_at_one_of_them():
    taken = Counter(
        body["schema"]["$ref"].rsplit("/", 1)[1]
        for ways in SCHEMA["paths"].values()
        for body in ways.get("post", {}).get("requestBody", {}).get("content", {}).values()
        if "schema" in body
    )
    assert {name for name, count in taken.items() if count > 1} == set(GONE_THROUGH)
    assert set(GONE_THROUGH.values()) <= set(SCHEMA["paths"])


@pytest.mark.long
@pytest.mark.parametrize("address", SCHEMA["paths"])
def test_all_checks_of_what_an_address_answers_are_clean(address, monkeypatch):
    monkeypatch.setattr(answering, "WAITS_S", 300)
    monkeypatch.setattr("requests.sessions.get_netrc_auth", lambda url: None)  # looked for on the disk for each request
    faults, statuses, checks = [], Counter(), Counter()
    for event in from_schema(described(address)).execute():
        if isinstance(event, (events.NonFatalError, events.FatalError)):
            faults.append(str(event.info.format() if hasattr(event, "info") else event.exception)[:2000])
        if isinstance(event, events.ScenarioFinished):
            statuses.update(one.response.status_code for one in event.recorder.interactions.values() if one.response)
            for case, held in event.recorder.checks.items():
                checks.update(one.name for one in held)
                faults += [_fault(one, event.recorder.interactions[case]) for one in held if one.failure_info]
    assert not faults, "\n\n".join(faults[:5])
    takes = "post" in SCHEMA["paths"][address] or "{name}" in address
    assert {200, 405} <= set(statuses)
    assert not takes or {404, 422} & set(statuses)
    assert checks >= Counter(dict.fromkeys(EVERY_CHECK, 2))


def _fault(check, asked):
    sent, got = asked.request, asked.response
    answered = f"{got.status_code} {got.content[:300]}" if got else "nothing"
    return f"{check.name}: {check.failure_info.failure.message}\n{sent.method} {sent.uri} {(sent.body or b'')[:400]} -> {answered}"
