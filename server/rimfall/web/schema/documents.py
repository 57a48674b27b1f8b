"""Models as JSON schemas that a reader of the API understands: labels, units and words in the descriptions."""

from pydantic.json_schema import models_json_schema

from ...shapes import UNNAMED

REF = "#/components/schemas/{model}"
_OURS = (
    "label",
    "unit",
    "kind",
    "shown",
    "may_be",
    "title",
)  # what the page reads of a field, and pydantic's own titles


def described(models):
    """Models -> ({model: reference to it}, {name: schema})."""
    refs, defined = models_json_schema([(model, "validation") for model in models], ref_template=REF)
    schemas = defined["$defs"]
    for schema in schemas.values():
        _describe(schema)
    return {model: refs[(model, "validation")] for model in models}, schemas


def _describe(schema):
    """A schema's label, unit and words as its description, and so all that lie in it."""
    extra = {name: schema.pop(name, None) for name in _OURS}
    words = [part for part in (extra["label"], extra["unit"]) if part]
    if words:
        schema["description"] = ", ".join(words) + (f": {extra['may_be']}" if extra["may_be"] else ".")
    for inner in _inside(schema):
        _describe(inner)
    _demand_shape(schema)


def _inside(schema):
    """The schemas that a schema holds."""
    yield from schema.get("properties", {}).values()
    for name in ("anyOf", "oneOf", "prefixItems"):
        yield from schema.get(name, ())
    for name in ("items", "additionalProperties"):
        if isinstance(schema.get(name), dict):
            yield schema[name]


def _demand_shape(schema):
    """A habitat that names no shape is a cylinder: every other must name its own."""
    shape = schema.get("properties", {}).get("shape", {})
    if shape.get("const", UNNAMED) != UNNAMED:
        schema["required"] = ["shape", *schema["required"]]
