"""Sentences for pours: how the stream leaves and breaks, whether it reaches the cup, and what is left out."""

from dataclasses import replace

import numpy as np

from ...motions.ways import Way
from ...phrases import STRAIGHT_BELOW, length, seconds, speed, where
from ...physics.liquids import DROP_PER_STREAM, breakup_length_weber_m, named
from ..words import briefly, in_air, landing, plainly, there, why

_FLATTENS_M = 0.003  # rain drops beyond it flatten and fall slower: Gunn & Kinzer (1949)
_A_BASIN_M = 0.2  # an opening wider than this is called a basin's
ALL, NONE = 0.9995, 0.0005  # shares that are said as all and as nothing
_TILTED_DEG = 0.05
_BESIDE_M = 0.005  # nearer than this the cup stands in the middle of the pour
_SYRUP_OHNESORGE = 1.0  # from here on a thread's own stiffness holds it back: common practice
_NB = "\u00a0"


def poured(traced, units):
    """What a pour does; with a cup there the question is whether it is reached."""
    said = (
        _reaching(traced, units),
        _leaving(traced, units),
        _lands(traced, units),
        why(_as_landed(traced), units),
        _later(traced, units),
    )
    return [s for s in said if s]


def in_short(traced, units):
    """Whether it reaches the cup, else where it lands, in a phrase."""
    findings = traced.findings
    if traced.motion.target is None:
        clings = traced.plan.stream.regime == "drips" and traced.plan.stream.drop_diameter_m is None
        lands = findings["lands_m"]
        if lands is not None and _moves(lands):
            first, last = (where(Way(0, *lands[name]), units, traced.across) for name in ("first", "last"))
            return f"lands {first} at first and {last} at the end"
        return "clings to the lip" if clings else briefly(traced, units)
    cup = vessel(traced)
    if findings["caught"] > NONE:
        return f"reaches {cup}: {_share(findings, units)}"
    if findings["off_m"] is None or float(np.hypot(*findings["off_m"])) < _BESIDE_M:
        return f"misses {cup}"
    return f"misses {cup} by {length(float(np.hypot(*findings['off_m'])), units)}"


def vessel(traced):
    """What it is poured into, by its width: "the cup", "the basin"."""
    return "the basin" if traced.motion.target.diameter_m > _A_BASIN_M else "the cup"


def _as_landed(traced):
    """The same, that it came down at the cup's rim or on its table taken as its landing."""
    down = traced.findings["comes_down"]
    if down is None:
        return traced
    track = replace(traced.track, landing=traced.track.events[-1])
    return replace(traced, track=track, drift=(down["drift_parts_m"], down["drift_parts_none"]))


def _lands(traced, units):
    """Where its first parcel comes down."""
    stream, end, down = traced.plan.stream, traced.track.end, traced.findings["comes_down"]
    many = stream.drop_diameter_m is not None and stream.batch is None
    who = "The stream" if stream.drop_diameter_m is None else "The drops" if many else "The first drop"
    if down is not None:
        last = traced.track.events[-1]
        on = f"at the rim of {vessel(traced)}" if down["on"] == "target" else "on the table"
        where_to = there(traced, last, units, stressed=True, none=STRAIGHT_BELOW)
        after = f"after {seconds(last.time_s - traced.plan.start_s)}{plainly(traced, units)}"
        return f"{who} {'come' if many else 'comes'} down {on} {where_to} {after}."
    if stream.drop_diameter_m is not None:
        return landing(traced, units, who, many)
    if traced.findings["lands_m"] is not None and _moves(traced.findings["lands_m"]):
        return landing(traced, units, "The first of the stream")
    if traced.track.landing is None and end not in ("met a surface", "edge", "duration") and stream.regime == "drips":
        return "With no weight to pull it off, the liquid clings to the lip."
    return landing(traced, units, "The stream")


def _later(traced, units):
    """Where the rest of a pour lands that does not land where its first parcel does."""
    lands = traced.findings["lands_m"]
    if lands is None or traced.motion.target is not None or not _moves(lands):
        return ""
    last, middle = (where(Way(0, *lands[name]), units, traced.across) for name in ("last", "middle"))
    return f"The last of it lands {last}, and on average it lands {middle}."


def _moves(lands):
    """Whether a pour does not land in one place."""
    return max(np.ptp([lands["first"], lands["last"], lands["middle"]], axis=0)) >= _BESIDE_M


