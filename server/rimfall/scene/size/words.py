"""Sentences about a habitat that is wished for: the smallest, what keeps it from being smaller, or which wishes collide."""

import math

from ...comfort import sizing
from ...comfort.published import ROWS, STUDIES
from ...comfort.quantities import QUANTITIES
from ...language import tr
from ...phrases import FOOT_M, OR, listed
from ...physics.constants import RPM_RAD_S
from ...shapes.part import GREATEST_RADIUS_M, GREATEST_RIM_SPEED_M_S, GREATEST_SPIN_RPM, LEAST_RADIUS_M
from ..feel.limit_words import count
from .wish_words import (
    DUST,
    apart_from,
    as_wished,
    as_written,
    bounded,
    converts,
    digits_given,
    enough,
    in_unit,
    rounded,
    three_digits,
    three_figures,
    wanted,
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
    told = {"habitat": _habitat(wishes, given, units), "radius": in_unit("radius", radius_m, units), "gradient": across}
    if omega is None and given:
        return tr("{habitat} has a change of {gradient} from head to foot.", **told)
    if omega is None:
        return tr("{habitat} has a radius of {radius}; head to foot changes by {gradient}.", **told)
    told |= {"spin": _spin(omega), "speed": in_unit("rim_speed", omega * radius_m, units)}
    if given:
        return tr("{habitat} turns at {spin}; its rim moves at {speed} and head to foot changes by {gradient}.", **told)
    return tr(
        "{habitat} has a radius of {radius} and turns at {spin}; its rim moves at {speed} and head to foot changes by {gradient}.",
        **told,
    )


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
    tall = _radius(tall_m, units)
    if tall_m >= 2 * radius_m:
        across = _radius(2 * radius_m, units)
        return tr("somebody {height} tall has no room in it, {width} across.", height=tall, width=across)
    if tall_m > radius_m * (1 + DUST):
        return tr("the head of somebody {height} tall would be beyond its axis.", height=tall)
    return ""


def _habitat(wishes, given, units):
    """A habitat by its wishes; given: its radius is one of them, so that there is none smaller."""
    if len(wishes) > _MOST_NAMED:
        many = count(len(wishes))
        if given:
            return tr("a habitat that meets all {number} wishes", number=many)
        return tr("the smallest that meets all {number} wishes", number=many)
    quantities, named = {getattr(wish, "quantity", "") for wish in wishes}, listed(_parts(wishes, units))
    if quantities == {"spin"}:
        return tr("the smallest that turns at {wishes}", wishes=named)
    if quantities <= {"gravity", "spin"}:
        return tr("the smallest that gives {wishes}", wishes=named)
    return (
        tr("a habitat that meets {wishes}", wishes=named)
        if given
        else tr("the smallest that meets {wishes}", wishes=named)
    )


def _parts(wishes, units):
    """Wishes in words, gravity first and at which spin it is."""
    names = [getattr(wish, "quantity", "") for wish in wishes]
    said = [wanted(wish, units) for wish in wishes]
    if names.count("gravity") == names.count("spin") == 1:
        gravity, spin = (said[names.index(name)] for name in ("gravity", "spin"))
        if wishes[names.index("spin")].bound == "at_least":
            both = tr("{gravity} with {spin}", gravity=gravity, spin=spin)
        else:
            both = tr("{gravity} at {spin}", gravity=gravity, spin=spin)
        said = [both, *(one for one in said if one not in (gravity, spin))]
    return list(dict.fromkeys(said))


def _free_spin(answer, units):
    """Which other spins do at the radius that is told."""
    radius_m, _ = shown(answer, units)
    spin = answer.sized.spin
    if radius_m != answer.sized.radius_m:
        spin = sizing.spin_at([plane for of_one in answer.planes for plane in of_one], radius_m)
    low, high = spin.low_rad_s, spin.high_rad_s
    if high is None:
        if answer.sized.spin.high_rad_s:
            return ""
        if low is None:
            return tr("it can turn at any spin: no wish sets a maximum, so none is chosen.")
        return tr("it can turn at any spin from {spin} on: no wish sets a maximum, so none is chosen.", spin=_spin(low))
    if low is None:
        return tr("any slower spin would work there too; no wish sets a minimum.")
    least, most = (rounded(end / RPM_RAD_S, whole) for end, whole in ((low, math.ceil), (high, math.floor)))
    if least >= most:
        return ""
    return tr(
        "any spin from {least} to {most} would work there; this is the highest.",
        least=in_unit("spin", least),
        most=in_unit("spin", most),
    )


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
        [tr("room for somebody {height} tall to stand in", height=_radius(answer.request.person.height_m, units))]
        if sized.by_room
        else []
    )
    keep += [_by_program(units)] if sized.by_program else []
    return tr("what keeps it from being smaller: {wishes}.", wishes=listed(keep))


def _part(row, units):
    """One limit of a study: "no more than 6 rpm (Stone 1973)"."""
    said = as_wished(row.quantity, bounded(row.bound, _bound(row.quantity, row.limit, units)))
    return f"{said} ({STUDIES[row.study].called})"


def _by_program(units):
    """The program's own bounds in words."""
    least, most = (_bound("radius", end, units) for end in (LEAST_RADIUS_M, GREATEST_RADIUS_M))
    spin, rim = _bound("spin", GREATEST_SPIN_RPM), _bound("rim_speed", GREATEST_RIM_SPEED_M_S, units)
    return tr(
        "the program's own limits (a radius from {least} to {most}, a spin up to {spin}, a rim speed up to {speed})",
        least=least,
        most=most,
        spin=spin,
        speed=rim,
    )


