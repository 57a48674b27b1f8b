"""People and craft as documents: what is refused, by the name of its field, and what is said of them in both systems of units."""

import json

from rimfall.kinds import KINDS
from rimfall.scene.catalogue import OWN
from rimfall.scene.reading import read
from tests.scene.documents import answer, changed, refusals, scene, the_refusal
from tests.tables import each_row

FLOORS = [{"length_m": 12.0, "width_m": 6.0, "ceiling_m": 3.0}]
HABITATS = {
    "drum": {"width_m": 14.0, "ceiling_m": 4.0},
    "open": {"hub_radius_m": 2.0},
    "torus": {"shape": "torus", "tube_radius_m": 6.0},
    "sphere": {"shape": "sphere", "hub_radius_m": 2.0},
    "pods": {"shape": "pods", "floors": FLOORS},
    "table": {"shape": "turntable"},
}
NEW = {kind: {"kind": kind, **KINDS[kind].new} for kind in ("jump", "walk", "lift", "let_go", "approach")}

# kind, habitat, field, value, a part of what it may be
WRONG = [
    ("jump", "drum", "place.height_m", 2.1, "0 to 2 m"),
    ("jump", "open", "place.height_m", 52.5, "0 to 52 m"),
    ("jump", "drum", "place.axial_m", 6.5, "-6 to 6 m"),
    ("jump", "drum", "centre_m", 2.5, "twice that height"),
    ("jump", "pods", "place.along_m", 6.1, "over its floor"),
    ("jump", "sphere", "place.axial_m", 55.5, "m, clear"),
    ("jump", "table", "place.axial_m", -0.5, "0 to 56 m"),
    ("jump", "open", "speed_m_s", -1.0, "0 to 3,000 m/s"),
    ("jump", "open", "mass_kg", 0.5, "1 to 1,000 kg"),
    ("jump", "open", "drag_area_m2", -0.1, "0 to 100"),
    ("jump", "open", "body", "handball", "absent"),
    ("jump", "open", "carried", 3.0, "braces"),
    ("walk", "drum", "place.height_m", 2.5, "0 to 2 m"),
    ("walk", "drum", "climb_deg", -5.0, "0 to 90"),
    ("walk", "drum", "climb_deg", 91.0, "-90 to 90"),
    ("walk", "drum", "for_s", 0.0, "0.05 to 600 s"),
    ("walk", "drum", "for_s", "long", "0.05 to 600 s"),
    ("walk", "torus", "heading_deg", 90.0, "0 or 180"),
    ("walk", "torus", "place.axial_m", 0.5, "0 m"),
    ("walk", "sphere", "heading_deg", 45.0, "0 or 180"),
    ("walk", "sphere", "place.axial_m", 20.0, "0 m"),
    ("walk", "pods", "place.axial_m", 3.5, "-3 to 3 m"),
    ("walk", "open", "elevation_deg", 3.0, "absent"),
    ("lift", "open", "to_height_m", 52.5, "0 to 52 m"),
    ("lift", "open", "to_height_m", 0.0, "another height"),
    ("lift", "open", "to_height_m", None, "0 to 100,000 m"),
    ("lift", "open", "place.height_m", 53.0, "0 to 52 m"),
    ("lift", "drum", "place.axial_m", 7.5, "-7 to 7 m"),
    ("lift", "sphere", "place.height_m", -1.0, "0 to 100,000 m"),
    ("lift", "open", "top_speed_m_s", 0.0, "0.01 to 1,000 m/s"),
    ("lift", "open", "acceleration_m_s2", 0.0, "null"),
    ("lift", "table", "kind", "lift", "turntable"),
    ("let_go", "open", "place.height_m", 0.5, "-100,000 to 0 m"),
    ("let_go", "drum", "place.axial_m", 7.5, "under the hull"),
    ("let_go", "torus", "elevation_deg", 10.0, "-90 to 0"),
    ("let_go", "pods", "elevation_deg", 10.0, "-90 to 0"),
    ("let_go", "pods", "place.along_m", 7.0, "over its floor"),
    ("let_go", "table", "kind", "let_go", "turntable"),
    ("let_go", "open", "speed_m_s", True, "0 to 3,000 m/s"),
    ("approach", "open", "place.height_m", 1.0, "hull"),
    ("approach", "open", "elevation_deg", 5.0, "-90 to 0"),
    ("approach", "open", "speed_m_s", 0.0, "above 0"),
    ("approach", "open", "from_m", 301.0, "1 to 300 m"),
    ("approach", "open", "from_m", 0.5, "1 to 1,000,000 m"),
    ("approach", "open", "dock", "keel", "hub or rim"),
    ("approach", "open", "mass_kg", 2e9, "1 to 1,000,000,000 kg"),
    ("approach", "drum", "place.axial_m", 7.5, "under the hull"),
    ("approach", "table", "kind", "approach", "turntable"),
]


