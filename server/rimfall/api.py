"""The API for notebooks and scripts: scenes in, arrays and files out. The same answers as those of the page and the commands.

Where two throws of one scene come down:

```python
import rimfall

answer = rimfall.trace(rimfall.open_scene("same-lob"))
for motion in answer.motions.values():
    print(motion.name, "lands at", round(motion.landing.along_m, 2), "m after", round(motion.landing.time_s, 2), "s")
```

Arrays of a path, as numpy has them, and the path as a file for another program:

```python
import rimfall

scene = rimfall.open_scene("same-lob")
lob = rimfall.trace(scene).motions["Lob out"]
print("highest:", lob.height_m.max().round(3), "m, samples:", lob.rotating_m.shape)
rimfall.export(scene, "lob.csv", view="inertial", fps=25, motions=["Lob out"])
```

One thing varied, everything else as it was:

```python
import rimfall

for values, scene in rimfall.vary(rimfall.open_scene("same-lob"), {"habitat.spin_rpm": [1, 3, 6]}):
    print(values, round(rimfall.trace(scene).motions["Lob out"].landing.drift_m, 2), "m")
```

What people would feel, and the smallest habitat for two wishes:

```python
import rimfall

answer = rimfall.feel(rimfall.open_scene("same-lob"))
print(answer["says"]["lead"])
print(answer["says"]["summary"])
wishes = [
    {"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 0.9},
    {"kind": "figure", "quantity": "spin", "bound": "at_most", "value": 2},
]
print(round(rimfall.size(wishes)["smallest"]["radius_m"]), "m")
```

Every throw that arrives in a friend's hands a third of the way round:

```python
import math
import rimfall

habitat = {"radius_m": 30, "spin_rpm": 4}
throw = {"kind": "throw", "name": "serve", "place": {"height_m": 1.5}, "speed_m_s": 10, "body": "handball"}
scene = rimfall.open_scene({"rimfall": 1, "habitat": habitat, "air": None, "motions": [throw]})
friend = {"along_m": -2 * math.pi * 30 / 3, "height_m": 1.4}
answer = rimfall.aim(scene, "serve", friend, {"speed_m_s": 10})
print(*answer["words"], sep="\\n")
for way in answer["ways"]:
    print(round(way["elevation_deg"], 2), "degrees up, after", round(way["flight_s"], 2), "s")
```

Where a throw can come down, over two of its figures:

```python
import rimfall

over = {"elevation_deg": (0, 80, 41), "speed_m_s": (2, 20, 37)}
net = rimfall.landings(rimfall.open_scene("galley"), "serve", over)
print(*net.words, sep="\\n")
print(net.ended.shape, net.spinward_m[net.ended == "landed"].max().round(2), "m")
```

Whether a path that was seen, drawn or filmed could be, and in which habitat:

```python
import rimfall

lob = rimfall.trace(rimfall.open_scene("same-lob")).motions["Lob out"]
columns = zip(lob.time_s, lob.along_m.round(3), lob.height_m.round(3))
track = [{"time_s": t, "along_m": along, "height_m": height} for t, along, height in columns]
answer = rimfall.match({"track": track, "accuracy_m": 0.001, "known": {"body": "handball"}})
print(answer["says"])
print(round(answer["fit"]["spin_rpm"]["low"], 2), "to", round(answer["fit"]["spin_rpm"]["high"], 2), "rpm")
```

Whether the ship round a habitat would cope with being spun up, stopped, turned:

```python
import rimfall

answer = rimfall.craft("ring-ship")
print(*answer["spin_up"]["says"], sep="\\n")
print(round(answer["joint"]["seized"]["rate_rpm"], 3), "rpm if the joint seizes")
```

In another language, words and the scenes that come with the program; figures are the same:

```python
import rimfall

with rimfall.speaking("de"):
    scene = rimfall.open_scene("same-lob")
    print(scene.title, list(rimfall.trace(scene).motions), sep="\\n")
```
"""

from collections.abc import Iterator, Mapping, Sequence
from dataclasses import dataclass
from os import PathLike
from pathlib import Path
from typing import Any, Literal

import numpy as np

from .exports.brought.cameras import About, cameras_in, content_of
from .exports.formats import format_of
from .exports.options import read_options
from .exports.recovery import read_source
from .exports.writing import write_all
from .languages import speaking as speaking
from .motions.track import Moment
from .scene import examples, questions
from .scene.craft import answers as craft_answers
from .scene.craft import examples as craft_examples
from .scene.document import Scene, frame_rate
from .scene.feel import answers as feel_answers
from .scene.reading import as_json, read, read_aim, read_landings, read_match, read_refitted, read_size
from .scene.shot import aim as aim_answers
from .scene.shot import landings as shot_landings
from .scene.shot import match as match_answers
from .scene.size import answers as size_answers
from .scene.work import bounded_alone
from .sweep.grid import check, grid_of
from .sweep.parameters import parameter_of
from .talk import examples as talks
from .talk import reading as talk_reading
from .talk.resolving import GivenTalk

