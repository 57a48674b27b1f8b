"""How much one address may ask for. A hall's phones have an address each; where they come through a router that gives them one,
`followers_an_address` is to be as many as they are."""

import time
from collections import OrderedDict

MOST_ADDRESSES = 4_096  # that are remembered; whoever has not asked for longest is forgotten
FOLLOWERS_AN_ADDRESS = 16
_BURST, _A_SECOND = 8, 1.0  # requests, for each follower that an address may have: a page is some six
_GUESSES_BURST, _GUESSES_A_SECOND = 6, 1.0


class Rate:
    """So many at once, and so many a second from then on, of each address."""

    def __init__(self, burst, a_second, clock=time.monotonic):
        self._burst, self._a_second, self._clock = burst, a_second, clock
        self._left = OrderedDict()  # address → (how many are left, at that time)

    def wait_s(self, address):
        """0 where it may, which then counts; else in how many seconds it may again."""
        now_s = self._clock()
        left, at_s = self._left.pop(address, (self._burst, now_s))
        left = min(left + (now_s - at_s) * self._a_second, self._burst)
        may = left >= 1
        self._left[address] = left - may, now_s
        while len(self._left) > MOST_ADDRESSES:
            self._left.popitem(last=False)
        return 0.0 if may else (1 - left) / self._a_second


class Limits:
    """Those of followers: requests, guesses, and streams at once."""

    def __init__(self, followers_an_address=FOLLOWERS_AN_ADDRESS, clock=time.monotonic):
        self.followers = followers_an_address
        many = followers_an_address
        self.requests = Rate(_BURST * many, _A_SECOND * many, clock)
        self.guesses = Rate(_GUESSES_BURST * many, _GUESSES_A_SECOND * many, clock)
        self._streams = {}

    def enter(self, address):
        """Whether that address may have one more stream, which then counts until it leaves."""
        count = self._streams.get(address, 0)
        if count >= self.followers:
            return False
        self._streams[address] = count + 1
        return True

    def leave(self, address):
        """One stream of that address has ended."""
        self._streams[address] -= 1
        if not self._streams[address]:
            del self._streams[address]
