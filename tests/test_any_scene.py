"""Any scene the document allows is answered or refused: no exception, no NaN, nothing through a surface, no time limit passed.

Every shape and every kind of motion; what one field rules out for another is refused by name, and that is an answer too.
"""

import json

import numpy as np
import pytest
from hypothesis import HealthCheck, given, reject, seed, settings
from hypothesis import strategies as st

from rimfall.errors import Refused
from rimfall.physics.bodies import NAMED_BODIES
from rimfall.physics.liquids import LIQUIDS
from rimfall.scene import answers, questions
from rimfall.scene.reading import read

DEEPEST_M = 1e-6
SCENES, PARTS = 320, 4
TUMBLING_SCENES = 32
UNBOUNDED = ("tumble", "let_go", "approach", "lift", "hang")


def number(low, high):
    return st.floats(low, high, allow_nan=False, allow_subnormal=False)


def log_number(low, high):
    return number(np.log10(low), np.log10(high)).map(lambda x: float(10**x))


def part(**fields):
    return st.fixed_dictionaries({}, optional=fields)


def joined(*parts):
    return st.tuples(*parts).map(lambda found: {k: v for one in found for k, v in one.items()})


RAMP = st.lists(st.tuples(number(0.1, 5.0), number(0, 20)), max_size=3).map(
    lambda points: [
        {"time_s": float(t), "spin_rpm": s} for t, (_, s) in zip(np.cumsum([p[0] for p in points]), points, strict=True)
    ]
)
TURNING = st.fixed_dictionaries(
    {"radius_m": log_number(3.0, 3000.0), "spin_rpm": st.one_of(st.just(0.0), number(0, 20))},
    optional={"spin_ramp": RAMP},
)
THRUST = part(axial_thrust_m_s2=number(-3, 3))
FLOOR = st.fixed_dictionaries(
    {"length_m": number(3, 20), "width_m": number(3, 20)},
    optional={"ceiling_m": st.one_of(st.none(), number(2.5, 20)), "radius_m": st.none()},
)
SHAPES = {
    "cylinder": joined(THRUST, part(width_m=number(5, 40), ceiling_m=number(2.5, 20), hub_radius_m=number(0.05, 1.0))),
    "torus": joined(THRUST, st.fixed_dictionaries({"tube_radius_m": number(1.5, 20)})),
    "sphere": joined(THRUST, part(hub_radius_m=number(0.05, 0.5))),
    "pods": joined(THRUST, st.fixed_dictionaries({"floors": st.lists(FLOOR, min_size=1, max_size=3)})),
    "tether": joined(THRUST, st.fixed_dictionaries({"floors": st.lists(FLOOR, min_size=2, max_size=2)})),
    "tumbler": joined(THRUST, st.fixed_dictionaries({"floors": st.lists(FLOOR, min_size=2, max_size=2)})),
    "turntable": part(outside_gravity_m_s2=number(0, 20)),
}
HABITATS = st.sampled_from(sorted(SHAPES)).flatmap(
    lambda shape: joined(TURNING, SHAPES[shape], st.just({"shape": shape}))
)
NAMED = [b.name for b in NAMED_BODIES if b.body.diameter_m < 0.5]
OWN = st.fixed_dictionaries(
    {"mass_kg": log_number(0.01, 10), "diameter_m": log_number(0.02, 0.3)},
    optional={
        "drag": st.one_of(st.just("sphere"), number(0, 2)),
        "shell": st.sampled_from(["solid", "hollow"]),
        "restitution": number(0, 1),
        "friction": st.one_of(st.just(0.0), number(0, 2)),
        "rolling_resistance": st.one_of(st.just(0.0), number(0, 0.3)),
        "buoyant": st.booleans(),
        "drag_area_m2": st.one_of(st.none(), number(0, 0.3)),
    },
)
BODIES = st.one_of(st.sampled_from(NAMED), OWN)
PLACES = st.fixed_dictionaries({"height_m": number(0.4, 2), "along_m": number(-1.5, 1.5), "axial_m": number(0, 1.2)})
AIM = st.fixed_dictionaries({"speed_m_s": number(0, 15), "heading_deg": number(-180, 180)})
SPUN = st.fixed_dictionaries(
    {
        "ball_spin_rpm": number(-3000, 3000),
        "ball_spin_axis": st.lists(number(-1, 1).map(lambda x: round(x, 3)), min_size=2, max_size=2).map(
            lambda two: [*two, 1.0]
        ),
    }
)
BOUNCES = st.fixed_dictionaries({"bounces": st.integers(0, 12)})
STARTS = st.fixed_dictionaries({"place": PLACES, "body": BODIES}, optional={"start_s": number(0, 3)})
INCLINE = st.fixed_dictionaries(
    {
        "slope_deg": number(0, 60),
        "heading_deg": number(-180, 180),
        "length_m": number(0.5, 3),
        "width_m": number(0.5, 3),
    }
)
ALOFT = part(elevation_deg=number(-90, 90))
PERSON = joined(
    st.fixed_dictionaries(
        {
            "place": st.fixed_dictionaries(
                {
                    "height_m": st.one_of(st.just(0.0), number(0, 1)),
                    "along_m": number(-1.5, 1.5),
                    "axial_m": number(0, 1.2),
                }
            ),
            "centre_m": number(0.3, 0.7),
        }
    ),
    part(start_s=number(0, 3), mass_kg=number(1, 1000)),
)
OUTSIDE = st.fixed_dictionaries(
    {"place": st.fixed_dictionaries({"height_m": number(-5, 0), "along_m": number(-1.5, 1.5)})},
    optional={"start_s": number(0, 3)},
)
QUARTERS = st.sampled_from([0.0, 90.0, 180.0, 270.0])
TILT = st.lists(st.tuples(number(0.1, 1.0), number(-90, 90), number(0, 100)), max_size=3).map(
    lambda points: [
        {"time_s": float(t), "elevation_deg": e, "flow_ml_s": f}
        for t, (_, e, f) in zip(np.cumsum([p[0] for p in points]), points, strict=True)
    ]
)
CUP = st.fixed_dictionaries(
    {
        "along_m": number(-1, 1),
        "height_m": number(0, 0.3),
        "diameter_m": log_number(0.02, 0.5),
        "depth_m": number(0.02, 0.2),
    }
)
POURED = st.fixed_dictionaries(
    {
        "place": PLACES,
        "heading_deg": number(-180, 180),
        "flow_ml_s": log_number(1, 200),
        "lip_diameter_mm": number(2, 20),
        "duration_s": number(0.05, 2),
        "liquid": st.sampled_from([x.name for x in LIQUIDS]),
    },
    optional={
        "tilt": TILT,
        "target": CUP,
        "jitter": number(0, 0.5),
        "seed": st.integers(0, 9),
        "start_s": number(0, 3),
    },
)
KINDS = [
    joined(st.just({"kind": "pour"}), POURED, ALOFT),
    joined(st.just({"kind": "jump"}), PERSON, AIM, ALOFT, part(drag_area_m2=number(0, 3))),
    joined(
        st.just({"kind": "walk"}),
        PERSON,
        st.fixed_dictionaries({"speed_m_s": number(0, 20), "heading_deg": st.one_of(QUARTERS, number(-180, 180))}),
        part(climb_deg=number(-90, 90), for_s=number(0.05, 30)),
    ),
    joined(
        st.just({"kind": "lift"}),
        PERSON,
        st.fixed_dictionaries({"to_height_m": number(0, 10), "top_speed_m_s": log_number(0.01, 20)}),
        part(acceleration_m_s2=st.one_of(st.none(), log_number(0.001, 50))),
    ),
    joined(st.just({"kind": "let_go"}), OUTSIDE, AIM, ALOFT),
    joined(
        st.just({"kind": "approach"}),
        OUTSIDE,
        st.fixed_dictionaries({"speed_m_s": number(0.5, 30), "from_m": number(1, 30), "dock": st.sampled_from(["hub", "rim"])}),
        part(heading_deg=number(-180, 180), elevation_deg=number(-90, 90)),
    ),
    joined(
        st.just({"kind": "hang"}),
        STARTS,
        st.fixed_dictionaries({"length_m": log_number(0.05, 2)}),
        part(
            first_angle_deg=number(0, 180),
            first_heading_deg=number(-180, 180),
            speed_m_s=number(0, 5),
            heading_deg=number(-180, 180),
        ),
    ),
    joined(st.just({"kind": "drop"}), STARTS, BOUNCES, st.one_of(st.just({}), SPUN)),
    joined(st.just({"kind": "throw"}), STARTS, AIM, part(elevation_deg=number(-90, 90)), BOUNCES, st.one_of(st.just({}), SPUN)),
    joined(st.just({"kind": "stand"}), STARTS),
    joined(st.just({"kind": "roll"}), STARTS, AIM, BOUNCES,
           part(start=st.sampled_from(["rolling", "sliding"]), ball_spin_rpm=number(-500, 500), ramp=INCLINE)),
]  # fmt: skip
SCENE = st.fixed_dictionaries(
    {
        "rimfall": st.just(1),
        "habitat": HABITATS,
        "air": st.one_of(st.none(), st.just({})),
        "motions": st.lists(st.one_of(KINDS), min_size=1, max_size=2),
        "sampling": st.fixed_dictionaries({"duration_s": number(0.5, 12.0)}),
    }
)


