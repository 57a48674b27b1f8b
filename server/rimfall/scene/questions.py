"""What becomes of a scene: every motion taken to its end, within the work that a scene may be. The page, the commands and the notebooks share it."""

from dataclasses import dataclass, field, replace
from functools import partial

from ..errors import TooMuch, refusal
from ..kinds import KINDS
from ..kinds.kind import IN_FLIGHT, ON_THE_GROUND, Traced
from ..kinds.motion import nameless
from ..language import tr, written
from ..motions import drift, flat_gravity, track
from ..motions.carry import carry
from ..motions.flight import StepLimitExceeded, fly
from ..motions.reach import first_reached
from ..motions.setting import Setting
from ..motions.track import grid_span
from ..motions.ways import Ways
from ..physics import spin as spins
from ..physics.budget import TooMuchWork, current, spend
from ..physics.kept import kept
from .document import Scene
from .tumbling import moving_setting
from .work import Ledger, Samples

GREATEST_SAMPLES = 500_000
GREATEST_SAMPLES_IN_LISTS = 200_000
EVENT_SAMPLES = 5  # an event's share of an answer, in samples
PARTS = ("all", "paths", "own_paths")  # of an answer: `trace`


@dataclass(frozen=True)
class Trace:
    """A scene and what came of its motions, on a grid of `count` samples at setting.rate a second; others: (name, Trace) of
    each habitat set beside its own; parts: what was worked out (`trace`)."""

    scene: Scene
    setting: Setting
    samples_per_frame: int
    count: int
    motions: list[Traced]
    others: list = field(default_factory=list)
    parts: str = "all"


def trace(scene, greatest_samples=GREATEST_SAMPLES, watch=None, parts="all"):
    """Take every motion of a Scene to its end, in its own habitat and in those set beside it -> Trace. Raises TooMuch past
    greatest_samples, naming the motion that passed it; past the budget that is open (`work.bounded`), TooMuchWork, naming the motion
    that used most of it.

    watch(done, of) is told how far the work has come; what it raises stops it. parts: "all"; "paths" leaves out why it drifts and who comes
    within reach, of which words are made; "own_paths" the other habitats besides.
    """
    compare = [] if parts == "own_paths" else scene.compare
    others = [scene.model_copy(update={"habitat": o.habitat, "compare": []}) for o in compare]
    of, done, spent = (1 + len(others)) * 3 * len(scene.motions), 0, 0
    ledger, traces = Ledger(scene), []
    settings = [moving_setting(one) for one in (scene, *others)]
    ledger.refuse_hopeless([setting for setting, _ in settings])
    for one, own in zip((scene, *others), settings, strict=True):
        tell = watch and (lambda so_far, done=done: watch(done + so_far, of))
        try:
            one_trace, spent = _trace_one(one, *own, ledger, greatest_samples, spent, tell, parts)
        except TooMuchWork as exceeded:
            raise ledger.refused(exceeded) from None
        traces.append(one_trace)
        done += 3 * len(scene.motions)
    return replace(traces[0], others=[(o.name, t) for o, t in zip(compare, traces[1:], strict=True)])


def _trace_one(scene, setting, per_frame, ledger, greatest_samples, spent, tell, parts):
    """The Trace of a scene in its own habitat, and the samples counted after it."""
    samples = Samples(scene.motions, setting.rate, greatest_samples, spent)
    plans, unnamed = [], [nameless(motion) for motion in scene.motions]
    for i in range(len(scene.motions)):
        with ledger.motion(i):
            plans.append(_planned(setting, scene, unnamed[i], i, samples))
    before = _kept()
    journeys = _carried(setting, scene, plans, samples, tell)
    carried, motions = _kept() - before, []
    for i, (motion, plan) in enumerate(zip(scene.motions, plans, strict=True)):
        with ledger.motion(i):
            motions.append(_traced(setting, motion, unnamed[i], plan, journeys[2 * i], journeys[2 * i + 1]))
        if tell:
            tell(2 * len(plans) + i + 1)
    spend(bytes=-carried)  # the journeys: their paths are read, and nobody needs them any more
    if parts == "all":
        drifts = drift.parts_of_all(setting, [(one.plan, one.track, one.ways) for one in motions], partial(kept, fly))
        motions = [
            replace(one, drift=why, reached=_reached(setting, one, motions))
            for one, why in zip(motions, drifts, strict=True)
        ]
    return Trace(scene, setting, per_frame, _grid_count(setting, motions), motions, parts=parts), samples.spent


def _reached(setting, flight, motions):
    """(name, Reached) of those of the motions within whose reach a flight comes before it lands, in order of time."""
    if not flight.kind.flies or flight.track.path is None:
        return ()
    track, floor = flight.track, flight.plan.floor
    until_s = track.ends_s if track.landing is None else track.landing.time_s
    catchers = [one for one in motions if one.kind.catches and one.track.path is not None and one.plan.floor == floor]
    found = [
        (one.motion.name, first_reached(setting, track, floor, until_s, one.track, one.plan.body.radius_m))
        for one in catchers
    ]
    return tuple(sorted((one for one in found if one[1] is not None), key=lambda one: one[1].time_s))


