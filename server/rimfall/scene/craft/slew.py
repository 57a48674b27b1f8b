"""What it takes to turn the spin axis, which way the ship is pushed, and how a steady torque leads the axis round."""

import math

from ...language import tr
from ...vessel import slew
from ...vessel.bodies import greater_transverse
from . import words
from .mass import nothing_left
from .saying import sentence

_SLOW = 0.1  # of the spin's momentum: a turn that has more of its own is none of these formulas'


def finding(asked):
    """The finding as data; None where it is not asked for."""
    block = asked.craft.slew
    if block is None:
        return None
    wheel, whole = (_turned(asked, momentum) for momentum in _momenta(asked))
    about, needed = (1.0, 0.0, 0.0), slew.gyroscopic_torque((1.0, 0.0, 0.0), (0.0, 0.0, 1.0))
    data = {
        "angle_deg": block.angle_deg,
        "wheel": wheel,
        "whole": whole,
        "turn_axis": list(about),
        "torque_axis": needed.tolist(),
        "rest_to_rest": _rest_to_rest(asked, whole["rate_deg_s"]),
        "precession": _precession(asked, wheel),
    }
    return data | {
        "says": [sentence(said) for said in _says(asked, data) if said],
        "assumptions": _assumptions(asked, data),
    }


def _momenta(asked):
    momenta = asked.momenta
    return momenta["turning"], 0.0 if nothing_left(asked) else momenta["whole"]


def _turned(asked, momentum):
    """Torque, rate and time of the turn of so much momentum."""
    block = asked.craft.slew
    if block.steady_deg_s is not None:
        torque = abs(momentum) * math.radians(block.steady_deg_s)
        return {"torque_n_m": torque, "rate_deg_s": block.steady_deg_s, "time_s": block.angle_deg / block.steady_deg_s}
    rate = slew.precession_rad_s(block.torque_n_m, momentum)
    rate = None if rate is None else math.degrees(rate)
    return {
        "torque_n_m": block.torque_n_m,
        "rate_deg_s": rate,
        "time_s": None if rate is None else block.angle_deg / rate,
    }


def _rest_to_rest(asked, rate_deg_s):
    """An ordinary turn of the whole, in which its greatest rate is that of the steady one; where there is none, by the torque that there is."""
    inertia, angle = greater_transverse(asked.bodies["whole"]), math.radians(asked.craft.slew.angle_deg)
    if not inertia:
        return None
    greatest = (
        math.sqrt(asked.craft.slew.torque_n_m * angle / inertia) if rate_deg_s is None else math.radians(rate_deg_s)
    )
    torque, time = slew.rest_to_rest(inertia, angle, greatest)
    return {"torque_n_m": torque, "time_s": time, "greatest_rate_deg_s": math.degrees(greatest)}


def _precession(asked, wheel):
    """What a steady torque, that which turns the wheel, does if it goes on."""
    rate = wheel["rate_deg_s"] if wheel["torque_n_m"] and asked.momenta["turning"] else None
    return rate and {"torque_n_m": wheel["torque_n_m"], "rate_deg_s": rate, "once_round_s": 360.0 / rate}


def _says(asked, data):
    name = asked.called("turning")
    if not asked.momenta["turning"]:
        yield tr("{turning} holds no angular momentum: its axis turns like anything else.", turning=name)
        yield _together(asked, data["whole"])
    else:
        axis = tr("the axis of {turning}", turning=asked.called("turning", "of"))
        yield _needs(asked, data["wheel"], axis)
        yield _direction(asked, name)
        yield _together(asked, data["whole"])
        yield _leads(asked, data["precession"])
    yield _ordinary(asked, data["rest_to_rest"])


def _needs(asked, turned, what, counter=None):
    """What it takes to turn an axis; counter: what holds the more momentum, where that is the other group."""
    block = asked.craft.slew
    places = {
        "what": what,
        "angle": words.angle(block.angle_deg),
        "rate": words.slow(turned["rate_deg_s"]),
        "torque": words.torque(turned["torque_n_m"], asked.units),
        "time": words.duration(turned["time_s"]),
    }
    if block.steady_deg_s is not None and counter is None:
        return tr("to turn {what} by {angle} at {rate} takes {torque} for {time}.", **places)
    if block.steady_deg_s is not None:
        return tr(
            "to turn {what} by {angle} at {rate} takes {torque} for {time}, pressed the other way: {counter} holds the more momentum.",
            counter=counter,
            **places,
        )
    if counter is None:
        return tr("{torque} turn {what} at {rate}: {angle} take {time}.", **places)
    return tr(
        "{torque} turn {what} at {rate}: {angle} take {time}, pressed the other way: {counter} holds the more momentum.",
        counter=counter,
        **places,
    )


def _direction(asked, name):
    """Which way the torque acts, in words. With L forward, away from whoever looks, Ω × L of a turn to the right points to the right: it
    lifts the bow."""
    if asked.across is None:
        return tr(
            "the torque acts at right angles to the turn. Look forward along the axis, with {turning} turning clockwise: to swing its bow to "
            "the right it must be pressed upward at the bow; to swing it to the left, the other way about.",
            turning=name,
        )
    return tr(
        "the torque acts at right angles to the turn. Look forward along the axis, with {turning} turning clockwise: to swing its bow to the "
        "right it must be pressed upward at the bow, and it presses the ship’s bow down; to swing it to the left, the other way about.",
        turning=name,
    )


def _together(asked, turned):
    if "counter" not in asked.bodies:
        return ""
    if not asked.momenta["whole"] and not asked.momenta["turning"]:
        return ""
    if nothing_left(asked):
        return tr(
            "with {counter} the whole holds no momentum and turns like anything else; only the bearings between the two feel {turning} push.",
            counter=asked.called("counter", "with"),
            turning=asked.called("turning"),
        )
    whole = tr("the axis of the whole, with {counter},", counter=asked.called("counter", "with"))
    reversed_ = asked.momenta["whole"] < 0 < asked.momenta["turning"]
    return _needs(asked, turned, whole, asked.called("counter") if reversed_ else None)


def _leads(asked, precession):
    if precession is None:
        return ""
    return tr(
        "if that goes on, always across the axis, a steady {torque} leads the axis of {turning} once round in {time}: precession.",
        torque=words.torque(precession["torque_n_m"], asked.units),
        turning=asked.called("turning", "of"),
        time=words.duration(precession["once_round_s"], "in"),
    )


def _ordinary(asked, turn):
    if turn is None:
        return ""
    places = {
        "torque": words.torque(turn["torque_n_m"], asked.units),
        "rate": words.slow(turn["greatest_rate_deg_s"]),
        "time": words.duration(turn["time_s"]),
    }
    if _momenta(asked)[1]:
        return tr(
            "to start and stop the turn takes, besides, {torque} along it, speeding up over the first half and slowing down over the second, "
            "with {rate} in the middle: {time} from rest to rest.",
            **places,
        )
    return tr(
        "to start and stop the turn takes {torque} along it, speeding up over the first half and slowing down over the second, with {rate} "
        "in the middle: {time} from rest to rest.",
        **places,
    )


def _assumptions(asked, data):
    rate, momentum = data["wheel"]["rate_deg_s"], asked.momenta["turning"]
    across = greater_transverse(asked.bodies["turning"]) * math.radians(rate or 0.0)
    nods = (
        [tr("The turn is not slow for this spin: the axis nods as well, which is left out.")]
        if across > _SLOW * momentum > 0
        else []
    )
    return [tr("The turn is steady and slow against the spin; the craft does not bend."), *nods]
