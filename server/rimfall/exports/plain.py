"""A file's contents as JSON, in the design's own axes and metres: x out through the reference line, y spinward, z along the spin.

`position_m`, `velocity_m_s` and `acceleration_m_s2` are of the view that the notes name: in the turning frame, or in the one
that does not turn. Lists have one entry a sample; those of drops one a sample and drop. `motions` holds what came of each:
events with exact states, landing, words. The `motion` of a ball, drop, stream or path is its place in the scene's list.
"""

from dataclasses import replace
from functools import partial

from ..language import tr
from ..scene.answers import outcome
from ..scene.json_arrays import as_lists, with_arrays
from . import axes
from .scene_sampling import sample_scene

VERSION = 1


def document(trace, options):
    """The JSON file as bytes."""
    options = replace(options, up="Z")
    sampled = sample_scene(trace, options, axes.DESIGN)
    file = sampled.notes["file"] | {
        "axes": tr("x out through the reference line, y spinward there, z along the spin vector"),
        "origin": tr("on the axis of spin, at the middle of the habitat"),
        "up": None,
    }
    content = {
        "rimfall_export": VERSION,
        **sampled.notes,
        "file": file,
        "frame": sampled.frame,
        "time_s": sampled.time_s,
        "angle_rad": sampled.angle_rad,
        "spin_rad_s": sampled.spin_rad_s,
        "attitude_wxyz": None if sampled.attitude is None else sampled.attitude(sampled.time_s),
        "motions": [
            {"name": t.motion.name, "kind": t.motion.kind, "end": t.track.end, **outcome(t, trace)}
            for t in trace.motions
            if t.motion.name in options.motions
        ],
        "balls": [_ball(b, sampled.time_s) for b in sampled.balls],
        "drops": None if sampled.drops is None else _drops(sampled.drops),
        "streams": [
            {"name": s.name, "motion": s.motion, "position_m": s.position_m, "width_m": s.width_m}
            for s in sampled.streams
        ],
        "paths": [{"name": p.name, "motion": p.motion, "position_m": p.position_m} for p in sampled.lines],
    }
    return with_arrays(content, partial(as_lists, inf_nan_mode="constants"), inf_nan_mode="constants")


def _ball(ball, time_s):
    return {
        "id": ball.id,
        "name": ball.name,
        "motion": ball.motion,
        "radius_m": ball.radius_m,
        **_moving(ball),
        "attitude_wxyz": None if ball.attitude is None else partial(ball.attitude, time_s),
    }


def _drops(drops):
    return {
        "ids": drops.ids,
        "motion": drops.motion,
        "diameter_m": drops.diameter_m,
        **_moving(drops),
    }


def _moving(things):
    return {
        "alive": things.alive.astype(int),
        "position_m": things.position_m,
        "velocity_m_s": things.velocity_m_s,
        "acceleration_m_s2": things.acceleration_m_s2,
    }
