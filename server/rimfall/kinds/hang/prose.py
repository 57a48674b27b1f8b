"""A thing on a line as prose."""

from ...amounts import number
from ...language import tr, tr_later

_STILL_DEG, _ASKEW_DEG, _PLANE_DEG = 0.5, 1.0, 5.0


def told(traced, telling, thing):
    """Sentences."""
    findings = traced.findings
    swing, what = findings["swing_deg"], {"thing": thing.does}
    if not len(swing):
        return [
            telling.says(tr_later("{thing} has no time to swing."), tr_later("{thing} had no time to swing."), **what)
        ]
    hangs = _hangs(findings, telling, what)
    if findings["slack"]:
        return [
            telling.says(
                tr_later("{hangs} until the line goes slack."),
                tr_later("{hangs} until the line went slack."),
                hangs=hangs,
            )
        ]
    if float(max(swing)) < _STILL_DEG:
        return [_still(findings, telling, hangs)]
    period = findings["period_s"]
    once = None if period is None else telling.time(period)
    if findings["over_the_top"]:
        return [_over_the_top(once if findings["always_over"] else None, telling, what)]
    if once is None:
        swings = telling.says(tr_later("{hangs} and swings."), tr_later("{hangs} and swung."), hangs=hangs)
    else:
        swings = telling.says(
            tr_later("{hangs} and swings, once in {time}."),
            tr_later("{hangs} and swung, once in {time}."),
            hangs=hangs,
            time=once,
        )
    return [swings, *_plane(findings, telling)]


def _hangs(findings, telling, what):
    """That it hangs, or floats, as a sentence begins; with how far from the upright, where that shows."""
    leans = float(findings["plumb_deg"][0])
    floats = findings["floats"] and not findings["slack"]
    if floats:
        hangs = telling.says(
            tr_later("{thing} floats on its line, above the point it is tied to"),
            tr_later("{thing} floated on its line, above the point it is tied to"),
            **what,
        )
    else:
        hangs = telling.says(tr_later("{thing} hangs on its line"), tr_later("{thing} hung on its line"), **what)
    if leans < _ASKEW_DEG:
        return hangs
    return tr("{hangs}, about {number} degrees from the upright,", hangs=hangs, number=number(leans))


def _still(findings, telling, hangs):
    if findings["floats"] or float(findings["plumb_deg"][0]) >= _ASKEW_DEG:
        return telling.says(tr_later("{hangs} and stays there."), tr_later("{hangs} and stayed there."), hangs=hangs)
    return telling.says(
        tr_later("{hangs} straight down and stays there."),
        tr_later("{hangs} straight down and stayed there."),
        hangs=hangs,
    )


def _over_the_top(once, telling, what):
    if once is None:
        return telling.says(
            tr_later("{thing} goes round on its line, over the top."),
            tr_later("{thing} went round on its line, over the top."),
            **what,
        )
    return telling.says(
        tr_later("{thing} goes round on its line, over the top, once in {time}."),
        tr_later("{thing} went round on its line, over the top, once in {time}."),
        time=once,
        **what,
    )


def _plane(findings, telling):
    turns = findings["plane_turns_deg"]
    if turns is None or abs(turns) < _PLANE_DEG:
        return []
    if turns > 0:
        turning = telling.says(
            tr_later("Seen from above, the line of its swing slowly turns anticlockwise."),
            tr_later("Seen from above, the line of its swing slowly turned anticlockwise."),
        )
    else:
        turning = telling.says(
            tr_later("Seen from above, the line of its swing slowly turns clockwise."),
            tr_later("Seen from above, the line of its swing slowly turned clockwise."),
        )
    return [turning]
