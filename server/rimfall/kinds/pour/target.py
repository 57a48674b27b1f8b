"""A cup to pour into: which parcels come down through its opening, what it holds of them, and where it should have stood.

The opening is a flat round one, level across the local directions of its own place. A parcel is caught where its centre passes
down through it; what the cup's wall does to a parcel is left out. A cup whose foot is well over the ground stands on a table, and what
misses it by less than the table reaches ends there. `findings` is all that a pour tells beside its first parcel's path.
"""

from dataclasses import dataclass, replace

import numpy as np

from ...motions import drift
from ...motions.ways import Ways
from ...physics import free_surface

LEAST_TABLE_M = 0.25  # how high over the ground a cup's foot is from which on it stands on a table
HALF_TABLE_M, WIDER = (
    0.34,
    1.6,
)  # half the side of its square table, under its middle; that of a wide basin, in its radii
_NEWTON_STEPS = 3


@dataclass(frozen=True)
class Cup:
    """What is poured into, in the turning frame: middle_m (3,) of its opening, axes (3, 3) there (spinward, up, axial); its place."""

    middle_m: np.ndarray
    axes: np.ndarray
    place: tuple
    diameter_m: float
    depth_m: float
    floor: int


@dataclass(frozen=True)
class Arrivals:
    """How N parcels come down to the height of a cup's rim: passes_s (N,), nan for those that do not; beside_m (N, 2): how far
    along and across from the cup they pass, as places count it; off_m (N, 2): how far spinward and across there; caught_s (N,): when
    they pass its opening, nan for those that miss it."""

    passes_s: np.ndarray
    beside_m: np.ndarray
    off_m: np.ndarray
    caught_s: np.ndarray

    @property
    def caught(self):
        """Whether (N,) each is caught."""
        return np.isfinite(self.caught_s)


def none_of(count):
    """Arrivals of as many parcels that never come down to the rim's height."""
    nowhere = np.full((count, 2), np.nan)
    return Arrivals(np.full(count, np.nan), nowhere, nowhere, np.full(count, np.nan))


def cup_of(setting, motion):
    """The Cup of a `pour` of the scene document, or None."""
    target = motion.target
    if target is None:
        return None
    chart, place = setting.habitat.chart(motion.place.floor), (target.along_m, target.height_m, target.axial_m)
    middle = chart.position(np.array(place))
    return Cup(middle, chart.axes_at(place), place, target.diameter_m, target.depth_m, motion.place.floor)


def arrivals(setting, cup, trajectories):
    """Arrivals of the parcels of a TrajectoryBatch at a Cup."""
    chart, spin = setting.habitat.chart(cup.floor), setting.habitat.spin
    passes_s = trajectories.first_fall_s(chart.level(cup.place[1]), spin)
    body = np.flatnonzero(np.isfinite(passes_s))
    beside_m, off_m = np.full((2, len(passes_s), 2), np.nan)
    caught_s = np.full(len(passes_s), np.nan)
    if len(body):
        position = trajectories.moving(spin, body, passes_s[body])[0]
        beside_m[body] = _beside(chart, cup, position)
        off_m[body] = _off(chart, cup, position, beside_m[body])
        near = body[np.linalg.norm(position - cup.middle_m, axis=1) < cup.diameter_m]
        caught_s[near] = _through(spin, cup, trajectories, near, passes_s[near])
    return Arrivals(passes_s, beside_m, off_m, caught_s)


def table_of(setting, cup):
    """The top of the table that a Cup stands on, a surface named "table"; None where it stands on the ground or near it."""
    foot_m = cup.place[1] - cup.depth_m
    if foot_m - setting.habitat.ground_height_m(cup.place[2]) < LEAST_TABLE_M:
        return None
    return replace(setting.habitat.chart(cup.floor).level(foot_m), name="table")


def half_table_m(cup):
    """Half the side of a Cup's table, metres."""
    return max(HALF_TABLE_M, WIDER * cup.diameter_m / 2)


def on_table(setting, cup, trajectories):
    """When (N,) the parcels of a TrajectoryBatch come down on the table of a Cup, nan for those that do not."""
    table, spin = table_of(setting, cup), setting.habitat.spin
    if table is None:
        return np.full(len(trajectories.begin_s), np.nan)
    time_s = trajectories.first_fall_s(table, spin)
    body = np.flatnonzero(np.isfinite(time_s))
    aside = (trajectories.moving(spin, body, time_s[body])[0] - cup.middle_m) @ cup.axes[[0, 2]].T
    time_s[body[np.any(np.abs(aside) > half_table_m(cup), axis=1)]] = np.nan
    return time_s


