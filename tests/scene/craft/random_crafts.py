"""Craft drawn at random: any solids, groups and sizes, the blocks about bodies, ends of the ranges among them."""

import math
import random

from rimfall.scene.craft.document import SOLIDS

_ENDS_KG, _ENDS_M = (0.001, 1e12), (0.001, 1e5)
_TINY = (5e-324, 1e-160)  # what has no inverse, or no square


def craft(seed):
    """A craft's document; the same of the same seed. It may be refused: what turns too fast is."""
    draw = random.Random(seed)
    count = draw.choice((1, 1, 2, 3, 5, 12))
    document = {
        "rimfall_craft": 1,
        "spin_rpm": draw.choice((0.0, 0.4, draw.uniform(0, 3), 1e-9)),
        "counter_rpm": draw.choice((None, draw.uniform(-200, 200), 0.0, -3.0)),
        "parts": [_part(draw, n) for n in range(count)],
    }
    document["parts"][0]["group"] = "turning"
    if draw.random() < 0.7:
        document["joint"] = {
            "radius_m": _length(draw),
            "load_n": draw.choice((0.0, 1e12, 2e4)),
            "friction_coefficient": draw.choice((0.0, 0.002, 2.0)),
            "passages": draw.choice((0, 1, 6)),
        }
    document["spin_up"] = _spin_up(draw)
    slew = {"angle_deg": draw.choice((90.0, 1e-6, 360.0))}
    document["slew"] = slew | draw.choice(
        ({"rate_deg_s": _span(draw, 1e-9, 360)}, {"torque_n_m": _span(draw, 1e-6, 1e18)})
    )
    document["loads"] = [
        {"name": f"load {n}", "mass_kg": _mass(draw), "place_m": _place(draw)} for n in range(draw.choice((0, 1, 3)))
    ]
    document["ballast"] = {
        "radius_m": draw.choice((None, _length(draw))),
        "planes_m": draw.choice(([-3.0, 3.0], [2.0, 2.0], [1e6, -1e6])),
    }
    ends = draw.choice(((0.0, 1e5), (56.0, 0.0), (3.0, 3.0), (_length(draw), _length(draw))))
    document["move"] = {
        "mass_kg": _mass(draw), "from_radius_m": ends[0], "to_radius_m": ends[1], "speed_m_s": _span(draw, 1e-4, 1e3),
        "holds": draw.choice(("momentum", "spin")),
    }  # fmt: skip
    part = draw.choice(document["parts"])
    changed = {"name": part["name"], "place_m": draw.choice(([0, 0, 0], _place(draw)))}
    document["deploy"] = {
        "parts": [changed | {name: _length(draw) for name in ("radius_m", "length_m") if name in part}]
    }
    return document


def whole(seed):
    """The same with the other blocks: what hangs on a craft, comes to it, holds it, and its tumbling; and with figures that have no inverse."""
    draw = random.Random(seed)
    document = craft(seed)
    for name in ("spin_rpm", "counter_rpm"):
        document[name] = draw.choice((document[name], document[name], *_TINY))
    for part in document["parts"]:
        part["place_m"] = draw.choice((part["place_m"], part["place_m"], [1e-155, 0, -1e-155], [0, 5e-324, 0]))
    document["ballast"]["planes_m"] = draw.choice(([-3.0, 3.0], [0.0, 5e-324], [2.0, 2.0 + 1e-15]))
    return document | _others(draw)


def _others(draw):
    tether = {
        "length_m": _length(draw),
        "masses_kg": [_mass(draw), _mass(draw)],
        "material": draw.choice((None, "aramid", "aluminium 6061-T6")),
        "safety": draw.choice((1.0, 4.0, 1000.0)),
        "to_length_m": draw.choice((None, _length(draw))),
    }
    dock = {
        "at": draw.choice(("rim", "hub")),
        "mass_kg": _mass(draw),
        "exhaust_m_s": _span(draw, 10, 1e7),
        "radius_m": _length(draw),
        "thrust_n": draw.choice((1e-6, 1e12, 200.0)),
        "leaves_toward_deg": draw.choice((0.0, -360.0, 360.0, 5e-324, 90.0)),
    }
    hull = {
        "material": draw.choice(("aramid", "steel 4340")),
        "safety": draw.choice((1.0, 3.0, 1000.0)),
        "load_kg_m2": draw.choice((0.0, 300.0, 1e9)),
        "thickness_m": draw.choice((1e-6, 0.05, 1e5)),
        "pressure_kpa": draw.choice((0.0, 101.3, 1e5, 5e-324)),
        "spokes": draw.choice((0, 1, 1000)),
    }
    rock = {
        "density_kg_m3": draw.choice((1.0, 2_600.0, 1e5)),
        "radius_m": draw.choice((0.1, 500.0, 1e7)),
        "gravity_g": draw.choice((1e-6, 0.3, 100.0)),
    }
    tumble = {
        "rates_rpm": [draw.choice((0.0, 3.0, draw.uniform(-200, 200), *_TINY)) for _ in range(3)],
        "dissipation": draw.choice((None, {"time_s": draw.choice((1e-3, 60.0, 1e9))})),
        "duration_s": draw.choice((0.1, 10.0)),
        "places": [{"name": "bow", "place_m": _place(draw)}],
    }
    blocks = {"tether": tether, "dock": dock, "hull": hull, "rock": rock, "tumble": tumble}
    return {name: block for name, block in blocks.items() if draw.random() < 0.7}


def _span(draw, low, high):
    return math.exp(draw.uniform(math.log(low), math.log(high)))


def _mass(draw):
    return draw.choice((*_ENDS_KG, _span(draw, 1, 1e6), _span(draw, 1, 1e6)))


def _length(draw):
    return draw.choice((*_ENDS_M, _span(draw, 0.1, 100), _span(draw, 0.1, 100), _span(draw, 0.1, 100)))


def _place(draw):
    return draw.choice(([0, 0, 0], [0, 0, 1e6], [draw.uniform(-50, 50) for _ in range(3)], [1e-6, 0, 0]))


def _part(draw, number):
    name = draw.choice(list(SOLIDS))
    fields = SOLIDS[name].model_fields
    part = {
        "name": f"{draw.choice(('part', 'Part'))} {number}",
        "solid": name,
        "mass_kg": _mass(draw),
        "place_m": _place(draw),
    }
    part["group"] = draw.choice(("turning", "turning", "still", "counter"))
    part |= {size: _length(draw) for size in ("radius_m", "length_m") if size in fields}
    if "tube_radius_m" in fields:
        part["tube_radius_m"] = min(part["radius_m"], _length(draw))
    if "size_m" in fields:
        part["size_m"] = [_length(draw) for _ in range(3)]
    if "axis" in fields:
        part["axis"] = draw.choice(([0, 0, 1], [1, 0, 0], [draw.uniform(0.1, 1) for _ in range(3)], [0, 0, -1e-6]))
    return part


def _spin_up(draw):
    wheel = draw.choice((None, {"mass_kg": _mass(draw), "radius_m": _length(draw)}))
    if draw.random() < 0.5:
        return {"by": "motor", "torque_n_m": _span(draw, 1e-6, 1e12), "wheel": wheel}
    thrust = {"thrust_n": _span(draw, 1e-6, 1e12), "arm_m": _length(draw), "exhaust_m_s": _span(draw, 10, 1e7)}
    return {"by": "thrusters", "wheel": wheel} | thrust
