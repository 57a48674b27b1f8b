"""The net that landings make: lines through the throws of one equal figure, each cut where a neighbour ends otherwise."""

from dataclasses import dataclass

import numpy as np

from .landings import ENDINGS, Landings

LINES = 12  # of each figure, about
FLAT = 0.02  # of the way along the ground: landings that lie less far apart across it are on one line


@dataclass(frozen=True)
class Run:
    """Landings joined, first to last along a line; before, after: how the throws beside them ended, None at the end of the range."""

    first: int
    last: int
    before: str | None
    after: str | None


@dataclass(frozen=True)
class NetLine:
    """The throws of one equal figure. of: 0 for a row, 1 for a column; at: its number; runs along it."""

    of: int
    at: int
    runs: tuple[Run, ...]


def is_flat(landings: Landings) -> bool:
    """Whether all lie on one line along the ground, so that a plan would show no net."""
    landed = landings.landed
    if not np.any(landed):
        return True
    along, across = landings.place_m[landed, 0], landings.place_m[landed, 2]
    return bool(np.ptp(across) <= FLAT * np.ptp(along))


def net_of(landings: Landings, chosen: tuple[list[int], list[int]]) -> list[NetLine]:
    """NetLines of the chosen rows and columns; those where nothing lands are left out."""
    ended = landings.ended.reshape(landings.shape)
    lines = []
    for of, numbers in enumerate(chosen):
        for at in numbers:
            runs = _runs(ended[at] if of == 0 else ended[:, at])
            if runs:
                lines.append(NetLine(of, at, runs))
    return lines


def _runs(ended):
    landed = np.concatenate([[0], ended == 0, [0]]).astype(int)
    change = np.diff(landed)
    starts, stops = np.flatnonzero(change == 1), np.flatnonzero(change == -1)
    return tuple(
        Run(
            int(first),
            int(stop) - 1,
            ENDINGS[ended[first - 1]] if first else None,
            ENDINGS[ended[stop]] if stop < len(ended) else None,
        )
        for first, stop in zip(starts, stops, strict=True)
    )


def numbers(landings: Landings, line: NetLine) -> np.ndarray:
    """Numbers (n,) of the throws along a line."""
    rows, columns = landings.shape
    return line.at * columns + np.arange(columns) if line.of == 0 else line.at + columns * np.arange(rows)


def chosen(values: np.ndarray) -> list[int]:
    """Numbers of the values that have a line: all where they are few, else about LINES a round step apart, the first and the last."""
    count = len(values)
    if count <= LINES:
        return list(range(count))
    least, step = -(-(count - 1) // (LINES - 1)), abs(float(values[1] - values[0]))
    stride = min(range(least, 2 * least + 1), key=lambda stride: (*_roughness(stride * step), stride))
    shares = values[:stride] / (stride * step)
    first = int(np.argmin(np.abs(shares - np.rint(shares))))  # so that round values are among them
    return sorted({0, *range(first, count, stride), count - 1})


def _roughness(step):
    """How little round a step is: figures that it takes to write, and whether it is no 1, 2 or 5."""
    digits = f"{step:.6g}".partition("e")[0].replace(".", "").strip("0")
    return len(digits), digits not in ("1", "2", "5")