def _kept():
    """Bytes kept so far, as the open budget counts them."""
    budget = current()
    return 0 if budget is None else budget.used.bytes


def _carried(setting, scene, plans, samples, tell):
    """The Journeys of all plans and of their flat-gravity references, None where there is none: two a motion. Samples are counted on
    the way."""
    starts = [s for p in plans for s in (p.course, p.flat_gravity)]
    journeys, ended = [None] * len(starts), 0
    for is_given in (True, False):  # what is given is there at once, and its path is in its plan
        numbers = [i for i, s in enumerate(starts) if s is not None and (s.prescribed is not None) == is_given]
        if not numbers:
            continue

        def grown(number, journey, numbers=numbers, samples=samples):
            place = numbers[number]
            if place % 2 == 0:
                count = grid_span(setting.rate, journey.begin_s, journey.ends_s)[1]
                samples.of_path(place // 2, count + EVENT_SAMPLES * len(journey.events), journey.ends_s)

        watch = tell and (lambda done, ended=ended: tell(ended + done))
        together, before = (setting.medium, [starts[i] for i in numbers]), samples.copy()
        try:
            if is_given:
                some = carry(*together, watch, grown)
            else:
                some = kept(carry, *together, watch=watch, grown=grown)
                try:
                    for number, journey in enumerate(some):  # of those from before nobody has been told
                        grown(number, journey)
                except TooMuch:
                    carry(*together, watch, partial(grown, samples=before))  # says of which it was too much at first
                    raise
        except StepLimitExceeded as exceeded:
            index = numbers[exceeded.index] // 2
            _refuse_steps(scene.motions[index], index, ON_THE_GROUND if exceeded.on_ground else IN_FLIGHT)
        except TooMuchWork as exceeded:
            if exceeded.index is not None:
                exceeded.index = numbers[exceeded.index] // 2
            raise
        ended += len(numbers)
        for i, journey in zip(numbers, some, strict=True):
            journeys[i] = journey
    return journeys


def _planned(setting, scene, unnamed, index, samples):
    """The Plan of a motion; refused where its plan alone is too much work, or its drops have too many samples."""
    motion = scene.motions[index]
    kind = KINDS[motion.kind]
    try:
        plan = kept(kind.plan, setting, unnamed) if kind.heavy else kind.plan(setting, unnamed)
    except TooMuch:
        plan = kind.plan(setting, motion)  # is refused again, by its name
    except StepLimitExceeded:
        _refuse_steps(motion, index, kind.limit)
    if plan.stream is not None and plan.stream.batch is not None:
        samples.of_drops(index, int(plan.stream.batch.span(setting.rate)[1].sum()))
    return plan


def _traced(setting, motion, unnamed, plan, journey, flat):
    flown = None if plan.course.prescribed else _flown(journey), flat and _flown(flat)
    came = kept(_came_of, setting, unnamed, flown, plan=plan, journey=journey, flat=flat)
    ways, ground = Ways(setting.habitat, plan), setting.habitat.words_of_ground
    return Traced(KINDS[motion.kind], motion, plan, *came[:2], ways, ground, came[2])


def _flown(journey):
    """All of a Journey that is told of it; where it starts is the plan's."""
    return journey.legs, journey.events, journey.end


def _came_of(setting, _motion, _ways_flown, *, plan, journey, flat):
    """The Track of a motion, its flat-gravity reference or None, and its findings: of its plan, which it has of the setting, and of the ways
    that it and its reference have flown, None where that is in the plan."""
    motion_track = track.of_journey(setting, plan, journey)
    if motion_track.path is None:
        return motion_track, None, {}
    beside = None if flat is None else flat_gravity.of_journey(setting, plan, flat, motion_track.ends_s)
    return motion_track, beside, plan.findings(setting, plan, motion_track) if plan.findings else {}


def _grid_count(setting, motions):
    """Samples of the whole grid: to the first at or after the last end; with nothing moving, one turn (at most 60 s)."""
    ends = [t.ends_s for t in motions if t.track.path is not None]
    ends += [t.flat_gravity.ends_s for t in motions if t.flat_gravity is not None]
    if not ends:
        period = spins.figures(setting.habitat.radius_m, setting.omega_rad_s(0.0)).period_s or 1.0
        ends = [setting.duration_s or min(period, 60.0)]
    rate = float(setting.rate)
    last = max(ends) if setting.duration_s is None else min(max(ends), setting.duration_s)
    return int(-(-(last * rate - 1e-9) // 1)) + 1


def _refuse_steps(motion, index, limit):
    """Raise the refusal of a motion that takes more steps than a `StepLimit`."""
    field = f"motions.{index}.{limit.field}" if hasattr(motion, limit.field) else f"motions.{index}"
    most, why = written(limit.most, ","), tr(limit.why)
    say = tr("Motion {motion} would take over {most} steps to work out: {why}", motion=motion.name, most=most, why=why)
    raise TooMuch(refusal(field, motion.name, tr("worked out within {most} steps", most=most), say)) from None
