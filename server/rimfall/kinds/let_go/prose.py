"""Letting go of the rim as prose."""

from ..telling import lasted


def told(traced, telling, _thing):
    """Sentences; who lets go is whoever reads."""
    findings, track = traced.findings, traced.track
    if track.end == "met a surface":
        after = telling.time(lasted(traced, track.last))
        meets = telling.verb("meet", "met")
        return [f"You {telling.verb('push', 'pushed')} off and {meets} the hull again after {after}."]
    if not len(findings["distance_m"]) or findings["leaves_m_s"] == 0:
        return [f"You {telling.verb('let', 'let')} go, and nothing {telling.verb('moves', 'moved')}."]
    far = telling.length(float(findings["distance_m"][-1]))
    return [
        f"You let go and {telling.verb('drift', 'drifted')} off in a straight line at {telling.speed(findings['leaves_m_s'])}.",
        f"After {telling.time(lasted(traced, track.last))} the place you let go of {telling.verb('is', 'was')} {far} away.",
    ]
