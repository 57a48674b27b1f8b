"""How far a thing has come, and why: parts of several answers."""

from typing import Literal

from .parts import Closed, said

NoDriftParts = Literal[
    "not_flown", "no_spin", "tumbles", "starts_there", "met_something_first", "spin_changes", "no_landing_without_coriolis",
    "no_landing_without_air", "no_landing_without_the_rest", "far_round",
]  # fmt: skip


class Way(Closed):
    """How far from the release along the ground where the thing then is: on round ground at its own radius, on flat floors and a
    turntable straight, along the directions of the release."""

    turns: int = said("Whole turns about the axis, spinward above 0; 0 where the ground does not go round.")
    spinward_m: float = said("The nearest way beyond those turns, at most half a turn, spinward above 0, m.")
    axial_m: float = said("Along the axis, and along the ground where that bends that way; on a turntable outward; m.")
    of_turn: float | None = said("`spinward_m` as a part of once round; null where the ground does not go round.")


class DriftParts(Closed):
    """The drift by cause, along the ground as in `way`, whole turns included, m: causes are switched on in this order, and each part is
    what the drift changes by."""

    order: list[Literal["centrifugal", "coriolis", "drag", "other"]] = said("The order.", min_length=4, max_length=4)
    centrifugal: float = said("The drift under the centrifugal force alone, m.")
    coriolis: float = said("What Coriolis adds, m.")
    drag: float = said("What the drag of the air adds, m.")
    other: float = said("What is left: lift, buoyancy, a spin that changes; m.")
