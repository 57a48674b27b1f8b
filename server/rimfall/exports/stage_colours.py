"""The colours of the page's stages, as files of three dimensions want them: linear RGB of 0 to 1."""

# of the motions, in the scene's order; a seventh begins anew
MOTIONS = ("#F8B840", "#6FC6F6", "#2FC196", "#F6EE86", "#E6A3C8", "#F98442")
WATER = "#B8D8F0"


def linear(colour):
    """ "#rrggbb" of sRGB -> linear RGB, a tuple (IEC 61966-2-1)."""
    shares = [int(colour[k : k + 2], 16) / 255 for k in (1, 3, 5)]
    return tuple(s / 12.92 if s <= 0.04045 else ((s + 0.055) / 1.055) ** 2.4 for s in shares)


def of_motion(number):
    """The colour of a motion of the scene, linear RGB."""
    return linear(MOTIONS[number % len(MOTIONS)])
