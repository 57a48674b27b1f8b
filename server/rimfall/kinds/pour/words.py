"""Sentences for pours: how the stream leaves and breaks, whether it reaches the cup, and what is left out."""

from dataclasses import replace

import numpy as np

from ...language import tr, tr_as, tr_later, written
from ...motions.ways import Way
from ...phrases import STRAIGHT_BELOW, length, seconds, speed, where
from ...physics.liquids import DROP_PER_STREAM, breakup_length_weber_m, named
from ..air_words import in_air
from ..words import briefly, landing, plainly, say, since, there, why

_FLATTENS_M = 0.003  # rain drops beyond it flatten and fall slower: Gunn & Kinzer (1949)
_A_BASIN_M = 0.2  # an opening wider than this is called a basin's
ALL, NONE = 0.9995, 0.0005  # shares that are said as all and as nothing
_TILTED_DEG = 0.05
_BESIDE_M = 0.005  # nearer than this the cup stands in the middle of the pour
_SYRUP_OHNESORGE = 1.0  # from here on a thread's own stiffness holds it back: common practice
_NB = "\u00a0"

# of whom a sentence is, as `words.IT`
_STREAM, _FIRST_OF_STREAM = (tr_later("The stream"), 0), (tr_later("The first of the stream"), 0)
_DROPS, _FIRST_DROP = (tr_later("The drops"), 1), (tr_later("The first drop"), 0)
_AT_THE_RIM = (
    tr_later("{who} comes down at the rim of {cup} {where} after {time}"),
    tr_later("{who} come down at the rim of {cup} {where} after {time}"),
)
_ON_THE_TABLE = (
    tr_later("{who} comes down on the table {where} after {time}"),
    tr_later("{who} come down on the table {where} after {time}"),
)


