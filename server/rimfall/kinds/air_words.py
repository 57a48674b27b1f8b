"""What an answer leaves out of a thing in the air, and in a craft that tumbles."""

import math

import numpy as np

from ..language import tr, tr_later, written
from ..physics import frames
from ..physics.bodies import PLATE_CD
from ..physics.drag import GREATEST_RE
from ..physics.liquids import drop_volume_m3

_GREATEST_MACH = 0.3  # beyond it drag of a sphere rises with the Mach number: common practice, no source
_BUOYANCY_SHARE = 0.01
_DENSER = 0.01  # a share by which air may be denser than stated and none be told
_NB = "\u00a0"
AIR_FOLLOWS = tr_later("The air follows the changing spin at once; real air lags behind.")
TO_FIRST_CONTACT = tr_later(
    "In a craft that tumbles it is followed to what it first meets; what comes after that is not worked out."
)
ONE_DENSITY = tr_later(
    "In a craft that tumbles the air has one pressure and one density all through, those that are stated."
)


def in_air(traced, setting):
    """What an answer leaves out of a body in air; in vacuum what it leaves out in a craft that tumbles, else none."""
    out = [tr(TO_FIRST_CONTACT)] if setting.habitat.spin.tumbles else []
    if setting.air is None or traced.track.path is None:
        return out
    return out + of_air(traced.plan, setting, _fastest_m_s(traced, setting))


def _fastest_m_s(traced, setting):
    """The greatest speed against the air, which turns with the habitat or stands still in the room."""
    samples, events = traced.track.samples, traced.track.events
    moving = np.concatenate([samples.rotating_velocity_m_s, [e.rotating_velocity_m_s for e in events]])
    if setting.habitat.still_air:
        place = np.concatenate([samples.rotating_m, [e.rotating_m for e in events]])
        time_s = np.concatenate([samples.time_s, [e.time_s for e in events]])
        moving = moving + frames.spin_cross(setting.habitat.spin.rate_rad_s(time_s), place)
    return math.sqrt(np.add.reduce(moving * moving, axis=1).max())


def of_air(plan, setting, fastest):
    """The same of what a Plan lets go of, whose greatest speed against the air is `fastest`, m/s."""
    air, body, out = setting.air, plan.body, []
    displaced = air.deck_density_kg_m3 * drop_volume_m3(body.diameter_m) / body.mass_kg
    if body.buoyant:
        out.append(tr("Buoyancy and added mass are those of a sphere in an ideal fluid; history force is left out."))
    elif displaced > _BUOYANCY_SHARE:
        share = written(100 * displaced, ".2g")
        out.append(tr("Buoyancy and added mass are left out; the displaced air is {share} % of its mass.", share=share))
    out += [tr(ONE_DENSITY)] if setting.habitat.spin.tumbles else _of_density(plan, setting)
    if body.drag_area_m2 is not None:
        out += _dragged_along(air, body)
        out.append(
            tr(
                "Its drag area stands in place of its drag coefficient and is the same whichever way it faces; it does not flutter."
            )
        )
    elif (
        body.drag == "sphere" and air.deck_density_kg_m3 * fastest * body.diameter_m / air.viscosity_pa_s > GREATEST_RE
    ):
        out.append(tr("The drag crisis of a smooth ball is not modelled; drag may be overstated at this speed."))
    if fastest > _GREATEST_MACH * air.sound_m_s:
        mach = written(fastest / air.sound_m_s, ".1f")
        out.append(tr("It moves at Mach {mach}; drag is that of slow flow and is understated.", mach=mach))
    if not setting.habitat.spin.steady:
        out.append(tr(AIR_FOLLOWS))
    return out


def _of_density(plan, setting):
    """That the air at the ground it is over has another pressure than the one that is stated, where it has."""
    habitat, air = setting.habitat, setting.air
    stated_m, here_m = habitat.radius_m, habitat.ground_radius_m(plan.floor)
    omega = setting.omega_rad_s(plan.start_s)
    share = 1.0 if habitat.still_air else math.exp(omega**2 * air.thinning_s2_m2 * (here_m**2 - stated_m**2))
    if abs(share - 1.0) < _DENSER:
        return []
    pressure = f"{written(share * air.pressure_pa / 1e3, '.4g')}{_NB}kPa"
    density = f"{written(share * air.deck_density_kg_m3, '.3g')}{_NB}kg/m³"
    where_stated, here = (f"{written(m, ',.6g')}{_NB}m" for m in (stated_m, here_m))
    return [
        tr(
            "The air’s pressure is stated at {stated} from the axis; it turns with the habitat, and at this floor, {here} out, it has "
            "{pressure}, {density}.",
            stated=where_stated,
            here=here,
            pressure=pressure,
            density=density,
        )
    ]


def _dragged_along(air, body):
    """That the air which a broad, light body drags along is left out. A disc broadside on has 8 a^3/3 of it, a its radius: Lamb,
    Hydrodynamics (1932), section 102 (from memory); of its size is what has the drag area at a plate's coefficient."""
    radius_m = math.sqrt(body.drag_area_m2 / PLATE_CD / math.pi)
    along_kg = 8.0 / 3.0 * air.deck_density_kg_m3 * radius_m**3
    if along_kg <= _BUOYANCY_SHARE * body.mass_kg:
        return []
    along, own = (f"{written(float(f'{1e3 * kg:.2g}'), ',g')}{_NB}g" for kg in (along_kg, body.mass_kg))
    return [
        tr(
            "The air that it drags along, about {along} on its {own}, is left out: it gathers and loses speed more slowly than here.",
            along=along,
            own=own,
        )
    ]
