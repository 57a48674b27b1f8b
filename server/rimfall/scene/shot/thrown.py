"""The throw of a scene that a question is about."""

from contextlib import contextmanager

from ...errors import BadInput, TooMuch, refusal
from ...kinds import KINDS
from ...kinds.kind import IN_FLIGHT
from ...motions.flight import StepLimitExceeded
from ...physics.budget import TooMuchWork
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


@contextmanager
def told_of_throws(motion, *, steps_field, work_field, stopped, asks_less):
    """What is done inside flies throws of a motion: where that takes too much, the fields that ask for it are named. stopped: the words up
    to how much was used; asks_less: a sentence on what would do. Raises TooMuch."""
    try:
        yield
    except StepLimitExceeded:
        say = f"One of these throws would take over {IN_FLIGHT.most:,} steps to work out: {IN_FLIGHT.why}"
        may_be = f"worked out within {IN_FLIGHT.most:,} steps"
        raise TooMuch(refusal(steps_field, motion.name, may_be, say)) from None
    except TooMuchWork as exceeded:
        used, most = (amount.told(exceeded.what) for amount in (exceeded.used, exceeded.most))
        say = f"{stopped} stopped after {used}, and one request may use {most}. {asks_less}{exceeded.busy}"
        raise exceeded.of(refusal(work_field, used, f"within {most}", say)) from None


def thrower_of(setting, motion):
    """The Thrower of a throw: its hand, whatever the throw's own speed, heading and elevation."""
    plan = KINDS[motion.kind].plan(setting, motion.model_copy(update={"speed_m_s": 0.0}))
    return Thrower(setting, plan.course.first, plan.place, plan.floor)
