"""What every file says of itself: program, frames, unit, axes, view, bodies, events, caution, and the scene document it came from."""

import json

import numpy as np

from .. import __version__
from ..language import tr, tr_later, written
from ..phrases import caution
from . import axes
from .bounds import GREATEST_ROWS, GREATEST_SAMPLES, too_long, too_many
from .options import ALIVE, INERTIAL, INERTIAL_FLAT, ROTATING, choices_of
from .sampled_scene import FlyingDrops
from .tables import bodies_of, events_of

MOST_NODES = 500  # drops that glTF keeps as nodes of their own; more are the points of one mesh
ALIVE_IS = tr_later(
    "1 while the body is in the scene: from its release; a drop of a pour from its birth until it lands"
)
ROWS_ARE = {
    ALIVE: tr_later("rows of a table: only while the body is in the scene"),
    "all": tr_later(
        "rows of a table: every body at every frame; before its release or birth it waits, after its end it lies there"
    ),
}
TURNING_IS = {
    "quaternion": tr_later(
        "qw, qx, qy, qz: a unit quaternion that turns a body from the file's axes; 1, 0, 0, 0 of what does not turn, and of drops"
    ),
}
NO_ROWS = {
    "nothing": tr_later("The table has no rows, since nothing that was taken moves."),
    "stream": tr_later(
        "The table has no rows: the pour stays an unbroken stream, of which no part is a body. Its curve is in glTF, OpenUSD and JSON."
    ),
    "late": tr_later("The table has no rows, since nothing is in the scene between its first and its last frame."),
}
_VIEWS = {
    ROTATING: tr_later("turning with the deck: the habitat stands still"),
    INERTIAL: tr_later(
        "not turning: one node carries everything aboard and turns; a table, which has none, holds places in the still room"
    ),
    INERTIAL_FLAT: tr_later(
        "not turning: positions and velocities are those of the room that stands still; only the hull's node turns"
    ),
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
        "says": _says(trace, sampled),
        "empty": empty(sampled),
        "refused": refused(sampled),
        "events": events_of(trace, sampled),
        "ids": bodies_of(trace, sampled),
        "caution": caution(),
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
        "view_is": tr(_VIEWS[options.view]),
        "axes": described,
        "origin": origin,
        "spin_axis": axis_name(sampled.axis),
        "pivot": (sampled.pivot_m * sampled.per_unit).tolist(),
        "pace": sampled.clock.steady_pace,
        "retimed_s": None if options.retime is None else sampled.time_s[:: options.samples_per_frame].tolist(),
        "star_drift_deg_per_frame": _drift_deg(sampled, 0),
        "star_drift_deg_per_frame_last": _drift_deg(sampled, -1),
        "alive": tr(ALIVE_IS),
        "rows": tr(ROWS_ARE[options.rows]),
        "turning": None if options.turning == "none" else tr(TURNING_IS[options.turning]),
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
        "csv_rows": _rows(sampled),
    }


def _rows(sampled):
    """Rows of a table of it."""
    drops = 0 if sampled.drops is None else len(sampled.drops.ids)
    if sampled.options.rows != ALIVE:
        return (len(sampled.balls) + drops) * len(sampled.frame)
    flying = 0
    if drops:
        flying = (
            len(sampled.drops.sample) if isinstance(sampled.drops, FlyingDrops) else int(np.sum(sampled.drops.alive))
        )
    return flying + sum(int(np.sum(b.alive)) for b in sampled.balls)


def empty(sampled):
    """Why a table of it has no rows; None where it has some."""
    if _rows(sampled):
        return None
    if sampled.balls or sampled.drops is not None:
        return tr(NO_ROWS["late"])
    return tr(NO_ROWS["stream" if sampled.streams else "nothing"])


def refused(sampled):
    """Formats -> why they would be refused for what is in the file, so that a page can say so before anything is saved."""
    rows, elements = _rows(sampled), len(sampled.balls) + (0 if sampled.drops is None else len(sampled.drops.ids))
    samples = elements * len(sampled.frame)
    out = dict.fromkeys(("csv", "csv-frames"), too_long(rows)) if rows > GREATEST_ROWS else {}
    if samples > GREATEST_SAMPLES:
        out |= dict.fromkeys(("json", "glb", "usda", "usdc", "usdz"), too_many(samples))
    return out


def _says(trace, sampled):
    """Sentences on what the choices mean for whoever opens the file."""
    fps, options = float(sampled.options.shown_fps), sampled.options
    zero = (
        tr("Frame {frame} is time 0.", frame=written(options.first_frame))
        if options.retime is None
        else tr("Time goes by the retime curve.")
    )
    set_rate = tr("Set the other program's frame rate to {rate} before bringing a file in.", rate=written(fps, "g"))
    says = [f"{zero} {set_rate}"]
    if sampled.time_s[0] < 0:
        says.append(tr("Before time 0 everything is as at time 0, at rest aboard: in the hand that lets it go."))
    pace = sampled.clock.steady_pace
    if pace not in (None, 1.0):
        says.append(_paced(pace, written(float(options.fps), "g"), written(fps, "g")))
    if sampled.drops is not None and len(sampled.drops.ids) > MOST_NODES:
        says.append(
            tr(
                "glTF is not made for {count} drops: there they are one cloud of points, all of one size, which show where they wait to be "
                "born and where they landed, too; OpenUSD holds each with its own size and velocity, and .usdc in a third of the room of "
                ".usda.",
                count=written(len(sampled.drops.ids), ","),
            )
        )
    if options.up == "Z" or options.unit == "cm":
        says.append(
            tr(
                "glTF is in metres with Y up whatever is asked, as its standard says; OpenUSD and tables do as they are asked."
            )
        )
    if np.any(sampled.anchor_m):
        says.append(
            tr(
                "The scene is over 1 km across: things hang under a node at the first release, so that no digits are lost."
            )
        )
    return says


def _paced(pace, shot, shown):
    """How time runs in what is shown, at a pace that is not 1."""
    if pace < 1:
        return tr(
            "Shot at {shot} and shown at {shown} frames per second, it runs {times} times slower than it happens.",
            shot=shot,
            shown=shown,
            times=written(1 / pace, "g"),
        )
    return tr(
        "Shot at {shot} and shown at {shown} frames per second, it runs {times} times faster than it happens.",
        shot=shot,
        shown=shown,
        times=written(pace, "g"),
    )
