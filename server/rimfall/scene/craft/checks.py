"""What no field of a craft shows alone: parts against one another, blocks against parts, and the radius and spin that a scene gives it."""

from ...errors import BadInput, refusal
from ...physics.constants import RPM_RAD_S
from ...shapes.part import GREATEST_RIM_SPEED_M_S, spin_rad_s
from ...vessel.attitude import LEAST_SHARE, principal_of
from ...vessel.solids import reach_m
from ..validation_errors import given_of, label_of, may_be_of, missing, wrong
from .asked import bodies_of, rim_of, solid_of
from .document import GREATEST_M, LEAST_M

_NO_RADIUS = "which is the craft's own where it is left out, and it has none"


def check(craft, at=""):
    """The Craft with every radius filled in; at: what its fields' names begin with in refusals. Raises BadInput with every clash found."""
    clashes = [*([] if at else _version(craft)), *_spin(craft), *_parts(craft), *_blocks(craft)]
    if not clashes:
        craft = filled(craft)
        clashes = [*_sizes(craft), *_speeds(craft)]
    if not clashes and craft.tumble is not None:
        clashes = [*_tumble(craft)]
    if clashes:
        raise BadInput(*(_at(at, one) for one in clashes[:20]))
    return craft


def of_scene(scene):
    """The Craft of a scene that carries one, radius and spin those of its habitat, checked. Raises BadInput."""
    if scene.craft is None:
        say = "This scene carries no craft: it must have one under craft, or a craft's own document must be given."
        raise BadInput(refusal("craft", "nothing", "a craft", say))
    home = scene.habitat
    return check(scene.craft.model_copy(update={"radius_m": home.radius_m, "spin_rpm": home.spin_rpm}), "craft.")


def check_scene(scene):
    """Every clash of a scene's craft, as refusals: (none where there is no craft)."""
    if scene.craft is None:
        return []
    if scene.habitat.GROUND.level:
        return [wrong("craft", "a craft", "null: a turntable is in no craft")]
    doubled = [name for name in ("radius_m", "spin_rpm") if getattr(scene.craft, name) is not None]
    if doubled:
        say = "left out in a scene: the habitat's is the craft's"
        return [wrong(f"craft.{name}", getattr(scene.craft, name), say) for name in doubled]
    try:
        of_scene(scene)
    except BadInput as refused:
        return list(refused.refusals)
    return []


def _at(at, one):
    """A refusal whose field lies deeper in a document."""
    return refusal(f"{at}{one.field}", one.was, one.may_be, one.say)


def filled(craft):
    """The craft with the radii that its parts leave out: its own; of a torus that less its tube."""
    parts = [_with_radius(part, craft.radius_m) for part in craft.parts]
    return craft.model_copy(update={"parts": parts})


def _with_radius(part, radius_m):
    if getattr(part, "radius_m", radius_m) is not None or "radius_m" not in type(part).model_fields:
        return part
    return part.model_copy(update={"radius_m": radius_m - getattr(part, "tube_radius_m", 0.0)})


def _version(craft):
    """A document of its own says what it is."""
    if "rimfall_craft" not in craft.model_fields_set:
        yield missing("rimfall_craft")


def _spin(craft):
    if craft.spin_rpm is None:
        yield missing("spin_rpm", given_of("spin_rpm"))


def _parts(craft):
    first = {}
    for i, part in enumerate(craft.parts):
        at = f"parts.{i}"
        if part.name in first:
            yield wrong(f"{at}.name", part.name, f"a name that no other part has (parts.{first[part.name]} has it)")
        first.setdefault(part.name, i)
        if craft.radius_m is None and getattr(part, "radius_m", 0.0) is None:
            say = f"{label_of(f'{at}.radius_m')} is missing, {_NO_RADIUS}; it must be {may_be_of(f'{at}.radius_m')}."
            yield refusal(f"{at}.radius_m", "nothing", may_be_of(f"{at}.radius_m"), say)
        yield from _vectors(at, part)
    if not any(part.group == "turning" for part in craft.parts):
        yield wrong("parts", [part.name for part in craft.parts], "parts at least one of which is in the group turning")


def _vectors(at, part):
    """Directions that are none, and sizes that no box has."""
    for name in ("axis", "size_m"):
        value = getattr(part, name, None)
        fault = value is not None and (
            not any(value) if name == "axis" else not all(LEAST_M <= side <= GREATEST_M for side in value)
        )
        if fault:
            yield wrong(f"{at}.{name}", list(value))


def _blocks(craft):
    if craft.slew is not None:
        yield from _slew(craft.slew)
    if craft.deploy is not None:
        yield from _deployed(craft)


def _slew(slew):
    given = [name for name in ("rate_deg_s", "time_s", "torque_n_m") if getattr(slew, name) is not None]
    if not given:
        instead = "(or slew.time_s or slew.torque_n_m is given instead)"
        yield missing("slew.rate_deg_s", f"{may_be_of('slew.rate_deg_s')} {instead}")
    for name in given[1:]:
        yield wrong(f"slew.{name}", getattr(slew, name), f"null beside slew.{given[0]}, from which it follows")


