"""The forces, not the paths, for a solver of one's own: how the frame turns at every sample, in the file's axes and unit."""

import json

import numpy as np

from ..language import tr, tr_later
from ..physics.aboard import of_frame
from ..physics.constants import AIR_GAS_CONSTANT_J_KG_K
from ..physics.drag import sphere_cd
from .scene_sampling import sample_scene

FORMULA = "a = -2 Ω×u - Ω×(Ω×r) - Ω̇×r + pull"
MEANS = {
    "a": tr_later("acceleration to add to a thing in the turning frame, besides air and contact"),
    "Ω": tr_later("spin vector, rad/s: columns omega_x, omega_y, omega_z"),
    "Ω̇": tr_later("its rate of change, rad/s²: columns omega_dot_x, omega_dot_y, omega_dot_z"),
    "u": tr_later("the thing's velocity in the turning frame"),
    "r": tr_later("its position less the centre"),
    "pull": tr_later("what pulls at everything alike: a ship's thrust felt backward, or a room's gravity"),
    "×": tr_later("cross product, right-handed"),
}
AIR_FORMULA = "a_air = -(π/8) d² ρ Cd |w| w / m"
AIR_MEANS = {
    "a_air": tr_later(
        "acceleration to add to a besides, of a body in this air; lift of what spins and buoyancy are left out"
    ),
    "w": tr_later("the body's velocity through the air: u where the air turns with the frame, else u + Ω×r"),
    "ρ": tr_later(
        "ρ0 exp(|Ω|² (r² - R²) / (2 Rs T)) where the air turns, r the distance from the axis in metres; ρ0 where it stands still"
    ),
    "Cd": tr_later(
        "the body's own number, or of a sphere: by the table, straight in log Cd over log Re, Re = ρ |w| d / μ; 24/Re below it"
    ),
    "m, d": tr_later("mass_kg and diameter_m of `bodies`"),
    "units": tr_later("all of this is in SI, whatever the unit of the file"),
}
_RE = np.logspace(-2.0, 5.25, 117)
_U_M_S = np.array([1.0, 2.0, 0.5])  # of the worked number: spinward, up, axial where the place is


def table(trace, options):
    """A row a sample: angle, spin vector and its change, in the file's axes. CSV bytes."""
    sampled = sample_scene(trace, options, flying=True)
    columns = [
        "frame",
        "time_s",
        "angle_rad",
        *(f"omega_{c}_rad_s" for c in "xyz"),
        *(f"omega_dot_{c}_rad_s2" for c in "xyz"),
    ]
    spin, change = sampled.turning_rad_s
    figures = np.column_stack([sampled.time_s, sampled.angle_rad, spin, change]) + 0.0
    row = options.frame_format + ",%.9f" * figures.shape[1] + "\n"
    lines = [row % (frame, *line) for frame, line in zip(sampled.frame.tolist(), figures.tolist(), strict=True)]
    return (",".join(columns) + "\n" + "".join(lines)).encode()


def notes(trace, options):
    """What the table's columns mean, centre, axis, pull, the formula, and one worked number to check a set-up against."""
    sampled = sample_scene(trace, options, flying=True)
    unit = options.unit
    pull = sampled.to_file @ np.array(trace.setting.habitat.pull_m_s2) * sampled.per_unit
    return json.dumps(
        {
            **sampled.notes,
            "formula": FORMULA,
            "means": {name: tr(one) for name, one in MEANS.items()},
            "centre": (sampled.pivot_m * sampled.per_unit + 0.0).tolist(),
            "axis": sampled.axis.tolist(),
            f"pull_{unit}_s2": (pull + 0.0).tolist(),
            "order_of_turning": tr(
                "omega and its change are vectors along the axes of the turning frame itself, about the centre"
            )
            if sampled.attitude is not None
            else tr("angle_rad is how far the turning frame has turned about the axis since time 0"),
            "worked": _worked(trace, sampled),
            "air": _air(trace, sampled),
        },
        indent=1,
        ensure_ascii=False,
    ).encode()


