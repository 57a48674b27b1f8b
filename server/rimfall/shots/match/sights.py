"""What of a flight is seen: places aboard, points of a file's axes, pixels on a plane, pixels through a camera.

A sight has `time_s` (N,), from 0 on; `seen` (N, D), what was seen; `sd` (D,), one standard deviation of each; `names` (D,);
`has_axial`: whether it shows how far along the axis; `has_deck`: whether it shows where the deck is; `expected(flown)` (B, N, D),
what a `Flown` would show; and for starting values either `positions(radius_m)`, rotating positions (N, 3), or `rays(radius_m)`.
"""

from dataclasses import dataclass, replace

import numpy as np

from ...physics import frames
from .flight import Flown

NEAREST_M = 1e-3  # before a camera: what is nearer, or behind it, is taken there
_OF_FILE = np.array([[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # rows: X spinward, Y up, Z axial


@dataclass(frozen=True)
class PlacesAboard:
    """seen: (along, height) or (along, height, axial), metres."""

    time_s: np.ndarray
    seen: np.ndarray
    sd: np.ndarray
    has_deck = True
    in_pixels = False

    @property
    def has_axial(self):
        """Whether it shows how far along the axis."""
        return self.seen.shape[1] == 3

    @property
    def names(self):
        """Of what is seen."""
        return ("along_m", "height_m", "axial_m")[: self.seen.shape[1]]

    def expected(self, flown: Flown):
        """What a Flown would show (B, N, D)."""
        height = flown.radius_m[:, None] - np.hypot(flown.rotating_m[..., 0], flown.rotating_m[..., 1])
        parts = [flown.along_m, height] + ([flown.rotating_m[..., 2]] if self.has_axial else [])
        return np.stack(parts, axis=-1)

    def positions(self, radius_m):
        """Rotating positions (N, 3)."""
        places = np.zeros((len(self.seen), 3))
        places[:, : self.seen.shape[1]] = self.seen
        return frames.place_to_rotating(radius_m, places)

    def least_radius_m(self):
        """No place is beyond the axis."""
        return float(np.max(self.seen[:, 1]))


@dataclass(frozen=True)
class Points:
    """seen: (X, Y, Z) of a file, metres: X spinward, Y up, Z axial at the reference line. on_deck: whether the origin is there on the
    deck, or else on the axis. The axes turn with the deck."""

    time_s: np.ndarray
    seen: np.ndarray
    sd: np.ndarray
    on_deck: bool
    has_axial = True
    in_pixels = False
    names = ("x_m", "y_m", "z_m")

    @property
    def has_deck(self):
        """Whether it shows where the deck is."""
        return self.on_deck

    def expected(self, flown: Flown):
        """What a Flown would show (B, N, 3)."""
        out = flown.rotating_m @ _OF_FILE.T
        if self.on_deck:
            out[..., 1] += flown.radius_m[:, None]
        return out

    def positions(self, radius_m):
        """Rotating positions (N, 3)."""
        moved = self.seen - (np.array([0.0, radius_m, 0.0]) if self.on_deck else 0.0)
        return moved @ _OF_FILE

    def least_radius_m(self):
        """No point of the deck's own side is beyond the axis."""
        if self.on_deck:
            return float(np.max(self.seen[:, 1])) if len(self.seen) else 0.0
        return float(np.max(np.hypot(self.seen[:, 0], self.seen[:, 1])))


@dataclass(frozen=True)
class PlanePixels:
    """seen: (x, y) pixels of a picture that looks along the axis; metres_a_pixel; deck_px (2,): a pixel on the deck, at the reference
    line; up (2,), a unit vector in the picture; spinward (2,), the other way across it."""

    time_s: np.ndarray
    seen: np.ndarray
    sd: np.ndarray
    metres_a_pixel: float
    deck_px: np.ndarray
    up: np.ndarray
    spinward: np.ndarray
    has_deck = True
    has_axial = False
    in_pixels = True
    names = ("x_px", "y_px")

    def at(self, _time_s):
        """The same at other times (n,)."""
        return self

    def expected(self, flown: Flown):
        """What a Flown would show (B, N, 2)."""
        across, over = flown.rotating_m[..., 1], flown.radius_m[:, None] - flown.rotating_m[..., 0]
        return self.deck_px + (across[..., None] * self.spinward + over[..., None] * self.up) / self.metres_a_pixel

    def positions(self, radius_m):
        """Rotating positions (N, 3)."""
        off = (self.seen - self.deck_px) * self.metres_a_pixel
        return np.stack([radius_m - off @ self.up, off @ self.spinward, np.zeros(len(off))], axis=-1)

    def least_radius_m(self):
        """No point is beyond the axis."""
        return float(np.max((self.seen - self.deck_px) @ self.up) * self.metres_a_pixel)


@dataclass(frozen=True)
class CameraPixels:
    """seen: (x, y) pixels through a camera that rides with the deck. position, look_at (N, 3) or (1, 3): places aboard; focal_px,
    roll_rad (N,) or (1,); centre_px (2,). Roll turns the camera clockwise as seen from behind it."""

    time_s: np.ndarray
    seen: np.ndarray
    sd: np.ndarray
    position: np.ndarray
    look_at: np.ndarray
    focal_px: np.ndarray
    roll_rad: np.ndarray
    centre_px: np.ndarray
    has_deck = True
    has_axial = True
    in_pixels = True
    names = ("x_px", "y_px")

    def at(self, time_s):
        """The same at other times (n,): between its rows the camera goes evenly."""
        if len(self.position) == 1:
            return self

        def between(rows):
            return np.stack([np.interp(time_s, self.time_s, column) for column in rows.T], axis=-1)

        places = [between(rows) for rows in (self.position, self.look_at)]
        figures = [np.interp(time_s, self.time_s, row) for row in (self.focal_px, self.roll_rad)]
        return replace(
            self, time_s=time_s, position=places[0], look_at=places[1], focal_px=figures[0], roll_rad=figures[1]
        )

    def axes(self, radius_m):
        """Where the camera is (..., N, 3), and its right, up and forward (..., N, 3), for radii (...)."""
        radius = np.asarray(radius_m, dtype=float)[..., None]
        eye, aim = (
            frames.place_to_rotating(radius, np.broadcast_to(rows, (*radius.shape[:-1], *rows.shape)))
            for rows in (self.position, self.look_at)
        )
        forward = _unit(aim - eye)
        local = frames.local_axes(eye)
        right = np.cross(forward, local[..., 1, :])
        steep = np.linalg.norm(right, axis=-1, keepdims=True) < 1e-9
        right = _unit(np.where(steep, local[..., 0, :], right))
        up = np.cross(right, forward)
        c, s = np.cos(self.roll_rad)[..., None], np.sin(self.roll_rad)[..., None]
        return eye, c * right - s * up, c * up + s * right, forward

    def expected(self, flown: Flown):
        """What a Flown would show (B, N, 2)."""
        return self.pixels(flown.radius_m, flown.rotating_m)

    def pixels(self, radius_m, rotating_m):
        """Where positions (..., N, 3) are seen (..., N, 2), for radii (...)."""
        eye, right, up, forward = self.axes(radius_m)
        off = rotating_m - eye
        depth = np.maximum(np.sum(off * forward, axis=-1), NEAREST_M)
        across, over = np.sum(off * right, axis=-1) / depth, np.sum(off * up, axis=-1) / depth
        return self.centre_px + self.focal_px[:, None] * np.stack([across, -over], axis=-1)

    def behind(self, flown: Flown):
        """Whether (B, N) it is behind the camera, or as good as in it."""
        eye, _, _, forward = self.axes(flown.radius_m)
        return np.sum((flown.rotating_m - eye) * forward, axis=-1) <= NEAREST_M

    def rays(self, radius_m):
        """The camera (N, 3) and two unit vectors (N, 2, 3) across each ray: what was seen lies where both products vanish."""
        eye, right, up, forward = (np.broadcast_to(v, (len(self.seen), 3)) for v in self.axes(radius_m))
        x, y = ((self.seen - self.centre_px) / self.focal_px[:, None]).T
        first = _unit(right - x[:, None] * forward)
        return eye, np.stack([first, _unit(up + y[:, None] * forward)], axis=1)

    def depth_m(self, radius_m, rotating, some):
        """How far before the camera positions (..., n, 3) lie, seen at the rows `some` (n,)."""
        eye, _, _, forward = (np.broadcast_to(v, (len(self.seen), 3))[some] for v in self.axes(radius_m))
        return np.sum((rotating - eye) * forward, axis=-1)

    def off_m(self, radius_m, depth_m, off_px):
        """How far off, turning axes (N, 3), so many pixels (N, 2) are at depths (N,)."""
        _, right, up, _ = (np.broadcast_to(v, (len(self.seen), 3)) for v in self.axes(radius_m))
        off = off_px * (np.maximum(depth_m, NEAREST_M) / self.focal_px)[:, None]
        return off[:, :1] * right - off[:, 1:] * up

    def least_radius_m(self):
        """No camera is beyond the axis."""
        return float(max(np.max(self.position[:, 1]), np.max(self.look_at[:, 1])))


_BY_ROW = ("time_s", "seen", "position", "look_at", "focal_px", "roll_rad")


def part(sight, first, last):
    """The sight of rows first to last - 1, whose time begins at 0."""
    count = len(sight.time_s)
    rows = {name: getattr(sight, name) for name in _BY_ROW if hasattr(sight, name)}
    rows = {name: values[first:last] for name, values in rows.items() if len(values) == count}
    return replace(sight, **rows | {"time_s": rows["time_s"] - rows["time_s"][0]})


def _unit(vectors):
    return vectors / np.linalg.norm(vectors, axis=-1, keepdims=True)
