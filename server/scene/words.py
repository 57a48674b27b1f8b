"""Plain sentences: what a motion does, as an author could use it, and what its answer leaves out.

Sentences state outcomes only; the sentence of inputs is the page's, made from the document.
"""

import numpy as np

from ..motions.pour import diameters_m
from ..physics.drag import GREATEST_RE
from ..physics.liquids import DROP_PER_STREAM, drop_volume_m3
from .ground_words import after_landing, rolled, stood, the
from .phrases import drift, length, seconds, speed

_GREATEST_MACH = 0.3  # beyond it drag of a sphere rises with the Mach number: common practice, no source
_FLATTENS_M = 0.003  # rain drops beyond it flatten and fall slower: Gunn & Kinzer (1949)
_BUOYANCY_SHARE = 0.01


def outcome(traced, units="si"):
    """One or two sentences of what a motion does."""
    if traced.track.path is None:
        return ["The scene ends before it starts."]
    return OUTCOMES.get(traced.motion.kind, _flew)(traced, units)


def _flew(traced, units):
    return [s for s in (_landing(traced, units), after_landing(traced, units)) if s]


def _poured(traced, units):
    return [s for s in (_pour(traced, units), _landing(traced, units)) if s]


def _who(traced):
    stream = traced.plan.stream
    if stream is None:
        return "It"
    return "The drops" if stream.drop_diameter_m is not None else "The stream"


def _landing(traced, units):
    made, who = traced.track, _who(traced)
    many = who == "The drops"
    if made.landing is None:
        return _no_landing(traced, who, many, units)
    state = made.landing.state
    here = drift(*_drift(traced, state), units, traced.across)
    after = float(state.time_s[0]) - traced.plan.start_s
    if after == 0:
        return f"{who} {'lie' if many else 'lies'} on {the(traced, made.landing.surface)} from the start."
    verb = "land" if many else "lands"
    return f"{who} {_met_before(traced)}{verb} {here} after {seconds(after)}{_plain(traced, units)}."


def _met_before(traced):
    """What it met on its way to the ground: "meets the ceiling after 0.31 s and "."""
    made = traced.track
    first = next((e for e in made.events if e.surface is not None and e is not made.landing), None)
    if first is None or first.state.time_s[0] > made.landing.state.time_s[0]:
        return ""
    return (
        f"meets {the(traced, first.surface)} after {seconds(float(first.state.time_s[0]) - traced.plan.start_s)} and "
    )


def _drift(traced, state):
    return float(state.along_m[0]) - traced.plan.place[0], float(state.axial_m[0]) - traced.plan.place[2]


def _plain(traced, units):
    if traced.companion is None or traced.companion.landing is None:
        return ""
    landing = traced.companion.landing
    where = drift(landing["drift_m"], landing["axial_m"] - traced.plan.place[2], units, traced.across)
    return f"; under plain gravity, {where} after {seconds(landing['time_s'] - traced.plan.start_s)}"


def _no_landing(traced, who, many, units):
    made = traced.track
    last = made.events[-1].state
    after = seconds(float(last.time_s[0]) - traced.plan.start_s)
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


def _pour(traced, units):
    stream = traced.plan.stream
    if stream.regime == "drips":
        if stream.drop_diameter_m is None:
            return ""
        return (
            f"Too slow for a stream, it drips: drops of {length(stream.drop_diameter_m, units)}, one every "
            f"{seconds(stream.drop_interval_s)}."
        )
    thin = float(np.min(_thread(traced))) if len(traced.track.samples.time_s) else stream.lip_m
    leaves = f"It leaves the lip at {speed(stream.speed_m_s, units)} and thins from {length(stream.lip_m, units)} to {length(thin, units)}"
    if stream.breakup_s is None:
        return f"{leaves}, whole to the end."
    return (
        f"{leaves}; {length(stream.breakup_m, units)} on it breaks into drops of {length(stream.drop_diameter_m, units)}, "
        f"{1 / stream.drop_interval_s:.0f} a second."
    )


def _thread(traced):
    """Diameters of the unbroken stream at its samples and at its end."""
    samples, stream = traced.track.samples, traced.plan.stream
    whole = diameters_m(stream, samples.time_s, np.linalg.norm(samples.rotating_velocity_m_s, axis=1))
    end_s = np.inf if stream.breakup_s is None else stream.breakup_s
    thread = whole[samples.time_s < end_s]
    return (
        np.append(thread, stream.lip_m)
        if stream.drop_diameter_m is None
        else np.append(thread, stream.drop_diameter_m / DROP_PER_STREAM)
    )


def assumptions(traced, trace):
    """What this motion's answer leaves out, in sentences."""
    air, stream = trace.setting.air, traced.plan.stream
    out = []
    if stream is not None:
        out += _of_pours(stream, trace)
    if air is None or traced.track.path is None:
        return out
    moving = traced.track.samples.rotating_velocity_m_s
    fastest = max([float(np.max(np.linalg.norm(moving, axis=1)))] if len(moving) else [0.0])
    fastest = max(fastest, *(float(np.linalg.norm(e.state.rotating_velocity_m_s[0])) for e in traced.track.events))
    return out + _of_air(traced, trace, air, fastest)


def _of_air(traced, trace, air, fastest):
    body, out = traced.plan.body, []
    if traced.plan.stream is not None and traced.plan.stream.drop_diameter_m is None:
        return out  # a stream that stays whole flies without drag
    displaced = air.deck_density_kg_m3 * drop_volume_m3(body.diameter_m) / body.mass_kg
    if displaced > _BUOYANCY_SHARE:
        out.append(f"Buoyancy and added mass are left out; the displaced air is {100 * displaced:.2g} % of its mass.")
    if body.drag == "sphere" and air.deck_density_kg_m3 * fastest * body.diameter_m / air.viscosity_pa_s > GREATEST_RE:
        out.append("The drag crisis of a smooth ball is not modelled; drag may be overstated at this speed.")
    if fastest > _GREATEST_MACH * air.sound_m_s:
        out.append(f"It moves at Mach {fastest / air.sound_m_s:.1f}; drag is that of slow flow and is understated.")
    if not trace.setting.habitat.spin.steady:
        out.append("The air follows the changing spin at once; real air lags behind.")
    return out


def _of_pours(stream, trace):
    out = []
    if stream.breakup_s is not None:
        out.append(
            "The stream's length is that of a jet that does not stretch; a stream that gravity stretches breaks later."
        )
    if stream.drop_diameter_m is not None and stream.drop_diameter_m > _FLATTENS_M and trace.setting.air is not None:
        out.append("Drops over 3 mm flatten and fall slower than the spheres flown here.")
    if not trace.setting.habitat.spin.steady:
        out.append("The spin changes; every parcel is shown on the first one's path.")
    return out


OUTCOMES = {"pour": _poured, "roll": rolled, "stand": stood}  # kind -> its sentences; the others fly