def _deployed(craft):
    parts, first = {part.name: part for part in craft.parts}, {}
    for i, changed in enumerate(craft.deploy.parts):
        at = f"deploy.parts.{i}"
        part = parts.get(changed.name)
        if first.setdefault(changed.name, i) != i:
            yield wrong(
                f"{at}.name",
                changed.name,
                f"a part that changes once (deploy.parts.{first[changed.name]} is of it already)",
            )
        if part is None:
            yield wrong(f"{at}.name", changed.name, f"the name of a part: {', '.join(list(parts)[:20])}")
            continue
        for name, value in changed:
            if name != "name" and value is not None and name not in type(part).model_fields:
                yield wrong(f"{at}.{name}", value, f"left out: a {part.solid.replace('_', ' ')} has none")
        yield from _vectors(at, changed)


def _sizes(craft):
    if craft.hull is not None and craft.hull.tube_radius_m is not None:
        most = rim_of(craft, {part.name: solid_of(part) for part in craft.parts}) / 3
        if craft.hull.tube_radius_m > most:
            yield wrong(
                "hull.tube_radius_m", craft.hull.tube_radius_m, f"at most a third of the floor's radius, {most:.6g} m"
            )
    for i, part in enumerate(craft.parts):
        tube = getattr(part, "tube_radius_m", None)
        if tube is not None and tube > part.radius_m:
            yield wrong(f"parts.{i}.tube_radius_m", tube, f"at most the radius of the ring, {part.radius_m:g} m")
    parts = {part.name: part for part in craft.parts}
    for i, changed in enumerate(() if craft.deploy is None else craft.deploy.parts):
        part = parts[changed.name]
        radius, tube = (getattr(changed, name) or getattr(part, name, None) for name in ("radius_m", "tube_radius_m"))
        if tube is not None and tube > radius:
            field = "tube_radius_m" if changed.tube_radius_m is not None else "radius_m"
            may_be = (
                f"at most the radius of the ring, {radius:g} m"
                if field == "tube_radius_m"
                else f"at least the radius of its tube, {tube:g} m"
            )
            yield wrong(f"deploy.parts.{i}.{field}", getattr(changed, field), may_be)


def _speeds(craft):
    """What turns faster than the program takes."""
    turning = spin_rad_s(craft.spin_rpm)
    counter = abs(spin_rad_s(craft.counter_rpm or 0.0))
    for i, part in enumerate(craft.parts):
        reach, rate = reach_m(solid_of(part)), {"turning": turning, "still": 0.0, "counter": counter}[part.group]
        if reach * rate > GREATEST_RIM_SPEED_M_S:
            yield _too_fast(f"parts.{i}.{'radius_m' if hasattr(part, 'radius_m') else 'place_m'}", reach, rate)
    for field, reach in _reaches(craft):
        if reach * turning > GREATEST_RIM_SPEED_M_S:
            yield _too_fast(field, reach, turning)


def _reaches(craft):
    if craft.radius_m is not None:
        yield "radius_m", craft.radius_m
    for i, load in enumerate(craft.loads or ()):
        x, y, _ = load.place_m
        yield f"loads.{i}.place_m", (x * x + y * y) ** 0.5
    if craft.move is not None:
        yield from ((f"move.{name}", getattr(craft.move, name)) for name in ("from_radius_m", "to_radius_m"))
    if craft.spin_up is not None and craft.spin_up.by == "thrusters":
        yield "spin_up.arm_m", craft.spin_up.arm_m


MOST_TURNS = 10_000  # of a tumble that loses energy, which is stepped
MOST_LOSSES = 100_000  # of the time of its losses, by which steps are bounded as well


def _tumble(craft):
    """A craft that is a line, for turning about itself has no momentum there; and more turns than are stepped."""
    try:
        principal_of(bodies_of(craft.parts, {part.name: solid_of(part) for part in craft.parts})["whole"])
    except ValueError:
        may_be = f"parts with inertia about every axis, each at least {LEAST_SHARE:g} of the greatest"
        say = (
            "All of the craft lies along one line, or next to it: nothing can be said of its turning about that line; "
            + f"it must have {may_be}."
        )
        yield refusal("parts", "a craft on one line", may_be, say)
        return
    turns_a_s = sum(rate * rate for rate in craft.tumble.rates_rpm) ** 0.5 / 60.0
    if craft.tumble.dissipation is None:
        return
    longest_s = MOST_LOSSES * craft.tumble.dissipation.time_s
    if craft.tumble.duration_s * turns_a_s > MOST_TURNS:
        may_be = f"above 0, at most {MOST_TURNS / turns_a_s:.6g} s: {MOST_TURNS:,} turns, where energy is lost"
        yield wrong("tumble.duration_s", craft.tumble.duration_s, may_be)
    elif craft.tumble.duration_s > longest_s:
        may_be = f"at most {longest_s:.6g} s: {MOST_LOSSES:,} times the time in which energy is lost"
        yield wrong("tumble.duration_s", craft.tumble.duration_s, may_be)


def _too_fast(field, reach_m, rate_rad_s):
    nearer, rpm = GREATEST_RIM_SPEED_M_S / rate_rad_s, rate_rad_s / RPM_RAD_S
    may_be = f"within {nearer:.6g} m of the axis at {rpm:.6g} rpm (rim speed at most {GREATEST_RIM_SPEED_M_S:,.0f} m/s)"
    was = f"{reach_m:.6g} m from the axis"
    return refusal(field, was, may_be, f"{label_of(field)} reaches {was}; it must be {may_be}.")
