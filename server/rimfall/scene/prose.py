"""A scene as prose: a paragraph for each motion and one for all of it, in present or past tense."""

import math

from ..amounts import LEAST_SHARE, share
from ..kinds.things import Thing, noun
from ..language import tr_later
from ..prose import Telling

TENSES = {"present": False, "past": True}
_MUCH = 0.95  # of one's weight on Earth: from here on it is as much, or some times as much


def of_motion(traced, units):
    """Its paragraph in either tense: {"present", "past"}; both "" where it does not begin."""
    return {tense: traced.told(Telling(past, units), Thing(noun(traced.motion))) for tense, past in TENSES.items()}


def of_scene(trace, felt_g, units):
    """The habitat and all that moves in it as one paragraph, in either tense; felt_g: what somebody at rest on its deck feels."""
    return {tense: _paragraph(trace, felt_g, Telling(past, units)) for tense, past in TENSES.items()}


def _paragraph(trace, felt_g, telling):
    named, out = set(), [_habitat(trace, telling), _felt(felt_g, telling)]
    for one in trace.motions:
        what = noun(one.motion)
        out.append(one.told(telling, Thing(what, what in named)))
        named.add(what)
    return " ".join(said for said in out if said)


def _habitat(trace, telling):
    ground = trace.scene.habitat.GROUND
    told = {"length": telling.length(trace.scene.habitat.radius_m), "turns": _turns(trace, telling)}
    if ground.level:
        return telling.says(
            tr_later("The turntable is {length} from its axis to its edge and {turns}."),
            tr_later("The turntable was {length} from its axis to its edge and {turns}."),
            **told,
        )
    if ground.name == "deck":
        return telling.says(
            tr_later("The habitat is {length} from its axis to its deck and {turns}."),
            tr_later("The habitat was {length} from its axis to its deck and {turns}."),
            **told,
        )
    return telling.says(
        tr_later("The habitat is {length} from its axis to its floor and {turns}."),
        tr_later("The habitat was {length} from its axis to its floor and {turns}."),
        **told,
    )


def _felt(felt_g, telling):
    weight = {"share": share(felt_g)}
    if felt_g < LEAST_SHARE:
        return telling.says(
            tr_later("Somebody who stands there weighs {share}."),
            tr_later("Somebody who stood there weighed {share}."),
            **weight,
        )
    if felt_g < _MUCH:
        return telling.says(
            tr_later("Somebody who stands there weighs {share} of what they weigh on Earth."),
            tr_later("Somebody who stood there weighed {share} of what they weigh on Earth."),
            **weight,
        )
    return telling.says(
        tr_later("Somebody who stands there weighs {share} as on Earth."),
        tr_later("Somebody who stood there weighed {share} as on Earth."),
        **weight,
    )


def _turns(trace, telling):
    spin = abs(trace.setting.omega_rad_s(0.0))
    if spin == 0:
        return telling.says(tr_later("does not turn"), tr_later("did not turn"))
    told = {"time": telling.time(2 * math.pi / spin)}
    if trace.setting.habitat.spin.steady:
        return telling.says(tr_later("turns once in {time}"), tr_later("turned once in {time}"), **told)
    return telling.says(tr_later("turns once in {time} at first"), tr_later("turned once in {time} at first"), **told)
