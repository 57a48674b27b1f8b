"""The pool: work waits here, is handed to processes, and is stopped. It knows nothing of HTTP; each of its processes has a thread
here that waits for it, so that nothing waits on the event loop. One more looks at all that runs, and ends what heeds nothing:
whoever waits for such a process would wait for ever.

As many jobs run at once as there are workers. One that has run for a second is long: it gives way to all others and takes no
worker's place any more (as many as there are workers may do so), so that a few heavy scenes do not stop the light ones.
With no workers, threads of this process do the work, as tests want it.
"""

import sys
import threading
import time
from collections import deque
from collections.abc import Callable

from .. import processes
from ..language import speaking
from .asked import Asked, refused, too_much_time
from .worker import STARTS_WITHIN_S, Died, Here, NotTaken, Process

MOST_WAITING = 256
MOST_WAITING_BYTES = 64_000_000
LONG_S = 1.0
LOOK_EVERY_S = 0.05  # at what runs
HEEDED_WITHIN_S = 0.25  # a stop; then the process is killed
CLOSES_WITHIN_S = 1.0
LATE_S = 1.0  # past the most that it may take, where the work itself should have refused


class Full(Exception):
    """No more may wait here, or it has waited long enough."""


class Closed(Full):
    """The server is ending."""


class Job:
    """Some work. tell(what) is called, from another thread: with (done, of) as it goes; last, and once, with its Answer, with Died
    or Closed, or with None where it was stopped."""

    def __init__(self, asked: Asked, tell: Callable[[object], None]):
        self.asked, self.tell = asked, tell
        self.submitted_s = time.monotonic()
        self.worker = self.began_s = self.stopped_s = None
        self.is_long = self.is_late = False


