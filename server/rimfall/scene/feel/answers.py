"""What comes back from asking what people would feel, as one JSON document."""

from pydantic_core import to_json

from ... import __version__
from ...comfort.figures import FIGURES
from ...comfort.quantities import QUANTITIES
from . import limit_words
from . import words as feel_words
from .day import of_scene
from .units import shown

ANSWER_VERSION = 1
CAUTION = (
    "People vary, the studies are few, small and short, and they disagree: this is for stories, pictures and teaching, and is not "
    "medical advice. A real centrifuge, rotating room or tether is designed under local codes by licensed people."
)


def of_feel(felt, units="si"):
    """The answer to a Felt as JSON bytes."""
    return to_json(as_data(felt, units))


def as_data(felt, units="si"):
    """The same as plain data."""
    scene, made = felt.scene, felt.figures
    ground = of_scene(scene, made, units).ground
    part = scene.model_dump(mode="json", include={"habitat", "air", "person", "own_limits"})
    return {
        "rimfall_feel": ANSWER_VERSION,
        "program": __version__,
        **part,
        "figures": dict(made.values),
        "figure_rows": [
            {"name": name, "label": row.called(ground), "unit": row.unit, "group": row.group}
            for name, row in FIGURES.items()
        ],
        "levels": [vars(level) | {"name": _level_name(level, units)} for level in made.levels],
        "head_turns": _told(made.head_turns),
        "limits": _told(felt.limits),
        "quantities": [_quantity(name, felt, units) for name in QUANTITIES],
        "says": {
            "short": limit_words.short(felt.limits),
            "summary": limit_words.summary(felt.limits),
            "lead": feel_words.lead(scene, made, units),
            "map": feel_words.beside_the_map(scene, made, units),
        },
        "map": _map(felt.map),
        "adaptation": _told(felt.adaptation),
        "words": feel_words.paragraphs(scene, made, units),
        "assumptions": feel_words.assumptions(scene, made, units),
        "caution": CAUTION,
    }


def _told(rows):
    """Flat dataclasses as dicts; `asdict` would copy every value, and took half of the answer's time."""
    return [dict(vars(row)) for row in rows]


def _level_name(level, units):
    """Its own name, else how high it is: "3 m up"."""
    if level.name or not level.height_m:
        return level.name or "Deck"
    up, unit = shown(level.height_m, "m", units)
    return f"{round(up, 2):g}\u00a0{unit} up"


def _map(chart):
    return vars(chart) | {"gravity": _told(chart.gravity), "limits": _told(chart.limits)}


def _quantity(name, felt, units):
    """One quantity's heading: its value here, and what the limits on it come to."""
    quantity, rows = QUANTITIES[name], [row for row in felt.limits if row.quantity == name]
    value = felt.figures.quantities[name]
    return {
        "name": name,
        "label": quantity.label,
        "unit": quantity.unit,
        "value": value,
        "says": limit_words.sentence(name, rows, units),
    }
