"""Sentences for people that jump, walk, ride, let go, and for a craft that comes in; and what these answers leave out."""

from ..phrases import drift, length, listed, seconds, speed
from ..physics.constants import G0_M_S2
from .drift_words import why
from .ground_words import the

_LEAST_PUSH = 1e-6  # of the greatest one
_FELT = 0.005  # a share, or a tilt in degrees over ten, that is none worth a word


def jumped(traced, units):
    """Where a jump comes down."""
    found, made = traced.findings, traced.track
    if made.landing is None:
        return [f"Nothing brings the jumper back: {_still(traced, units)}."]
    after = made.landing.time_s - traced.plan.start_s
    if after == 0:
        return ["The jumper does not leave the ground."]
    along, axial = (b - a for a, b in zip(found["left_m"], found["lands_m"], strict=True))
    where = drift(along, axial, units, traced.across)
    where = "where the jump began" if where == "straight below" else where
    rise = made.apex.height_m - traced.plan.place[1] if made.apex is not None else 0.0
    plain = _plain_jump(traced, units)
    lands = f"The jumper rises {length(rise, units)} and lands {where} after {seconds(after)}{plain}."
    return [s for s in (lands, why(traced, units)) if s]


def _plain_jump(traced, units):
    if traced.flat_gravity is None or traced.flat_gravity.landing is None:
        return ""
    landing = traced.flat_gravity.landing
    where = drift(landing["drift_m"], landing["axial_m"] - traced.plan.place[2], units, traced.across)
    where = "where it began" if where == "straight below" else where
    return f"; under plain gravity, {where} after {seconds(landing['time_s'] - traced.plan.start_s)}"


def _still(traced, units):
    last = traced.track.events[-1]
    after = seconds(traced.track.ends_s - traced.plan.start_s)
    if traced.track.end == "met a surface":
        return f"the jump ends at {the(traced, last.surface)} after {after}"
    if traced.track.end == "edge":
        return f"the jump passes the edge after {after}"
    return f"after {after} the jumper is {length(last.height_m, units)} up"


def walked(traced, units):
    """What walking does to weight."""
    found = traced.findings
    if not len(found["feet_g"]):
        return ["The scene ends before the first step."]
    standing, feet = found["standing_g"], found["feet_g"]
    first, last = float(feet[0]), float(feet[-1])
    goes = f"{seconds(traced.track.ends_s - traced.plan.start_s)} at {speed(traced.motion.speed_m_s, units)}"
    if standing == 0:
        return [f"There is no weight to walk with: {goes} take a handrail."]
    more = first / standing - 1
    change = (
        "as standing"
        if abs(more) < _FELT
        else f"{abs(100 * more):.0f} % {'more' if more > 0 else 'less'} than standing"
    )
    out = [
        f"On the way, {goes}, the feet feel {first:.2f} g, {change}{_later(first, last)}; the head feels {float(found['head_g'][0]):.2f} g."
    ]
    return [*out, *_leaning(found), *_ending(traced, units), *_floating(traced, units)]


def _later(first, last):
    return "" if abs(last - first) < _FELT else f", and {last:.2f} g at the end"


def _leaning(found):
    lean = float(max(found["lean_deg"]))
    return [f"Down leans by up to {lean:.0f}°."] if lean >= 1 else []


def _ending(traced, units):
    made = traced.track
    if made.end == "met a surface":
        return [f"The way ends at {the(traced, made.events[-1].surface)}."]
    return ["The way ends at the edge."] if made.end == "edge" else []


def _floating(traced, units):
    floats = traced.findings["floats_at_m_s"]
    return [] if floats is None else [f"At {speed(floats, units)} antispinward the feet would leave the ground."]


