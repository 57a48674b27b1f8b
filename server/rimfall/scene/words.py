"""Plain sentences: what a motion does, as an author could use it, and what its answer leaves out.

Sentences state outcomes only; the sentence of inputs is the page's, made from the document.
"""

import numpy as np

from ..phrases import drift, seconds
from ..physics.drag import GREATEST_RE
from ..physics.liquids import drop_volume_m3
from . import hang_words, light_words, people_words, pour_words
from .drift_words import why
from .ground_words import after_landing, rolled, stood, the

_GREATEST_MACH = 0.3  # beyond it drag of a sphere rises with the Mach number: common practice, no source
_BUOYANCY_SHARE = 0.01


def outcome(traced, units="si"):
    """One or two sentences of what a motion does."""
    if traced.track.path is None:
        return ["The scene ends before it starts."]
    risen = light_words.rose(traced, units) if traced.motion.kind in light_words.KINDS else []
    return risen or OUTCOMES.get(traced.motion.kind, _flew)(traced, units)


def _flew(traced, units):
    return [s for s in (_landing(traced, units), why(traced, units), after_landing(traced, units)) if s]


def _poured(traced, units):
    lands = "" if traced.track.end == "caught" else _landing(traced, units)
    # with a cup there the question is whether it is reached
    said = (pour_words.reaching(traced, units), pour_words.leaving(traced, units), lands, why(traced, units))
    return [s for s in said if s]


def _who(traced):
    stream = traced.plan.stream
    if stream is None:
        return "It"
    if stream.drop_diameter_m is None:
        return "The stream"
    return "The drops" if stream.batch is None else "The first drop"


def _landing(traced, units):
    made, who = traced.track, _who(traced)
    many = who == "The drops"
    if made.landing is None:
        return _no_landing(traced, who, many, units)
    here = drift(*_drift(traced, made.landing), units, traced.across)
    after = made.landing.time_s - traced.plan.start_s
    if after == 0:
        return f"{who} {'lie' if many else 'lies'} on {the(traced, made.landing.surface)} from the start."
    verb = "land" if many else "lands"
    return f"{who} {_met_before(traced)}{verb} {here} after {seconds(after)}{_plain(traced, units)}."


def _met_before(traced):
    """What it met on its way to the ground: "meets the ceiling after 0.31 s and "."""
    made = traced.track
    first = next((e for e in made.events if e.surface is not None and e is not made.landing), None)
    if first is None or first.time_s > made.landing.time_s:
        return ""
    return f"meets {the(traced, first.surface)} after {seconds(first.time_s - traced.plan.start_s)} and "


def _drift(traced, moment):
    return moment.drift_m, moment.axial_m - traced.plan.place[2]


def _plain(traced, units):
    if traced.flat_gravity is None or traced.flat_gravity.landing is None:
        return ""
    landing = traced.flat_gravity.landing
    where = drift(landing["drift_m"], landing["axial_m"] - traced.plan.place[2], units, traced.across)
    return f"; under plain gravity, {where} after {seconds(landing['time_s'] - traced.plan.start_s)}"


def _no_landing(traced, who, many, units):
    made = traced.track
    last = made.events[-1]
    after = seconds(last.time_s - traced.plan.start_s)
    if made.end == "met a surface":
        on = the(traced, made.events[-1].surface)
        return f"{who} {'meet' if many else 'meets'} {on} {drift(*_drift(traced, last), units, traced.across)} after {after}."
    if made.end == "edge":
        verb = "pass" if many else "passes"
        return f"{who} {verb} the edge {drift(*_drift(traced, last), units, traced.across)} after {after}; what lies beyond is not followed."
    if made.end == "duration":
        return f"{who} {'are' if many else 'is'} still in flight when the scene ends."
    if (
        traced.plan.stream is not None
        and traced.plan.stream.drop_diameter_m is None
        and traced.plan.stream.regime == "drips"
    ):
        return "With no weight to pull it off, the liquid clings to the lip."
    ground = the(traced, traced.ground)
    return f"{who} never {'meet' if many else 'meets'} {ground} in {after}."


def assumptions(traced, trace):
    """What this motion's answer leaves out, in sentences."""
    air, stream = trace.setting.air, traced.plan.stream
    out = []
    if stream is not None:
        out += pour_words.assumptions(traced, trace)
    out += people_words.assumptions(traced, trace)
    out += hang_words.assumptions(traced)
    if air is None or traced.track.path is None or traced.motion.kind in people_words.ASSUMED:
        return out
    moving = traced.track.samples.rotating_velocity_m_s
    fastest = max([float(np.max(np.linalg.norm(moving, axis=1)))] if len(moving) else [0.0])
    fastest = max(fastest, *(float(np.linalg.norm(e.rotating_velocity_m_s)) for e in traced.track.events))
    return out + _of_air(traced, trace, air, fastest)


def _of_air(traced, trace, air, fastest):
    body, out = traced.plan.body, []
    if traced.plan.stream is not None and traced.plan.stream.drop_diameter_m is None:
        return out  # a stream that stays whole flies without drag
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
    if not trace.setting.habitat.spin.steady:
        out.append("The air follows the changing spin at once; real air lags behind.")
    return out


OUTCOMES = {
    "pour": _poured,
    "roll": rolled,
    "stand": stood,
    "jump": people_words.jumped,
    "walk": people_words.walked,
    "lift": people_words.rode,
    "let_go": people_words.let_go,
    "approach": people_words.approached,
    "hang": hang_words.hung,
}  # kind -> its sentences; the others fly
