"""Uses that a type checker reads and nobody runs: the public face as a notebook has it, and who keeps which protocol."""

from typing import assert_type

import numpy as np

import rimfall
from rimfall.physics import coordinates, integrate, pendulum, protocols, rolling, stiff, surfaces, windowed

scene = rimfall.open_scene("same-lob")
answer = rimfall.trace(scene)
path = answer.motions["Lob out"]
assert_type(path, rimfall.MotionPath)
assert_type(path.height_m, np.ndarray)
assert_type(path.landing, rimfall.Moment | None)
assert_type([event.time_s for event in path.events], list[float])
with rimfall.speaking("de"):
    assert_type(rimfall.open_scene("same-lob").title, str)
for values, varied in rimfall.vary(scene, {"habitat.spin_rpm": [1, 3]}):
    rimfall.export(varied, f"{values['habitat.spin_rpm']}.csv", fps=25)


def surfaces_keep_theirs(drum: surfaces.Drum, plane: surfaces.Plane, tube: surfaces.Tube) -> list[protocols.Surface]:
    """What bodies meet."""
    return [drum, plane, tube]


def charts_keep_theirs(
    round_: coordinates.RoundChart, floor: coordinates.FloorChart, table: coordinates.BenchChart
) -> list[protocols.Chart]:
    """Places on the grounds of habitats."""
    return [round_, floor, table]


def laws_keep_theirs(line: pendulum.Hung, rolls: rolling.Rolling, stands: rolling.Standing) -> list[protocols.Law]:
    """What holds a body."""
    return [line, rolls, stands]


def steppers_keep_theirs(
    windows: windowed.WindowStepper, implicit: stiff.StiffStepper, coaster: integrate.Coaster
) -> list[protocols.Stepper]:
    """What takes bodies through the air."""
    return [windows, implicit, coaster]
