"""Materials of rings, spokes and tethers: strength, density, and where each was published."""

from dataclasses import dataclass

from ..language import tr_later


@dataclass(frozen=True)
class Material:
    """strength_pa: in tension, ultimate; density_kg_m3; source: of both."""

    strength_pa: float
    density_kg_m3: float
    source: str

    @property
    def specific_strength_m2_s2(self) -> float:
        """Strength over density: the square of the speed at which a bare ring of it tears."""
        return self.strength_pa / self.density_kg_m3


BEST_COUPONS = tr_later(
    "encyclopedia table of specific strength, which cites suppliers: best coupons, not design values"
)
HANDBOOK = tr_later("MIL-HDBK-5 / MMPDS, typical ultimate strength, from memory")

MATERIALS = {
    tr_later("aluminium 6061-T6"): Material(290e6, 2710.0, HANDBOOK),
    tr_later("aluminium 7075-T6"): Material(538e6, 2800.0, HANDBOOK),
    tr_later("titanium Ti-6Al-4V"): Material(896e6, 4430.0, HANDBOOK),
    tr_later("steel 4340"): Material(1792e6, 7830.0, HANDBOOK),
    tr_later("strong steel"): Material(2000e6, 7860.0, BEST_COUPONS),
    tr_later("strong aluminium"): Material(600e6, 2700.0, BEST_COUPONS),
    tr_later("strong titanium"): Material(1300e6, 4510.0, BEST_COUPONS),
    tr_later("carbon fibre"): Material(4300e6, 1750.0, BEST_COUPONS),
    tr_later("aramid"): Material(3620e6, 1440.0, BEST_COUPONS),
}