Units = Literal["si", "us"]
Varied = Literal["speed_m_s", "heading_deg", "elevation_deg"]


@dataclass(frozen=True)
class MotionPath:
    """One motion: its samples, (n,) or (n, 3), SI units; axes as README.md says, z along the spin vector.

    along_m, height_m, axial_m: the place over the deck. rotating_*: in the turning frame; inertial_m: in the one that does not
    turn; the two coincide at time 0. end: how it ended. landing: its first coming down, a Moment, or None. words: sentences.
    """

    name: str
    time_s: np.ndarray
    along_m: np.ndarray
    height_m: np.ndarray
    axial_m: np.ndarray
    rotating_m: np.ndarray
    rotating_velocity_m_s: np.ndarray
    inertial_m: np.ndarray
    end: str
    events: tuple[Moment, ...]
    landing: Moment | None
    words: tuple[str, ...]


@dataclass(frozen=True)
class Answer:
    """What came of a scene: its motions by name."""

    scene: Scene
    motions: dict[str, MotionPath]


@dataclass(frozen=True)
class LandingMap:
    """Where a throw comes down: arrays (rows, columns), a row each value of the first figure that varies, a column of the second.

    over: those values by name. ended: "landed", "ceiling", "hub", "wall", "edge" or "never"; then when, scene time, and where the body's
    centre is. turns, spinward_m, across_m: how far that is from the release. words: sentences.
    """

    over: dict[str, np.ndarray]
    ended: np.ndarray
    time_s: np.ndarray
    along_m: np.ndarray
    height_m: np.ndarray
    axial_m: np.ndarray
    turns: np.ndarray
    spinward_m: np.ndarray
    across_m: np.ndarray
    speed_m_s: np.ndarray
    incidence_deg: np.ndarray
    words: tuple[str, ...]


def open_scene(source: Mapping[str, Any] | str | PathLike[str]) -> Scene:
    """A Scene from a document: a dict, a file's path, or the name of an example. Raises BadInput or TooMuch (both ValueError)."""
    if isinstance(source, Mapping):
        return read(as_json(dict(source)))
    if str(source) in examples.SAY:
        return read(examples.example(str(source)))
    return read(read_source(source))


def open_talk(source: Mapping[str, Any] | str | PathLike[str]) -> GivenTalk:
    """A talk from its document, a dict or a file's path, or from the name of one ready to give: its `steps`, each with its `step` and its
    whole `scene`; `as_data()` is all of it as a dict. Raises BadInput or TooMuch."""
    if isinstance(source, Mapping):
        return talk_reading.read(as_json(dict(source)))
    return talk_reading.read(talks.example(str(source)) or read_source(source))


def trace(scene: Scene, *, max_seconds: float | None = None) -> Answer:
    """The Answer to a Scene. Raises TooMuch where it would take too many samples, more than 2 GB of memory, or longer than
    max_seconds (None for no bound)."""
    traced = bounded_alone(questions.trace, scene, seconds=max_seconds)
    return Answer(scene, {str(one.motion.name): _path(one) for one in traced.motions})


def feel(scene: Scene, units: Units = "si") -> dict[str, Any]:
    """What people would feel in a Scene's habitat, beside every published limit: the answer of `POST /api/feel` as a dict."""
    return feel_answers.as_data(feel_answers.feel(scene), units)


def size(
    wishes: Sequence[Mapping[str, Any]], person: Mapping[str, Any] | None = None, units: Units = "si"
) -> dict[str, Any]:
    """The smallest habitat that meets some wishes, or which of them collide: the answer of `POST /api/size` as a dict. Raises
    BadInput or TooMuch."""
    request = {"wishes": wishes} | ({} if person is None else {"person": person})
    return size_answers.as_data(read_size(as_json(request)), units)


def craft(
    source: Mapping[str, Any] | str | PathLike[str],
    units: Units = "si",
    *,
    radius_m: float | None = None,
    spin_rpm: float | None = None,
    max_seconds: float | None = None,
) -> dict[str, Any]:
    """Whether a craft would cope: the answer of `POST /api/craft` as a dict. source: its document or that of a scene that carries one, as
    a dict or a file's path; or the name of one to start from. radius_m: all its lengths made to fit that; spin_rpm: turned at that.
    max_seconds as for `trace`. Raises BadInput or TooMuch."""
    given = as_json(dict(source)) if isinstance(source, Mapping) else _craft_of(source)
    question, _ = read_refitted(given, radius_m, spin_rpm)
    return bounded_alone(craft_answers.as_data, question, units, seconds=max_seconds)


