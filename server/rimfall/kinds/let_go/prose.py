"""Letting go of the rim as prose."""

from ...language import tr_later
from ..telling import lasted


def told(traced, telling, _thing):
    """Sentences; who lets go is whoever reads."""
    findings, track = traced.findings, traced.track
    time = telling.time(lasted(traced, track.last))
    if track.end == "met a surface":
        return [
            telling.says(
                tr_later("You push off and meet the hull again after {time}."),
                tr_later("You pushed off and met the hull again after {time}."),
                time=time,
            )
        ]
    if not len(findings["distance_m"]) or findings["leaves_m_s"] == 0:
        return [telling.says(tr_later("You let go, and nothing moves."), tr_later("You let go, and nothing moved."))]
    return [
        telling.says(
            tr_later("You let go and drift off in a straight line at {speed}."),
            tr_later("You let go and drifted off in a straight line at {speed}."),
            speed=telling.speed(findings["leaves_m_s"]),
        ),
        telling.says(
            tr_later("After {time} the place you let go of is {length} away."),
            tr_later("After {time} the place you let go of was {length} away."),
            time=time,
            length=telling.length(float(findings["distance_m"][-1])),
        ),
    ]