@each_row(("kind", "habitat", "field", "value", "may_be"), WRONG)
def test_a_wrong_value_is_refused_by_name(kind, habitat, field, value, may_be):
    document = scene(NEW[kind], habitat=HABITATS[habitat])
    refusal = the_refusal(changed(document, f"motions.0.{field}", value))
    assert refusal.field == f"motions.0.{field}"
    assert may_be in refusal.may_be
    assert refusal.say.endswith(".")


def test_beside_the_lowest_line_of_a_tube_feet_begin_higher():
    """A ball of 1 m fits 4 m to the side where its centre is 6 - sqrt(5^2 - 4^2) = 3 m up: the feet at 2 m."""
    refusal = the_refusal(scene(NEW["jump"] | {"place": {"axial_m": 4.0}}, habitat=HABITATS["torus"]))
    assert refusal.field == "motions.0.place.height_m"
    assert refusal.may_be.startswith("2 to 8 m")


@each_row("kind", NEW)
@each_row("habitat", HABITATS)
def test_each_kind_as_it_comes_is_taken_wherever_it_makes_sense(kind, habitat):
    document = scene(NEW[kind], habitat=HABITATS[habitat])
    if habitat == "table" and kind in ("lift", "let_go", "approach"):
        assert the_refusal(document).field == "motions.0.kind"
    else:
        assert answer(document)["motions"][0]["words"]


def test_a_dock_at_the_hub_is_on_the_axis_or_below_it():
    hub = {"kind": "approach", "dock": "hub", "heading_deg": 90.0, "elevation_deg": 0.0}
    assert read(json.dumps(scene(hub | {"place": {"height_m": 54.0}})))
    assert the_refusal(scene(hub | {"place": {"height_m": 57.0}})).field == "motions.0.place.height_m"
    assert the_refusal(scene(hub | {"place": {"height_m": -1.0}})).field == "motions.0.place.height_m"


def test_a_walk_does_not_go_round_a_thousand_times():
    fast = {"kind": "walk", "speed_m_s": 3000.0, "for_s": 600.0}
    refusal = the_refusal(scene(fast, habitat={"radius_m": 5.0}))
    assert refusal.field == "motions.0.for_s"
    assert "thousand times" in refusal.may_be
    assert read(json.dumps(scene(fast, habitat={"radius_m": 5.0}, sampling={"duration_s": 5.0})))


def test_in_a_habitat_beside_the_same_is_asked():
    low = {"name": "low", "habitat": {"radius_m": 56.0, "spin_rpm": 3.0, "ceiling_m": 1.5}}
    assert refusals(scene(NEW["jump"], compare=[low]))[0].field == "compare.0.motions.0.centre_m"


def test_a_person_is_smaller_than_a_quarter_of_the_radius():
    assert the_refusal(scene(NEW["walk"], habitat={"radius_m": 4.0})).field == "motions.0.centre_m"


def test_ranges_of_their_own_are_told_by_kind():
    assert OWN["jump"]["speed_m_s"]["default"] == 2.7
    assert OWN["jump"]["elevation_deg"]["default"] == 90.0
    assert OWN["let_go"]["place.height_m"]["max"] == 0
    assert OWN["approach"]["mass_kg"]["max"] == 1e9
    assert "climb_deg" not in OWN["walk"]


def test_a_name_left_out_has_no_underscore():
    assert read(json.dumps(scene({"kind": "let_go"}))).motions[0].name == "let go 1"


def said(motion, units="si", **habitat):
    return " ".join(answer(scene(motion, habitat=habitat), units)["motions"][0]["words"]).replace("\u00a0", " ")


