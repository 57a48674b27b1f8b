"""How must it be thrown to be caught: what is asked, every throw that arrives, and what comes back as one JSON document."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from ... import __version__
from ...errors import BadInput, refusal
from ...kinds import KINDS
from ...kinds.air_words import of_air
from ...kinds.motion import body_of
from ...kinds.places import clear_of_surfaces
from ...language import tr, tr_later, written
from ...motions.plan import Plan
from ...motions.setting import Setting
from ...phrases import caution
from ...shots.aim import Aim, aim
from ...shots.catch import errors_m
from ...shots.fixed import ELEVATION, FLIGHT, LEAST, SPEED, Fixed
from ...shots.question import MOST_M_S, Question
from ...shots.shooting import Shooting
from ...shots.target import Moving, Resting
from ...shots.throws import speed_heading_elevation
from ..document import setting_of
from ..json_arrays import as_f4, as_lists, finite, with_arrays
from ..questions import trace
from ..validation_errors import wrong
from . import aim_words as words
from .aim_help import Remedy, remedies
from .aim_way import way_of
from .thrown import thrower_of, thrown_in, told_of_throws

ANSWER_VERSION = 1
_LONGEST = 60  # characters of a motion's name
_ASKS_LESS = tr_later("Ask for shorter flights (flight_max_s), or let the scene end sooner (sampling.duration_s).")


@dataclass(frozen=True)
class Aimed:
    """A throw that is to be caught, its plan, what the hands are (a Hands or a Mover), and what was found; errors_m: of each way, how far
    errors make it miss; remedies: what would do, where no way is free."""

    motion: Any
    to: Any
    setting: Setting
    plan: Plan
    aim: Aim
    errors_m: np.ndarray
    remedies: list[Remedy]


@dataclass(frozen=True)
class Answered:
    """An AimRequest, what was found, and the same from the catcher's hands, or None."""

    request: Any
    there: Aimed
    back: Aimed | None


def find(request: Any, watch: Callable[[int, int], None] | None = None) -> Answered:
    """What arrives, of an AimRequest. Raises BadInput or TooMuch. watch(done, of): what it raises stops the work."""
    motion, fixed = thrown_in(request.scene, request.motion), _fixed(request.fixed)
    moves = hasattr(request.to, "motion")
    if request.back and moves:
        raise BadInput(wrong("back", True, tr("false where what catches is a motion of the scene")))
    with told_of_throws(
        motion,
        steps_field="motion",
        work_field="flight_max_s",
        stopped=tr_later("This is too much work: it was stopped after {used}, and one request may use {most}."),
        asks_less=_ASKS_LESS,
    ):
        there = _aimed(request, request.scene, motion, request.to, fixed)
        back = None
        if request.back:
            if watch:
                watch(1, 2)
            back = _aimed(request, request.scene, *_turned_round(request.scene, motion, request.to), fixed)
    return Answered(request, there, back)


def _fixed(part):
    """What is fixed. Raises BadInput where that is not one thing."""
    given = {name: value for name, value in part.model_dump().items() if value is not None}
    if len(given) != 1:
        names = ", ".join(given) or tr("nothing")
        may_be = tr("exactly one of speed_m_s, elevation_deg, flight_s, least")
        say = tr("What is fixed was {names}; it must be {may_be}.", names=names, may_be=may_be)
        raise BadInput(refusal("fixed", names, may_be, say))
    ((name, value),) = given.items()
    return Fixed(LEAST, None) if name == LEAST else Fixed(name, value)


def _aimed(request, scene, motion, to, fixed):
    setting, _ = setting_of(scene)
    plan = KINDS[motion.kind].plan(setting, motion)
    thrower = thrower_of(setting, motion)
    lasts_s = thrower.hand.end_s - thrower.hand.time_s
    if fixed.what == FLIGHT and fixed.value > lasts_s:
        may_be = tr(
            "above 0 to {time} s, for so long {name} is followed", time=written(lasts_s, ".6g"), name=motion.name
        )
        raise BadInput(wrong("fixed.flight_s", fixed.value, may_be))
    longest = min(max(request.flight_max_s, fixed.value if fixed.what == FLIGHT else 0.0), lasts_s)
    target = _target(setting, scene, motion, to, request.within_m)
    question = Question(thrower, target, request.within_m, fixed, longest)
    found = aim(question)
    shown = found.ways or ([] if found.nearest is None else [found.nearest])
    errors = np.zeros((0, 3))
    if shown:
        velocities, flights = np.array([one.velocity for one in shown]), np.array([one.flight_s for one in shown])
        errors = errors_m(Shooting(thrower), target, velocities, flights)
    helps = [] if found.free else remedies(found, scene, lambda changed: _question(request, changed, motion, to, fixed))
    return Aimed(motion, to, setting, plan, found, errors, helps)


