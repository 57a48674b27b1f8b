"""Sentences for what the air does: how it bears a body up, and what is left out of how it resists."""

import numpy as np

from ..phrases import drift, length, seconds
from ..physics.drag import GREATEST_RE
from ..physics.liquids import drop_volume_m3
from .words import the

_GREATEST_MACH = 0.3  # beyond it drag of a sphere rises with the Mach number: common practice, no source
_BUOYANCY_SHARE = 0.01
AIR_FOLLOWS = "The air follows the changing spin at once; real air lags behind."
_RISEN_M = 0.005  # less is none worth a word


def rose(traced, units):
    """What a body does that the air bears up and that meets no ground; nothing where it does not rise."""
    made = traced.track
    last = made.events[-1]
    risen = last.height_m - traced.plan.place[1]
    if not traced.plan.body.buoyant or made.landing is not None or risen < _RISEN_M:
        return []
    first = next((e for e in made.events if e.surface is not None), None)
    after = seconds(last.time_s - traced.plan.start_s)
    if first is None:
        return [f"It rises {length(risen, units)} in {after} and never meets {the(traced, traced.ground)}."]
    met_after = seconds(first.time_s - traced.plan.start_s)
    where = drift(*_from(traced.plan.place, first), units, traced.across)
    above = "straight above" if where == "straight below" else where
    return [f"It rises and meets {the(traced, first.surface)} {above} after {met_after}{_then(traced, first, units)}."]


def _from(place, moment):
    return moment.along_m - place[0], moment.axial_m - place[2]


def _then(traced, first, units):
    """How it goes on along what it has met."""
    made, last = traced.track, traced.track.events[-1]
    if last is first or made.end not in ("rest", "met a surface"):
        return ""
    place = (first.along_m, first.height_m, first.axial_m)
    further = drift(*_from(place, last), units, traced.across, stressed=made.end == "rest")
    if made.end == "rest":
        return " and comes to rest there" if further == "straight below" else f" and comes to rest {further} of there"
    after = seconds(last.time_s - traced.plan.start_s)
    return f" and ends against {the(traced, last.surface)} after {after}"


def in_air(traced, setting):
    """What an answer leaves out of a body in air; none in vacuum."""
    if setting.air is None or traced.track.path is None:
        return []
    moving = traced.track.samples.rotating_velocity_m_s
    fastest = max([float(np.max(np.linalg.norm(moving, axis=1)))] if len(moving) else [0.0])
    fastest = max(fastest, *(float(np.linalg.norm(e.rotating_velocity_m_s)) for e in traced.track.events))
    return _of_air(traced, setting, fastest)


def _of_air(traced, setting, fastest):
    air, body, out = setting.air, traced.plan.body, []
    displaced = air.deck_density_kg_m3 * drop_volume_m3(body.diameter_m) / body.mass_kg
    if body.buoyant:
        out.append("Buoyancy and added mass are those of a sphere in an ideal fluid; history force is left out.")
    elif displaced > _BUOYANCY_SHARE:
        out.append(f"Buoyancy and added mass are left out; the displaced air is {100 * displaced:.2g} % of its mass.")
    if body.drag_area_m2 is not None:
        out.append(
            "Its drag area stands in place of its drag coefficient and is the same whichever way it faces; it does not flutter."
        )
    elif (
        body.drag == "sphere" and air.deck_density_kg_m3 * fastest * body.diameter_m / air.viscosity_pa_s > GREATEST_RE
    ):
        out.append("The drag crisis of a smooth ball is not modelled; drag may be overstated at this speed.")
    if fastest > _GREATEST_MACH * air.sound_m_s:
        out.append(f"It moves at Mach {fastest / air.sound_m_s:.1f}; drag is that of slow flow and is understated.")
    if not setting.habitat.spin.steady:
        out.append(AIR_FOLLOWS)
    return out
