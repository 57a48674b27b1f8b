"""What all tests share: hypothesis repeats itself and times nothing, Ctrl+C reaches the processes that tests start, each process of a
run computes on one thread, and what is compiled once is kept for all of them.
"""

import os
import signal
import sys

from hypothesis import settings

# There is a process for each core; numpy reads this as it is loaded, by the first test that needs it.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

# Where a shell forbids it, each of the many processes that tests start compiles the whole program anew.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

# A run must give the same result twice, on a slow machine too.
settings.register_profile("rimfall", derandomize=True, deadline=None, database=None)
settings.load_profile("rimfall")

# A shell starts what goes to the background with SIGINT ignored, and a process hands that on to those it starts.
if signal.getsignal(signal.SIGINT) == signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)
