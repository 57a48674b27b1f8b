"""What the findings of a craft share in their sentences."""

from ...phrases import speed
from ...vessel.materials import MATERIALS

_STRONGEST = max(MATERIALS, key=lambda name: MATERIALS[name].specific_strength_m2_s2)


def sentence(text):
    """A sentence, its first letter large."""
    return text[:1].upper() + text[1:]


def too_fast(speed_m_s, units):
    """What a ring at this speed comes to, as the rest of a sentence: "" where some material here would bear its own mass."""
    bare = MATERIALS[_STRONGEST].specific_strength_m2_s2 ** 0.5
    if speed_m_s <= bare:
        return ""
    return f"no ring holds together at {speed(speed_m_s, units)}: even one of {_STRONGEST}, the strongest here, tears at {speed(bare, units)}"
