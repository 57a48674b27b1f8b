"""A scene as prose: a paragraph for each motion and one for all of it, in present or past tense."""

import math

from ..kinds.telling import noun
from ..prose import LEAST_SHARE, Telling, share

TENSES = {"present": False, "past": True}


def of_motion(traced, units):
    """Its paragraph in either tense: {"present", "past"}; both "" where it does not begin."""
    return {tense: traced.told(Telling(past, units), f"the {noun(traced.motion)}") for tense, past in TENSES.items()}


def of_scene(trace, felt_g, units):
    """The habitat and all that moves in it as one paragraph, in either tense; felt_g: what somebody at rest on its deck feels."""
    return {tense: _paragraph(trace, felt_g, Telling(past, units)) for tense, past in TENSES.items()}


def _paragraph(trace, felt_g, telling):
    named, out = set(), [_habitat(trace, felt_g, telling)]
    for one in trace.motions:
        what = noun(one.motion)
        out.append(one.told(telling, f"another {what}" if what in named else f"the {what}"))
        named.add(what)
    return " ".join(said for said in out if said)


def _habitat(trace, felt_g, telling):
    part = trace.scene.habitat
    is_ = telling.verb("is", "was")
    what = f"The {part.shape if part.GROUND.level else 'habitat'} {is_} {telling.length(part.radius_m)} from its axis to its {_edge(part)} and "
    return f"{what}{_turns(trace, telling)}. {_felt(felt_g, telling)}"


def _felt(felt_g, telling):
    said, weighs = share(felt_g), telling.verb("weighs", "weighed")
    who = f"Somebody who {telling.verb('stands', 'stood')} there {weighs} {said}"
    if felt_g < LEAST_SHARE:
        return f"{who}."
    return f"{who} {'as' if said.endswith('as much') else 'of what they weigh'} on Earth."


def _edge(part):
    return "edge" if part.GROUND.level else part.GROUND.name


def _turns(trace, telling):
    spin = abs(trace.setting.omega_rad_s(0.0))
    if spin == 0:
        return f"{telling.verb('does', 'did')} not turn"
    at_first = "" if trace.setting.habitat.spin.steady else " at first"
    return f"{telling.verb('turns', 'turned')} once in {telling.time(2 * math.pi / spin)}{at_first}"