def aim(
    scene: Scene,
    motion: str,
    to: Mapping[str, Any],
    fixed: Mapping[str, Any],
    *,
    within_m: float | None = None,
    flight_max_s: float | None = None,
    back: bool = False,
    units: Units = "si",
    max_seconds: float | None = None,
) -> dict[str, Any]:
    """Every throw of a Scene's motion that arrives in somebody's hands: the answer of `POST /api/aim` as a dict, its arrays numpy's.
    to: a place ({"along_m", "height_m", "axial_m"}) or {"motion": name}; fixed: one of {"speed_m_s"}, {"elevation_deg"}, {"flight_s"},
    {"least": "speed_m_s"}. Raises BadInput or TooMuch."""
    given = {"within_m": within_m, "flight_max_s": flight_max_s}
    document = {"scene": scene.model_dump(mode="json"), "motion": motion, "to": to, "fixed": fixed, "back": back}
    request = read_aim(as_json(document | {name: value for name, value in given.items() if value is not None}))
    found = bounded_alone(aim_answers.find, request, seconds=max_seconds)
    return aim_answers.as_data(found, units)


def landings(
    scene: Scene, motion: str, over: Mapping[Varied, tuple[float, float, int]], *, max_seconds: float | None = None
) -> LandingMap:
    """The LandingMap of a throw of a Scene over two of its figures, each (first, last, how many); max_seconds as for `trace`. Raises
    BadInput or TooMuch."""
    asked = [
        {"field": name, "first": first, "last": last, "count": count} for name, (first, last, count) in over.items()
    ]
    request = read_landings(as_json({"scene": scene.model_dump(mode="json"), "motion": motion, "over": asked}))
    found = bounded_alone(shot_landings.find, request, seconds=max_seconds)
    answer = shot_landings.as_data(found)
    shape = found.landings.shape
    arrays = {name: answer[name].reshape(shape) for name in list(LandingMap.__dataclass_fields__)[2:-1]}
    ended = np.array(answer["endings"])[found.landings.ended].reshape(shape)
    values = {one.field: one.values for one in found.landings.over}
    return LandingMap(values, ended, **arrays, words=tuple(answer["words"]))


def match(request: Mapping[str, Any], units: Units = "si", *, max_seconds: float | None = None) -> dict[str, Any]:
    """Whether a path that was seen could be, and the free path nearest to it: the answer of `POST /api/match` as a dict. Raises BadInput
    or TooMuch."""
    question = read_match(as_json(dict(request)))
    return bounded_alone(match_answers.as_data, question, units, seconds=max_seconds)


def export(scene: Scene, path: str | PathLike[str], *, max_seconds: float | None = None, **options: Any) -> Path:
    """Write a file of a Scene, whole or not at all, its format told by its ending; options as an export's choices are called:
    view, fps, unit, up, motions and so on; max_seconds as for `trace`. Returns the path. Raises BadInput or TooMuch."""
    file = Path(path)
    file_format = format_of(file)
    choices = read_options(options, scene)

    def work():
        return file_format.write(questions.trace(scene), choices)

    write_all({file: bounded_alone(work, seconds=max_seconds)})
    return file


def cameras(
    path: str | PathLike[str],
    *,
    view: Literal["aboard", "outside"] = "aboard",
    origin: Literal["axis", "deck"] = "axis",
    radius_m: float | None = None,
    fps: float = 24,
    first_frame: float | None = None,
) -> list[dict[str, Any]]:
    """The cameras of a table (CSV), an OpenUSD or a glTF file, as `export(…, cameras=…)` takes them. radius_m: of the habitat, for places
    aboard and for an origin on the deck; fps: of a table's frames; first_frame: that at time 0, if not the one with which the file
    begins. Raises BadInput or TooMuch."""
    about = About(None, view, origin, radius_m, frame_rate(fps), first_frame)
    return cameras_in(content_of(path), about)["cameras"]


def vary(scene: Scene, values: Mapping[str, Sequence[Any]]) -> Iterator[tuple[dict[str, Any], Scene]]:
    """(values, Scene) of every combination; values: path of the document -> list. All are checked before the first comes.
    Raises BadInput or TooMuch, naming what is at fault."""
    grid = grid_of(scene, [parameter_of(path, listed) for path, listed in values.items()])
    check(grid)
    return ((dict(zip(values, grid.values(n), strict=True)), grid.scene(n)) for n in range(1, grid.count + 1))


def _craft_of(source: str | PathLike[str]) -> str | bytes:
    return craft_examples.example(str(source)) or read_source(source)


def _path(traced: questions.Traced) -> MotionPath:
    track, samples = traced.track, traced.track.samples
    return MotionPath(
        str(traced.motion.name),
        samples.time_s,
        samples.along_m,
        samples.height_m,
        samples.axial_m,
        samples.rotating_m,
        samples.rotating_velocity_m_s,
        samples.inertial_m,
        track.end,
        tuple(track.events),
        track.landing,
        tuple(traced.outcome()),
    )
