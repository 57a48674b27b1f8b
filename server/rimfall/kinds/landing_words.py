"""Sentences for a flight: where it lands or why it does not, the same under plain gravity, and why it drifts."""

from ..phrases import drift, length, seconds
from .ground_words import the

_NONE_M = 0.005  # a shift smaller than this is none worth a word


def landing(traced, units, who="It", many=False):
    """Where and when it lands, or why it does not; who: what a sentence calls it; many: that is several things."""
    made = traced.track
    if made.landing is None:
        return _no_landing(traced, who, many, units)
    here = drift(*_drift(traced, made.landing), units, traced.across, stressed=True)
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
    flat = traced.flat_gravity.landing
    where = drift(flat["drift_m"], flat["axial_m"] - traced.plan.place[2], units, traced.across)
    return f"; under plain gravity, {where} after {seconds(flat['time_s'] - traced.plan.start_s)}"


def _no_landing(traced, who, many, units):
    made = traced.track
    last = made.events[-1]
    after = seconds(last.time_s - traced.plan.start_s)
    if made.end == "met a surface":
        on = the(traced, made.events[-1].surface)
        return f"{who} {'meet' if many else 'meets'} {on} {drift(*_drift(traced, last), units, traced.across)} after {after}."
    if made.end == "edge":
        verb = "pass" if many else "passes"
        where = drift(*_drift(traced, last), units, traced.across, stressed=True)
        return f"{who} {verb} the edge {where} after {after}; what lies beyond is not followed."
    if made.end == "duration":
        return f"{who} {'are' if many else 'is'} still in flight when the scene ends."
    ground = the(traced, traced.ground)
    return f"{who} never {'meet' if many else 'meets'} {ground} in {after}."


def why(traced, units):
    """One sentence of what the causes of a drift have done, where they can be told apart; else nothing."""
    parts, _ = traced.drift
    if parts is None or abs(parts["coriolis"]) < _NONE_M:
        return ""
    shifts = [("Coriolis", parts["coriolis"]), ("drag", parts["drag"]), ("the rest", parts["other"])]
    told = [f"{cause} shifts that {_shift(by_m, units)}" for cause, by_m in shifts[:1]]
    told += [f"{cause} {_shift(by_m, units)}" for cause, by_m in shifts[1:] if abs(by_m) >= _NONE_M]
    listed = ", ".join(told[:-1]) + (" and " if told[:-1] else "") + told[-1]
    without = "Coriolis and drag" if parts["drag"] else "Coriolis"
    return f"{_alone(traced, without, parts['centrifugal'], units)}; {listed}."


def _alone(traced, without, drift_m, units):
    """Where it would land with the first cause alone. The parts are those along the ground: where a thing also goes across it,
    only that is said."""
    stream = traced.plan.stream
    who = "it" if stream is None or stream.batch is not None else "they"
    across_m = traced.track.landing.axial_m - traced.plan.place[2]
    if abs(across_m) < _NONE_M:
        return f"Without {without} {who} would land {drift(drift_m, 0.0, units, stressed=True)}"
    goes = f"go {_shift(drift_m, units)}" if abs(drift_m) >= _NONE_M else "not drift"
    return f"Along the {traced.ground}, without {without} {who} would {goes}"


def _shift(by_m, units):
    return f"{length(abs(by_m), units)} {'spinward' if by_m > 0 else 'antispinward'}"
