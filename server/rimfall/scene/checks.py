"""What no field of a document shows alone: fields against one another, places against the habitat's surfaces, and what keeps a figure as it is."""

import math

from ..errors import BadInput, refusal
from ..kinds import KINDS
from ..language import tr, tr_later, written
from ..physics import spin as spins
from ..physics.constants import G0_M_S2, RPM_RAD_S
from ..shapes.part import GREATEST_RIM_SPEED_M_S
from .catalogue import FIELDS
from .craft.checks import check_scene as check_craft
from .tumbling import clashes as tumbling_clashes
from .tumbling import moving_setting
from .validation_errors import was_wrong, wrong


def check(scene):
    """Raise BadInput with every clash found in a Scene; return it otherwise."""
    clashes = [
        *_habitat(scene.habitat, "habitat"),
        *_names(scene.motions, "motions"),
        *_names(scene.compare, "compare"),
    ]
    for i, other in enumerate(scene.compare):
        clashes += _habitat(other.habitat, f"compare.{i}.habitat")
    if not clashes:  # places are only told from a habitat that stands
        clashes = [*_motions(scene, scene.habitat, "")]
        for i, other in enumerate(scene.compare):
            clashes += _motions(scene, other.habitat, f"compare.{i}.")
        clashes += check_craft(scene)
    if clashes:
        raise BadInput(*clashes[:20])
    return scene


_LEAST_STEP_S = 1e-6  # in which a spin may change: in less the change would be no number


def _habitat(part, at):
    yield from _spins(part, at)
    yield from (wrong(f"{at}.{field}", was, may_be) for field, was, may_be in part.clashes())


def _spins(part, at):
    radius = part.farthest_m
    fastest = GREATEST_RIM_SPEED_M_S / radius / RPM_RAD_S
    spins = [(f"{at}.spin_rpm", part.spin_rpm)]
    spins += [(f"{at}.spin_ramp.{i}.spin_rpm", p.spin_rpm) for i, p in enumerate(part.spin_ramp)]
    for field, spin in spins:
        if spin > fastest:
            may_be = tr(
                "0 to {most} rpm at a radius of {radius} m (rim speed at most {rim_speed} m/s)",
                most=written(fastest, ".6g"),
                radius=written(radius, "g"),
                rim_speed=written(GREATEST_RIM_SPEED_M_S, ",.0f"),
            )
            yield wrong(field, spin, may_be)
    before = 0.0
    for i, point in enumerate(part.spin_ramp):
        if not point.time_s - before >= _LEAST_STEP_S:
            may_be = tr(
                "later than the point before it, above {before} s, by {step} s at least",
                before=written(before, "g"),
                step=written(_LEAST_STEP_S, "g"),
            )
            yield wrong(f"{at}.spin_ramp.{i}.time_s", point.time_s, may_be)
        before = point.time_s


def _names(named, at):
    seen = {}
    for i, one in enumerate(named):
        if one.name in seen:
            may_be = tr("a name that no other has ({field} has it)", field=f"{at}.{seen[one.name]}")
            yield wrong(f"{at}.{i}.name", one.name, may_be)
        seen.setdefault(one.name, i)


def _motions(scene, part, prefix):
    """What each motion's kind has against it in a habitat."""
    there = scene.model_copy(update={"habitat": part})
    if against := list(tumbling_clashes(there, prefix)):
        yield from against
        return
    setting, _ = moving_setting(there)
    for i, motion in enumerate(scene.motions):
        clashes = _floor(part, motion) or KINDS[motion.kind].check(motion, setting, part.shape)
        yield from (wrong(f"{prefix}motions.{i}.{field}", was, may_be) for field, was, may_be in clashes)


def _floor(part, motion):
    floors = part.grounds
    if motion.place.floor < floors:
        return []
    may_be = tr("0: there is one ground")
    if floors > 1:
        may_be = tr("0 to {last}, one of the {count} floors", last=floors - 1, count=floors)
    return [("place.floor", motion.place.floor, may_be)]


