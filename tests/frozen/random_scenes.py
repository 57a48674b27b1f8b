"""Documents drawn at random, the same for a seed on every machine: scenes of every shape and kind of motion, and wishes.

Only `random.Random.random()` is used, whose sequence for a seed Python promises to keep; figures have five digits, so that no
rounding of a power or a root shows.
"""

import math
import random

from .asking import BODY_NAMES, KIND_NAMES, LIQUID_NAMES, QUANTITY_NAMES, SHAPE_NAMES, STUDY_NAMES

G0_M_S2 = 9.80665
SPOILED = 0.12  # share of the scenes in which one field is made wrong, for the refusal
_WRONG = ("much", None, -1e9, 1e12, [], {}, True, "")


class Dice:
    """Draws for one seed."""

    def __init__(self, seed):
        self._random = random.Random(seed).random

    def number(self, low, high):
        return float(f"{low + (high - low) * self._random():.5g}")

    def log_number(self, low, high):
        return float(f"{math.exp(math.log(low) + math.log(high / low) * self._random()):.5g}")

    def whole(self, low, high):
        return low + int((high - low + 1) * self._random())

    def one_of(self, values):
        return values[int(len(values) * self._random())]

    def happens(self, share):
        return self._random() < share

    def some(self, share=0.5, **fields):
        """Each field with the chance `share`; fields are functions of no argument."""
        return {name: draw() for name, draw in fields.items() if self.happens(share)}


