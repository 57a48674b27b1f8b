"""Standard input, output and error where a shell has closed them, a disk is full, or the reader has gone: no traceback, and an exit
code that says what came of it.

What nobody reads is no trouble: a closed output, or a pipe whose reader went away. What should have been kept and could not be is.
"""

import contextlib
import os
import sys


def stand_in_for_closed():
    """Open what was closed onto nothing: else the next file that is opened takes its number, and what is printed lands in it.
    `sys.stdin` stays None, for a command that should read it to say so."""
    for number in range(3):
        try:
            os.fstat(number)
        except OSError:
            os.open(os.devnull, os.O_RDWR)
    for name in ("stdout", "stderr"):
        if getattr(sys, name) is None:
            setattr(sys, name, open(os.devnull, "w", encoding="utf-8"))  # noqa: SIM115 - until the process ends


class NotWritten(Exception):
    """What a command says could not be written; from the OSError that says why."""


@contextlib.contextmanager
def writing():
    """Write to standard output within. Raises NotWritten; what was left to write is forgotten then."""
    try:
        yield
        sys.stdout.flush()
    except OSError as error:
        _onto_nothing(sys.stdout)
        raise NotWritten from error


def complain(line):
    """A line on standard error, if it can be had."""
    try:
        print(line, file=sys.stderr, flush=True)
    except OSError:
        _onto_nothing(sys.stderr)


def _onto_nothing(stream):
    """Python writes what is left when it ends, and would complain again."""
    with contextlib.suppress(OSError):  # no file of the system's
        nothing = os.open(os.devnull, os.O_WRONLY)
        os.dup2(nothing, stream.fileno())
        os.close(nothing)
