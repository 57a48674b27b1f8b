"""Questions asked of a scene: trace, so far. Document in, answer out; the page and the commands share them."""

from dataclasses import dataclass, field, replace

from ..errors import BadInput, TooMuch, refusal
from ..kinds import KINDS
from ..kinds.hang.swing import MOST_TRIES
from ..motions import drift, flat_gravity, track
from ..motions.flat_gravity import FlatGravityReference
from ..motions.flight import MOST_STEPS, StepLimitExceeded
from ..motions.journey import carry
from ..motions.plan import Plan
from ..motions.setting import Setting
from ..motions.track import Track, grid_span
from ..physics import spin as spins
from ..physics.air import air_at
from ..physics.constants import RPM_RAD_S
from ..shapes import Ground
from ..shapes.base import DECK
from .checks import check
from .document import Scene, frame_rate
from .validation_errors import wrong

LEAST_SAMPLES_S = 48
GREATEST_SAMPLES = 500_000
GREATEST_SAMPLES_IN_LISTS = 200_000
EVENT_SAMPLES = 5  # an event's share of an answer, in samples


@dataclass(frozen=True)
class Traced:
    """A motion of the scene and all that came of it; stands_on: its ground;
    findings: what its kind tells beside its path (`plan.Plan`); drift: the parts of its landing's drift, or None and why not
    (`drift.parts`)."""

    motion: object
    plan: Plan
    track: Track
    flat_gravity: FlatGravityReference | None
    stands_on: Ground = DECK
    findings: dict = field(default_factory=dict)
    drift: tuple = (None, "not_flown")

    @property
    def across(self):
        """Words for either way across its ground."""
        return self.stands_on.across

    @property
    def ground(self):
        """The ground's name as a surface."""
        return self.stands_on.surface

    @property
    def ends_s(self):
        """When the last of it ends: of a pour, its last parcel, even past the scene's own end."""
        stream = self.plan.stream
        if stream is None:
            return self.track.ends_s
        if stream.batch is not None:
            return max(self.track.ends_s, stream.batch.last_ends_s)
        return self.track.ends_s + (stream.last_leaves_s - stream.first_leaves_s)


@dataclass(frozen=True)
class Trace:
    """A scene and what came of its motions, on a grid of `count` samples at setting.rate a second; others: (name, Trace) of
    each habitat set beside its own."""

    scene: Scene
    setting: Setting
    samples_per_frame: int
    count: int
    motions: list[Traced]
    others: list = field(default_factory=list)


