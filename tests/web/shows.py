"""A show without a socket: its app is asked as uvicorn asks it, from any address, and its streams are read as they come."""

import asyncio
import contextlib
import json

from rimfall.web.app import make_app
from rimfall.web.share.keys import fresh
from rimfall.web.share.limits import Limits
from rimfall.web.share.publisher import InMemory
from rimfall.web.share.room import Room

HERE, NETWORK = ("127.0.0.1", 8150), ("127.0.0.2", 8150)
PHONE = ("127.0.0.9", 50_000)
NOW = {"clock": {"time_s": 0.5, "pace": 1, "playing": True}, "line": "Where will it land?"}
ASK = {"id": "step-3", "motion": "Lob out", "low_m": -10, "high_m": 20}


class Show:
    """An app and its room. served_as: what it is bound to."""

    def __init__(self, publisher=None, served_as="127.0.0.2", **limits):
        self.room = Room(fresh(), publisher or InMemory(), Limits(**limits), "http://127.0.0.2:8150/follow#key")
        self.app = make_app(served_as, room=self.room)
        self.cookie = {"cookie": f"rimfall-presenter-8150={self.room.keys.presenter}"}
        self.key = {"authorization": f"Bearer {self.room.keys.followers}"}

    async def ask(self, method, path, body=None, headers=None, server=NETWORK, client=PHONE):
        """(status, headers, body) of an answer that ends."""
        answer = Answer()
        await self.app(*_request(method, path, body, headers or {}, server, client, answer))
        return answer.status, answer.headers, answer.body

    async def follower(self, method, path, body=None, client=PHONE):
        """(status, JSON) that a follower is answered."""
        status, _, answer = await self.ask(method, path, body, self.key, client=client)
        return status, json.loads(answer)

    async def present(self, method, path, body=None):
        """The JSON that the presenter is answered."""
        status, _, answer = await self.ask(method, path, body, self.cookie, HERE, HERE)
        assert status == 200, answer
        return json.loads(answer)

    async def tell(self, **more):
        """The presenter tells all."""
        return await self.present("POST", "/api/share/now", NOW | more)

    @contextlib.asynccontextmanager
    async def stream(self, headers=(), client=PHONE):
        """A follower's stream: an Answer that goes on."""
        async with self._streaming("/api/follow/now", self.key | dict(headers), NETWORK, client) as answer:
            yield answer

    @contextlib.asynccontextmanager
    async def presenters_stream(self):
        """The presenter's, of who is here."""
        async with self._streaming("/api/share/room", self.cookie, HERE, HERE) as answer:
            yield answer

    @contextlib.asynccontextmanager
    async def _streaming(self, path, headers, server, client):
        answer = Answer()
        asking = asyncio.ensure_future(self.app(*_request("GET", path, None, headers, server, client, answer)))
        try:
            await answer.until(lambda: answer.status is not None)
            yield answer
        finally:
            answer.leave()
            await asking


@contextlib.asynccontextmanager
async def showing(**made):
    """A Show that is on."""
    show = Show(**made)
    await show.room.open()
    try:
        yield show
    finally:
        await show.room.close()


class Answer:
    """What has come of an answer so far."""

    def __init__(self):
        self.status, self.headers, self.body = None, {}, b""
        self.left, self._more = asyncio.Event(), asyncio.Event()

    async def hear(self, message):
        """ASGI's send."""
        if message["type"] == "http.response.start":
            self.status = message["status"]
            self.headers = {name.decode(): value.decode() for name, value in message["headers"]}
        else:
            self.body += message.get("body", b"")
        self._more.set()

    def leave(self):
        """The reader goes."""
        self.left.set()

    async def until(self, what):
        """Wait for it."""
        async with asyncio.timeout(30):
            while not what():
                self._more.clear()
                await self._more.wait()

    def events(self, name):
        """The data of the events of that name that have come."""
        found = (part.split("\n") for part in self.body.decode().split("\n\n"))
        return [json.loads(one[-1].removeprefix("data: ")) for one in found if one[0] == f"event: {name}"]

    async def next(self, name, which=lambda data: True):
        """The first event of that name that is so."""
        await self.until(lambda: any(which(data) for data in self.events(name)))
        return next(data for data in self.events(name) if which(data))


def _request(method, path, body, headers, server, client, answer):
    content = b"" if body is None else json.dumps(body).encode()
    path, _, query = path.partition("?")
    headers = {"host": server[0], "content-length": str(len(content)), "content-type": "application/json"} | headers
    scope = {"type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "scheme": "http", "root_path": ""}
    scope |= {"method": method, "path": path, "raw_path": path.encode(), "query_string": query.encode()}
    scope |= {"headers": [(k.encode(), v.encode()) for k, v in headers.items()], "server": server, "client": client}
    waiting = [{"type": "http.request", "body": content, "more_body": False}]

    async def receive():
        if waiting:
            return waiting.pop()
        await answer.left.wait()
        return {"type": "http.disconnect"}

    return scope, receive, answer.hear
