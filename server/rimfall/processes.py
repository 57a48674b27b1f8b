"""Processes that work things out beside this one: how many, how they start, and that none outlives it. For the server and for sweeps."""

import contextlib
import multiprocessing
import os
import signal
import sys
import threading
from multiprocessing import resource_tracker

from .errors import BadInput, refusal
from .language import tr
from .threads import THREADS

GREATEST_WORKERS = 512
_starting = threading.RLock()  # the environment is the whole process's
_loaded = []  # modules of the process that others are forks of; it is one for all who ask


def cores():
    """How many processes this machine runs at once."""
    return len(os.sched_getaffinity(0)) if hasattr(os, "sched_getaffinity") else os.cpu_count() or 1


def workers_of(count, least=1):
    """How many processes to run: as many as asked, or as there are cores. Raises BadInput."""
    if count is not None and not least <= count <= GREATEST_WORKERS:
        may_be = tr("{least} to {greatest}", least=least, greatest=GREATEST_WORKERS)
        say = tr("{field} was {value}; it must be {allowed}.", field="--workers", value=count, allowed=may_be)
        raise BadInput(refusal("workers", count, may_be, say))
    return cores() if count is None else count


@contextlib.contextmanager
def started_quietly():
    """What a process inherits when it starts: one thread for linear algebra, and signals of the keyboard held back."""
    with _starting:
        kept = {name: os.environ.get(name) for name in THREADS}
        masks = hasattr(signal, "pthread_sigmask")
        # as it is: Ctrl+C may come before it is changed
        held = signal.pthread_sigmask(signal.SIG_BLOCK, ()) if masks else None
        try:
            os.environ.update(dict.fromkeys(THREADS, "1"))
            if masks:
                resource_tracker.ensure_running()  # it lets go of the signals again, when it starts
                signal.pthread_sigmask(signal.SIG_BLOCK, {signal.SIGINT})
            yield
        finally:
            for name, value in kept.items():
                if value is None:
                    os.environ.pop(name, None)
                else:
                    os.environ[name] = value
            if masks:
                signal.pthread_sigmask(signal.SIG_SETMASK, held)


def forks_of(*modules):
    """The context of processes that are forks of one which has loaded these modules, beside what others asked of it, and done
    nothing (20 ms), where that is safe; None elsewhere."""
    if sys.platform != "linux":
        return None
    _loaded.extend(name for name in modules if name not in _loaded)
    context = multiprocessing.get_context("forkserver")
    context.set_forkserver_preload(list(_loaded))
    return context


def started_from(*modules):
    """The context of processes that begin with these modules: forks where there can be any (there is a folder for the socket of the one
    they come from), else started anew."""
    context = forks_of(*modules)
    if context is not None:
        from multiprocessing import forkserver  # not on Windows

        with contextlib.suppress(EOFError, OSError), started_quietly():
            forkserver.ensure_running()
            return context
    return multiprocessing.get_context("spawn")


def begin():
    """In a new process: Ctrl+C is the first one's to answer, and when that one is gone, so is this."""
    signal.signal(signal.SIGINT, signal.SIG_IGN)
    threading.Thread(target=_end_with_parent, daemon=True).start()


def _end_with_parent():
    multiprocessing.parent_process().join()
    os._exit(1)
