"""Sentences for who lets go outside."""

from ...phrases import length, seconds, speed


def let_go(traced, units):
    """How far one gets that lets go outside."""
    found, made = traced.findings, traced.track
    after = seconds(made.ends_s - traced.plan.start_s)
    if made.end == "met a surface":
        return [f"Pushed that way, one meets the hull after {after}."]
    if not len(found["distance_m"]) or found["leaves_m_s"] == 0:
        return ["Nothing moves: one stays beside the hull."]
    far, line = (float(found[name][-1]) for name in ("distance_m", "line_m"))
    longer = f", and a line to there, laid round the hull, {length(line, units)} long" if line > 1.001 * far else ""
    out = [
        f"One leaves straight at {speed(found['leaves_m_s'], units)}; after {after} the place let go of is {length(far, units)} off{longer}."
    ]
    return [*out, *_sweeps(traced, found, units)]


def _sweeps(traced, found, units):
    if not found["sweeps_by"]:
        return []
    first = found["sweeps_by"][0]
    return [
        f"That place sweeps by again after {seconds(first['time_s'] - traced.plan.start_s)}, {length(first['distance_m'], units)} away."
    ]
