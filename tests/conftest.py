"""What all tests share: hypothesis repeats itself and times nothing, and Ctrl+C reaches the processes that tests start."""

import signal

from hypothesis import settings

# A run must give the same result twice, on a slow machine too.
settings.register_profile("rimfall", derandomize=True, deadline=None, database=None)
settings.load_profile("rimfall")

# A shell starts what goes to the background with SIGINT ignored, and a process hands that on to those it starts.
if signal.getsignal(signal.SIGINT) == signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)
