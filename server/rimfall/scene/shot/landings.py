"""Where can a throw come down: what is asked, what becomes of every throw, and what comes back as one JSON document."""

from collections.abc import Callable
from dataclasses import dataclass
from typing import Any

import numpy as np

from ... import __version__
from ...errors import BadInput, TooMuch, refusal
from ...kinds import KINDS
from ...kinds.air_words import of_air
from ...language import tr, tr_later, written
from ...motions.plan import Plan
from ...motions.setting import Setting
from ...phrases import caution
from ...shots import net
from ...shots.landings import ENDINGS, FIGURES, GREATEST_THROWS, Landings, Varied, landings_of
from ..catalogue import FIELDS
from ..document import setting_of
from ..json_arrays import as_f4, as_lists, finite, with_arrays
from ..validation_errors import wrong, wrong_of
from . import landings_words as words
from .thrown import thrower_of, thrown_in, told_of_throws

ANSWER_VERSION = 1
_OF_EACH = ("time_s", "turns", "spinward_m", "across_m", "speed_m_s", "incidence_deg")
_ASKS_LESS = tr_later("Ask for fewer throws (over), or let the scene end sooner (sampling.duration_s).")


@dataclass(frozen=True)
class Found:
    """A LandingsRequest, the throw it is about and its plan, and what becomes of all throws. net: the lines that are drawn; up: the figure
    that goes up on their drawing, None where that is the way across the deck."""

    request: Any
    motion: Any
    setting: Setting
    plan: Plan
    landings: Landings
    net: tuple[net.NetLine, ...]
    up: str | None

    @property
    def winds(self) -> bool:
        """Whether the ground goes round the axis."""
        return bool(self.setting.habitat.chart(self.plan.floor).winds)

    @property
    def ground(self) -> Any:
        """What is stood on."""
        return self.setting.habitat.words_of_ground


def find(request: Any, watch: Callable[[int, int], None] | None = None) -> Found:
    """What becomes of the throws of a LandingsRequest -> Found. Raises BadInput or TooMuch. watch(done, of) is told how far it is; what it
    raises stops the work."""
    motion = thrown_in(request.scene, request.motion)
    _check(request.over)
    setting, _ = setting_of(request.scene)
    plan = KINDS[motion.kind].plan(setting, motion)
    over = tuple(Varied(one.field, np.linspace(one.first, one.last, one.count)) for one in request.over)
    own = {name: getattr(motion, name) for name in FIGURES if name not in (over[0].field, over[1].field)}
    total = len(over[0].values) * len(over[1].values)
    tell = watch and (lambda done: watch(done, total))
    with told_of_throws(
        motion,
        steps_field="over",
        work_field="over",
        stopped=tr_later(
            "These throws are too much work: they were stopped after {used}, and one request may use {most}."
        ),
        asks_less=_ASKS_LESS,
    ):
        landings = landings_of(thrower_of(setting, motion), plan, over, own, tell)
    flat = net.is_flat(landings)
    rows, columns = (net.chosen(one.values) for one in over)
    lines = net.net_of(landings, ([] if flat else rows, columns))
    return Found(request, motion, setting, plan, landings, tuple(lines), over[0].field if flat else None)


def _check(over):
    """Raise BadInput or TooMuch for what no field of a request shows alone."""
    one, other = over
    if one.field == other.field:
        first, second = (name for name in FIGURES if name != one.field)
        may_be = tr("{first} or {second}, as the first is {field}", first=first, second=second, field=one.field)
        raise BadInput(wrong("over.1.field", other.field, may_be))
    for k, varied in enumerate(over):
        if varied.first == varied.last:
            may_be = tr("another value than the first, {first}", first=written(varied.first, "g"))
            raise BadInput(wrong_of(type(varied), f"over.{k}.last", varied.last, may_be))
    count = one.count * other.count
    if count > GREATEST_THROWS:
        counts = {"count": written(count, ","), "most": written(GREATEST_THROWS, ",")}
        say = tr("There would be {count} throws; there may be {most}.", **counts)
        raise TooMuch(refusal("over", tr("{count} throws", **counts), tr("at most {most} throws", **counts), say))


def as_json(found: Found, units: str = "si", f4: bool = False, drawing: Any = None) -> bytes:
    """The answer to a Found as JSON bytes; f4 sends arrays as base64 float32; drawing: what the page shows, or None."""
    return with_arrays(as_data(found, units) | {"drawing": drawing}, as_f4 if f4 else as_lists)


def as_data(found: Found, units: str = "si") -> dict[str, Any]:
    """The same as plain data with numpy arrays, without a drawing."""
    landings, request = found.landings, found.request
    arrays = {name: getattr(landings, name) for name in _OF_EACH}
    along_m, height_m, axial_m = landings.place_m.T
    arrays |= {"ended": landings.ended.astype(float), "along_m": along_m, "height_m": height_m, "axial_m": axial_m}
    return {
        "rimfall_landings": ANSWER_VERSION,
        "program": __version__,
        "scene": request.scene.model_dump(mode="json"),
        "motion": request.motion,
        "over": [_varied(asked, varied) for asked, varied in zip(request.over, landings.over, strict=True)],
        "own": {
            name: getattr(found.motion, name) for name in FIGURES if name not in {one.field for one in landings.over}
        },
        "start_s": landings.start_s,
        "endings": list(ENDINGS),
        **{name: finite(array) for name, array in arrays.items()},
        "counts": {ending: landings.count(ending) for ending in ENDINGS},
        "farthest": {
            name: None if k is None else _one(found, k, units) for name, k in words.farthest(landings).items()
        },
        "net": {"up": found.up or "axial_m", "lines": [_line(landings, line, units) for line in found.net]},
        "short": words.short(landings, units),
        "words": words.sentences(landings, found.ground, units),
        "assumptions": _assumptions(found),
        "caution": caution(),
    }


def _varied(asked, varied):
    row = FIELDS[f"motions.*.{varied.field}"]
    return asked.model_dump() | {"label": tr(row["label"]), "unit": row["unit"], "values": varied.values.tolist()}


def _one(found, k, units):
    """A throw by its number: its figures, how long it flies, and how far."""
    landings = found.landings
    row, column = divmod(k, landings.shape[1])
    return {
        "number": k,
        "row": row,
        "column": column,
        **{name: float(landings.figures[name][k]) for name in FIGURES},
        "flight_s": float(landings.time_s[k]) - landings.start_s,
        "way": words.way_of(landings, k).as_data(),
        "says": words.thrown(landings, k, units),
    }


def _line(landings, line, units):
    varied = landings.over[line.of]
    return {
        "of": varied.field,
        "at": line.at,
        "value": float(varied.values[line.at]),
        "label": words.value_of(varied, line.at, units),
        "runs": [vars(run) for run in line.runs],
    }


def _assumptions(found):
    if found.setting.air is None:
        return []
    landings = found.landings
    fastest = max(float(landings.speed_m_s.max()), float(landings.figures["speed_m_s"].max()))
    return of_air(found.plan, found.setting, fastest)