def _question(request, scene, motion, to, fixed):
    """The same Question of another scene."""
    setting, _ = setting_of(scene)
    thrower = thrower_of(setting, motion)
    longest = min(request.flight_max_s, thrower.hand.end_s - thrower.hand.time_s)
    return Question(thrower, _target(setting, scene, motion, to, request.within_m), request.within_m, fixed, longest)


def _target(setting, scene, motion, to, within_m):
    """Where the hands are. Raises BadInput where they cannot be, or the thing cannot come to them."""
    spin = setting.habitat.spin
    if hasattr(to, "motion"):
        return Moving(spin, _path_of(scene, motion, to.motion))
    grounds = max(len(setting.habitat.floors), 1)
    if to.floor >= grounds:
        may_be = tr("0: there is one ground")
        if grounds > 1:
            may_be = tr("0 to {last}, one of the {count} floors", last=grounds - 1, count=grounds)
        raise BadInput(wrong("to.floor", to.floor, may_be))
    if to.floor != motion.place.floor:
        may_be = tr("{floor}, the floor that {name} is thrown on", floor=motion.place.floor, name=motion.name)
        raise BadInput(wrong("to.floor", to.floor, may_be))
    clashes = [
        wrong(field.replace("place.", "to."), was, may_be)
        for field, was, may_be in clear_of_surfaces(setting.habitat, to, 0.0, "to", None)
    ]
    if clashes:
        raise BadInput(*clashes)
    chart = setting.habitat.chart(to.floor)
    wanted = chart.position((to.along_m, to.height_m, to.axial_m))
    aimed_at = chart.position(_clear(setting.habitat, to, body_of(motion.body).diameter_m / 2))
    short_m = float(np.linalg.norm(aimed_at - wanted))
    if short_m > within_m:
        may_be = tr(
            "so far from every surface that the thing comes within {reach} m; its own surface stops it {short} m away",
            reach=written(within_m, "g"),
            short=written(short_m, ".3g"),
        )
        raise BadInput(wrong("to.height_m", to.height_m, may_be))
    return Resting(spin, aimed_at)


def _clear(habitat, to, half_m):
    """The place nearest to the hands to which the centre of a body of radius half_m can come."""
    least, side, span = habitat.sides(to.floor, half_m)
    axial = float(np.clip(to.axial_m, least, side)) if side >= least else to.axial_m
    low, high = span(min(abs(axial), side))
    return to.along_m, float(np.clip(to.height_m, low, high)) if high >= low else to.height_m, axial


def _path_of(scene, motion, name):
    """The path of the motion that catches. Raises BadInput where there is none."""
    others = [one.name for one in scene.motions if one.name != motion.name and one.kind != "pour"]
    catcher = next((one for one in scene.motions if one.name == name), None)
    if name not in others:
        may_be = tr("a place: no other motion is there")
        if others:
            may_be = tr("another motion of the scene that is one thing: {names}", names=", ".join(others))
        raise BadInput(wrong("to.motion", name, may_be))
    traced = trace(scene.model_copy(update={"motions": [catcher], "compare": []})).motions[0]
    if traced.track.path is None:
        raise BadInput(wrong("to.motion", name, tr("a motion that begins before the scene ends")))
    return traced.track.path


def _turned_round(scene, motion, to):
    """The throw back, and the hands it goes to: those that threw."""
    names = {one.name for one in scene.motions}
    name = tr("{name} back", name=motion.name)[:_LONGEST]
    room = _LONGEST - len(tr("{name} again", name=""))
    while name in names:
        name = tr("{name} again", name=name[:room])
    place = motion.place.model_copy(
        update={"along_m": to.along_m, "height_m": to.height_m, "axial_m": to.axial_m, "floor": to.floor}
    )
    there = type(to)(**motion.place.model_dump())
    return motion.model_copy(update={"name": name, "place": place, "carried": None}), there


