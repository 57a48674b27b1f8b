"""A lift ride as prose."""

from ...amounts import LEAST_SHARE, of_earth_weight
from ...language import tr, tr_later
from ...physics.constants import G0_M_S2


def told(traced, telling, _thing):
    """Sentences; the rider is whoever reads."""
    findings = traced.findings
    ride = {"time": telling.time(findings["takes_s"], dative=False)}
    push = findings["most_sideways_m_s2"] / G0_M_S2
    if findings["leaves_s"] is not None:
        return [
            telling.says(
                tr_later("You ride the lift for {time}. As it slows it leaves you floating off its floor."),
                tr_later("You rode the lift for {time}. As it slowed it left you floating off its floor."),
                **ride,
            )
        ]
    if push < LEAST_SHARE:
        return [
            telling.says(
                tr_later("You ride the lift for {time} and hardly notice a push to the side."),
                tr_later("You rode the lift for {time} and hardly noticed a push to the side."),
                **ride,
            )
        ]
    return [
        telling.says(
            tr_later(
                "You ride the lift for {time}. Its wall pushes you {side}, by up to {share}, and the floor seems to tilt."
            ),
            tr_later(
                "You rode the lift for {time}. Its wall pushed you {side}, by up to {share}, and the floor seemed to tilt."
            ),
            side=_side(findings["sideways_m_s2"]),
            share=of_earth_weight(push),
            **ride,
        )
    ]


def _side(pushes):
    """Which way its wall pushes."""
    if len(pushes) and min(pushes) >= 0 and max(pushes) > 0:
        return tr("in the direction of the spin")
    return tr("against the spin") if len(pushes) and max(pushes) <= 0 else tr("to either side")
