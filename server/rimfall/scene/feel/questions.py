"""What would people feel: the figures of a scene's habitat and person, and the published limits beside them."""

from dataclasses import dataclass

from ...comfort import adaptation, chart, figures, limits
from ..questions import setting_of


@dataclass(frozen=True)
class Felt:
    """A scene, its figures (`feel.figures.Figures`), each limit held against them, the map of limits, and what people got used to."""

    scene: object
    figures: figures.Figures
    limits: list
    map: chart.Chart
    adaptation: list


def feel(scene):
    """What a Scene's person would feel, at the spin it begins with -> Felt."""
    setting, _ = setting_of(scene)
    made = figures.figures(setting, scene.person, getattr(scene.habitat, "decks", ()))
    compared = limits.compare(made.quantities, scene.own_limits)
    drawn = chart.chart(scene.person, scene.own_limits)
    return Felt(scene, made, compared, drawn, adaptation.beside(made.quantities["spin"]))
