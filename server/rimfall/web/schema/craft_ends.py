"""What a craft's answer tells of tethers, visitors, its ring and a rock. SI units; craft axes."""

from .craft_finding import Finding
from .parts import Closed, Pair, Vector, left_out, said


class MadeTether(Closed):
    """A tether of a material that just carries its ends."""

    mass_kg: float = said("Its mass.")
    areas_m2: Vector = said("Its cross-section at the first mass, where it balances, and at the second.")
    radii_m: Pair = said("How far each mass is from where it balances.")
    tension_n: float = said("Its pull where it balances.")


class Reeled(Closed):
    """After it was drawn in, or let out."""

    length_m: float = said("Its length.")
    rate_rad_s: float = said("How fast it turns.")
    gravity_m_s2: Pair = said("What is felt at each end.")
    tension_n: float = said("Its pull.")
    work_j: float = said("What the winch puts in; below 0 what a brake takes up.")


class Parted(Closed):
    """After a cut."""

    speeds_m_s: Pair = said("How fast each end flies off, at right angles to the tether and opposite to the other.")
    directions_deg: Pair = said(
        "Whither: the angle from the way from the first to the second, growing as the tether spins."
    )
    apart_m: float = said("How far they are apart.")
    time_s: float = said("After so long.")


class Tether(Finding):
    """Two masses on a tether."""

    radii_m: Pair = said("How far each mass is from where they balance.")
    gravity_m_s2: Pair = said("What is felt at each.")
    tension_n: float = said("Its greatest pull, where it balances.")
    tension_along_n: list[float] = said("Its pull along it.")
    from_first_m: list[float] = said("How far from the first mass that is.")
    uniform: MadeTether | None = said(
        "One of one thickness; null without a material, or where none would bear its own pull."
    )
    tapered: MadeTether | None = said("One with the same stress everywhere; null likewise.")
    reeled: Reeled | None = said("At another length; null where none is asked for.")
    cut: Parted = said("After a cut.")


class Drift(Closed):
    """Seen from the rim, after it stops pushing."""

    away_m: float = said("How far off the rim.")
    along_m: float = said("How far along it; below 0 antispinward.")
    time_s: float = said("After so long.")


class Leaving(Closed):
    """Leaving by letting go."""

    speed_m_s: float = said("How fast it leaves.")
    azimuth_deg: float = said("Where the place that lets go must be, from the x axis at time 0.")
    wait_s: float = said("When a place that is on the x axis at time 0 comes there.")


class Dock(Finding):
    """A visitor; what belongs to the other dock, or to a craft that turns, is left out."""

    speed_m_s: float = left_out("At the rim: the speed to match.")
    acceleration_m_s2: float = left_out("At the rim: what it must keep up toward the axis to stay beside it.")
    push_n: float = left_out("At the rim: the push that takes.")
    propellant_kg_s: float = left_out("At the rim: the propellant that takes.")
    drift: Drift = left_out("At the rim: where it drifts if it stops pushing.")
    angular_momentum_kg_m2_s: float = left_out("At the hub: what it must take on.")
    rate_rad_s: float = left_out("At the hub: the spin to match.")
    inertia_kg_m2: float = left_out("At the hub: its own inertia.")
    time_s: float = left_out("At the hub: how long it thrusts.")
    propellant_kg: float = left_out("At the hub: the propellant that takes.")
    leaving: Leaving = left_out("Leaving by letting go of the rim.")
    motions: list[dict] = left_out("Its coming and leaving as motions of a scene.")


class Shares(Closed):
    """What pulls at a ring, Pa."""

    own: float = said("Its own weight.")
    load: float = said("The load on its floor.")
    pressure: float = said("The air inside.")


class LargestRing(Closed):
    """The largest ring of a material at the same gravity."""

    strength_pa: float = said("Its strength.")
    density_kg_m3: float = said("Its density.")
    source: str = said("Where both were published.")
    bare_radius_m: float | None = said("Bare; null where any would hold.")
    loaded_radius_m: float | None = said("With this wall, load and air; null likewise.")


class Hull(Finding):
    """The turning ring as a structure."""

    hoop_stress_pa: float = said("Its hoop stress, along the ring.")
    shares_pa: Shares = said("Of that, from what.")
    tube_stress_pa: float | None = said(
        "The pull of the air around the tube that holds it; null where the whole is full of air."
    )
    safe_stress_pa: float = said("Strength over safety factor.")
    times_safe: float = said("The greater stress over that.")
    margin: float | None = said("Safe stress over stress, less 1; null where nothing pulls.")
    spoke_tension_n: float | None = said("The pull of each spoke where they carry everything; null without spokes.")
    gravity_m_s2: float = said("Gravity at the rim.")
    largest: dict[str, LargestRing] = said("The largest ring of each material.")


class RockStrength(Closed):
    """What rock bears."""

    of: str = said("What kind.")
    tension_pa: float = said("Its tensile strength.")
    source: str = said("Where that was published.")
    times: float = said("The mean tension over it.")
    largest_radius_m: float = said("The largest ball of it that would hold.")


class Rock(Finding):
    """An asteroid that is spun up."""

    weightless_rate_rad_s: float = said("The spin at which nothing weighs anything at its equator.")
    weightless_period_s: float = said("One turn at that spin.")
    own_gravity_m_s2: float = said("The gravity of its mass at its surface.")
    rate_rad_s: float = said("The spin for the wished gravity inside its equator.")
    mean_tension_pa: float = said("The mean tension then, over a plane through its axis.")
    lining_n: float = said("What a lining would have to carry across that plane.")
    lining_area_m2: float = said("How much strong steel that takes, at its breaking strength.")
    strengths: list[RockStrength] = said("Against what rock bears.")
