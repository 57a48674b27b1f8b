"""An answer that the pool works out: awaited beside whoever asked, whose leaving stops it.

As lines of JSON, where that was asked: {"done": 12, "of": 200} …, last the answer, or the refusal.
"""

import asyncio
import contextlib
import json

from starlette.responses import Response

from ..errors import Refused, refusal
from ..language import tr
from .asked import Answer, Asked, refused
from .leaving import until_left
from .pool import Closed, Full, Job, Pool
from .worker import Died

WAITS_S = 3.0  # at most, before work on it begins
RETRY_AFTER_S = 2
_LINES = "application/x-ndjson"


class Worked(Response):
    """What comes of `Asked`: one body, or lines where it tells how far it is."""

    def __init__(self, pool: Pool, asked: Asked):
        self.background = None
        self._pool, self._asked = pool, asked

    async def __call__(self, scope, receive, send):
        await until_left(receive, self._lines(send) if self._asked.tells else self._body(send))

    async def _body(self, send):
        async with contextlib.aclosing(self._outcomes()) as outcomes:
            async for outcome in outcomes:
                if isinstance(outcome, Answer):
                    await _begin(send, outcome)
                    await _send(send, outcome.body)

    async def _lines(self, send):
        """A refusal that comes before anything else has its own status; later ones can only be the last line."""
        async with contextlib.aclosing(self._outcomes()) as outcomes:
            begun = False
            async for outcome in outcomes:
                answer = outcome if isinstance(outcome, Answer) else None
                if not begun:
                    is_refused = answer is not None and answer.status != 200
                    await _begin(send, answer if is_refused else Answer(b"", _LINES), is_whole=is_refused)
                    if is_refused:
                        await _send(send, answer.body)
                        return
                    begun = True
                line = _progress(*outcome) if answer is None else answer.body
                await _send(send, line + b"\n", more=answer is None)

    async def _outcomes(self):
        """(done, of) as the work goes, last an Answer. Work that nobody listens to any more is stopped."""
        loop, told = asyncio.get_running_loop(), asyncio.Queue()

        def tell(what):
            with contextlib.suppress(RuntimeError):  # the loop has ended
                loop.call_soon_threadsafe(told.put_nowait, what)

        job = Job(self._asked, tell)
        try:
            self._pool.submit(job)
            what = await self._first(job, told)
            while isinstance(what, tuple):
                yield what
                what = await told.get()
            yield what if isinstance(what, Answer) else _unavailable(what)
        except Full as full:
            yield _unavailable(full)
        finally:
            self._pool.stop(job)

    async def _first(self, job, told):
        """What is told first. Raises Full where the job waited too long."""
        while True:
            with contextlib.suppress(TimeoutError):
                async with asyncio.timeout(WAITS_S):
                    return await told.get()
            if self._pool.give_up(job):
                raise Full


async def whole(pool: Pool, asked: Asked) -> Answer:
    """The answer to what nobody waits for at the other end: worked out, refused, or why there is none now."""
    async with contextlib.aclosing(Worked(pool, asked)._outcomes()) as outcomes:
        async for outcome in outcomes:
            if isinstance(outcome, Answer):
                return outcome
    raise AssertionError("work ends with an answer")


def _unavailable(why):
    if isinstance(why, Died):
        was, say = (
            "ended",
            tr("The process that worked on this has ended, and another takes its place. Send this again."),
        )
    elif isinstance(why, Closed):
        was, say = "stopping", tr("The server is stopping. Send this again when it runs.")
    else:
        say = tr("The server has too much to do just now. Send this again in {seconds} s.", seconds=RETRY_AFTER_S)
        was = "busy"
    answer = refused(Refused(refusal("server", was, tr("asked again later"), say)), 503)
    answer.headers["retry-after"] = str(RETRY_AFTER_S)
    return answer


def _progress(done, of):
    return json.dumps({"done": done, "of": of}).encode()


async def _begin(send, answer, is_whole=True):
    headers = {"content-type": answer.media_type, **answer.headers}
    if is_whole:
        headers["content-length"] = str(len(answer.body))
    raw = [(name.encode("latin-1"), value.encode("latin-1")) for name, value in headers.items()]
    await send({"type": "http.response.start", "status": answer.status, "headers": raw})


async def _send(send, body, more=False):
    await send({"type": "http.response.body", "body": body, "more_body": more})
