"""Why it drifts, in words."""

from ..phrases import drift, length

_NONE_M = 0.005  # a shift smaller than this is none worth a word


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
        return f"Without {without} {who} would land {drift(drift_m, 0.0, units)}"
    goes = f"go {_shift(drift_m, units)}" if abs(drift_m) >= _NONE_M else "not drift"
    return f"Along the {traced.ground}, without {without} {who} would {goes}"


def _shift(by_m, units):
    return f"{length(abs(by_m), units)} {'spinward' if by_m > 0 else 'antispinward'}"
