"""From a MatchRequest to what the fit takes: a sight, what is known, how the air holds the body. What does not go together is refused,
and the refusal names the row."""

from dataclasses import dataclass, replace

import numpy as np

from ...errors import BadInput, refusal
from ...kinds.motion import body_of
from ...language import tr, tr_as, written
from ...phrases import AND
from ...physics import frames
from ...physics.air import air_at
from ...physics.bodies import Body
from ...physics.constants import G0_M_S2, RPM_RAD_S
from ...shapes.part import GREATEST_RADIUS_M, GREATEST_RIM_SPEED_M_S
from ...shots.match import sights
from ...shots.match.flight import Resistance
from ...shots.match.unknowns import Known
from ..document import frame_rate
from ..validation_errors import wrong

LEAST_ROWS = 3
STILL_SD = 4.0  # accuracies within which a thing that is tracked does not move
ROOM_AIR = (101.325, 20.0)  # kPa and °C, of air that is not known
GREATEST_KPA = 1000.0
GREATEST_DRAG_1_M = 30.0  # of a body that is not known
OWN_BODY = Body(1.0, 0.1, 0.5)  # of a body that is not known: what is sought is its drag a metre


@dataclass(frozen=True)
class Asked:
    """A sight; what is known; the resistance that goes with it, None in a vacuum that is known, and that of air that may be tried;
    rows: name of the list of rows; first_s: the time of its first; fps: of playback; body: what flies, None where it is not known."""

    request: object
    sight: object
    known: Known
    resistance: Resistance | None
    reference: Resistance
    rows: str
    first_s: float
    playback_fps: object
    body: Body | None
    drag_1_m: float


def asked(request) -> Asked:
    """The Asked of a MatchRequest. Raises BadInput."""
    name, rows = _rows(request)
    _known_stands(request.known)
    time_s = _times(request, name, rows)
    sight = _sight(request, time_s, rows)
    _moves(sight, name)
    known, body, resistance, reference, per_metre = _knowledge(request)
    if not sight.has_deck and known.gravity_m_s2 is not None and known.radius_m is None:
        may_be = tr("null where the origin is on the axis and no radius is known: the deck is not seen there")
        raise BadInput(wrong("known.gravity_g", request.known.gravity_g, may_be))
    playback = None if request.playback_fps is None else frame_rate(request.playback_fps)
    return Asked(request, sight, known, resistance, reference, name, float(time_s[0]), playback, body, per_metre)


def _rows(request):
    """The name of the rows, and the rows."""
    given = [n for n in ("track", "picture", "keys") if getattr(request, n) is not None]
    if len(given) != 1:
        was, may_be = tr("none of them"), tr("exactly one of track, picture or keys")
        for n, name in enumerate(given):
            was = tr(AND, first=was, last=name) if n else name
        say = tr("The path was given as {was}; it must be {may_be}.", was=was, may_be=may_be)
        raise BadInput(refusal(given[1] if given else "track", was, may_be, say))
    if given[0] == "track":
        return "track", request.track
    return ("picture.points", request.picture.points) if given[0] == "picture" else ("keys.rows", request.keys.rows)


def _times(request, name, rows):
    """Times (N,), s, checked: enough rows, each later than the one before."""
    if len(rows) < LEAST_ROWS:
        count = {0: tr("no rows"), 1: tr("one row"), 2: tr("two rows")}[len(rows)]
        say = tr(
            "The path has {count}; it must have at least {least}, and ten or more to tell one habitat from another.",
            count=count,
            least=LEAST_ROWS,
        )
        raise BadInput(refusal(name, count, tr("at least {count} rows", count=LEAST_ROWS), say))
    if name == "picture.points":
        return _rising(name, *_of_frames(request.picture, rows))
    return _rising(name, "time_s", np.array([row.time_s for row in rows]))


