"""The publisher of several processes, on one machine or more: Redis hands on what one tells and keeps the rest, so that a follower of
any process gets what the presenter's own has.

All under `rimfall:`, and gone six hours after it was last used, but for a number that only grows. What Redis holds is a show's keys and
answers: it must be as trusted as the servers are.
"""

import asyncio
import contextlib
import secrets

from ...errors import BadInput, refusal
from .keys import Keys, fresh
from .publisher import MOST_MARKS, MOST_SCENES, SteadyClock
from .refusals import RelayAway

try:
    import redis
    import redis.asyncio
except ImportError:  # the extra is not installed
    redis = None

KEPT_S = 6 * 3600
_LOOKS = 7  # at Redis's clock
_AGAIN_S = 1.0  # after Redis was away
_ROLL_CALL_S = 5.0  # how often a process says how many follow by it
_GONE_S = 3 * _ROLL_CALL_S
_KEYS, _NOW, _NUMBER, _SCENES, _HERE, _STIR = (
    f"rimfall:{name}" for name in ("keys", "now", "number", "scenes", "here", "stir")
)


def checked(address):
    """The address of a Redis server that answers, or what is in the way. Raises BadInput."""
    if redis is None:
        say = "--relay needs the package redis: pip install 'rimfall[redis]'."
        raise BadInput(refusal("relay", address, "used with rimfall[redis] installed", say))
    try:
        with _client(address, redis.Redis) as client:
            client.ping()
    except (redis.RedisError, OSError, ValueError) as error:
        say = f"No Redis server answers at the address given with --relay: {type(error).__name__}. It is redis://HOST:PORT/NUMBER."
        raise BadInput(refusal("relay", "no answer", "redis://HOST:PORT/NUMBER of a Redis server", say)) from None
    return address


def keys_of(address) -> Keys:
    """The show's keys: the first process makes them, the others share them."""
    with _client(address, redis.Redis) as client:
        mine = fresh()
        for name in ("presenter", "followers"):
            client.hsetnx(_KEYS, name, getattr(mine, name))
        client.expire(_KEYS, KEPT_S)
        return Keys(*(key.decode() for key in client.hmget(_KEYS, "presenter", "followers")))


def _client(address, of):
    return of.from_url(address, socket_connect_timeout=5, socket_timeout=5, health_check_interval=0)


class ByRedis:
    """Publisher of several processes."""

    def __init__(self, address):
        self._client = _client(address, redis.asyncio.Redis)
        self._name, self._count = secrets.token_hex(8), 0
        self._clock, self._ahead_ms = SteadyClock(), 0.0
        self._newest, self._tasks = 0, []
        self._heard = self._stirred = None

    def now_ms(self):
        """Redis's clock, as far ahead of this machine's as it was when that was last looked at."""
        return self._clock.now_ms() + self._ahead_ms

    async def open(self, heard, stirred):
        """Begin."""
        self._heard, self._stirred = heard, stirred
        self._tasks = [asyncio.ensure_future(self._listen()), asyncio.ensure_future(self._call_the_roll())]

    async def close(self):
        """End."""
        for task in self._tasks:
            task.cancel()
        await asyncio.gather(*self._tasks, return_exceptions=True)
        with contextlib.suppress(redis.RedisError, OSError):
            await self._client.hdel(_HERE, self._name)
            await self._client.publish(_STIR, b"")
        await self._client.aclose()

    async def tell(self, body):
        """Tell all."""
        number = await self._asked(self._client.incr(_NUMBER))
        note = b"%d %b" % (number, body)
        async with self._client.pipeline() as together:
            together.set(_NOW, note, ex=KEPT_S).publish(_NOW, note).expire(_KEYS, KEPT_S)
            await self._asked(together.execute())

    async def keep(self, digest, answer):
        """Keep a scene's answer."""
        async with self._client.pipeline() as together:
            together.set(f"{_SCENES}:{digest}", answer, ex=KEPT_S)
            together.lrem(_SCENES, 0, digest).lpush(_SCENES, digest).lrange(_SCENES, MOST_SCENES, -1)
            together.ltrim(_SCENES, 0, MOST_SCENES - 1).expire(_SCENES, KEPT_S)
            oldest = (await self._asked(together.execute()))[3]
        if oldest:
            await self._asked(self._client.delete(*(f"{_SCENES}:{one.decode()}" for one in oldest)))

    async def scene(self, digest):
        """A scene's answer, or None."""
        return await self._asked(self._client.get(f"{_SCENES}:{digest}"))

    async def mark(self, ask, who, along_m):
        """Place somebody's mark."""
        marks = f"rimfall:marks:{ask}"
        async with self._client.pipeline() as together:
            together.hlen(marks).hexists(marks, who)
            count, is_there = await self._asked(together.execute())
            if count >= MOST_MARKS and not is_there:
                return False
            together.hset(marks, who, along_m).expire(marks, KEPT_S).publish(_STIR, b"")
            await self._asked(together.execute())
        return True

    async def marks(self, ask):
        """All marks of an ask."""
        return [float(mark) for mark in await self._asked(self._client.hvals(f"rimfall:marks:{ask}"))]

    async def here(self, count):
        """So many follow by this process."""
        self._count = count
        await self._say_here()

    async def followers(self):
        """How many follow, by all processes that have lately said so."""
        lately_s = self.now_ms() / 1e3 - _GONE_S
        said = (value.split() for value in await self._asked(self._client.hvals(_HERE)))
        return sum(int(count) for count, at_s in said if float(at_s) > lately_s)

    async def _say_here(self):
        async with self._client.pipeline() as together:
            together.hset(_HERE, self._name, f"{self._count} {self.now_ms() / 1e3}")
            together.expire(_HERE, KEPT_S).publish(_STIR, b"")
            await self._asked(together.execute())

    async def _call_the_roll(self):
        while True:
            with contextlib.suppress(RelayAway):
                await self._say_here()
            await asyncio.sleep(_ROLL_CALL_S)

    async def _listen(self):
        """What others tell, for as long as there is a Redis; and what there is, whenever it is there again."""
        while True:
            with contextlib.suppress(redis.RedisError, OSError):
                async with self._client.pubsub(ignore_subscribe_messages=True) as subscribed:
                    await subscribed.subscribe(_NOW, _STIR)
                    await self._look_at_its_clock()
                    self._newest = 0  # one that was started anew counts anew
                    self._hear(await self._client.get(_NOW))
                    self._stirred()
                    async for message in subscribed.listen():
                        if message["channel"] == _NOW.encode():
                            self._hear(message["data"])
                        else:
                            self._stirred()
            await asyncio.sleep(_AGAIN_S)

    async def _look_at_its_clock(self):
        """How far ahead it is, by the quickest of a few answers, which errs by half the time it took at most."""
        quickest_ms = float("inf")
        for _ in range(_LOOKS):
            before_ms = self._clock.now_ms()
            seconds, microseconds = await self._client.time()
            after_ms = self._clock.now_ms()
            if after_ms - before_ms < quickest_ms:
                quickest_ms = after_ms - before_ms
                self._ahead_ms = seconds * 1e3 + microseconds / 1e3 - (before_ms + after_ms) / 2

    def _hear(self, note):
        if note is None:
            return
        number, body = note.split(b" ", 1)
        if int(number) > self._newest:
            self._newest = int(number)
            self._heard(f"r{self._newest}", body)

    async def _asked(self, coming):
        """What Redis answers. Raises RelayAway."""
        try:
            return await coming
        except (redis.RedisError, OSError, TimeoutError):
            raise RelayAway from None
