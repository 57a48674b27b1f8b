"""Two hundred who follow, on the loopback: how long what the presenter tells is on its way, when a late one is in step, and one that comes back.

Each simulated follower has an address of its own in 127.0.0.0/8, as phones in a hall have. The server is a process of its own; delays are
by one clock, that of this process: from the presenter's request on its way to the event read.
"""

import asyncio
import json
import re
import tempfile
import time
from pathlib import Path

from tests.serving import serving

from .row import Row, quantile

SHARE = ("-m", "rimfall", "serve", "--share", "--host", "127.0.0.2", "--no-open", "--port")
FOLLOWERS, CHANGES = 200, 100
EVERY_S = 0.1
ENDS_WITHIN_S = 120


def measure():
    with tempfile.TemporaryDirectory() as folder:
        log = Path(folder) / "log.txt"
        with serving(log, arguments=SHARE) as origin:
            delays, late_s, back_s, came_s = asyncio.run(
                asyncio.wait_for(followed(*address_of(origin, log)), ENDS_WITHIN_S)
            )
    told = f"what is told, to {FOLLOWERS} who follow"
    for share, bar in ((0.5, None), (0.95, 0.25), (0.99, None)):
        at, is_due = quantile(delays, share), f"<= {1e3 * bar:.0f} ms" if bar else ""
        yield Row(f"{told}: p{100 * share:.0f}", f"{1e3 * at:.0f} ms", is_due, at <= bar if bar else None)
    lost = FOLLOWERS * CHANGES - len(delays)
    yield Row(f"{told}: of {CHANGES} messages to each, overtaken by a newer one in all", f"{lost}")
    yield Row(f"all {FOLLOWERS} come at once: until the last is in step", f"{came_s:.2f} s", "<= 4 s", came_s <= 4)
    yield Row("one comes late: until it is in step", f"{late_s:.2f} s", "<= 1 s", late_s <= 1)
    yield Row("one that was cut off is in step again, once it asks", f"{back_s:.2f} s", "<= 1 s", back_s <= 1)


def address_of(origin, log):
    """(port, the presenter's key, the followers') of a server."""
    said = log.read_text()
    return int(origin.rpartition(":")[2]), re.search(r"key=(\S+)", said)[1], re.search(r"follow#(\S+)", said)[1]


async def followed(port, presenter, key, followers=FOLLOWERS, changes=CHANGES, every_s=EVERY_S):
    """(delays in s, s until a late one is in step, s until one that comes back is, s until all that came at once were)."""
    hall = Hall(port, presenter, key)
    await hall.tell(0)
    started_s = time.monotonic()
    there = [Follower(hall, address(number)) for number in range(followers)]
    await asyncio.gather(*(one.in_step() for one in there))
    came_s = time.monotonic() - started_s
    for number in range(1, changes + 1):
        await hall.tell(number)
        await asyncio.sleep(every_s)
    await asyncio.gather(*(one.saw(changes) for one in there))
    delays = [delay for one in there for delay in one.delays]
    late_s = await timed(Follower(hall, address(followers)).in_step())
    there[0].leave()
    await hall.tell(changes + 1)
    back_s = await timed(Follower(hall, address(0)).in_step())
    for one in hall.there:
        one.leave()
    await asyncio.gather(*(one.reading for one in hall.there), return_exceptions=True)
    return delays, late_s, back_s, came_s


def address(number):
    """An address of this machine alone, another for each."""
    return f"127.1.{number // 200}.{number % 200 + 1}"


async def timed(what):
    """How long it takes, s."""
    started_s = time.monotonic()
    await what
    return time.monotonic() - started_s


class Hall:
    """The presenter, and when each message was sent."""

    def __init__(self, port, presenter, key):
        self.port, self.key, self.there, self.sent_s = port, key, [], {}
        self._cookie = f"rimfall-presenter-{port}={presenter}"

    async def tell(self, number):
        """One more message, told by its step."""
        body = json.dumps(
            {"step": number, "clock": {"time_s": 0, "pace": 1, "playing": True}, "line": "x" * 80, "view": VIEW}
        )
        self.sent_s[number] = time.monotonic()
        reader, writer = await asyncio.open_connection("127.0.0.1", self.port)
        head = f"POST /api/share/now HTTP/1.1\r\nhost: 127.0.0.1\r\ncookie: {self._cookie}\r\nconnection: close\r\n"
        writer.write(f"{head}content-type: application/json\r\ncontent-length: {len(body)}\r\n\r\n{body}".encode())
        answer = await reader.read()
        writer.close()
        assert answer.startswith(b"HTTP/1.1 200"), answer
        self.newest = number


VIEW = {"presets": {"aboard": "b", "outside": "d"}, "cameras": {"aboard": None, "outside": None}, "hidden": []}
VIEW |= {
    "arrows": {"velocity": True, "centrifugal": True, "coriolis": True, "alone": False},
    "turned": {},
    "units": "si",
}


class Follower:
    """Reads the stream from an address of its own."""

    def __init__(self, hall, address):
        self.hall, self.address, self.delays = hall, address, []
        self._newest, self._more = -1, asyncio.Condition()
        self.reading = asyncio.ensure_future(self._read())
        hall.there.append(self)

    async def in_step(self):
        """Returns once it has what was told last, and the server's time."""
        await self.saw(self.hall.newest)

    async def saw(self, number):
        """Returns once it has seen that message or a newer one."""
        async with self._more:
            await self._more.wait_for(lambda: self._newest >= number or self.reading.done())
        if self.reading.done():
            self.reading.result()

    def leave(self):
        """Close the connection."""
        self.reading.cancel()

    async def _read(self):
        reader, writer = await asyncio.open_connection("127.0.0.2", self.hall.port, local_addr=(self.address, 0))
        try:
            head = f"GET /api/follow/now HTTP/1.1\r\nhost: 127.0.0.2\r\nauthorization: Bearer {self.hall.key}\r\n\r\n"
            writer.write(head.encode())
            assert (await reader.readline()).startswith(b"HTTP/1.1 200")
            first, event = True, b""
            async for line in reader:
                if line.startswith(b"event: "):
                    event = line[7:].strip()
                elif line.startswith(b"data: ") and event == b"now":
                    await self._see(json.loads(line[6:])["step"], first)
                    first = False
        finally:
            writer.close()

    async def _see(self, number, first):
        if not first:
            self.delays.append(time.monotonic() - self.hall.sent_s[number])
        async with self._more:
            self._newest = number
            self._more.notify_all()
