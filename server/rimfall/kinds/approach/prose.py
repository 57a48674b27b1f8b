"""A craft's approach as prose."""

from ...prose import amount
from ..telling import lasted

_TURNS = 0.2  # fewer than that are none worth a word


def told(traced, telling, _thing):
    """Sentences."""
    findings, track = traced.findings, traced.track
    comes = f"The craft {telling.verb('coasts', 'coasted')} in"
    if track.end != "arrived":
        return [f"{comes} for {telling.time(lasted(traced, track.last))}."]
    arrives = (
        f"{comes} and {telling.verb('reaches', 'reached')} the dock after {telling.time(lasted(traced, track.last))}"
    )
    closing = f"closing at {telling.speed(findings['to_cancel_size_m_s'])}"
    turns = findings["turns_seen"]
    if turns < _TURNS:
        return [f"{arrives}, {closing}."]
    seen = f"Seen from aboard it {telling.verb('seems', 'seemed')} to go round the habitat {amount(turns, 'time', 'times')}."
    return [f"{arrives}, {closing}.", seen]
