"""What numbers in the words may be, recomputed from an answer's arrays and places: geometry by hand, nothing of the program's own."""

import math
from dataclasses import dataclass

import numpy as np

from rimfall.physics.bodies import named

TOUCH, LEAST_M_S = 2e-6, 1e-6  # m and share of the radius; more than rounding


@dataclass(frozen=True)
class Figure:
    """measure as in tokens.UNITS; side: which way it is, "" where it has none; cues: what it is of, None for anything."""

    measure: str
    value: float
    side: str = ""
    cues: tuple | None = None


class Ground:
    """The ground of a scene's habitat, by its document; half_m: of the body that is measured; floor: the number of a flat floor."""

    def __init__(self, part, half_m, floor=0):
        self.shape, self.radius, self.half_m = part["shape"], part["radius_m"], half_m
        self.section = {"sphere": self.radius, "torus": part.get("tube_radius_m")}.get(self.shape)
        self.drums = [self.radius] if self.shape == "cylinder" else []
        self.drums += [self.radius - part["ceiling_m"]] if self.shape == "cylinder" and part.get("ceiling_m") else []
        self.drums += [part["hub_radius_m"]] if part.get("hub_radius_m") else []
        self.round = self.shape in ("cylinder", "sphere", "torus")
        self.across = ("outward", "inward") if self.shape == "turntable" else ("along the axis", "back along the axis")

    def way(self, start, end):
        """(spinward in all, across, once round or None) from a place to another, dicts as the answer has them."""
        if self.shape == "turntable":
            turned = (end["along_m"] - start["along_m"]) / self.radius
            return end["axial_m"] * math.sin(turned), end["axial_m"] * math.cos(turned) - start["axial_m"], None
        if not self.round:
            return end["along_m"] - start["along_m"], end["axial_m"] - start["axial_m"], None
        rho, z = self.radius - end["height_m"], end["axial_m"]
        spot, across = self._spot(abs(rho), z, start["axial_m"])
        return spot * (end["along_m"] - start["along_m"]) / self.radius, across, 2 * math.pi * spot

    def _spot(self, rho, z, from_z):
        """Where a thing at (rho, z) touches, if it does: how far from the axis, and how far along the ground from over from_z."""
        slack = TOUCH * (1 + self.radius)
        if self.section is None:
            near = [r for r in self.drums if min(abs(rho + self.half_m - r), abs(rho - self.half_m - r)) < slack]
            return (near[0] if near else rho), z - from_z
        middle = self.radius - self.section
        off = math.hypot(rho - middle, z)
        if abs(off + self.half_m - self.section) > slack:
            near = [r for r in self.drums if abs(rho - self.half_m - r) < slack]
            return (near[0] if near else rho), z - from_z
        spot = middle + (rho - middle) * self.section / off
        if rho < middle:
            return spot, z - from_z
        under = math.asin(max(-1.0, min(1.0, from_z / (self.section - self.half_m))))
        return spot, self.section * (math.atan2(z, rho - middle) - under)

    def leaves(self, event):
        """Whether a contact leaves what it met: its velocity just after, against the surface's normal there."""
        _, up, axial = event["velocity_after_m_s"]
        if event["kind"] in ("ceiling", "hub"):
            return -up > LEAST_M_S
        if event["kind"] == "wall":
            return -math.copysign(1.0, event["axial_m"]) * axial > LEAST_M_S
        if self.section is None:
            return up > LEAST_M_S
        out, z = self.radius - event["height_m"] - (self.radius - self.section), event["axial_m"]
        return (out * up - z * axial) / math.hypot(out, z) > LEAST_M_S


def way_figures(ground, start, end, cues, flat=False):
    """Figures of the way from a place to another: what is left of it beyond whole turns, how often round, the nearest way, across."""
    if flat:
        along, across, once = end["along_m"] - start["along_m"], end["axial_m"] - start["axial_m"], None
    else:
        along, across, once = ground.way(start, end)
    return [*_about(along, once, cues), Figure("length", across, ground.across[across < 0], cues)]


