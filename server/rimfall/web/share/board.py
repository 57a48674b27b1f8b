"""What is told to all, the newest of each sort, and who waits for something newer. Nothing is queued: a reader that is slow misses
what was told meanwhile and gets the newest, so that it costs no memory."""

import asyncio


class Board:
    """Notes by name, each (id, bytes of an event)."""

    def __init__(self):
        self._notes, self._waiting, self.is_closed = {}, set(), False

    def put(self, name, identity, data, is_named=False):
        """A newer note. data: bytes without line breaks. is_named: a reader that comes back says by this id what it has seen."""
        named = f"id: {identity}\n" if is_named else ""
        event = f"event: {name}\n{named}data: ".encode() + data + b"\n\n"
        self._notes[name] = identity, event
        self._wake()

    def after(self, seen):
        """The events that are not among those seen (name → id), which they then are."""
        events = []
        for name, (identity, event) in self._notes.items():
            if seen.get(name) != identity:
                seen[name] = identity
                events.append(event)
        return b"".join(events)

    async def change(self, seen, within_s):
        """Returns once something is newer than what was seen, it is closed, or that many seconds have passed."""
        if self.is_closed or any(seen.get(name) != identity for name, (identity, _) in self._notes.items()):
            return
        told = asyncio.get_running_loop().create_future()
        self._waiting.add(told)
        try:
            async with asyncio.timeout(within_s):
                await told
        except TimeoutError:
            pass
        finally:
            self._waiting.discard(told)

    def close(self):
        """End every stream."""
        self.is_closed = True
        self._wake()

    def _wake(self):
        for told in self._waiting:
            if not told.done():
                told.set_result(None)
