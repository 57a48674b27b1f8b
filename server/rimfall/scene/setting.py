"""What all motions of a scene are worked out in: its habitat, its air and its clock."""

from ..motions.setting import Setting
from ..physics.air import air_at
from .document import frame_rate

LEAST_SAMPLES_S = 48


def setting_of(scene):
    """Habitat, air and clock of a scene, and its samples a frame."""
    air = None if scene.air is None else air_at(scene.air.pressure_kpa, scene.air.temperature_c)
    fps = frame_rate(scene.sampling.fps)
    per_frame = -(-LEAST_SAMPLES_S * fps.denominator // fps.numerator)
    return Setting(scene.habitat.habitat(), air, fps * per_frame, scene.sampling.duration_s), per_frame