def _of_frames(picture, points):
    by_frame = [n for n, p in enumerate(points) if p.time_s is None]
    for n in by_frame:
        if points[n].frame is None:
            say = tr("Row {row} has neither time_s nor frame; it must have one of them.", row=n + 1)
            raise BadInput(refusal(f"picture.points.{n}.time_s", tr("nothing"), tr("a time, or a frame"), say))
    if by_frame and picture.fps is None:
        say = tr(
            "Row {row} has a frame and no time; picture.fps must say how many frames a second there are.",
            row=by_frame[0] + 1,
        )
        raise BadInput(refusal("picture.fps", tr("nothing"), tr('1 to 240, or "n/d"'), say))
    rate = float(frame_rate(picture.fps)) if by_frame else 1.0
    times = [p.frame / rate if p.time_s is None else p.time_s for p in points]
    return "frame" if by_frame else "time_s", np.array(times, dtype=float)


def _rising(name, column, time_s):
    step = np.diff(time_s)
    at = int(np.argmax(step <= 0)) + 1
    if np.any(step <= 0):
        same = time_s[at] == time_s[at - 1]
        time, before = written(time_s[at], "g"), written(time_s[at - 1], "g")
        say = tr(
            "The time of row {row} was {time} s, before that of row {last}, {before} s; each row must be later than the one before.",
            row=at + 1,
            time=time,
            last=at,
            before=before,
        )
        if same:
            say = tr(
                "The time of row {row} was {time} s, the same as that of row {last}; each row must be later than the one before.",
                row=at + 1,
                time=time,
                last=at,
            )
        raise BadInput(refusal(f"{name}.{at}.{column}", time, tr("above {time} s", time=before), say))
    return time_s


def _known_stands(known):
    """No more than two of radius, spin and gravity, and those within range together."""
    given = [n for n in ("radius_m", "spin_rpm", "gravity_g") if getattr(known, n) is not None]
    if len(given) == 3:
        say = tr("Radius, spin and gravity were all given; of these three at most two can be known, the third follows.")
        may_be = tr("left out where radius and spin are known")
        raise BadInput(refusal("known.gravity_g", written(known.gravity_g), may_be, say))
    radius, omega = known.radius_m, None if known.spin_rpm is None else known.spin_rpm * RPM_RAD_S
    gravity = None if known.gravity_g is None else known.gravity_g * G0_M_S2
    if omega == 0 and gravity:
        raise BadInput(wrong("known.spin_rpm", known.spin_rpm, tr("above 0 where gravity is known")))
    if gravity:
        radius = radius or (gravity / omega**2 if omega else None)
        omega = omega or ((gravity / radius) ** 0.5 if radius else None)
    if radius and omega and omega * radius > GREATEST_RIM_SPEED_M_S * (1 + 1e-9):
        may_be = tr(
            "such that the rim moves at no more than {most} m/s (here {speed})",
            most=written(GREATEST_RIM_SPEED_M_S, ",.0f"),
            speed=written(omega * radius, ",.0f"),
        )
        raise BadInput(wrong(f"known.{given[-1]}", getattr(known, given[-1]), may_be))
    if radius and not 0.1 <= radius <= GREATEST_RADIUS_M * (1 + 1e-9):
        may_be = tr("such that the radius is within 0.1 to 100,000 m (here {radius})", radius=written(radius, ",.4g"))
        raise BadInput(wrong(f"known.{given[-1]}", getattr(known, given[-1]), may_be))


def _sight(request, time_s, rows):
    """The sight of the rows at times (N,)."""
    if request.picture is not None:
        return _of_picture(request, time_s, rows)
    sd, since = _accuracy_m(request), time_s - time_s[0]
    return _of_track(request, since, rows, sd) if request.track is not None else _of_keys(request, since, rows, sd)


