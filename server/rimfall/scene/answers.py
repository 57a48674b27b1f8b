"""What comes back from a trace, as one JSON document. Arrays become lists (or base64 float32) as they are written, and are finite."""

import numpy as np

from .. import __version__
from ..comfort.stance import standing_place
from ..motions.people import lean_deg, weight_g
from ..motions.track import grid_times
from ..physics.budget import spend
from ..physics.constants import G0_M_S2
from ..physics.spin import figures
from . import prose
from .json_arrays import as_f4, as_lists, finite, with_arrays

ANSWER_VERSION = 1
_LEVELS = 9  # places along a floor at which its lean is told


def of_trace(trace, units="si", f4=False):
    """The answer to a Trace as JSON bytes, what it did not work out left out; f4 sends arrays as base64 float32. Raises
    FloatingPointError for a number that is not finite: that is a fault of ours."""
    answer = {
        "rimfall_answer": ANSWER_VERSION,
        "program": __version__,
        "scene": trace.scene.model_dump(mode="json"),
        **_of_habitat(trace, units, f4),
    }
    if trace.parts != "own_paths":
        answer["compare"] = [
            {"name": name, "habitat_part": t.scene.habitat.model_dump(mode="json"), **_of_habitat(t, units, f4)}
            for name, t in trace.others
        ]
    return with_arrays(answer, as_f4 if f4 else as_lists)


def _of_habitat(trace, units, f4):
    """Grid, turning, figures and motions in one habitat, arrays as they are."""
    setting = trace.setting
    time_s = grid_times(setting.rate, 0, trace.count)
    spin = setting.habitat.spin
    fps = setting.rate / trace.samples_per_frame
    figures = habitat_figures(trace)
    out = {
        "grid": {
            "fps": [fps.numerator, fps.denominator],
            "samples_per_frame": trace.samples_per_frame,
            "count": trace.count,
        },
    }
    if not f4:
        out["time_s"] = finite(time_s)
    return out | {
        "angle_rad": finite(spin.angle_rad(time_s)),
        "spin_rad_s": finite(spin.rate_rad_s(time_s)),
        "tumbling": _tumbling(spin, time_s),
        "habitat": figures,
        "motions": [_motion(t, trace, units, f4) for t in trace.motions],
        **({"prose": prose.of_scene(trace, figures["felt_g"], units)} if trace.parts == "all" else {}),
    }


def _tumbling(spin, time_s):
    """How a craft that tumbles lies at the grid's times, None of one that does not."""
    if not spin.tumbles:
        return None
    return {"quaternion_wxyz": finite(spin.quaternion(time_s)), "centre_m": spin.centre_m.tolist()}


def habitat_figures(trace):
    """What follows from radius and spin at time 0, at the deck and at every named deck: gravity_* is the spin's, straight outward;
    felt_* is what somebody at rest there feels, with thrust or the room's gravity in it."""
    part, setting = trace.scene.habitat, trace.setting
    omega = setting.omega_rad_s(0.0)
    deck = figures(part.radius_m, omega)
    (felt_g,), (lean,) = _at_rest(setting, [standing_place(setting.habitat)])
    return {
        "omega_rad_s": omega,
        "deck_gravity_m_s2": deck.gravity_m_s2,
        "deck_gravity_g": deck.gravity_g,
        "felt_m_s2": felt_g * G0_M_S2,
        "felt_g": felt_g,
        "felt_lean_deg": lean if felt_g else None,
        "rim_speed_m_s": deck.rim_speed_m_s,
        "period_s": deck.period_s,
        "decks": [_deck(setting, d, omega) for d in getattr(part, "decks", [])],
        "floors": _floors(setting, omega),
    }


def _deck(setting, deck, omega):
    at = figures(deck.radius_m, omega)
    (felt_g,), _ = _at_rest(setting, [(0.0, setting.habitat.radius_m - deck.radius_m, 0.0)])
    return {
        "name": deck.name,
        "radius_m": deck.radius_m,
        "gravity_g": at.gravity_g,
        "felt_g": felt_g,
        "rim_speed_m_s": at.rim_speed_m_s,
    }


