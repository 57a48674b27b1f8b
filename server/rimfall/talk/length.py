"""How long a talk takes: what is said, at the pace of a talk, and what is watched, at each step's own."""

from .resolving import GivenStep

WORDS_PER_MINUTE = 130  # common practice, no source: slow enough to be followed in a hall


def spoken_s(given: GivenStep):
    """Seconds in which a step's line and notes are said."""
    return 60 * len(f"{given.step.line} {given.step.notes}".split()) / WORDS_PER_MINUTE


def played_s(given: GivenStep, end_s: float):
    """Seconds in which it plays, from where it begins to its pause point; end_s: when the last thing in its scene has happened."""
    step = given.step
    if not step.plays:
        return 0.0
    until_s = end_s if step.until_s is None else min(step.until_s, end_s)
    return max(0.0, until_s - step.from_s) / step.pace
