"""Sentences for a ride in a lift."""

from ...phrases import seconds
from ...physics.constants import G0_M_S2

_LEAST_PUSH = 1e-6  # of the greatest one
_FELT = 0.005  # in g; less is none worth a word


def rode(traced, units):
    """What a ride in a lift does sideways."""
    found = traced.findings
    most, tilt = found["most_sideways_m_s2"], found["most_tilt_deg"]
    out = [f"The ride takes {seconds(found['takes_s'])}{_cut(traced, found)}."]
    if most / G0_M_S2 < _FELT and tilt < 1:
        return [*out, "Nothing worth a word pushes sideways."]
    return [
        *out,
        f"The rider is pushed {_way(found)} by up to {most / G0_M_S2:.2f} g, and down leans by up to {tilt:.0f}°.",
    ]


def _way(found):
    """The way of a push that keeps to one way."""
    least = _LEAST_PUSH * found["most_sideways_m_s2"]  # one that begins from rest begins with rounding errors
    pushes = [v for v in found["sideways_m_s2"] if abs(v) > least]
    if not pushes or min(pushes) < 0 < max(pushes):
        return "sideways"
    return "spinward" if pushes[0] > 0 else "antispinward"


def _cut(traced, found):
    lasts = traced.track.ends_s - traced.plan.start_s
    return "" if traced.track.end == "arrived" else f", of which {seconds(lasts)} are shown"
