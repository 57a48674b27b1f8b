"""The smallest habitat for some wishes, the family of all that meet them, or which of them collide and how near each could be so
that the others are met: as one JSON document.

Wishes are counted from 0, as in the names of a request's fields.
"""

import math
from dataclasses import dataclass

from pydantic_core import to_json

from ... import __version__
from ...comfort import sizing
from ...comfort.published import LIMITS, ROWS
from ...comfort.quantities import QUANTITIES
from ...errors import BadInput
from ...language import tr
from ...phrases import caution_about_people
from ...physics.constants import G0_M_S2, RPM_RAD_S
from ...shapes.part import GREATEST_RIM_SPEED_M_S, GREATEST_SPIN_RPM
from ..feel.limit_words import TOPICS
from ..validation_errors import wrong
from . import words as size_words

ANSWER_VERSION = 1
_ROWS = {row.id: row for row in ROWS}
_PACES = {"coriolis": "walk_m_s", "head_turn": "head_turn_deg_s"}  # what makes these quantities 0 everywhere


@dataclass(frozen=True)
class Change:
    """A figure that stands in the way: quantity, bound, what it was, the nearest and the furthest it could be, in the quantity's
    unit. furthest: infinite or 0 where it is a bound, which may leave as much room as it likes."""

    quantity: str
    bound: str
    was: float
    could_be: float
    furthest: float


@dataclass(frozen=True)
class Clash:
    """One wish, by number, of those that collide. changes: the one figure that it is, or those limits of a study that stand in the
    way, each by itself. all_others: whether every other wish is met then, or only those of the collision, others colliding too."""

    wish: int
    changes: tuple
    all_others: bool


@dataclass(frozen=True)
class Answered:
    """A SizeRequest; the half planes of each wish; sized: `comfort.sizing.Sized`, or None; clashes: the `Clash`es then."""

    request: object
    planes: tuple
    sized: sizing.Sized | None
    clashes: tuple


def as_json(request, units="si"):
    """The answer to a SizeRequest as JSON bytes. Raises BadInput."""
    return to_json(as_data(request, units))


def as_data(request, units="si"):
    """The same as plain data."""
    answer = answered(request)
    sized = answer.sized
    words, ways = size_words.sentences(answer, units)
    return {
        "rimfall_size": ANSWER_VERSION,
        "program": __version__,
        "wishes": [wish.model_dump(mode="json") for wish in request.wishes],
        "person": request.person.model_dump(mode="json"),
        "fits": sized is not None,
        "smallest": None if sized is None else _smallest(answer, units),
        "spin_range_rpm": None if sized is None else [_rpm(sized.spin.low_rad_s), _rpm(sized.spin.high_rad_s)],
        "family": None if sized is None else _family(sized),
        "collides": [size_words.clash(one, request, units) for one in answer.clashes],
        "words": words,
        "ways": ways,
        "assumptions": size_words.assumptions(request.person, units),
        "caution": caution_about_people(),
    }


def answered(request):
    """The Answered of a SizeRequest. Raises BadInput where a wish is for more than nothing of what is 0 in every habitat."""
    planes = tuple(_planes(wish, number, request.person) for number, wish in enumerate(request.wishes))
    flat = [plane for of_one in planes for plane in of_one]
    sized = sizing.size([*flat, sizing.room_for(request.person)]) or sizing.size(flat)
    return Answered(request, planes, sized, () if sized is not None else clashes(request, planes))


def _planes(wish, number, person):
    if wish.kind == "figure":
        return _half_planes(person, wish.quantity, wish.bound, wish.value, number)
    rows = [row for row in ROWS if row.study == wish.study and row.bound in LIMITS]
    return tuple(
        plane for row in rows for plane in _half_planes(person, row.quantity, row.bound, row.limit, number, row.id)
    )


def _half_planes(person, quantity, bound, value, number, part=""):
    pace = _PACES.get(quantity)
    if pace and bound != "at_most" and sizing.line_of(person, quantity)[2] == 0.0:
        may_be = tr("above 0 while {field} asks for some {what}", field=f"wishes.{number}", what=tr(TOPICS[quantity]))
        raise BadInput(wrong(f"person.{pace}", getattr(person, pace), may_be))
    return sizing.half_planes(person, quantity, bound, value, number, part)