HOLDS = {"gravity": "gravity_m_s2", "felt": "gravity_m_s2", "rim_speed": "rim_speed_m_s"}
_ABOVE_0 = {
    "gravity": tr_later("above 0 while gravity is held"),
    "felt": tr_later("above 0 while gravity is held"),
    "rim_speed": tr_later("above 0 while rim speed is held"),
}
_WITHIN = {
    "gravity": tr_later("{low} to {high} while gravity is held"),
    "felt": tr_later("{low} to {high} while gravity is held"),
    "rim_speed": tr_later("{low} to {high} while rim speed is held"),
}


def followed(scene, hold, held, follower):
    """The scene with the follower ("habitat.radius_m" or "habitat.spin_rpm", or that of another habitat, "compare.0.habitat.radius_m")
    set so that `held` holds at that habitat's deck: the spin's own "gravity" (m/s2), gravity as it is "felt", with thrust or the
    room's in it (m/s2), or the "rim_speed" (m/s). Raises BadInput where there is no such habitat, or the follower would leave its
    range."""
    home, _, dial = follower.rpartition(".")
    other = int(home.split(".")[1]) if home.startswith("compare.") else None
    if other is not None and other >= len(scene.compare):
        there = ", ".join(["habitat", *(f"compare.{i}.habitat" for i in range(len(scene.compare)))])
        say = tr("There is no {habitat}; there are {others}.", habitat=home, others=there)
        raise BadInput(refusal("follower", follower, tr("radius_m or spin_rpm of {habitats}", habitats=there), say))
    part = scene.habitat if other is None else scene.compare[other].habitat
    wanted = {HOLDS[hold]: _outward(part, held, follower) if hold == "felt" else held}
    if dial == "spin_rpm":
        value = spins.omega_for(part.radius_m, **wanted) / RPM_RAD_S
    elif part.spin_rpm == 0:
        raise BadInput(wrong(f"{home}.spin_rpm", part.spin_rpm, tr(_ABOVE_0[hold])))
    else:
        value = spins.radius_for(omega_rad_s=part.spin_rpm * RPM_RAD_S, **wanted)
    low, high = (FIELDS[f"habitat.{dial}"][end] for end in ("min", "max"))
    if not low <= value <= high:
        may_be = tr(_WITHIN[hold], low=written(low, "g"), high=written(high, ",.0f"))
        raise BadInput(wrong(follower, value, may_be))
    return check(
        _with_home(scene, other, part.resized(value) if dial == "radius_m" else part.model_copy(update={dial: value}))
    )


def _with_home(scene, other, part):
    """The scene with another of its habitats; `other`: its place in `compare`, None for the scene's own."""
    if other is None:
        return scene.model_copy(update={"habitat": part})
    changed = [one.model_copy(update={"habitat": part}) if i == other else one for i, one in enumerate(scene.compare)]
    return scene.model_copy(update={"compare": changed})


def _outward(part, felt_m_s2, follower):
    """The spin's part, m/s2, of a gravity that is felt. Raises BadInput where all else that pulls is as much."""
    pull_m_s2 = math.hypot(*part.habitat().pull_m_s2)
    if felt_m_s2 > pull_m_s2 or not pull_m_s2:
        return math.sqrt((felt_m_s2 - pull_m_s2) * (felt_m_s2 + pull_m_s2))
    was, pull = (f"{written(value / G0_M_S2, '.4g')} g" for value in (felt_m_s2, pull_m_s2))
    if part.GROUND.level:
        may_be = tr("above {gravity}, which the gravity of the room alone gives", gravity=pull)
    else:
        may_be = tr("above {gravity}, which thrust alone gives", gravity=pull)
    raise BadInput(refusal(follower, was, may_be, was_wrong(tr("Gravity"), was, may_be)))
