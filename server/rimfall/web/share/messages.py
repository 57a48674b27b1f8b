"""What comes in: the presenter's `now`, and a follower's guess."""

from typing import Annotated, Any, Literal

from pydantic import BaseModel, ConfigDict, Field, StringConstraints

GREATEST_M = 1e6
Short = Annotated[str, StringConstraints(max_length=200)]
Name = Annotated[str, StringConstraints(min_length=1, max_length=64, pattern=r"^[\w-]+$")]
Seconds = Annotated[float, Field(ge=-1e6, le=1e6)]
Share = Annotated[float, Field(ge=0, le=1)]
Metres = Annotated[float, Field(ge=-GREATEST_M, le=GREATEST_M)]


Digest = Annotated[str, StringConstraints(pattern=r"^[0-9a-f]{32}$")]


class _Strict(BaseModel):
    model_config = ConfigDict(extra="forbid", allow_inf_nan=False)


class Clock(_Strict):
    """The stages' clock as it stands when this is sent; the server adds at_ms, its own time of that."""

    time_s: Seconds
    pace: Annotated[float, Field(gt=0, le=100)]
    playing: bool


class Ask(_Strict):
    """What the room is asked: where this motion lands, along the deck."""

    id: Name
    motion: Short
    low_m: Metres
    high_m: Metres
    revealed: bool = False
    down: bool = False
    landing_m: Metres | None = None
    marks: Annotated[list[Metres], Field(max_length=2_000)] = []


class Dot(_Strict):
    """The presenter's bright dot: where on which stage, in shares of its width and height from the upper left."""

    stage: Literal["aboard", "outside"]
    x: Share
    y: Share


class Now(_Strict):
    """What all see: the step, the clock, the scene by its digest (and the one that comes next), and how it is looked at."""

    step: Annotated[int, Field(ge=0, le=1_000)] = 0
    of: Annotated[int, Field(ge=0, le=1_000)] = 0
    title: Short = ""
    line: Short = ""
    clock: Clock
    scene: Digest | None = None
    next: Digest | None = None
    view: dict[str, Any] = {}
    withheld: dict[str, Any] | None = None
    ask: Ask | None = None
    dark: bool = False
    dot: Dot | None = None
    over: bool = False


class Guess(_Strict):
    """Where somebody thinks it lands. who: what the phone calls itself, so that it may move its mark."""

    ask: Name
    who: Annotated[str, StringConstraints(min_length=16, max_length=64, pattern=r"^[\w-]+$")]
    along_m: Metres
