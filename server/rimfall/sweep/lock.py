"""One run at a time in a folder: a lock of the operating system's, which goes with the process that holds it, however that ends.

The lock is on a file, which names its holder for whoever is refused and is empty when nobody holds it. Where a file system knows no
locks, two runs are as free to collide there as before.
"""

import contextlib
import os
import socket

from ..errors import BadInput, refusal
from ..language import tr

try:
    import fcntl
except ImportError:  # Windows
    import msvcrt

    fcntl = None

NAME = "lock"
_PLACE = 1 << 30  # the byte that Windows locks, far beyond the text: nobody else may read a byte that is locked there


@contextlib.contextmanager
def only_run_in(folder, inner):
    """Hold the lock of the run in `folder`, which lies in its folder `inner`. Raises BadInput where another run has it, OSError
    where no file can be made."""
    handle = os.open(inner / NAME, os.O_RDWR | os.O_CREAT, 0o644)
    try:
        if not _take(handle):
            holder = os.read(handle, 200).decode("utf-8", "replace").strip() or tr("one that has just begun")
            say = tr(
                "Another run is at work in {folder}: {holder}. Wait for its end, or choose another folder.",
                folder=folder,
                holder=holder,
            )
            raise BadInput(refusal("out", str(folder), tr("a folder that no other run is at work in"), say))
        os.ftruncate(handle, 0)
        os.write(handle, tr("process {number} on {machine}", number=os.getpid(), machine=socket.gethostname()).encode())
        try:
            yield
        finally:
            os.ftruncate(handle, 0)
    finally:
        os.close(handle)


def _take(handle):
    """Whether the lock is ours now."""
    try:
        if fcntl is None:
            os.lseek(handle, _PLACE, os.SEEK_SET)
            msvcrt.locking(handle, msvcrt.LK_NBLCK, 1)
        else:
            fcntl.flock(handle, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        return False
    except OSError:
        return fcntl is not None  # Windows says so of a lock that is taken, others of a file system without locks
    finally:
        os.lseek(handle, 0, os.SEEK_SET)
    return True