def _accuracy_m(request):
    if request.accuracy_px is not None:
        may_be = tr("left out of a path in metres: its accuracy is accuracy_m")
        raise BadInput(wrong("accuracy_px", request.accuracy_px, may_be))
    if request.accuracy_m is None:
        say = tr(
            "Accuracy (accuracy_m) is missing; it must be how well a point is known, one standard deviation, above 0 m."
        )
        raise BadInput(refusal("accuracy_m", tr("nothing"), tr("above 0, to 1,000 m"), say))
    return request.accuracy_m


def _of_track(request, time_s, rows, sd):
    with_axial = [row.axial_m is not None for row in rows]
    if any(with_axial) and not all(with_axial):
        at = with_axial.index(not with_axial[0])
        say = tr("Row {row} has an axial_m, which row 1 has not; it must be in every row or in none.", row=at + 1)
        if with_axial[0]:
            say = tr("Row {row} has no axial_m, which row 1 has; it must be in every row or in none.", row=at + 1)
        may_be = tr("in every row or in none")
        raise BadInput(refusal(f"track.{at}.axial_m", shown_of(rows[at].axial_m), may_be, say))
    columns = [[row.along_m for row in rows], [row.height_m for row in rows]]
    columns += [[row.axial_m for row in rows]] if all(with_axial) else []
    seen, radius = np.array(columns).T, _radius_of(request.known)
    if radius is not None and np.any(seen[:, 1] >= radius):
        at = int(np.argmax(seen[:, 1] >= radius))
        was, most = written(seen[at, 1], "g"), written(radius, "g")
        say = tr(
            "The height of row {row} was {height} m; it must be below the radius that is known, {radius} m.",
            row=at + 1,
            height=was,
            radius=most,
        )
        raise BadInput(refusal(f"track.{at}.height_m", was, tr("below {length} m", length=most), say))
    return sights.PlacesAboard(time_s, seen, np.full(seen.shape[1], sd))


def shown_of(value):
    """A value as a refusal shows it."""
    return tr("nothing") if value is None else written(value, "g")


def _of_keys(request, time_s, rows, sd):
    seen = np.array([[row.x_m, row.y_m, row.z_m] for row in rows])
    keys, known = request.keys, request.known
    if keys.view == "inertial":
        omega = _omega_of(known)
        if omega is None or (keys.origin == "deck" and known.radius_m is None):
            may_be = tr("rotating, where the spin is not known")
            say = tr(
                "The keys are in axes that stand still; to read them the spin must be known (known.radius_m, known.spin_rpm)."
            )
            if keys.origin == "deck":
                may_be = tr("rotating, where radius and spin are not known")
                say = tr(
                    "The keys are in axes that stand still; to read them radius and spin must be known (known.radius_m, "
                    "known.spin_rpm)."
                )
            raise BadInput(refusal("keys.view", "inertial", may_be, say))
        off = np.array([0.0, known.radius_m if keys.origin == "deck" else 0.0, 0.0])
        moved = seen - off
        angle = omega * np.array([row.time_s for row in rows])  # the axes coincide with the deck's at time 0
        turned = frames.turn(np.stack([-moved[:, 1], moved[:, 0], moved[:, 2]], -1), -angle)
        seen = np.stack([turned[:, 1], -turned[:, 0], turned[:, 2]], -1) + off
    return sights.Points(time_s, seen, np.full(3, sd), keys.origin == "deck")


def _radius_of(known):
    """The radius that is known, or follows from what is."""
    both = known.gravity_g and known.spin_rpm
    return known.gravity_g * G0_M_S2 / (known.spin_rpm * RPM_RAD_S) ** 2 if both else known.radius_m


def _omega_of(known):
    if known.spin_rpm is not None:
        return known.spin_rpm * RPM_RAD_S
    both = known.gravity_g is not None and known.radius_m is not None
    return (known.gravity_g * G0_M_S2 / known.radius_m) ** 0.5 if both else None


