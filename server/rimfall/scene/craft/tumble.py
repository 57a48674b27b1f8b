"""The whole craft let go as one body: whether it flips, whether its spin lasts, when it is flat, and what is felt aboard meanwhile."""

import math

import numpy as np

from ...language import tr, written
from ...physics.constants import RPM_RAD_S, TURN_RAD
from ...shapes.part import spin_rad_s
from ...vessel import tumble
from ...vessel.attitude import principal_of
from . import words
from .mass import spin_to_transverse
from .saying import sentence

LEAST_SAMPLES, MOST_SAMPLES = 241, 4_001
_A_TURN = 16  # samples
_ENOUGH = 6  # samples a turn below which a drawing shows another motion
_STEADY_DEG = 0.05  # a wobble that changes by less is one figure
_NEAR_DEG = 5.0  # of a craft's axis: it is that axis in words
_AXES = ("x", "y", "z")
_NO_SHARE = 1e-9  # of the momentum
_LEAST_G = 1e-6  # less is none worth a word


def finding(asked):
    """The finding as data; None where it is not asked for."""
    block = asked.craft.tumble
    if block is None:
        return None
    whole = asked.bodies["whole"]
    body, rates = principal_of(whole), np.array([spin_rad_s(rpm) for rpm in block.rates_rpm])
    losses_s = None if block.dissipation is None else block.dissipation.time_s
    time_s = np.linspace(0.0, block.duration_s, _samples(block.duration_s, rates))
    turned = tumble.motion_of(body, rates, losses_s).at(time_s)
    momentum = body.momentum(rates)
    size = float(np.linalg.norm(momentum))
    energy = tumble.energy_j(body, size * turned.momentum)
    flat_s, begun = (None, None) if losses_s is None else tumble.time_to_flat_s(body, rates, losses_s)
    data = {
        "time_s": time_s.tolist(),
        "quaternion_wxyz": turned.quaternion_wxyz.tolist(),
        "rates_rad_s": turned.rates_rad_s.tolist(),
        "energy_j": energy.tolist(),
        "nutation_deg": np.degrees(tumble.nutation_rad(body, turned.momentum)).tolist(),
        "places": [_place(spot, turned, whole.centre_m) for spot in block.places],
        "centre_of_mass_m": whole.centre_m.tolist(),
        "angular_momentum_kg_m2_s": (body.axes @ momentum).tolist(),
        "flip_period_s": tumble.flip_period_s(body, rates),
        "flips": tumble.flips(body, rates),
        "stable": _stable(asked, body),
        "final_rpm": size / float(body.moments[2]) / RPM_RAD_S,
        "final_axis": _final_axis(body, turned).tolist(),
        "final_energy_j": size**2 / (2 * float(body.moments[2])),
        "time_to_flat_s": flat_s,
        "wobble_begun_deg": begun,
    }
    return data | {
        "says": [sentence(said) for said in _says(asked, data, rates) if said],
        "assumptions": _assumptions(asked, data, rates),
    }


def _samples(duration_s, rates):
    wanted = math.ceil(_A_TURN * duration_s * float(np.linalg.norm(rates)) / TURN_RAD) + 1
    return min(max(wanted, LEAST_SAMPLES), MOST_SAMPLES)


def _place(spot, turned, centre_m):
    felt = tumble.gravity_g(turned, np.array(spot.place_m) - centre_m)
    size = np.linalg.norm(felt, axis=1)
    return {
        "name": spot.name,
        "place_m": list(spot.place_m),
        "felt_g": felt.tolist(),
        "gravity_g": size.tolist(),
        "least_g": float(size.min()),
        "greatest_g": float(size.max()),
    }


def _stable(asked, body):
    """Whether spin about z lasts, and how far it is from the rule of the trade."""
    spin, ratio = tumble.spin_about_z(body), spin_to_transverse(asked.bodies["whole"])
    return {
        "axis": spin.axis,
        "aligned": spin.aligned,
        "off_axis_deg": math.degrees(spin.off_rad),
        "without_dissipation": spin.lasts,
        "with_dissipation": spin.lasts_with_losses,
        "spin_to_transverse": ratio,
        "rule": tumble.RULE,
        "margin": None if ratio is None else ratio / tumble.RULE - 1.0,
    }


