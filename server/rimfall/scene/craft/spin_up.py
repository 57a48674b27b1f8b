"""What it takes to spin a craft up, what the still part does meanwhile, and what could hold it."""

from dataclasses import asdict

from ...language import tr
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
            tr("Friction, and what the motor or the thrusters weigh, are left out."),
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
            tr("What is left turns about the spin axis; that it could go over and tumble is another finding."),
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
        name = asked.called("turning")
        yield (
            tr("{turning} needs nothing: it has no inertia about the axis.", turning=name)
            if asked.spin_rad_s
            else tr("{turning} needs nothing: it does not turn.", turning=name)
        )
        return
    if asked.craft.spin_up.by == "motor" and asked.across is None:
        yield tr("there is nothing aboard for a motor to push against: all of the craft turns as one.")
    yield _takes(asked, run)
    if asked.craft.spin_up.by == "motor":
        yield _reaction(asked)
    else:
        yield tr("thrusters push against nothing aboard: nothing else begins to turn.")
    yield _held(asked)


def _takes(asked, run):
    block, units = asked.craft.spin_up, asked.units
    places = {
        "turning": asked.called("turning"),
        "rate": words.rate(asked.spin_rad_s, bent=""),
        "time": words.duration(run.time_s),
        "turns": words.figure(run.turns),
        "energy": words.energy(run.energy_j),
    }
    if block.by == "motor":
        places |= {
            "torque": words.torque(run.torque_n_m, units),
            "power": words.power(run.torque_n_m * asked.spin_rad_s),
        }
        if asked.across is None:
            return tr(
                "held from outside, to bring {turning} to {rate} takes {time} and {turns} turns at {torque}, and up to {power}; {energy} are in "
                "it then.",
                **places,
            )
        return tr(
            "to bring {turning} to {rate} takes {time} and {turns} turns at {torque}, and up to {power}; {energy} are in it then.",
            **places,
        )
    places |= {"thrust": words.force(block.thrust_n, units), "propellant": words.mass(run.propellant_kg, units)}
    times = run.propellant_kg / asked.bodies["turning"].mass_kg
    if times > 1:
        return tr(
            "to bring {turning} to {rate} takes {time} and {turns} turns with {thrust} of thrust, and burns {propellant} of propellant, {times} "
            "times the mass of what turns; {energy} are in it then.",
            times=words.figure(times),
            **places,
        )
    return tr(
        "to bring {turning} to {rate} takes {time} and {turns} turns with {thrust} of thrust, and burns {propellant} of propellant; {energy} are "
        "in it then.",
        **places,
    )


def _reaction(asked):
    """What the still part does under the motor."""
    if "still" not in asked.bodies:
        return ""
    name, inertia = asked.called("still"), asked.inertia("still")
    if not inertia:
        return tr(
            "{still} has no inertia about the axis: it would turn the other way as fast as anything lets it.",
            still=name,
        )
    counter = asked.called("counter")
    if asked.inertia("counter") and nothing_left(asked):
        return tr("{still} stays still, if {counter} is spun up with it.", still=name, counter=counter)
    momentum = asked.momenta.get("counter", 0.0)
    both = asked.momenta["turning"] + momentum
    rate = words.rate(both / inertia)
    if not momentum:
        says = tr("{still} would turn the other way at {rate} unless something holds it", still=name, rate=rate)
    elif both > 0:
        says = tr(
            "with {counter} spun up as well, {still} would turn the other way at {rate} unless something holds it",
            counter=asked.called("counter", "with"),
            still=name,
            rate=rate,
        )
    else:
        says = tr(
            "with {counter} spun up as well, {still} would turn the same way as {turning} at {rate} unless something holds it",
            counter=asked.called("counter", "with"),
            still=name,
            turning=asked.called("turning"),
            rate=rate,
        )
    would = _wheel_would(asked)
    return f"{says}; {would}." if would else f"{says}."


def _wheel_would(asked):
    """What a wheel would take to hold it, as a clause; "" where there is no question of one."""
    wheel = _wheel(asked)
    if wheel is None:
        return ""
    fast = too_fast(wheel["rim_speed_m_s"], asked.units)
    places = {
        "mass": words.mass(wheel["mass_kg"], asked.units),
        "radius": words.short(wheel["radius_m"], asked.units),
        "rate": words.rate(wheel["rate_rpm"] * RPM_RAD_S),
    }
    if not fast:
        return tr("a wheel of {mass} and {radius} at {rate} would", **places)
    return tr("a wheel of {mass} and {radius} would have to turn at {rate}, and {too_fast}", too_fast=fast, **places)


def _held(asked):
    """What leaves nothing to hold."""
    if "counter" not in asked.bodies:
        return ""
    name, cancel = asked.called("counter"), _cancel(asked)
    if cancel["rate_rpm"] is None:
        return tr("{counter} is on the axis, and can hold nothing.", counter=name)
    if nothing_left(asked):
        return ""
    rate = words.rate(cancel["rate_rpm"] * RPM_RAD_S)
    if cancel["inertia_kg_m2"] is None:
        return tr("{counter} at {rate} the other way would leave nothing to hold.", counter=name, rate=rate)
    return tr(
        "{counter} at {rate} the other way would leave nothing to hold; at its {own_rate} it would need {times} times its inertia.",
        counter=name,
        rate=rate,
        own_rate=words.rate(asked.counter_rad_s),
        times=words.figure(cancel["inertia_kg_m2"] / asked.inertia("counter")),
    )


def _says_down(asked, run, left):
    if not run.momentum_kg_m2_s:
        yield tr("there is nothing to stop.")
        return
    by_motor, time = asked.craft.spin_up.by == "motor", words.duration(run.time_s)
    if not by_motor:
        yield tr(
            "stopping it takes the same {time} and burns {propellant} of propellant again.",
            time=time,
            propellant=words.mass(run.propellant_kg, asked.units),
        )
    elif left is not None:
        yield tr(
            "stopping it takes the same {time}; {energy} come back, as current or as heat.",
            time=time,
            energy=words.energy(run.energy_j),
        )
    yield from _without_thrusters(asked, left)


def _without_thrusters(asked, left):
    if left is None:
        yield tr("without thrusters it cannot be stopped at all: there is nothing aboard to give its momentum to.")
        return
    name = asked.called(asked.across)
    if abs(left.rate_rad_s) <= _EVEN * asked.spin_rad_s:
        yield tr(
            "if its joint alone stops it against {other}, hardly anything is left: both come to rest.",
            other=name,
        )
        return
    yield tr(
        "if its joint alone stops it against {other}, the two go on as one at {rate}: its momentum stays aboard unless thrusters take it off.",
        other=name,
        rate=words.rate_from(left.rate_rad_s, asked.spin_rad_s),
    )
    yield tr("only if it was spun up against the same part, which nothing ever held, does all come to rest.")


def _assumptions(asked, run):
    block = asked.craft.spin_up
    if block.by == "motor":
        return [tr("The torque is the same all the time; the power is that against a still part that is held.")]
    return [
        tr("The thrust is the same all the time, and points along the rim."),
        tr(
            "The propellant is carried where it is burnt, and weighs: as if it did not, it would be {mass}.",
            mass=words.mass(run.rough_kg, asked.units),
        )
        if _weighed(run)
        else tr("The propellant's own mass is left out: it is less than 2 % of what turns."),
    ]
