"""Rimfall: motion in rotating space habitats, computed, and drawn from both frames at once.

`import rimfall; rimfall.trace(rimfall.open_scene("same-lob"))`: `api.py` holds what can be asked so, and is loaded when it first is.
"""

from typing import TYPE_CHECKING, Any

if TYPE_CHECKING:
    from .api import (
        Answer,
        LandingMap,
        Moment,
        MotionPath,
        aim,
        cameras,
        craft,
        export,
        feel,
        landings,
        match,
        open_scene,
        open_talk,
        size,
        speaking,
        trace,
        vary,
    )

__version__ = "0.13.0"
__all__ = [
    "Answer",
    "LandingMap",
    "Moment",
    "MotionPath",
    "aim",
    "cameras",
    "craft",
    "export",
    "feel",
    "landings",
    "match",
    "open_scene",
    "open_talk",
    "size",
    "speaking",
    "trace",
    "vary",
]


def __getattr__(name: str) -> Any:
    if name not in __all__:
        raise AttributeError(f"module {__name__!r} has no attribute {name!r}")
    from . import api

    return getattr(api, name)


def __dir__() -> list[str]:
    return [*globals(), *__all__]
