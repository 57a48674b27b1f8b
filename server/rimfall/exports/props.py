"""What stands by the motions of a scene, and what moves with them: lip and jug of a pour, the cup it goes into and its table, the line of
what hangs, the floor of a lift; and what the moving things themselves look like. Turning frame, metres.

What the scene says is as it says: lips, openings, depths, lines, heights of people. What it does not (a jug's belly, a table's top, how
broad somebody is) is a usual size, for the eye alone.
"""

from dataclasses import dataclass

import numpy as np

from . import solids

POINT_RADIUS_M = 0.01  # how large a body without size is drawn
_BROAD = 0.13  # of a person's height: half the breadth of the shoulders
_JUG_M, _JUG_HIGH_M = 0.055, 0.2
_LINE_M = 0.004
_TOP_M, _LEG_M = 0.025, 0.03
_LIFT_M, _LIFT_THICK_M = 0.6, 0.05
CERAMIC, WOOD, METAL = "#C9C2AE", "#8A6F52", "#8A9290"


@dataclass(frozen=True)
class Prop:
    """name: what it is and its motion's name; material and colour ("#rrggbb"); solid: a `solids.Solid`, in the turning frame where it
    stands, else in axes of its own. position_m (T, 3) and rows (T, 3, 3) (local X, Y, Z) of one that moves; None of one that stands."""

    kind: str
    motion: int
    material: str
    colour: str
    solid: solids.Solid
    position_m: np.ndarray | None = None
    rows: np.ndarray | None = None


def is_person(traced):
    """Whether it is somebody on their feet who moves."""
    return traced.kind.page.stage.mover == "person"


def is_craft(traced):
    """Whether it is the craft itself that tumbles."""
    return "quaternion_wxyz" in traced.findings


def is_cup(traced):
    """Whether a cup is what moves."""
    return traced.kind.page.stage.mover == "cup" or getattr(traced.motion, "body", None) == "cup"


def solid_of(traced, rows, turns):
    """A moving body's Solid, about its centre, in the file's axes; rows (3, 3): the local directions where it starts; turns: whether it
    does."""
    diameter_m = traced.plan.body.diameter_m
    if is_person(traced):
        return solids.capsule(diameter_m, _BROAD * diameter_m)
    if is_cup(traced):
        return solids.cup(diameter_m, diameter_m).turned(rows, -diameter_m / 2 * rows[1])
    return solids.ball(diameter_m / 2 or POINT_RADIUS_M, turns)


def props_of(trace, taken, places):
    """The Props of motions taken, (number, Traced); places: number -> where (T, 3) its body is."""
    habitat, out = trace.setting.habitat, []
    for i, traced in taken:
        if traced.plan.stream is not None:
            out += _of_pour(habitat, i, traced)
        elif "pivot_rotating_m" in traced.findings:
            out.append(_line(i, traced, places[i]))
        elif traced.kind.page.stage.beside == "lift":
            out.append(_lift(habitat, i, traced, places[i]))
    return out


def _of_pour(habitat, i, traced):
    chart, place = habitat.chart(traced.plan.floor), np.array(traced.plan.place, dtype=float)
    lip, rows = chart.position(place), chart.axes_at(place)
    radius = traced.plan.stream.lip_m / 2
    wall = max(0.1 * radius, 0.0005)
    way = np.array(traced.plan.velocity, dtype=float)
    way = way / np.linalg.norm(way) if np.any(way) else np.array([0.0, -1.0, 0.0])
    ring = solids.ring(radius, radius + wall, -2 * wall, 0.0).turned(_rows_up(way) @ rows, lip)
    above_m = float(place[1] - habitat.ground_height_m(place[2]))
    level = np.array([way[0], 0.0, way[2]])
    back = -level / np.linalg.norm(level) if np.any(np.abs(level) > 1e-9) else np.array([-1.0, 0.0, 0.0])
    high = min(_JUG_HIGH_M, 0.8 * max(above_m, 0.02))
    belly = min(_JUG_M, 0.4 * high)
    middle = lip + (back * (belly + radius) - [0.0, high, 0.0]) @ rows
    jug = solids.cup(2 * belly, high, foot=0.8).turned(rows, middle)
    out = [Prop("lip", i, "metal", METAL, ring), Prop("jug", i, "ceramic", CERAMIC, jug)]
    return out + (_target(habitat, i, traced) if traced.motion.target is not None else [])


def _target(habitat, i, traced):
    """The cup that is poured into, and the table under it where it does not stand on the ground."""
    target = traced.motion.target
    chart, place = (
        habitat.chart(traced.plan.floor),
        np.array([target.along_m, target.height_m, target.axial_m], dtype=float),
    )
    rows, foot_m = chart.axes_at(place), target.height_m - target.depth_m
    foot = chart.position(place) - target.depth_m * rows[1]
    cup = solids.cup(target.diameter_m, target.depth_m).turned(rows, foot)
    out = [Prop("cup", i, "ceramic", CERAMIC, cup)]
    above_m, table = foot_m - float(habitat.ground_height_m(target.axial_m)), traced.findings.get("table")
    if table is not None:
        half = table["half_m"]
        parts = [
            solids.disc(half, -_TOP_M, 0.0),
            solids.disc(_LEG_M, -above_m, -_TOP_M),
            solids.disc(half / 2, -above_m, _TOP_M / 2 - above_m),
        ]
        out.append(Prop("table", i, "wood", WOOD, solids.joined(parts).turned(rows, foot)))
    return out


def _line(i, traced, bob):
    """From the pivot to the bob; its own Y is up along it."""
    pivot = np.asarray(traced.findings["pivot_rotating_m"], dtype=float)
    up = pivot - bob
    up = up / np.linalg.norm(up, axis=1)[:, None]
    line = solids.disc(_LINE_M, -float(traced.motion.length_m), 0.0)
    return Prop(
        "line", i, "metal", METAL, line, np.broadcast_to(pivot, bob.shape), np.array([_rows_up(one) for one in up])
    )


def _lift(habitat, i, traced, centre):
    """The floor that carries somebody."""
    rows = habitat.chart(traced.plan.floor).axes(centre)
    feet = centre - traced.plan.body.diameter_m / 2 * rows[:, 1]
    return Prop("floor", i, "metal", METAL, solids.disc(_LIFT_M, -_LIFT_THICK_M, 0.0), feet, rows)


def _rows_up(up):
    """Rows (3, 3) of a right-handed set whose second is the unit vector `up` (3,)."""
    spare = np.eye(3)[int(np.argmin(np.abs(up)))]
    across = np.cross(up, spare)
    across /= np.linalg.norm(across)
    return np.stack([across, up, np.cross(across, up)])
