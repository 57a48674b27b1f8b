"""Paths as a table: a row a frame and body, in the rotating view, in file axes; and its companion of names and conventions.

File axes (shared by all file formats): X spinward, Y up, Z along the spin vector, all at the reference line, that is
(X, Y, Z) = (y, -x, z) of the rotating frame: the deck under the reference line is at Y = -R. RFC 4180 without quotes:
every column is a number, integers in frame, id and alive, six places in the others.
"""

import json
from math import ceil

import numpy as np

from .. import __version__
from ..errors import TooMuch, refusal
from ..motions.track import states

HEADER = "frame,time_s,id,alive,x_m,y_m,z_m,vx_m_s,vy_m_s,vz_m_s"
FIRST_FRAME = 1001
GREATEST_ROWS = 500_000


def table(trace):
    """The CSV file as bytes. Raises TooMuch past 500,000 rows."""
    bodies = _bodies(trace)
    frames, times = _frames(trace)
    _weigh(bodies, len(frames))
    columns = [_rows(trace, body, times) for body in bodies]
    lines = [HEADER]
    for k, (frame, time_s) in enumerate(zip(frames, times, strict=True)):
        for number, (alive, place, velocity) in enumerate(columns):
            figures = ",".join([f"{v:.6f}" for v in (*place[k], *velocity[k])])
            lines.append(f"{frame},{time_s:.6f},{number},{alive[k]:d},{figures}")
    return ("\n".join(lines) + "\n").encode()


def notes(trace):
    """The companion of the CSV: what its columns and ids mean, and the scene they came from, as JSON bytes."""
    fps = trace.setting.rate / trace.samples_per_frame
    frames, _ = _frames(trace)
    return json.dumps(
        {
            "program": f"Rimfall {__version__}",
            "title": trace.scene.title,
            "file": {
                "fps": [fps.numerator, fps.denominator],
                "first_frame": FIRST_FRAME,
                "frame_count": len(frames),
                "unit": "m",
                "up": "Y",
                "view": "rotating",
                "axes": "X spinward, Y up, Z along the spin vector, at the reference line",
                "origin": "on the axis of spin, at the middle of the habitat",
                "alive": "1 while the body is in the scene: from its release; a drop of a pour from its birth until it lands",
            },
            "ids": [
                {"id": i, "name": b["name"], "motion": b["traced"].motion.name, "born_s": b["born_s"]}
                for i, b in enumerate(_bodies(trace))
            ],
            "caution": "For stories, pictures and teaching. A real rotor, platform or tether is designed under local codes by licensed people.",
            "scene": trace.scene.model_dump(mode="json"),
        },
        indent=1,
    ).encode()


def _frames(trace):
    """Frame numbers and times (n,): to the first frame at or after the last event."""
    fps = trace.setting.rate / trace.samples_per_frame
    count = ceil(_last_s(trace) * float(fps) - 1e-9) + 1
    return np.arange(FIRST_FRAME, FIRST_FRAME + count), np.arange(count) * float(fps.denominator) / float(fps.numerator)


def _last_s(trace):
    """When the last event of the file is: the companions are in none."""
    last_s = max((t.ends_s for t in trace.motions if t.track.path is not None), default=0.0)
    return last_s if trace.setting.duration_s is None else min(last_s, trace.setting.duration_s)


def _bodies(trace):
    """Every body of the scene in order of birth: a motion's own, or the drops of a pour. A stream is a curve, not a body."""
    bodies = []
    for traced in trace.motions:
        if traced.track.path is not None:
            bodies += (
                _drops(traced)
                if traced.plan.stream is not None
                else [_body(traced, traced.motion.name, 0.0, traced.plan.start_s, None)]
            )
    return sorted(bodies, key=lambda b: b["born_s"])


def _body(traced, name, late_s, born_s, dies_s):
    return {"traced": traced, "name": name, "late_s": late_s, "born_s": born_s, "dies_s": dies_s}


def _drops(traced):
    stream = traced.plan.stream
    if stream.drop_interval_s is None:
        return []
    count = int((stream.last_leaves_s - stream.first_leaves_s) / stream.drop_interval_s) + 1
    if count > GREATEST_ROWS:
        _refuse(traced.motion.name, count)
    born_s = stream.first_leaves_s if stream.breakup_s is None else stream.breakup_s
    if stream.regime == "stream" and stream.breakup_s is None:
        return []
    name, end_s = traced.motion.name, traced.track.ends_s
    late = [n * stream.drop_interval_s for n in range(count)]
    return [_body(traced, f"{name} {n:05d}", t, born_s + t, end_s + t) for n, t in enumerate(late)]


def _weigh(bodies, frames):
    if len(bodies) * frames > GREATEST_ROWS:
        drops = [b["traced"].motion.name for b in bodies]
        _refuse(max(set(drops), key=drops.count), len(bodies) * frames)


def _refuse(name, rows):
    say = f"The table would have {rows:,} rows, most of them of motion {name}; it may have {GREATEST_ROWS:,}. Pour for less time, or end sooner."
    raise TooMuch(refusal("motions", name, f"within {GREATEST_ROWS:,} rows", say))


def _rows(trace, body, times):
    """alive (n,), position and velocity (n, 3) in file axes, of one body at times (n,)."""
    traced = body["traced"]
    path = traced.track.path
    waits_s = body["born_s"] - body["late_s"]
    local = np.clip(times - body["late_s"], waits_s, path.end_s)
    state = states(trace.setting, path, traced.plan, local)
    flies = (times >= body["born_s"]) & (times - body["late_s"] <= path.end_s)
    alive = (times >= body["born_s"]) & (times <= (np.inf if body["dies_s"] is None else body["dies_s"]))
    velocity = np.where(flies[:, None], state.rotating_velocity_m_s, 0.0)
    return alive, _file_axes(state.rotating_m), _file_axes(velocity)


def _file_axes(vectors):
    """(x, y, z) of the frame -> (X, Y, Z) = (y, -x, z), with no negative zeros once rounded."""
    return np.round(np.stack([vectors[:, 1], -vectors[:, 0], vectors[:, 2]], axis=1), 6) + 0.0