def _bound(quantity, value, units="si"):
    """A figure of others, as they gave it, or in US units to three figures."""
    return in_unit(quantity, value, units, three_digits if units == "us" and converts(quantity) else digits_given)


def _larger(sized, units):
    radius, low, high = sized.radii_m[-1], sized.spins[-1].low_rad_s, sized.spins[-1].high_rad_s
    if len(sized.radii_m) == 1:
        return tr("no other radius works.")
    most = in_unit("radius", radius, units)
    if radius >= GREATEST_RADIUS_M * (1 - 1e-9):
        most = tr("{radius}, the program's greatest", radius=most)
    if high is None:
        return tr("larger ones work as well, up to {radius}.", radius=most)
    if low == high:
        return tr("larger ones work as well, up to {radius}, where the spin is {spin}.", radius=most, spin=_spin(high))
    return tr(
        "larger ones work as well, up to {radius}, where the spin is up to {spin}.", radius=most, spin=_spin(high)
    )


def _collided(answer, units):
    request, together = answer.request, answer.clashes
    wishes = [request.wishes[one.wish] for one in together]
    more = "" if together[0].all_others else tr("other wishes collide as well; these come first.")
    hull = next((one for one in together if _is_hull(request.wishes[one.wish], one)), None)
    if len(together) == 1:
        wish = wanted(wishes[0], units)
        lead = tr("{wish} cannot be met: it is beyond {limits}.", wish=wish, limits=_by_program(units))
    elif hull is not None:
        lead = _too_wide(request, hull, [one for one in together if one is not hull], units)
    else:
        lead = tr("{wishes} cannot be met together.", wishes=listed(_parts(wishes, units)))
    rest = [one for one in together if one is not hull] or together
    ways = [way for one in rest for way in _ways(request.wishes[one.wish], one, units)]
    return lead, tr("it would work with {ways}.", ways=listed(ways, OR)) if ways else "", more


def _is_hull(wish, clash):
    """Whether it is a wish for a radius that turns out too small."""
    return getattr(wish, "quantity", "") == "radius" and clash.changes[0].could_be > clash.changes[0].was


def _too_wide(request, hull, others, units):
    """The others' radius beside the one that the hull allows."""
    change, wish = hull.changes[0], request.wishes[hull.wish]
    wishes = [request.wishes[one.wish] for one in others]
    parts = _parts(wishes, units)
    told = {
        "wishes": listed(parts),
        "radius": in_unit("radius", change.could_be, units, apart_from(change.was, units)),
        "allowed": in_unit("radius", change.was, units, _as_was(change, units)),
        "less": _radius(change.could_be - change.was, units),
    }
    if len(parts) == 1 and wishes[0].kind == "figure":
        if wish.bound == "at_most":
            return tr("{wishes} takes {radius}; your maximum radius is {allowed}, {less} less.", **told)
        return tr("{wishes} takes {radius}; the wish is for {allowed}, {less} less.", **told)
    if wish.bound == "at_most":
        return tr("{wishes} take {radius}; your maximum radius is {allowed}, {less} less.", **told)
    return tr("{wishes} take {radius}; the wish is for {allowed}, {less} less.", **told)


def _radius(radius_m, units):
    return in_unit("radius", radius_m, units)


def _ways(wish, clash, units):
    """Each change that would let the others be met: "3.66 rpm instead of 2 rpm"."""
    for change in clash.changes:
        could_be = as_wished(change.quantity, _could_be(change, units))
        told = {"figure": could_be, "was": in_unit(change.quantity, change.was, units, _as_was(change, units))}
        if wish.kind == "study":
            yield tr("{figure} instead of {was} in {study}", study=STUDIES[wish.study].called, **told)
        else:
            yield tr("{figure} instead of {was}", **told)


def _as_was(change, units):
    return three_digits if units == "us" and converts(change.quantity) else digits_given


def _could_be(change, units):
    """The figure it could be, rounded to the side that would do: who types it in has what was promised."""
    return in_unit(change.quantity, change.could_be, units, enough(change, _as_was(change, units)))


def clash(one, request, units="si"):
    """A `answers.Clash` as the answer tells it: SI figures, and a sentence. A study has no one figure that it was or could be."""
    wish = request.wishes[one.wish]
    figure = one.changes[0] if wish.kind == "figure" else None
    ways = list(_ways(wish, one, units))
    say = _met(listed(ways, OR) if ways else None, wanted(wish, units), one.all_others)
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


def _met(ways, wish, all_others):
    """What is met with any of the ways, in words; with None without the wish."""
    if ways is None and all_others:
        return tr("without {wish}, every other wish is met.", wish=wish)
    if ways is None:
        return tr("without {wish}, the others of this collision are met.", wish=wish)
    if all_others:
        return tr("with {ways} every other wish is met.", ways=ways)
    return tr("with {ways} the others of this collision are met.", ways=ways)


def assumptions(person, units="si"):
    """What the sizes rest on."""
    tall = in_unit("radius", person.height_m, units)
    walk = in_unit("rim_speed", person.walk_m_s, units)
    return [
        tr(
            "For somebody {height} tall who walks at {speed} and turns the head at {turn}.",
            height=tall,
            speed=walk,
            turn=f"{three_figures(person.head_turn_deg_s)}{_NB}°/s",
        ),
        tr("Steady spin, no thrust; gravity is that at the feet, on a deck at the radius named."),
        tr("Nothing smaller than a person's height from deck to axis, unless a wish leaves no more."),
        tr("Searched within {limits}.", limits=_by_program(units)),
    ]
