"""The throw of a scene that a question is about."""

from contextlib import contextmanager

from ...errors import BadInput, TooMuch, refusal
from ...kinds import KINDS
from ...kinds.kind import IN_FLIGHT
from ...language import tr, written
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
    may_be = tr("a throw, of which the scene has none")
    if throws:
        may_be = tr("a throw of the scene: {names}", names=", ".join(throws))
    raise BadInput(wrong("motion", name, may_be))


def _begins(scene, motion):
    """The motion. Raises BadInput where the scene ends before it begins."""
    ends_s = scene.sampling.duration_s
    if ends_s is not None and motion.start_s >= ends_s:
        may_be = tr("later than {time} s, when {name} is thrown", time=written(motion.start_s, "g"), name=motion.name)
        raise BadInput(wrong("sampling.duration_s", ends_s, may_be))
    return motion


@contextmanager
def told_of_throws(motion, *, steps_field, work_field, stopped, asks_less):
    """What is done inside flies throws of a motion: where that takes too much, the fields that ask for it are named. stopped: that it was,
    of {used} and {most}; asks_less: a sentence on what would do. Raises TooMuch."""
    try:
        yield
    except StepLimitExceeded:
        most = written(IN_FLIGHT.most, ",")
        say = tr(
            "One of these throws would take over {count} steps to work out: {why}", count=most, why=tr(IN_FLIGHT.why)
        )
        may_be = tr("worked out within {count} steps", count=most)
        raise TooMuch(refusal(steps_field, motion.name, may_be, say)) from None
    except TooMuchWork as exceeded:
        used, most = (amount.told(exceeded.what) for amount in (exceeded.used, exceeded.most))
        say = f"{tr(stopped, used=used, most=most)} {tr(asks_less)}{exceeded.busy}"
        raise exceeded.of(refusal(work_field, used, tr("within {most}", most=most), say)) from None


def thrower_of(setting, motion):
    """The Thrower of a throw: its hand, whatever the throw's own speed, heading and elevation."""
    plan = KINDS[motion.kind].plan(setting, motion.model_copy(update={"speed_m_s": 0.0}))
    return Thrower(setting, plan.course.first, plan.place, plan.floor)
