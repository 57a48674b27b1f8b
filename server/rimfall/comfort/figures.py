"""The figures of a crew's day: what a person feels aboard, by name, and the quantities of it that published limits speak of.

All are for the spin at time 0, on the deck (sphere: its equator; torus: its outermost line; flat floors: the middle of the
first; turntable: at the rim). A figure that has no meaning there is None: a lean where standing weighs nothing, a
floating speed under thrust.
"""

import math
from dataclasses import dataclass

from ..language import tr, tr_later
from ..physics.constants import RPM_RAD_S, TURN_RAD
from .grounds import on_the
from .in_hand import dropped, glass, poured
from .on_foot import on_foot
from .posture import head_turns, levels, lying, standing
from .stance import stance_of


@dataclass(frozen=True)
class FigureRow:
    """A figure's label and unit for people, the group it is shown in, and its label on a turntable where that differs.

    A label's {ground} stands for what is stood on: "deck", "floor" or "turntable".
    """

    label: str
    unit: str
    group: str
    on_turntable: str = ""

    def called(self, ground):
        """Its label where the ground is that, in the language that is spoken."""
        label = self.on_turntable or self.label if ground == "turntable" else self.label
        return tr(label, ground=on_the(ground))


def _group(name, **rows):
    return {figure: FigureRow(label, unit, name, *other) for figure, (label, unit, *other) in rows.items()}


FIGURES = {
    **_group(
        tr_later("Turning"),
        period_s=(tr_later("One turn takes"), "s"),
        spin_rpm=(tr_later("Spin"), "rpm"),
        rim_speed_m_s=(tr_later("Rim speed"), "m/s"),
    ),
    **_group(
        tr_later("Standing"),
        feet_g=(tr_later("At the feet"), "g"),
        heart_g=(tr_later("At the heart"), "g"),
        head_g=(tr_later("At the head"), "g"),
        gradient_percent=(tr_later("Change from feet to head"), "%"),
        gradient_g_per_m=(tr_later("Change with height"), "g/m"),
    ),
    **_group(
        tr_later("Sitting and lying"),
        seated_heart_g=(tr_later("Seated, at the heart"), "g"),
        seated_head_g=(tr_later("Seated, at the head"), "g"),
        rise_push_g=(tr_later("Standing up: push on the head, spinward"), "g"),
        lying_along_g=(tr_later("Lying along the axis"), "g"),
        lying_across_g=(tr_later("Lying across the axis"), "g"),
        lying_across_lean_deg=(tr_later("Lying across: down leans at head and feet"), "°"),
    ),
    **_group(
        tr_later("On foot"),
        walk_spinward_g=(tr_later("Walking spinward"), "g"),
        walk_antispinward_g=(tr_later("Walking antispinward"), "g"),
        run_spinward_g=(tr_later("Running spinward"), "g"),
        run_antispinward_g=(tr_later("Running antispinward"), "g"),
        walk_axial_lean_deg=(
            tr_later("Walking along the axis: down leans"),
            "°",
            tr_later("Walking outward: down leans"),
        ),
        float_speed_m_s=(tr_later("Feet leave the {ground}, antispinward at"), "m/s"),
        coriolis_ratio=(tr_later("Coriolis to gravity, at a walk"), ""),
    ),
    **_group(
        tr_later("Stairs and ladders"),
        stairs_spinward_g=(tr_later("Up stairs that rise spinward"), "g"),
        stairs_antispinward_g=(tr_later("Up stairs that rise antispinward"), "g"),
        stairs_lean_deg=(tr_later("Up stairs: down leans by up to"), "°"),
        ladder_push_g=(tr_later("Up a ladder: push, spinward"), "g"),
        ladder_lean_deg=(tr_later("Up a ladder: down leans at its foot"), "°"),
        ladder_halfway_lean_deg=(tr_later("Up a ladder: down leans half way to the axis"), "°"),
    ),
    **_group(
        tr_later("Lift"),
        lift_push_g=(tr_later("Riding up: push, spinward"), "g"),
        lift_lean_deg=(tr_later("Riding up: down leans at the start"), "°"),
        lift_halfway_g=(tr_later("Half way to the axis, at rest"), "g"),
        lift_halfway_lean_deg=(tr_later("Riding up: down leans half way to the axis"), "°"),
    ),
    **_group(
        tr_later("Turning the head"),
        head_worst_deg_s2=(tr_later("Greatest angular acceleration across a turn"), "°/s²"),
    ),
    **_group(
        tr_later("Things in hand"),
        drop_time_s=(tr_later("Dropped from the hand: falls for"), "s"),
        drop_drift_m=(tr_later("Dropped from the hand: lands, spinward positive"), "m"),
        drop_axial_m=(
            tr_later("Dropped from the hand: lands along the axis by"),
            "m",
            tr_later("Dropped from the hand: lands outward by"),
        ),
        pour_drift_m=(tr_later("Poured into a glass: off, spinward positive"), "m"),
        pour_axial_m=(
            tr_later("Poured into a glass: off along the axis by"),
            "m",
            tr_later("Poured into a glass: off outward by"),
        ),
        glass_walk_lean_deg=(tr_later("Glass at a steady walk: surface leans"), "°"),
        glass_start_lean_deg=(tr_later("Glass on setting off: surface leans"), "°"),
        glass_stairs_lean_deg=(tr_later("Glass up the stairs: surface leans"), "°"),
    ),
    **_group(
        tr_later("The floor"),
        floor_lean_deg=(tr_later("Standing: down leans from the {ground}"), "°"),
    ),
}


@dataclass(frozen=True)
class ComfortFigures:
    """values: every name of FIGURES -> a finite figure or None; quantities: every name of QUANTITIES -> the same; levels: tuple
    of Level; head_turns: the six HeadTurns."""

    values: dict
    quantities: dict
    levels: tuple
    head_turns: tuple


def figures_of(setting, person, decks):
    """The ComfortFigures of a person (attributes as the document's) in a Setting; decks: named levels with radius_m, or none."""
    stance = stance_of(setting, person)
    turns = head_turns(stance)
    values = {"head_worst_deg_s2": max(turn.deg_s2 for turn in turns)}
    for part in (_turning, standing, lying, on_foot, dropped, poured, glass):
        values |= part(stance)
    if not values["feet_g"]:
        values |= {name: None for name in FIGURES if name.endswith("_lean_deg")}
    return ComfortFigures({name: values[name] for name in FIGURES}, _quantities(values), levels(stance, decks), turns)


def _turning(stance):
    omega = abs(stance.omega_rad_s)
    return {
        "period_s": TURN_RAD / omega if omega else None,
        "spin_rpm": omega / RPM_RAD_S,
        "rim_speed_m_s": omega * stance.floor_radius_m,
    }


def _quantities(values):
    return {
        "gravity": values["feet_g"],
        "spin": values["spin_rpm"],
        "gradient": values["gradient_percent"],
        "rim_speed": values["rim_speed_m_s"],
        "head_turn": math.radians(values["head_worst_deg_s2"]),
        "coriolis": values["coriolis_ratio"],
    }
