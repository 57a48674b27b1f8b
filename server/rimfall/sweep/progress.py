"""How far a run has come, on standard error: one line that is rewritten on a terminal, a line now and then elsewhere."""

import sys
import time

_TERMINAL_EVERY_S, _PLAIN_EVERY_S = 0.2, 10.0


def line(what, done, of, began_with, spent_s):
    """ "312 of 1,000 worked out, 12 s left". began_with: how many were done before; spent_s: seconds since."""
    said = f"{done:,} of {of:,} {what}"
    if done in (of, began_with):
        return said
    return f"{said}, {_duration(spent_s / (done - began_with) * (of - done))} left"


def _duration(seconds):
    whole = round(seconds)
    if whole < 60:
        return f"{whole} s"
    if whole < 3600:
        return f"{whole // 60} min {whole % 60:02} s"
    return f"{whole // 3600} h {whole % 3600 // 60:02} min"


def teller(what, began_with=0, out=None, clock=time.monotonic):
    """A function of (done, of) that says so on `out`, not more often than a reader can follow, and at the end."""
    out = out or sys.stderr
    terminal = out.isatty()
    began_s = clock()
    last = {"s": began_s, "length": 0}
    every_s = _TERMINAL_EVERY_S if terminal else _PLAIN_EVERY_S

    def tell(done, of):
        now_s = clock()
        if done < of and now_s - last["s"] < every_s:
            return
        said = line(what, done, of, began_with, now_s - began_s)
        ends = "\n" if done == of or not terminal else ""
        start = "\r" if terminal else ""
        print(start + said.ljust(last["length"]), end=ends, file=out, flush=True)
        last["s"], last["length"] = now_s, len(said) if terminal else 0

    return tell
