"""Where the picture is seen from: the table of camera presets, which the page's stages read as well, and the cameras of a file, framed so
that what moves is in the picture.

A direction of view is (yaw, tilt) about the local directions of the leading motion's release; each side of the picture then
bounds a half-space of eyes, so the nearest eye that sees all points is found without a search.
"""

from dataclasses import asdict, dataclass

import numpy as np

from ..physics import frames
from ..shapes.base import TURNS
from .sampled_scene import Camera

ASPECT = 16 / 9
MARGIN = 0.08  # of the picture, left free on each side
WIDEST = float(np.tan(np.radians(30)))  # half of 60° from top to bottom, the most that any view has


@dataclass(frozen=True)
class View:
    """A direction of view and a field of view, degrees: yaw and tilt about the local directions of the release."""

    yaw_deg: float
    tilt_deg: float
    fov_deg: float


@dataclass(frozen=True)
class Preset:
    """seat: its letter on the page; view: a file's, of 16:9. A stage of another shape looks by what lies between `broad` and `square`:
    straight across the flight where it is broad, else from higher up and a little behind, for depth; None: by `view`, however broad."""

    seat: str
    view: View
    broad: View | None = None
    square: View | None = None


PRESETS = {
    "over_the_shoulder": Preset("a", View(16.0, 15.0, 48.0)),  # yaw from straight behind the thrower
    "beside": Preset("b", View(-6.0, 11.0, 30.0), View(0.0, 9.0, 26.0), View(-24.0, 16.0, 42.0)),
    "hub": Preset("c", View(0.0, 76.0, 30.0)),  # off a turntable the field of view is what makes things fit
    "down_the_axis": Preset("d", View(0.0, 6.0, 28.0), View(0.0, 5.0, 28.0), View(0.0, 10.0, 28.0)),
    "with_the_ball": Preset("e", View(40.0, 14.0, 45.0)),  # yaw from straight behind the thrower
    "whole_wheel": Preset("w", View(12.0, 7.0, 30.0)),
}
BROAD, SQUARE = 1.9, 1.4  # width to height
LEVEL_OVER_DEG, SECTION_OVER_DEG = 20.0, 11.0  # higher up: a turntable lies level, and a tube hides what is low in it
LEVEL_WHOLE_DEG = 24.0  # tilt at which a whole turntable is seen
PERSON_M, ROOM_M = 1.75, 1.2
MOST_POINTS = 161
NEAR_AXIS = 0.1  # of the radius: nearer to the axis than this, a ball's own "up" swings round too fast to follow


@dataclass(frozen=True)
class _Sights:
    """What the seats are placed by. rows (3, 3): spinward, up, axial of the release; behind_rad: yaw of an eye behind the
    thrower; lead_m, seen_m (n, 3): points of the first motion and of all; outline_m (n, 3): of the habitat."""

    trace: object
    rows: np.ndarray
    behind_rad: float
    start_s: float
    lead_m: np.ndarray
    seen_m: np.ndarray
    outline_m: np.ndarray


def cameras(trace, time_s, ball=None):
    """Cameras of a Trace watched over times (T,): those that ride in rotating axes, the others in inertial axes, metres.
    The first of its motions leads: the seats stand about its release.

    ball (T, 3): rotating positions of what the camera with the ball follows; left out where None.
    """
    scene = _scene_of(trace, time_s)
    level = trace.setting.habitat.words_of_ground.level
    over = LEVEL_OVER_DEG if level else 0.0 if trace.setting.habitat.section_radius_m is None else SECTION_OVER_DEG
    out = [
        _framed("over_the_shoulder", scene, scene.lead_m, behind_deg=np.degrees(scene.behind_rad)),
        _framed("beside", scene, scene.seen_m, over),
        _framed("hub", scene, scene.seen_m) if level else _from_hub(scene),
        _framed("down_the_axis", scene, scene.seen_m, over),
    ]
    if ball is not None:
        out.append(_with_ball(scene, np.asarray(ball, dtype=float)))
    return [*out, _whole(scene, LEVEL_WHOLE_DEG if level else PRESETS["whole_wheel"].view.tilt_deg)]


def table():
    """The presets as data, by the letters of the page's seats; what is raised, and how far."""
    return {
        "margin": MARGIN,
        "broad": BROAD,
        "square": SQUARE,
        "level_over_deg": LEVEL_OVER_DEG,
        "section_over_deg": SECTION_OVER_DEG,
        "level_whole_deg": LEVEL_WHOLE_DEG,
        "seats": {
            preset.seat: {"broad": asdict(preset.broad or preset.view), "square": asdict(preset.square or preset.view)}
            for preset in PRESETS.values()
        },
    }


def _scene_of(trace, time_s):
    habitat = trace.setting.habitat
    moving = [m for m in trace.motions if m.track.path is not None]
    middle = (0.0, 0.0, habitat.radius_m / 2 if habitat.words_of_ground.level else 0.0)
    floor, place, velocity, start_s = 0, middle, (0.0, 0.0, 0.0), 0.0
    if moving:
        plan = moving[0].plan
        floor, place, velocity, start_s = plan.floor, plan.place, plan.velocity, plan.start_s
    points = [_points(trace, m, time_s) for m in moving] or [_person(habitat, 0, middle)]
    outline = habitat.outline_m()
    with_all = _with_whole(habitat, outline)
    rows = habitat.chart(floor).axes_at(np.asarray(place, dtype=float))
    return _Sights(
        trace, rows, _behind(velocity), start_s, with_all(points[0]), with_all(np.concatenate(points)), outline
    )


def _behind(velocity):
    """Yaw of an eye behind one who throws at a velocity (spinward, up, axial)."""
    heading = np.arctan2(velocity[2], velocity[0]) if np.hypot(velocity[0], velocity[2]) > 1e-9 else 0.0
    return float(np.arctan2(-np.cos(heading), -np.sin(heading)))


