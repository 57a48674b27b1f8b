"""Combinations on a cluster that Dask distributed runs: the workers work things out, and this process writes what comes back.

No disk is shared. Every worker needs the same version of Rimfall installed. A worker that dies loses nothing: the scheduler gives
what it had to another, and what the scheduler gives up after its own `allowed-failures` is handed in again, twice.
"""

import contextlib
import logging
from concurrent.futures import CancelledError

from .. import __version__
from ..errors import BadInput, refusal
from ..language import tr
from .job import Outcome, work

_AHEAD = 4  # combinations handed in for each thread of the cluster: none waits, and what waits to be written stays few
_MOST_TRIES = 3
_JOINS_WITHIN_S = 30


def each(sweep, numbers, address):
    """(number, its Outcome or the exception it ended in) of every combination, as each is done; each once."""
    distributed = _package()
    with _client(distributed, address) as client:
        _same_version(client, address)
        left, tries, at_work = list(reversed(numbers)), {}, {}
        queue = distributed.as_completed(loop=client.loop)
        while left or at_work:
            most = _AHEAD * max(sum(client.nthreads().values()), 1)
            while left and len(at_work) < most:
                number = left.pop()
                tries[number] = tries.get(number, 0) + 1
                future = client.submit(work, sweep, number, pure=False)
                at_work[future] = number
                queue.add(future)
            future = next(queue)
            number, came = at_work.pop(future), _came_of(distributed, future)
            if isinstance(came, distributed.KilledWorker) and tries[number] < _MOST_TRIES:
                left.append(number)
            else:
                yield number, came


def _came_of(distributed, future):
    """The Outcome of a future that is done, or the exception it ended in."""
    try:
        outcome = future.exception() or future.result()
    except distributed.KilledWorker as error:  # its worker died with the answer, and those after it too
        return error
    if isinstance(outcome, Outcome) and outcome.program != __version__:
        raise _other_version(outcome.program)
    return outcome


def _package():
    """Dask distributed, or a refusal that says how to come by it."""
    try:
        import distributed
    except ImportError:
        say = tr(
            "A scheduler needs the package distributed, which is not installed; install it with: pip install 'rimfall[cluster]'."
        )
        was, may_be = tr("no package distributed"), tr("used with the extra cluster installed")
        raise BadInput(refusal("scheduler", was, may_be, say)) from None
    return distributed


@contextlib.contextmanager
def _client(distributed, address):
    """A Client of the scheduler, closed again; what is still handed in is withdrawn with it. Raises BadInput where there is no
    scheduler, or no longer."""
    logging.getLogger("distributed").setLevel(logging.CRITICAL)  # what goes wrong is said once, in our words
    try:
        client = distributed.Client(address, set_as_default=False, timeout=_JOINS_WITHIN_S)
    except (OSError, ValueError) as error:
        say = tr("No scheduler answers at {address}: {error}.", address=address, error=error)
        may_be = tr("the address of a running scheduler, such as tcp://127.0.0.1:8786")
        raise BadInput(refusal("scheduler", address, may_be, say)) from None
    try:
        yield client
    except (OSError, CancelledError):
        say = tr("The scheduler at {address} went away; the same command goes on from here.", address=address)
        raise BadInput(refusal("scheduler", address, tr("a scheduler that runs on"), say)) from None
    finally:
        client.close()


def _same_version(client, address):
    """Refuse a cluster without workers, or whose workers have another version of the program, or none."""
    try:
        client.wait_for_workers(1, timeout=_JOINS_WITHIN_S)
    except TimeoutError:
        say = tr("The scheduler at {address} has no worker; start one with: dask worker {address}.", address=address)
        raise BadInput(refusal("scheduler", address, tr("a scheduler with a worker or more"), say)) from None
    for version in client.run(version_here, on_error="return").values():
        if version != __version__:
            raise _other_version(version)


def version_here():
    """The version of the program where this runs."""
    return __version__


def _other_version(version):
    has = version if isinstance(version, str) else tr("none that can be used ({why})", why=version)
    say = tr(
        "This is Rimfall {version}, but a worker has {has}; install the same version on every worker.",
        version=__version__,
        has=has,
    )
    return BadInput(refusal("scheduler", has, __version__, say))