def _about(along, once, cues):
    side, other = ("spinward", "antispinward")[along < 0], ("antispinward", "spinward")[along < 0]
    if not once:
        return [Figure("length", along, side, cues)]
    turns, left = divmod(abs(along), once)
    if once - left < 0.005:
        turns, left = turns + 1, 0.0
    out = [Figure("length", left, side, cues), Figure("count", turns, "", cues)]
    return [*out, Figure("length", once - left, other, ("the nearest way",))] if left > once / 2 else out


def figures_of(scene, motion, number):
    """All Figures that the words of a motion of a JSON answer may tell."""
    given = scene["motions"][number]
    if motion["last"] is None:
        return []
    start = motion["events"][0]
    ground = Ground(scene["habitat"], half_m(given, motion), given["place"].get("floor", 0))
    out = [Figure("time", motion["last"]["time_s"] - given["start_s"])]
    out += [Figure("speed", motion["last"]["speed_m_s"], "", ("still under way",))]
    out += way_figures(ground, start, motion["last"], ("still under way", "still in flight", "comes to rest", "bounce"))
    out += _of_events(ground, motion, start, given["start_s"])
    out += _of_landing(ground, motion, start, given["start_s"])
    return out + OF_KIND.get(motion["kind"], lambda *_: [])(ground, given, motion)


def _of_events(ground, motion, start, start_s):
    cues = {"grip": "grips", "slip": "slides", "rest": "comes to rest", "edge": "passes the edge"}
    met = next((e for e in motion["events"] if e["surface"] is not None), None)
    left = sum(
        ground.leaves(e)
        for e in motion["events"]
        if e.get("velocity_after_m_s") and e["kind"] not in ("ramp", "table", "hull")
    )
    yield Figure("count", left, "", ("bounce",))
    for event in motion["events"]:
        mine = (cues[event["kind"]],) if event["kind"] in cues else ("meets", "ends against", "lands", "rises")
        yield Figure("time", event["time_s"] - start_s, "", (*mine, "bounce", "", "passes the edge"))
        yield from way_figures(ground, start, event, mine)
        if event["kind"] == "rest" and met is not None:
            yield from way_figures(ground, met, event, ("of there",))


def _of_landing(ground, motion, start, start_s):
    plain = motion["companion"]
    for end in (plain["landing"], plain["last"]):
        if end is not None:
            yield Figure("time", end["time_s"] - start_s, "", ("under plain gravity",))
            yield from way_figures(ground, start, end, ("under plain gravity",), flat=True)
    landing = motion["landing"]
    if landing is None:
        return
    yield Figure("time", landing["time_s"] - start_s, "", ("lands", "land"))
    parts = landing["drift_parts_m"]
    at = next(e for e in motion["events"] if e["time_s"] == landing["time_s"] and e["kind"] in ("deck", "floor"))
    yield from way_figures(ground, start, at, ("lands", "land"))
    if parts:
        along, _, _ = ground.way(start, at)
        assert sum(parts[c] for c in parts["order"]) == _near(along)
        for name, cue in (
            ("centrifugal", "without coriolis"),
            ("coriolis", "coriolis"),
            ("drag", "drag"),
            ("other", "the rest"),
            ("other", "buoyancy"),
            ("other", "lift"),
            ("other", "the changing spin"),
        ):
            yield Figure("length", parts[name], ("spinward", "antispinward")[parts[name] < 0], (cue,))


class _near(float):
    def __eq__(self, other):
        return abs(self - other) <= 1e-6 * (1 + abs(self))

    __hash__ = float.__hash__


def half_m(given, motion):
    """Half the width of the body that a motion moves, by its document."""
    if "centre_m" in given:
        return given["centre_m"]
    if motion["kind"] == "pour":
        return (motion["stream"]["drop_diameter_m"] or 0.0) / 2
    body = given.get("body")
    if body is None:
        return 0.25  # who lets go outside, and craft: nothing is near them
    return body["diameter_m"] / 2 if isinstance(body, dict) else named(body).diameter_m / 2


