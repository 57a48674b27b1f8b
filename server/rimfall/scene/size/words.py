"""Sentences about a habitat that is wished for: the smallest, what keeps it from being smaller, or which wishes collide."""

import math

from ...comfort import sizing
from ...comfort.published import ROWS, STUDIES
from ...comfort.quantities import QUANTITIES
from ...phrases import FOOT_M, OR, listed
from ...physics.constants import RPM_RAD_S
from ...shapes.part import GREATEST_RADIUS_M, GREATEST_RIM_SPEED_M_S, GREATEST_SPIN_RPM, LEAST_RADIUS_M
from ..feel.limit_words import count
from .wish_words import (
    AS_WISHED,
    BOUNDS,
    DUST,
    apart_from,
    as_given,
    as_written,
    converts,
    enough,
    in_unit,
    rounded,
    three_figures,
    wanted,
    wanted_figure,
)

_NB = "\u00a0"
_MOST_NAMED = 4  # wishes: more are counted
_ROWS = {row.id: row for row in ROWS}


def sentences(answer, units="si"):
    """What the wishes come to (`answers.Answered`) in sentences, and that one of them which names the ways out of a collision."""
    said = _collided(answer, units) if answer.sized is None else _sized(answer, units)
    ways = None if answer.sized is not None else _sentence(said[1]) or None
    return [_sentence(one) for one in said if one], ways


def _sentence(text):
    return text[:1].upper() + text[1:]


def _sized(answer, units):
    return (
        _smallest(answer, units),
        _no_room(answer, units),
        _free_spin(answer, units),
        _kept(answer, units),
        _larger(answer.sized, units),
    )


def _smallest(answer, units):
    """Its radius, its spin, and what follows from them, as shown: who types them in must keep to the wishes."""
    radius_m, omega = shown(answer, units)
    wishes, person = answer.request.wishes, answer.request.person
    across = in_unit("gradient", QUANTITIES["gradient"].value(person, radius_m, 0.0))
    given = any((getattr(w, "quantity", ""), getattr(w, "bound", "")) == ("radius", "exactly") for w in wishes)
    says = f"{'a habitat' if given else 'the smallest'} {_all_wanted(wishes, units)}"
    if given and omega is None:
        return f"{says} has a change of {across} from head to foot."
    parts = [] if given else [f"has a radius of {in_unit('radius', radius_m, units)}"]
    if omega is None:
        return f"{says} {parts[0]}; head to foot changes by {across}."
    parts += [f"turns at {in_unit('spin', omega / RPM_RAD_S)}"]
    rim = in_unit("rim_speed", omega * radius_m, units)
    return f"{says} {' and '.join(parts)}; its rim moves at {rim} and head to foot changes by {across}."


def shown(answer, units):
    """Radius, m, and spin, rad/s or None, rounded to the figures shown, toward the inside of the wishes where they leave room."""
    sized, foot = answer.sized, FOOT_M if units == "us" else 1.0
    exact = sized.radius_m, _spin_shown(sized.spin)
    radius_m = rounded(sized.radius_m / foot, math.ceil) * foot
    if radius_m > sized.radii_m[-1] * (1 + DUST):
        return exact
    radius_m = min(max(radius_m, sized.radius_m), sized.radii_m[-1])
    free = sizing.spin_at([plane for of_one in answer.planes for plane in of_one], radius_m)
    if free.high_rad_s is None and sized.spin.high_rad_s is None:
        return radius_m, None
    if free.high_rad_s is None:  # the smallest is as fast as the program goes; this one may be slower, by a hair
        omega = math.inf if free.low_rad_s is None else rounded(free.low_rad_s / RPM_RAD_S, math.ceil) * RPM_RAD_S
        return (radius_m, omega) if omega <= sized.spin.high_rad_s * (1 + DUST) else exact
    omega = rounded(free.high_rad_s / RPM_RAD_S, math.floor) * RPM_RAD_S
    return (radius_m, omega) if omega >= (free.low_rad_s or 0.0) else exact


def _spin_shown(free):
    """The highest free spin with three figures, where they do not pass it by or below the lowest; else as it is."""
    if free.high_rad_s is None:
        return None
    omega = rounded(free.high_rad_s / RPM_RAD_S, math.floor) * RPM_RAD_S
    return omega if omega >= (free.low_rad_s or 0.0) else free.high_rad_s