def _leaving(traced, units):
    """How it leaves the lip, thins and breaks, or drips; "" where it clings there."""
    stream = traced.plan.stream
    if stream.regime == "drips":
        return _drips(stream, units)
    thin = float(np.min(_thread(traced))) if len(traced.track.samples.time_s) else stream.lip_m
    leaves = f"It leaves the lip at {speed(stream.speed_m_s, units)} and thins from {length(stream.lip_m, units)} to {length(thin, units)}"
    if stream.breakup_s is None:
        return f"{leaves}, whole to the end."
    breaks = f"{leaves}; {_breaks_m(traced, units)} on it breaks into"
    if stream.batch is None:
        return f"{breaks} drops of {length(stream.drop_diameter_m, units)}, {1 / stream.drop_interval_s:.0f} a second."
    _, streamed, last = stream.batch.fates()
    return f"{breaks} {_sizes(stream.batch, units, streamed)}{_at_last(stream.batch, units, streamed, last)}."


def _breaks_m(traced, units):
    """How far on a stream breaks, by the two published laws: "1.24 to 2.01 m"."""
    stream, liquid = traced.plan.stream, named(traced.motion.liquid)
    other_m = breakup_length_weber_m(liquid, stream.speed_m_s, stream.lip_m)
    least, most = (length(m, units) for m in sorted((other_m, stream.breakup_m)))
    return f"between {least} and {most}" if least != most else least


def _drips(stream, units):
    if stream.drop_diameter_m is None:
        return ""
    if stream.batch is not None:
        return _drips_first(stream.batch, units)
    drops = f"Too slow for a stream, it drips: drops of {length(stream.drop_diameter_m, units)}"
    if stream.drop_count == 1:
        return f"Too slow for a stream, it drips: one drop of {length(stream.drop_diameter_m, units)}."
    return f"{drops}, one every {seconds(stream.drop_interval_s)}."


def _drips_first(batch, units):
    """A pour that is too slow for a stream as it begins: what drips, and what comes of a stream that there is later."""
    first, streamed, last = batch.fates()
    drips = f"Too slow for a stream{' at first' if len(streamed) else ''}, it drips: {_sizes(batch, units, first)}."
    if not len(streamed):
        return drips
    return f"{drips} The stream that follows breaks into {_sizes(batch, units, streamed)}{_at_last(batch, units, streamed, last)}."


def _at_last(batch, units, streamed, last):
    """What drips once there has been a stream: as the flow ends, or between streams too."""
    if not len(last):
        return ""
    ends = np.max(batch.leaves_s[streamed]) < np.min(batch.leaves_s[last])
    return f"; {'as the flow ends' if ends else 'whenever it is too slow again'} it drips: {_sizes(batch, units, last)}"


def _sizes(batch, units, which):
    """Drops in words: "4 drops of 6.1 mm to 8.4 mm"; which: the numbers of those that are meant."""
    sizes = batch.diameter_m[which]
    if not len(sizes):
        return "no drops in the time there is"
    least, most = length(float(np.min(sizes)), units), length(float(np.max(sizes)), units)
    count = f"{len(sizes):,} drops" if len(sizes) > 1 else "one drop"
    return f"{count} of {least}" if least == most else f"{count} of {least} to {most}"


def _thread(traced):
    """Diameters of the unbroken stream at its samples and at its end."""
    samples, stream = traced.track.samples, traced.plan.stream
    whole = stream.diameters_m(samples.time_s, np.linalg.norm(samples.rotating_velocity_m_s, axis=1))
    end_s = np.inf if stream.breakup_s is None else stream.breakup_s
    thread = whole[samples.time_s < end_s]
    return (
        np.append(thread, stream.lip_m)
        if stream.drop_diameter_m is None
        else np.append(thread, stream.drop_diameter_m / DROP_PER_STREAM)
    )


def _reaching(traced, units):
    """Whether it reaches the cup, how much of it, and where the cup should have stood; "" without one."""
    target, findings = traced.motion.target, traced.findings
    if target is None:
        return ""
    cup = vessel(traced)
    if findings["caught"] <= NONE:
        return _misses(findings, cup, units, traced.across)
    said = f"The {traced.motion.liquid} reaches {cup}: {_share(findings, units)}."
    if findings["overflows_ml"] > 0:
        said += f" {cup.capitalize()} is full; {_volume(findings['overflows_ml'], units)} runs over its rim."
    return said + _moved(findings, cup, units, traced.across) + _level(findings, cup, units)