SOLIDS = {
    "point": st.just({}),
    "rod": st.fixed_dictionaries({"length_m": log_number(1, 100)}),
    "ring": st.fixed_dictionaries({"radius_m": log_number(1, 100)}),
    "cylinder": st.fixed_dictionaries({"radius_m": log_number(1, 100), "length_m": log_number(1, 100)}),
    "sphere_shell": st.fixed_dictionaries({"radius_m": log_number(1, 100)}),
    "box": st.fixed_dictionaries({"size_m": st.lists(log_number(1, 100), min_size=3, max_size=3)}),
}
WAY = st.lists(number(-1, 1).map(lambda x: round(x, 3)), min_size=2, max_size=2).map(lambda two: [*two, 1.0])
PART = st.sampled_from(sorted(SOLIDS)).flatmap(
    lambda solid: joined(
        SOLIDS[solid],
        st.fixed_dictionaries(
            {
                "solid": st.just(solid),
                "group": st.sampled_from(["turning", "still", "counter"]),
                "mass_kg": log_number(1, 1e6),
                "place_m": st.lists(number(-60, 60), min_size=3, max_size=3),
            }
        ),
        st.just({}) if solid in ("point", "sphere_shell") else part(axis=WAY),
    )
)
PARTS_OF_IT = st.lists(PART, min_size=1, max_size=5).map(
    lambda some: [one | {"name": f"part {i}"} for i, one in enumerate(some)]
)
LET_GO = st.fixed_dictionaries(
    {"kind": st.just("tumble"), "about_x_rpm": number(-5, 5), "about_y_rpm": number(-5, 5)},
    optional={"losses_s": st.one_of(st.none(), log_number(1, 1e5))},
)
IN_IT = [
    joined(st.just({"kind": "drop"}), STARTS),
    joined(st.just({"kind": "throw"}), STARTS, AIM, part(elevation_deg=number(-90, 90))),
]
TUMBLING = joined(
    SCENE,
    st.fixed_dictionaries(
        {
            "habitat": st.sampled_from(sorted(set(SHAPES) - {"turntable"})).flatmap(
                lambda shape: joined(
                    TURNING, SHAPES[shape], st.just({"shape": shape, "spin_ramp": [], "axial_thrust_m_s2": 0.0})
                )
            ),
            "motions": st.tuples(LET_GO, st.one_of(IN_IT), st.one_of(IN_IT)).map(list),
        },
        optional={"craft": st.one_of(st.none(), PARTS_OF_IT.map(lambda parts: {"rimfall_craft": 1, "parts": parts}))},
    ),
)


