"""Sentences for a thing that stands from the start."""

from ..air_words import rose
from ..ground_words import ending, since, the, there


def stood(traced, units):
    """What a thing does that stands from the start."""
    if risen := rose(traced, units):
        return risen
    events = [e for e in traced.track.events if e.kind in ("slip", "grip")]
    on = the(traced, traced.plan.surface)
    if not events:
        moved = any(e.kind not in ("release", "time_limit", "rest") for e in traced.track.events)
        return [f"It {ending(traced, units)}."] if moved else [f"It stands on {on} and does not slide."]
    parts = []
    for event in events[:6]:
        at_once = event.time_s <= traced.plan.start_s
        slides = "slides at once" if at_once else f"slides from {since(traced, event)} on"
        parts.append(
            slides if event.kind == "slip" else f"grips {there(traced, event, units)} after {since(traced, event)}"
        )
    more = "" if len(events) <= 6 else ", and so on"
    out = [f"On {on} it {' and '.join(parts)}{more}."]
    if traced.track.end in ("edge", "landed", "met a surface"):
        out.append(f"It {ending(traced, units)}.")
    return out