def _final_axis(body, turned):
    """The axis (3,) of greatest inertia that the momentum points along in the end, in the craft's axes: where it was last seen, of a body with
    two of them, and the end of the axis that it was nearer to, of others."""
    last = np.where(body.moments == body.moments[2], turned.momentum[-1], 0.0)
    size = np.linalg.norm(last)
    return body.axes @ (last / size if size > _NO_SHARE else np.array([0.0, 0.0, 1.0]))


def _says(asked, data, rates):
    yield _spin(asked, data)
    if not np.any(rates):
        yield tr("let go at rest it stays as it is.")
        return
    yield _moves(data)
    yield _ends(asked, data)
    for place in data["places"]:
        yield _felt(place)


def _spin(asked, data):
    stable, ratio = data["stable"], data["stable"]["spin_to_transverse"]
    if stable["axis"] == "any":
        return tr(
            "as one body the craft has the same inertia about every axis: it goes on about whichever it is spun about."
        )
    if not stable["aligned"]:
        return _aslant(stable)
    times = words.figure(ratio)
    if stable["axis"] == "greatest":
        rule = words.figure(tumble.RULE)
        if ratio >= tumble.RULE:
            return tr(
                "about z as one body the craft has {times} times its greatest inertia across: spin about z lasts, whatever energy is lost "
                "inside. Designers ask for {rule} or so; this is more.",
                times=times,
                rule=rule,
            )
        return tr(
            "about z as one body the craft has {times} times its greatest inertia across: spin about z lasts, whatever energy is lost inside. "
            "Designers ask for {rule} or so; this is less.",
            times=times,
            rule=rule,
        )
    if stable["axis"] == "least":
        return tr(
            "about z as one body the craft has {times} times its greatest inertia across, the least of all: spin about z lasts only while no "
            "energy is lost inside, and some always is. It ends up turning end over end.",
            times=times,
        )
    if stable["axis"] == "middle":
        return tr(
            "about z as one body the craft has {times} times its greatest inertia across, but more than its least: z is the middle axis, and "
            "spin about it never lasts. The slightest wobble grows until the craft turns over.",
            times=times,
        )
    return tr(
        "about z as one body the craft has {times} times its greatest inertia across: z is one of many axes across it that are alike, and the "
        "spin wanders from it.",
        times=times,
    )


def _aslant(stable):
    """Of a craft none of whose principal axes is z, by the nearest of them."""
    off = words.angle(stable["off_axis_deg"])
    return {
        "greatest": tr(
            "no principal axis of the craft lies along z: the nearest, that of greatest inertia, is {angle} off it, so spun about z it wobbles "
            "from the start.",
            angle=off,
        ),
        "middle": tr(
            "no principal axis of the craft lies along z: the nearest, that of middle inertia, is {angle} off it, so spun about z it wobbles "
            "from the start.",
            angle=off,
        ),
        "least": tr(
            "no principal axis of the craft lies along z: the nearest, that of least inertia, is {angle} off it, so spun about z it wobbles "
            "from the start.",
            angle=off,
        ),
        "across": tr(
            "no principal axis of the craft lies along z: the nearest, that of lesser inertia, is {angle} off it, so spun about z it wobbles "
            "from the start.",
            angle=off,
        ),
    }[stable["axis"]]


