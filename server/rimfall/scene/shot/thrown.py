"""The throw of a scene that a question is about."""

from ...errors import BadInput
from ...kinds import KINDS
from ...shots.throws import Thrower
from ..validation_errors import wrong


def thrown_in(scene, name):
    """The motion of that name. Raises BadInput where the scene has none, or it is no throw."""
    throws = [motion.name for motion in scene.motions if motion.kind == "throw"]
    for motion in scene.motions:
        if motion.name == name and motion.kind == "throw":
            return _begins(scene, motion)
    may_be = f"a throw of the scene: {', '.join(throws)}" if throws else "a throw, of which the scene has none"
    raise BadInput(wrong("motion", name, may_be))


def _begins(scene, motion):
    """The motion. Raises BadInput where the scene ends before it begins."""
    ends_s = scene.sampling.duration_s
    if ends_s is not None and motion.start_s >= ends_s:
        raise BadInput(
            wrong("sampling.duration_s", ends_s, f"later than {motion.start_s:g} s, when {motion.name} is thrown")
        )
    return motion


def thrower_of(setting, motion):
    """The Thrower of a throw: its hand, whatever the throw's own speed, heading and elevation."""
    plan = KINDS[motion.kind].plan(setting, motion.model_copy(update={"speed_m_s": 0.0}))
    return Thrower(setting, plan.course.first, plan.place, plan.floor)