def as_json(found: Answered, units: str = "si", f4: bool = False) -> bytes:
    """The answer to an Answered as JSON bytes; f4 sends arrays as base64 float32."""
    return with_arrays(as_data(found, units), as_f4 if f4 else as_lists)


def as_data(found: Answered, units: str = "si") -> dict[str, Any]:
    """The same as plain data with numpy arrays."""
    request, there = found.request, found.there
    back = None
    if found.back is not None:
        motion = found.back.motion.model_dump(mode="json")
        first = next(iter(found.back.aim.ways), found.back.aim.nearest)
        if first is not None:
            motion |= dict(zip(("speed_m_s", "heading_deg", "elevation_deg"), _exactly(found.back, first), strict=True))
        back = {"motion": motion, **_parts(found.back, units)}
    return {
        "rimfall_aim": ANSWER_VERSION,
        "program": __version__,
        "motion": request.motion,
        "to": request.to.model_dump(),
        "within_m": request.within_m,
        "fixed": {name: value for name, value in request.fixed.model_dump().items() if value is not None},
        "flight_max_s": there.aim.question.flight_max_s,
        **_parts(there, units),
        "assumptions": _assumptions(there),
        "caution": caution(),
        "back": back,
    }


def _exactly(aimed, throw):
    """Speed, heading and elevation of a throw; what is fixed as it was given, to the last digit."""
    speed, heading, elevation = throw.aim
    fixed = aimed.aim.question.fixed
    return (
        fixed.value if fixed.what == SPEED else speed,
        heading,
        fixed.value if fixed.what == ELEVATION and abs(elevation - fixed.value) < 1e-6 else elevation,
    )


def _parts(aimed, units):
    found = aimed.aim
    ways = [_way(aimed, k, way, units) for k, way in enumerate(found.ways)]
    nearest = None if found.nearest is None else _way(aimed, 0, found.nearest, units)
    return {
        "target": _place_of_hands(aimed),
        "ways": ways,
        "nearest": nearest,
        "would_do": [one.as_data(units) for one in aimed.remedies],
        "by_flight": _by_flight(found.curve),
        "words": words.sentences(aimed, ways, nearest, units),
        "short": words.short(ways),
    }


def _way(aimed, k, throw, units):
    data = way_of(aimed, throw, _exactly(aimed, throw), aimed.errors_m[k], units)
    return data | words.of_way(aimed, data, units)


def _place_of_hands(aimed):
    if hasattr(aimed.to, "motion"):
        return None
    place = aimed.to.along_m, aimed.to.height_m, aimed.to.axial_m
    position = aimed.setting.habitat.chart(aimed.to.floor).position(place)
    return aimed.to.model_dump() | {"rotating_m": position.tolist()}


_MOST_POINTS = 600


def _by_flight(curve):
    """Flight times, and the throws that arrive after them."""
    times = np.unique(curve.panels.times(8)) if len(curve.panels.low) else np.empty(0)
    velocities = curve.velocity(times) if len(times) else np.empty((0, 3))

    slow = np.flatnonzero(np.linalg.norm(velocities, axis=1) <= MOST_M_S)
    slow = slow[:: max(1, -(-len(slow) // _MOST_POINTS))]
    speed, heading, elevation = speed_heading_elevation(velocities[slow])
    names = ("flight_s", "speed_m_s", "heading_deg", "elevation_deg")
    return {name: finite(each) for name, each in zip(names, (times[slow], speed, heading, elevation), strict=True)}


def _assumptions(aimed):
    out = []
    if aimed.setting.air is not None:
        shown = aimed.aim.ways or ([] if aimed.aim.nearest is None else [aimed.aim.nearest])
        fastest = max((float(np.linalg.norm(one.velocity)) for one in shown), default=0.0)
        out += of_air(aimed.plan, aimed.setting, fastest)
    if getattr(aimed.motion, "bounces", 0):
        out.append(tr("Only throws that arrive before they touch anything are looked for, none that bounce."))
    if hasattr(aimed.to, "motion"):
        out.append(
            tr("Before it starts and after it ends, {name} is taken to be at rest aboard.", name=aimed.to.motion)
        )
    long = [low for low, high in aimed.aim.curve.missing_s if low > 0.05 * aimed.aim.question.flight_max_s]
    if long:
        out.append(
            tr(
                "Flights of more than {time} s are not all told apart: in this air they hang on digits that no hand can hold to.",
                time=written(min(long), ".3g"),
            )
        )
    return out
