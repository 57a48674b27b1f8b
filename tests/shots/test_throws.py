"""Many throws at once against the scene's own: the same numbers, since they are the same flights."""

import numpy as np

import rimfall
from rimfall.kinds import KINDS
from rimfall.scene.document import setting_of
from rimfall.shots import throws

PLACE = {"along_m": 3.0, "height_m": 1.5, "axial_m": 0.5}
SCENES = {
    "cylinder in air": {"habitat": {"radius_m": 30.0, "spin_rpm": 4.0, "width_m": 20.0, "ceiling_m": 6.0}},
    "vacuum, ramp": {
        "habitat": {"radius_m": 30.0, "spin_rpm": 4.0, "spin_ramp": [{"time_s": 3.0, "spin_rpm": 2.0}]},
        "air": None,
    },
    "pods": {
        "habitat": {
            "shape": "pods",
            "radius_m": 30.0,
            "spin_rpm": 4.0,
            "floors": [{"name": "A", "radius_m": 30.0, "azimuth_deg": 0.0, "length_m": 12.0, "width_m": 8.0}],
        }
    },
    "turntable": {"habitat": {"shape": "turntable", "radius_m": 3.0, "spin_rpm": 20.0}},
}


def thrower_of(document):
    """The Scene of a throw, and its Thrower."""
    motion = {"kind": "throw", "place": PLACE, "body": "handball", "carried": {"speed_m_s": 1.0, "heading_deg": 40.0}}
    scene = rimfall.open_scene(
        {"rimfall": 1, "motions": [motion | {"speed_m_s": 0.0, "elevation_deg": 0.0}], **document}
    )
    setting, motion = setting_of(scene)[0], scene.motions[0]
    hand = KINDS["throw"].plan(setting, motion).course.first
    return scene, throws.Thrower(setting, hand, tuple(PLACE.values()))


def test_throws_end_where_and_when_the_scene_has_them_end():
    rng = np.random.default_rng(15)
    for name, document in SCENES.items():
        scene, thrower = thrower_of(document)
        aims = rng.uniform((1, -180, -30), (12, 180, 89), (12, 3))
        ended = throws.ended(thrower, throws.aimed(*aims.T))
        fields = ("speed_m_s", "heading_deg", "elevation_deg")
        motions = [
            scene.motions[0].model_copy(update=dict(zip(fields, map(float, aim), strict=True)) | {"name": str(k)})
            for k, aim in enumerate(aims)
        ]
        answer = rimfall.trace(scene.model_copy(update={"motions": motions}))
        for k, motion in enumerate(answer.motions.values()):
            first = next((e for e in motion.events if e.kind in ("deck", "ceiling", "wall", "floor", "edge")), None)
            if first is None:
                assert ended.met[k] == throws.OPEN, name
                continue
            assert ended.met[k] == first.kind, name
            assert abs(ended.time_s[k] - first.time_s) < 1e-8
            assert np.abs(ended.rotating_m[k] - first.rotating_m).max() < 1e-6
            assert np.abs(ended.rotating_velocity_m_s[k] - first.rotating_velocity_m_s).max() < 1e-6
            assert abs(ended.along_m[k] - first.along_m) < 1e-6


def test_a_velocity_and_its_speed_heading_and_elevation_are_one():
    rng = np.random.default_rng(16)
    aims = rng.uniform((0.1, -179, -89), (12, 179, 89), (50, 3)).T
    assert np.allclose(throws.speed_heading_elevation(throws.aimed(*aims)), aims, rtol=1e-12)
    assert np.array_equal(throws.aimed(2.0, np.array([0.0, 90.0, 180.0]), 0.0)[1], [0.0, 0.0, 2.0])
