"""The unbroken part of a pour whose parcels each go their own way, as one curve at every instant.

Its points are parcels in order of age: each lies between the two followed parcels it left between, at the same age, and is as wide
as those are there. Where no stream left, the curve has no width.
"""

import numpy as np

from ..physics.liquids import thinned_m

_FINE = 1_024  # times of leaving, among which the oldest parcel that is still whole is looked for


def of_batch(setting, stream, time_s, points):
    """Positions (T, points, 3) from the lip on, and widths (T, points), at times (T,); None where no stream ever leaves."""
    threads = stream.batch.threads
    if not np.any(threads.streams):
        return None
    leaves_s, width_on = _span(stream, threads, time_s, points)
    age_s = np.maximum(time_s[:, None] - leaves_s, 0.0)
    k, share = _between(threads, leaves_s)
    position, width = 0.0, 0.0
    for number, weight in ((k, 1 - share), (k + 1, share)):
        age = np.minimum(age_s, threads.whole_s[number])
        there, moving, _ = threads.paths.turning(
            setting.habitat.spin, number.ravel(), (threads.leaves_s[number] + age).ravel()
        )
        speed = np.linalg.norm(moving, axis=1).reshape(age.shape)
        position = position + weight[..., None] * there.reshape(*age.shape, 3)
        width = width + weight * _thinned(stream, threads, number, speed)
    return position, width * width_on


def _thinned(stream, threads, number, speed_m_s):
    flows = threads.streams[number]
    return np.where(flows, thinned_m(stream.lip_m, np.where(flows, threads.speed_m_s[number], 1.0), speed_m_s), 0.0)


def _between(threads, leaves_s):
    """The followed parcel before each time of leaving, and how far it is to the next."""
    k = np.clip(np.searchsorted(threads.leaves_s, leaves_s, "right") - 1, 0, len(threads.leaves_s) - 2)
    return k, np.clip((leaves_s - threads.leaves_s[k]) / (threads.leaves_s[k + 1] - threads.leaves_s[k]), 0.0, 1.0)


def _span(stream, threads, time_s, points):
    """When the parcels (T, points) of the curve left, the youngest first; and whether (T, 1) there is a curve."""
    fine = np.linspace(stream.first_leaves_s, stream.last_leaves_s, _FINE)
    k, share = _between(threads, fine)
    whole_s = np.where(threads.streams, threads.whole_s, 0.0)
    gone_s = fine + (1 - share) * whole_s[k] + share * whole_s[k + 1]  # when each breaks or ends
    youngest = np.clip(time_s, fine[0], fine[-1])
    still = gone_s[None] > time_s[:, None]
    oldest = np.minimum(fine[np.argmax(still, axis=1)], youngest)
    flows = np.any(still, axis=1) & (time_s > fine[0])
    oldest = np.where(flows, oldest, youngest)
    return youngest[:, None] + (oldest - youngest)[:, None] * np.linspace(0.0, 1.0, points), flows[:, None]
