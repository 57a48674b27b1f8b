"""The API's own description, an OpenAPI 3.1 document at `/openapi.json`: parameters as the routes have them, the rest from the models
in this folder."""

from functools import cache

from fastapi.openapi.utils import get_openapi
from pydantic_core import to_json

from ... import __version__
from .. import api
from .bodies import JSON, LINES, scenes
from .documents import described
from .operations import OPERATIONS
from .refusals import OF_ALL, OF_BODIES, OF_QUERIES, Progress, Refused, name_of, responses

_ABOUT = """Motion in rotating space habitats. A scene is one JSON document; every body and answer is JSON in UTF-8, with SI units in
the names of fields. The server keeps nothing between requests.

The Host header must name the place that is served (by default localhost or 127.0.0.1), else 400. A method that an address does not
have is refused with 405 and `Allow`, an address that is not here with 404. Every refusal has the one shape `Refused`."""


@cache
def schema_bytes():
    """The schema as JSON: it is the same for the program's whole life."""
    return to_json(schema())


def schema():
    """The schema as data."""
    published = get_openapi(title="Rimfall", version=__version__, description=_ABOUT, routes=api.router.routes)
    models = {model for one in OPERATIONS.values() for model in (one.answer, one.body) if model is not None}
    refs, schemas = described(sorted({Progress, Refused, *models}, key=lambda model: model.__name__))
    published["components"] = {"schemas": schemas, "responses": responses(), "examples": scenes()}
    for path, methods in published["paths"].items():
        for method, operation in methods.items():
            _complete(operation, OPERATIONS[path, method], refs)
    return published


def _complete(operation, about, refs):
    """Add to an operation what its route does not show."""
    operation["operationId"] = about.id
    operation["description"] = operation["description"].replace("\n", " ")
    operation["summary"] = operation["description"].partition(";")[0].partition(". ")[0].rstrip(".")
    for parameter in operation.get("parameters", ()):
        parameter["description"] = about.words[parameter["name"]]
        parameter["schema"] = _of_query(parameter["schema"])
        if parameter["in"] == "path":
            parameter["schema"]["enum"] = list(about.values)
    body = about.file
    if about.body is not None:
        body = {JSON: {"schema": refs[about.body], "examples": about.examples}}
    if body is not None:
        operation["requestBody"] = {"required": True, "content": body}
    statuses = (
        *OF_ALL,
        *((404,) if about.values else ()),
        *(OF_BODIES if body else ()),
        *(OF_QUERIES if about.words.keys() - {"name"} else ()),
    )
    operation["responses"] = {"200": _answer(about, refs)} | {
        str(status): {"$ref": f"#/components/responses/{name_of(status)}"} for status in sorted(set(statuses))
    }


def _answer(about, refs):
    """The response of an operation that is not refused."""
    content = about.content or {JSON: {"schema": refs[about.answer]}}
    if about.streams:
        lines = {"anyOf": [refs[model] for model in (Progress, Refused, about.answer)]}
        say = "A line of JSON for each item: how far the work is, and last the answer or the refusal."
        content = content | {LINES: {"schema": {"type": "array", "items": lines, "description": say}}}
    headers = {"headers": about.headers} if about.headers else {}
    return {"description": about.answer.__doc__, "content": content} | headers


def _of_query(schema):
    """A parameter's schema without pydantic's titles and without null, which no query can say."""
    kept = {name: value for name, value in schema.items() if name != "title"}
    values = [inner for inner in kept.pop("anyOf", ()) if inner != {"type": "null"}]
    return kept | {name: value for inner in values for name, value in inner.items()}
