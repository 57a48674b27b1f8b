"""Thin sheets as bodies: what a hull is of which nothing is known but its surface."""

import numpy as np

from .bodies import Body


def shell(triangles):
    """The Body of triangles (F, 3, 3), metres, at a kilogram a square metre.

    Over a triangle of corners a, b, c the mean of x x^T is (a a^T + b b^T + c c^T + s s^T)/12, s their sum.
    """
    a, b, c = np.moveaxis(np.asarray(triangles, dtype=float), 1, 0)
    area = np.linalg.norm(np.cross(b - a, c - a), axis=1) / 2
    mass, centre = float(area.sum()), area @ (a + b + c) / 3 / area.sum()
    a, b, c = a - centre, b - centre, c - centre
    spread = sum(np.einsum("f,fi,fj->ij", area, v, v) for v in (a, b, c, a + b + c)) / 12
    return Body(mass, centre, np.trace(spread) * np.eye(3) - spread)