def rode(traced, units):
    """What a ride in a lift does sideways."""
    found = traced.findings
    most, tilt = found["most_sideways_m_s2"], found["most_tilt_deg"]
    out = [f"The ride takes {seconds(found['takes_s'])}{_cut(traced, found)}."]
    if most / G0_M_S2 < _FELT and tilt < 1:
        return [*out, "Nothing worth a word pushes sideways."]
    return [
        *out,
        f"The rider is pushed {_way(found)} by up to {most / G0_M_S2:.2f} g, and down leans by up to {tilt:.0f}°.",
    ]


def _way(found):
    """The way of a push that keeps to one way."""
    least = _LEAST_PUSH * found["most_sideways_m_s2"]  # one that begins from rest begins with rounding errors
    pushes = [v for v in found["sideways_m_s2"] if abs(v) > least]
    if not pushes or min(pushes) < 0 < max(pushes):
        return "sideways"
    return "spinward" if pushes[0] > 0 else "antispinward"


def _cut(traced, found):
    lasts = traced.track.ends_s - traced.plan.start_s
    return "" if traced.track.end == "arrived" else f", of which {seconds(lasts)} are shown"


def let_go(traced, units):
    """How far one gets that lets go outside."""
    found, made = traced.findings, traced.track
    after = seconds(made.ends_s - traced.plan.start_s)
    if made.end == "met a surface":
        return [f"Pushed that way, one meets the hull after {after}."]
    if not len(found["distance_m"]) or found["leaves_m_s"] == 0:
        return ["Nothing moves: one stays beside the hull."]
    far, line = (float(found[name][-1]) for name in ("distance_m", "line_m"))
    longer = f", and a line to there, laid round the hull, {length(line, units)} long" if line > 1.001 * far else ""
    out = [
        f"One leaves straight at {speed(found['leaves_m_s'], units)}; after {after} the place let go of is {length(far, units)} off{longer}."
    ]
    return [*out, *_sweeps(traced, found, units)]


def _sweeps(traced, found, units):
    if not found["sweeps_by"]:
        return []
    first = found["sweeps_by"][0]
    return [
        f"That place sweeps by again after {seconds(first['time_s'] - traced.plan.start_s)}, {length(first['distance_m'], units)} away."
    ]


def approached(traced, units):
    """What a craft sees, and must lose, that comes in."""
    found, made = traced.findings, traced.track
    takes = traced.motion.from_m / traced.motion.speed_m_s
    comes = "reaches the dock" if made.end == "arrived" else "would reach the dock"
    out = [f"The craft {comes} after {seconds(takes)}; seen from aboard it goes round {found['turns_seen']:.1f} times."]
    along, up, axial = found["to_cancel_m_s"]
    size = found["to_cancel_size_m_s"]
    parts = [
        (along, "spinward", "antispinward"),
        (up, "up", "outward"),
        (axial, "along the axis", "back along the axis"),
    ]
    said = [f"{speed(abs(v), units)} {a if v > 0 else b}" for v, a, b in parts if abs(v) >= 0.05]
    return [
        *out,
        f"At contact {speed(size, units)} are to be cancelled{': it still moves ' + listed(said) if len(said) > 1 else ''}.",
    ]


def assumptions(traced, trace):
    """What an answer of one of these kinds leaves out, in sentences; none of other kinds."""
    out = list(ASSUMED.get(traced.motion.kind, ()))
    if traced.motion.kind == "jump" and trace.setting.air is not None and not trace.setting.habitat.spin.steady:
        out.append("The air follows the changing spin at once; real air lags behind.")
    return out


_AS_A_BALL = "What a person meets is met by a ball round the centre that reaches from the feet to the head."
ASSUMED = {
    "jump": [
        "The jumper is a point with a mass and one drag at every speed, and does not turn or bend the knees.",
        _AS_A_BALL,
    ],
    "walk": ["The body goes evenly; the ups and downs of steps are left out.", _AS_A_BALL],
    "lift": ["The rider stands still in the cabin; the air of the shaft goes with it."],
    "let_go": [
        "There is no air outside; nothing but a round hull is looked for in the way, and a line is taken to be without mass."
    ],
    "approach": ["The craft coasts; the path is that of its docking port, and nothing is looked for in its way."],
}