def scene(seed):
    """A scene document, a dict: seeds go through all shapes and kinds in turn."""
    dice = Dice(seed)
    shape = SHAPE_NAMES[seed % len(SHAPE_NAMES)]
    kind = KIND_NAMES[seed // len(SHAPE_NAMES) % len(KIND_NAMES)]
    habitat = _habitat(dice, shape)
    kinds = [kind] + [dice.one_of(KIND_NAMES) for _ in range(2) if dice.happens(0.3)]
    document = {
        "rimfall": 1,
        "habitat": habitat,
        "motions": [_motion(dice, k, len(habitat.get("floors", [0]))) for k in kinds],
        "sampling": {"duration_s": dice.number(0.5, 8.0)},
    }
    document["sampling"] |= dice.some(0.2, fps=lambda: dice.one_of([25, 29.97, 30, "30000/1001", 60]))
    document |= dice.some(
        0.4,
        title=lambda: f"Scene {seed}",
        air=lambda: dice.one_of(
            [None, {}, {"pressure_kpa": dice.log_number(1, 300), "temperature_c": dice.number(-60, 60)}]
        ),
        person=lambda: _person(dice),
        own_limits=lambda: [_own_limit(dice) for _ in range(dice.whole(1, 2))],
    )
    if dice.happens(0.12):
        document["compare"] = [{"name": "Other", "habitat": _habitat(dice, dice.one_of(SHAPE_NAMES))}]
    if dice.happens(SPOILED):
        _spoil(dice, document)
    return document


def _spoil(dice, document):
    """Make one field of a document wrong."""
    part = dice.one_of([document["habitat"], document["motions"][0], document["motions"][0].get("place", document)])
    name = dice.one_of([*sorted(part), "unknown"])
    part[name] = dice.one_of(_WRONG)


def _habitat(dice, shape):
    radius = dice.log_number(3, 3000)
    weighty = float(f"{math.sqrt(dice.log_number(0.05, 2.0) * G0_M_S2 / radius) * 30 / math.pi:.5g}")
    habitat = {"shape": shape, "radius_m": radius, "spin_rpm": dice.one_of([weighty, weighty, dice.number(0, 12), 0.0])}
    if dice.happens(0.2):
        times = [dice.number(0.1, 5) for _ in range(dice.whole(1, 3))]
        habitat["spin_ramp"] = [
            {"time_s": float(f"{sum(times[: i + 1]):.5g}"), "spin_rpm": dice.number(0, 1.5 * weighty)}
            for i in range(len(times))
        ]
    if shape == "turntable":
        return habitat | dice.some(0.4, outside_gravity_m_s2=lambda: dice.number(0, 20))
    habitat |= dice.some(
        0.25,
        axial_thrust_m_s2=lambda: dice.number(-3, 3),
        decks=lambda: [{"name": "Upper", "radius_m": dice.number(0.3, 0.9) * radius}],
    )
    return habitat | _of_shape(dice, shape, radius)


def _of_shape(dice, shape, radius):
    if shape == "cylinder":
        return dice.some(
            width_m=lambda: dice.number(5, 40),
            ceiling_m=lambda: dice.number(2.5, 0.8 * radius + 2.5),
            hub_radius_m=lambda: dice.number(0.05, 0.2 * radius),
        )
    if shape == "torus":
        return {"tube_radius_m": dice.log_number(0.25 * radius, 0.52 * radius)}
    if shape == "sphere":
        return dice.some(hub_radius_m=lambda: dice.number(0.05, 0.2 * radius))
    count = dice.whole(1, 3) if shape == "pods" else 2
    return {"floors": [_floor(dice) for _ in range(count)]}


def _floor(dice):
    floor = {"length_m": dice.number(3, 20), "width_m": dice.number(3, 20)}
    return floor | dice.some(0.3, ceiling_m=lambda: dice.number(2.5, 12), name=lambda: "Cabin")


def _motion(dice, kind, floors):
    """A motion's document; a kind that the generator has no figures for is drawn with its place alone."""
    motion = {"kind": kind, "place": _place(dice, 0.4, 2.0)} | dice.some(0.2, start_s=lambda: dice.number(0, 2))
    motion |= _OF_KIND.get(kind, lambda _: {})(dice)
    if floors > 1 and dice.happens(0.6):
        motion["place"]["floor"] = dice.whole(0, floors - 1)
    return motion


def _place(dice, low, high):
    place = {"height_m": dice.number(low, high)}
    return place | dice.some(along_m=lambda: dice.number(-1.5, 1.5), axial_m=lambda: dice.number(0, 1.2))


def _heading(dice):
    return dice.one_of([0.0, 90.0, 180.0, 270.0, dice.number(-180, 180), dice.number(-180, 180)])


def _aim(dice, fastest=15.0):
    return {"speed_m_s": dice.number(0, fastest), "heading_deg": _heading(dice)}


def _body(dice):
    if dice.happens(0.5):
        return dice.one_of(BODY_NAMES)
    return {"mass_kg": dice.log_number(0.01, 10), "diameter_m": dice.log_number(0.02, 0.3)} | dice.some(
        0.3,
        drag=lambda: dice.one_of(["sphere", 0, dice.number(0, 2)]),
        shell=lambda: dice.one_of(["solid", "hollow"]),
        restitution=lambda: dice.number(0, 1),
        friction=lambda: dice.one_of([0.0, dice.number(0, 2)]),
        rolling_resistance=lambda: dice.number(0, 0.3),
        buoyant=lambda: dice.happens(0.5),
        drag_area_m2=lambda: dice.number(0, 0.3),
    )


def _ball(dice):
    ball = {"body": _body(dice), "bounces": dice.one_of([0, 1, 2, 4, 8])}
    if dice.happens(0.3):
        ball |= {
            "ball_spin_rpm": dice.number(-3000, 3000),
            "ball_spin_axis": [dice.number(-1, 1), dice.number(-1, 1), 1.0],
        }
    return ball | dice.some(0.2, carried=lambda: _aim(dice, 5.0))


def _throw(dice):
    return _ball(dice) | _aim(dice) | {"elevation_deg": dice.number(-90, 90)}


def _roll(dice):
    rolled = {"place": _place(dice, 0, 0), "body": _body(dice), **_aim(dice, 5.0), "bounces": dice.whole(0, 3)}
    return rolled | dice.some(
        0.3,
        start=lambda: "sliding",
        ball_spin_rpm=lambda: dice.number(-500, 500),
        ramp=lambda: {
            "slope_deg": dice.number(0, 60),
            "heading_deg": _heading(dice),
            "length_m": dice.number(0.5, 3),
            "width_m": dice.number(0.5, 3),
        },
    )


def _pour(dice):
    poured = {
        "heading_deg": _heading(dice),
        "elevation_deg": dice.number(-60, 60),
        "flow_ml_s": dice.log_number(1, 200),
        "lip_diameter_mm": dice.number(2, 20),
        "duration_s": dice.number(0.05, 1.5),
        "liquid": dice.one_of(LIQUID_NAMES),
    }
    if dice.happens(0.3):
        poured |= {"jitter": dice.number(0, 0.5), "seed": dice.whole(0, 9)}
    if dice.happens(0.3):
        poured["tilt"] = [
            {"time_s": time_s, "elevation_deg": dice.number(-90, 60), "flow_ml_s": dice.number(0, 100)}
            for time_s in (0.4, 1.0)
        ]
    return poured | dice.some(
        target=lambda: {
            "along_m": dice.number(-1, 1),
            "height_m": dice.number(0, 0.3),
            "diameter_m": dice.log_number(0.02, 0.5),
            "depth_m": dice.number(0.02, 0.2),
        }
    )


def _hang(dice):
    return {"body": _body(dice), "length_m": dice.log_number(0.1, 2), "place": _place(dice, 1.0, 3.0)} | dice.some(
        first_angle_deg=lambda: dice.number(0, 120),
        first_heading_deg=lambda: _heading(dice),
        speed_m_s=lambda: dice.number(0, 3),
        heading_deg=lambda: _heading(dice),
    )


def _on_feet(dice):
    return {"place": _place(dice, 0, dice.one_of([0, 0, 1]))} | dice.some(
        0.3, mass_kg=lambda: dice.number(20, 150), centre_m=lambda: dice.number(0.3, 1.2)
    )


def _jump(dice):
    return (
        _on_feet(dice)
        | _aim(dice, 5.0)
        | dice.some(
            elevation_deg=lambda: dice.number(0, 90),
            drag_area_m2=lambda: dice.number(0, 2),
            carried=lambda: _aim(dice, 4.0),
        )
    )


def _walk(dice):
    return (
        _on_feet(dice)
        | _aim(dice, 8.0)
        | {"for_s": dice.number(0.5, 8)}
        | dice.some(0.3, climb_deg=lambda: dice.number(-90, 90))
    )


def _lift(dice):
    ridden = {"to_height_m": dice.number(0, 12), "top_speed_m_s": dice.log_number(0.1, 10)}
    return _on_feet(dice) | ridden | dice.some(acceleration_m_s2=lambda: dice.log_number(0.1, 5))


def _let_go(dice):
    return {"place": _place(dice, -3.0, -0.5), **_aim(dice, 3.0)} | dice.some(
        elevation_deg=lambda: dice.number(-90, 90)
    )


def _approach(dice):
    return {
        "place": _place(dice, -3.0, -0.5),
        "dock": dice.one_of(["hub", "rim"]),
        "speed_m_s": dice.number(0.5, 20),
        "from_m": dice.number(5, 60),
    } | dice.some(heading_deg=lambda: _heading(dice), elevation_deg=lambda: dice.number(-90, 90))


_OF_KIND = {
    "drop": _ball,
    "throw": _throw,
    "roll": _roll,
    "stand": lambda dice: {"body": _body(dice)},
    "pour": _pour,
    "hang": _hang,
    "jump": _jump,
    "walk": _walk,
    "lift": _lift,
    "let_go": _let_go,
    "approach": _approach,
}


def _person(dice):
    return dice.some(
        height_m=lambda: dice.number(0.5, 2.3),
        walk_m_s=lambda: dice.number(0, 3),
        run_m_s=lambda: dice.number(1, 10),
        climb_m_s=lambda: dice.number(0.1, 1),
        lift_m_s=lambda: dice.number(0.5, 10),
        head_turn_deg_s=lambda: dice.number(0, 300),
    )


_USUAL = {  # from, to: of wishes and limits
    "gravity": (0.05, 1.5),
    "spin": (0.3, 8.0),
    "gradient": (0.5, 40.0),
    "rim_speed": (3.0, 200.0),
    "head_turn": (0.05, 3.0),
    "coriolis": (0.02, 0.6),
    "radius": (5.0, 3000.0),
}


def _own_limit(dice):
    quantity = dice.one_of(QUANTITY_NAMES)
    bound = dice.one_of(["at_least", "at_most"])
    return {"name": "Ours", "quantity": quantity, "bound": bound, "value": dice.log_number(*_USUAL[quantity])}


def wishes(seed):
    """A document of wishes, a dict: figures, studies, now and then a person or a field that is wrong."""
    dice = Dice(f"wishes {seed}")
    document = {"wishes": [_wish(dice) for _ in range(dice.whole(1, 4))]}
    document |= dice.some(0.3, person=lambda: _person(dice))
    if dice.happens(0.15):
        dice.one_of([document, document["wishes"][0]])[dice.one_of(["kind", "value", "unknown"])] = dice.one_of(_WRONG)
    return document


def _wish(dice):
    if dice.happens(0.25):
        return {"kind": "study", "study": dice.one_of(STUDY_NAMES)}
    quantity = dice.one_of((*QUANTITY_NAMES, "radius"))
    bound = dice.one_of(["exactly", "at_least", "at_most"])
    return {"kind": "figure", "quantity": quantity, "bound": bound, "value": dice.log_number(*_USUAL[quantity])}