def _points(trace, traced, time_s):
    """Rotating positions (n, 3) of a motion over the times, and of room for a person where it starts."""
    path = traced.track.path
    first, last = np.clip([time_s[0], time_s[-1]], path.begin_s, path.end_s)
    place, _, _ = path.both(trace.setting.habitat.spin, np.linspace(first, last, MOST_POINTS))
    return np.concatenate([place, _person(trace.setting.habitat, traced.plan.floor, traced.plan.place)])


def _person(habitat, floor, place):
    """Points (n, 3) of a little room about a person at a place, head to foot, no larger than the habitat has."""
    room, tall = min(ROOM_M, 0.3 * habitat.radius_m), min(PERSON_M, 1.6 * habitat.radius_m)
    about = [(-room, 0.0, 0.0), (room, 0.0, 0.0), (0.0, tall, 0.0), (0.0, 0.0, room), (0.0, 0.0, -room)]
    if habitat.words_of_ground.level:
        about = [(-0.3 * room, 0.0, 0.0), (0.3 * room, 0.0, 0.0), (0.0, 0.3 * tall, 0.0)]
    foot = np.array([place[0], habitat.ground_height_m(place[2]), place[2]])
    return habitat.chart(floor).position(foot + np.array(about))


def _with_whole(habitat, outline):
    """What adds the habitat's outline to points that are only understood with all of it round them."""

    def climbs(points):
        return habitat.words_of_ground.level or np.min(np.hypot(points[:, 0], points[:, 1])) < 0.3 * habitat.radius_m

    return lambda points: np.concatenate([points, outline]) if climbs(points) else points


def _axes(rows, yaw_rad, tilt_rad):
    """Right, up and back (..., 3, 3) of an eye that looks from (yaw, tilt) about the local directions rows (..., 3, 3)."""
    sy, cy, st, ct = np.sin(yaw_rad), np.cos(yaw_rad), np.sin(tilt_rad), np.cos(tilt_rad)
    return np.array([[cy, 0.0, -sy], [-st * sy, ct, -st * cy], [ct * sy, st, ct * cy]]) @ rows


def _fit(points, axes, fov_deg):
    """The nearest eye (3,) along `axes` that sees all points (n, 3), and its distance from their middle."""
    tall = np.tan(np.radians(fov_deg) / 2) * (1 - 2 * MARGIN)
    wide = ASPECT * tall
    x, y, z = axes @ points.T
    right, left, over, under = np.max([x + wide * z, wide * z - x, y + tall * z, tall * z - y], axis=1)
    near, far = np.max(z), np.min(z)
    eye = max((right + left) / (2 * wide), (over + under) / (2 * tall), near + 0.02 * (near - far) + 0.05)
    middle = np.array([(right - left) / 2, (over - under) / 2, eye])
    return middle @ axes, float(eye - (near + far) / 2)


def _framed(name, scene, points, over_deg=0.0, behind_deg=0.0):
    view = PRESETS[name].view
    axes = _axes(scene.rows, np.radians(behind_deg + view.yaw_deg), np.radians(view.tilt_deg + over_deg))
    eye, _ = _fit(points, axes, view.fov_deg)
    return Camera(name, True, eye[None], axes[None], view.fov_deg, ASPECT)


def _from_hub(scene):
    """The eye stays by the hub; the field of view is what makes things fit."""
    habitat = scene.trace.setting.habitat
    wanted = max(0.3 * habitat.radius_m, habitat.radius_m - 3 * habitat.hub_m)
    axes = _axes(scene.rows, 0.0, np.radians(PRESETS["hub"].view.tilt_deg))
    tan = 0.3
    for _ in range(6):
        fov_deg = float(2 * np.degrees(np.arctan(tan)))
        eye, distance = _fit(scene.seen_m, axes, fov_deg)
        tan = min(WIDEST, max(0.012, tan * distance / wanted))
    return Camera("hub", True, eye[None], axes[None], fov_deg, ASPECT)


def _with_ball(scene, ball):
    """Beside the ball and a little behind, turning with its own "up" unless it passes by the axis."""
    habitat = scene.trace.setting.habitat
    lead = next((m.plan for m in scene.trace.motions if m.track.path is not None), None)
    rows = np.broadcast_to(scene.rows, (len(ball), 3, 3))
    if np.min(np.hypot(ball[:, 0], ball[:, 1])) > NEAR_AXIS * habitat.radius_m:
        rows = habitat.chart(lead.floor if lead else 0).axes(ball)
    view = PRESETS["with_the_ball"].view
    axes = _axes(rows, scene.behind_rad + np.radians(view.yaw_deg), np.radians(view.tilt_deg))
    diameter_m = lead.body.diameter_m if lead else 0.0
    distance = min(max(5.0, 14 * diameter_m), max(1.2 * habitat.radius_m, 1.0))
    return Camera("with_the_ball", True, ball + distance * axes[:, 2], axes, view.fov_deg, ASPECT)


def _whole(scene, tilt_deg):
    """From outside, still while the habitat turns: whatever it sweeps is in the picture."""
    turned = scene.trace.setting.habitat.spin.turn(scene.rows, scene.start_s)
    view = PRESETS["whole_wheel"].view
    axes = _axes(turned, np.radians(view.yaw_deg), np.radians(tilt_deg))
    swept = frames.turn(scene.outline_m[:, None], np.linspace(0.0, 2 * np.pi, TURNS, endpoint=False)).reshape(-1, 3)
    eye, _ = _fit(swept, axes, view.fov_deg)
    return Camera("whole_wheel", False, eye[None], axes[None], view.fov_deg, ASPECT)
