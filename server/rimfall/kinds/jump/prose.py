"""A jump as prose."""

from ...language import tr_later
from ...prose import WHERE_YOU_JUMPED
from ..telling import lasted, place


def told(traced, telling, _thing):
    """Sentences; the jumper is whoever reads."""
    track = traced.track
    if track.landing is None:
        return [
            telling.says(
                tr_later("You jump and nothing brings you back."), tr_later("You jumped and nothing brought you back.")
            )
        ]
    if lasted(traced, track.landing) <= 0:
        return [telling.says(tr_later("You do not leave the ground."), tr_later("You did not leave the ground."))]
    rise = 0.0 if track.apex is None else track.apex.height_m - traced.plan.place[1]
    where = place(traced, telling, traced.way(track.landing), tr_later("where you jumped"), WHERE_YOU_JUMPED)
    lands = {"where": where, "time": telling.time(lasted(traced, track.landing))}
    if rise <= 0:
        return [
            telling.says(
                tr_later("You step off and land {where} after {time}."),
                tr_later("You stepped off and landed {where} after {time}."),
                **lands,
            )
        ]
    rises = telling.says(
        tr_later("You jump and rise {height}."),
        tr_later("You jumped and rose {height}."),
        height=telling.length(rise, upright=True),
    )
    return [
        rises,
        telling.says(tr_later("After {time} you land {where}."), tr_later("After {time} you landed {where}."), **lands),
    ]
