"""Things that stand on a level table, or on the ground, and cannot roll: they stay, slide, or go over the edge."""

from functools import reduce
from typing import Literal

import numpy as np

from ...language import tr, tr_later, tr_later_as
from ...motions.ground import GroundStart
from ...motions.journey import Start
from ...motions.plan import Plan
from ...phrases import AND
from ...physics.surfaces import Drum, Plane
from .. import telling
from ..air_words import in_air
from ..kind import Kind, Page, Stage
from ..motion import BodyPart, Motion, at_height, body_field, body_of, place_of
from ..places import body_clear
from ..words import briefly, ending, it_does, rose, since, the_at, there

_ON_THE_GROUND_M = 1e-9  # a thing whose underside is that near the ground stands on it


class Stand(Motion):
    """A thing that stands on a level table and cannot roll; its place is that of its centre."""

    kind: Literal["stand"]
    body: BodyPart = body_field()


def check(motion, setting, _shape):
    """The body may be in this air, and its place is outside every surface."""
    return body_clear(motion, setting)


def plan(setting, motion):
    """Plan of a `stand`: a thing that rests on a level table, or on the ground itself, and slides when pushed too hard."""
    body, floor, start_s, place = body_of(motion.body), motion.place.floor, motion.start_s, place_of(motion)
    chart = setting.habitat.chart(floor)
    surface = _table(setting.habitat, chart, floor, body, place)
    position = chart.position(place)
    at_rest = np.zeros(3), np.zeros(3), setting.limit_s(start_s), "stands"
    laid = GroundStart(setting.room(floor), surface, body, start_s, position, *at_rest)
    course = Start(laid, rolls=False)
    name = surface.name_at(position)
    return Plan(start_s, place, (0.0, 0.0, 0.0), body, course, None, "at_rest", floor=floor, surface=name)


def _table(habitat, chart, floor, body, place):
    """What it stands on: the ground if it is there, else a level table top, half the thing's width below its centre."""
    foot_m = place[1] - body.radius_m
    if abs(foot_m - habitat.ground_height_m(place[2])) <= _ON_THE_GROUND_M:
        return habitat.ground(floor)
    if habitat.ground(floor).flat:
        top = chart.position((place[0], foot_m, place[2]))
        up = habitat.ground(floor).normal(top)
        return Plane("table", tuple(float(v) for v in up), float(up @ top))
    return Drum("table", habitat.radius_m - foot_m, hollow=True)


def stood(traced, units):
    """What a thing does that stands from the start."""
    if risen := rose(traced, units):
        return risen
    events = [e for e in traced.track.events if e.kind in ("slip", "grip")]
    on = the_at(traced, traced.plan.surface)
    if not events:
        moved = any(e.kind not in ("release", "time_limit", "rest") for e in traced.track.events)
        return [
            it_does(ending(traced, units)) if moved else tr("It stands on {surface} and does not slide.", surface=on)
        ]
    does = reduce(
        lambda first, last: tr(AND, first=first, last=last), [_slides(traced, event, units) for event in events[:6]]
    )
    out = [
        tr("On {surface} it {does}.", surface=on, does=does)
        if len(events) <= 6
        else tr("On {surface} it {does}, and so on.", surface=on, does=does)
    ]
    if traced.track.end in ("edge", "landed", "met a surface"):
        out.append(it_does(ending(traced, units)))
    return out


def _slides(traced, event, units):
    """That it begins to slide, or grips, in a phrase."""
    after = since(traced, event)
    if event.kind == "grip":
        return tr("grips {where} after {time}", where=there(traced, event, units), time=after)
    return tr("slides at once") if event.time_s <= traced.plan.start_s else tr("slides from {time} on", time=after)


def in_short(traced, units):
    """Whether it stays, in a phrase."""
    if any(e.kind not in ("release", "time_limit", "rest") for e in traced.track.events):
        return briefly(traced, units)
    return tr("stands on {surface} and does not slide", surface=the_at(traced, traced.plan.surface))


PAGE = Page(
    group=tr_later("Things"),
    add=tr_later_as("added", "a thing on a table"),
    short=tr_later("Stand"),
    title=tr_later("On a table"),
    one=tr_later_as("counted", "thing on a table"),
    many=tr_later_as("counted", "things on tables"),
    sentence=tr_later("Stands on a table, its middle {place.height_m} above the {ground}."),
    rows={"place.height_m": tr_later("Height")},
    mirrored=False,
    events={"grip": tr_later("grips")},
    stays=tr_later("stands"),
    terms={tr_later("Stand"): tr_later("A thing on a level table: it may stay, slide, or go over the edge.")},
    stage=Stage(mover="cup", beside="table", attended_m=0.6),
)
KIND = Kind(
    name="stand",
    fields=Stand,
    new={"place": at_height(0.9), "body": "cup"},
    check=check,
    plan=plan,
    outcome=stood,
    in_short=in_short,
    assumptions=in_air,
    told=telling.stood,
    page=PAGE,
)
