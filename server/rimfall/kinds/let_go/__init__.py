"""Letting go outside, under the rim, or pushing off."""

from typing import Literal

from ...fields import linear, number
from ...phrases import length, seconds, speed
from ..kind import Finding, Kind, Page, Stage, when
from ..motion import Motion, elevation_field, heading_field, speed_field
from ..outside import WEIGHTLESS, OutsidePlace, under_the_hull
from ..people import GROUP, HERE, mass_field
from .plan import plan

_LEFT_OUT = [
    "There is no air outside; nothing but a round hull is looked for in the way, and a line is taken to be without mass."
]


class HungPlace(OutsidePlace):
    """Where someone hangs outside, under the rim."""

    height_m: float = number("Hangs at height", "m", -100_000, 0, -1.0, shown=linear(-20, 0))


class LetGo(Motion):
    """Someone outside lets go, or pushes off."""

    kind: Literal["let_go"]
    place: HungPlace = HungPlace()
    mass_kg: float = mass_field()
    speed_m_s: float = speed_field("Push", 0.0)
    heading_deg: float = heading_field("Toward")
    elevation_deg: float = elevation_field("Up", 0.0)


def check(motion, setting, shape):
    """One hangs outside, under the hull; a push toward a hull is followed where that is round all the way."""
    habitat = setting.habitat
    yield from under_the_hull(habitat, shape, motion, "nothing hangs under its rim")
    if habitat.in_space and habitat.round_hull is None and motion.elevation_deg > 0:
        yield "elevation_deg", motion.elevation_deg, f"-90 to 0 degrees: the hull of {shape} is not followed"


def let_go(traced, units):
    """How far one gets that lets go outside."""
    found, made = traced.findings, traced.track
    after = seconds(made.ends_s - traced.plan.start_s)
    if made.end == "met a surface":
        return [f"Pushed that way, one meets the hull after {after}."]
    if not len(found["distance_m"]) or found["leaves_m_s"] == 0:
        return ["Nothing moves: one stays beside the hull."]
    far, line = (float(found[name][-1]) for name in ("distance_m", "line_m"))
    longer = f", and a line to there, laid round the hull, {length(line, units)} long" if line > 1.001 * far else ""
    out = [
        f"One leaves straight at {speed(found['leaves_m_s'], units)}; after {after} the place let go of is {length(far, units)} off{longer}."
    ]
    return [*out, *_sweeps(traced, found, units)]


def _sweeps(traced, found, units):
    if not found["sweeps_by"]:
        return []
    first = found["sweeps_by"][0]
    return [
        f"That place sweeps by again after {seconds(first['time_s'] - traced.plan.start_s)}, {length(first['distance_m'], units)} away."
    ]


PAGE = Page(
    group=GROUP,
    short="Let go",
    add="someone who lets go of the rim",
    title="Let go",
    one="person letting go",
    many="people letting go",
    sentence=(
        "Hangs {place.height_m:under} the rim and lets go",
        when("speed_m_s", ", pushing off at {speed_m_s}, {elevation_deg}, {heading_deg}"),
        ".",
    ),
    rows={"speed_m_s": None, "elevation_deg": None, "heading_deg": None, "place.height_m": "Hangs at"},
    more=("Person", {"mass_kg": "Mass"}),
    findings=(
        Finding("distance_m", "from where they hung", "m", "sweeps by"),
        Finding("line_m", "length of the line", "m", "line length"),
        Finding("leaves_m_s", "leaves at", "m/s", "rim speed"),
    ),
    terms={
        "Let go": (
            "Someone hangs under the rim and lets go. They fly off straight; from aboard they curve away antispinward."
        ),
        "Line length": (
            "How much line would have to be paid out, taut, from the place that was let go of. It is laid round the "
            "hull where that is in the way."
        ),
        "Sweeps by": (
            "The place that was let go of comes round abreast, at the same angle about the axis, one turn after "
            "another, each time farther off."
        ),
    },
    stage=Stage(mover="person", beside="tether", attended_m=None, winds=True, outside=True, no_arrows=WEIGHTLESS),
)
KIND = Kind(
    name="let_go",
    fields=LetGo,
    new={"place": HERE | {"height_m": -1.0}, "speed_m_s": 0.0, "heading_deg": 0.0, "elevation_deg": 0.0},
    check=check,
    plan=plan,
    outcome=let_go,
    assumptions=lambda _traced, _setting: _LEFT_OUT,
    page=PAGE,
    element="let_go",
)
