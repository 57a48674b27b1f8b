"""Connections, before any request is the app's: how many there may be, how long each may keep the server waiting, and refusals
of what is no HTTP, in the one shape of all refusals.

uvicorn bounds none of these but the rest between two requests. A head (request line and headers) must come within 10 s of its
first byte, or of the connection; of a body 2 kB a second must come, looked at every 20 s, and as much of an answer be read, every
30 s. A body in crumbs is refused, for each costs the loop as much as a kilobyte; and where too much is unread of all answers
together, whoever has kept the server waiting longest goes. What is refused is answered, and read to its end for a moment: a socket
closed over unread bytes is reset, and the answer lost.
"""

import asyncio
import errno
import json
import logging
import sys
from functools import cache

import h11
from uvicorn.protocols.http.h11_impl import STATUS_PHRASES, H11Protocol

from ..errors import Refused, refusal

try:
    import resource
except ImportError:  # Windows counts no handles of this kind
    resource = None

MOST_CONNECTIONS = 512
RETRY_AFTER_S = 5
MOST_UNREAD_BYTES = 500_000_000
FREE_PIECES, LEAST_PIECE_BYTES = 1_000, 64  # of a body; the least on average, after the first
OUT_OF_HANDLES = (errno.EMFILE, errno.ENFILE, errno.ENOBUFS, errno.ENOMEM)
_log = logging.getLogger("uvicorn.error")
_MAY_BE = {
    400: "a request of HTTP/1.1",
    414: "a shorter request line",
    431: "fewer or shorter headers",
    501: "a transfer coding that is known: chunked",
}


def settings(of=None):
    """What uvicorn's Config is to be told, by name. of: the class of connections, if it is another than Connection."""
    return {
        "http": of or Connection,
        "loop": f"{__name__}:new_loop",
        "ws": "none",
        "backlog": 256,
        "timeout_keep_alive": 20,
        "log_level": "error",  # a client's nonsense is answered, not told to whoever serves
        "access_log": False,
        "server_header": False,
    }


