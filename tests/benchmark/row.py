"""One figure against its bar, and what is measured beside it: counts that do not vary, and the ratio to a peer's."""

import time
from dataclasses import asdict, dataclass, field


@dataclass(frozen=True)
class Ratio:
    """Ours over the peer's, run in turn: the median of the pairs, and the quarters of them that lie below and above."""

    median: float
    low: float
    high: float
    pairs: int

    def __str__(self):
        return f"{self.median:.3g} ({self.low:.3g} to {self.high:.3g})"


@dataclass(frozen=True)
class Row:
    """reached: True, False, or None where the peer is not here, or nothing is asked of the figure. value: the figure as a number.
    counts: what does not vary from run to run, by name, here and at the commit that it is held against; ratio: to what it is held against."""

    what: str
    figure: str
    bar: str = ""
    reached: bool | None = None
    note: str = ""
    value: float | None = None
    counts: dict = field(default_factory=dict)
    counts_there: dict = field(default_factory=dict)
    ratio: Ratio | None = None

    @property
    def verdict(self):
        return {True: "pass", False: "short", None: "-"}[self.reached]

    def as_data(self):
        return asdict(self) | {"verdict": self.verdict}

    def as_line(self):
        counts = ", ".join(self._count(name) for name in self.counts)
        beside = [f"ratio {self.ratio} of {self.ratio.pairs}" if self.ratio else "", counts, self.note]
        told = "; ".join(filter(None, beside))
        line = f"{self.verdict:5}  {self.what:62} {self.figure:>12}" + (f"  bar {self.bar}" if self.bar else "")
        return line + (f"   ({told})" if told else "")

    def _count(self, name):
        there = self.counts_there.get(name)
        return f"{name} {self.counts[name]:,}" + ("" if there is None else f" ({there:,})")


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


def in_turn(mine, theirs, for_s=1.0, least=3, most=15):
    """mine() and theirs() by turns, each giving a figure: A B B A A B …, until for_s have passed or there are `most` pairs
    -> (median of mine, median of theirs, Ratio). A load that comes and goes meets both of a pair."""
    ends_s, ours, peers = time.perf_counter() + for_s, [], []
    while len(ours) < least or (len(ours) < most and time.perf_counter() < ends_s):
        if len(ours) % 2:
            peers.append(theirs())
            ours.append(mine())
        else:
            ours.append(mine())
            peers.append(theirs())
    ratios = [a / b for a, b in zip(ours, peers, strict=True)]
    ratio = Ratio(quantile(ratios, 0.5), quantile(ratios, 0.25), quantile(ratios, 0.75), len(ratios))
    return quantile(ours, 0.5), quantile(peers, 0.5), ratio
