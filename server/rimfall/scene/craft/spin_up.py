"""What it takes to spin a craft up, what the still part does meanwhile, and what could hold it."""

from dataclasses import asdict

from ...physics.constants import RPM_RAD_S
from ...shapes.part import spin_rad_s
from ...vessel import spin_up
from ...vessel.joint import seized
from ...vessel.solids import reach_m
from . import words
from .mass import nothing_left
from .saying import sentence, too_fast

_WEIGHED_SHARE = 0.02  # of the turning mass: more propellant than that counts itself
_WHEEL_SHARE, _HUB_SHARE = 0.05, 0.1  # of the turning mass and of the rim: a wheel that nobody has named
_EVEN = 0.001  # relative: momenta as near as that are alike to people


def up(asked):
    """The finding on spinning up as data; None where it is not asked for."""
    block = asked.craft.spin_up
    if block is None:
        return None
    run = _run(asked)
    still = spin_up.reaction_rad_s(-run.momentum_kg_m2_s, asked.inertia("still"))
    by_motor = block.by == "motor"
    return {
        "by": block.by,
        **_figures(run),
        "still_rate_rpm": still / RPM_RAD_S if by_motor and still is not None else None,
        "power_w": run.torque_n_m * asked.spin_rad_s if by_motor else None,
        "cancel": _cancel(asked),
        "says": [sentence(said) for said in _says_up(asked, run) if said],
        "assumptions": [
            *_assumptions(asked, run),
            "Friction, and what the motor or the thrusters weigh, are left out.",
        ],
    }


def down(asked):
    """The finding on spinning down as data; None where spinning up is not asked for."""
    if asked.craft.spin_up is None:
        return None
    run, other = _run(asked), asked.across
    left = (
        None
        if other is None
        else seized((asked.inertia("turning"), asked.inertia(other)), (asked.spin_rad_s, _rate(asked, other)))
    )
    return {
        **_figures(run),
        "turns": run.turns_to_stop,
        "left": left and {"rate_rpm": left.rate_rad_s / RPM_RAD_S, "heat_j": left.heat_j},
        "says": [sentence(said) for said in _says_down(asked, run, left) if said],
        "assumptions": [
            "What is left turns about the spin axis; that it could go over and tumble is another finding.",
            *_assumptions(asked, run),
        ],
    }


def _rate(asked, group):
    return asked.counter_rad_s if group == "counter" else 0.0


def _run(asked):
    """The `SpinUp` of what turns, its propellant counted in where that is more than 2 % of it."""
    block, inertia = asked.craft.spin_up, asked.inertia("turning")
    if block.by == "motor":
        return spin_up.by_motor(inertia, asked.spin_rad_s, block.torque_n_m)
    how = (inertia, asked.spin_rad_s, block.thrust_n, block.arm_m, block.exhaust_m_s)
    rough = spin_up.by_thrusters(*how, weighed=False)
    if rough.rough_kg <= _WEIGHED_SHARE * asked.bodies["turning"].mass_kg:
        return rough
    return spin_up.by_thrusters(*how, weighed=True)


def _figures(run):
    names = {"momentum_kg_m2_s": "angular_momentum_kg_m2_s", "rough_kg": "propellant_rough_kg"}
    return {names.get(name, name): value for name, value in asdict(run).items()}


def _weighed(run):
    return run.propellant_kg is not None and run.propellant_kg != run.rough_kg


def _cancel(asked):
    """What would leave no momentum: the counter group's rate, the inertia it needs at its own, a wheel."""
    momentum, rate = asked.momenta["turning"], spin_rad_s(asked.craft.counter_rpm or 0.0)
    counter = spin_up.reaction_rad_s(-momentum, asked.inertia("counter"))
    against = rate < 0 < asked.spin_rad_s
    return {
        "rate_rpm": None if counter is None else counter / RPM_RAD_S,
        "inertia_kg_m2": -momentum / rate if against else None,
        "wheel": _wheel(asked),
        "left_kg_m2_s": asked.momenta["whole"],
    }


def _wheel(asked):
    """A wheel that holds the momentum of what turns, where nothing turns against it: the one that is named, or one as wide as the still
    part, of the mass that the counter rate asks for, or else of a twentieth of the turning mass."""
    momentum = abs(asked.momenta["turning"])
    if "counter" in asked.bodies or not momentum:
        return None
    named, rate = asked.craft.spin_up.wheel, abs(spin_rad_s(asked.craft.counter_rpm or 0.0))
    if named is not None:
        mass, radius = named.mass_kg, named.radius_m
    else:
        still = [reach_m(asked.solids[part.name]) for part in asked.craft.parts if part.group == "still"]
        radius = max(still, default=0.0) or _HUB_SHARE * asked.rim_m
        mass = momentum / rate / radius**2 if rate else _WHEEL_SHARE * asked.bodies["turning"].mass_kg
    rate = momentum / (mass * radius**2)
    return {"mass_kg": mass, "radius_m": radius, "rate_rpm": rate / RPM_RAD_S, "rim_speed_m_s": rate * radius}


