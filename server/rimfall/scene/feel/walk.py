"""A moment of a day aboard: walking to breakfast against the spin."""

import math

from .day import SLIGHT_DEG, WEIGHTLESS_G, tipped

_LEAST_TO_WALK_G = 0.02  # that a walk gives, to be told of; our own choice


def breakfast(day):
    """Walking to breakfast against the spin."""
    if day.weightless:
        return [*_no_steps(day), *_run_round(day)]
    if day.flung:
        return [
            "There is no walking on a turntable that nothing holds you to.",
            f"You go to breakfast by a rail, and it must bear {day.say.weight(day.v['feet_g'])}.",
            "Let go, and you leave over the rim, straight on.",
        ]
    if day.wall:
        return [
            "There is no walking along a deck that is a wall: you cross the room on whatever faces the thrust.",
            f"There you weigh {day.say.weight(day.v['feet_g'])}, whichever way you go and however fast.",
            "With nothing turning there is no way with the spin or against it.",
        ]
    return [*_walks(day), _runs(day), *_afterwards(day)]


def _no_steps(day):
    paced = f", {_pace(day)} if you are quick" if day.person.walk_m_s else ""
    return [
        f"No step holds: the first one sends you off the {day.ground}, {_sent_off(day)}.",
        f"You go to breakfast along a rail, hand over hand{paced}.",
    ]


def _sent_off(day):
    """Where a still habitat lets somebody go: round ground is met again, flat ground is not."""
    return (
        "and you do not come back to it of yourself"
        if day.table or day.flat
        else "and across to where it bends up to you again"
    )


def _pace(day):
    return f"at {day.say.speed(day.person.walk_m_s)}"


def _run_round(day):
    pressed, at_a_walk = (day.v[f"{pace}_spinward_g"] or 0.0 for pace in ("run", "walk"))
    if day.table or day.flat or day.v["floor_lean_deg"] is not None or max(pressed, at_a_walk) < WEIGHTLESS_G:
        return ["Whichever way you go, it is the same."]
    way = "either way round the deck" if day.still else "round the deck spinward"
    if at_a_walk >= _LEAST_TO_WALK_G:
        run = (
            f", and at a run, {day.say.speed(day.person.run_m_s)}, with {day.say.weight(pressed)}"
            if pressed > at_a_walk
            else ""
        )
        return [f"Going {way} helps: its bend presses your feet on with {day.say.weight(at_a_walk)} at a walk{run}."]
    if pressed <= at_a_walk:
        return [
            f"Going {way} helps a little: its bend presses your feet on with {day.say.weight(at_a_walk)} at a walk."
        ]
    return [
        f"A walk hardly helps; {way} at a run, {day.say.speed(day.person.run_m_s)}, its bend presses your feet on with {day.say.weight(pressed)}."
    ]


def _walks(day):
    v, still = day.v, day.v["feet_g"]
    back, spinward = v["walk_antispinward_g"], v["walk_spinward_g"]
    if back is None:
        return [
            f"You cannot walk against the spin at {day.say.speed(day.person.walk_m_s)}: from "
            f"{_floating(day)} on nothing holds you to the floor, and your step carries you off it.",
            f"With the spin the same pace weighs {day.say.weight(spinward)}, where standing was {day.say.number(still)}.",
        ]
    if day.person.walk_m_s == 0:
        return [
            f"You stay where you are, and weigh {day.say.weight(still)}.",
            "It takes a pace for the spin to change that.",
        ]
    walks = f"You walk antispinward {_pace(day)} and weigh {day.say.weight(back)}"
    if day.only_thrust(back):
        return [
            f"You walk antispinward {_pace(day)}, and nothing presses your feet on: only the thrust is left, {day.say.number(back)}; "
            f"standing it was {day.say.number(still)}.",
            f"Back with the spin it is {day.say.number(spinward)}.",
        ]
    if day.slight(back - still) and day.slight(spinward - still):
        standing = "" if day.say.number(back) == day.say.number(still) else f", {day.say.number(still)},"
        return [
            f"{walks}, so nearly what you weigh standing{standing} that you do not notice.",
            f"With the spin it is {day.say.number(spinward)}.",
        ]
    floats = v["float_speed_m_s"]
    if day.floating(day.person.walk_m_s) == "at":
        walks = f"You walk antispinward {_pace(day)}, as fast as it takes for nothing to hold you down, and float"
    elif not day.flat and day.floating(day.person.walk_m_s) == "past":
        walks = (
            f"You walk antispinward {_pace(day)}, faster than the deck turns, {day.say.speed(floats)}, and so go round the "
            f"axis the other way, and weigh {day.say.weight(back)}"
        )
    return [
        f"{walks}; standing it was {day.say.number(still)}.",
        f"Back with the spin it is {day.say.number(spinward)}.",
    ]


def _floating(day):
    floats_m_s = day.v["float_speed_m_s"]
    return "a slower pace" if floats_m_s is None else day.say.speed(floats_m_s)


def _runs(day):
    back, floats, pace = day.v["run_antispinward_g"], day.v["float_speed_m_s"], day.person.run_m_s
    runs = day.say.speed(pace)
    if pace == 0:
        return "You do not run."
    if day.floating(pace) == "at":
        return f"Run against the spin, {runs}, and you go as fast as it takes for nothing to hold you down: you float."
    if back is None:
        return (
            f"Run against the spin, {runs}, and you leave the floor: from {_floating(day)} on nothing holds you down."
        )
    if day.only_thrust(back):
        return f"Run against the spin, {runs}, and nothing presses your feet on: only the thrust is left, {day.say.number(back)}."
    if day.floating(pace) == "past":
        return (
            f"A run against the spin, {runs}, passes {day.say.speed(floats)}, at which you float; beyond it weight comes back, "
            f"{day.say.number(back)} at that pace."
        )
    return f"Run against the spin, {runs}, and it is {day.say.number(back)}; run with it, {day.say.number(day.v['run_spinward_g'])}."


def _afterwards(day):
    floats, out = day.v["float_speed_m_s"], []
    if floats is not None and not any(map(day.floating, (day.person.run_m_s, day.person.walk_m_s))):
        out.append(f"At {day.say.speed(floats)} antispinward your feet would leave the {day.ground}.")
    if day.table and day.v["floor_lean_deg"] < SLIGHT_DEG:
        out.append("Down is under your feet all the way.")
    elif day.table:
        out.append(f"Down leans outward all the way, by {day.say.angle(day.v['floor_lean_deg'])} when you stand still.")
    elif day.flat:
        out += _toward_the_ends(day)
    elif day.v["floor_lean_deg"] is None:
        out.append("The deck rises ahead of you and behind, yet at a steady pace down is always under your feet.")
    else:
        out.append(tipped(day))
    return out


def _toward_the_ends(day):
    flat = "The floor is flat and the axis stays over its middle"
    lean, tips = day.say.angle(_lean_at_the_end(day)), tipped(day)
    if tips:
        return [tips, f"{flat}: toward either end down leans outward as well, and at the end itself by {lean} in all."]
    return [f"{flat}: toward either end down leans outward, by {lean} at the end itself."]


def _lean_at_the_end(day):
    """Degrees between straight onto the floor and what is felt at its end: the spin's part along the floor, and what tips down
    in its middle."""
    along, tipped_by = day.habitat.half_length_m(0) / day.radius_m, math.radians(day.v["floor_lean_deg"] or 0.0)
    return math.degrees(math.atan2(math.hypot(along * math.cos(tipped_by), math.sin(tipped_by)), math.cos(tipped_by)))