def _at_rest(setting, places, floor=0):
    """What is felt at rest at places over a floor at time 0, g, and how far down leans there from straight onto it, degrees."""
    weight = np.array([setting.weight_at_rest(0.0, place, floor) for place in places])
    return weight_g(weight).tolist(), lean_deg(weight).tolist()


def _motion(traced, trace, units, f4):
    track = traced.track
    samples = track.samples
    anchor = track.events[0].rotating_m if track.events else np.zeros(3)
    out = {
        "name": traced.motion.name,
        "kind": traced.motion.kind,
        "first": track.first,
        "count": len(samples.time_s),
        "end": track.end,
    }
    if f4:
        out["anchor_m"] = anchor.tolist()
    offset = anchor if f4 else 0.0
    for name in (
        "along_m",
        "height_m",
        "axial_m",
        "rotating_m",
        "rotating_velocity_m_s",
        "inertial_m",
        "centrifugal_m_s2",
        "coriolis_m_s2",
    ):
        array = getattr(samples, name)
        out[name] = finite(array - offset if name == "rotating_m" else array)
    return out | {
        "attitude_wxyz": None if track.attitude_wxyz is None else finite(track.attitude_wxyz),
        **(
            outcome(traced, trace, units) | {"pieces": traced.outcome_pieces(units)}
            if trace.parts == "all"
            else came_of(traced)
        ),
        "findings": _checked(traced.findings),
        "companion": _companion(traced, offset),
        "stream": _stream(traced),
    }


def _checked(value):
    """Findings with every array looked at."""
    if isinstance(value, np.ndarray):
        return finite(value)
    if isinstance(value, dict):
        return {name: _checked(inner) for name, inner in value.items()}
    if isinstance(value, list):
        return [_checked(inner) for inner in value]
    return value


def outcome(traced, trace, units="si"):
    """What came of a motion, without its arrays: what happened (`came_of`), why it drifts, words, and what was left out."""
    came = came_of(traced)
    if came["landing"] is not None:
        came["landing"] |= {"drift_parts_m": traced.drift[0], "drift_parts_none": traced.drift[1]}
    return came | {
        "within_reach": [{"motion": name, **vars(one)} for name, one in traced.reached],
        "in_short": traced.in_short(units),
        "prose": prose.of_motion(traced, units),
        "words": traced.outcome(units),
        "assumptions": traced.assumptions(trace.setting),
    }


def came_of(traced):
    """What happened to a motion: events with exact states (made as they are written), landing, apex, and how it ends."""
    track = traced.track
    ways = traced.ways.to(track.moments)
    return {
        "surface": traced.plan.surface,
        "ramp": None if traced.plan.ramp_m is None else {"corners_m": traced.plan.ramp_m.tolist()},
        "events": map(_event, track.events, ways),
        "landing": _landing(traced),
        "no_landing": track.no_landing,
        "apex": None if track.path is None else _when(track.apex, ways[-2]),
        "last": None if track.path is None else _when(track.last, ways[-1]) | {"speed_m_s": track.last.speed_m_s},
    }


def _place(moment):
    return {"along_m": moment.along_m, "height_m": moment.height_m, "axial_m": moment.axial_m}


def _when(moment, way):
    return {"time_s": moment.time_s, **_place(moment), "way": way.as_data()}


def _event(event, way):
    spend()
    after = {} if event.after_m_s is None else {"velocity_after_m_s": event.after_m_s.tolist()}
    return {
        "kind": event.kind,
        **_when(event, way),
        "rotating_m": event.rotating_m.tolist(),
        "inertial_m": event.inertial_m.tolist(),
        "velocity_m_s": event.local_m_s.tolist(),
        "speed_m_s": event.speed_m_s,
        "incidence_deg": event.incidence_deg,
        "surface": event.surface,
        **after,
    }


