"""What the page draws of a habitat, as plain data: surfaces swept round the axis, lines, lights, tubes and boxes; it makes them as fine as
its eye needs.

On ground round the axis a profile is (height, axial) over radius_m, as a place has them; points elsewhere are (x, y, z) of the turning
frame; metres. A swept surface shows the side that `mesh.py` says: the left of its profile, looking spinward. Every part may say when
it is hidden: `side` is the side of the axis it is on (1 or -1), and `cut` is "near" (where it would stand before the scene: hidden when
the eye is near and on that side), "open" (always hidden on the side of the eye) or "section" (shown on that side alone);
`from_afar`: only where the whole is seen; `still`: it does not turn with the habitat.
"""

import math

SPOKES_DEG = (45.0, 135.0, 225.0, 315.0)
LIGHT_PX = 3
CUT_RAD = math.radians(15.0)  # of a shell: up to here its hull is there on the side of the eye, too
SIDES = (1, -1)


def drawn(habitat):
    """A Shape as the page draws it; `ended`: the same with ends, where it has none and something outside must be seen past it."""
    ended = habitat.ended()
    return _of(habitat) | {"ended": None if ended is None else _of(ended)}


def _of(habitat):
    return {
        "radius_m": habitat.radius_m,
        "section_m": habitat.section_radius_m,
        "level": habitat.words_of_ground.level,
        "half_m": habitat.walked_half_m(),
        "hub_m": habitat.hub_m,
        "headroom_m": finite(habitat.headroom_m()),
        "outline_m": [round(float(v), 4) for v in habitat.outline_m().ravel()],
        "parts": list(habitat.parts()),
    }


def finite(value):
    """A length, or None for one without end."""
    return value if math.isfinite(value) else None


def skin_m(radius_m):
    """How thick a hull is drawn."""
    return min(max(0.02 * radius_m, 0.02), 1.15 + 0.002 * radius_m)


def band(material, profile, **how):
    """A straight profile [(height, axial), …] swept round the axis."""
    return {"form": "band", "material": material, "profile": profile, **how}


def shell(material, centre_m, radius_m, from_rad, to_rad, **how):
    """An arc swept round the axis: about the height centre_m, of radius_m, from one angle to another, 0 straight down; its inside shows
    where the angles fall, its outside where they rise."""
    return {"form": "shell", "material": material, "arc": [centre_m, radius_m, from_rad, to_rad], **how}


def rings(look, profile, diameter_m=0.0, **how):
    """Lines round the axis, one through each (height, axial)."""
    return {"form": "rings", "look": look, "profile": profile, "diameter_m": diameter_m, **how}


def lines(look, points, diameter_m=0.0, **how):
    """Lines through lists of points."""
    return {"form": "lines", "look": look, "points": points, "diameter_m": diameter_m, **how}


def posts(look, every_m, profile, diameter_m, **how):
    """The same short line (height, axial) again and again round the axis."""
    return {"form": "posts", "look": look, "every_m": every_m, "profile": profile, "diameter_m": diameter_m, **how}


def lights_round(every_m, height_m, axial_m, diameter_m, **how):
    """Lights round the axis."""
    place = [height_m, axial_m]
    return {"form": "lights", "every_m": every_m, "profile": [place], "diameter_m": diameter_m, "alpha": 0.9, **how}


def lights_at(points, diameter_m, **how):
    """Lights at points."""
    return {"form": "lights", "points": points, "diameter_m": diameter_m, "alpha": 0.85, **how}


def tube(material, start, end, radii_m, sides, closed=True, **how):
    """A round bar from one point to another, its radius at both."""
    return {
        "form": "tube",
        "material": material,
        "ends": [point(start), point(end)],
        "radii_m": radii_m,
        "sides": sides,
        "closed": closed,
        **how,
    }


