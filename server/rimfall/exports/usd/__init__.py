"""A SampledScene as OpenUSD: text (.usda), text packed alone (.usdz), and binary (.usdc, where OpenUSD's library is installed)."""

from .archive import packed
from .crate import crate
from .stage import layer_of
from .text import text


def usda(sampled):
    """The file as text, UTF-8 bytes."""
    return text(layer_of(sampled))


def usdz(sampled):
    """The same text in a package of its own."""
    return packed("rimfall.usda", usda(sampled))


def usdc(sampled):
    """The same content in binary. Raises BadInput where OpenUSD's library is not installed."""
    return crate(layer_of(sampled))
