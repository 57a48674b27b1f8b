"""What every request passes while others may follow: it is the presenter's, from this machine and with the presenter's key, and may all; or
it is anybody's and may load the page to follow by; or it bears the followers' key and may follow. All else is refused.
"""

import ipaddress
import math
import re

from starlette.datastructures import Headers, MutableHeaders
from starlette.responses import JSONResponse

from ...errors import Refused
from ...language import tr, tr_later
from ..guards import LOCAL, name_of
from ..spoken import cookies_of
from .keys import same
from .refusals import NotAllowed, TooOften

HERE = ("127.0.0.1", "::1", "::ffff:127.0.0.1")  # by which only this machine reaches itself
_TO_READ = ("GET", "HEAD")
_ANYBODYS = re.compile(r"/follow|/favicon\.ico|/static/.+|/language/[\w-]+\.js|/api/health")
_TO_FOLLOW = {
    "GET": re.compile(r"/api/follow/(now|clock|fields|scenes/[0-9a-f]+)"),
    "POST": re.compile(r"/api/follow/guess"),
}
REQUESTS = (
    tr_later("too many requests"),
    tr_later("There came too many requests from this address; try again in {seconds} s."),
)
GUESSES = (
    tr_later("too many guesses"),
    tr_later("There came too many guesses from this address; try again in {seconds} s."),
)
PRESENT = "/present"  # where the presenter's key becomes a cookie


class Doors:
    """ASGI middleware around the app, within its Guards."""

    def __init__(self, app, room):
        self._app, self._room = app, room

    async def __call__(self, scope, receive, send):
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        headers = Headers(scope=scope)
        if is_here(scope) and same(self._room.keys.presenter, cookie_of(headers, scope)):
            await self._app(scope, receive, send)
            return
        try:
            self._look(scope, headers)
        except Refused as refused:
            await refuse(refused, scope, receive, send)
        else:
            await self._app(scope, receive, _leaving(send) if scope["path"] != "/api/follow/now" else send)

    def _look(self, scope, headers):
        """Whether a request that is not the presenter's may pass. Raises Refused."""
        wait_s = self._room.limits.requests.wait_s(address_of(scope))
        if wait_s:
            raise too_often(REQUESTS, wait_s)
        path, method = scope["path"], scope["method"]
        name = name_of(headers.get("host", ""))
        if name not in LOCAL and name != (scope.get("server") or ("",))[0]:
            say = tr("The Host header names another address than the one that was asked.")
            raise NotAllowed("host", name, tr("the address that was asked"), say)
        if method in _TO_READ and (_ANYBODYS.fullmatch(path) or path == PRESENT):
            return
        if path.startswith("/api/follow/") and not same(self._room.keys.followers, _bearer(headers)):
            say = tr("This is not the key of the show that is on. Scan the code on the screen again.")
            raise NotAllowed("key", tr("another key"), tr("the followers' key, as the code on the screen has it"), say)
        may = _TO_FOLLOW.get(method)
        if may is None or not may.fullmatch(path):
            say = tr(
                "Whoever follows can look and guess, and nothing else. To present, open the address that rimfall serve printed, on "
                "the machine that serves."
            )
            raise NotAllowed("request", f"{method} {path[:200]}", tr("what a follower may ask"), say)


def is_here(scope):
    """Whether a request comes from this machine by the address that only this machine has, and no proxy says that it hands it on."""
    server, client = scope.get("server"), scope.get("client")
    return bool(server and client) and server[0] in HERE and client[0] in HERE


def cookie_name(scope):
    """Of the presenter's key: cookies of one address are those of all its ports."""
    return f"rimfall-presenter-{scope['server'][1]}"


def cookie_of(headers, scope):
    """The presenter's key as the browser sends it, or an empty text."""
    return cookies_of(headers).get(cookie_name(scope), "")


def address_of(scope):
    """Whom a request comes from, as limits count it: an IPv6 network has 2^64 addresses to give away, and counts as one."""
    text = scope["client"][0] if scope.get("client") else ""
    try:
        address = ipaddress.ip_address(text)
    except ValueError:
        return text
    if address.version == 4 or address.ipv4_mapped:
        return str(getattr(address, "ipv4_mapped", None) or address)
    return str(ipaddress.ip_network((address, 64), strict=False))


def too_often(what, wait_s):
    """The refusal of an address that asks for too much; what: REQUESTS or GUESSES."""
    seconds = max(math.ceil(wait_s), 1)
    was, say = (tr(text, seconds=seconds) for text in what)
    return TooOften(was, tr("asked again later"), say, seconds)


async def refuse(refused, scope, receive, send):
    """Answer with a refusal and close the connection."""
    headers = {"connection": "close"}
    if refused.retry_after_s is not None:
        headers["retry-after"] = str(refused.retry_after_s)
    await JSONResponse(refused.as_dict(), refused.status, headers)(scope, receive, send)


def _bearer(headers):
    kind, _, key = headers.get("authorization", "").partition(" ")
    return key.strip() if kind.lower() == "bearer" else ""


def _leaving(send):
    """send, which has the connection closed after the answer: two hundred that wait for what may come next would leave none."""

    async def closing(message):
        if message["type"] == "http.response.start":
            MutableHeaders(scope=message)["connection"] = "close"
        await send(message)

    return closing
