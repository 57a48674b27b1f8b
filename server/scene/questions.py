"""Questions asked of a scene: trace, so far. Document in, answer out; the page and the commands share them."""

from dataclasses import dataclass

from ..errors import BadInput, TooMuch, refusal
from ..motions import KINDS, companion, track
from ..motions.companion import Companion
from ..motions.flight import MOST_STEPS, Crawls, fly, whole
from ..motions.plan import Plan
from ..motions.setting import Setting
from ..motions.track import Track, grid_span
from ..physics import habitat as habitats
from ..physics import spin
from ..physics.air import air_at
from ..physics.constants import RPM_RAD_S
from .checks import check
from .document import Scene, frame_rate
from .refusals import wrong

LEAST_SAMPLES_S = 48
GREATEST_SAMPLES = 500_000
GREATEST_SAMPLES_IN_LISTS = 200_000


@dataclass(frozen=True)
class Traced:
    """A motion of the scene and all that came of it."""

    motion: object
    plan: Plan
    track: Track
    companion: Companion | None

    @property
    def ends_s(self):
        """When the last of it ends: of a pour, its last parcel, even past the scene's own end."""
        pours_for_s = (
            0.0 if self.plan.stream is None else self.plan.stream.last_leaves_s - self.plan.stream.first_leaves_s
        )
        return self.track.ends_s + pours_for_s


@dataclass(frozen=True)
class Trace:
    """A scene and what came of its motions, on a grid of `count` samples at setting.rate a second."""

    scene: Scene
    setting: Setting
    samples_per_frame: int
    count: int
    motions: list[Traced]


def setting_of(scene):
    """Habitat, air and clock of a scene, and its samples a frame."""
    part = scene.habitat
    ramp = [(p.time_s, p.spin_rpm * RPM_RAD_S) for p in part.spin_ramp]
    habitat = habitats.Habitat(
        part.radius_m,
        spin.ramped(part.spin_rpm * RPM_RAD_S, ramp),
        part.width_m,
        part.ceiling_m,
        part.hub_radius_m,
        part.axial_thrust_m_s2,
    )
    air = None if scene.air is None else air_at(scene.air.pressure_kpa, scene.air.temperature_c)
    fps = frame_rate(scene.sampling.fps)
    per_frame = -(-LEAST_SAMPLES_S * fps.denominator // fps.numerator)
    return Setting(habitat, air, fps * per_frame, scene.sampling.duration_s), per_frame


def trace(scene, greatest_samples=GREATEST_SAMPLES, watch=None):
    """Fly every motion of a Scene -> Trace. Raises TooMuch past greatest_samples, naming the motion that passed it.

    watch(done, of) is told how far the work has come; what it raises stops it.
    """
    setting, per_frame = setting_of(scene)
    plans = [KINDS[m.kind](setting, m) for m in scene.motions]
    courses = [c for p in plans for c in (p.course, p.companion)]
    waiting = [c.release for c in courses if c is not None and c.release is not None]
    of = len(waiting) + len(plans)
    try:
        flown = iter(fly(setting.medium, waiting, watch and (lambda done: watch(done, of))))
    except Crawls as crawling:
        releases = [c and c.release for c in courses]
        _refuse_crawling(scene, next(i // 2 for i, r in enumerate(releases) if r is crawling.release))
    flights = [c and whole(c.opening, c.release and next(flown)) for c in courses]
    _weigh(setting, scene, flights[::2], greatest_samples)
    motions = []
    for i, (motion, plan) in enumerate(zip(scene.motions, plans, strict=True)):
        motions.append(_traced(setting, motion, plan, *flights[2 * i : 2 * i + 2]))
        if watch is not None:
            watch(len(waiting) + i + 1, of)
    return Trace(scene, setting, per_frame, _grid_count(setting, motions), motions)


def _traced(setting, motion, plan, flown, flat):
    made = track.of_flight(setting, plan, flown)
    if flat is None or made.path is None:
        return Traced(motion, plan, made, None)
    return Traced(motion, plan, made, companion.of_flight(setting, plan, flat))


def _weigh(setting, scene, flights, greatest):
    """Refuse a scene whose samples pass the work limit, before any is made."""
    spent = 0
    for i, flown in enumerate(flights):
        begin_s, end_s = flown.path.begin_s, flown.path.end_s
        spent = max(spent + grid_span(setting.rate, begin_s, end_s)[1], float(setting.rate) * end_s)
        if spent > greatest:
            _refuse_work(scene.motions[i].name, i, greatest)


def _refuse_work(name, index, greatest):
    say = (
        f"Motion {name} takes this scene past {greatest:,} samples; let it end sooner (sampling.duration_s), start sooner, "
        "or take fewer frames a second (sampling.fps)."
    )
    raise TooMuch(refusal(f"motions.{index}", name, f"within {greatest:,} samples for the whole scene", say))


def _refuse_crawling(scene, index):
    name = scene.motions[index].name
    say = (
        f"Motion {name} would take over {MOST_STEPS:,} steps to work out: its body is too light for its size in this air. "
        "Make it heavier or smaller, thin the air, or let the scene end sooner (sampling.duration_s)."
    )
    raise TooMuch(refusal(f"motions.{index}.body", name, f"worked out within {MOST_STEPS:,} steps", say)) from None


def _grid_count(setting, motions):
    """Samples of the whole grid: to the first at or after the last end; with nothing moving, one turn (at most 60 s)."""
    ends = [t.ends_s for t in motions if t.track.path is not None]
    ends += [t.companion.ends_s for t in motions if t.companion is not None]
    if not ends:
        period = habitats.figures(setting.habitat.radius_m, setting.omega_rad_s(0.0)).period_s or 1.0
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
        value = habitats.omega_for(part.radius_m, **wanted) / RPM_RAD_S
        low, high = 0.0, 200.0
    elif part.spin_rpm == 0:
        raise BadInput(wrong("habitat.spin_rpm", part.spin_rpm, f"above 0 while {hold.replace('_', ' ')} is held"))
    else:
        value = habitats.radius_for(omega_rad_s=part.spin_rpm * RPM_RAD_S, **wanted)
        low, high = 0.1, 100_000.0
    if not low <= value <= high:
        raise BadInput(wrong(follower, value, f"{low:g} to {high:,.0f} while {hold.replace('_', ' ')} is held"))
    habitat = part.model_copy(update={FOLLOWERS[follower]: value})
    return check(scene.model_copy(update={"habitat": habitat}))
