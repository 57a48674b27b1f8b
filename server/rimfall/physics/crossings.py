"""The first surface a step's path meets, looked for inside the step and not only at its ends; and where a path turns back.

Everything is asked of polynomials in Bernstein form (`bernstein.py`), so a contact deeper than 1e-9 m is never missed,
however long the step.
"""

import numpy as np

from . import bernstein, turned

TOUCH_M = 1e-9  # a gap no larger than this is contact
STILL_M_S = 1e-9  # a rate of the gap no larger than this is none
LET_GO = 3  # the state of a body to a surface that it has just let go of, hardly faster than not at all


def touching(surface, position, velocity, acceleration, body_radius_m):
    """How bodies (N,) stand to a surface: 0 clear of it, 1 leaving it, 2 leaving it from rest, -1 in contact to stay.

    States (3, N) are of the turning frame where the surface is `turned` and the room turns (`turned.states`).
    """
    contact = surface.gap(position, body_radius_m) <= TOUCH_M
    if not contact.any():
        return np.zeros(contact.shape, dtype=int)
    rate, change = surface.gap_rates(position, velocity, acceleration)
    leaving = np.where(rate > STILL_M_S, 1, np.where((rate > -STILL_M_S) & (change > STILL_M_S), 2, -1))
    return np.where(contact, leaving, 0)


def first_contact(step, surfaces, body_radius_m, state, turning=None):
    """Where inside a step each of M bodies first meets one of the surfaces.

    body_radius_m (M,); state (len(surfaces), M) from `touching` for the step that follows a release, else zeros; LET_GO: it is met
    where it is twice TOUCH_M deep, since the figures of so slow a parting are below rounding.
    turning: (spin, start_s), times (M,) of each body's elapsed 0, of a room that turns: its `turned` surfaces, where it tumbles all, are
    looked for on the path in the turning frame, which holds for steps that keep to `turned.longest_s` and the spin's knots.
    Returns s (M,) in [0, 1], inf where nothing is met, and the index (M,) of the surface, -1 for none.
    """
    inertial = step.position_m, step.path_m
    seen = inertial
    tumbles = turning is not None and turning[0].tumbles
    if turning is not None and (tumbles or any(surface.turned for surface in surfaces)):
        spin, start_s = turning
        seen = turned.path(step, start_s, spin)
    s = np.full(step.position_m.shape[1], np.inf)
    which = np.full(s.shape, -1)
    for k, surface in enumerate(surfaces):
        position, control = seen if surface.turned or tumbles else inertial
        near = (state[k] >= 0) & surface.near(position, control, body_radius_m)
        if not near.any():
            continue
        states = set(state[k, near].tolist())
        for order in sorted(states):
            some = near & (state[k] == order) if len(states) > 1 else near
            gap = surface.gap_control(position[:, some], control[:, :, some], body_radius_m[some])
            for _ in range(
                order if order < LET_GO else 0
            ):  # the root at the release itself is taken out, not looked past
                gap = bernstein.deflated(gap)
            if order == LET_GO:
                gap = gap + 2 * TOUCH_M
            falls = bernstein.first_descent(gap)
            sooner = falls < s[some]
            found = some.nonzero()[0][sooner]
            s[found] = falls[sooner]
            which[found] = k
    return s, which


def nearest_axis(position, control, length_s):
    """Where along path pieces the distance from the axis passes through a minimum: s (S,) in (0, 1), inf where it does not, or where
    the piece does not begin toward the axis, faster than STILL_M_S.

    position (S, 3) at each piece's start, control points (K, 2, S) of the change since then, length_s (S,).
    """
    change = bernstein.raised(2 * np.einsum("na,kan->kn", position[:, :2], control)) + bernstein.squared(control)
    closing = -bernstein.derivative(change)
    s = bernstein.first_descent(closing, depth=0.0)
    away = np.hypot(position[:, 0], position[:, 1])
    return np.where((closing[0] > 2 * STILL_M_S * length_s * away) & (s < 1.0), s, np.inf)
