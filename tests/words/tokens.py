"""Numbers as sentences have them: value, digits shown, unit, the side behind it, and the words before it that say what it is of."""

import re
from dataclasses import dataclass

FOOT_M, INCH_M, FLUID_OUNCE_ML = 0.3048, 0.0254, 29.5735295625
# unit -> what it measures, and how many of the answer's units it is
UNITS = {
    "m": ("length", 1.0), "cm": ("length", 0.01), "mm": ("length", 0.001), "km": ("length", 1000.0), "ft": ("length", FOOT_M),
    "in": ("length", INCH_M), "m/s": ("speed", 1.0), "ft/s": ("speed", FOOT_M), "s": ("time", 1.0), "°": ("angle", 1.0),
    "g": ("gravity", 1.0), "%": ("percent", 1.0), "N": ("force", 1.0), "ml": ("volume", 1.0), "fl oz": ("volume", FLUID_OUNCE_ML),
    "": ("count", 1.0),
}  # fmt: skip
SIDES = ("back along the axis", "along the axis", "antispinward", "spinward", "outward", "inward")
# what a number is of is told by the last of these before it
CUES = (
    "under plain gravity", "still under way", "still in flight", "comes to rest", "passes the edge", "ends against", "at first", "the last of it",
    "on average", "one leaves", "from where", "off the place", "sweeps by", "should have stood", "middle of the pour", "misses", "reaches",
    "without coriolis", "coriolis", "drag", "the rest", "buoyancy", "lift", "the changing spin",
    "lands", "land", "meets", "grips", "slides", "rises", "bounce", "along the axis it goes",
    "the nearest way", "takes", "leaves the lip", "thins", "breaks", "drips",
)  # fmt: skip
_UNIT = "|".join(sorted((re.escape(u) for u in UNITS if u), key=len, reverse=True))
_NUMBER = re.compile(rf"(?<![\w.])(\d[\d,]*(?:\.\d+)?)(?:[ \u00a0]?({_UNIT})(?![\w/])(?! all))?")
_RANGE = re.compile(rf" to [\d,.]+ ({_UNIT})(?![\w/])")
_SIDE = re.compile(rf"\W?({'|'.join(SIDES)})")
_CUE = re.compile("|".join(re.escape(cue) for cue in CUES))


@dataclass(frozen=True)
class Token:
    """text: as it stands; value: in the answer's units; half: half of its last digit, in the same; measure: of UNITS; side: of SIDES or "";
    cue: of CUES or ""; of_there: it is counted from what was met; before, after: the words about it."""

    text: str
    value: float
    half: float
    measure: str
    side: str
    cue: str
    of_there: bool
    after: str
    before: str

    def shows(self, value):
        """Whether it is a value to the digits shown."""
        if self.before.endswith("less than "):
            return abs(value) < self.value
        return abs(self.value - abs(value)) <= self.half * (1 + 1e-6) + 1e-9 * abs(value) + 1e-12


def tokens(text):
    """The Tokens of a text of words."""
    text = text.replace("\u00a0", " ")
    for found in _NUMBER.finditer(text):
        number, unit = found[1], found[2] or ""
        if not unit and (end := _RANGE.match(text, found.end())):
            unit = end[1]
        measure, per = UNITS[unit]
        decimals = len(number.partition(".")[2])
        before, after = text[: found.start()], text[found.end() :]
        side = _SIDE.match(after)
        clause = re.split(r"[.;:](?:\s|$)", re.sub(r"\([^)]*\)", "", before))[-1]
        cues = _CUE.findall(clause.lower())
        yield Token(
            f"{number} {unit}".strip(),
            float(number.replace(",", "")) * per,
            0.5 * 10.0**-decimals * per,
            measure,
            side[1] if side else "",
            "without coriolis" if "without coriolis" in cues else cues[-1] if cues else "",
            " of there" in re.split(r"[.;]", after)[0],
            after,
            before,
        )
