"""A moment of a day aboard: walking to breakfast against the spin."""

import math

from ...language import tr
from .day import SLIGHT_DEG, WEIGHTLESS_G, tipped

_LEAST_TO_WALK_G = 0.02  # that a walk gives, to be told of; our own choice


def breakfast(day):
    """Walking to breakfast against the spin."""
    if day.weightless:
        return [*_no_steps(day), *_run_round(day)]
    if day.flung:
        return [
            tr("There is no walking on a turntable that nothing holds you to."),
            tr(
                "You go to breakfast by a rail, and it must bear {weight}.",
                weight=day.say.weight(day.v["feet_g"]),
            ),
            tr("Let go, and you leave over the rim, straight on."),
        ]
    if day.wall:
        return [
            tr("There is no walking along a deck that is a wall: you cross the room on whatever faces the thrust."),
            tr(
                "There you weigh {weight}, whichever way you go and however fast.",
                weight=day.say.weight(day.v["feet_g"]),
            ),
            tr("With nothing turning there is no way with the spin or against it."),
        ]
    return [*_walks(day), _runs(day), *_afterwards(day)]


def _no_steps(day):
    if day.person.walk_m_s:
        goes = tr("You go to breakfast along a rail, hand over hand, at {speed} if you are quick.", speed=_pace(day))
    else:
        goes = tr("You go to breakfast along a rail, hand over hand.")
    return [_sent_off(day), goes]


def _sent_off(day):
    """Where a still habitat lets somebody go: round ground is met again, flat ground is not."""
    if day.table or day.flat:
        return tr(
            "No step holds: the first one sends you off the {ground}, and you do not come back to it of yourself.",
            ground=day.stood_on,
        )
    return tr(
        "No step holds: the first one sends you off the {ground}, and across to where it bends up to you again.",
        ground=day.stood_on,
    )


def _pace(day):
    return day.say.speed(day.person.walk_m_s)


def _run_round(day):
    pressed, at_a_walk = (day.v[f"{pace}_spinward_g"] or 0.0 for pace in ("run", "walk"))
    if day.table or day.flat or day.v["floor_lean_deg"] is not None or max(pressed, at_a_walk) < WEIGHTLESS_G:
        return [tr("Whichever way you go, it is the same.")]
    way = tr("either way round the deck") if day.still else tr("round the deck spinward")
    speed, walking, running = day.say.speed(day.person.run_m_s), day.say.weight(at_a_walk), day.say.weight(pressed)
    if at_a_walk >= _LEAST_TO_WALK_G and pressed > at_a_walk:
        return [
            tr(
                "Going {way} helps: its bend presses your feet on with {walking} at a walk, and at a run, {speed}, with {running}.",
                way=way,
                walking=walking,
                speed=speed,
                running=running,
            )
        ]
    if at_a_walk >= _LEAST_TO_WALK_G:
        return [
            tr("Going {way} helps: its bend presses your feet on with {walking} at a walk.", way=way, walking=walking)
        ]
    if pressed <= at_a_walk:
        return [
            tr(
                "Going {way} helps a little: its bend presses your feet on with {walking} at a walk.",
                way=way,
                walking=walking,
            )
        ]
    return [
        tr(
            "A walk hardly helps; {way} at a run, {speed}, its bend presses your feet on with {running}.",
            way=way,
            speed=speed,
            running=running,
        )
    ]


def _walks(day):
    still, back, spinward = day.v["feet_g"], day.v["walk_antispinward_g"], day.v["walk_spinward_g"]
    if back is None:
        return _walks_off(day, still, spinward)
    if day.person.walk_m_s == 0:
        return [
            tr("You stay where you are, and weigh {weight}.", weight=day.say.weight(still)),
            tr("It takes a pace for the spin to change that."),
        ]
    if day.only_thrust(back):
        return [
            tr(
                "You walk antispinward at {speed}, and nothing presses your feet on: only the thrust is left, {thrust}; standing it was "
                "{standing}.",
                speed=_pace(day),
                thrust=day.say.number(back),
                standing=day.say.number(still),
            ),
            tr("Back with the spin it is {weight}.", weight=day.say.number(spinward)),
        ]
    if day.slight(back - still) and day.slight(spinward - still):
        return [_hardly_changes(day, back, still), tr("With the spin it is {weight}.", weight=day.say.number(spinward))]
    return [
        tr("{walks}; standing it was {weight}.", walks=_walking(day, back), weight=day.say.number(still)),
        tr("Back with the spin it is {weight}.", weight=day.say.number(spinward)),
    ]


