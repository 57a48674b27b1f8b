"""What a tumbling craft does, in sentences and as prose."""

from ...phrases import seconds
from ..telling import lasted

_NB = "\u00a0"
_STEADY_DEG = 0.05  # a wobble that changes by less is one figure
_LEAST_G = 1e-6  # less is none worth a word


def tumbled(traced, _units):
    """Whether it flips, how it wobbles, when it is flat, and what is felt at the floor."""
    findings = traced.findings
    return [said for said in (_turns(findings), _flat(traced), _felt(findings)) if said]


def _turns(findings):
    first, last = findings["nutation_first_deg"], findings["nutation_last_deg"]
    if findings["flips"]:
        return f"The craft turns right over and back, once every {seconds(findings['flip_period_s'] / 2)}{_at_first(findings)}."
    nutation = findings["nutation_deg"]
    low, high = (float(nutation.min()), float(nutation.max())) if len(nutation) else (first, last)
    axis = "its axis of greatest inertia"
    if high < _STEADY_DEG:
        return f"The craft turns steadily about {axis}."
    if high - low < _STEADY_DEG:
        return f"The craft’s momentum stays {_deg(high)} from {axis}."
    if findings["time_to_flat_s"] is not None:
        return f"The craft’s momentum is {_deg(first)} from {axis} at first, and {_deg(last)} in the end."
    return f"The craft’s momentum stays between {_deg(low)} and {_deg(high)} from {axis}."


def _at_first(findings):
    return " at first" if findings["time_to_flat_s"] else ""


def _deg(value):
    return f"{value:.1f}°" if value < 10 else f"{value:.0f}°"


def _flat(traced):
    flat_s, rpm = traced.findings["time_to_flat_s"], traced.findings["final_rpm"]
    if not flat_s:
        return ""
    if flat_s > traced.track.ends_s:
        return f"It would be in a flat spin after {seconds(flat_s)}, past the end of the scene, at {rpm:.3g}{_NB}rpm."
    return f"It is in a flat spin after {seconds(flat_s)}, at {rpm:.3g}{_NB}rpm."


def _felt(findings):
    least, most = findings["floor_least_g"], findings["floor_greatest_g"]
    if most < _LEAST_G:
        return "On the floor nothing weighs anything."
    if most - least < 0.005 * most:
        return f"On the floor gravity is {most:.3g}{_NB}g."
    return f"On the floor gravity goes from {least:.3g} to {most:.3g}{_NB}g."


def in_short(traced, _units):
    """What it does, in a phrase."""
    findings = traced.findings
    if findings["flips"]:
        return f"turns over every {seconds(findings['flip_period_s'] / 2)}{_at_first(findings)}"
    flat_s = findings["time_to_flat_s"]
    if flat_s and flat_s <= traced.track.ends_s:
        return f"is in a flat spin after {seconds(flat_s)}"
    return f"tumbles for {seconds(lasted(traced, traced.track.last))}"


def told(traced, telling, _thing):
    """Sentences as prose."""
    findings = traced.findings
    if findings["flips"]:
        every = telling.time(findings["flip_period_s"] / 2)
        return [f"The craft {telling.verb('turns', 'turned')} right over and back, once in {every}."]
    flat_s = findings["time_to_flat_s"]
    if flat_s and flat_s <= traced.track.ends_s:
        return [f"The craft {telling.verb('goes', 'went')} over into a flat spin within {telling.time(flat_s)}."]
    return [f"The craft {telling.verb('tumbles', 'tumbled')} for {telling.time(lasted(traced, traced.track.last))}."]


def left_out(traced, _setting):
    """What it rests on and leaves out."""
    out = ["The whole craft turns as one rigid body, and nothing outside turns it."]
    if traced.findings.get("mass_spread"):
        out.append("The scene carries no craft: mass is spread evenly over the habitat’s surfaces.")
    if traced.motion.losses_s is not None:
        out.append(
            "Energy goes as in double-bracket dissipation (Bloch, Krishnaprasad, Marsden & Ratiu 1996), at constant angular momentum."
        )
    return out
