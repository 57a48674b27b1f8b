"""`rimfall serve`: the page, served on this machine and opened."""

import argparse
import os
import socket
import threading
import webbrowser

import uvicorn

from ..errors import BadInput, refusal
from ..web import connections
from ..web.app import make_app

DONE = 0


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
    parser.set_defaults(run=_serve)


def _serve(chosen):
    listening = _listen(chosen.host, chosen.port)
    host = f"[{chosen.host}]" if ":" in chosen.host else chosen.host
    address = f"http://{host}:{listening.getsockname()[1]}/"
    print(f"Rimfall is at {address} (Ctrl+C stops it)", flush=True)
    if chosen.open:
        threading.Timer(0.5, webbrowser.open, [address]).start()
    config = uvicorn.Config(make_app(chosen.host), **connections.settings())
    uvicorn.Server(config).run(sockets=[listening])
    return DONE


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