@cache
def most_connections():
    """How many connections may be open: half of the file handles this process may have, for its files need some too."""
    handles = resource.getrlimit(resource.RLIMIT_NOFILE)[0] if resource else -1
    return MOST_CONNECTIONS if handles < 0 else min(MOST_CONNECTIONS, max(handles // 2, 1))


def new_loop():
    """An event loop that tells once, in a line, when file handles run out; asyncio goes on by itself when there are some again."""
    loop = asyncio.new_event_loop()
    loop.set_exception_handler(_HandlesTold())
    return loop


def last_answer(status, refused):
    """(headers, body) of a Refusal after which the connection is closed, all bytes."""
    body = json.dumps(Refused(refused).as_dict()).encode()
    headers = [
        (b"content-type", b"application/json"),
        (b"content-length", str(len(body)).encode()),
        (b"connection", b"close"),
    ]
    if status in (429, 503):
        headers.append((b"retry-after", str(RETRY_AFTER_S).encode()))
    return headers, body


class _HandlesTold:
    """asyncio's handler of what nobody caught: a traceback each, but for a lack of handles."""

    def __init__(self):
        self._is_told = False

    def __call__(self, loop, context):
        error = context.get("exception")
        if not (isinstance(error, OSError) and error.errno in OUT_OF_HANDLES and "accept" in context["message"]):
            loop.default_exception_handler(context)
        elif not self._is_told:
            self._is_told = True
            _log.error(
                "More came at once than there are file handles (%s). Some had to wait; allow more with ulimit -n.",
                error.strerror,
            )


class _Reader(h11.Connection):
    """h11's, which refuses a body that comes in crumbs."""

    _pieces = _bytes = 0

    def next_event(self):
        event = super().next_event()
        if isinstance(event, h11.Data):
            self._pieces += 1
            self._bytes += len(event.data)
            if self._pieces > FREE_PIECES and self._bytes < self._pieces * LEAST_PIECE_BYTES:
                raise h11.RemoteProtocolError("its body comes in too many, too small pieces")
        elif isinstance(event, h11.Request):
            self._pieces = self._bytes = 0
        return event


class Connection(H11Protocol):
    """One connection; it waits for a head, for a body, or for the app (None)."""

    HEAD_S, BODY_S, LEAST_BYTES_S, UNREAD_S, LINGER_S = 10.0, 20.0, 2_000, 30.0, 1.0

    def __init__(self, *arguments, **named):
        super().__init__(*arguments, **named)
        self.conn = _Reader(h11.SERVER)
        self._waits_for, self._timer, self._bytes = None, None, 0
        self._writing, self._is_leaving = None, False
        self._unread_since_s = None

    def connection_made(self, transport):
        super().connection_made(transport)
        most = most_connections()
        if len(self.connections) > most + most // 2:
            transport.abort()
        elif trouble := self.too_many():
            self._refuse(*trouble)
        else:
            self._wait_for("head")

    def too_many(self):
        """(status, Refusal) where there are more connections than there may be, this one among them; or None."""
        open_now, most = len(self.connections), most_connections()
        return self.refused_as_full(open_now, most) if open_now > most else None

    def refused_as_full(self, open_now, most):
        """(status, Refusal) of one that is too many."""
        say = f"There are {most} connections already; try again in {RETRY_AFTER_S} s."
        return 503, refusal("server", f"{open_now} connections", f"at most {most} at once", say)

    def connection_lost(self, exc):
        self._wait_for(None)
        if self._writing is not None:
            self._writing.cancel()
        super().connection_lost(exc)

    def data_received(self, data):
        if self._is_leaving:
            return
        self._bytes += len(data)
        super().data_received(data)

    def handle_events(self):
        """Called as well for what came while an earlier request was answered."""
        super().handle_events()
        their_state = self.conn.their_state
        if their_state is h11.SEND_BODY:
            self._wait_for("body")
        elif their_state is not h11.IDLE:
            self._wait_for(None)
        elif self._has_begun():
            self._unset_keepalive_if_required()
            self._wait_for("head")

    def _has_begun(self):
        """Whether there are bytes of a head."""
        return self.conn.trailing_data[0] != b""

    def _wait_for(self, part):
        """A clock for that part, unless it runs already."""
        if part == self._waits_for:
            return
        if self._timer is not None:
            self._timer.cancel()
        self._waits_for, self._timer, self._bytes = part, None, 0
        if part is not None:
            self._timer = self.loop.call_later(self.HEAD_S if part == "head" else self.BODY_S, self._look_at_the_clock)

    def _look_at_the_clock(self):
        if self._waits_for == "body" and self._bytes >= self.BODY_S * self.LEAST_BYTES_S:
            self._bytes = 0
            self._timer = self.loop.call_later(self.BODY_S, self._look_at_the_clock)
        elif self._waits_for == "head" and not self._has_begun():  # opened ahead, as browsers do, and not needed
            self.transport.abort()
        else:
            part, within_s = self._waits_for, self.HEAD_S if self._waits_for == "head" else self.BODY_S
            say = f"The {part} of the request stood still, or came too slowly, for {within_s:g} s. Send it again."
            self._refuse(408, refusal(part, "incomplete", f"on its way, and complete soon: {within_s:g} s", say))

    def send_400_response(self, msg):
        """Of uvicorn, for what is no HTTP; h11 says in the exception at hand which status fits."""
        error = sys.exc_info()[1]
        status = getattr(error, "error_status_hint", 400)
        if status == 431 and b"\n" not in self.conn.trailing_data[0]:
            status = 414
        said = str(error or msg)[:80]
        say = f"The request could not be read as HTTP: {said.rstrip('.')}."
        self._refuse(status, refusal("request", said, _MAY_BE.get(status, _MAY_BE[400]), say))

    def _refuse(self, status, refused):
        """Answer with a refusal if nothing is answered yet, and go."""
        self._wait_for(None)
        if self.conn.our_state in (h11.IDLE, h11.SEND_RESPONSE):
            headers, body = last_answer(status, refused)
            for event in (
                h11.Response(status_code=status, headers=headers, reason=STATUS_PHRASES[status]),
                h11.Data(data=body),
                h11.EndOfMessage(),
            ):
                self.transport.write(self.conn.send(event))
        if self.cycle is not None and not self.cycle.response_complete:
            self.cycle.disconnected = True
            self.cycle.message_event.set()
        self._is_leaving = True
        if self.transport.can_write_eof():
            self.transport.write_eof()
        self.flow.resume_reading()
        self.loop.call_later(self.LINGER_S, self.transport.abort)

    def timeout_keep_alive_handler(self):
        super().timeout_keep_alive_handler()
        self.loop.call_later(
            self.UNREAD_S, self.transport.abort
        )  # or the end of an answer that nobody reads would wait

    def pause_writing(self):
        super().pause_writing()
        self._unread_since_s = self.loop.time()
        self._make_room()
        self._writing = self.loop.call_later(
            self.UNREAD_S, self._look_at_writing, self.transport.get_write_buffer_size()
        )

    def resume_writing(self):
        super().resume_writing()
        self._unread_since_s = None
        if self._writing is not None:
            self._writing.cancel()

    def _make_room(self):
        """Where too much waits to be read, end what has waited longest; never this one, which has just begun to."""
        waiting = [one for one in self.connections if one._unread_since_s is not None and one is not self]
        waiting.sort(key=lambda one: one._unread_since_s)
        unread = sum(one.transport.get_write_buffer_size() for one in (self, *waiting))
        for one in waiting:
            if unread <= MOST_UNREAD_BYTES:
                return
            unread -= one.transport.get_write_buffer_size()
            one.transport.abort()

    def _look_at_writing(self, unread_before):
        unread = self.transport.get_write_buffer_size()
        if unread_before - unread < self.UNREAD_S * self.LEAST_BYTES_S:
            self.transport.abort()
        else:
            self._writing = self.loop.call_later(self.UNREAD_S, self._look_at_writing, unread)
