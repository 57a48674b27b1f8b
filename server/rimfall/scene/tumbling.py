"""A scene whose habitat tumbles: the craft that it is part of is let go by a motion of the kind `tumble`, and all else flies in it."""

from dataclasses import replace

import numpy as np

from ..fields import any_of
from ..language import tr, tr_many, written
from ..physics.tumbling import Tumbling
from ..shapes.mesh import MARK
from ..shapes.part import spin_rad_s
from ..vessel.attitude import LEAST_SHARE, principal_of
from ..vessel.shell import shell
from ..vessel.tumble import LetGo
from .craft.asked import bodies_of, solid_of
from .craft.checks import of_scene
from .document import setting_of
from .validation_errors import wrong

KIND = "tumble"
INSIDE = ("drop", "throw")  # what is worked out in a craft that tumbles
_LAST_S = 600.0  # until when its fastest turning is looked for


def tumbler(scene):
    """The number of the motion by which a Scene's craft tumbles, None where it does not."""
    return next((i for i, motion in enumerate(scene.motions) if motion.kind == KIND), None)


def moving_setting(scene):
    """The Setting of a Scene that stands, and its samples a frame: as `setting_of`, but that its frame tumbles where the craft does."""
    setting, per_frame = setting_of(scene)
    number = tumbler(scene)
    if number is None:
        return setting, per_frame
    let_go = _let_go(scene, scene.motions[number], setting.habitat)
    spin = Tumbling(let_go, let_go.centre_m, setting.duration_s or _LAST_S)
    return replace(setting, habitat=replace(setting.habitat, spin=spin)), per_frame


def _let_go(scene, motion, habitat):
    """The LetGo of a scene's craft, in its habitat's axes. Raises ValueError for a craft on one line."""
    body = _body(scene, habitat)
    rates = np.array([spin_rad_s(rpm) for rpm in (motion.about_x_rpm, motion.about_y_rpm, scene.habitat.spin_rpm)])
    return LetGo(principal_of(body), body.mass_kg, body.centre_m, rates, motion.losses_s, scene.craft is None)


def _body(scene, habitat):
    if scene.craft is not None:
        parts = of_scene(scene).parts
        return bodies_of(parts, {part.name: solid_of(part) for part in parts})["whole"]
    sheets = [part for part in habitat.meshes() if part.material != MARK]
    return shell(np.concatenate([part.position_m[part.faces] for part in sheets]))


def clashes(scene, at=""):
    """What stands against a Scene's tumbling, as refusals; at: what the names of its habitat's fields begin with."""
    number = tumbler(scene)
    if number is None:
        return
    home = scene.habitat
    if home.GROUND.level:
        yield wrong(f"motions.{number}.kind", KIND, tr("another kind of motion: a turntable is in no craft"))
        return
    if home.spin_ramp:
        yield wrong(
            f"{at}habitat.spin_ramp",
            tr_many("{count} point", "{count} points", len(home.spin_ramp)),
            tr("[] while the craft tumbles: nothing drives its spin"),
        )
    if home.axial_thrust_m_s2:
        yield wrong(
            f"{at}habitat.axial_thrust_m_s2",
            home.axial_thrust_m_s2,
            tr("0 while the craft tumbles: it is left to itself"),
        )
    yield from _others(scene, number)
    try:
        _let_go(scene, scene.motions[number], home.habitat())
    except ValueError:
        yield wrong(
            "craft.parts",
            tr("parts on one line"),
            tr(
                "parts with inertia about every axis, each at least {share} of the greatest",
                share=written(LEAST_SHARE, "g"),
            ),
        )


def _others(scene, number):
    for i, motion in enumerate(scene.motions):
        if i == number:
            continue
        if motion.kind == KIND:
            yield wrong(
                f"motions.{i}.kind",
                KIND,
                tr("another kind of motion: {field} lets the craft go already", field=f"motions.{number}"),
            )
        elif motion.kind not in INSIDE:
            may_be = tr("{kinds}, all that is worked out in a craft that tumbles", kinds=tr(any_of(INSIDE)))
            yield wrong(f"motions.{i}.kind", motion.kind, may_be)
        else:
            yield from _inside(i, motion)


def _inside(i, motion):
    """What a thing let go in a craft that tumbles may not be."""
    if motion.bounces:
        yield wrong(
            f"motions.{i}.bounces",
            motion.bounces,
            tr("0 in a craft that tumbles: what comes after a first contact is not worked out there"),
        )
    if motion.ball_spin_rpm:
        yield wrong(f"motions.{i}.ball_spin_rpm", motion.ball_spin_rpm, tr("0 in a craft that tumbles"))
    if getattr(motion.body, "buoyant", False):
        yield wrong(f"motions.{i}.body.buoyant", True, tr("false in a craft that tumbles"))
