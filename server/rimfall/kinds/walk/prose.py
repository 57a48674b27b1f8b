"""A walk as prose."""

from ...prose import share
from ..people import RUNS_M_S
from ..telling import toward

_FELT = 0.05  # a change of weight smaller than this share is none worth a word


def told(traced, telling, _thing):
    """Sentences; the walker is whoever reads."""
    motion, feet, standing = traced.motion, traced.findings["feet_g"], traced.findings["standing_g"]
    if not len(feet):
        return [f"You {telling.verb('have', 'had')} no time for a step."]
    if not motion.speed_m_s:
        return [f"You {telling.verb('stand', 'stood')} still."]
    goes = telling.verb("run", "ran") if motion.speed_m_s > RUNS_M_S else telling.verb("walk", "walked")
    goes = telling.verb("climb", "climbed") if motion.climb_deg else goes
    start = f"You {goes} {toward(traced, telling, motion.heading_deg)} at {telling.speed(motion.speed_m_s)}"
    if standing == 0:
        return [f"{start}, holding on to a rail: nothing {telling.verb('holds', 'held')} you to the floor."]
    first = float(feet[0])
    if first == 0.0:
        stays = f"nothing {telling.verb('holds', 'held')} you to the floor at that speed, and you {telling.verb('leave', 'left')} it"
        return [f"{start}: {stays}."]
    change = first / standing - 1
    feels = telling.verb("feel", "felt")
    if abs(change) < _FELT:
        return [f"{start} and {feels} as heavy as when you {telling.verb('stand', 'stood')} still."]
    more = "heavier" if change > 0 else "lighter"
    return [
        f"{start} and {feels} {more} than standing still: your weight {telling.verb('is', 'was')} {share(first)} of your weight on Earth, "
        f"where standing it {telling.verb('is', 'was')} {share(standing)}."
    ]
