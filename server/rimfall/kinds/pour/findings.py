"""What a pour tells beside the first parcel's path: what a cup catches, where it should have stood, and the drops' own paths."""

import numpy as np

from ...physics import free_surface, liquids
from .target import holds, weightless

_ML_M3 = 1e-6
_AGES = 24  # places along each followed parcel of the stream
_OF_CUPS = (
    "poured_ml",
    "caught",
    "caught_ml",
    "spilled_ml",
    "overflows_ml",
    "first_caught_s",
    "move_m",
    "level_m",
    "level_tilt_deg",
)


def findings(setting, plan, track, *, flow, cup, arrived):
    """Findings of a pour. Of its cup, each None without one: `caught`, a share of all that is poured, and in millilitres
    `caught_ml` and `spilled_ml` (what is neither is under way when the scene ends, or clings to the lip); `overflows_ml`, a part of
    what is spilled; `first_caught_s`; `move_m` [spinward, axial] to where the middle of the pour comes down to the rim's height;
    `level_m` and `level_tilt_deg`, of what is caught, at rest. `drops` and `thread` (`_drops`, `_thread`): None where every parcel
    follows the first one's path."""
    batch = plan.stream.batch
    found = dict.fromkeys(_OF_CUPS)
    if cup is not None:
        volume_m3, settled = _followers(setting, flow, track, arrived) if batch is None else _own(batch)
        found |= _of_cup(setting, cup, arrived, flow.poured_m3, volume_m3, settled)
    return found | {
        "drops": None if batch is None else _drops(setting, batch, arrived),
        "thread": None if batch is None else _thread(setting, flow, batch.threads),
    }


def _own(batch):
    """Volume (N,) of parcels that go their own ways, and the share of each that has ended."""
    return batch.volume_m3, np.where(batch.met, 1.0, 0.0)


def _followers(setting, flow, track, arrived):
    """The same where all follow the first: one parcel of all that is poured, some of it perhaps after the scene's end."""
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
        "move_m": _move(arrived, volume_m3),
        **_level(setting, cup, stays, tilt, last_s),
    }


def _move(arrived, volume_m3):
    """Where the middle of the pour passes the rim's height, from the cup; None where nothing comes down to it."""
    passes = np.isfinite(arrived.passes_s)
    if not np.any(volume_m3[passes]):
        return None
    return np.average(arrived.beside_m[passes], axis=0, weights=volume_m3[passes]).tolist()


def _level(setting, cup, volume_m3, tilt, time_s):
    """Level at the cup's axis and tilt of what it holds; None where it is empty or nothing is felt."""
    if volume_m3 == 0 or weightless(setting, cup, time_s):
        return {"level_m": None, "level_tilt_deg": None}
    level = free_surface.level_m(volume_m3, cup.diameter_m / 2, tilt)
    return {"level_m": level, "level_tilt_deg": float(np.degrees(tilt))}


def _drops(setting, batch, arrived):
    """The drops in order of birth: born_s, ends_s, diameter_m, caught (0 or 1), and their samples on the scene's grid: the number
    of the first, how many, and all their positions in the turning frame, one drop after another."""
    drops = batch.drops
    first, count = batch.span(setting.rate)
    return {
        "born_s": batch.born_s[drops],
        "ends_s": batch.ends_s[drops],
        "diameter_m": batch.diameter_m[drops],
        "caught": np.zeros(len(drops)) if arrived is None else arrived.caught[drops].astype(float),
        "first": first,
        "count": count,
        "rotating_m": batch.samples(setting),
    }


def _thread(setting, flow, threads):
    """The stream, by parcels that left one after another: leaves_s (K,); whole_s (K,), how long each is whole; flows (K,), 1 where a
    stream left then and 0 where the lip dripped; rotating_m (K, A, 3) and diameter_m (K, A) at A even ages, 0 to whole_s."""
    count = len(threads.leaves_s)
    body = np.repeat(np.arange(count), _AGES)
    times = (threads.leaves_s[:, None] + threads.whole_s[:, None] * np.linspace(0.0, 1.0, _AGES)).ravel()
    position, velocity, _ = threads.paths.turning(setting.habitat.spin, body, times)
    leaves = np.maximum(threads.speed_m_s, 1e-9)[body]
    width = liquids.thinned_m(flow.lip_m, leaves, np.linalg.norm(velocity, axis=1)) * threads.streams[body]
    return {
        "leaves_s": threads.leaves_s,
        "whole_s": threads.whole_s,
        "flows": threads.streams.astype(float),
        "rotating_m": position.reshape(count, _AGES, 3),
        "diameter_m": width.reshape(count, _AGES),
    }
