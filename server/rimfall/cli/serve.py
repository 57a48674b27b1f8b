"""`rimfall serve`: the page, served on this machine and opened."""

import argparse
import os
import socket
import threading
import webbrowser

import uvicorn

from ..errors import BadInput, refusal
from ..processes import workers_of
from ..web import connections
from ..web.app import MAX_SECONDS, make_app
from . import common

DONE = 0
LEAST_SECONDS, GREATEST_SECONDS = 0.1, 3600.0


def add_to(parser):
    """Add the command's options."""
    parser.add_argument(
        "--host", default="127.0.0.1", help="address to serve on (default: %(default)s, this machine only)"
    )
    parser.add_argument(
        "--port", type=int, default=8150, help="port to serve on (default: %(default)s; 0 takes a free one)"
    )
    parser.add_argument(
        "--open", action=argparse.BooleanOptionalAction, default=True, help="open the page in the browser"
    )
    parser.add_argument(
        "--workers", type=int, metavar="N", help="processes that work things out (default: as many as there are cores)"
    )
    parser.add_argument(
        "--max-seconds",
        type=float,
        default=MAX_SECONDS,
        metavar="S",
        help="longest that one request may be worked on (default: %(default)g)",
    )
    parser.set_defaults(run=_serve)


def _serve(chosen):
    workers, max_seconds = workers_of(chosen.workers, least=0), _seconds(chosen.max_seconds)
    listening = _listen(chosen.host, chosen.port)
    host = f"[{chosen.host}]" if ":" in chosen.host else chosen.host
    address = f"http://{host}:{listening.getsockname()[1]}/"
    common.print_lines([f"Rimfall is at {address} (Ctrl+C stops it)"])
    if chosen.open:
        threading.Timer(0.5, webbrowser.open, [address]).start()
    app = make_app(chosen.host, workers, max_seconds)
    config = uvicorn.Config(app, **connections.settings())
    uvicorn.Server(config).run(sockets=[listening])
    return DONE


def _seconds(most):
    if not LEAST_SECONDS <= most <= GREATEST_SECONDS:
        may_be = f"{LEAST_SECONDS:g} to {GREATEST_SECONDS:g}"
        raise BadInput(refusal("max-seconds", most, may_be, f"--max-seconds was {most:g}; it may be {may_be}."))
    return most


def _listen(host, port):
    """A bound socket, or a refusal that says what is in the way."""
    if not 0 <= port <= 65535:
        raise BadInput(refusal("port", port, "0 to 65535", f"Port was {port}; it may be 0 to 65535."))
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
