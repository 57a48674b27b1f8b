"""A walk as prose."""

from ...amounts import of_earth_weight, share
from ...language import tr_later
from ..people import RUNS_M_S
from ..telling import toward

_FELT = 0.05  # a change of weight smaller than this share is none worth a word


def told(traced, telling, _thing):
    """Sentences; the walker is whoever reads."""
    motion, feet, standing = traced.motion, traced.findings["feet_g"], traced.findings["standing_g"]
    if not len(feet):
        return [telling.says(tr_later("You have no time for a step."), tr_later("You had no time for a step."))]
    if not motion.speed_m_s:
        return [telling.says(tr_later("You stand still."), tr_later("You stood still."))]
    goes = {"goes": _goes(traced, telling, motion)}
    if standing == 0:
        return [
            telling.says(
                tr_later("{goes}, holding on to a rail: nothing holds you to the floor."),
                tr_later("{goes}, holding on to a rail: nothing held you to the floor."),
                **goes,
            )
        ]
    first = float(feet[0])
    if first == 0.0:
        return [
            telling.says(
                tr_later("{goes}: nothing holds you to the floor at that speed, and you leave it."),
                tr_later("{goes}: nothing held you to the floor at that speed, and you left it."),
                **goes,
            )
        ]
    change = first / standing - 1
    if abs(change) < _FELT:
        return [
            telling.says(
                tr_later("{goes} and feel as heavy as when you stand still."),
                tr_later("{goes} and felt as heavy as when you stood still."),
                **goes,
            )
        ]
    told = goes | {"weight": of_earth_weight(first), "standing": share(standing)}
    if change > 0:
        return [
            telling.says(
                tr_later(
                    "{goes} and feel heavier than standing still: your weight is {weight}, where standing it is {standing}."
                ),
                tr_later(
                    "{goes} and felt heavier than standing still: your weight was {weight}, where standing it was {standing}."
                ),
                **told,
            )
        ]
    return [
        telling.says(
            tr_later(
                "{goes} and feel lighter than standing still: your weight is {weight}, where standing it is {standing}."
            ),
            tr_later(
                "{goes} and felt lighter than standing still: your weight was {weight}, where standing it was {standing}."
            ),
            **told,
        )
    ]


def _goes(traced, telling, motion):
    """That one walks, as a sentence begins."""
    told = {"way": toward(traced, motion.heading_deg), "speed": telling.speed(motion.speed_m_s)}
    if motion.climb_deg:
        return telling.says(tr_later("You climb {way} at {speed}"), tr_later("You climbed {way} at {speed}"), **told)
    if motion.speed_m_s > RUNS_M_S:
        return telling.says(tr_later("You run {way} at {speed}"), tr_later("You ran {way} at {speed}"), **told)
    return telling.says(tr_later("You walk {way} at {speed}"), tr_later("You walked {way} at {speed}"), **told)
