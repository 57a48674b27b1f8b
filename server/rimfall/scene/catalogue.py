"""The fields of the scene document as data: label, unit, range, default; those of questions about throws and paths; named bodies and
liquids; motions ready to add.
"""

from dataclasses import asdict
from typing import Any, get_args

from pydantic import WithJsonSchema

from .. import __version__
from ..comfort.quantities import QUANTITIES
from ..fields import any_of, in_words, span
from ..kinds import KINDS
from ..language import tr, tr_later
from ..language.documents import translated
from ..phrases import caution
from ..physics.bodies import NAMED_BODIES
from ..physics.constants import PERSON_HEIGHT_M, RPM_RAD_S
from ..physics.liquids import LIQUIDS
from ..shapes import SHAPES
from ..shapes.part import GREATEST_RIM_SPEED_M_S
from . import document
from .choices import kind_words
from .craft import blocks
from .craft.answers import FINDINGS
from .craft.document import BY, SOLIDS, Craft
from .described import described, walk
from .export_part import ExportPart
from .shot.aim_request import AimRequest
from .shot.camera_request import CameraRequest, PlacedCamera
from .shot.grid_request import GridRequest
from .shot.landings_request import VARIED, LandingsRequest
from .shot.match_request import MatchRequest
from .size.request import SizeRequest


def pattern_of(field):
    """ "motions.0.speed_m_s" -> "motions.*.speed_m_s"; a habitat set beside the scene's has the same fields as that."""
    pattern = ".".join("*" if part.isdigit() else part for part in field.split("."))
    return (
        pattern.removeprefix("compare.*.")
        if pattern.startswith(("compare.*.habitat", "compare.*.motions"))
        else pattern
    )


def _fields() -> dict[str, Any]:
    fields = {}
    for path, field in walk(document.Scene):
        if not path.endswith(".kind"):
            fields.setdefault(path, described(field))
    fields["habitat.shape"] |= _one_of(SHAPES)
    fields["motions.*.kind"] = {
        **described(next(iter(document.MOTIONS.values())).model_fields["kind"]),
        "label": tr_later("Kind"),
        "kind": "choice",
        **_one_of(document.MOTIONS),
    }
    return fields | {path: fields[path] | named for path, named in _craft_names("craft.").items()}


def _one_of(names):
    """What is told of a field that is one of some names."""
    return {"choices": list(names), "may_be": any_of(names)}


def _craft_names(prefix=""):
    """What tells which of a union a part of a craft is."""
    names = {"parts.*.solid": SOLIDS, "spin_up.by": BY}
    return {f"{prefix}{path}": _one_of(models) for path, models in names.items()}


def _craft():
    """The fields of a craft that is a document of its own."""
    fields = {}
    for path, field in walk(Craft):
        fields.setdefault(path, described(field))
    return fields | {path: fields[path] | named for path, named in _craft_names().items()}


def _items(model, prefix):
    """Each number of a craft's lists of numbers as a field of its own, by the path of the list and `*`."""
    for path, field in walk(model, prefix):
        items = next((one.json_schema["items"] for one in _marks(field) if isinstance(one, WithJsonSchema)), None)
        if items is not None:
            whole = described(field)
            low, high = items["minimum"], items["maximum"]
            number = {"kind": "number", "min": low, "max": high, "default": None, "required": True, "nullable": False}
            yield f"{path}.*", whole | number | {"may_be": span(low, high, whole["unit"])}


def _marks(field):
    """What marks a field's type, or one of those it may be."""
    inside = [mark for one in get_args(field.annotation) for mark in getattr(one, "__metadata__", ())]
    return [*field.metadata, *inside]


FIELDS = _fields()
FIELDS |= dict(_items(Craft, "craft."))
OF_CRAFT = {path: field for path, field in _craft().items() if path not in FIELDS}
FIELDS |= OF_CRAFT
EXPORT = "export."
FIELDS |= {path: described(field) for path, field in walk(ExportPart, EXPORT)}
WISHES = "wishes"
FIELDS |= {path: described(field) for path, field in walk(SizeRequest) if path.startswith(WISHES)}
SHOTS = (AimRequest, LandingsRequest, CameraRequest, MatchRequest, GridRequest)  # requests about throws and paths
OF_SHOTS = {
    path: described(field) for model in SHOTS for path, field in walk(model) if path.partition(".")[0] != "scene"
}
FIELDS |= OF_SHOTS


_TYPED = ("number", "choice", "fps", "pixel")  # kinds of fields that a page has a control for
_QUESTIONS = {"aim": AimRequest, "camera": PlacedCamera, "match": MatchRequest}


def _of_questions():
    """Fields of the questions about throws and paths, each under its question's name; those of landings for each figure that may vary."""
    models = _QUESTIONS | {f"landings.over.{tag.removeprefix('@')}": model for tag, model in VARIED.items()}
    fields = {f"{name}.{path}": described(field) for name, model in models.items() for path, field in walk(model)}
    return {
        path: row
        for path, row in fields.items()
        if row["kind"] in _TYPED and not path.startswith(("aim.scene.", "match.picture.camera.*."))
    }


