"""A board to one reader, as server-sent events.

Written here and not taken from a package: what is wanted of one is the newest note alone, refusals in the one shape, and that the guard of
all connections (`connections.py`) drops whoever does not read; a generator that a package sends would queue what is old.
"""

import contextlib

from starlette.responses import Response

from ..leaving import until_left

HEARTBEAT_S = 15.0
RETRY_MS = 1_000
_HEADERS = [
    (b"content-type", b"text/event-stream; charset=utf-8"),
    (b"cache-control", b"no-store"),
    (b"x-accel-buffering", b"no"),  # nginx would hold it back
]


class Stream(Response):
    """The notes of a board, from the newest on. seen: those that the reader has already, name → id. first: an event before them.
    ended(): called once it is over."""

    def __init__(self, board, seen, first=b"", ended=lambda: None, heartbeat_s=HEARTBEAT_S):
        self.background = None
        self._board, self._seen, self._first, self._ended = board, seen, first, ended
        self._heartbeat_s = heartbeat_s

    async def __call__(self, scope, receive, send):
        try:
            await until_left(receive, self._tell(send))
        finally:
            self._ended()

    async def _tell(self, send):
        async def say(body, more=True):
            await send({"type": "http.response.body", "body": body, "more_body": more})

        await send({"type": "http.response.start", "status": 200, "headers": _HEADERS})
        await say(b"retry: %d\n\n%b%b" % (RETRY_MS, self._first, self._board.after(self._seen)))
        while not self._board.is_closed:
            await self._board.change(self._seen, self._heartbeat_s)
            await say(self._board.after(self._seen) or b": still here\n\n")
        with contextlib.suppress(OSError):
            await say(b"", more=False)
