"""What every request passes: the Host header, the size and kind of a body, and the headers of every answer."""

import ipaddress
import json

from starlette.datastructures import Headers, MutableHeaders

from ..errors import Refused, refusal
from ..scene.reading import GREATEST_BYTES

_OF_ALL = {"x-content-type-options": "nosniff", "cross-origin-resource-policy": "same-origin"}
# what only a document heeds: on each of a page's many small files it would weigh as much as the file
_OF_DOCUMENTS = {
    "content-security-policy": (
        "default-src 'none'; script-src 'self'; style-src 'self'; img-src 'self' data: blob:; font-src 'self'; "
        "connect-src 'self'; manifest-src 'self'; base-uri 'none'; form-action 'none'; frame-ancestors 'none'"
    ),
    "referrer-policy": "no-referrer",
    "cross-origin-opener-policy": "same-origin",
}
_DOCUMENTS = ("text/html", "image/svg+xml")
_LOCAL = {"localhost", "127.0.0.1", "::1"}


def host_allowed(host, served_as):
    """Whether a Host header may ask: the name it is served as, this machine, or any plain address when served to all.

    A page elsewhere can point a name of its own at this machine; the header then carries that name, and is refused.
    """
    name, port = host.rpartition(":")[::2]
    name = (name if name and port.isdigit() and (host.startswith("[") or ":" not in name) else host).strip("[]").lower()
    if name in _LOCAL or name == served_as.lower():
        return True
    try:
        ipaddress.ip_address(name)
    except ValueError:
        return False
    return served_as in ("0.0.0.0", "::")


class Guards:
    """ASGI middleware around the whole app."""

    def __init__(self, app, served_as="127.0.0.1"):
        self._app, self._served_as = app, served_as

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
            await _refuse(marked, *trouble)
            return
        await self._app(scope, _Counted(receive), marked)

    def _trouble(self, scope, headers):
        """(status, Refusal) of a request that goes no further, or None."""
        host = headers.get("host", "")
        if not host_allowed(host, self._served_as):
            return 400, refusal(
                "host", host, self._served_as, "The Host header names another place than the one served here."
            )
        if scope["method"] != "POST":
            return None
        length = headers.get("content-length", "0")
        if not length.isdigit() or int(length) > GREATEST_BYTES:
            return 413, _too_large(length)
        kind = headers.get("content-type", "").split(";")[0].strip().lower()
        if kind != "application/json":
            return 415, refusal(
                "content-type",
                kind or "nothing",
                "application/json",
                f"The body was sent as {kind[:80] or 'nothing'}; it may be application/json.",
            )
        return None


def _too_large(length):
    return refusal(
        "document",
        f"{length} bytes",
        f"at most {GREATEST_BYTES:,} bytes",
        f"The body has {length[:20]} bytes; it may have {GREATEST_BYTES:,}.",
    )


class _Counted:
    """Receives a body of no stated length, and stops listening past the limit: `reading.py` then refuses it by its size."""

    def __init__(self, receive):
        self._receive, self._bytes = receive, 0

    async def __call__(self):
        message = await self._receive()
        if message["type"] == "http.request":
            self._bytes += len(message.get("body", b""))
            if self._bytes > 2 * GREATEST_BYTES:
                return {"type": "http.request", "body": message["body"], "more_body": False}
        return message


async def _refuse(send, status, refused):
    body = json.dumps(Refused(refused).as_dict()).encode()
    headers = [
        (b"content-type", b"application/json"),
        (b"content-length", str(len(body)).encode()),
        (b"connection", b"close"),
    ]
    await send({"type": "http.response.start", "status": status, "headers": headers})
    await send({"type": "http.response.body", "body": body})