def _share(findings, units):
    """ "94 % of it, 56 ml; 4 ml are spilled", or "all of it, 60 ml"."""
    if findings["caught"] >= ALL:
        return f"all of it, {_volume(findings['caught_ml'], units)}"
    share = f"{100 * findings['caught']:.0f}{_NB}% of it, {_volume(findings['caught_ml'], units)}"
    return f"{share}; {_volume(findings['spilled_ml'], units)} are spilled"


def _volume(volume_ml, units):
    """A volume in words; a US fluid ounce is 29.5735295625 ml exactly (231 cubic inches to the gallon)."""
    if units == "us":
        return f"{volume_ml / 29.5735295625:.1f}{_NB}fl{_NB}oz"
    return f"{volume_ml:.0f}{_NB}ml" if volume_ml >= 10 else f"{volume_ml:.1f}{_NB}ml"


def _misses(findings, cup, units, across):
    if findings["off_m"] is None:
        return f"It misses {cup}: none of it comes down to the rim's height."
    by, goes = float(np.hypot(*findings["off_m"])), where(Way(0, *findings["off_m"]), units, across)
    if by < _BESIDE_M:
        return f"It misses {cup}: what would reach it is still under way when the scene ends."
    return f"It misses {cup} by {length(by, units)}; {cup} should have stood {goes}."


def _moved(findings, cup, units, across):
    """How far off the middle of a cup that caught it, or a part of it, it comes down."""
    if float(np.hypot(*findings["off_m"])) < _BESIDE_M:
        return f" The middle of the pour comes down in the middle of {cup}." if findings["caught"] >= ALL else ""
    goes = where(Way(0, *findings["off_m"]), units, across)
    return "" if goes == STRAIGHT_BELOW else f" The middle of the pour comes down {goes} from the middle of {cup}."


def _level(findings, cup, units):
    if findings["level_m"] is None:
        return ""
    tilt, deep = findings["level_tilt_deg"], findings["level_m"]
    stands = f"stands {length(deep, units)} deep" if deep > 0 else "lies to one side of the bottom"
    leans = f", its surface {tilt:.1f}° from {cup}'s own level" if tilt >= _TILTED_DEG else ""
    return f" At rest it {stands}{leans}."


def assumptions(traced, setting):
    """What a pour's answer leaves out, in sentences; a stream that stays whole flies without drag."""
    return _of_liquid(traced, setting) + (
        in_air(traced, setting) if traced.plan.stream.drop_diameter_m is not None else []
    )


def _of_liquid(traced, setting):
    stream, out = traced.plan.stream, []
    if stream.breakup_s is not None:
        out.append(
            "Where a stream breaks is known roughly: two published laws of its length are told, and the one of Grant and Middleman (1966) is "
            "flown. Both are of a jet that does not stretch; a stream that gravity stretches breaks later."
        )
    if stream.regime == "stream" and stream.ohnesorge > _SYRUP_OHNESORGE:
        out.append("So thick a liquid is held back by its own thread; this stream falls freely.")
    if setting.air is not None and _widest_m(stream) > _FLATTENS_M:
        out.append("Drops over 3 mm flatten and fall slower than the spheres flown here.")
    alone = stream.batch is None or len(stream.batch.leaves_s) == 1
    if stream.regime == "drips" and stream.drop_count == 1 and alone:
        out.append("The drop is all that is poured, let go as the pour begins, or as large as it can hang.")
    if traced.motion.jitter and stream.drop_diameter_m is not None:
        out.append(_scatter(traced.motion))
    if traced.motion.target is not None:
        cup = vessel(traced)
        out.append(f"A parcel is caught where its centre passes down through {cup}'s opening; splashes are left out.")
    return out


def _widest_m(stream):
    if stream.batch is not None:
        return float(np.max(stream.batch.diameter_m[stream.batch.drops], initial=0.0))
    return stream.drop_diameter_m or 0.0


def _scatter(motion):
    half = f"{50 * motion.jitter:.3g}"
    return (
        f"Drops scatter by chance of seed {motion.seed}: diameters within ± {half} %, evenly; a velocity more as each breaks off, "
        f"evenly from a ball of {half} % of its speed. Together they are what is poured."
    )