def _jump(_ground, _given, motion):
    top = motion["apex"]["height_m"] - motion["events"][0]["height_m"]
    return [
        Figure("length", top, "", ("rises",)),
        *(Figure("length", e["height_m"], "", None) for e in motion["events"][-1:]),
    ]


def _rises(_ground, _given, motion):
    return [Figure("length", motion["last"]["height_m"] - motion["events"][0]["height_m"], "", ("rises",))]


def _roll(ground, _given, motion):
    start = motion["events"][0]
    names = ("along_m", "height_m", "axial_m")
    across = [
        abs(ground.way(start, dict(zip(names, place, strict=True)))[1])
        for place in zip(*(motion[name] for name in names), strict=True)
    ]
    return [
        *_rises(ground, _given, motion),
        Figure("length", max(across, default=0.0), "", ("along the axis it goes",)),
    ]


def _let_go(_ground, _given, motion):
    findings = motion["findings"]
    if not motion["count"]:
        return []
    places = np.array(motion["rotating_m"])
    moved = np.array(motion["inertial_m"])
    off = float(np.linalg.norm(places[-1] - np.array(motion["events"][0]["rotating_m"])))
    assert findings["distance_m"][-1] == _near(off)
    out = [Figure("length", off), Figure("length", findings["line_m"][-1]), Figure("speed", findings["leaves_m_s"])]
    assert len(moved) == motion["count"]
    for sweep in findings["sweeps_by"]:
        out += [Figure("length", sweep["distance_m"]), Figure("time", sweep["time_s"] - motion["events"][0]["time_s"])]
    return out


def _approach(_ground, given, motion):
    findings = motion["findings"]
    along, up, axial = findings["to_cancel_m_s"]
    assert findings["to_cancel_size_m_s"] == _near(math.hypot(along, up, axial))
    sided = [
        (along, ("spinward", "antispinward")[along < 0]),
        (up, "" if up > 0 else "outward"),
        (axial, ("along the axis", "back along the axis")[axial < 0]),
    ]
    out = [Figure("time", given["from_m"] / given["speed_m_s"]), Figure("count", findings["turns_seen"])]
    begins_m = findings["starts_axial_m"]
    out += [Figure("length", m) for m in (given["from_m"], findings["starts_off_m"])]
    out.append(Figure("length", begins_m, ("along the axis", "back along the axis")[begins_m < 0]))
    return out + [Figure("speed", v, side) for v, side in sided] + [Figure("speed", findings["to_cancel_size_m_s"])]


def _findings(measures):
    def of(_ground, given, motion):
        out = [Figure("time", given.get("for_s", 0.0)), Figure("speed", given.get("speed_m_s", 0.0))]
        for name, measure in measures.items():
            values = motion["findings"].get(name)
            for value in values if isinstance(values, list) else [values]:
                if isinstance(value, int | float):
                    out.append(Figure(measure, value))
        return out

    return of


def _walk(ground, given, motion):
    findings = motion["findings"]
    base = _findings({"feet_g": "gravity", "head_g": "gravity", "lean_deg": "angle", "standing_g": "gravity"})
    out = base(ground, given, motion)
    if findings["floats_at_m_s"] is not None:
        out.append(Figure("speed", findings["floats_at_m_s"], "antispinward"))
    if findings["standing_g"]:
        out += [Figure("percent", 100 * (g / findings["standing_g"] - 1)) for g in findings["feet_g"][:1]]
    if motion["count"]:
        felt = np.array(motion["centrifugal_m_s2"][0]) + np.array(motion["coriolis_m_s2"][0])
        assert felt.shape == (3,)
    return out


def _lift(ground, given, motion):
    measures = {"takes_s": "time", "apparent_g": "gravity", "tilt_deg": "angle", "most_tilt_deg": "angle"}
    out = _findings(measures)(ground, given, motion)
    if motion["findings"]["leaves_s"] is not None:
        out.append(Figure("time", motion["findings"]["leaves_s"] - given["start_s"]))
    most = motion["findings"]["most_sideways_m_s2"] / 9.80665
    sides = {("spinward", "antispinward")[v < 0] for v in motion["findings"]["sideways_m_s2"] if abs(v) > 1e-9}
    return [*out, Figure("gravity", most), *(Figure("gravity", most, side) for side in sides)]