def level_under(setting, cup, height_m):
    """The surface of a cup's rim or its table's top at a height, as the ground of what would come down to it."""
    return replace(setting.habitat.chart(cup.floor).level(height_m), name=setting.habitat.ground(cup.floor).name)


def comes_down(setting, plan, track, flown):
    """Of a first parcel that ends in a cup or on its table: when, how far from the lip (`Ways`), and the parts of that drift, as of a
    landing there; None where it ends elsewhere. flown: the Start of it with nothing but that level to meet."""
    last = track.events[-1]
    if flown is None or last.kind not in ("target", "table"):
        return None
    ways = Ways(setting.habitat, plan)
    as_landed = replace(track, landing=last, events=[track.events[0], last])
    parts, none = drift.parts(setting, replace(plan, course=flown), as_landed, ways)
    return {
        "on": last.kind,
        "time_s": last.time_s,
        "height_m": last.height_m,
        "way": ways.of([last])[0].as_data(),
        "drift_parts_m": parts,
        "drift_parts_none": none,
    }


def _off(chart, cup, position, beside_m):
    """How far (n, 2) from the cup's middle positions (n, 3) at its rim's height are: spinward and across, round the axis at their own
    radius, else straight."""
    if not chart.bends:
        return (position - cup.middle_m) @ cup.axes[[0, 2]].T
    return beside_m * np.stack([np.hypot(*position[:, :2].T) / chart.radius_m, np.ones(len(position))], axis=1)


def _beside(chart, cup, position):
    """How far along and across from the cup positions (n, 3) are, as places count it (n, 2)."""
    if not chart.winds:
        return np.stack([chart.along(position) - cup.place[0], chart.axial(position) - cup.place[2]], axis=1)
    radius = chart.radius_m
    turned = np.arctan2(position[:, 1], position[:, 0]) - cup.place[0] / radius
    return np.stack([radius * ((turned + np.pi) % (2 * np.pi) - np.pi), chart.axial(position) - cup.place[2]], axis=1)


def _through(spin, cup, trajectories, body, time_s):
    """When bodies (n,) that are near the opening at time_s (n,) pass down through its plane inside it, or nan (Newton)."""
    for _ in range(_NEWTON_STEPS):
        position, velocity = trajectories.moving(spin, body, time_s)
        rate = velocity @ cup.axes[1]
        time_s = time_s - ((position - cup.middle_m) @ cup.axes[1]) / np.where(rate < 0, rate, -np.inf)
    inside = (time_s >= trajectories.begin_s[body]) & (time_s <= trajectories.end_s[body]) & (rate < 0)
    within = np.linalg.norm((position - cup.middle_m) @ cup.axes[[0, 2]].T, axis=1) <= cup.diameter_m / 2
    return np.where(inside & within, time_s, np.nan)


def holds(setting, cup, time_s):
    """Most that a cup holds at rest at time_s, m3, and the tilt of a surface at rest in it from its own level, rad."""
    felt = free_surface.apparent_m_s2(setting.omega_rad_s(time_s), setting.habitat.pull_m_s2, cup.middle_m)
    tilt = float(free_surface.tilt_rad(felt, cup.axes[1]))
    return free_surface.brim_m3(cup.depth_m, cup.diameter_m / 2, tilt), tilt


def weightless(setting, cup, time_s):
    """Whether nothing is felt at the cup at time_s: what is in it has no surface."""
    felt = free_surface.apparent_m_s2(setting.omega_rad_s(time_s), setting.habitat.pull_m_s2, cup.middle_m)
    return not np.any(felt)


_ML_M3 = 1e-6
_OF_CUPS = (
    "poured_ml",
    "caught",
    "caught_ml",
    "spilled_ml",
    "overflows_ml",
    "first_caught_s",
    "move_m",
    "off_m",
    "level_m",
    "level_tilt_deg",
    "comes_down",
    "table",
)


