"""Sentences for what a document gets wrong: pydantic's errors, and those of `checks.py`, in the one shape of `errors.py`."""

import json
import re

from ..errors import BadInput, refusal, shown
from ..language import Later, in_signs, tr, tr_as, tr_later
from ..shapes import SHAPES
from .catalogue import FIELDS, OWN, SHOTS, pattern_of
from .craft.document import BY, SOLIDS, Craft
from .described import described
from .document import MOTIONS, Scene
from .shot.aim_request import CATCHERS
from .shot.landings_request import VARIED
from .shot.match_request import SEEN_BY
from .size.request import SizeRequest

_TAGS = {
    "@named",
    "@own",
    "@word",
    "@place",
    "@figure",
    "@study",
    "@letter",
    "@camera",
    *VARIED,
    *CATCHERS,
    *SEEN_BY,
    *(f"@{name}" for name in (*SHAPES, *SOLIDS, *BY)),
}  # of the unions in `document.py` and of requests; no part of a field's name
_TOLD_BY = {
    "habitat": "shape",
    "over.": "field",
    "parts.*": "solid",
    "spin_up": "by",
}  # the field that tells which of a union it is
_PARSER = {  # the parser's words, and plainer ones where those are not plain
    "recursion limit exceeded": tr_later("brackets in brackets, more than 200 deep"),
    "number out of range": tr_later("a number of more than 4,300 digits"),
    "unexpected end of hex escape": tr_later(
        "half of a pair of \\u escapes (a lone surrogate), or less than four digits after \\u"
    ),
    "lone leading surrogate in hex escape": tr_later("half of a pair of \\u escapes (a lone surrogate)"),
    "invalid unicode code point": tr_later("bytes that are no UTF-8"),
    "EOF while parsing a list": tr_later("EOF while parsing a list"),
    "EOF while parsing an object": tr_later("EOF while parsing an object"),
    "EOF while parsing a string": tr_later("EOF while parsing a string"),
    "EOF while parsing a value": tr_later("EOF while parsing a value"),
    "expected `:`": tr_later("expected `:`"),
    "expected `,` or `]`": tr_later("expected `,` or `]`"),
    "expected `,` or `}`": tr_later("expected `,` or `}`"),
    "expected ident": tr_later("expected ident"),
    "expected value": tr_later("expected value"),
    "invalid escape": tr_later("invalid escape"),
    "invalid number": tr_later("invalid number"),
    "control character (\\u0000-\\u001F) found while parsing a string": tr_later(
        "control character (\\u0000-\\u001F) found while parsing a string"
    ),
    "key must be a string": tr_later("key must be a string"),
    "trailing comma": tr_later("trailing comma"),
    "trailing characters": tr_later("trailing characters"),
}
_MODELS = (SizeRequest, Craft, *SHOTS)  # of requests that are no scene documents
_PLACE = re.compile(r"at line (\d+) column (\d+)")


def from_validation(error, source, model=Scene, rows=None):
    """BadInput from a pydantic ValidationError of a model; `source` is what was read, for the place of a broken document. rows: of
    fields that the catalogue does not have, by path."""
    model = model if rows or model in _MODELS else Scene
    return BadInput(*(_one(e, source, model, rows or {}) for e in error.errors(include_url=False)[:20]))


def _one(error, source, model, rows):
    kind = error["type"]
    if kind == "json_invalid":
        return broken(error["ctx"]["error"], source)
    field = path_of(error["loc"])
    varied = next((VARIED[p].model_fields.get(error["loc"][-1]) for p in error["loc"] if p in VARIED), None)
    # the name of a figure that varies does not tell which it is
    row = rows.get(pattern_of(field)) if varied is None else described(varied)
    if kind == "missing":
        return missing(field, row=row)
    if kind == "extra_forbidden":
        return _unknown(field, error, model, rows)
    if kind in ("union_tag_not_found", "union_tag_invalid"):
        return _no_such_kind(field, error["input"])
    if kind in ("model_type", "model_attributes_type", "dict_type"):
        may_be = None if row or pattern_of(field) in FIELDS else tr_later("an object in braces")
        return wrong(field or "document", error["input"], may_be, row)
    return wrong(field, error["input"], (row or {}).get("may_be") or _own_may_be(error["loc"], field), row)


def _own_may_be(loc, field):
    """What a field of a motion may be where its kind says otherwise than the first kind that has it; else None."""
    kind = next((OWN[p] for p in loc if p in OWN), {})
    return kind.get(pattern_of(field).removeprefix("motions.*."), {}).get("may_be")


def _no_such_kind(field, value):
    """Refusal of a motion's kind, or of a habitat's shape, that there is none of."""
    if not isinstance(value, dict):
        return wrong(field, value, tr_later("an object in braces"))
    tag = next((tag for end, tag in _TOLD_BY.items() if end in pattern_of(field)), "kind")
    return wrong(f"{field}.{tag}", value[tag]) if tag in value else missing(f"{field}.{tag}")


