"""One show, as this process has it: who may come, who is here, what they are told and what they have placed."""

import asyncio
import contextlib
import json

from ...errors import Refused
from .board import Board
from .keys import Keys
from .limits import Limits
from .publisher import Publisher

MOST_FOLLOWERS = 320  # streams of this process; the rest of its connections are for pages, answers and the presenter
_ROOM_EVERY_S = 0.25  # how often it is told who is here and how many marks there are


class Room:
    """address: where followers come in, its key included."""

    def __init__(self, keys: Keys, publisher: Publisher, limits: Limits, address: str):
        self.keys, self.publisher, self.limits, self.address = keys, publisher, limits, address
        self.for_followers, self.for_presenter = Board(), Board()
        self.ask, self.count = None, 0
        self._stirred, self._tasks, self._told = asyncio.Event(), set(), 0

    async def open(self):
        """Begin to hear and to tell."""
        await self.publisher.open(self._heard, self._stirred.set)
        self._begin(self._tell_of_the_room())

    async def close(self):
        """End: every reader too."""
        self.end_streams()
        for task in list(self._tasks):
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        await self.publisher.close()

    def end_streams(self):
        """Nobody follows any more."""
        self.for_followers.close()
        self.for_presenter.close()

    def enter(self, address):
        """Count a follower. Whether there is room for one from that address."""
        if self.count >= MOST_FOLLOWERS or not self.limits.enter(address):
            return False
        self._counted(1)
        return True

    def leave(self, address):
        """A follower has gone."""
        self.limits.leave(address)
        self._counted(-1)

    def _counted(self, more):
        self.count += more
        self._begin(self._say_here())

    async def _say_here(self):
        with contextlib.suppress(Refused):  # it is told again
            await self.publisher.here(self.count)

    def _begin(self, what):
        task = asyncio.ensure_future(what)
        self._tasks.add(task)
        task.add_done_callback(self._tasks.discard)

    def _heard(self, identity, body):
        self.ask = json.loads(body)["ask"]
        self.for_followers.put("now", identity, body, is_named=True)
        self._stirred.set()

    async def _tell_of_the_room(self):
        """How many follow and how many marks there are, to all; the marks themselves to the presenter alone."""
        while True:
            await self._stirred.wait()
            self._stirred.clear()
            with contextlib.suppress(Refused):
                ask = self.ask["id"] if self.ask else None
                followers = await self.publisher.followers()
                marks = await self.publisher.marks(ask) if ask else []
                self._told += 1
                figures = {"followers": followers, "ask": ask, "count": len(marks)}
                self.for_followers.put("room", f"{self._told}", json.dumps(figures).encode())
                self.for_presenter.put("room", f"{self._told}", json.dumps(figures | {"marks": marks}).encode())
            await asyncio.sleep(_ROOM_EVERY_S)
