"""Which way a thing has turned, as orientation samples."""

import numpy as np

from ...errors import TooMuch, refusal
from ...language import tr, written
from .layer import changing

QUARTER_RAD = np.pi / 2
GREATEST_TURNS = 500_000  # orientations of one body in a file
SOON_S = 1e-5  # over which a rate of turning is read: right up to 300,000 rad/s


def orientations(frame, time_s, attitude, name, kind="quatf"):
    """Samples at frames (T,), which are times (T,) of the scene, and between them where it turns by more than a quarter from one to the next;
    attitude: times (n,) -> unit quaternions (n, 4), w first; name: of the thing; kind: of quaternion."""
    rate = _rates(attitude, time_s)
    between = np.maximum(rate[1:], rate[:-1]) * np.diff(time_s) / QUARTER_RAD
    counts = np.maximum(np.ceil(1.02 * between).astype(int), 1)
    if counts.sum() > GREATEST_TURNS:
        _refuse(name, int(counts.sum()))
    starts = np.repeat(np.arange(len(counts)), counts)
    share = (np.arange(len(starts)) - np.repeat(np.cumsum(counts) - counts, counts)) / np.repeat(counts, counts)
    at, times_s = (np.append(v[:-1][starts] + share * np.diff(v)[starts], v[-1]) for v in (frame, time_s))
    return changing("xformOp:orient", kind, at, continuous(attitude(times_s)))


def _refuse(name, turns):
    most = written(GREATEST_TURNS, ",")
    say = tr(
        "{name} spins so fast that the file would hold {turns} of its orientations; it may hold {most}. "
        "Take a shorter part of the scene (to_s), or let it spin slower.",
        name=name,
        turns=written(turns, ","),
        most=most,
    )
    raise TooMuch(refusal("motions", name, tr("within {most} orientations", most=most), say))


def _rates(attitude, time_s):
    """How fast something turns at times (n,), rad/s, from its unit quaternions a moment apart: their chord is 2 sin(angle/4)."""
    both = attitude(np.stack([time_s - SOON_S / 2, time_s + SOON_S / 2], axis=1).ravel())
    chord = np.linalg.norm(np.diff(continuous(both), axis=0)[::2], axis=1)
    return 4 * np.arcsin(np.minimum(chord / 2, 1.0)) / SOON_S


def continuous(turns):
    """Unit quaternions (n, 4) with signs such that each is the nearer of the two that mean the same to the one before."""
    dots = np.sum(turns[1:] * turns[:-1], axis=1)
    signs = np.cumprod(np.where(dots < 0, -1.0, 1.0))
    return turns * np.concatenate([[1.0], signs])[:, None]