def lying(motion, floors):
    """A ball that rolls lies on its surface: its height is the program's. The second of two motions is on the last floor."""
    if motion["kind"] == "tumble":
        return motion
    place = motion["place"] | ({"height_m": 0.0} if motion["kind"] == "roll" else {})
    return motion | {"place": place | {"floor": floors - 1 if motion["kind"] in ("drop", "stand") else 0}}


@pytest.mark.parametrize("part_of_them", range(PARTS))
def test_any_scene_is_answered_or_refused(part_of_them):
    """In parts, each of scenes of its own, so that they are shared out among the processes of a run."""
    limits = settings(max_examples=SCENES // PARTS, deadline=None, suppress_health_check=list(HealthCheck))
    seed(part_of_them)(limits(given(SCENE)(lambda document: check(document) and None)))()


def test_any_scene_that_tumbles_is_answered_or_refused():
    """The frame of it all turns about a moving axis: most must be answered, or the strategy draws nothing but refusals."""
    answered = []
    limits = settings(max_examples=TUMBLING_SCENES, deadline=None, suppress_health_check=list(HealthCheck))
    seed(PARTS)(limits(given(TUMBLING)(lambda document: answered.append(check(document)))))()
    assert len(answered) > TUMBLING_SCENES / 4
    assert all(traced.setting.habitat.spin.tumbles for traced in answered)


def check(document):
    """Its Trace, after all that must hold of one."""
    floors = len(document["habitat"].get("floors", [None]))
    document["motions"] = [lying(m, floors) for m in document["motions"]]
    try:
        traced = questions.trace(read(json.dumps(document)))
    except Refused:
        reject()
    answers.of_trace(traced)  # raises for a number that is not finite
    for one in traced.motions:
        track = one.track
        assert (
            track.ends_s <= min(traced.setting.limit_s(one.plan.start_s), document["sampling"]["duration_s"]) + 1e-9
            or track.path is None
        )
        times = [e.time_s for e in track.events]
        assert times == sorted(times)
        assert deepest(traced, one) >= -DEEPEST_M
    return traced


def deepest(traced, one):
    """The least gap of a motion's samples and events to what bounds its room, metres; none for what is outside of it, goes up a
    shaft, or hangs where nothing is looked for in its way."""
    room, track = traced.setting.room(one.plan.floor), one.track
    if track.path is None or one.motion.kind in UNBOUNDED:
        return 0.0
    places = [track.samples.rotating_m, *([e.rotating_m] for e in track.events)]
    position, half = np.concatenate(places).T, one.plan.body.radius_m
    return min(float(np.min(s.gap(position, np.full(position.shape[1], half)))) for s in room.surfaces)
