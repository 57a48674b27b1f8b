"""One figure against its bar."""

import time
from dataclasses import dataclass


@dataclass(frozen=True)
class Row:
    """reached: True, False, or None where the peer is not here."""

    what: str
    figure: str
    bar: str
    reached: bool | None
    note: str = ""

    @property
    def verdict(self):
        return {True: "pass", False: "short", None: "-"}[self.reached]


def best(work, times=5):
    """Seconds of the quickest of several runs, after one to warm up."""
    work()
    found = []
    for _ in range(times):
        start = time.perf_counter()
        work()
        found.append(time.perf_counter() - start)
    return min(found)


def quantile(values, share):
    return sorted(values)[min(int(share * len(values)), len(values) - 1)]
