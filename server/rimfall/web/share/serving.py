"""What `rimfall serve --share` serves: the sockets, the show, and what is printed."""

import sys

from ...errors import BadInput, refusal
from . import relay
from .addresses import EVERYWHERE, of_this_machine, on_screen, origin
from .connection import connections_of
from .doors import HERE, PRESENT
from .keys import fresh
from .limits import FOLLOWERS_AN_ADDRESS, Limits
from .publisher import InMemory
from .room import MOST_FOLLOWERS, Room

_LOCAL = "127.0.0.1"


def shared(chosen, listen):
    """(the host that the Host header may name, sockets, the presenter's address, Room, class of connections, lines to print) of the
    command's options. listen(host, port) gives a bound socket. Raises BadInput."""
    an_address = _followers_an_address(chosen.followers_an_address)
    publisher, keys = InMemory(), fresh()
    if chosen.relay is not None:
        publisher, keys = relay.ByRedis(relay.checked(chosen.relay)), relay.keys_of(chosen.relay)
    host = chosen.host or EVERYWHERE[0]
    on_network = of_this_machine() if host in EVERYWHERE else host
    if on_network is None:
        say = (
            "This machine has no address on a network. Connect it to one, or name the address to serve on with --host."
        )
        raise BadInput(refusal("host", "no network", "an address of this machine", say))
    sockets = [listen(host, chosen.port)]
    port = sockets[0].getsockname()[1]
    if host not in (*EVERYWHERE, *HERE):
        sockets.append(listen(_LOCAL, port))  # the presenter's own
    mine = f"{origin(_LOCAL, port)}{PRESENT}?key={keys.presenter}"
    room = Room(keys, publisher, Limits(an_address), f"{origin(on_network, port)}/follow#{keys.followers}")
    return host, sockets, mine, room, connections_of(an_address), _words(mine, room.address)


def _words(mine, theirs):
    words = [
        f"Present at {mine} (on this machine alone; Ctrl+C stops it)",
        f"Phones on the same network follow at {theirs}",
    ]
    return [*words, "", *on_screen(theirs)] if sys.stdout.isatty() else words


def _followers_an_address(count):
    if count is None:
        return FOLLOWERS_AN_ADDRESS
    if not 1 <= count <= MOST_FOLLOWERS:
        may_be, name = f"1 to {MOST_FOLLOWERS}", "followers-an-address"
        raise BadInput(refusal(name, count, may_be, f"--{name} was {count}; it must be {may_be}."))
    return count
