"""Craft drawn at random: any solids, groups and sizes, the blocks about bodies, ends of the ranges among them."""

import math
import random

from rimfall.scene.craft.document import SOLIDS

_ENDS_KG, _ENDS_M = (0.001, 1e12), (0.001, 1e5)


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