def poured(traced, units):
    """What a pour does; with a cup there the question is whether it is reached."""
    said = (
        _reaching(traced, units),
        _leaving(traced, units),
        _lands(traced, units),
        why(_as_landed(traced), units, tr_as("a stream would land", "it")),
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
            return tr("lands {first} at first and {last} at the end", first=first, last=last)
        return tr("clings to the lip") if clings else briefly(traced, units)
    cup = vessel(traced)
    if findings["caught"] > NONE:
        return tr("reaches {cup}: {share}", cup=cup, share=_share(findings, units))
    if findings["off_m"] is None or float(np.hypot(*findings["off_m"])) < _BESIDE_M:
        return tr("misses {cup}", cup=cup)
    return tr("misses {cup} by {length}", cup=cup, length=length(float(np.hypot(*findings["off_m"])), units))


def _is_basin(traced):
    """What it is poured into is called by its width."""
    return traced.motion.target.diameter_m > _A_BASIN_M


def vessel(traced):
    """What it is poured into, as what is reached: "the cup", "the basin"."""
    return tr_as("reaches", "the basin") if _is_basin(traced) else tr_as("reaches", "the cup")


def _of_vessel(traced):
    """The same as what something is a part of."""
    return tr_as("of", "the basin") if _is_basin(traced) else tr_as("of", "the cup")


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
    who = _STREAM if stream.drop_diameter_m is None else _DROPS if many else _FIRST_DROP
    if down is not None:
        last = traced.track.events[-1]
        where_to = there(traced, last, units, stressed=True, none=STRAIGHT_BELOW)
        places = {"where": where_to, "time": since(traced, last)}
        forms = _AT_THE_RIM if down["on"] == "target" else _ON_THE_TABLE
        return f"{say(forms, who, cup=_of_vessel(traced), **places)}{plainly(traced, units)}."
    if stream.drop_diameter_m is not None:
        return landing(traced, units, who)
    if traced.findings["lands_m"] is not None and _moves(traced.findings["lands_m"]):
        return landing(traced, units, _FIRST_OF_STREAM)
    if traced.track.landing is None and end not in ("met a surface", "edge", "duration") and stream.regime == "drips":
        return tr("With no weight to pull it off, the liquid clings to the lip.")
    return landing(traced, units, _STREAM)


def _later(traced, units):
    """Where the rest of a pour lands that does not land where its first parcel does."""
    lands = traced.findings["lands_m"]
    if lands is None or traced.motion.target is not None or not _moves(lands):
        return ""
    last, middle = (where(Way(0, *lands[name]), units, traced.across) for name in ("last", "middle"))
    return tr("The last of it lands {last}, and on average it lands {middle}.", last=last, middle=middle)


def _moves(lands):
    """Whether a pour does not land in one place."""
    return max(np.ptp([lands["first"], lands["last"], lands["middle"]], axis=0)) >= _BESIDE_M


def _leaving(traced, units):
    """How it leaves the lip, thins and breaks, or drips; "" where it clings there."""
    stream = traced.plan.stream
    if stream.regime == "drips":
        return _drips(stream, units)
    thin = float(np.min(_thread(traced))) if len(traced.track.samples.time_s) else stream.lip_m
    places = {
        "speed": speed(stream.speed_m_s, units),
        "lip": length(stream.lip_m, units),
        "thin": length(thin, units),
    }
    if stream.breakup_s is None:
        return tr("It leaves the lip at {speed} and thins from {lip} to {thin}, whole to the end.", **places)
    leaves = tr("It leaves the lip at {speed} and thins from {lip} to {thin}", **places)
    return f"{leaves}; {_breaks(traced, units)}."


def _breaks(traced, units):
    """How far on a stream breaks, by the two published laws ("between 1.24 m and 2.01 m"), and into what."""
    stream, liquid = traced.plan.stream, named(traced.motion.liquid)
    other_m = breakup_length_weber_m(liquid, stream.speed_m_s, stream.lip_m)
    least, most = (length(m, units) for m in sorted((other_m, stream.breakup_m)))
    far = tr("between {least} and {most}", least=least, most=most) if least != most else least
    if stream.batch is None:
        size, rate = length(stream.drop_diameter_m, units), written(1 / stream.drop_interval_s, ".0f")
        return tr("{length} on it breaks into drops of {size}, {count} a second", length=far, size=size, count=rate)
    _, streamed, last = stream.batch.fates()
    breaks = tr("{length} on it breaks into {drops}", length=far, drops=_into(stream.batch, units, streamed))
    return f"{breaks}{_at_last(stream.batch, units, streamed, last)}"


def _drips(stream, units):
    if stream.drop_diameter_m is None:
        return ""
    if stream.batch is not None:
        return _drips_first(stream.batch, units)
    size = length(stream.drop_diameter_m, units)
    if stream.drop_count == 1:
        return tr("Too slow for a stream, it drips: one drop of {size}.", size=size)
    every = seconds(stream.drop_interval_s)
    return tr("Too slow for a stream, it drips: drops of {size}, one every {time}.", size=size, time=every)


def _drips_first(batch, units):
    """A pour that is too slow for a stream as it begins: what drips, and what comes of a stream that there is later."""
    first, streamed, last = batch.fates()
    drops = _sizes(batch, units, first)
    if not len(streamed):
        return tr("Too slow for a stream, it drips: {drops}.", drops=drops)
    drips = tr("Too slow for a stream at first, it drips: {drops}.", drops=drops)
    follows = tr("The stream that follows breaks into {drops}", drops=_into(batch, units, streamed))
    return f"{drips} {follows}{_at_last(batch, units, streamed, last)}."


def _at_last(batch, units, streamed, last):
    """What drips once there has been a stream: as the flow ends, or between streams too."""
    if not len(last):
        return ""
    drops = _sizes(batch, units, last)
    if np.max(batch.leaves_s[streamed]) < np.min(batch.leaves_s[last]):
        return tr("; as the flow ends it drips: {drops}", drops=drops)
    return tr("; whenever it is too slow again it drips: {drops}", drops=drops)


def _span(batch, units, which):
    """How many drops are meant, and how large they are in words: "6.1 mm", "6.1 mm to 8.4 mm"; which: their numbers."""
    sizes = batch.diameter_m[which]
    least, most = length(float(np.min(sizes)), units), length(float(np.max(sizes)), units)
    return len(sizes), least if least == most else tr("{least} to {most}", least=least, most=most)


def _sizes(batch, units, which):
    """Drops in words: "4 drops of 6.1 mm to 8.4 mm"; which: the numbers of those that are meant."""
    if not len(batch.diameter_m[which]):
        return tr("no drops in the time there is")
    count, size = _span(batch, units, which)
    return tr("one drop of {size}", size=size) if count == 1 else _many(count, size)


def _into(batch, units, which):
    """The same as what a stream breaks into."""
    if not len(batch.diameter_m[which]):
        return tr_as("breaks into", "no drops in the time there is")
    count, size = _span(batch, units, which)
    return tr_as("breaks into", "one drop of {size}", size=size) if count == 1 else _many(count, size)


def _many(count, size):
    return tr("{count} drops of {size}", count=written(count, ","), size=size)


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
    if findings["caught"] <= NONE:
        return _misses(traced, units)
    reaches = tr(
        "{liquid} reaches {cup}: {share}", liquid=_the_liquid(traced), cup=vessel(traced), share=_share(findings, units)
    )
    return " ".join(
        one for one in (f"{reaches}.", _overflows(traced, units), _moved(traced, units), _level(traced, units)) if one
    )


def _the_liquid(traced):
    """What is poured, as a sentence begins with it."""
    return {
        "water": tr_as("reaches", "The water"),
        "tea": tr_as("reaches", "The tea"),
        "coffee": tr_as("reaches", "The coffee"),
        "olive oil": tr_as("reaches", "The olive oil"),
        "honey": tr_as("reaches", "The honey"),
    }[traced.motion.liquid]


def _share(findings, units):
    """ "94 % of it, 56 ml; 4 ml are spilled", or "all of it, 60 ml"."""
    caught = _volume(findings["caught_ml"], units)
    if findings["caught"] >= ALL:
        return tr("all of it, {volume}", volume=caught)
    return tr(
        "{percent}\u00a0% of it, {volume}; {spilled} are spilled",
        percent=written(100 * findings["caught"], ".0f"),
        volume=caught,
        spilled=_volume(findings["spilled_ml"], units),
    )


def _volume(volume_ml, units):
    """A volume in words; a US fluid ounce is 29.5735295625 ml exactly (231 cubic inches to the gallon)."""
    if units == "us":
        return f"{written(volume_ml / 29.5735295625, '.1f')}{_NB}fl{_NB}oz"
    return f"{written(volume_ml, '.0f' if volume_ml >= 10 else '.1f')}{_NB}ml"


def _overflows(traced, units):
    if not traced.findings["overflows_ml"] > 0:
        return ""
    over = _volume(traced.findings["overflows_ml"], units)
    if _is_basin(traced):
        return tr("The basin is full; {volume} runs over its rim.", volume=over)
    return tr("The cup is full; {volume} runs over its rim.", volume=over)


def _misses(traced, units):
    off_m, cup = traced.findings["off_m"], vessel(traced)
    if off_m is None:
        return tr("It misses {cup}: none of it comes down to the rim's height.", cup=cup)
    by = float(np.hypot(*off_m))
    if by < _BESIDE_M:
        return tr("It misses {cup}: what would reach it is still under way when the scene ends.", cup=cup)
    places = {"length": length(by, units), "where": where(Way(0, *off_m), units, traced.across)}
    if _is_basin(traced):
        return tr("It misses the basin by {length}; the basin should have stood {where}.", **places)
    return tr("It misses the cup by {length}; the cup should have stood {where}.", **places)


def _moved(traced, units):
    """How far off the middle of a cup that caught it, or a part of it, it comes down."""
    findings, cup = traced.findings, _of_vessel(traced)
    if float(np.hypot(*findings["off_m"])) < _BESIDE_M:
        if findings["caught"] < ALL:
            return ""
        return tr("The middle of the pour comes down in the middle of {cup}.", cup=cup)
    goes = where(Way(0, *findings["off_m"]), units, traced.across, none="")
    return goes and tr("The middle of the pour comes down {where} from the middle of {cup}.", where=goes, cup=cup)


def _level(traced, units):
    findings = traced.findings
    if findings["level_m"] is None:
        return ""
    tilt, deep = findings["level_tilt_deg"], findings["level_m"]
    stands = (
        tr("stands {length} deep", length=length(deep, units)) if deep > 0 else tr("lies to one side of the bottom")
    )
    if tilt < _TILTED_DEG:
        return tr("At rest it {stands}.", stands=stands)
    angle, cup = written(tilt, ".1f"), _of_vessel(traced)
    return tr("At rest it {stands}, its surface {angle}° from {cup}'s own level.", stands=stands, angle=angle, cup=cup)


def assumptions(traced, setting):
    """What a pour's answer leaves out, in sentences; a stream that stays whole flies without drag."""
    return _of_liquid(traced, setting) + (
        in_air(traced, setting) if traced.plan.stream.drop_diameter_m is not None else []
    )


def _of_liquid(traced, setting):
    stream, out = traced.plan.stream, []
    if stream.breakup_s is not None:
        out.append(
            tr(
                "Where a stream breaks is known roughly: two published laws of its length are told, and the one of Grant and Middleman (1966) "
                "is flown. Both are of a jet that does not stretch; a stream that gravity stretches breaks later."
            )
        )
    if stream.regime == "stream" and stream.ohnesorge > _SYRUP_OHNESORGE:
        out.append(tr("So thick a liquid is held back by its own thread; this stream falls freely."))
    if setting.air is not None and _widest_m(stream) > _FLATTENS_M:
        out.append(tr("Drops over 3 mm flatten and fall slower than the spheres flown here."))
    alone = stream.batch is None or len(stream.batch.leaves_s) == 1
    if stream.regime == "drips" and stream.drop_count == 1 and alone:
        out.append(tr("The drop is all that is poured, let go as the pour begins, or as large as it can hang."))
    if traced.motion.jitter and stream.drop_diameter_m is not None:
        out.append(_scatter(traced.motion))
    if traced.motion.target is not None:
        cup = _of_vessel(traced)
        out.append(
            tr(
                "A parcel is caught where its centre passes down through {cup}'s opening; splashes are left out.",
                cup=cup,
            )
        )
    return out


def _widest_m(stream):
    if stream.batch is not None:
        return float(np.max(stream.batch.diameter_m[stream.batch.drops], initial=0.0))
    return stream.drop_diameter_m or 0.0


def _scatter(motion):
    return tr(
        "Drops scatter by chance of seed {seed}: diameters within ± {half} %, evenly; a velocity more as each breaks off, evenly from a "
        "ball of {half} % of its speed. Together they are what is poured.",
        seed=motion.seed,
        half=written(50 * motion.jitter, ".3g"),
    )
