"""`rimfall serve`: the page, served on this machine and opened."""

import argparse
import asyncio
import atexit
import contextlib
import os
import signal
import socket
import threading
import webbrowser

import uvicorn
from uvicorn.server import HANDLED_SIGNALS

from ..errors import BadInput, refusal
from ..processes import workers_of
from ..web import connections
from ..web.app import MAX_SECONDS, make_app
from ..web.share.addresses import origin
from . import common

DONE, STOPPED = 0, 130
EXAMPLES = ("rimfall serve", "rimfall serve --port 9000 --no-open", "rimfall serve --share")
HERE = "127.0.0.1"
LEAST_SECONDS, GREATEST_SECONDS = 0.1, 3600.0


def add_to(parser):
    """Add the command's options."""
    parser.add_argument(
        "--host",
        help=f"address to serve on (default: {HERE}, this machine only; with --share every address that it has)",
    )
    parser.add_argument(
        "--port", type=int, default=8150, help="port to serve on (default: %(default)s; 0 takes a free one)"
    )
    parser.add_argument(
        "--open", action=argparse.BooleanOptionalAction, default=True, help="open the page in the browser"
    )
    parser.add_argument(
        "--workers",
        type=int,
        metavar="N",
        help="processes that work things out (default: as many as there are cores; 0: threads of this one)",
    )
    parser.add_argument(
        "--max-seconds",
        type=float,
        default=MAX_SECONDS,
        metavar="S",
        help="longest that one request may be worked on (default: %(default)g)",
    )
    parser.add_argument(
        "--share",
        action="store_true",
        help="let phones on the local network follow: prints an address with a fresh key, and its QR code",
    )
    parser.add_argument(
        "--relay",
        metavar="ADDRESS",
        help="with --share: the Redis server by which several servers are one show, as redis://HOST:PORT/NUMBER",
    )
    parser.add_argument(
        "--followers-an-address",
        type=int,
        metavar="N",
        help="with --share: how many may follow from one address (default: 16; more where a router gives all phones one)",
    )
    parser.set_defaults(run=_serve)


def _serve(chosen):
    workers, max_seconds = workers_of(chosen.workers, least=0), _seconds(chosen.max_seconds)
    if chosen.share:
        from ..web.share.serving import shared  # only what serves others loads it

        host, listening, address, room, connection, words = shared(chosen, _listen)
    else:
        _only_shared(chosen)
        host, room, connection = chosen.host or HERE, None, None
        listening = [_listen(host, chosen.port)]
        address = f"{origin(host, listening[0].getsockname()[1])}/"
        words = [f"Rimfall is at {address} (Ctrl+C stops it)"]
    common.print_lines(words)
    if chosen.open:
        threading.Timer(0.5, webbrowser.open, [address]).start()
    app = make_app(host, workers, max_seconds, room)
    server = _Server(app, connection)
    server.run(sockets=listening)
    server.end()
    return DONE


def _only_shared(chosen):
    for name in ("relay", "followers_an_address"):
        if getattr(chosen, name) is not None:
            option = name.replace("_", "-")
            say = f"--{option} goes with --share."
            raise BadInput(refusal(option, str(getattr(chosen, name)), "given with --share", say))


class _Server(uvicorn.Server):
    """uvicorn's, which waits for whatever runs; this one ends it, and is gone soon whatever happens."""

    ENDS_WITHIN_S = 1.0
    _LETS_FINISH_S = 0.3

    def __init__(self, app, connection):
        super().__init__(uvicorn.Config(app, **connections.settings(connection)))
        self._app, self._ended_by = app, None

    @contextlib.contextmanager
    def capture_signals(self):
        """Signals that end it are heard once, and from then on not at all: there is nothing more to stop."""
        for number in HANDLED_SIGNALS:
            signal.signal(number, self.handle_exit)
        yield

    def handle_exit(self, sig, _):
        if self._ended_by is None:
            self._ended_by, self.should_exit = sig, True
            watchdog = threading.Timer(self.ENDS_WITHIN_S, os._exit, [128 + sig])
            watchdog.daemon = True
            watchdog.start()

    async def shutdown(self, sockets=None):
        if self._app.state.room is not None:
            self._app.state.room.end_streams()
        self._app.state.pool.close()  # what waits and what runs is answered: no more
        asyncio.get_running_loop().call_later(self._LETS_FINISH_S, self._leave)
        await super().shutdown(sockets)

    def _leave(self):
        """Whoever has neither sent nor read all by now does not hold the server up."""
        for connection in list(self.server_state.connections):
            connection.transport.abort()

    def end(self):
        """End the process as whatever ended the server would: 130 for Ctrl+C, as for every command. At once: all is closed by now,
        and on a busy machine Python takes seconds to clear away what it has loaded."""
        if self._ended_by is not None:
            atexit._run_exitfuncs()  # else the folder in which processes met stays behind
        if self._ended_by == signal.SIGINT:
            os._exit(STOPPED)
        if self._ended_by is not None:
            signal.signal(self._ended_by, signal.SIG_DFL)
            signal.raise_signal(self._ended_by)


def _seconds(most):
    if not LEAST_SECONDS <= most <= GREATEST_SECONDS:
        may_be = f"{LEAST_SECONDS:g} to {GREATEST_SECONDS:g}"
        raise BadInput(refusal("max-seconds", most, may_be, f"--max-seconds was {most:g}; it must be {may_be}."))
    return most


def _listen(host, port):
    """A bound socket, or a refusal that says what is in the way."""
    if not 0 <= port <= 65535:
        raise BadInput(refusal("port", port, "0 to 65535", f"Port was {port}; it must be 0 to 65535."))
    listening = None
    try:
        family = socket.getaddrinfo(host, port, type=socket.SOCK_STREAM)[0][0]
        # The protocol is named, or asyncio would not switch off the delay that costs every answer 40 ms.
        listening = socket.socket(family, socket.SOCK_STREAM, socket.IPPROTO_TCP)
        if os.name == "posix":
            listening.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
        listening.bind((host, port))
        listening.listen(128)
    except (OSError, UnicodeError) as error:  # a host that no name can be is a UnicodeError
        if listening is not None:
            listening.close()
        say = f"Cannot serve on {host} port {port}: {getattr(error, 'strerror', None) or error}. Choose another with --port."
        raise BadInput(refusal("port", port, "a free port", say)) from None
    return listening