def _walks_off(day, still, spinward):
    floats_m_s, places = day.v["float_speed_m_s"], {"speed": _pace(day)}
    if floats_m_s is None:
        cannot = tr(
            "You cannot walk against the spin at {speed}: from a slower pace on nothing holds you to the floor, and your step carries "
            "you off it.",
            **places,
        )
    else:
        cannot = tr(
            "You cannot walk against the spin at {speed}: from {floats} on nothing holds you to the floor, and your step carries you "
            "off it.",
            floats=day.say.speed(floats_m_s),
            **places,
        )
    return [
        cannot,
        tr(
            "With the spin the same pace weighs {weight}, where standing was {standing}.",
            weight=day.say.weight(spinward),
            standing=day.say.number(still),
        ),
    ]


def _hardly_changes(day, back, still):
    places = {"speed": _pace(day), "weight": day.say.weight(back)}
    if day.say.number(back) == day.say.number(still):
        return tr(
            "You walk antispinward at {speed} and weigh {weight}, so nearly what you weigh standing that you do not notice.",
            **places,
        )
    return tr(
        "You walk antispinward at {speed} and weigh {weight}, so nearly what you weigh standing, {standing}, that you do not notice.",
        standing=day.say.number(still),
        **places,
    )


def _walking(day, back):
    places = {"speed": _pace(day), "weight": day.say.weight(back)}
    if day.floating(day.person.walk_m_s) == "at":
        return tr(
            "You walk antispinward at {speed}, as fast as it takes for nothing to hold you down, and float",
            speed=_pace(day),
        )
    if not day.flat and day.floating(day.person.walk_m_s) == "past":
        return tr(
            "You walk antispinward at {speed}, faster than the deck turns, {floats}, and so go round the axis the other way, and weigh "
            "{weight}",
            floats=day.say.speed(day.v["float_speed_m_s"]),
            **places,
        )
    return tr("You walk antispinward at {speed} and weigh {weight}", **places)


def _runs(day):
    back, floats, pace = day.v["run_antispinward_g"], day.v["float_speed_m_s"], day.person.run_m_s
    places = {"speed": day.say.speed(pace)}
    if pace == 0:
        return tr("You do not run.")
    if day.floating(pace) == "at":
        return tr(
            "Run against the spin, {speed}, and you go as fast as it takes for nothing to hold you down: you float.",
            **places,
        )
    if back is None and floats is None:
        return tr(
            "Run against the spin, {speed}, and you leave the floor: from a slower pace on nothing holds you down.",
            **places,
        )
    if back is None:
        return tr(
            "Run against the spin, {speed}, and you leave the floor: from {floats} on nothing holds you down.",
            floats=day.say.speed(floats),
            **places,
        )
    places["weight"] = day.say.number(back)
    if day.only_thrust(back):
        return tr(
            "Run against the spin, {speed}, and nothing presses your feet on: only the thrust is left, {weight}.",
            **places,
        )
    if day.floating(pace) == "past":
        return tr(
            "A run against the spin, {speed}, passes {floats}, at which you float; beyond it weight comes back, {weight} at that pace.",
            floats=day.say.speed(floats),
            **places,
        )
    return tr(
        "Run against the spin, {speed}, and it is {weight}; run with it, {spinward}.",
        spinward=day.say.number(day.v["run_spinward_g"]),
        **places,
    )


def _afterwards(day):
    floats, out = day.v["float_speed_m_s"], []
    if floats is not None and not any(map(day.floating, (day.person.run_m_s, day.person.walk_m_s))):
        out.append(
            tr(
                "At {speed} antispinward your feet would leave the {ground}.",
                speed=day.say.speed(floats),
                ground=day.stood_on,
            )
        )
    if day.table and day.v["floor_lean_deg"] < SLIGHT_DEG:
        out.append(tr("Down is under your feet all the way."))
    elif day.table:
        out.append(
            tr(
                "Down leans outward all the way, by {angle} when you stand still.",
                angle=day.say.angle(day.v["floor_lean_deg"]),
            )
        )
    elif day.flat:
        out += _toward_the_ends(day)
    elif day.v["floor_lean_deg"] is None:
        out.append(tr("The deck rises ahead of you and behind, yet at a steady pace down is always under your feet."))
    else:
        out.append(tipped(day))
    return out


def _toward_the_ends(day):
    lean, tips = day.say.angle(_lean_at_the_end(day)), tipped(day)
    if tips:
        return [
            tips,
            tr(
                "The floor is flat and the axis stays over its middle: toward either end down leans outward as well, and at the end "
                "itself by {angle} in all.",
                angle=lean,
            ),
        ]
    return [
        tr(
            "The floor is flat and the axis stays over its middle: toward either end down leans outward, by {angle} at the end itself.",
            angle=lean,
        )
    ]


def _lean_at_the_end(day):
    """Degrees between straight onto the floor and what is felt at its end: the spin's part along the floor, and what tips down
    in its middle."""
    along, tipped_by = day.habitat.half_length_m(0) / day.radius_m, math.radians(day.v["floor_lean_deg"] or 0.0)
    return math.degrees(math.atan2(math.hypot(along * math.cos(tipped_by), math.sin(tipped_by)), math.cos(tipped_by)))
