"""The axes and the origin of a file, and the way from the frames' own axes into them."""

from dataclasses import dataclass

import numpy as np

from ..language import tr, tr_later, written

ON_THE_AXIS = (0.0, 0.0, 0.0, 0)


@dataclass(frozen=True)
class Axes:
    """rows (3, 3): the file's axes in those of the frames, which coincide at time 0; origin_m (3,): the file's origin there."""

    rows: np.ndarray
    origin_m: np.ndarray

    def points(self, position):
        """Positions (..., 3) of either frame -> of the file, metres."""
        return (position - self.origin_m) @ self.rows.T

    def vectors(self, vectors):
        """Directions, velocities and accelerations (..., 3) of either frame -> in the file's axes."""
        return vectors @ self.rows.T

    def turnings(self, quaternions):
        """Quaternions (n, 4), w first, of turnings in either frame -> in the file's axes."""
        return np.concatenate([quaternions[:, :1], self.vectors(quaternions[:, 1:])], axis=1)

    @property
    def spin(self):
        """The spin vector's direction (3,): one of the file's axes, either way."""
        return np.round(self.rows[:, 2]) + 0.0


DESIGN = Axes(np.eye(3), np.zeros(3))  # the frames' own: what JSON keeps


def axes_of(trace, options):
    """The Axes that the options ask for."""
    habitat = trace.setting.habitat
    place = _origin(trace, options)
    chart = habitat.chart(place[3])
    rows = chart.axes_at(np.array(place[:3]))
    if options.up == "Z":  # (spinward, up, axial) -> (spinward, the other axial way, up)
        rows = np.stack([rows[0], -rows[2], rows[1]])
    origin = np.zeros(3) if options.origin == "axis" else chart.position(np.array(place[:3]))
    return Axes(rows + 0.0, origin + 0.0)


def _origin(trace, options):
    """(along, height, axial, floor) of the place whose directions the file has."""
    if options.origin == "axis":
        return ON_THE_AXIS
    if options.origin == "release":
        plan = next(t.plan for t in trace.motions if t.motion.name == options.motions[0])
        return plan.place[0], trace.setting.habitat.ground_height_m(plan.place[2]), plan.place[2], plan.floor
    return options.origin


def in_words(trace, options):
    """What the axes and the origin are, for the notes -> (axes, origin)."""
    places = {
        "side": tr(trace.setting.habitat.words_of_ground.side),
        "where": tr("at the reference line") if options.origin == "axis" else tr("at the origin"),
    }
    if options.up == "Y":
        axes = tr("X spinward, Y up, Z {side}, {where}", **places)
    else:
        axes = tr("X spinward, Y against the way {side}, Z up, {where}", **places)
    if options.origin in _ORIGINS:
        return axes, tr(_ORIGINS[options.origin])
    return axes, _place_in_words(options.origin, trace.setting.habitat)


_ORIGINS = {
    "axis": tr_later("on the axis of spin, at the middle of the habitat"),
    "release": tr_later("on the ground under the first release, where that is at time 0"),
}


def _place_in_words(place, habitat):
    along, height, axial, floor = place
    places = {
        name: f"{written(value, 'g')} m" for name, value in (("along", along), ("height", height), ("axial", axial))
    }
    if habitat.floors:
        return tr(
            "at the place {along} along, {height} up, {axial} axial on {floor}, where that is at time 0",
            floor=habitat.floors[floor].name,
            **places,
        )
    return tr("at the place {along} along, {height} up, {axial} axial, where that is at time 0", **places)
