"""Connections while others may follow: an address has a few, and some are kept for this machine, where the presenter is."""

from ...errors import refusal
from ..connections import Connection, most_connections
from .doors import HERE

KEPT_FOR_THE_PRESENTER = 48
BESIDE_STREAMS = 16  # of one address: what a browser opens to load a page, and then some


def connections_of(followers_an_address):
    """The class of connections of a show."""
    most_an_address = 2 * followers_an_address + BESIDE_STREAMS

    class ShownConnection(Connection):
        """One of a show."""

        def too_many(self):
            """(status, Refusal) where there are more than there may be, or None."""
            if self.server is None or self.server[0] in HERE:
                return super().too_many()
            open_now, most = len(self.connections), max(most_connections() - KEPT_FOR_THE_PRESENTER, 1)
            if open_now > most:
                return self.refused_as_full(open_now, most)
            mine = sum(one.client is not None and one.client[0] == self.client[0] for one in self.connections)
            if mine > most_an_address:
                say = "There are too many connections from this address; try again in a moment."
                return 429, refusal("address", f"{mine} connections", f"at most {most_an_address}", say)
            return None

    return ShownConnection
