"""A craft's approach as prose."""

from ...amounts import TIME, amount
from ...language import tr_later
from ..telling import lasted

_TURNS = 0.2  # fewer than that are none worth a word


def told(traced, telling, _thing):
    """Sentences."""
    findings, track = traced.findings, traced.track
    time_s = lasted(traced, track.last)
    if track.end != "arrived":
        coasts = telling.says(
            tr_later("The craft coasts in for {time}."),
            tr_later("The craft coasted in for {time}."),
            time=telling.time(time_s, dative=False),
        )
        return [coasts]
    arrives = telling.says(
        tr_later("The craft coasts in and reaches the dock after {time}, closing at {speed}."),
        tr_later("The craft coasted in and reached the dock after {time}, closing at {speed}."),
        time=telling.time(time_s),
        speed=telling.speed(findings["to_cancel_size_m_s"]),
    )
    turns = findings["turns_seen"]
    if turns < _TURNS:
        return [arrives]
    seen = telling.says(
        tr_later("Seen from aboard it seems to go round the habitat {times}."),
        tr_later("Seen from aboard it seemed to go round the habitat {times}."),
        times=amount(turns, TIME),
    )
    return [arrives, seen]
