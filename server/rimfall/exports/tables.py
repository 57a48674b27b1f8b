"""What the notes list: every body, with what it is and from when to when it is there; and every event, in seconds and in frames."""

import numpy as np

from ..physics import liquids
from .options import INERTIAL_FLAT
from .path_sampling import births_s, diameters_m, ends_s

_PLACES = 4  # of a frame number
_MOST_EVENTS = 2_000  # of one motion


def bodies_of(trace, sampled):
    """A dict a body, in order of ids: its name, and the file's element; its motion; born and ends, in seconds and frames; mass, diameter and
    drag ("sphere", or the constant coefficient on its own disc); and how its motion ended, where that is its own."""
    rows = {b.id: _body(trace.motions[b.motion], b.name) for b in sampled.balls}
    drops = sampled.drops
    if drops is not None:
        pours = {i: _drops_of(trace.motions[i]) for i in set(drops.motion.tolist())}
        for number, element, i in zip(drops.ids.tolist(), drops.names, drops.motion.tolist(), strict=True):
            rows[number] = next(pours[i])(element)
    for name in ("born", "ends"):
        frames = sampled.clock.frames_at([row[f"{name}_s"] for row in rows.values()])
        for row, frame in zip(rows.values(), np.round(frames, _PLACES).tolist(), strict=True):
            row[f"{name}_frame"] = frame
    return [{"id": number, **rows[number]} for number in sorted(rows)]


def _body(traced, element):
    plan, body = traced.plan, traced.plan.body
    constant = body.drag_coefficient
    return {
        "name": traced.motion.name,
        "element": element,
        "motion": traced.motion.name,
        "born_s": plan.start_s,
        "ends_s": traced.track.ends_s,
        "end": traced.track.end,
        "mass_kg": body.mass_kg,
        "diameter_m": body.diameter_m,
        "drag": body.drag if np.isnan(constant) else float(constant),
    }


def _drops_of(traced):
    """Functions of an element's name that give the row of each drop of a pour, in order of birth."""
    name, density = traced.motion.name, liquids.named(traced.motion.liquid).density_kg_m3
    columns = (births_s(traced).tolist(), ends_s(traced).tolist(), diameters_m(traced).tolist())
    for number, (born_s, end_s, diameter_m) in enumerate(zip(*columns, strict=True)):
        yield lambda element, number=number, born_s=born_s, end_s=end_s, diameter_m=diameter_m: {
            "name": f"{name} {number:05d}",
            "element": element,
            "motion": name,
            "born_s": born_s,
            "ends_s": end_s,
            "mass_kg": density * np.pi / 6 * diameter_m**3,
            "diameter_m": diameter_m,
            "drag": "sphere",
        }


def events_of(trace, sampled):
    """A dict an event inside the file's times, by time: its motion, the body's id (None for a pour, whose first parcel's events these are),
    kind and surface, seconds and frame, place in the file's axes and unit, and speed."""
    ids, first_s, last_s = {b.motion: b.id for b in sampled.balls}, sampled.time_s[0], sampled.time_s[-1]
    chosen = [
        (i, event)
        for i, traced in enumerate(trace.motions)
        if traced.motion.name in sampled.options.motions and traced.track.path is not None
        for event in traced.track.events[:_MOST_EVENTS]
        if first_s <= event.time_s <= last_s
    ]
    chosen.sort(key=lambda pair: pair[1].time_s)
    frames = np.round(sampled.clock.frames_at([event.time_s for _, event in chosen]), _PLACES).tolist()
    return [
        {
            "frame": frame,
            "time_s": event.time_s,
            "motion": trace.motions[i].motion.name,
            "id": ids.get(i),
            "kind": event.kind,
            "surface": event.surface,
            f"position_{sampled.options.unit}": _place(sampled, event),
            "speed_m_s": event.speed_m_s,
        }
        for frame, (i, event) in zip(frames, chosen, strict=True)
    ]


def _place(sampled, event):
    place = event.inertial_m if sampled.options.view == INERTIAL_FLAT else event.rotating_m
    return ((sampled.to_file @ place + sampled.pivot_m) * sampled.per_unit + 0.0).tolist()
