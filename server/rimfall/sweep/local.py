"""Combinations on this machine's cores: a pool of processes that work things out and write nothing."""

import contextlib
import multiprocessing
from concurrent.futures import FIRST_COMPLETED, ProcessPoolExecutor, wait
from concurrent.futures.process import BrokenProcessPool

from ..processes import begin, started_from, started_quietly
from .job import work

_AHEAD = 2  # combinations handed out for each process: none waits, and what waits to be written stays small
_MOST_TRIES = 3


def each(sweep, numbers, workers):
    """(number, its Outcome or the exception it ended in) of every combination, as each is done.

    A process that dies loses nothing: what was handed out then is done again by a new pool, one at a time, so that the one that
    kills its process is told from the others. After three times it is given up.
    """
    left, tries = list(reversed(numbers)), {}
    while left:
        lost = yield from _until_one_dies(sweep, left, min(workers, len(left)), tries)
        for number, error in lost:
            tries[number] = tries.get(number, 0) + 1
            if tries[number] == _MOST_TRIES:
                yield number, error
            else:
                left.append(number)


def _until_one_dies(sweep, left, workers, tries):
    """Do what is left, the last first; where a process dies, return (number, error) of all that was handed out."""
    with _pool(workers) as pool:
        at_work = {}
        while left or at_work:
            most = 1 if left and left[-1] in tries else _AHEAD * workers
            lost = []
            while left and len(at_work) < most:
                number = left.pop()
                try:
                    with started_quietly():  # a pool starts its processes one by one, as it is handed work
                        at_work[pool.submit(work, sweep, number)] = number
                except BrokenProcessPool:  # one died before this was handed out
                    left.append(number)
                    break
            if not at_work:
                return []
            for future in wait(at_work, return_when=FIRST_COMPLETED).done:
                number, error = at_work.pop(future), future.exception()
                if isinstance(error, BrokenProcessPool):
                    lost.append((number, error))
                else:
                    yield number, future.result() if error is None else error
            if lost:
                return lost + [(number, lost[0][1]) for number in at_work.values()]
    return []


@contextlib.contextmanager
def _pool(workers):
    """A pool whose processes compute on one thread each, leave Ctrl+C to this one, and end with it. They write nothing, so they
    are ended at once, whatever they are at."""
    before = set(multiprocessing.active_children())
    pool = ProcessPoolExecutor(workers, started_from(f"{__package__}.job"), begin)
    try:
        yield pool
    finally:
        for process in set(multiprocessing.active_children()) - before:
            process.terminate()
        pool.shutdown(wait=True, cancel_futures=True)
