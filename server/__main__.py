"""`python -m server`: the same command as `rimfall`."""

import sys

from .cli import main

if __name__ == "__main__":
    sys.exit(main())
