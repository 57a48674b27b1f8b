"""A budget of work, counted while the work is done: steps, evaluations of laws, samples, bytes kept, and seconds; and the look
whether whoever asked is still there.

Whoever asks opens one with `spending`; every loop that can run long charges it by `spend`. A count is the same on any machine, the
seconds are not. Without a budget nothing is counted.
"""

from collections.abc import Callable, Iterator
from contextlib import contextmanager
from contextvars import ContextVar
from dataclasses import dataclass
from math import inf
from time import monotonic, thread_time

from ..errors import TooMuch, refusal
from ..language import tr, tr_later, written

LOOK_EVERY_S = 0.02  # of work, between looks whether to stop
_NAMES = ("steps", "law_calls", "samples", "bytes")
_COUNTED = {
    "steps": tr_later("{count} steps"),
    "law_calls": tr_later("{count} evaluations"),
    "samples": tr_later("{count} samples"),
}


class Stopped(Exception):
    """Whoever asked has gone, or wants it no more."""


@dataclass(frozen=True)
class Amount:
    """An amount of work: steps taken, laws evaluated (one a body and instant), samples made, bytes kept, seconds passed."""

    steps: float = 0
    law_calls: float = 0
    samples: float = 0
    bytes: float = 0
    seconds: float = 0.0

    def __sub__(self, other: "Amount") -> "Amount":
        return Amount(
            self.steps - other.steps,
            self.law_calls - other.law_calls,
            self.samples - other.samples,
            self.bytes - other.bytes,
            self.seconds - other.seconds,
        )

    def __add__(self, other: "Amount") -> "Amount":
        return Amount(
            self.steps + other.steps,
            self.law_calls + other.law_calls,
            self.samples + other.samples,
            self.bytes + other.bytes,
            self.seconds + other.seconds,
        )

    def told(self, what: str) -> str:
        """One of its figures in words."""
        figure = getattr(self, what)
        if what == "seconds":
            return f"{written(figure, '.3g')} s"
        if what == "bytes":
            return f"{written(figure / 1e6, ',.0f')} MB"
        return tr(_COUNTED[what], count=written(figure, ",.0f"))


class TooMuchWork(TooMuch):
    """A budget is spent. what: of which it had too little (a field of Amount); used and most: Amounts; index: number of one that was
    still under way, in the list it came in, None where nobody has said; waited_s: how much of the seconds the machine gave to others."""

    def __init__(self, what: str, used: Amount, most: Amount, *refusals):
        self.what, self.used, self.most, self.index, self.waited_s = what, used, most, None, 0.0
        within, spent = most.told(what), used.told(what)
        allowed = tr("within {amount}", amount=within)
        say = tr(
            "This is too much work: it was stopped after {spent}; one request may use {most}.", spent=spent, most=within
        )
        super().__init__(*(refusals or (refusal("work", spent, allowed, say),)))

    def of(self, *refusals) -> "TooMuchWork":
        """The same in other words."""
        again = TooMuchWork(self.what, self.used, self.most, *refusals)
        again.index, again.waited_s = self.index, self.waited_s
        return again

    @property
    def busy(self) -> str:
        """A sentence to follow another where the machine was busy with other things for half the time or more, else nothing."""
        if self.waited_s < 0.5 * self.used.seconds:
            return ""
        return " " + tr(
            "The machine was busy with other things for {time} s of that time, so it may fit when tried again later.",
            time=written(self.waited_s, ".3g"),
        )


class Budget:
    """The most of each (None for no bound) and what is used of it; the seconds run from when it is made, by the thread that works.

    stopped: asked every LOOK_EVERY_S of work; once it says True the work ends with Stopped.
    """

    def __init__(
        self,
        *,
        steps: int | None = None,
        law_calls: int | None = None,
        samples: int | None = None,
        bytes: int | None = None,
        seconds: float | None = None,
        stopped: Callable[[], bool] | None = None,
    ):
        bounds = (steps, law_calls, samples, bytes, seconds)
        self.most = Amount(*(inf if bound is None else bound for bound in bounds))
        self._begin_s = monotonic()
        self._ends_s, self._worked_s = self._begin_s + self.most.seconds, thread_time()
        self._look_s, self._stopped = self._begin_s, stopped
        self._steps = self._law_calls = self._samples = self._bytes = 0

    @property
    def used(self) -> Amount:
        """What is used so far."""
        return Amount(self._steps, self._law_calls, self._samples, self._bytes, monotonic() - self._begin_s)

    def spend(self, steps: int = 0, law_calls: int = 0, samples: int = 0, bytes: int = 0) -> None:
        """Count some work that is about to be done, or was. Raises TooMuchWork or Stopped."""
        self._steps += steps
        self._law_calls += law_calls
        self._samples += samples
        self._bytes += bytes
        most = self.most
        if (
            self._steps > most.steps
            or self._law_calls > most.law_calls
            or self._samples > most.samples
            or self._bytes > most.bytes
        ):
            used = self.used
            raise TooMuchWork(next(n for n in _NAMES if getattr(used, n) > getattr(most, n)), used, most)
        now_s = monotonic()
        if now_s >= self._look_s:
            self._look(now_s)

    def _look(self, now_s):
        """Look at the clock and at who asked."""
        if self._stopped is not None and self._stopped():
            raise Stopped
        if now_s >= self._ends_s:
            exceeded = TooMuchWork("seconds", self.used, self.most)
            exceeded.waited_s = now_s - self._begin_s - (thread_time() - self._worked_s)
            raise exceeded
        self._look_s = now_s + LOOK_EVERY_S


_BUDGET: ContextVar[Budget | None] = ContextVar("budget", default=None)


def spend(steps: int = 0, law_calls: int = 0, samples: int = 0, bytes: int = 0) -> None:
    """Charge the budget that is open, if one is. Raises TooMuchWork or Stopped."""
    budget = _BUDGET.get()
    if budget is not None:
        budget.spend(steps, law_calls, samples, bytes)


def current() -> Budget | None:
    """The budget that is open, or None."""
    return _BUDGET.get()


@contextmanager
def passing() -> Iterator[None]:
    """Bytes kept inside are given back at its end: nothing that was made there is left."""
    budget = _BUDGET.get()
    kept = 0 if budget is None else budget.used.bytes
    try:
        yield
    finally:
        if budget is not None:
            budget.spend(bytes=kept - budget.used.bytes)


@contextmanager
def spending(budget: Budget | None) -> Iterator[Budget | None]:
    """All work inside is charged to this budget (None: to none)."""
    token = _BUDGET.set(budget)
    try:
        yield budget
    finally:
        _BUDGET.reset(token)
