"""A thing on a line as prose."""

from ...prose import number
from ..telling import capital

_STILL_DEG, _ASKEW_DEG, _PLANE_DEG = 0.5, 1.0, 5.0


def told(traced, telling, thing):
    """Sentences."""
    findings = traced.findings
    swing = findings["swing_deg"]
    if not len(swing):
        return [f"{capital(thing)} {telling.verb('has', 'had')} no time to swing."]
    leans, swings = float(findings["plumb_deg"][0]), float(max(swing)) >= _STILL_DEG
    hangs = f"{capital(thing)} {telling.verb('hangs', 'hung')} on its line"
    askew = f", about {number(leans)} degrees from the upright," if leans >= _ASKEW_DEG else ""
    if findings["slack"]:
        return [f"{hangs}{askew} until the line {telling.verb('goes', 'went')} slack."]
    if findings["floats"]:
        hangs = f"{capital(thing)} {telling.verb('floats', 'floated')} on its line, above the point it is tied to"
    if not swings:
        straight = "" if findings["floats"] else " straight down"
        return [f"{hangs}{askew or straight} and {telling.verb('stays', 'stayed')} there."]
    period = findings["period_s"]
    once = "" if period is None else f", once in {telling.time(period)}"
    if findings["over_the_top"]:
        over = f"{capital(thing)} {telling.verb('goes', 'went')} round on its line, over the top"
        return [f"{over}{once if findings['always_over'] else ''}."]
    return [f"{hangs}{askew} and {telling.verb('swings', 'swung')}{once}.", *_plane(findings, telling)]


def _plane(findings, telling):
    turns = findings["plane_turns_deg"]
    if turns is None or abs(turns) < _PLANE_DEG:
        return []
    way = "anticlockwise" if turns > 0 else "clockwise"
    return [f"Seen from above, the line of its swing slowly {telling.verb('turns', 'turned')} {way}."]
