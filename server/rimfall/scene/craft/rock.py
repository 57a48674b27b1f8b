"""An asteroid that is spun up: when its equator would fly off, and what pulls it apart at a wished gravity."""

import math

from ...language import tr, tr_later
from ...physics.constants import G0_M_S2
from ...vessel import rock
from ...vessel.materials import MATERIALS
from .saying import strength_of
from .words import area, duration, figure, gravity, percent, pressure, rate, short

LINING = "strong steel"

ASSUMPTIONS = (
    tr_later(
        "The rock is a uniform sphere; its tension is the mean over a plane through its axis, and some of it bears more."
    ),
    tr_later("Hollows take from what bears the load as well as from the load, and are left out."),
)
_BARRIER = tr_later(
    "Asteroids in the sky keep to such a barrier, near 2.2 h: P. Pravec and A. W. Harris, Icarus 148 (2000) 12."
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
            *map(tr, ASSUMPTIONS),
            *(strength_of(one.of, one.source) for one in rock.STRENGTHS),
            strength_of(LINING, MATERIALS[LINING].source),
            tr(_BARRIER),
        ],
    }


def _says(block, body, spin, tension, strengths, lining_n, asked):
    intact, rubble = strengths
    return [
        tr(
            "Its own gravity, {gravity} at its surface, holds loose rock down until it turns once in {time}.",
            gravity=gravity(body.own_gravity_m_s2),
            time=duration(2 * math.pi / body.weightless_rate_rad_s, "in"),
        ),
        tr(
            "For {gravity} inside its equator it must turn at {rate}.",
            gravity=gravity(block.gravity_g * G0_M_S2),
            rate=rate(spin),
        ),
        tr("Its halves then pull apart with {stress} on average.", stress=pressure(tension)),
        *_holds(intact, rubble, asked),
        *_lining(lining_n, body, asked),
    ]


def _holds(intact, rubble, asked):
    loose = pressure(rubble["tension_pa"])
    if intact["times"] <= 1:
        yield tr(
            "Rock without a crack would bear that, with {share} of its strength; rubble bears {stress}, and flies apart.",
            share=percent(intact["times"]),
            stress=loose,
        )
        return
    yield tr(
        "That is {times} times what rock without a crack bears; rubble bears {stress}, and flies apart.",
        times=figure(intact["times"]),
        stress=loose,
    )
    largest = short(intact["largest_radius_m"], asked.units)
    yield tr("The largest ball of uncracked rock that would hold is {radius} in radius.", radius=largest)


def _lining(lining_n, body, asked):
    need_m2 = lining_n / MATERIALS[LINING].strength_pa
    yield tr(
        "A lining that carries it all needs {area} of {material} in every section through the axis, {share} of that section.",
        area=area(need_m2, asked.units),
        material=tr(LINING),
        share=percent(need_m2 / body.section_m2),
    )
    yield tr("That is at its breaking strength, before any safety factor.")
