"""Long work as lines of JSON: {"done": 12, "of": 200} ..., last the answer (or the refusal). Closing the connection stops it."""

import asyncio
import json
import threading
import time

from starlette.concurrency import run_in_threadpool
from starlette.responses import StreamingResponse

from ..errors import Refused

_EVERY_S = 0.1


class Stopped(Exception):
    """Whoever asked has gone."""


def streamed(work):
    """A response that runs work(watch) -> bytes in a thread; work calls watch(done, of) as it goes."""
    return StreamingResponse(_lines(work), media_type="application/x-ndjson")


async def _lines(work):
    loop, lines, gone = asyncio.get_running_loop(), asyncio.Queue(), threading.Event()
    told_s = 0.0

    def watch(done, of):
        nonlocal told_s
        if gone.is_set():
            raise Stopped
        if time.monotonic() - told_s >= _EVERY_S:
            told_s = time.monotonic()
            loop.call_soon_threadsafe(lines.put_nowait, json.dumps({"done": done, "of": of}).encode())

    def ended(task):
        if not task.cancelled():
            task.exception()  # looked at, or asyncio prints that nobody did once whoever asked has gone
        lines.put_nowait(None)

    task = asyncio.ensure_future(run_in_threadpool(work, watch))
    task.add_done_callback(ended)
    try:
        while (line := await lines.get()) is not None:
            yield line + b"\n"
        yield _last(task) + b"\n"
    finally:
        gone.set()


def _last(task):
    try:
        return task.result()
    except Refused as refused:
        return json.dumps(refused.as_dict()).encode()
