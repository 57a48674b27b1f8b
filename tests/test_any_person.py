"""Anybody in any habitat the document allows is told something: no exception, no NaN, no sentence without an end, no refusal."""

import json
import math
import re

from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from rimfall.cli import feel as feel_command
from rimfall.comfort.quantities import QUANTITIES
from rimfall.scene.feel import answers as feel_answers
from rimfall.scene.feel.answers import feel
from rimfall.scene.reading import read_feel
from tests.test_any_scene import SHAPES, log_number, number, part

CASES = 200
UNREADABLE = re.compile(
    r"\d[eE][+-]?\d|\binf\b|-0(\.0+)?(?![.\d])|(?<![\d.,])0\.0+(°|[\s\u00a0](%|°|m|mm|m/s|ft|in|ft/s|s|g|rpm)(?![\w/]))|\. rpm"
)  # powers of ten, less than nothing, and what is there told as 0.0 of something
TURNING = st.fixed_dictionaries(
    {"radius_m": log_number(0.1, 1e5), "spin_rpm": st.one_of(st.just(0.0), log_number(1e-13, 0.4), number(0, 1.0))}
)
PERSON = part(
    height_m=number(0.3, 3),
    walk_m_s=number(0, 10),
    run_m_s=number(0, 20),
    climb_m_s=number(0, 5),
    lift_m_s=number(0, 50),
    head_turn_deg_s=number(0, 1000),
)
OWN = st.lists(
    st.fixed_dictionaries(
        {
            "quantity": st.sampled_from(sorted(QUANTITIES)),
            "bound": st.sampled_from(["at_least", "at_most"]),
            "value": log_number(1e-6, 1e6),
        },
        optional={"name": st.text(max_size=60)},
    ),
    max_size=3,
)


def small_enough(shape, turning):
    """The parts of a shape that a radius must have room for, made to fit it; the spin kept below the greatest rim speed."""
    radius = turning["radius_m"]
    shape = {k: v for k, v in shape.items() if k not in ("ceiling_m", "hub_radius_m")}
    if "tube_radius_m" in shape:
        shape["tube_radius_m"] = max(0.05, min(shape["tube_radius_m"], 0.4 * radius))
    for floor in shape.get("floors", ()):
        floor.pop("ceiling_m", None)
    spin = turning["spin_rpm"] * min(200.0, 4_900.0 / radius * 30 / math.pi)
    return {**shape, "radius_m": max(radius, 0.2), "spin_rpm": spin / 2}


HABITATS = st.one_of(
    *(
        st.tuples(own, TURNING).map(lambda found, name=name: {"shape": name, **small_enough(*found)})
        for name, own in SHAPES.items()
    )
)


def numbers(value):
    if isinstance(value, float):
        yield value
    for inner in value.values() if isinstance(value, dict) else value if isinstance(value, (list, tuple)) else ():
        yield from numbers(inner)


@settings(max_examples=CASES, deadline=None, suppress_health_check=list(HealthCheck))
@given(habitat=HABITATS, person=PERSON, own=OWN, units=st.sampled_from(["si", "us"]))
def test_anybody_anywhere_is_told_something(habitat, person, own, units):
    scene = read_feel(json.dumps({"habitat": habitat, "person": person, "own_limits": own}))
    felt = feel(scene)
    told = feel_answers.as_data(felt, units)
    json.dumps(told, allow_nan=False)
    assert all(math.isfinite(v) for v in numbers(told))
    assert [row["name"] for row in told["figure_rows"]] == list(told["figures"])
    assert len(told["says"]["short"]) <= 18
    for text in (told["says"]["lead"], told["says"]["summary"], *(w["text"] for w in told["words"])):
        assert text.endswith(".")
        assert "nan" not in text.lower().split()
        assert "None" not in text
        assert not UNREADABLE.search(text), text
    lines = [
        line
        for line in feel_command.as_text(felt, units)
        if not any(row["study"] in line for row in told["limits"] if row["mine"])
    ]
    assert not [line for line in lines if UNREADABLE.search(re.sub(" +", " ", line))]
    assert len([row for row in told["limits"] if row["mine"]]) == len(own)