def _of_picture(request, time_s, points):
    picture = request.picture
    if (picture.plane is None) == (picture.camera is None):
        was = tr_as("of two", "neither") if picture.plane is None else tr_as("of two", "both")
        say = tr(
            "A picture's pixels have no scale: of plane and camera {was} was given; exactly one of them must say how pixels become "
            "metres.",
            was=was,
        )
        raise BadInput(refusal("picture.plane", was, tr("exactly one of plane and camera"), say))
    seen = np.array([[p.x_px, p.y_px] for p in points])
    if picture.plane is not None:
        return _on_plane(request, time_s - time_s[0], seen)
    sd = np.full(2, _accuracy_px(request, None))
    cameras = picture.camera if isinstance(picture.camera, list) else [picture.camera]
    timed = all(camera.time_s is not None for camera in cameras)
    if not timed and len(cameras) not in (1, len(points)):
        counts = {"count": len(cameras), "points": len(points)}
        may_be = tr("one camera, or one for each of the {points} points", **counts)
        say = tr(
            "There were {count} cameras; there must be one camera, or one for each of the {points} points.", **counts
        )
        raise BadInput(refusal("picture.camera", tr("{count} cameras", **counts), may_be, say))
    return _through(request, time_s, seen, sd, cameras, timed)


def _through(request, time_s, seen, sd, cameras, timed):
    many = isinstance(request.picture.camera, list)
    for n, camera in enumerate(cameras):
        check_camera(f"picture.camera.{n}" if many else "picture.camera", camera, request.known.radius_m)
    sizes = {(camera.width_px, camera.height_px) for camera in cameras}
    if len(sizes) > 1:
        raise BadInput(
            wrong("picture.camera.1.width_px", tr("another size"), tr("the same in every row: one clip has one size"))
        )
    sight = through(cameras, time_s, seen, sd)
    if not timed or len(cameras) == 1:
        return replace(sight, time_s=time_s - time_s[0])
    at = rising_times(cameras, "picture.camera")
    return replace(replace(sight, time_s=at).at(time_s), time_s=time_s - time_s[0])


def check_camera(at, camera, radius_m):
    """Raise BadInput where a camera, named `at`, looks nowhere, or it or its aim is beyond the axis of a radius that is known."""
    if camera.position == camera.look_at:
        was, may_be = tr("where the camera is"), tr("another place than the camera's position")
        raise BadInput(wrong(f"{at}.look_at", was, may_be))
    for name, spot in (("position", camera.position), ("look_at", camera.look_at)):
        if radius_m is not None and spot.height_m > radius_m:
            may_be = tr("at most the radius that is known, {radius} m", radius=written(radius_m, "g"))
            raise BadInput(wrong(f"{at}.{name}.height_m", spot.height_m, may_be))


def through(cameras, time_s, seen, sd):
    """A sight (CameraPixels) through cameras of one picture size, one for all rows or one a row."""
    spots = [np.array([[getattr(getattr(c, n), f) for f in ("along_m", "height_m", "axial_m")] for c in cameras])
             for n in ("position", "look_at")]  # fmt: skip
    figures = np.stack(
        [
            [0.5 * c.width_px / np.tan(np.radians(c.field_of_view_deg / 2)) for c in cameras],
            np.radians([c.roll_deg for c in cameras]),
        ],
        axis=-1,
    )
    middle = np.array([cameras[0].width_px, cameras[0].height_px]) / 2
    return sights.CameraPixels(time_s, seen, sd, *spots, figures[:, 0], figures[:, 1], middle)


def rising_times(cameras, name):
    """The times (C,) of a camera's rows, a field of that name. Raises BadInput where one is no later than the one before."""
    times = np.array([camera.time_s for camera in cameras])
    late = np.flatnonzero(np.diff(times) <= 0)
    if len(late):
        n = int(late[0]) + 1
        was, before = written(times[n], "g"), written(times[n - 1], "g")
        say = tr(
            "The time of row {row} of the camera was {time} s; each row must be later than the one before.",
            row=n + 1,
            time=was,
        )
        raise BadInput(refusal(f"{name}.{n}.time_s", was, tr("above {time} s", time=before), say))
    return times