def _landing(traced):
    landing = traced.track.landing
    if landing is None:
        return None
    names = ("time_s", "along_m", "axial_m", "drift_m", "speed_m_s", "incidence_deg")
    return {name: getattr(landing, name) for name in names} | {"way": traced.way(landing).as_data()}


def _companion(traced, offset):
    beside = traced.flat_gravity
    if beside is None:
        empty = finite(np.empty(0))
        return {
            "first": 0,
            "count": 0,
            "along_m": empty,
            "height_m": empty,
            "axial_m": empty,
            "rotating_m": finite(np.empty((0, 3))),
            "landing": None,
            "last": None,
            "none_because": traced.plan.none_because or "not_started",
        }
    along, height, axial = beside.places_m.T
    return {
        "first": beside.first,
        "count": beside.count,
        "along_m": finite(along),
        "height_m": finite(height),
        "axial_m": finite(axial),
        "rotating_m": finite(beside.rotating_m - offset),
        "landing": beside.landing and beside.landing | {"way": traced.plain_way.as_data()},
        "last": {
            "time_s": beside.ends_s,
            **dict(zip(("along_m", "height_m", "axial_m"), beside.last_m.tolist(), strict=True)),
            "way": traced.plain_end.as_data(),
        },
        "none_because": None,
    }


def _stream(traced):
    stream, samples = traced.plan.stream, traced.track.samples
    if stream is None:
        return None
    speeds = np.linalg.norm(samples.rotating_velocity_m_s, axis=1)
    return {
        "speed_m_s": stream.speed_m_s,
        "regime": stream.regime,
        "weber": stream.weber,
        "ohnesorge": stream.ohnesorge,
        "breakup": _breakup(traced),
        "drop_diameter_m": stream.drop_diameter_m,
        "drop_interval_s": stream.drop_interval_s,
        "drop_count": stream.drop_count,
        "first_leaves_s": stream.first_leaves_s,
        "last_leaves_s": stream.last_leaves_s,
        "diameter_m": finite(stream.diameters_m(samples.time_s, speeds)),
    }


def _breakup(traced):
    stream = traced.plan.stream
    broke = traced.track.broke
    if stream.breakup_s is None or broke is None:
        return None
    return {"time_s": stream.breakup_s, "length_m": stream.breakup_m, **_place(broke)}


def _floors(setting, omega_rad_s):
    """The floors of a habitat as plain data, none where the ground is round: where they are, what they weigh, how far "down" leans.

    On a flat floor apparent gravity points away from the axis, not along the floor's normal: at `along` from its middle it leans
    by atan(along/R) toward that end (design, section 1). Thrust leans it along the axis besides: that is in the felt figures.
    """
    return [_floor(setting, i, omega_rad_s) for i in range(len(setting.habitat.floors))]


def _floor(setting, i, omega):
    habitat, floor = setting.habitat, setting.habitat.floors[i]
    along = np.linspace(-floor.length_m / 2, floor.length_m / 2, _LEVELS)
    rho = np.hypot(along, floor.radius_m)
    felt_g, lean = _at_rest(setting, [(float(a), 0.0, 0.0) for a in along], i)
    top = None if floor.ceiling_m is None else habitat.corners(i, floor.ceiling_m).tolist()
    return {
        "name": floor.name,
        "floor": i,
        "corners_m": habitat.corners(i).tolist(),
        "ceiling_corners_m": top,
        "radius_m": floor.radius_m,
        "azimuth_deg": float(np.degrees(floor.azimuth_rad)),
        "gravity_g": omega**2 * floor.radius_m / G0_M_S2,
        "felt_g": felt_g[_LEVELS // 2],
        "rim_speed_m_s": abs(omega) * floor.radius_m,
        "levels": [
            {
                "along_m": float(a),
                "lean_deg": float(np.degrees(np.arctan2(a, floor.radius_m))),
                "gravity_g": float(omega**2 * r / G0_M_S2),
                "felt_g": weight,
                "felt_lean_deg": leans,
            }
            for a, r, weight, leans in zip(along, rho, felt_g, lean, strict=True)
        ],
    }
