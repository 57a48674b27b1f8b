"""A craft to another radius: every length of it alike, its masses as they are."""

_LENGTHS = {
    "radius_m",
    "tube_radius_m",
    "length_m",
    "size_m",
    "place_m",
    "arm_m",
    "planes_m",
    "from_radius_m",
    "to_radius_m",
}
_OF_THEIR_OWN = {"tether", "dock", "hull", "rock"}  # what is no part of the craft's frame
_DIGITS = 4  # as a figure that somebody would type


def fitted(document, factor):
    """A craft's document (plain data) with its lengths times factor; what is null stays, and so do tether, visitor, wall and rock."""
    return {name: value if name in _OF_THEIR_OWN else _fitted(name, value, factor) for name, value in document.items()}


def _fitted(name, value, factor):
    if isinstance(value, dict):
        return {key: _fitted(key, inner, factor) for key, inner in value.items()}
    if isinstance(value, list | tuple):
        return [_fitted(name, inner, factor) for inner in value]
    if name in _LENGTHS and isinstance(value, int | float):
        return float(f"{value * factor:.{_DIGITS}g}")
    return value


def refitted(document, rim_m, radius_m=None, spin_rpm=None):
    """A craft's own document whose floor is rim_m from the axis, to another radius, another spin, or both."""
    changed = document if radius_m is None else fitted(document, radius_m / rim_m) | {"radius_m": radius_m}
    return changed if spin_rpm is None else changed | {"spin_rpm": spin_rpm}