# motion, habitat, what is said
WORDS = [
    (NEW["jump"], {}, "lands 0.28 m spinward after 0.97 s; under plain gravity, where it began after 0.98 s."),
    ({"kind": "jump", "elevation_deg": 0.0}, {}, "does not leave the ground."),
    (NEW["jump"], {"spin_rpm": 0.0, "ceiling_m": 4.0}, "Nothing brings the jumper back:"),
    (NEW["walk"], {}, "the feet feel 0.66 g, 17 % more than standing; the head feels 0.64 g."),
    (NEW["walk"] | {"heading_deg": 180.0}, {}, "15 % less than standing"),
    (NEW["walk"] | {"heading_deg": 90.0}, {}, "as standing"),
    (NEW["walk"], {}, "At 17.6 m/s antispinward the feet would leave the ground."),
    (NEW["walk"], {"spin_rpm": 0.0}, "There is no weight to walk with"),
    (NEW["walk"] | {"climb_deg": 90.0, "for_s": 20.0}, {"ceiling_m": 4.0}, "The way ends at the ceiling."),
    (
        NEW["lift"],
        {},
        "The ride takes 10.00 s. The rider is pushed spinward by up to 0.13 g, and down leans by up to 19°.",
    ),
    (NEW["lift"] | {"place": {"height_m": 20.0}, "to_height_m": 0.0}, {}, "pushed antispinward"),
    *(
        (
            NEW["lift"] | {"place": {"height_m": 20.0}, "to_height_m": 0.0, "acceleration_m_s2": 0.5},
            {"spin_rpm": rpm},
            "pushed antispinward by",
        )
        for rpm in (2.9, 3.0, 4.0, 5.0, 6.0)
    ),
    (NEW["lift"], {"spin_rpm": 0.0}, "The sideways push is negligible."),
    (NEW["lift"] | {"top_speed_m_s": 0.1}, {}, "takes 200 s, of which 60.00 s are shown."),
    (
        NEW["let_go"],
        {},
        "along a straight line at 17.9 m/s, and after 60.00 s is 1,074 m from the place where they let go",
    ),
    (NEW["let_go"], {}, "That place sweeps by again after 24.59 s, 387.01 m away."),
    (NEW["let_go"], {"spin_rpm": 0.0}, "Nothing moves: one stays beside the hull."),
    (NEW["let_go"] | {"speed_m_s": 8.0, "elevation_deg": 90.0}, {}, "one meets the hull after"),
    (NEW["approach"], {}, "reaches the dock after 40.00 s; seen from aboard it goes round 2.1 times."),
    (
        NEW["approach"],
        {},
        "The closing velocity at contact is 21.4 m/s: 21.1 m/s antispinward and 3.5 m/s up.",
    ),
]


@each_row(("motion", "habitat", "sentence"), WORDS)
def test_every_outcome_has_its_sentence(motion, habitat, sentence):
    assert sentence in said(motion, **habitat)


def test_us_units_change_the_words():
    for kind in NEW:
        words = said(NEW[kind], "us")
        assert " m/s" not in words
        assert " m " not in words
    assert "57.7 ft/s" in said(NEW["walk"], "us")


@each_row("kind", NEW)
def test_what_is_left_out_is_said(kind):
    assumed = " ".join(answer(scene(NEW[kind]))["motions"][0]["assumptions"])
    due = {
        "jump": "does not turn",
        "walk": "steps",
        "lift": "stands still",
        "let_go": "no air outside",
        "approach": "coasts",
    }
    assert due[kind] in assumed
    assert "Buoyancy" not in assumed
    assert ("lags behind" in " ".join(_ramped(kind))) == (kind == "jump")


def _ramped(kind):
    ramp = {"spin_ramp": [{"time_s": 5.0, "spin_rpm": 4.0}]}
    return answer(scene(NEW[kind], habitat=ramp))["motions"][0]["assumptions"]


def test_arrays_of_findings_run_along_the_samples():
    for kind in NEW:
        motion = answer(scene(NEW[kind]))["motions"][0]
        arrays = [v for v in motion["findings"].values() if isinstance(v, list) and len(v) > 3]
        assert all(len(v) == motion["count"] for v in arrays)
        assert arrays or kind == "jump"


def test_it_is_told_that_a_given_motion_arrived():
    for kind, why in (
        ("walk", "starts_there"),
        ("lift", "arrived"),
        ("approach", "arrived"),
        ("let_go", "never_meets"),
    ):
        motion = answer(scene(NEW[kind]))["motions"][0]
        assert motion["no_landing"] == why
        assert motion["companion"]["none_because"] in ("given", "outside")