def _on_plane(request, time_s, seen):
    plane = request.picture.plane
    line, up = np.subtract(plane.to_px, plane.from_px).astype(float), np.array(plane.up, dtype=float)
    if not np.any(line):
        may_be = tr("another pixel than from_px: a line of no length gives no scale")
        raise BadInput(wrong("picture.plane.to_px", list(plane.to_px), may_be))
    if not np.any(up):
        raise BadInput(wrong("picture.plane.up", list(plane.up), tr("a direction [x, y] in the picture, not both 0")))
    scale, up = plane.distance_m / float(np.hypot(*line)), up / np.hypot(*up)
    right = np.array([-up[1], up[0]])
    spinward = right if plane.right_is == "spinward" else -right
    deck = np.array(plane.from_px if plane.deck_px is None else plane.deck_px, dtype=float)
    sd = np.full(2, _accuracy_px(request, scale))
    return sights.PlanePixels(time_s, seen, sd, scale, deck, up, spinward)


def _accuracy_px(request, metres_a_pixel):
    """The accuracy in pixels; on a plane metres will do as well."""
    if request.accuracy_px is not None and request.accuracy_m is not None:
        raise BadInput(wrong("accuracy_m", request.accuracy_m, tr("left out where accuracy_px is given")))
    if request.accuracy_px is not None:
        return request.accuracy_px
    if request.accuracy_m is not None and metres_a_pixel:
        return request.accuracy_m / metres_a_pixel
    say = tr(
        "Accuracy (accuracy_px) is missing; it must be how well a point is known, one standard deviation, above 0 px."
    )
    raise BadInput(refusal("accuracy_px", tr("nothing"), tr("above 0, to 10,000 px"), say))


def _moves(sight, name):
    """A thing at rest tells nothing of a habitat."""
    off = np.max(np.abs(sight.seen - sight.seen.mean(axis=0)) / sight.sd)
    if off <= STILL_SD:
        count = len(sight.seen)
        say = tr(
            "From row 1 to row {count} it stays in one place, within what the accuracy leaves open; a path must move, for a thing at "
            "rest tells nothing of how it flies.",
            count=count,
        )
        raise BadInput(refusal(name, tr("at rest"), tr("a thing that moves"), say))


def _knowledge(request):
    """(Known, Body or None, Resistance or None, Resistance of air that may be tried, its drag a metre)."""
    part, given = request.known, request.known.model_fields_set
    body = None if part.body is None else body_of(part.body)
    if body is not None and body.buoyant:
        was, may_be = tr("a body that the air bears up"), tr("one that falls: buoyancy is not part of a match")
        raise BadInput(wrong("known.body", was, may_be))
    vacuum = "air" in given and part.air is None
    kpa, celsius = (part.air.pressure_kpa, part.air.temperature_c) if part.air is not None else ROOM_AIR
    air = air_at(kpa, celsius)
    if body is not None and body.diameter_m == 0.0:
        body = None if not vacuum else body
    per_metre = float(Resistance(OWN_BODY, air).rate_1_s(1.0)[0])
    flies = body is not None and body.diameter_m > 0
    most = GREATEST_KPA / kpa if flies else GREATEST_DRAG_1_M / per_metre
    reference = Resistance(body if flies else OWN_BODY, air, most)
    known_air = part.air is not None and body is not None
    omega = None if part.spin_rpm is None else part.spin_rpm * RPM_RAD_S
    gravity = None if part.gravity_g is None else part.gravity_g * G0_M_S2
    start = None if part.start is None else (part.start.along_m, part.start.height_m, part.start.axial_m)
    pace = 1.0 if request.playback_fps is None else None
    medium = 0.0 if vacuum else 1.0 if known_air else None
    known = Known(part.radius_m, omega, gravity, start, part.speed, medium, pace)
    return known, body, None if vacuum else reference, reference, per_metre
