"""What is kept of a show, and how a process hears of what another has told: the seam between one process and several.

`InMemory` is for one process; `relay.ByRedis` does the same for several.
"""

import secrets
import time
from collections import OrderedDict
from collections.abc import Callable
from typing import Protocol

MOST_SCENES = 16  # answers; each 20 to 300 kB
MOST_ASKS = 200  # of a talk's steps
MOST_MARKS = 2_000  # of one ask


class Publisher(Protocol):
    """One show. Bodies are bytes; ids are texts that never come again."""

    async def open(self, heard: Callable[[str, bytes], None], stirred: Callable[[], None]) -> None:
        """Begin. heard(id, body) is called on the loop for whatever is told, by any process, the newest that there is at once; stirred()
        when marks or followers have changed."""

    async def close(self) -> None:
        """End."""

    def now_ms(self) -> float:
        """The show's clock, ms since 1970: one for all its processes, and it never goes back."""

    async def tell(self, body: bytes) -> None:
        """Tell all."""

    async def keep(self, digest: str, answer: bytes) -> None:
        """Keep a scene's answer; the oldest is forgotten."""

    async def scene(self, digest: str) -> bytes | None:
        """A scene's answer, if it is kept."""

    async def mark(self, ask: str, who: str, along_m: float) -> bool:
        """Place somebody's mark, in place of one placed before; whether there was room."""

    async def marks(self, ask: str) -> list[float]:
        """All marks of an ask."""

    async def here(self, count: int) -> None:
        """So many follow by this process."""

    async def followers(self) -> int:
        """How many follow, by all processes."""


class SteadyClock:
    """Milliseconds since 1970 by a clock that does not jump when somebody sets the machine's."""

    def __init__(self):
        self._ahead_ms = time.time() * 1e3 - time.monotonic() * 1e3

    def now_ms(self):
        """The time."""
        return self._ahead_ms + time.monotonic() * 1e3


class InMemory:
    """Publisher of one process."""

    def __init__(self):
        self.now_ms = SteadyClock().now_ms
        self._begun, self._count = secrets.token_hex(4), 0
        self._scenes, self._marks, self._here = OrderedDict(), OrderedDict(), 0
        self._heard = self._stirred = None

    async def open(self, heard, stirred):
        """Begin."""
        self._heard, self._stirred = heard, stirred

    async def close(self):
        """End."""

    async def tell(self, body):
        """Tell all."""
        self._count += 1
        self._heard(f"{self._begun}-{self._count}", body)

    async def keep(self, digest, answer):
        """Keep a scene's answer."""
        self._scenes[digest] = answer
        self._scenes.move_to_end(digest)
        while len(self._scenes) > MOST_SCENES:
            self._scenes.popitem(last=False)

    async def scene(self, digest):
        """A scene's answer, or None."""
        return self._scenes.get(digest)

    async def mark(self, ask, who, along_m):
        """Place somebody's mark."""
        marks = self._marks.setdefault(ask, {})
        if who not in marks and len(marks) >= MOST_MARKS:
            return False
        marks[who] = along_m
        while len(self._marks) > MOST_ASKS:
            self._marks.popitem(last=False)
        self._stirred()
        return True

    async def marks(self, ask):
        """All marks of an ask."""
        return list(self._marks.get(ask, {}).values())

    async def here(self, count):
        """So many follow."""
        self._here = count
        self._stirred()

    async def followers(self):
        """How many follow."""
        return self._here
