"""What all tests share: hypothesis repeats itself and times nothing, Ctrl+C reaches the processes that tests start, each process of a
run computes on one thread, and what is compiled once is kept for all of them.
"""

import gc
import os
import signal
import sys

import pytest
from hypothesis import settings
from hypothesis.internal.conjecture import providers

# There is a process for each core; numpy reads this as it is loaded, by the first test that needs it.
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")

# Where a shell forbids it, each of the many processes that tests start compiles the whole program anew.
sys.dont_write_bytecode = False
os.environ.pop("PYTHONDONTWRITEBYTECODE", None)

# A run must give the same result twice, on a slow machine too, and whatever its process has done before: what hypothesis draws
# would have in it the numbers that stand in all modules loaded so far.
providers._get_local_constants = lambda: providers._local_constants
settings.register_profile("rimfall", derandomize=True, deadline=None, database=None)
settings.load_profile("rimfall")

# Documents and traces by the ten thousand are made and dropped, in no circles: looking through them less often saves a tenth.
gc.set_threshold(100_000, 20, 100)

# A shell starts what goes to the background with SIGINT ignored, and a process hands that on to those it starts.
if signal.getsignal(signal.SIGINT) == signal.SIG_IGN:
    signal.signal(signal.SIGINT, signal.default_int_handler)


@pytest.fixture(scope="module")
def marked(tmp_path_factory):
    """The languages of `tests/pseudo.py`, in which every message stands between signs, are spoken as well."""
    from tests import pseudo  # by few: it reads catalogues, and each process of a run would load that

    pseudo.write(folder := tmp_path_factory.mktemp("languages"))
    with pytest.MonkeyPatch.context() as patch:
        patch.setenv("RIMFALL_LANGUAGES", str(folder))
        yield


def pytest_collection_modifyitems(items):
    """What takes long begins first: no core waits for it at the end of a run."""
    items.sort(key=lambda item: item.get_closest_marker("long") is None)


def pytest_runtest_teardown(item, nextitem):
    """What a file's tests leave behind (traces of scenes, kept for others) is no longer gone through at each collection: a test at
    the end of a run took six times as long as alone."""
    if nextitem is None or nextitem.path != item.path:
        gc.collect()
        gc.freeze()
