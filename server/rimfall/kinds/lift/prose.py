"""A lift ride as prose."""

from ...physics.constants import G0_M_S2
from ...prose import LEAST_SHARE, share


def told(traced, telling, _thing):
    """Sentences; the rider is whoever reads."""
    findings = traced.findings
    rides = f"You {telling.verb('ride', 'rode')} the lift for {telling.time(findings['takes_s'])}"
    push = findings["most_sideways_m_s2"] / G0_M_S2
    if findings["leaves_s"] is not None:
        slows = telling.verb("slows", "slowed")
        return [f"{rides}. As it {slows} it {telling.verb('leaves', 'left')} you floating off its floor."]
    if push < LEAST_SHARE:
        return [f"{rides} and hardly {telling.verb('notice', 'noticed')} a push to the side."]
    pushes = findings["sideways_m_s2"]
    one_way = len(pushes) and (min(pushes) >= 0 or max(pushes) <= 0)
    side = ("in the direction of the spin" if max(pushes) > 0 else "against the spin") if one_way else "to either side"
    return [
        f"{rides}. Its wall {telling.verb('pushes', 'pushed')} you {side}, by up to {share(push)} of your weight on Earth, and the floor "
        f"{telling.verb('seems', 'seemed')} to tilt."
    ]