def box(material, middle, size_m, azimuth_rad=0.0, **how):
    """A box: size along spinward, up and axial as they are at an azimuth."""
    return {
        "form": "box",
        "material": material,
        "middle": point(middle),
        "size_m": size_m,
        "azimuth_rad": azimuth_rad,
        **how,
    }


def sheet(material, corners, half_m, edge_m, **how):
    """A rectangle of four corners, half_m (along, axial) about its middle; edge_m: where its border is painted."""
    return {"form": "sheet", "material": material, "corners": corners, "half_m": half_m, "edge_m": edge_m, **how}


def disc(material, radius_m, **how):
    """A round plate at z = 0 that faces along the axis."""
    return {"form": "disc", "material": material, "radius_m": radius_m, **how}


def lantern(radius_m, length_m):
    """The lamp on the axis; its length None where the habitat is as wide as can be seen."""
    return {"form": "lantern", "radius_m": radius_m, "length_m": length_m}


def figure(feet, **how):
    """Somebody who stands by, up along the axis."""
    return {"form": "figure", "at": point(feet), **how}


def point(position):
    """A position as plain numbers."""
    return [float(v) for v in position]


def around(radius_m, azimuth_rad, axial_m=0.0):
    """The position at a distance from the axis."""
    return [radius_m * math.cos(azimuth_rad), radius_m * math.sin(azimuth_rad), axial_m]


def lamp_radius_m(habitat):
    """Radius of the lamp on the axis: the hub's, or a slim one."""
    return habitat.hub_m or min(0.012 * habitat.radius_m, 0.5 + 0.004 * habitat.radius_m)


def spokes(radius_m, top_m, hub_m):
    """Four bars from the height top_m to the hub; where they stand on the deck, each in a collar."""
    thick = min(max(0.018 * radius_m, 0.03), 4 + 0.001 * radius_m)
    for azimuth in (math.radians(degrees) for degrees in SPOKES_DEG):
        foot, top = around(radius_m - top_m, azimuth), around(hub_m, azimuth)
        yield tube("hub", foot, top, [thick, thick], 16, closed=False, from_afar=True)
        if not top_m:
            collar = around(radius_m, azimuth), around(radius_m - 3 * thick, azimuth)
            yield tube("hub", *collar, [1.7 * thick, 1.7 * thick], 20, from_afar=True)


def shell_parts(radius_m, section_m, end_rad, walked_m):
    """Deck, hull, rims and lights of a habitat whose ground bends across, from one end of its section to the other; cut open on the
    side of the eye. A sphere is the tube whose middle line has shrunk to the axis."""
    thick = skin_m(radius_m)

    def at(angle, off_m=0.0):
        return [section_m - (section_m + off_m) * math.cos(angle), (section_m + off_m) * math.sin(angle)]

    yield shell("deck", section_m, section_m, end_rad, -end_rad)
    yield shell("hull", section_m, section_m + thick, -CUT_RAD, CUT_RAD)
    height = section_m - math.sqrt(section_m**2 - walked_m**2)
    for side in SIDES:
        away = sorted((side * CUT_RAD, side * end_rad))
        yield shell("hull", section_m, section_m + thick, *away, side=side, cut="open")
        rim, cut = side * end_rad, side * CUT_RAD
        yield band("section", [at(rim), at(rim, thick)], side=side, cut="near")
        yield rings("edge", [at(rim)], side=side, cut="near")
        yield band("cut", [at(cut, thick), at(cut)][::side], side=side, cut="section")
        yield rings("edge", [at(cut), at(cut, thick)], side=side, cut="section")
        lift, wide = min(0.2, 0.03 * radius_m), min(0.34, 0.02 * radius_m)
        yield lights_round(5.0, height + lift, side * walked_m, wide, side=side, cut="near")


def sections(look, count, centre_m, radius_m, end_rad, **how):
    """Lines across a shell, evenly round the axis: arcs from -end_rad to end_rad."""
    return {"form": "sections", "look": look, "count": count, "arc": [centre_m, radius_m, -end_rad, end_rad], **how}
