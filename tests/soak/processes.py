"""What a server and its workers hold, read while they run."""

from dataclasses import dataclass

import psutil


@dataclass(frozen=True)
class Held:
    """At time_s: resident memory of the server and all its workers, open handles and threads of both, and how many workers."""

    time_s: float
    memory_mb: float
    handles: int
    threads: int
    workers: int


def held(process_id, time_s):
    """A Held of a server's process and those it has started; one that ends meanwhile counts no more."""
    server = psutil.Process(process_id)
    processes = [server, *server.children(recursive=True)]
    memory, handles, threads = 0, 0, 0
    for process in processes:
        try:
            with process.oneshot():
                memory += process.memory_info().rss
                handles += process.num_fds() if hasattr(process, "num_fds") else process.num_handles()
                threads += process.num_threads()
        except psutil.NoSuchProcess:
            continue
    return Held(time_s, memory / 1e6, handles, threads, len(processes) - 1)


def slope_mb_per_min(samples, from_s):
    """Least-squares slope of memory from from_s on; 0 where fewer than two samples lie there."""
    later = [one for one in samples if one.time_s >= from_s]
    if len(later) < 2:
        return 0.0
    mean_s = sum(one.time_s for one in later) / len(later)
    mean_mb = sum(one.memory_mb for one in later) / len(later)
    spread = sum((one.time_s - mean_s) ** 2 for one in later)
    return 60 * sum((one.time_s - mean_s) * (one.memory_mb - mean_mb) for one in later) / spread