def _smallest(answer, units):
    """The smallest habitat, ready for a scene document: a rim speed that the program takes, to the last digit."""
    sized, person = answer.sized, answer.request.person
    radius, spin = clean(sized.radius_m), _rpm(sized.spin.high_rad_s)
    most = min(float(GREATEST_SPIN_RPM), GREATEST_RIM_SPEED_M_S / radius / RPM_RAD_S)
    spin = None if spin is None else min(spin, most)
    figures = {
        name: None if spin is None and one.spin_power else one.value(person, radius, (spin or 0.0) * RPM_RAD_S)
        for name, one in QUANTITIES.items()
    }
    return {
        "radius_m": radius,
        "spin_rpm": spin,
        "program_most_rpm": most,
        "as_said": _said(answer, most, units),
        "figures": figures,
        "bound_by": list(sized.bound_by),
    }


def _said(answer, most_rpm, units):
    """The same with the figures that the words show, which meet the wishes as well."""
    radius_m, omega = size_words.shown(answer, units)
    return {"radius_m": clean(radius_m), "spin_rpm": None if omega is None else min(_rpm(omega), most_rpm)}


def _family(sized):
    """What meets the wishes from the smallest radius on; None at an end that nothing wished for sets."""
    spans = list(zip(sized.radii_m, sized.spins, strict=True))
    return {
        "radius_m": [clean(radius) for radius in sized.radii_m],
        "least_spin_rpm": [_rpm(spin.low_rad_s) for spin in sized.spins],
        "most_spin_rpm": [_rpm(spin.high_rad_s) for spin in sized.spins],
        "least_gravity_g": [_gravity_g(radius, spin.low_rad_s) for radius, spin in spans],
        "most_gravity_g": [_gravity_g(radius, spin.high_rad_s) for radius, spin in spans],
    }


def _rpm(omega_rad_s):
    return None if omega_rad_s is None else clean(omega_rad_s / RPM_RAD_S)


def _gravity_g(radius_m, omega_rad_s):
    return None if omega_rad_s is None else clean(omega_rad_s**2 * radius_m / G0_M_S2)


def clashes(request, planes):
    """Clashes of wishes that no habitat meets; planes: the half planes of each wish."""
    chosen = sizing.collision(planes)
    needed = _needed(planes, chosen)
    return tuple(_clash(request, planes, chosen, number, needed) for number in chosen)


def _needed(planes, chosen):
    """Of the half planes of the chosen wishes those without any of which the rest can be met."""
    return sizing.least_clash([plane for n in chosen for plane in planes[n]], sizing.fits)


def _clash(request, planes, chosen, number, needed):
    wish = request.wishes[number]
    others = [plane for n, of_one in enumerate(planes) if n != number for plane in of_one]
    all_others = sizing.fits(others)
    if not all_others:
        others = [plane for n in chosen if n != number for plane in planes[n]]
    if wish.kind == "figure":
        changes = (_change(request.person, wish.quantity, wish.bound, wish.value, others),)
    else:
        parts = dict.fromkeys(plane.part for plane in needed if plane.wish == number)
        changes = tuple(_of_study(request.person, _ROWS[part], planes[number], others) for part in parts)
    return Clash(number, tuple(change for change in changes if change is not None), all_others)


def _of_study(person, row, of_study, others):
    """The Change of one limit of a study, the rest of which is kept; None where that alone would not do."""
    rest = [*others, *(plane for plane in of_study if plane.part != row.id)]
    return _change(person, row.quantity, row.bound, row.limit, rest) if sizing.fits(rest) else None


def _change(person, quantity, bound, was, others):
    """The Change of a figure to the nearest with which the others, which can be met, are."""
    radius_power, spin_power, factor = sizing.line_of(person, quantity)
    low, high = sizing.span(others, radius_power, spin_power)
    nearest, furthest = (low, high) if math.log(was) - math.log(factor) < low else (high, low)
    beyond = {"exactly": factor * math.exp(furthest), "at_most": math.inf, "at_least": 0.0}[bound]
    return Change(quantity, bound, was, clean(factor * math.exp(nearest)), beyond)


def clean(value):
    """A value without the last digits, which logarithms left: 0.8, not 0.8000000000000008."""
    return float(f"{value:.12g}")
