"""`python -m rimfall` and `rimfall`: the commands, whose loading can be stopped as their work can."""

import os
import sys

from .threads import THREADS

STOPPED = 130


def run():
    """Run a command; returns the exit code."""
    try:
        from .cli.streams import stand_in_for_closed

        stand_in_for_closed()
        for (
            name
        ) in THREADS:  # of this process, which works things out beside others: several would wait for one another
            os.environ.setdefault(name, "1")
        # Imported here because numpy takes its time, and Ctrl+C meanwhile is no fault to print a traceback for.
        from .cli.main import main

        return main()
    except KeyboardInterrupt:
        return STOPPED


if __name__ == "__main__":
    sys.exit(run())