def _no_room(answer, units):
    """That the smallest is too small for the person, where it is."""
    radius_m, tall_m = shown(answer, units)[0], answer.request.person.height_m
    tall = f"somebody {_radius(tall_m, units)} tall"
    if tall_m >= 2 * radius_m:
        return f"{tall} has no room in it, {_radius(2 * radius_m, units)} across."
    return f"the head of {tall} would be beyond its axis." if tall_m > radius_m * (1 + DUST) else ""


def _all_wanted(wishes, units):
    if len(wishes) > _MOST_NAMED:
        return f"that meets all {count(len(wishes))} wishes"
    quantities = {getattr(wish, "quantity", "") for wish in wishes}
    verb = "turns at" if quantities == {"spin"} else "gives" if quantities <= {"gravity", "spin"} else "meets"
    return f"that {verb} {listed(_parts(wishes, units))}"


def _parts(wishes, units):
    """Wishes in words, gravity first and at which spin it is."""
    names = [getattr(wish, "quantity", "") for wish in wishes]
    said = [wanted(wish, units) for wish in wishes]
    if names.count("gravity") == names.count("spin") == 1:
        gravity, spin = (said[names.index(name)] for name in ("gravity", "spin"))
        at = "with" if spin.startswith(BOUNDS["at_least"]) else "at"
        said = [f"{gravity} {at} {spin}", *(one for one in said if one not in (gravity, spin))]
    return list(dict.fromkeys(said))


def _free_spin(answer, units):
    """Which other spins do at the radius that is told."""
    radius_m, _ = shown(answer, units)
    spin = answer.sized.spin
    if radius_m != answer.sized.radius_m:
        spin = sizing.spin_at([plane for of_one in answer.planes for plane in of_one], radius_m)
    low, high = spin.low_rad_s, spin.high_rad_s
    if high is None:
        most = "no wish sets a maximum, so none is chosen"
        return "" if answer.sized.spin.high_rad_s else f"it can turn at any spin{_from(low)}: {most}."
    if low is None:
        return "any slower spin would work there too; no wish sets a minimum."
    least, most = (rounded(end / RPM_RAD_S, whole) for end, whole in ((low, math.ceil), (high, math.floor)))
    if least >= most:
        return ""
    return f"any spin from {in_unit('spin', least)} to {in_unit('spin', most)} would work there; this is the highest."


def _from(low_rad_s):
    return "" if low_rad_s is None else f" from {_spin(low_rad_s)} on"


def _spin(omega_rad_s):
    return in_unit("spin", omega_rad_s / RPM_RAD_S)


def _kept(answer, units):
    """What keeps it from being smaller, where that is not plain from the wishes."""
    wishes, sized = answer.request.wishes, answer.sized
    if len(sized.bound_by) == len(wishes) and not (sized.by_program or sized.by_room or sized.parts):
        return ""
    keep = [wanted(wishes[number], units) for number in sized.bound_by if wishes[number].kind == "figure"]
    keep += [_part(_ROWS[part], units) for part in sized.parts]
    keep += (
        [f"room for somebody {_radius(answer.request.person.height_m, units)} tall to stand in"]
        if sized.by_room
        else []
    )
    keep += [_by_program(units)] if sized.by_program else []
    return f"what keeps it from being smaller: {listed(keep)}."


def _part(row, units):
    """One limit of a study: "no more than 6 rpm (Stone 1973)"."""
    said = AS_WISHED[row.quantity].format(f"{BOUNDS[row.bound]}{_bound(row.quantity, row.limit, units)}")
    return f"{said} ({STUDIES[row.study].called})"


def _by_program(units):
    """The program's own bounds in words."""
    least, most = (_bound("radius", end, units) for end in (LEAST_RADIUS_M, GREATEST_RADIUS_M))
    spin, rim = _bound("spin", GREATEST_SPIN_RPM), _bound("rim_speed", GREATEST_RIM_SPEED_M_S, units)
    return f"the program's own limits (a radius from {least} to {most}, a spin up to {spin}, a rim speed up to {rim})"


def _bound(quantity, value, units="si"):
    """A figure of others, as they gave it, or in US units to three figures."""
    return in_unit(quantity, value, units, three_figures if units == "us" and converts(quantity) else as_given)


def _larger(sized, units):
    radius, low, high = sized.radii_m[-1], sized.spins[-1].low_rad_s, sized.spins[-1].high_rad_s
    if len(sized.radii_m) == 1:
        return "no other radius works."
    at = (
        ""
        if high is None
        else f", where the spin is {_spin(high)}"
        if low == high
        else f", where the spin is up to {_spin(high)}"
    )
    last = "" if radius < GREATEST_RADIUS_M * (1 - 1e-9) else ", the program's greatest"
    return f"larger ones work as well, up to {in_unit('radius', radius, units)}{last}{at}."


