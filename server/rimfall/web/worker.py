"""A process that works things out for the server, one at a time, and the server's hold on it.

It is handed `Asked`s over a pipe, tells how far it is, and answers; while it works, a word on a pipe of its own says that nobody
waits for it any more. That word never waits for what else is sent.
"""

import contextlib
import multiprocessing
import os
import signal
import sys
import threading
import time

from .. import processes
from .asked import Answer, Asked

STARTS_WITHIN_S = 30.0
_TELL_EVERY_S = 0.1
_GROWN_BYTES = 400_000_000  # more than a request may keep: past it an allocation fails, and the answer is a refusal
_KEPT_BYTES = (
    150_000_000  # what one may hold on to after an answer, above what it began with; past it another takes its place
)


class Died(Exception):
    """The process that worked on it is gone."""


class NotTaken(Died):
    """It was gone before it had begun: another may do the work."""


_ANEW = multiprocessing.get_context("spawn")
_CONTEXT = processes.forks_of(__name__, f"{__package__}.work") or _ANEW


class Process:
    """The server's hold on one process, which is ready for work. One thread gives it work, and may wait for it for ever; any thread
    may stop or kill it, at once. Raises OSError where no process can be had."""

    def __init__(self):
        (self._pipe, theirs), (stops, self._stops) = _CONTEXT.Pipe(), _CONTEXT.Pipe(duplex=False)
        try:
            self._process = _started(theirs, stops)
        finally:
            theirs.close()
            stops.close()
        self.pid = self._process.pid
        self.grown = False
        self._number = 0
        try:
            if not self._pipe.poll(STARTS_WITHIN_S):
                raise OSError(f"it was not ready within {STARTS_WITHIN_S:g} s")
            self._pipe.recv()
        except (EOFError, OSError) as error:
            self.close()
            raise OSError(str(error) or "it ended before it was ready") from None

    def begin(self):
        """A piece of work is about to begin: what is stopped from now on is that."""
        self._number += 1

    def work(self, asked: Asked, tell) -> Answer | None:
        """The answer, or None where it was stopped; tell((done, of)) as it goes. Raises Died, NotTaken."""
        try:
            self._pipe.send((self._number, asked))
            self._pipe.recv()
        except (EOFError, OSError):
            raise NotTaken from None
        try:
            while True:
                what = self._pipe.recv()
                if len(what) == 2:
                    tell(what)
                    continue
                *heading, is_answered, self.grown = what
                return Answer(self._pipe.recv_bytes(), *heading) if is_answered else None
        except (EOFError, OSError):
            raise Died from None

    def stop(self):
        """Tell it that what it is at is wanted no more."""
        with contextlib.suppress(OSError):
            self._stops.send(self._number)

    def kill(self):
        """End it, whatever it is at. Not by way of multiprocessing, which takes it for ended once what started it is gone."""
        if os.name == "nt":
            self._process.kill()
            return
        with contextlib.suppress(ProcessLookupError):
            os.kill(self.pid, signal.SIGKILL)

    def give_way(self):
        """Let whatever else wants a processor have it first, from now on."""
        if hasattr(os, "setpriority"):
            with contextlib.suppress(OSError):
                os.setpriority(os.PRIO_PROCESS, self.pid, 10)

    def alive(self):
        """Whether it is there; asked while it has nothing to do, and so nothing to say but that its end of the pipe is closed."""
        return not self._pipe.poll()

    def close(self):
        """End it and let go of it."""
        self.kill()
        self._process.join()
        self._process.close()
        self._pipe.close()
        self._stops.close()


def _started(*arguments):
    """A new process, at work with these arguments. What starts them all may just have ended, and begins anew; where there is no place for
    its socket (no folder to write to, or a path too long) they start one by one. Raises OSError."""
    for context in (_CONTEXT, _CONTEXT, _ANEW):
        process = context.Process(target=_work, args=arguments, daemon=True)
        try:
            with processes.started_quietly():
                process.start()
            return process
        except (EOFError, OSError) as error:
            trouble = str(error)
    raise OSError(trouble or "what starts them has ended")


class Here:
    """What stands for a process where there is none: the thread that gives it work does it. It can be told to stop, not made to."""

    def __init__(self):
        self.pid, self.grown = os.getpid(), False
        self._stop = threading.Event()

    def begin(self):
        self._stop.clear()

    def work(self, asked, tell):
        return _answered()(asked, _watch(asked, tell), self._stop.is_set)

    def stop(self):
        self._stop.set()

    kill = stop

    def give_way(self):
        """Nothing to be done: a thread has its process's priority."""

    def alive(self):
        return True

    def close(self):
        """Nothing is held."""


def _work(pipe, stops):
    """The process: answer until the server is gone."""
    processes.begin()
    began_bytes = _resident_bytes()
    answered = _answered()
    _bound_memory()
    with contextlib.suppress(OSError):  # the server is gone, and this is at its end
        pipe.send("ready")
    while True:
        try:
            number, asked = pipe.recv()
            pipe.send("taken")
            stopped = _stopped(stops, number)
            answer = None if stopped() else answered(asked, _watch(asked, pipe.send), stopped)
            grown = _resident_bytes() - began_bytes > _KEPT_BYTES
            heading = (None, None, None) if answer is None else (answer.media_type, answer.headers, answer.status)
            pipe.send((*heading, answer is not None, grown))
            if answer is not None:
                pipe.send_bytes(answer.body)
        except (EOFError, OSError):
            return


def _answered():
    """What does the work. It is loaded where that is done: the server itself, whose worker this is not, is there in half a second."""
    from .work import answered

    return answered


def _watch(asked, tell):
    """A function of (done, of) that tells them, not more often than a reader can follow; None where nobody wants to know."""
    if not asked.tells:
        return None
    told_s = 0.0

    def watch(done, of):
        nonlocal told_s
        if time.monotonic() - told_s >= _TELL_EVERY_S:
            told_s = time.monotonic()
            tell((done, of))

    return watch


def _stopped(stops, number):
    """A function that says whether this piece of work is to stop: the server has sent its number."""
    is_stopped = False

    def stopped():
        nonlocal is_stopped
        while not is_stopped and stops.poll():
            is_stopped = stops.recv() == number
        return is_stopped

    return stopped


def _resident_bytes():
    """Memory that this process holds now; 0 where the system does not say (it is Linux's way)."""
    try:
        with open("/proc/self/statm", encoding="ascii") as file:
            return int(file.read().split()[1]) * os.sysconf("SC_PAGE_SIZE")
    except OSError:
        return 0


def _bound_memory():
    """Let an allocation fail, where the system can, before one request takes the machine's memory."""
    if sys.platform != "linux":
        return
    import resource

    with open("/proc/self/status", encoding="ascii") as file:
        held_kb = next(int(line.split()[1]) for line in file if line.startswith("VmData:"))
    most = held_kb * 1024 + _GROWN_BYTES
    with contextlib.suppress(ValueError):  # a stricter bound stands
        resource.setrlimit(resource.RLIMIT_DATA, (most, most))
