"""Where a body's centre may be in a habitat: how far to either side, and from which height to which.

`sides(part, place, half)` is of a part of the document and a body of radius `half` at a place: the greatest distance along the
axis (on a turntable, from it), and a function from such a distance to the least and the greatest height, metres.
"""

import math


def _cylinder_sides(part, _place, half):
    top = part.radius_m
    if part.ceiling_m is not None:
        top = part.ceiling_m - half
    elif part.hub_radius_m is not None:
        top = part.radius_m - part.hub_radius_m - half
    side = math.inf if part.width_m is None else part.width_m / 2 - half
    return side, lambda _axial: (half, top)


def _torus_sides(part, _place, half):
    tube, inner = part.tube_radius_m, part.tube_radius_m - half

    def span(axial):
        chord = math.sqrt(max(inner**2 - axial**2, 0.0))
        return tube - chord, tube + chord

    return inner, span


def _sphere_sides(part, _place, half):
    inner, hub = part.radius_m - half, 0.0 if part.hub_radius_m is None else part.hub_radius_m + half
    side = math.sqrt(max(inner**2 - hub**2, 0.0)) if inner >= hub else -1.0
    return side, lambda axial: (part.radius_m - math.sqrt(max(inner**2 - axial**2, 0.0)), part.radius_m - hub)


def _floor_sides(part, place, half):
    floor = part.floors[place.floor]
    radius = part.radius_m if floor.radius_m is None else floor.radius_m
    top = radius if floor.ceiling_m is None else floor.ceiling_m - half
    return floor.width_m / 2, lambda _axial: (half, top)


def _turntable_sides(part, _place, half):
    return part.radius_m, lambda _axial: (half, math.inf)


_SIDES = {
    "cylinder": _cylinder_sides,
    "torus": _torus_sides,
    "sphere": _sphere_sides,
    "turntable": _turntable_sides,
}


def sides(part, place, half):
    """Greatest axial distance of a body's centre, and (axial -> least and greatest height)."""
    return _SIDES.get(part.shape, _floor_sides)(part, place, half)