def setting_of(scene):
    """Habitat, air and clock of a scene, and its samples a frame."""
    air = None if scene.air is None else air_at(scene.air.pressure_kpa, scene.air.temperature_c)
    fps = frame_rate(scene.sampling.fps)
    per_frame = -(-LEAST_SAMPLES_S * fps.denominator // fps.numerator)
    return Setting(scene.habitat.habitat(), air, fps * per_frame, scene.sampling.duration_s), per_frame


def trace(scene, greatest_samples=GREATEST_SAMPLES, watch=None):
    """Take every motion of a Scene to its end, in its own habitat and in those set beside it -> Trace. Raises TooMuch past
    greatest_samples, naming the motion that passed it.

    watch(done, of) is told how far the work has come; what it raises stops it.
    """
    others = [scene.model_copy(update={"habitat": o.habitat, "compare": []}) for o in scene.compare]
    of, done, spent = (1 + len(others)) * 3 * len(scene.motions), 0, 0.0
    traces = []
    for one in (scene, *others):
        tell = watch and (lambda so_far, done=done: watch(done + so_far, of))
        made, spent = _trace_one(one, greatest_samples, spent, tell)
        traces.append(made)
        done += 3 * len(scene.motions)
    return replace(traces[0], others=[(o.name, t) for o, t in zip(scene.compare, traces[1:], strict=True)])


def _trace_one(scene, greatest_samples, spent, tell):
    """The Trace of a scene in its own habitat, and the work spent after it."""
    setting, per_frame = setting_of(scene)
    plans = [_planned(setting, scene, i) for i in range(len(scene.motions))]
    starts = [s for p in plans for s in (p.course, p.flat_gravity)]
    try:
        journeys = iter(carry(setting.medium, [s for s in starts if s is not None], tell))
    except StepLimitExceeded as exceeded:
        flown = [i for i, s in enumerate(starts) if s is not None]
        _refuse_crawling(scene, flown[exceeded.index] // 2)
    journeys = [s and next(journeys) for s in starts]
    spent = _weigh(setting, scene, plans, journeys[::2], greatest_samples, spent)
    motions = []
    for i, (motion, plan) in enumerate(zip(scene.motions, plans, strict=True)):
        motions.append(_traced(setting, motion, plan, *journeys[2 * i : 2 * i + 2]))
        if tell:
            tell(2 * len(plans) + i + 1)
    return Trace(scene, setting, per_frame, _grid_count(setting, motions), motions), spent


def _planned(setting, scene, index):
    """The Plan of a motion; refused where its plan alone is too much work."""
    motion = scene.motions[index]
    try:
        return KINDS[motion.kind](setting, motion)
    except StepLimitExceeded:
        _refuse_swinging(motion.name, index)


def _traced(setting, motion, plan, journey, flat):
    made = track.of_journey(setting, plan, journey)
    beside = None if flat is None or made.path is None else flat_gravity.of_journey(setting, plan, flat, made.ends_s)
    told = {} if plan.findings is None or made.path is None else plan.findings(setting, plan, made)
    return Traced(motion, plan, made, beside, setting.habitat.words_of_ground, told, drift.parts(setting, plan, made))


def _weigh(setting, scene, plans, journeys, greatest, spent):
    """Refuse a scene whose samples pass the work limit, before any is made; what is spent so far, with what was before."""
    for i, journey in enumerate(journeys):
        samples = grid_span(setting.rate, journey.begin_s, journey.ends_s)[1] + EVENT_SAMPLES * len(journey.events)
        stream = plans[i].stream
        if stream is not None and stream.batch is not None:
            samples += int(stream.batch.span(setting.rate)[1].sum())
        spent = max(spent + samples, float(setting.rate) * journey.ends_s)
        if spent > greatest:
            _refuse_work(scene.motions[i].name, i, greatest)
    return spent


def _refuse_work(name, index, greatest):
    say = (
        f"Motion {name} takes this scene past {greatest:,} samples; let it end sooner (sampling.duration_s), start sooner, "
        "rebound less often (bounces), or take fewer frames a second (sampling.fps)."
    )
    raise TooMuch(refusal(f"motions.{index}", name, f"within {greatest:,} samples for the whole scene", say))


def _refuse_swinging(name, index):
    say = (
        f"Motion {name} would take over {MOST_TRIES:,} steps to work out: it swings too often, or its body is too light for its "
        "size in this air. Lengthen its line, make it heavier, or let the scene end sooner (sampling.duration_s)."
    )
    may_be = f"worked out within {MOST_TRIES:,} steps"
    raise TooMuch(refusal(f"motions.{index}.length_m", name, may_be, say)) from None


def _refuse_crawling(scene, index):
    motion = scene.motions[index]
    name, field = motion.name, f"motions.{index}.body" if hasattr(motion, "body") else f"motions.{index}"
    say = (
        f"Motion {name} would take over {MOST_STEPS:,} steps to work out: its body is too light for its size in this air. "
        "Make it heavier or smaller, thin the air, or let the scene end sooner (sampling.duration_s)."
    )
    raise TooMuch(refusal(field, name, f"worked out within {MOST_STEPS:,} steps", say)) from None


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


HOLDS = {"gravity": "gravity_m_s2", "rim_speed": "rim_speed_m_s"}
FOLLOWERS = {"habitat.radius_m": "radius_m", "habitat.spin_rpm": "spin_rpm"}


def followed(scene, hold, held, follower):
    """The scene with the follower ("habitat.radius_m" or "habitat.spin_rpm") set so that the gravity (m/s2) or the rim
    speed (m/s) `held` holds at the deck. Raises BadInput where the follower would leave its range."""
    part = scene.habitat
    wanted = {HOLDS[hold]: held}
    if FOLLOWERS[follower] == "spin_rpm":
        value = spins.omega_for(part.radius_m, **wanted) / RPM_RAD_S
        low, high = 0.0, 200.0
    elif part.spin_rpm == 0:
        raise BadInput(wrong("habitat.spin_rpm", part.spin_rpm, f"above 0 while {hold.replace('_', ' ')} is held"))
    else:
        value = spins.radius_for(omega_rad_s=part.spin_rpm * RPM_RAD_S, **wanted)
        low, high = 0.1, 100_000.0
    if not low <= value <= high:
        raise BadInput(wrong(follower, value, f"{low:g} to {high:,.0f} while {hold.replace('_', ' ')} is held"))
    habitat = part.model_copy(update={FOLLOWERS[follower]: value})
    return check(scene.model_copy(update={"habitat": habitat}))
