"""Sentences for a craft that comes in to a dock."""

from ...phrases import listed, seconds, speed


def approached(traced, units):
    """What a craft sees, and must lose, that comes in."""
    found, made = traced.findings, traced.track
    takes = traced.motion.from_m / traced.motion.speed_m_s
    comes = "reaches the dock" if made.end == "arrived" else "would reach the dock"
    out = [f"The craft {comes} after {seconds(takes)}; seen from aboard it goes round {found['turns_seen']:.1f} times."]
    along, up, axial = found["to_cancel_m_s"]
    size = found["to_cancel_size_m_s"]
    parts = [
        (along, "spinward", "antispinward"),
        (up, "up", "outward"),
        (axial, "along the axis", "back along the axis"),
    ]
    said = [f"{speed(abs(v), units)} {a if v > 0 else b}" for v, a, b in parts if abs(v) >= 0.05]
    return [
        *out,
        f"At contact {speed(size, units)} are to be cancelled{': it still moves ' + listed(said) if len(said) > 1 else ''}.",
    ]