def _collided(answer, units):
    request, together = answer.request, answer.clashes
    wishes = [request.wishes[one.wish] for one in together]
    more = "" if together[0].all_others else "other wishes collide as well; these come first."
    hull = next((one for one in together if _is_hull(request.wishes[one.wish], one)), None)
    if len(together) == 1:
        lead = f"{wanted(wishes[0], units)} cannot be met: it is beyond {_by_program(units)}."
    elif hull is not None:
        lead = _too_wide(request, hull, [one for one in together if one is not hull], units)
    else:
        lead = f"{listed(_parts(wishes, units))} cannot be met together."
    rest = [one for one in together if one is not hull] or together
    ways = [way for one in rest for way in _ways(request.wishes[one.wish], one, units)]
    return lead, f"it would work with {listed(ways, OR)}." if ways else "", more


def _is_hull(wish, clash):
    """Whether it is a wish for a radius that turns out too small."""
    return getattr(wish, "quantity", "") == "radius" and clash.changes[0].could_be > clash.changes[0].was


def _too_wide(request, hull, others, units):
    """The others' radius beside the one that the hull allows."""
    change, wish = hull.changes[0], request.wishes[hull.wish]
    wishes = [request.wishes[one.wish] for one in others]
    parts = _parts(wishes, units)
    verb = "takes" if len(parts) == 1 and wishes[0].kind == "figure" else "take"
    takes = f"{listed(parts)} {verb} {in_unit('radius', change.could_be, units, apart_from(change.was, units))}"
    allows = "your maximum radius is" if wish.bound == "at_most" else "the wish is for"
    allowed = wanted_figure("radius", "exactly", change.was, units).removeprefix("a radius of ")
    return f"{takes}; {allows} {allowed}, {_radius(change.could_be - change.was, units)} less."


def _radius(radius_m, units):
    return in_unit("radius", radius_m, units)


def _ways(wish, clash, units):
    """Each change that would let the others be met: "3.66 rpm instead of 2 rpm"."""
    whose = f" in {STUDIES[wish.study].called}" if wish.kind == "study" else ""
    for change in clash.changes:
        could_be = AS_WISHED[change.quantity].format(_could_be(change, units))
        was = in_unit(change.quantity, change.was, units, _as_was(change, units))
        yield f"{could_be} instead of {was}{whose}"


def _as_was(change, units):
    return three_figures if units == "us" and converts(change.quantity) else as_given


def _could_be(change, units):
    """The figure it could be, rounded to the side that would do: who types it in has what was promised."""
    return in_unit(change.quantity, change.could_be, units, enough(change, _as_was(change, units)))


def clash(one, request, units="si"):
    """A `answers.Clash` as the answer tells it: SI figures, and a sentence. A study has no one figure that it was or could be."""
    wish = request.wishes[one.wish]
    figure = one.changes[0] if wish.kind == "figure" else None
    ways = list(_ways(wish, one, units))
    met = "every other wish is met" if one.all_others else "the others of this collision are met"
    say = f"with {listed(ways, OR)} {met}." if ways else f"without {wanted(wish, units)}, {met}."
    return {
        "wish": one.wish,
        "label": wanted(wish, units),
        "was": figure and figure.was,
        "could_be": figure and figure.could_be,
        "could_be_says": figure and _could_be(figure, units),
        "could_be_said": figure
        and as_written(figure.quantity, figure.could_be, units, enough(figure, _as_was(figure, units))),
        "unit": "" if figure is None else "m" if figure.quantity == "radius" else QUANTITIES[figure.quantity].unit,
        "say": _sentence(say),
    }


def assumptions(person, units="si"):
    """What the sizes rest on."""
    tall = in_unit("radius", person.height_m, units)
    walk = in_unit("rim_speed", person.walk_m_s, units)
    return [
        f"For somebody {tall} tall who walks at {walk} and turns the head at {three_figures(person.head_turn_deg_s)}{_NB}°/s.",
        "Steady spin, no thrust; gravity is that at the feet, on a deck at the radius named.",
        "Nothing smaller than a person's height from deck to axis, unless a wish leaves no more.",
        f"Searched within {_by_program(units)}.",
    ]
