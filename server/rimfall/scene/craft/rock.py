"""An asteroid that is spun up: when its equator would fly off, and what pulls it apart at a wished gravity."""

import math

from ...physics.constants import G0_M_S2
from ...vessel import rock
from ...vessel.materials import MATERIALS
from .words import area, duration, figure, gravity, percent, pressure, rate, short

LINING = "strong steel"

ASSUMPTIONS = (
    "The rock is a uniform sphere; its tension is the mean over a plane through its axis, and some of it bears more.",
    "Hollows take from what bears the load as well as from the load, and are left out.",
)


def finding(asked):
    """The finding as data; None where there is no rock."""
    block = asked.craft.rock
    if block is None:
        return None
    body = rock.Rock(block.density_kg_m3, block.radius_m)
    wished = block.gravity_g * G0_M_S2
    spin = rock.rate_for(body, wished)
    tension = rock.mean_tension_pa(body, spin)
    lining_n = tension * body.section_m2
    strengths = [
        {"of": one.of, "tension_pa": one.tension_pa, "source": one.source, "times": tension / one.tension_pa,
         "largest_radius_m": rock.largest_radius_m(block.density_kg_m3, one.tension_pa, wished)}
        for one in rock.STRENGTHS
    ]  # fmt: skip
    return {
        "weightless_rate_rad_s": body.weightless_rate_rad_s,
        "weightless_period_s": 2 * math.pi / body.weightless_rate_rad_s,
        "own_gravity_m_s2": body.own_gravity_m_s2,
        "rate_rad_s": spin,
        "mean_tension_pa": tension,
        "lining_n": lining_n,
        "lining_area_m2": lining_n / MATERIALS[LINING].strength_pa,
        "strengths": strengths,
        "says": _says(block, body, spin, tension, strengths, lining_n, asked),
        "assumptions": [
            *ASSUMPTIONS,
            *(f"Strength of {one.of}: {one.source}." for one in rock.STRENGTHS),
            f"Strength of {LINING}: {MATERIALS[LINING].source}.",
            "Asteroids in the sky keep to such a barrier, near 2.2 h: P. Pravec and A. W. Harris, Icarus 148 (2000) 12.",
        ],
    }


def _says(block, body, spin, tension, strengths, lining_n, asked):
    intact, rubble = strengths
    own, once = gravity(body.own_gravity_m_s2), duration(2 * math.pi / body.weightless_rate_rad_s)
    wished = gravity(block.gravity_g * G0_M_S2)
    return [
        f"Its own gravity, {own} at its surface, holds loose rock down until it turns once in {once}.",
        f"For {wished} inside its equator it must turn at {rate(spin)}.",
        f"Its halves then pull apart with {pressure(tension)} on average.",
        *_holds(intact, rubble, asked),
        *_lining(lining_n, body, asked),
    ]


def _holds(intact, rubble, asked):
    loose = f"rubble bears {pressure(rubble['tension_pa'])}, and flies apart"
    if intact["times"] <= 1:
        yield f"Rock without a crack would bear that, with {percent(intact['times'])} of its strength; {loose}."
        return
    largest = short(intact["largest_radius_m"], asked.units)
    yield f"That is {figure(intact['times'])} times what rock without a crack bears; {loose}."
    yield f"The largest ball of uncracked rock that would hold is {largest} in radius."


def _lining(lining_n, body, asked):
    need_m2 = lining_n / MATERIALS[LINING].strength_pa
    need, share = area(need_m2, asked.units), percent(need_m2 / body.section_m2)
    yield f"A lining that carries it all needs {need} of {LINING} in every section through the axis, {share} of that section."
    yield "That is at its breaking strength, before any safety factor."