def _air(trace, sampled):
    """The air and what it does to each body, with a worked number of each; None in vacuum."""
    setting, air = trace.setting, trace.setting.air
    if air is None:
        return None
    taken = {b.motion: b.id for b in sampled.balls}
    return {
        "formula": AIR_FORMULA,
        "means": {name: tr(one) for name, one in AIR_MEANS.items()},
        "turns_with_the_frame": not setting.habitat.still_air,
        "density_kg_m3": air.deck_density_kg_m3,
        "at_radius_m": setting.medium.deck_radius_m,
        "gas_constant_j_kg_k": AIR_GAS_CONSTANT_J_KG_K,
        "temperature_k": air.temperature_k,
        "viscosity_pa_s": air.viscosity_pa_s,
        "sphere_re_cd": np.stack([_RE, sphere_cd(_RE)], axis=1).round(6).tolist(),
        "bodies": [_in_air(trace.motions[i], number, air) for i, number in taken.items()],
    }


def _in_air(traced, number, air):
    """A body, and its drag at 10 m/s in the air at the deck: worked, to check a set-up against."""
    body, w = traced.plan.body, 10.0
    given = body.drag_coefficient
    re = air.deck_density_kg_m3 * w * body.diameter_m / air.viscosity_pa_s
    cd = float(given) if np.isfinite(given) else float(sphere_cd(np.array([re]))[0])
    slows = np.pi / 8 * body.diameter_m**2 * air.deck_density_kg_m3 * cd * w**2 / body.mass_kg
    return {
        "id": number,
        "motion": traced.motion.name,
        "mass_kg": body.mass_kg,
        "diameter_m": body.diameter_m,
        "cd": "sphere" if np.isnan(given) else float(given),
        "worked": {"w_m_s": w, "re": re, "cd": cd, "a_air_m_s2": -slows},
    }


def _worked(trace, sampled):
    """The formula at one place and velocity, at the first sample: on the ground under the reference line."""
    habitat, unit, scale = trace.setting.habitat, sampled.options.unit, sampled.per_unit
    chart = habitat.chart(0)
    place = np.array([0.0, habitat.ground_height_m(0.0), 0.0])
    position = chart.position(place)
    velocity = _U_M_S @ chart.axes_at(place)
    parts = _parts(habitat.spin, sampled, position, velocity)
    parts["pull"] = np.array(habitat.pull_m_s2, dtype=float)
    parts["sum"] = sum(parts.values())
    where = sampled.pivot_m + sampled.to_file @ (position - _centre(habitat.spin))
    figures = {f"{name}_{unit}_s2": (sampled.to_file @ a * scale + 0.0).tolist() for name, a in parts.items()}
    return {
        "time_s": float(sampled.time_s[0]),
        "omega_rad_s": (sampled.turning_rad_s[0][0] + 0.0).tolist(),
        f"position_{unit}": (where * scale + 0.0).tolist(),
        f"velocity_{unit}_s": (sampled.to_file @ velocity * scale + 0.0).tolist(),
        **figures,
    }


def _centre(spin):
    return spin.centre_m if spin.tumbles else np.zeros(3)


def _parts(spin, sampled, position, velocity):
    """The frame's own accelerations (3,) at the first sample, by cause, in its own axes."""
    still, at = np.zeros(3), sampled.time_s[:1]
    if spin.tumbles:
        coriolis, centrifugal = spin.coriolis(at, velocity[None])[0], spin.centrifugal(at, position[None])[0]
        whole = spin.own(at, position[None], velocity[None])[0]
        return {"coriolis": coriolis, "centrifugal": centrifugal, "euler": whole - coriolis - centrifugal}
    rate, change = float(sampled.spin_rad_s[0]), float(sampled.spin_change_rad_s2[0])
    return {
        "coriolis": _own(rate, 0.0, still, velocity),
        "centrifugal": _own(rate, 0.0, position, still),
        "euler": _own(0.0, change, position, still),
    }


def _own(spin, change, position, velocity):
    return of_frame(spin, change, position[:, None], velocity[:, None])[:, 0]
