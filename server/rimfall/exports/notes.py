"""What every file says of itself: program, frames, unit, axes, view, ids, caution, and the scene document it came from."""

import json

import numpy as np

from .. import __version__
from ..phrases import CAUTION
from . import axes
from .options import INERTIAL, INERTIAL_FLAT, ROTATING, choices_of
from .path_sampling import births_s

MOST_NODES = 500  # drops that glTF keeps as nodes of their own; more are the points of one mesh
ALIVE = "1 while the body is in the scene: from its release; a drop of a pour from its birth until it lands"
_VIEWS = {
    ROTATING: "turning with the deck: the habitat stands still",
    INERTIAL: "not turning: one node carries everything aboard and turns; a table, which has none, holds places in the still room",
    INERTIAL_FLAT: "not turning: positions and velocities are those of the room that stands still; only the hull's node turns",
}
_LETTERS = "XYZ"


def notes_of(trace, sampled):
    """The notes of a SampledScene, whose own are not there yet. The scene is before the ids, which may be many: it is read back first."""
    return {
        "program": f"Rimfall {__version__}",
        "title": trace.scene.title,
        "file": _file(trace, sampled),
        "export": choices_of(sampled.options),
        "scene": trace.scene.model_dump(mode="json"),
        "counts": counts(sampled),
        "says": _says(sampled),
        "ids": _ids(trace, sampled),
        "caution": CAUTION,
    }


def as_json(notes):
    """Notes as a file's bytes."""
    return json.dumps(notes, indent=1, ensure_ascii=False).encode()


def _file(trace, sampled):
    options = sampled.options
    described, origin = axes.in_words(trace, options)
    whole = sampled.frame[:: options.samples_per_frame]
    return {
        "fps": _pair(options.fps),
        "shown_fps": _pair(options.shown_fps),
        "first_frame": options.first_frame,
        "start_frame": int(whole[0]),
        "end_frame": int(whole[-1]),
        "frame_count": len(whole),
        "samples_per_frame": options.samples_per_frame,
        "unit": options.unit,
        "up": options.up,
        "view": options.view,
        "view_is": _VIEWS[options.view],
        "axes": described,
        "origin": origin,
        "spin_axis": axis_name(sampled.axis),
        "pivot": (sampled.pivot_m * sampled.per_unit).tolist(),
        "pace": sampled.pace,
        "star_drift_deg_per_frame": _drift_deg(sampled, 0),
        "star_drift_deg_per_frame_last": _drift_deg(sampled, -1),
        "alive": ALIVE,
    }


def _pair(rate):
    return [rate.numerator, rate.denominator]


def axis_name(axis):
    """A direction (3,) along one of the axes as "+Z" or "-Y"."""
    k = int(np.argmax(np.abs(axis)))
    return ("+" if axis[k] > 0 else "-") + _LETTERS[k]


def _drift_deg(sampled, k):
    return float(np.degrees(sampled.spin_rad_s[k] / float(sampled.options.fps)))


def counts(sampled):
    """How much is in a SampledScene."""
    bodies = len(sampled.balls) + (0 if sampled.drops is None else len(sampled.drops.ids))
    return {
        "bodies": len(sampled.balls),
        "drops": bodies - len(sampled.balls),
        "streams": len(sampled.streams),
        "paths": len(sampled.lines),
        "samples": len(sampled.frame),
        "csv_rows": bodies * len(sampled.frame),
    }


def _says(sampled):
    """Sentences on what the choices mean for whoever opens the file."""
    fps, options = float(sampled.options.shown_fps), sampled.options
    says = [
        f"Frame {options.first_frame} is time 0. Set the other program's frame rate to {fps:g} before bringing a file in."
    ]
    if sampled.pace != 1.0:
        times = f"{1 / sampled.pace:g} times slower" if sampled.pace < 1 else f"{sampled.pace:g} times faster"
        says.append(
            f"Shot at {float(options.fps):g} and shown at {fps:g} frames per second, it runs {times} than it happens."
        )
    if sampled.drops is not None and len(sampled.drops.ids) > MOST_NODES:
        says.append(
            f"glTF is not made for {len(sampled.drops.ids):,} drops: there they are one cloud of points, all of one size, "
            "which show where they wait to be born and where they landed, too; "
            "OpenUSD holds each with its own size and velocity, and .usdc in a third of the room of .usda."
        )
    if options.up == "Z" or options.unit == "cm":
        says.append(
            "glTF is in metres with Y up whatever is asked, as its standard says; OpenUSD and tables do as they are asked."
        )
    if np.any(sampled.anchor_m):
        says.append(
            "The scene is over 1 km across: things hang under a node at the first release, so that no digits are lost."
        )
    return says


def _ids(trace, sampled):
    listed = [(b.id, b.name, b.motion, None) for b in sampled.balls]
    if sampled.drops is not None:
        numbers = dict.fromkeys(set(sampled.drops.motion.tolist()), 0)
        for number, name, motion in zip(
            sampled.drops.ids.tolist(), sampled.drops.names, sampled.drops.motion.tolist(), strict=True
        ):
            listed.append((number, name, motion, numbers[motion]))
            numbers[motion] += 1
    births = {i: births_s(t).tolist() for i, t in enumerate(trace.motions) if t.plan.stream is not None}
    return [_one(trace, births, *row) for row in sorted(listed)]


def _one(trace, births, number, element, place, drop):
    motion, plan = trace.motions[place].motion, trace.motions[place].plan
    name = motion.name if drop is None else f"{motion.name} {drop:05d}"
    born = plan.start_s if drop is None else births[place][drop]
    return {"id": number, "name": name, "element": element, "motion": motion.name, "born_s": born}