def _says_up(asked, run):
    if not run.momentum_kg_m2_s:
        yield f"{asked.called('turning')} needs nothing: it " + (
            "does not turn." if not asked.spin_rad_s else "has no inertia about the axis."
        )
        return
    if asked.craft.spin_up.by == "motor" and asked.across is None:
        yield "there is nothing aboard for a motor to push against: all of the craft turns as one."
    yield _takes(asked, run)
    if asked.craft.spin_up.by == "motor":
        yield _reaction(asked)
    else:
        yield "thrusters push against nothing aboard: nothing else begins to turn."
    yield _held(asked)


def _takes(asked, run):
    block, name, units = asked.craft.spin_up, asked.called("turning"), asked.units
    bring = "held from outside, to bring" if block.by == "motor" and asked.across is None else "to bring"
    says = f"{bring} {name} to {words.rate(asked.spin_rad_s)} takes {words.duration(run.time_s)} and {words.figure(run.turns)} turns"
    if block.by == "motor":
        gives = words.power(run.torque_n_m * asked.spin_rad_s)
        return f"{says} at {words.torque(run.torque_n_m, units)}, and up to {gives}; {words.energy(run.energy_j)} are in it then."
    thrust = words.force(block.thrust_n, units)
    burns, times = words.mass(run.propellant_kg, units), run.propellant_kg / asked.bodies["turning"].mass_kg
    more = f", {words.figure(times)} times the mass of what turns" if times > 1 else ""
    return f"{says} with {thrust} of thrust, and burns {burns} of propellant{more}; {words.energy(run.energy_j)} are in it then."


def _reaction(asked):
    """What the still part does under the motor."""
    if "still" not in asked.bodies:
        return ""
    name, inertia = asked.called("still"), asked.inertia("still")
    if not inertia:
        return f"{name} has no inertia about the axis: it would turn the other way as fast as anything lets it."
    if asked.inertia("counter") and nothing_left(asked):
        return f"{name} stays still, if {asked.called('counter')} is spun up with it."
    counter = asked.momenta.get("counter", 0.0)
    both = asked.momenta["turning"] + counter
    spun = f"with {asked.called('counter')} spun up as well, " if counter else ""
    way = "the other way" if both > 0 else f"the same way as {asked.called('turning')}"
    return (
        f"{spun}{name} would turn {way} at {words.rate(both / inertia)} unless something holds it{_wheel_would(asked)}."
    )


def _wheel_would(asked):
    wheel = _wheel(asked)
    if wheel is None:
        return ""
    fast = too_fast(wheel["rim_speed_m_s"], asked.units)
    a_wheel = (
        f"a wheel of {words.mass(wheel['mass_kg'], asked.units)} and {words.short(wheel['radius_m'], asked.units)}"
    )
    rate = words.rate(wheel["rate_rpm"] * RPM_RAD_S)
    if not fast:
        return f"; {a_wheel} at {rate} would"
    return f"; {a_wheel} would have to turn at {rate}, and {fast}"


def _held(asked):
    """What leaves nothing to hold."""
    if "counter" not in asked.bodies:
        return ""
    name, cancel = asked.called("counter"), _cancel(asked)
    if cancel["rate_rpm"] is None:
        return f"{name} is on the axis, and can hold nothing."
    if nothing_left(asked):
        return ""
    says = f"{name} at {words.rate(cancel['rate_rpm'] * RPM_RAD_S)} the other way would leave nothing to hold"
    if cancel["inertia_kg_m2"] is None:
        return f"{says}."
    times = cancel["inertia_kg_m2"] / asked.inertia("counter")
    return f"{says}; at its {words.rate(asked.counter_rad_s)} it would need {words.figure(times)} times its inertia."


def _says_down(asked, run, left):
    if not run.momentum_kg_m2_s:
        yield "there is nothing to stop."
        return
    by_motor, time = asked.craft.spin_up.by == "motor", words.duration(run.time_s)
    if not by_motor:
        yield f"stopping it takes the same {time} and burns {words.mass(run.propellant_kg, asked.units)} of propellant again."
    elif left is not None:
        yield f"stopping it takes the same {time}; {words.energy(run.energy_j)} come back, as current or as heat."
    yield from _without_thrusters(asked, left)


def _without_thrusters(asked, left):
    if left is None:
        yield "without thrusters it cannot be stopped at all: there is nothing aboard to give its momentum to."
        return
    name = asked.called(asked.across)
    if abs(left.rate_rad_s) <= _EVEN * asked.spin_rad_s:
        yield f"if its joint alone stops it against {name}, hardly anything is left: both come to rest."
        return
    rate = words.rate_from(left.rate_rad_s, asked.spin_rad_s)
    yield f"if its joint alone stops it against {name}, the two go on as one at {rate}: its momentum stays aboard unless thrusters take it off."
    yield "only if it was spun up against the same part, which nothing ever held, does all come to rest."


def _assumptions(asked, run):
    block = asked.craft.spin_up
    if block.by == "motor":
        return ["The torque is the same all the time; the power is that against a still part that is held."]
    share = _weighed(run)
    return [
        "The thrust is the same all the time, and points along the rim.",
        f"The propellant is carried where it is burnt, and weighs: as if it did not, it would be {words.mass(run.rough_kg, asked.units)}."
        if share
        else "The propellant's own mass is left out: it is less than 2 % of what turns.",
    ]
