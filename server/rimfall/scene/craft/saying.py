"""What the findings of a craft share in their sentences."""

from ...language import tr
from ...phrases import speed
from ...physics.constants import LIGHT_M_S
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
    if speed_m_s >= LIGHT_M_S:
        return tr("that is faster than light: nothing holds so much momentum so near its axis")
    return tr(
        "no ring holds together at {speed}: even one of {material}, the strongest here, tears at {most}",
        speed=speed(speed_m_s, units),
        material=tr(_STRONGEST),
        most=speed(bare, units),
    )


def strength_of(name, source):
    """Where the strength of a material, or of rock, was published."""
    return tr("Strength of {material}: {source}.", material=tr(name), source=tr(source))
