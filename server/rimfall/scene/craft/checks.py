"""What no field of a craft shows alone: parts against one another, blocks against parts, and the radius and spin that a scene gives it."""

from ...errors import BadInput, refusal
from ...language import tr, written
from ...physics.constants import RPM_RAD_S
from ...shapes.part import GREATEST_RIM_SPEED_M_S, spin_rad_s
from ...vessel.attitude import LEAST_SHARE, principal_of
from ...vessel.solids import reach_m
from ..choices import solid_words
from ..validation_errors import given_of, label_of, may_be_of, missing, wrong
from .asked import bodies_of, rim_of, solid_of
from .document import GREATEST_M, LEAST_M


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
        say = tr("This scene carries no craft: it must have one under craft, or a craft's own document must be given.")
        raise BadInput(refusal("craft", None, tr("a craft"), say))
    home = scene.habitat
    return check(scene.craft.model_copy(update={"radius_m": home.radius_m, "spin_rpm": home.spin_rpm}), "craft.")


def check_scene(scene):
    """Every clash of a scene's craft, as refusals: (none where there is no craft)."""
    if scene.craft is None:
        return []
    if scene.habitat.GROUND.level:
        return [wrong("craft", "a craft", tr("null: a turntable is in no craft"))]
    doubled = [name for name in ("radius_m", "spin_rpm") if getattr(scene.craft, name) is not None]
    if doubled:
        may_be = tr("left out in a scene: the habitat's is the craft's")
        return [wrong(f"craft.{name}", getattr(scene.craft, name), may_be) for name in doubled]
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
            may_be = tr("a name that no other part has ({field} has it)", field=f"parts.{first[part.name]}")
            yield wrong(f"{at}.name", part.name, may_be)
        first.setdefault(part.name, i)
        if craft.radius_m is None and getattr(part, "radius_m", 0.0) is None:
            yield _no_radius(f"{at}.radius_m")
        yield from _vectors(at, part)
    if not any(part.group == "turning" for part in craft.parts):
        may_be = tr("parts at least one of which is in the group turning")
        yield wrong("parts", [part.name for part in craft.parts], may_be)


def _no_radius(field):
    may_be = may_be_of(field)
    say = tr(
        "{field} is missing, which is the craft's own where it is left out, and it has none; it must be {allowed}.",
        field=label_of(field),
        allowed=may_be,
    )
    return refusal(field, None, may_be, say)


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
        may_be = tr(
            "{rate} (or {time_field} or {torque_field} is given instead)",
            rate=may_be_of("slew.rate_deg_s"),
            time_field="slew.time_s",
            torque_field="slew.torque_n_m",
        )
        yield missing("slew.rate_deg_s", may_be)
    for name in given[1:]:
        may_be = tr("null beside {field}, from which it follows", field=f"slew.{given[0]}")
        yield wrong(f"slew.{name}", getattr(slew, name), may_be)


def _deployed(craft):
    parts, first = {part.name: part for part in craft.parts}, {}
    for i, changed in enumerate(craft.deploy.parts):
        at = f"deploy.parts.{i}"
        part = parts.get(changed.name)
        if first.setdefault(changed.name, i) != i:
            yield wrong(
                f"{at}.name",
                changed.name,
                tr(
                    "a part that changes once ({field} is of it already)",
                    field=f"deploy.parts.{first[changed.name]}",
                ),
            )
        if part is None:
            may_be = tr("the name of a part: {names}", names=", ".join(list(parts)[:20]))
            yield wrong(f"{at}.name", changed.name, may_be)
            continue
        for name, value in changed:
            if name != "name" and value is not None and name not in type(part).model_fields:
                may_be = tr("left out: a {solid} has none", solid=solid_words(part.solid))
                yield wrong(f"{at}.{name}", value, may_be)
        yield from _vectors(at, changed)


def _sizes(craft):
    if craft.hull is not None and craft.hull.tube_radius_m is not None:
        most = rim_of(craft, {part.name: solid_of(part) for part in craft.parts}) / 3
        if craft.hull.tube_radius_m > most:
            may_be = tr("at most a third of the floor's radius, {radius}", radius=_metres(most))
            yield wrong("hull.tube_radius_m", craft.hull.tube_radius_m, may_be)
    for i, part in enumerate(craft.parts):
        tube = getattr(part, "tube_radius_m", None)
        if tube is not None and tube > part.radius_m:
            yield wrong(f"parts.{i}.tube_radius_m", tube, _at_most_ring(part.radius_m))
    parts = {part.name: part for part in craft.parts}
    for i, changed in enumerate(() if craft.deploy is None else craft.deploy.parts):
        part = parts[changed.name]
        radius, tube = (getattr(changed, name) or getattr(part, name, None) for name in ("radius_m", "tube_radius_m"))
        if tube is not None and tube > radius:
            field = "tube_radius_m" if changed.tube_radius_m is not None else "radius_m"
            may_be = (
                _at_most_ring(radius)
                if field == "tube_radius_m"
                else tr("at least the radius of its tube, {radius}", radius=_metres(tube))
            )
            yield wrong(f"deploy.parts.{i}.{field}", getattr(changed, field), may_be)


def _at_most_ring(radius_m):
    return tr("at most the radius of the ring, {radius}", radius=_metres(radius_m))


def _metres(value_m):
    return f"{written(value_m, '.6g')} m"


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
        may_be = tr(
            "parts with inertia about every axis, each at least {share} of the greatest",
            share=written(LEAST_SHARE, "g"),
        )
        say = tr(
            "All of the craft lies along one line, or next to it: nothing can be said of its turning about that line; it must have {allowed}.",
            allowed=may_be,
        )
        yield refusal("parts", tr("a craft on one line"), may_be, say)
        return
    turns_a_s = sum(rate * rate for rate in craft.tumble.rates_rpm) ** 0.5 / 60.0
    if craft.tumble.dissipation is None:
        return
    longest_s = MOST_LOSSES * craft.tumble.dissipation.time_s
    if craft.tumble.duration_s * turns_a_s > MOST_TURNS:
        may_be = tr(
            "above 0, at most {time} s: {turns} turns, where energy is lost",
            time=written(MOST_TURNS / turns_a_s, ".6g"),
            turns=written(MOST_TURNS, ","),
        )
        yield wrong("tumble.duration_s", craft.tumble.duration_s, may_be)
    elif craft.tumble.duration_s > longest_s:
        may_be = tr(
            "at most {time} s: {times} times the time in which energy is lost",
            time=written(longest_s, ".6g"),
            times=written(MOST_LOSSES, ","),
        )
        yield wrong("tumble.duration_s", craft.tumble.duration_s, may_be)


def _too_fast(field, reach_m, rate_rad_s):
    nearer, rpm = GREATEST_RIM_SPEED_M_S / rate_rad_s, rate_rad_s / RPM_RAD_S
    may_be = tr(
        "within {distance} of the axis at {spin} rpm (rim speed at most {speed} m/s)",
        distance=_metres(nearer),
        spin=written(rpm, ".6g"),
        speed=written(GREATEST_RIM_SPEED_M_S, ",.0f"),
    )
    was = tr("{distance} from the axis", distance=_metres(reach_m))
    say = tr("{field} reaches {place}; it must be {allowed}.", field=label_of(field), place=was, allowed=may_be)
    return refusal(field, was, may_be, say)