def findings(setting, plan, track, *, flow, cup, arrived, flown):
    """Findings of a pour. Of its cup, each None without one: `caught`, a share of all that is poured, and in millilitres
    `caught_ml` and `spilled_ml` (what is neither is under way when the scene ends, or clings to the lip); `overflows_ml`, a part of
    what is spilled; `first_caught_s`; `off_m` [spinward, across], how far off the middle of the pour comes down to the rim's height;
    `move_m` [along, across], the same as places count it, for a cup that is to be moved there;
    `level_m` and `level_tilt_deg`, of what is caught, at rest; `comes_down`, that function's; `table`, that it stands on. `drops` and `thread`
    (`Batch.findings`, `Threads.findings`): None where every parcel follows the first one's path; so `lands_m`: [spinward, across] from
    the lip of the `first`, the `last` and the `middle` of what comes down on the ground."""
    batch = plan.stream.batch
    of_cup = dict.fromkeys(_OF_CUPS)
    if cup is not None:
        parcels = (
            _followers(setting, flow, track, arrived) if batch is None else (batch.volume_m3, batch.met.astype(float))
        )
        of_cup |= _of_cup(setting, cup, arrived, flow.poured_m3, *parcels)
        of_cup["comes_down"] = comes_down(setting, plan, track, flown)
        if table_of(setting, cup) is not None:
            of_cup["table"] = {"height_m": cup.place[1] - cup.depth_m, "half_m": half_table_m(cup)}
    return of_cup | {
        "lands_m": None if batch is None else _lands(setting, plan, batch),
        "drops": None if batch is None else batch.findings(setting, arrived),
        "thread": None if batch is None else batch.threads.findings(setting, flow),
    }


def _lands(setting, plan, batch):
    """Where the first and the last parcel and the middle of all that come down on the ground do, by the nearest way; None for none."""
    parcels, at = batch.landings(setting, plan.floor)
    if not len(parcels):
        return None
    chart, ways = setting.habitat.chart(plan.floor), Ways(setting.habitat, plan)
    start = chart.position(plan.place)
    along_m = setting.habitat.radius_m * np.arctan2(
        start[0] * at[:, 1] - start[1] * at[:, 0], start[0] * at[:, 0] + start[1] * at[:, 1]
    )
    off_m = np.array([[w.spinward_m, w.axial_m] for w in ways.at(plan.place, along_m, at, 0.0)])
    middle = np.average(off_m, axis=0, weights=batch.volume_m3[parcels])
    return {"first": off_m[0].tolist(), "last": off_m[-1].tolist(), "middle": middle.tolist()}


def _followers(setting, flow, track, arrived):
    """Volume (1,) of a pour whose parcels all follow the first, as one, and the share (1,) that has ended: some of it perhaps ends after
    the scene does."""
    ends_s = float(arrived.caught_s[0]) if arrived.caught[0] else track.ends_s
    met = arrived.caught[0] or any(e.surface is not None for e in track.events)
    if not met:
        return np.array([flow.poured_m3]), np.zeros(1)
    until_s = np.inf if setting.duration_s is None else setting.duration_s
    return np.array([flow.poured_m3]), np.array([np.clip((until_s - ends_s) / flow.lasts_s, 0.0, 1.0)])


def _of_cup(setting, cup, arrived, poured_m3, volume_m3, settled):
    reaches = float(np.sum((volume_m3 * settled)[arrived.caught]))
    missed = float(np.sum((volume_m3 * settled)[~arrived.caught]))
    last_s = float(np.max(arrived.caught_s[arrived.caught])) if np.any(arrived.caught) else 0.0
    brim, tilt = holds(setting, cup, last_s)
    stays = reaches if weightless(setting, cup, last_s) else min(reaches, brim)
    return {
        "poured_ml": poured_m3 / _ML_M3,
        "caught": stays / poured_m3,
        "caught_ml": stays / _ML_M3,
        "spilled_ml": (missed + reaches - stays) / _ML_M3,
        "overflows_ml": (reaches - stays) / _ML_M3,
        "first_caught_s": float(np.min(arrived.caught_s[arrived.caught])) if np.any(arrived.caught) else None,
        "move_m": _middle(arrived, arrived.beside_m, volume_m3),
        "off_m": _middle(arrived, arrived.off_m, volume_m3),
        **_level(setting, cup, stays, tilt, last_s),
    }


def _middle(arrived, from_the_cup_m, volume_m3):
    """Where the middle of the pour passes the rim's height, of distances (N, 2) from the cup; None where nothing comes down to it."""
    passes = np.isfinite(arrived.passes_s)
    if not np.any(volume_m3[passes]):
        return None
    return np.average(from_the_cup_m[passes], axis=0, weights=volume_m3[passes]).tolist()


def _level(setting, cup, volume_m3, tilt, time_s):
    """Level at the cup's axis and tilt of what it holds; None where it is empty or nothing is felt."""
    if volume_m3 == 0 or weightless(setting, cup, time_s):
        return {"level_m": None, "level_tilt_deg": None}
    level = free_surface.level_m(volume_m3, cup.diameter_m / 2, tilt)
    return {"level_m": level, "level_tilt_deg": float(np.degrees(tilt))}
