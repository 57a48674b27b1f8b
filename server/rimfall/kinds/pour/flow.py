"""What leaves a lip at each instant of a pour: how much, how fast, and which way, as the lip tilts."""

from dataclasses import dataclass

import numpy as np

from ...physics import liquids

_CELLS = 2_048  # of a pour's time, in which a flow that changes is taken as straight


@dataclass(frozen=True)
class Flow:
    """A pour's lip over time: elevation_deg and flow_m3_s (P,) at since_s (P,), seconds since it began, straight between; held
    after the last. lip_m: its diameter; heading_deg: where it points; lasts_s: how long it pours."""

    since_s: np.ndarray
    elevation_deg: np.ndarray
    flow_m3_s: np.ndarray
    lip_m: float
    heading_deg: float
    lasts_s: float

    @property
    def steady(self):
        """Whether it never changes."""
        return bool(np.ptp(self.elevation_deg) == 0 and np.ptp(self.flow_m3_s) == 0)

    def at_m3_s(self, since_s):
        """Flow (...) at times since the beginning (...)."""
        return np.interp(since_s, self.since_s, self.flow_m3_s)

    def speed_m_s(self, since_s):
        """Speed (...) at the lip."""
        return liquids.lip_speed_m_s(self.at_m3_s(since_s), self.lip_m)

    def streams(self, liquid, since_s):
        """Whether (...) a stream leaves the lip; otherwise it drips."""
        return liquids.weber(liquid, self.speed_m_s(since_s), self.lip_m) >= liquids.DRIPS_BELOW_WEBER

    def velocity_m_s(self, liquid, since_s):
        """Velocity (n, 3) along the local directions with which parcels leave at times (n,); a dripping lip lets them fall."""
        speed = np.where(self.streams(liquid, since_s), self.speed_m_s(since_s), 0.0)
        up, toward = np.radians(np.interp(since_s, self.since_s, self.elevation_deg)), np.radians(self.heading_deg)
        level = speed * np.cos(up)
        return np.stack([level * np.cos(toward), speed * np.sin(up), level * np.sin(toward)], axis=-1)

    def marks_s(self, cells=_CELLS):
        """Times (M,) since the beginning that cut it into so many cells, and at every point of its own."""
        own = self.since_s[self.since_s < self.lasts_s]
        return np.unique(np.concatenate([np.linspace(0.0, self.lasts_s, cells + 1), own]))

    @property
    def poured_m3(self):
        """All that is poured, m3."""
        marks = self.marks_s(1)
        return float(np.trapezoid(self.at_m3_s(marks), marks))


def of_motion(motion):
    """The Flow of a `pour` of the scene document."""
    points = [
        (0.0, motion.elevation_deg, motion.flow_ml_s),
        *((p.time_s, p.elevation_deg, p.flow_ml_s) for p in motion.tilt),
    ]
    since_s, elevation_deg, flow_ml_s = np.array(points, dtype=float).T
    lip_m = motion.lip_diameter_mm * 1e-3
    return Flow(since_s, elevation_deg, flow_ml_s * 1e-6, lip_m, motion.heading_deg, motion.duration_s)


@dataclass(frozen=True)
class Cut:
    """A pour cut into drops: leaves_s (N,), seconds since the beginning at which the first of each leaves, and volume_m3 (N,)."""

    leaves_s: np.ndarray
    volume_m3: np.ndarray


def cut(flow, marks_s, drop_m3, shares):
    """Cut a pour at places that make each drop as large as the size that holds when it leaves, times its share.

    marks_s (M,) since the beginning, drop_m3 (M,): size of a drop that leaves then, inf where none forms. shares: a function of how
    many drops of those sizes it would be, that gives the shares (n,) of as many as it is to be. However they are cut, the drops
    together are all that forms drops: each is the difference of two readings of what has been poured by then.
    """
    forms = np.isfinite(drop_m3)
    rate = np.where(forms, flow.at_m3_s(marks_s), 0.0)
    step = np.diff(marks_s)
    poured = np.concatenate([[0.0], np.cumsum((rate[1:] + rate[:-1]) / 2 * step)])
    ready = rate / np.where(forms, drop_m3, 1.0)
    counted = np.concatenate([[0.0], np.cumsum((ready[1:] + ready[:-1]) / 2 * step)])
    if counted[-1] <= 0:
        return Cut(np.empty(0), np.empty(0))
    edges = np.concatenate([[0.0], np.cumsum(shares(counted[-1]))])
    edges *= counted[-1] / edges[-1]
    leaves_s = np.interp(edges, counted, marks_s)
    leaves_s[0], leaves_s[-1] = marks_s[np.searchsorted(counted, 0.0, "right") - 1], marks_s[-1]
    return Cut(leaves_s[:-1], np.diff(_poured_by(leaves_s, marks_s, rate, poured)))


def _poured_by(time_s, marks_s, rate, poured):
    """What has been poured (n,) by times (n,), the rate straight between marks."""
    k = np.clip(np.searchsorted(marks_s, time_s, "right") - 1, 0, len(marks_s) - 2)
    since, length = time_s - marks_s[k], np.diff(marks_s)[k]
    return poured[k] + since * (rate[k] + since / (2 * length) * (rate[k + 1] - rate[k]))
