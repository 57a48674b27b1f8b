"""Tumbles: the whole craft is let go and turns as one body about its centre of mass; the turning frame is its own, and turns with it.

There is one in a scene at most. What it does is worked out before anything else moves (`scene/tumbling.py`), and everything else of the scene
is seen from the craft: aboard it stands still, outside it tumbles.
"""

from typing import Literal

import numpy as np

from ...fields import linear, log, number
from ...language import tr, tr_later, tr_later_as
from ...motions.journey import Prescribed
from ...motions.people import given_leg
from ...motions.setting import GREATEST_LIMIT_S
from ...physics.bodies import Body
from ...vessel import tumble
from ...vessel.damped import Damped
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import Motion, along_given
from . import words

_LEAST_PIECE_S = 1.0


class Tumble(Motion):
    """The craft let go, with rates about its own x and y axes besides its spin."""

    kind: Literal["tumble"]
    about_x_rpm: float = number(tr_later("About x"), "rpm", -200, 200, 0.0, shown=linear(-2, 2))
    about_y_rpm: float = number(tr_later("About y"), "rpm", -200, 200, 0.0, shown=linear(-2, 2))
    losses_s: float | None = number(tr_later("Wobble changes by e in"), "s", 1, 1e9, None, shown=log(10, 10_000))


def check(motion, setting, _shape):
    """It is let go as the scene begins, at its own centre of mass."""
    if motion.start_s:
        yield "start_s", motion.start_s, tr("0: the craft is let go as the scene begins")
    for name, value in motion.place:
        if value:
            yield f"place.{name}", value, tr("0: a craft turns about its centre of mass, wherever that is")


def plan(setting, motion):
    """Plan of a `tumble`: in the craft's own frame its centre of mass stays where it is."""
    habitat = setting.habitat
    centre = habitat.spin.centre_m
    chart = habitat.chart(0)
    end_s = _end_s(setting)
    length_s = np.array([max(end_s, _LEAST_PIECE_S)])
    leg = given_leg(habitat.ground(0), np.zeros(1), length_s, np.stack([centre, 0.0 * centre])[None], end_s)
    place = 0.0, float(chart.height(centre)), float(chart.axial(centre))
    body = Body(habitat.spin.motion.mass_kg, 0.0, 0.0)
    return along_given(motion, place, np.zeros(3), body, Prescribed((leg,)), "given", findings=_findings)


def _end_s(setting):
    """Until when it is shown: the scene's own end; else, where that takes longer than three turns, until it has gone over and come back."""
    if setting.duration_s is not None:
        return setting.duration_s
    let_go = setting.habitat.spin.motion
    period_s = tumble.flip_period_s(let_go.body, let_go.rates_rad_s) or 0.0
    return max(setting.limit_s(0.0), min(period_s, GREATEST_LIMIT_S))


def _findings(setting, _plan, track):
    """At the samples: attitudes (n, 4) from the craft's axes to those that do not turn, rates (n, 3) about the craft's axes, the momentum's
    angle (n,) from the axis of greatest inertia, and what is felt (n, 3) at the middle of the floor, g; and what comes of it."""
    let_go, time_s = setting.habitat.spin.motion, track.samples.time_s
    turned = let_go.at(time_s)
    nutation = np.degrees(tumble.nutation_rad(let_go.body, turned.momentum))
    floor = setting.habitat.chart(0).position((0.0, 0.0, 0.0))
    felt = tumble.gravity_g(turned, floor - let_go.centre_m)
    size, rates = np.linalg.norm(felt, axis=1), let_go.rates_rad_s
    losses_s, motion = let_go.losses_s, let_go.motion if isinstance(let_go.motion, Damped) else None
    flat_s = None if losses_s is None else tumble.time_to_flat_s(let_go.body, rates, losses_s, motion)[0]
    final = tumble.size_of_momentum(let_go.body, rates) / float(let_go.body.moments[2])
    return {
        "quaternion_wxyz": turned.quaternion_wxyz,
        "rates_rad_s": turned.rates_rad_s,
        "nutation_deg": nutation,
        "felt_g": felt,
        "centre_of_mass_m": let_go.centre_m.tolist(),
        "flips": tumble.flips(let_go.body, rates),
        "flip_period_s": tumble.flip_period_s(let_go.body, rates),
        "nutation_first_deg": float(nutation[0]) if len(nutation) else 0.0,
        "nutation_last_deg": float(nutation[-1]) if len(nutation) else 0.0,
        "floor_least_g": float(size.min(initial=np.inf)) if len(size) else 0.0,
        "floor_greatest_g": float(size.max(initial=0.0)),
        "final_rpm": float(np.degrees(final) / 6),
        "time_to_flat_s": flat_s,
        "mass_spread": let_go.spread,
    }


PAGE = Page(
    group=tr_later("Craft"),
    add=tr_later_as("added", "a tumble"),
    short=tr_later("Tumble"),
    title=tr_later("The craft"),
    one=tr_later_as("counted", "tumble"),
    many=tr_later_as("counted", "tumbles"),
    sentence=(
        tr_later(
            "The craft is let go, turning at {about_x_rpm} about its x axis and {about_y_rpm} about its y axis besides its spin"
        ),
        when("losses_s", tr_later("; losing energy, its wobble changes by a factor of e in {losses_s}")),
        ".",
    ),
    rows={"about_x_rpm": tr_later("About x"), "about_y_rpm": tr_later("About y"), "losses_s": tr_later("Losses")},
    mirrored=False,
    stays=tr_later("tumbles"),
    findings=(
        Finding("nutation_first_deg", tr_later("nutation at first"), "°", tr_later("nutation")),
        Finding("nutation_last_deg", tr_later("nutation in the end"), "°", tr_later("nutation")),
        Finding("floor_least_g", tr_later("least gravity at the floor"), "g", tr_later("apparent gravity")),
        Finding("floor_greatest_g", tr_later("greatest gravity at the floor"), "g", tr_later("apparent gravity")),
    ),
    terms={
        tr_later("Tumble"): tr_later(
            "A craft let go, with nothing to turn it or hold it: it turns about its centre of mass as one body."
        ),
    },
    stage=Stage(mover="craft", attended_m=None, no_arrows=("velocity", "centrifugal", "coriolis")),
)
KIND = Kind(
    name="tumble",
    fields=Tumble,
    new={"about_x_rpm": 0.3, "about_y_rpm": 0.0},
    check=check,
    plan=plan,
    outcome=words.tumbled,
    in_short=words.in_short,
    assumptions=words.left_out,
    told=words.told,
    page=PAGE,
    element="craft",
)