class Pool:
    """Workers, started when they are first needed, and the jobs that wait for them."""

    def __init__(self, workers: int):
        self._worker_of, self._keeps_threads = (Process, True) if workers else (Here, False)
        self._most = workers or processes.cores()
        self._change = threading.Condition()
        self._waiting, self._running = deque(), set()
        self._idle = []  # threads that wait for a job, the one that had one last at the end
        self._threads, self._workers = set(), set()
        # threads without a job; jobs that take no worker's place; workers that are not there yet
        self._free = self._long = self._starting = 0
        self._closed = False
        self._is_watched, self._is_busy = False, threading.Event()

    def submit(self, job: Job):
        """Begin a job, or let it wait. Raises Full or Closed."""
        with self._change:
            count, size = len(self._waiting) + 1, sum(len(j.asked.body) for j in (*self._waiting, job))
            if self._closed:
                raise Closed
            if count > MOST_WAITING or (size > MOST_WAITING_BYTES and count > 1):
                raise Full
            self._waiting.append(job)
            self._start_where_wanted()
            self._change.notify_all()

    def warm(self):
        """Have one worker started, so that the first job need not wait for it."""
        with self._change:
            if self._keeps_threads and not self._threads and not self._closed:
                self._start()

    def give_up(self, job: Job):
        """Take a job back that has waited long enough: whether it still waits, and for more than a worker's start may take."""
        with self._change:
            is_starting = self._starting and time.monotonic() - job.submitted_s < STARTS_WITHIN_S
            is_waiting = job in self._waiting and not is_starting
            if is_waiting:
                self._waiting.remove(job)
            return is_waiting

    def stop(self, job: Job):
        """Nobody wants this job any more."""
        with self._change:
            if job in self._waiting:
                self._waiting.remove(job)
            elif job in self._running and job.stopped_s is None:
                job.stopped_s = time.monotonic()
                if job.worker is not None:
                    job.worker.stop()

    def counts(self):
        """How many jobs run and how many wait."""
        with self._change:
            return len(self._running), len(self._waiting)

    def pids(self):
        """The processes that are there."""
        with self._change:
            return [worker.pid for worker in self._workers]

    def close(self):
        """End all work, at once: what waits and what runs is told Closed."""
        self._is_busy.set()  # the watcher's end
        with self._change:
            self._closed = True
            waiting, self._waiting = self._waiting, deque()
            for job in self._running:
                if job.worker is not None:
                    job.worker.kill()
            self._change.notify_all()
        for job in waiting:
            job.tell(Closed())

    def join(self):
        """Wait, not for long, until the workers of a closed pool are gone."""
        with self._change:
            threads = list(self._threads)
        ends_s = time.monotonic() + CLOSES_WITHIN_S
        for thread in threads:
            thread.join(max(ends_s - time.monotonic(), 0.0))

    def _start_where_wanted(self):
        if self._free < len(self._waiting) and len(self._threads) - self._long < self._most:
            self._start()

    def _start(self):
        thread = threading.Thread(target=self._run, daemon=True)
        self._threads.add(thread)
        self._free += 1
        try:
            if self._keeps_threads and not self._is_watched:
                threading.Thread(target=self._watch, daemon=True).start()
                self._is_watched = True
            thread.start()
        except RuntimeError as error:  # no more threads; what waits does so until one of those there are is free
            self._threads.discard(thread)
            self._free -= 1
            _complain(error)

    def _run(self):
        """The thread of a worker: one job after another."""
        worker = job = None
        try:
            worker = self._begun()
            while (job := self._next()) is not None:
                if not worker.alive():  # it died with nothing to do
                    worker = self._begun(worker)
                is_fit = self._do(job, worker)
                if is_fit is None:  # it died in that moment
                    worker = self._begun(worker)
                    is_fit = self._do(job, worker, is_last=True)
                job = None
                if not is_fit:
                    worker = self._begun(worker)
        except OSError as error:  # such as no more processes
            _complain(error)
        finally:
            with self._change:
                self._threads.discard(threading.current_thread())
                self._free -= job is None
                self._running.discard(job)
                self._change.notify_all()
            if job is not None:
                job.tell(Died())
            self._end(worker)

    def _begun(self, instead_of=None):
        """A new worker. What waits for it does not wait in vain."""
        self._end(instead_of)
        with self._change:
            self._starting += 1
        worker = None
        try:
            worker = self._worker_of()
            return worker
        finally:
            with self._change:
                self._starting -= 1
                self._workers |= {worker} - {None}

    def _end(self, worker):
        """Let go of a worker, if it is there."""
        with self._change:
            is_there = worker in self._workers
            self._workers.discard(worker)
        if is_there:
            worker.close()

    def _next(self):
        """The job that has waited longest, once there is one; None where this thread is wanted no more. Of several that wait for one, the
        last to have had one takes it: its worker has kept what whoever asks now, most often the same page, has asked before."""
        here = threading.current_thread()
        with self._change:
            self._idle.append(here)
            try:
                while True:
                    is_surplus = len(self._threads) - self._long > self._most
                    if is_surplus and not self._closed:
                        self._threads.discard(here)  # at once: of all that look now one is too many
                    if self._closed or is_surplus or not (self._waiting or self._keeps_threads):
                        return None
                    if self._waiting and here in self._idle[-len(self._waiting) :]:
                        self._free -= 1
                        job = self._waiting.popleft()
                        self._running.add(job)
                        self._is_busy.set()
                        return job
                    self._change.wait()
            finally:
                self._idle.remove(here)

    def _do(self, job, worker, is_last=False):
        """Have a job done, and tell what came of it; whether the worker is fit for another. None where the job was not taken, and
        another worker may have it; not where this is the last."""
        with self._change:
            job.began_s, job.worker = time.monotonic(), worker
            worker.begin()
            is_wanted = job.stopped_s is None and not self._closed
        outcome, is_alive = None, True
        if is_wanted:
            try:
                outcome = worker.work(job.asked, job.tell)
            except Died as died:
                if isinstance(died, NotTaken) and not (is_last or job.is_late):
                    with self._change:
                        job.worker = None
                    return None
                outcome, is_alive = died, False
        with self._change:
            self._running.discard(job)
            self._long -= job.is_long
            self._free += 1
            if self._closed:
                outcome = Closed()
            elif job.stopped_s is not None:
                outcome = None
            elif job.is_late and not is_alive:
                with speaking(job.asked.language):
                    outcome = refused(too_much_time(job.asked.most_s))
        job.tell(outcome)
        return is_alive and not job.is_long and not worker.grown

    def _watch(self):
        """The thread that looks at what runs, while anything does."""
        while True:
            self._is_busy.wait()
            time.sleep(LOOK_EVERY_S)
            with self._change:
                if self._closed:
                    return
                if not self._running:
                    self._is_busy.clear()
                for job in self._running:
                    if job.worker is not None:
                        self._look(job, time.monotonic())

    def _look(self, job, now_s):
        """What becomes of a job that still runs: it is long, or it heeded neither its time nor that it was stopped."""
        if not job.is_long and now_s - job.began_s > LONG_S and self._long < self._most:
            job.is_long = True
            self._long += 1
            job.worker.give_way()
            self._start_where_wanted()
        job.is_late = now_s - job.began_s > job.asked.most_s + LATE_S
        if job.is_late or (job.stopped_s is not None and now_s - job.stopped_s > HEEDED_WITHIN_S):
            job.worker.kill()


def _complain(error):
    print(f"rimfall: a worker could not be started: {error}", file=sys.stderr)