def _moves(data):
    nutation = data["nutation_deg"]
    if data["flips"]:
        every = words.duration(data["flip_period_s"] / 2)
        if data["time_to_flat_s"]:
            return tr(
                "let go with these rates it turns right over and back, once every {time} to begin with.",
                time=every,
            )
        return tr("let go with these rates it turns right over and back, once every {time}.", time=every)
    least, most = min(nutation), max(nutation)
    if data["time_to_flat_s"]:
        return tr(
            "let go with these rates its momentum is {angle} from its axis of greatest inertia.",
            angle=words.angle(nutation[0]),
        )
    if most < _STEADY_DEG:
        return tr("let go with these rates it turns steadily about its axis of greatest inertia.")
    if most - least < _STEADY_DEG:
        return tr(
            "let go with these rates its momentum stays {angle} from its axis of greatest inertia.",
            angle=words.angle(most),
        )
    return tr(
        "let go with these rates its momentum stays between {least} and {most} from its axis of greatest inertia.",
        least=words.angle(least),
        most=words.angle(most),
    )


def _ends(asked, data):
    flat_s = data["time_to_flat_s"]
    if flat_s is None:
        return ""
    places = {"rate": words.rate(data["final_rpm"] * RPM_RAD_S), "axis": _axis_in_words(data["final_axis"])}
    if flat_s == 0.0:
        return tr("it is in its last state from the start: it turns at {rate} about {axis}.", **places)
    lost = data["energy_j"][0] - data["final_energy_j"]
    places |= {
        "time": words.duration(flat_s, "in"),
        "energy": words.energy(lost),
        "share": words.percent(lost / data["energy_j"][0]),
    }
    begun = data["wobble_begun_deg"]
    if begun:
        return tr(
            "from a first wobble of {wobble}, which nothing here gives it, it is in a flat spin after {time}: then it turns at {rate} about "
            "{axis}, and {energy}, {share} of its energy, has gone as heat.",
            wobble=words.angle(begun),
            **places,
        )
    return tr(
        "it is in a flat spin after {time}: then it turns at {rate} about {axis}, and {energy}, {share} of its energy, has gone as heat.",
        **places,
    )


def _axis_in_words(axis):
    k = int(np.argmax(np.abs(axis)))
    off = math.degrees(math.acos(min(abs(axis[k]), 1.0)))
    if off < _NEAR_DEG:
        return tr("its own {axis} axis", axis=_AXES[k])
    return tr("an axis {angle} from its own {axis} axis", angle=words.angle(off), axis=_AXES[k])


def _felt(place):
    least, most = place["least_g"], place["greatest_g"]
    if most < _LEAST_G:
        return tr("at {place} nothing weighs anything.", place=place["name"])
    shown = [words.precise(one, most - least) for one in (least, most)]
    if shown[0] == shown[1]:
        return tr("at {place} gravity is {gravity}\u00a0g.", place=place["name"], gravity=shown[0])
    return tr(
        "at {place} gravity goes from {least} to {most}\u00a0g.", place=place["name"], least=shown[0], most=shown[1]
    )


def _assumptions(asked, data, rates):
    out = [
        tr(
            "The whole craft is one rigid body: its groups do not turn against each other, and nothing outside turns it."
        )
    ]
    if asked.craft.tumble.dissipation is not None:
        out.append(
            tr(
                "Energy goes as in double-bracket dissipation (Bloch, Krishnaprasad, Marsden & Ratiu 1996): angular momentum stays, energy only "
                "falls. The time in which a wobble changes by a factor of e is an input: it depends on how the craft bends and sloshes."
            )
        )
        flat = written(tumble.FLAT_DEG, "g")
        out.append(tr("Flat means within {angle}° of the axis of greatest inertia.", angle=flat))
    turn_s = TURN_RAD / float(np.linalg.norm(rates)) if np.any(rates) else math.inf
    apart_s = data["time_s"][1]
    if turn_s < _ENOUGH * apart_s:
        out.append(
            tr(
                "The samples are {apart} apart, and a turn takes {turn}: they do not show each turn.",
                apart=words.duration(apart_s),
                turn=words.duration(turn_s),
            )
        )
    if data["wobble_begun_deg"] or (
        data["stable"]["axis"] == "middle" and data["flip_period_s"] is None and np.any(rates)
    ):
        out.append(
            tr(
                "Turning exactly about a principal axis it stays there, as a pencil stands on its tip: a small rate about another axis shows it "
                "go over."
            )
        )
    return out
