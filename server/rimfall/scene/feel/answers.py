"""What people would feel: what is asked, what is worked out, and what comes back as one JSON document."""

from dataclasses import dataclass

from pydantic_core import to_json

from ... import __version__
from ...comfort import adaptation, chart, limits
from ...comfort.figures import FIGURES, ComfortFigures, figures_of
from ...comfort.quantities import QUANTITIES
from ...fields import Version, listed, of_kind
from ...language import tr, tr_later, written
from ...phrases import caution_about_people, in_units
from ..document import AnyMotion, Scene, setting_of
from . import limit_words
from . import words as feel_words
from .day import day_of
from .why_spin import why_spin


class FeelRequest(Scene):
    """What is asked: a habitat, its air, who is aboard; a whole scene document will do as well."""

    rimfall: Version = of_kind(tr_later("Document version"), "version", 1)
    motions: list[AnyMotion] = listed(tr_later("Motions"), 100, [])


@dataclass(frozen=True)
class Felt:
    """A scene, its figures, each limit held against them, the map of limits, and what people got used to."""

    scene: object
    figures: ComfortFigures
    limits: list
    map: chart.LimitsMap
    adaptation: list


def feel(scene):
    """What a Scene's person would feel, at the spin it begins with -> Felt."""
    setting, _ = setting_of(scene)
    figures = figures_of(setting, scene.person, getattr(scene.habitat, "decks", ()))
    compared = limits.compare(figures.quantities, scene.own_limits)
    limits_map = chart.chart(scene.person, scene.own_limits)
    return Felt(scene, figures, compared, limits_map, adaptation.beside(figures.quantities["spin"]))


ANSWER_VERSION = 1


def as_json(felt, units="si"):
    """The answer to a Felt as JSON bytes."""
    return to_json(as_data(felt, units))


def as_data(felt, units="si"):
    """The same as plain data."""
    scene, figures = felt.scene, felt.figures
    ground = day_of(scene, figures, units).ground
    part = scene.model_dump(mode="json", include={"habitat", "air", "person", "own_limits"})
    return {
        "rimfall_feel": ANSWER_VERSION,
        "program": __version__,
        **part,
        "figures": dict(figures.values),
        "figure_rows": [
            {"name": name, "label": row.called(ground), "unit": row.unit, "group": tr(row.group)}
            for name, row in FIGURES.items()
        ],
        "levels": [vars(level) | {"name": _level_name(level, units)} for level in figures.levels],
        "head_turns": _as_dicts(figures.head_turns),
        "limits": _as_dicts(felt.limits),
        "quantities": [_quantity(name, felt, units) for name in QUANTITIES],
        "says": {
            "short": limit_words.short(felt.limits),
            "summary": limit_words.summary(felt.limits),
            "lead": feel_words.lead(scene, figures, units),
            "map": feel_words.beside_the_map(scene, figures, units),
        },
        "map": _map(felt.map),
        "why_spin": why_spin(figures.values["feet_g"]),
        "adaptation": _as_dicts(felt.adaptation),
        "words": feel_words.paragraphs(scene, figures, units),
        "assumptions": feel_words.assumptions(scene, figures, units),
        "caution": caution_about_people(),
    }


def _as_dicts(rows):
    """Flat dataclasses as dicts; `asdict` would copy every value, and took half of the answer's time."""
    return [dict(vars(row)) for row in rows]


def _level_name(level, units):
    """Its own name, else how high it is: "3 m up"."""
    if level.name or not level.height_m:
        return level.name or tr("Deck")
    up, unit = in_units(level.height_m, "m", units)
    return tr("{height} up", height=f"{written(round(up, 2), 'g')}\u00a0{unit}")


def _map(chart):
    return vars(chart) | {"gravity": _as_dicts(chart.gravity), "limits": _as_dicts(chart.limits)}


def _quantity(name, felt, units):
    """One quantity's heading: its value here, and what the limits on it come to."""
    quantity, rows = QUANTITIES[name], [row for row in felt.limits if row.quantity == name]
    value = felt.figures.quantities[name]
    return {
        "name": name,
        "label": tr(quantity.label),
        "in_text": tr(quantity.in_text),
        "unit": quantity.unit,
        "value": value,
        "says": limit_words.sentence(name, rows, units),
        "printed": limit_words.sentence(name, rows, units, offered=False),
    }
