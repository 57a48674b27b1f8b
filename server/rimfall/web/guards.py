"""What every request passes: the Host header, the size and kind of a body, and the headers of every answer."""

import ipaddress

from starlette.datastructures import Headers, MutableHeaders

from ..errors import refusal
from ..language import tr, written
from ..scene.bounds import GREATEST_DOCUMENT_BYTES
from .connections import RETRY_AFTER_S, last_answer

_A_FILE = ("application/octet-stream", 60_000_000, "file")
_FILES = {  # what takes another body than a document
    **dict.fromkeys(("/api/recover", "/api/camera/file", "/api/match/tracks"), _A_FILE),
    "/api/follow/guess": ("application/json", 2_000, "guess"),
}
# what changes something by its address alone must be of that kind even so: a page of another site can send none, or a form, but not this
_BY_ADDRESS = "/language/"
_ALWAYS_TAKEN = 65_536  # bytes of a body
_MOST_HELD = 64_000_000  # bytes of all of them

_OF_ALL = {"x-content-type-options": "nosniff", "cross-origin-resource-policy": "same-origin"}
# what only a document heeds: on each of a page's many small files it would weigh as much as the file
_OF_DOCUMENTS = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; media-src blob:; "
        "font-src 'self'; "
        "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    ),
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
}
_DOCUMENTS = ("text/html", "image/svg+xml")
LOCAL = {"localhost", "127.0.0.1", "::1"}


def host_allowed(host, served_as):
    """Whether a Host header may ask: the name it is served as, this machine, or any plain address when served to all.

    A page elsewhere can point a name of its own at this machine; the header then carries that name, and is refused.
    """
    name = name_of(host)
    if name in LOCAL or name == served_as.lower():
        return True
    try:
        ipaddress.ip_address(name)
    except ValueError:
        return False
    return served_as in ("0.0.0.0", "::")


def name_of(host):
    """The name or address in a Host header, without its port."""
    name, port = host.rpartition(":")[::2]
    return (name if name and port.isdigit() and (host.startswith("[") or ":" not in name) else host).strip("[]").lower()


class Guards:
    """ASGI middleware around the whole app."""

    def __init__(self, app, served_as="127.0.0.1"):
        self._app, self._served_as, self._room = app, served_as, _Room()

    async def __call__(self, scope, receive, send):
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        request_headers = Headers(scope=scope)

        async def marked(message):
            if message["type"] == "http.response.start":
                headers = MutableHeaders(scope=message)
                headers.update(_OF_ALL)
                if headers.get("content-type", "").startswith(_DOCUMENTS):
                    headers.update(_OF_DOCUMENTS)
            await send(message)

        trouble = self._trouble(scope, request_headers)
        if trouble is not None:
            await _forget_body(receive, request_headers, 2 * _takes(scope["path"])[1])
            await _refuse(marked, *trouble)
            return
        body = _Body(receive, marked, self._room, *_takes(scope["path"])[1:])
        try:
            await self._app(scope, body.receive, body.send)
        finally:
            self._room.give_back(body)
        await body.answer_refusal()

    def _trouble(self, scope, headers):
        """(status, Refusal) of a request that goes no further, or None."""
        host = headers.get("host", "")
        if not host_allowed(host, self._served_as):
            say = tr("The Host header names another place than the one served here.")
            return 400, refusal("host", host, self._served_as, say)
        if scope["method"] != "POST":
            return None
        kind, most, called = _takes(scope["path"])
        length = headers.get("content-length", "0")
        if not length.isdigit() or int(length) > most:
            return 413, _too_large(called, length, most)
        is_empty = length == "0" and "transfer-encoding" not in headers
        if is_empty and not scope["path"].startswith(_BY_ADDRESS):
            return None  # no body is of no kind: the address says whether it takes one
        was = headers.get("content-type", "").split(";")[0].strip().lower()
        if was != kind:
            shown = was[:80] or tr("nothing")
            say = tr("The body was sent as {kind}; it must be {wanted}.", kind=shown, wanted=kind)
            return 415, refusal("content-type", was or tr("nothing"), kind, say)
        coding = ", ".join(headers.getlist("content-encoding")).strip().lower()
        if coding not in ("", "identity"):
            say = tr("The body was sent with the coding {coding}; it must be sent as it is.", coding=coding[:80])
            return 415, refusal("content-encoding", coding, tr("identity, or no such header"), say)
        return None


def _takes(path):
    """(media type, most bytes, what it is called) of a body sent to that path."""
    return _FILES.get(path, ("application/json", GREATEST_DOCUMENT_BYTES, "document"))


def _too_large(called, length, most):
    say = tr("The body has {bytes} bytes; it may have {most}.", bytes=length[:20], most=written(most, ","))
    may_be = tr("at most {most} bytes", most=written(most, ","))
    return refusal(called, tr("{bytes} bytes", bytes=length), may_be, say)


class _Room:
    """How much of all bodies is in hand. What is small always has room; beyond it the sum is bounded, or a few hundred bodies that
    never come to their end would fill the memory."""

    def __init__(self):
        self._held = 0

    def take(self, body, count):
        """Count more bytes of a body; whether there is room for them."""
        body.held += count
        self._held += count
        return body.held <= _ALWAYS_TAKEN or self._held <= _MOST_HELD

    def give_back(self, body):
        """The body is done with."""
        self._held -= body.held


class _Body:
    """A body counted while it comes. Past a limit it has broken off for the app, and the request is refused here."""

    def __init__(self, receive, send, room, most, called):
        self._receive, self._send, self._room = receive, send, room
        self._most, self._called = most, called
        self.held, self._refusal, self._is_whole = 0, None, False

    async def receive(self):
        """The app's next message."""
        if self._refusal is not None:
            return {"type": "http.disconnect"}
        message = await self._receive()
        self._is_whole = not message.get("more_body")
        has_room = self._room.take(self, len(message.get("body", b"")))
        if self.held > self._most:
            self._refusal = 413, _too_large(self._called, tr("{bytes} or more", bytes=self.held), self._most)
        elif not has_room:
            say = tr(
                "There is no room for this body beside the others that are being received; try again in {seconds} s.",
                seconds=RETRY_AFTER_S,
            )
            was = tr("{bytes} bytes", bytes=self.held)
            self._refusal = 503, refusal("server", was, tr("a body when there is room"), say)
        return message if self._refusal is None else {"type": "http.disconnect"}

    async def send(self, message):
        """The app's answer, unless the request is refused here."""
        if self._refusal is None:
            await self._send(message)

    async def answer_refusal(self):
        """Where it was refused here: let the rest come, to be forgotten, and say so. Whoever still sends does not read."""
        if self._refusal is None:
            return
        if not self._is_whole:
            await _let_come(self._receive, self._most)
        await _refuse(self._send, *self._refusal)


async def _forget_body(receive, headers, most):
    """Let a body come that is refused by its head alone, unless it says it is longer than most bytes or waits to be asked for: whoever
    still sends, such as a proxy, would lose the answer with the connection."""
    length = headers.get("content-length", "0")
    if "expect" not in headers and length.isdigit() and int(length) <= most:
        await _let_come(receive, most)


async def _let_come(receive, most):
    """Read a body to its end, or to most bytes, and forget it."""
    passed, is_whole = 0, False
    while not is_whole and passed <= most:
        message = await receive()
        is_whole = not message.get("more_body")
        passed += len(message.get("body", b""))
        del message  # or it is kept until the next has come


async def _refuse(send, status, refused):
    headers, body = last_answer(status, refused)
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
