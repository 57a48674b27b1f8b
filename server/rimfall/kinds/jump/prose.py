"""A jump as prose."""

from ..telling import lasted, place


def told(traced, telling, _thing):
    """Sentences; the jumper is whoever reads."""
    track = traced.track
    if track.landing is None:
        return [f"You {telling.verb('jump', 'jumped')} and nothing {telling.verb('brings', 'brought')} you back."]
    if lasted(traced, track.landing) <= 0:
        return [f"You {telling.verb('do', 'did')} not leave the ground."]
    rise = 0.0 if track.apex is None else track.apex.height_m - traced.plan.place[1]
    way = traced.way(track.landing)
    where = place(traced, telling, way, "where you jumped", whom="where you jumped")
    lands = f"{telling.verb('land', 'landed')} {where}"
    if rise <= 0:
        return [
            f"You {telling.verb('step', 'stepped')} off and {lands} after {telling.time(lasted(traced, track.landing))}."
        ]
    rises = (
        f"You {telling.verb('jump', 'jumped')} and {telling.verb('rise', 'rose')} {telling.length(rise, upright=True)}."
    )
    return [rises, f"After {telling.time(lasted(traced, track.landing))} you {lands}."]
