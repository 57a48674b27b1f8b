"""What a tumbling craft does, in sentences and as prose."""

from ...language import tr, written
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
        every = seconds(findings["flip_period_s"] / 2)
        if findings["time_to_flat_s"]:
            return tr("The craft turns right over and back, once every {time} at first.", time=every)
        return tr("The craft turns right over and back, once every {time}.", time=every)
    nutation = findings["nutation_deg"]
    low, high = (float(nutation.min()), float(nutation.max())) if len(nutation) else (first, last)
    if high < _STEADY_DEG:
        return tr("The craft turns steadily about its axis of greatest inertia.")
    if high - low < _STEADY_DEG:
        return tr("The craft’s momentum stays {angle} from its axis of greatest inertia.", angle=_deg(high))
    if findings["time_to_flat_s"] is not None:
        return tr(
            "The craft’s momentum is {first} from its axis of greatest inertia at first, and {last} in the end.",
            first=_deg(first),
            last=_deg(last),
        )
    return tr(
        "The craft’s momentum stays between {least} and {most} from its axis of greatest inertia.",
        least=_deg(low),
        most=_deg(high),
    )


def _deg(value):
    return f"{written(value, '.1f' if value < 10 else '.0f')}°"


def _flat(traced):
    flat_s, rpm = traced.findings["time_to_flat_s"], traced.findings["final_rpm"]
    if not flat_s:
        return ""
    places = {"time": seconds(flat_s), "rate": f"{written(rpm, '.3g')}{_NB}rpm"}
    if flat_s > traced.track.ends_s:
        return tr("It would be in a flat spin after {time}, past the end of the scene, at {rate}.", **places)
    return tr("It is in a flat spin after {time}, at {rate}.", **places)


def _felt(findings):
    least, most = findings["floor_least_g"], findings["floor_greatest_g"]
    if most < _LEAST_G:
        return tr("On the floor nothing weighs anything.")
    most_g = f"{written(most, '.3g')}{_NB}g"
    if most - least < 0.005 * most:
        return tr("On the floor gravity is {gravity}.", gravity=most_g)
    return tr("On the floor gravity goes from {least} to {most}.", least=written(least, ".3g"), most=most_g)


def in_short(traced, _units):
    """What it does, in a phrase."""
    findings = traced.findings
    if findings["flips"]:
        every = seconds(findings["flip_period_s"] / 2)
        if findings["time_to_flat_s"]:
            return tr("turns over every {time} at first", time=every)
        return tr("turns over every {time}", time=every)
    flat_s = findings["time_to_flat_s"]
    if flat_s and flat_s <= traced.track.ends_s:
        return tr("is in a flat spin after {time}", time=seconds(flat_s))
    return tr("tumbles for {time}", time=seconds(lasted(traced, traced.track.last)))


def told(traced, telling, _thing):
    """Sentences as prose."""
    findings = traced.findings
    if findings["flips"]:
        every = telling.time(findings["flip_period_s"] / 2)
        if telling.past:
            return [tr("The craft turned right over and back, once in {time}.", time=every)]
        return [tr("The craft turns right over and back, once in {time}.", time=every)]
    flat_s = findings["time_to_flat_s"]
    if flat_s and flat_s <= traced.track.ends_s:
        within = telling.time(flat_s)
        if telling.past:
            return [tr("The craft went over into a flat spin within {time}.", time=within)]
        return [tr("The craft goes over into a flat spin within {time}.", time=within)]
    lasts = telling.time(lasted(traced, traced.track.last))
    if telling.past:
        return [tr("The craft tumbled for {time}.", time=lasts)]
    return [tr("The craft tumbles for {time}.", time=lasts)]


def left_out(traced, _setting):
    """What it rests on and leaves out."""
    out = [tr("The whole craft turns as one rigid body, and nothing outside turns it.")]
    if traced.findings.get("mass_spread"):
        out.append(tr("The scene carries no craft: mass is spread evenly over the habitat’s surfaces."))
    if traced.motion.losses_s is not None:
        out.append(
            tr(
                "Energy goes as in double-bracket dissipation (Bloch, Krishnaprasad, Marsden & Ratiu 1996), at constant angular momentum."
            )
        )
    return out