def _shapes():
    return {
        shape: {
            **{name: tr(words) if words else words for name, words in asdict(model.WORDS).items()},
            "fields": [n for n in model.model_fields if n != "shape"],
            "required": [n for n, f in model.model_fields.items() if f.is_required()],
            "new": {"shape": shape, **translated(model.NEW)},
            "ground": _ground(model.GROUND),
        }
        for shape, model in SHAPES.items()
    }


def _ground(ground):
    """What is stood on, as data: its words, and its name as a surface."""
    told = {name: tr(getattr(ground, name)) for name in ("name", "along", "side")}
    across = tuple(tr(way, length="").strip() for way in ground.across)
    return asdict(ground) | told | {"across": across}


def export_choices():
    """The choices of an export as data, by name."""
    return {path.removeprefix(EXPORT): in_words(field) for path, field in FIELDS.items() if path.startswith(EXPORT)}


def _own(model):
    """Those fields of a kind of motion that it describes otherwise than the first kind that has them."""
    fields = {path: described(field) for path, field in walk(model) if path != "kind"}
    return {path: data for path, data in fields.items() if data != FIELDS[f"motions.*.{path}"]}


OWN = {kind: _own(model) for kind, model in document.MOTIONS.items()}
OWN |= {
    tag: {f"over.*.{path}": described(field) for path, field in walk(model) if path != "field"}
    for tag, model in VARIED.items()
}


def _kinds():
    """The kinds of motion: their fields, and what the page needs of them."""
    return {
        name: {
            "label": kind_words(name),
            "fields": [n for n in kind.fields.model_fields if n != "kind"],
            "required": [n for n, f in kind.fields.model_fields.items() if f.is_required()],
            "own": {path: in_words(field) for path, field in OWN[name].items()},
            "new": {"kind": name, **kind.new},
            **_page(kind.page),
        }
        for name, kind in KINDS.items()
    }


def _page(page):
    """What the page needs of a kind, in words."""
    plain = ("group", "add", "many", "short", "title", "one", "stays")
    said = {name: words and tr(words) for name in plain for words in [getattr(page, name)]}
    more = page.more and [tr(page.more[0]), _labels(page.more[1])]
    return (
        asdict(page)
        | said
        | {
            "sentence": _sentence(page.sentence),
            "rows": _labels(page.rows),
            "more": more,
            "carried": [tr(word) for word in page.carried],
            "events": _labels(page.events),
            "findings": [asdict(one) | {"say": tr(one.say), "term": tr(one.term)} for one in page.findings],
            "terms": {tr(term): tr(meaning) for term, meaning in page.terms.items()},
        }
    )


def _labels(rows):
    return {name: label and tr(label) for name, label in rows.items()}


def _sentence(part):
    """A part of a sentence of inputs (`kinds.kind.Page`)."""
    if isinstance(part, str):
        return part and tr(part)
    if isinstance(part, dict):
        return part | {name: _sentence(part[name]) for name in ("say", "otherwise")}
    return [_sentence(one) for one in part]


_CONTACT = ("restitution", "friction", "rolling_resistance")
_OF_A_BODY = ("mass_kg", "diameter_m", "drag", "shell", *_CONTACT, "drag_area_m2", "buoyant")


def _bodies():
    return [
        {
            "name": b.name,
            **{name: getattr(b.body, name) for name in _OF_A_BODY},
            "source": tr(b.source),
        }
        for b in NAMED_BODIES
    ]


def _holds():
    """What can be held while a dial moves (m/s², m/s), as factor * radius_m ** radius_power * spin_rpm ** spin_power."""
    return {
        name: {
            "factor": RPM_RAD_S ** QUANTITIES[name].spin_power,
            "radius_power": QUANTITIES[name].radius_power,
            "spin_power": QUANTITIES[name].spin_power,
        }
        for name in ("gravity", "rim_speed")
    }


def catalogue():
    """The answer of GET /api/fields."""
    return {
        "program": __version__,
        "fields": {
            path: in_words(field)
            for path, field in FIELDS.items()
            if not path.startswith((EXPORT, WISHES)) and path not in OF_SHOTS and path not in OF_CRAFT
        }
        | {path: in_words(field) for path, field in _of_questions().items()},
        "kinds": _kinds(),
        "shapes": _shapes(),
        "bodies": _bodies(),
        "liquids": [asdict(liquid) | {"source": tr(liquid.source)} for liquid in LIQUIDS],
        "person_height_m": PERSON_HEIGHT_M,
        "greatest_rim_speed_m_s": GREATEST_RIM_SPEED_M_S,
        "holds": _holds(),
        "craft": blocks.as_data({name: tr(finding.question) for name, finding in FINDINGS.items()}),
        "caution": caution(),
    }
