"""`python -m tests.words --scenes 300`: tells every number in the words of so many random scenes that is none of their figures."""

import argparse
from itertools import count

from .sweep import of_seed


def main():
    """Print what is false; exit 1 where anything is."""
    parser = argparse.ArgumentParser(prog="python -m tests.words", description=__doc__)
    parser.add_argument("--scenes", type=int, default=300)
    parser.add_argument("--first", type=int, default=0)
    given = parser.parse_args()
    answered = right = wrong = 0
    seeds = count(given.first)
    while answered < given.scenes:
        result = of_seed(seed := next(seeds))
        if result is None:
            continue
        answered, right, wrong = answered + 1, right + result[1], wrong + len(result[0])
        for kind, sentence, number, cue in result[0]:
            print(f"{seed} {kind}: {number} ({cue}) in: {sentence}")
    print(f"{answered} scenes, {right} numbers right, {wrong} false")
    return 1 if wrong else 0


raise SystemExit(main())