def missing(field, may_be=None, row=None):
    """Refusal of a field that is not there; row: the catalogue's of it, where its name does not tell."""
    label, told = (tr(row["label"]), row["may_be"]) if row else (label_of(field), may_be_of(field))
    may_be = tr(may_be or told)
    say = tr("{field} is missing; it must be {allowed}.", field=label, allowed=may_be)
    return refusal(field, None, may_be, say)


def path_of(loc):
    """A document's field name, "motions.0.speed_m_s", from pydantic's location."""
    loc = (
        loc[1:] if loc[:1] == ("scene",) and len(loc) > 1 else loc
    )  # an export's request holds the document under "scene"
    parts = [p for i, p in enumerate(loc) if p not in _TAGS and not (i == 2 and loc[0] == "motions" and p in MOTIONS)]
    return ".".join(str(p) for p in parts)


def label_of(field):
    """The field's label, or its own name where it has none."""
    label = FIELDS.get(pattern_of(field), {}).get("label")
    return tr(label) if label else field


def may_be_of(field):
    """What the field may be, in words."""
    return tr(FIELDS.get(pattern_of(field), {}).get("may_be") or tr_later("what the scene document allows there"))


def given_of(field):
    """The same where the field is given, of one that may be null."""
    may_be = FIELDS[pattern_of(field)]["may_be"]
    return tr(may_be.places["what"] if isinstance(may_be, Later) and "what" in may_be.places else may_be)


def wrong_of(model, field, was, may_be=None):
    """The same of a field whose label and unit are this model's own: others have one of the same name."""
    row = described(model.model_fields[field.rpartition(".")[2]])
    return wrong(field, was, may_be or row["may_be"], row)


def wrong(field, was, may_be=None, row=None):
    """Refusal of a value: "Speed was 4000 m/s; it must be 0 to 3000 m/s."; row: the field's of the catalogue, where its name does not tell."""
    row = row or FIELDS.get(pattern_of(field), {})
    may_be = tr(may_be or row.get("may_be") or may_be_of(field))
    unit = row.get("unit", "")
    plain = isinstance(was, (int, float)) and not isinstance(was, bool)
    was = _figure(was) if plain else as_json(was)
    unit = f" {unit}" if plain and unit else ""
    said = in_signs(was) if plain else shown(was)
    return refusal(field, was, may_be, was_wrong(tr(row["label"]) if row.get("label") else field, said + unit, may_be))


def was_wrong(label, was, may_be):
    """The sentence of a field's refusal: its label, what it was and what it may be, all in words."""
    return tr("{field} was {value}; it must be {allowed}.", field=label, value=was, allowed=may_be)


def _figure(value):
    return repr(int(value)) if isinstance(value, float) and value.is_integer() and abs(value) < 1e15 else repr(value)


def as_json(value):
    """A value as the document would write it, also where JSON cannot."""
    try:
        return json.dumps(value, ensure_ascii=False)
    except (TypeError, ValueError, RecursionError):
        return repr(value)


def _unknown(field, error, model, rows):
    parent = field.rpartition(".")[0]
    kind = next((MOTIONS[p] for p in error["loc"][2:3] if error["loc"][0] == "motions" and p in MOTIONS), None)
    shape = next((SHAPES[p[1:]] for p in error["loc"][:-1] if p in _TAGS and p[1:] in SHAPES), None)
    part = next((SOLIDS[p[1:]] for p in error["loc"][:-1] if p in _TAGS and p[1:] in SOLIDS), None)
    if kind is not None and parent.count(".") == 1:
        known = sorted(kind.model_fields)
    elif shape is not None and parent.endswith("habitat"):
        known = sorted(shape.model_fields)
    elif part is not None and pattern_of(parent).endswith("parts.*"):
        known = sorted(part.model_fields)
    elif not parent:
        known = sorted(model.model_fields)
    else:
        known = sorted({p.split(".")[-1] for p in FIELDS | rows if p.rpartition(".")[0] == pattern_of(parent)} - {"*"})
    listed = ", ".join(known) or tr_as("what a field was", "nothing")
    if parent:
        say = tr(
            "Field {field} is unknown; {parent} may hold {fields}.", field=shown(field), parent=parent, fields=listed
        )
    else:
        say = tr("Field {field} is unknown; the document may hold {fields}.", field=shown(field), fields=listed)
    return refusal(field, as_json(error["input"]), tr("absent; known here: {fields}", fields=listed), say)


def broken(problem, source):
    """Refusal of a document that is not JSON: field `document`, line and column."""
    place = _PLACE.search(problem)
    what = _PLACE.sub("", problem).strip()
    what = tr(_PARSER.get(what, what))
    if place:
        say = tr(
            "The document is not JSON at line {line}, column {column}: {what}.",
            line=place[1],
            column=place[2],
            what=what,
        )
    else:
        say = tr("The document is not JSON at its beginning: {what}.", what=what)
    return refusal("document", excerpt(source, place), tr("a scene document in JSON"), say)


def excerpt(source, place):
    """A few characters of the source at the place of trouble."""
    text = source.decode("utf-8", "replace") if isinstance(source, bytes) else source
    if not place:
        return text[:40]
    lines = text.split("\n")
    line, column = int(place[1]) - 1, int(place[2]) - 1
    return lines[line][max(column - 20, 0) : column + 20] if line < len(lines) else ""
