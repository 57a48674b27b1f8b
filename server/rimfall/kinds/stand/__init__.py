"""Things that stand on a level table, or on the ground, and cannot roll: they stay, slide, or go over the edge."""

from typing import Literal

from ..air_words import in_air
from ..body import BodyPart, body_field, body_of
from ..kind import Kind, Page, Stage
from ..motion import Motion
from ..places import clear_of_surfaces, of_a_size
from .plan import plan
from .words import stood


class Stand(Motion):
    """A thing that stands on a level table and cannot roll; its place is that of its centre."""

    kind: Literal["stand"]
    body: BodyPart = body_field()


def check(motion, setting, _shape):
    """The body may be in this air, and its place is outside every surface."""
    diameter = body_of(motion.body).diameter_m
    small = list(of_a_size(setting, diameter))
    yield from small or clear_of_surfaces(setting.habitat, motion.place, diameter, "body.diameter_m", diameter)


PAGE = Page(
    group="Things",
    short="Stand",
    add="a thing on a table",
    title="On a table",
    one="thing on a table",
    many="things on tables",
    sentence="Stands on a table, its middle {place.height_m} above the {ground}.",
    rows={"place.height_m": "Height"},
    mirrored=False,
    events={"grip": "grips"},
    stays="stands",
    terms={"Stand": "A thing on a level table: it may stay, slide, or go over the edge."},
    stage=Stage(mover="cup", beside="table", attended_m=0.6),
)
KIND = Kind(
    name="stand",
    fields=Stand,
    new={"place": {"along_m": 0.0, "height_m": 0.9, "axial_m": 0.0}, "body": "cup"},
    check=check,
    plan=plan,
    outcome=stood,
    assumptions=in_air,
    page=PAGE,
)