def _pour(ground, given, motion):
    stream, findings = motion["stream"], motion["findings"]
    out = [Figure("speed", stream["speed_m_s"]), Figure("length", given["lip_diameter_mm"] / 1000)]
    breakup = stream["breakup"]
    if breakup:
        weber_m = 12.0 * math.sqrt(stream["weber"]) * (1 + 3 * stream["ohnesorge"]) * given["lip_diameter_mm"] / 1000
        out += [Figure("length", m, "", ("", "thins", "breaks")) for m in (breakup["length_m"], weber_m)]
    until = breakup["time_s"] if breakup else math.inf
    rate = motion["_grid"]
    whole = [d for k, d in enumerate(stream["diameter_m"]) if (motion["first"] + k) / rate < until]
    if stream["drop_diameter_m"]:
        out += [Figure("length", stream["drop_diameter_m"]), Figure("time", stream["drop_interval_s"])]
        out += [Figure("count", 1 / stream["drop_interval_s"])]
        whole.append(stream["drop_diameter_m"] / 1.89)  # of the stream it broke from: Rayleigh (1879)
    out += [Figure("length", min([*whole, given["lip_diameter_mm"] / 1000]))]
    if findings["drops"]:
        out += _drops(findings["drops"])
    for name, cues in (
        ("first", ("lands",)),
        ("last", ("the last of it", "at first", "lands")),
        ("middle", ("on average", "lands")),
    ):
        if findings["lands_m"]:
            out += _pair(ground, findings["lands_m"][name], cues)
    if findings["off_m"]:
        out += [Figure("length", math.hypot(*findings["off_m"]), "", ("misses",))]
        out += _pair(ground, findings["off_m"], ("should have stood", "middle of the pour", "misses"))
    for name in ("caught_ml", "spilled_ml", "overflows_ml"):
        if findings[name] is not None:
            out.append(Figure("volume", findings[name]))
    if findings["caught"] is not None:
        out.append(Figure("percent", 100 * findings["caught"]))
    if findings["level_m"] is not None:
        out += [Figure("length", findings["level_m"]), Figure("angle", findings["level_tilt_deg"])]
    return out


def _drops(drops):
    """Counts and sizes of the drops that dripped before there was a stream, came of one, and dripped later: one that drips is born where
    it leaves the lip."""
    leaves_s, born_s, sizes = (np.array(drops[name]) for name in ("leaves_s", "born_s", "diameter_m"))
    dripped = born_s <= leaves_s
    early = leaves_s < np.min(leaves_s[~dripped], initial=np.inf)
    assert dripped.tolist() == [flag == 1 for flag in drops["dripped"]]
    out = []
    for name, cues, which in (
        ("dripped_first", ("drips", ""), dripped & early),
        ("of_stream", ("breaks",), ~dripped),
        ("dripped_later", ("drips",), dripped & ~early),
    ):
        assert drops[name] == np.sum(which)
        out.append(Figure("count", drops[name], "", cues))
        out += [Figure("length", f(sizes[which]), "", cues) for f in (np.min, np.max) if np.any(which)]
    return out


def _pair(ground, pair, cues):
    along, across = pair
    return [
        Figure("length", along, ("spinward", "antispinward")[along < 0], cues),
        Figure("length", across, ground.across[across < 0], cues),
    ]


def _hang(ground, given, motion):
    measures = {
        "swing_deg": "angle",
        "plumb_deg": "angle",
        "tension_n": "force",
        "period_s": "time",
        "plane_turns_deg": "angle",
    }
    out = _findings(measures)(ground, given, motion)
    return [*out, *way_figures(ground, given["place"], motion["events"][0], ("",))]


OF_KIND = {
    "jump": _jump, "let_go": _let_go, "approach": _approach, "walk": _walk, "lift": _lift, "pour": _pour, "drop": _rises, "throw": _rises,
    "roll": _roll, "stand": _rises,
    "hang": _hang,
}  # fmt: skip
