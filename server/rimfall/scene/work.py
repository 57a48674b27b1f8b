"""The work of one question: the budget it runs under, what each motion of a scene has used of it, and words where it is spent."""

from contextlib import contextmanager, nullcontext
from copy import copy

import numpy as np

from ..errors import TooMuch, refusal
from ..kinds import KINDS
from ..language import tr, written
from ..phrases import OR, listed
from ..physics.budget import Amount, Budget, Stopped, TooMuchWork, current, spending
from ..physics.kept import Store, keeping
from .bounds import GREATEST_BYTES, GREATEST_BYTES_ALONE

__all__ = [
    "GREATEST_BYTES",
    "GREATEST_BYTES_ALONE",
    "Ledger",
    "Samples",
    "Stopped",
    "Store",
    "TooMuchWork",
    "bounded",
    "bounded_alone",
]


def bounded(question, *arguments, seconds=None, stopped=None, most_bytes=GREATEST_BYTES, store=None):
    """question(*arguments) under a budget: so many bytes of memory, and these seconds (None for no bound).

    stopped() is asked some fifty times a second; once it says True the work ends with Stopped. store: a Store for what may be asked for
    again. Raises TooMuchWork, a Refused.
    """
    with keeping(store), spending(Budget(bytes=most_bytes, seconds=seconds, stopped=stopped)):
        return question(*arguments)


def bounded_alone(question, *arguments, seconds=None):
    """question(*arguments) under the budget of a question that has a process to itself. Raises TooMuchWork."""
    return bounded(question, *arguments, seconds=seconds, most_bytes=GREATEST_BYTES_ALONE)


class Ledger:
    """What each motion of a scene has used of the budget that is open, by itself: in its plan, in reading its path, in its findings."""

    def __init__(self, scene):
        self._scene, self._used = scene, [Amount()] * len(scene.motions)

    def motion(self, index):
        """All work inside is of the motion of that index."""
        return nullcontext() if current() is None else self._charged(index)

    @contextmanager
    def _charged(self, index):
        before = current().used
        try:
            yield
        except TooMuchWork as exceeded:
            exceeded.index = index  # not that of one parcel, or of one stage of a drift
            raise
        finally:
            self._used[index] += current().used - before

    def refuse_hopeless(self, settings):
        """Raise TooMuchWork where the motions are sure to take more memory than there is, in all habitats (Settings) together."""
        budget, motions = current(), self._scene.motions
        if budget is None:
            return
        least = [sum(KINDS[m.kind].least_bytes(setting, m) for setting in settings) for m in motions]
        if sum(least) <= budget.most.bytes:
            return
        exceeded = TooMuchWork("bytes", Amount(bytes=sum(least)), budget.most)
        index, told = int(np.argmax(least)), exceeded.used.told("bytes")
        most = budget.most.told("bytes")
        say = tr(
            "This scene needs at least {least}, and one request may use {most}. Most of that is for motion {motion}. To make it fit, use "
            "{easier}.",
            least=told,
            most=most,
            motion=motions[index].name,
            easier=listed(list(_easier(self._scene, motions[index], "bytes")), OR),
        )
        within = tr("within {amount} for the whole scene", amount=most)
        raise exceeded.of(refusal(f"motions.{index}", told, within, say))

    def refused(self, exceeded):
        """A TooMuchWork in words. It names the motion that has used most by itself; where most was used while all were under way
        together, the one that still was (`exceeded.index`)."""
        scene, what = self._scene, exceeded.what
        own = [getattr(used, what) for used in self._used]
        index, count, together = int(np.argmax(own)), len(own), sum(own) < 0.5 * getattr(exceeded.used, what)
        share, much = _told(self._used[index], what), 2 * own[index] > sum(own)
        index = exceeded.index if together and exceeded.index is not None else index
        name, spent, most = scene.motions[index].name, _told(exceeded.used, what), exceeded.most.told(what)
        parts = [
            tr(
                "This scene is too much work: it was stopped after {spent}, and one request may use {most}.",
                spent=spent,
                most=most,
            )
        ]
        if together and count == 1:
            parts.append(tr("Motion {motion} was still under way.", motion=name))
        elif together:
            say = tr("Motion {motion} was still under way, with all {count} flying together.", motion=name, count=count)
            parts.append(say)
        elif much:
            parts.append(tr("Motion {motion} took {amount}.", motion=name, amount=share))
        else:
            parts.append(tr("Motion {motion} took more than any other: {amount}.", motion=name, amount=share))
        easier = listed(list(_easier(scene, scene.motions[index], what)), OR)
        parts.append(tr("To make it fit, use {easier}.", easier=easier))
        say = " ".join(parts) + exceeded.busy
        within = tr("within {amount} for the whole scene", amount=most)
        return exceeded.of(refusal(f"motions.{index}", spent, within, say))


def _told(used, what):
    """An amount in words: what was spent, and how many steps that was."""
    parts = [used.told(what)]
    if what != "steps" and used.steps:
        parts.append(used.told("steps"))
    return listed(parts)


def _easier(scene, motion, what):
    """What would make a scene less work, the surest first."""
    if getattr(motion, "bounces", 0) > 1:
        yield tr("fewer bounces (bounces)")
    yield from map(tr, KINDS[motion.kind].eases)
    yield tr("a shorter clock (sampling.duration_s)")
    if what in ("samples", "bytes"):
        yield tr("fewer frames per second (sampling.fps)")
    if scene.compare:
        yield tr("fewer habitats beside it (compare)")
    if len(scene.motions) > 1:
        yield tr("fewer motions")


class Samples:
    """The samples of a scene's motions in one habitat, counted as they become known; spent: all, with those of the habitats traced
    `before`. What passes the greatest raises TooMuch."""

    def __init__(self, motions, rate, greatest, before=0):
        self._motions, self._rate, self._greatest = motions, float(rate), greatest
        self._paths, self.spent = [0] * len(motions), before
        for i, motion in enumerate(motions):
            self.of_path(i, 0, motion.start_s)

    def copy(self):
        """As many counted as by now, to count on from."""
        same = copy(self)
        same._paths = self._paths.copy()
        return same

    def of_path(self, index, count, ends_s):
        """The path of a motion has so many samples by now, and goes as far as ends_s on the scene's grid."""
        self.spent += count - self._paths[index]
        self._paths[index] = count
        if max(self.spent, self._rate * ends_s) > self._greatest:
            self._refuse(index)

    def of_drops(self, index, count):
        """A motion's drops have so many."""
        self.spent += count
        if self.spent > self._greatest:
            self._refuse(index)

    def _refuse(self, index):
        name, greatest = self._motions[index].name, written(self._greatest, ",")
        say = tr(
            "Motion {motion} takes this scene past {most} samples; let it end sooner (sampling.duration_s), start sooner, bounce less "
            "often (bounces), or take fewer frames per second (sampling.fps).",
            motion=name,
            most=greatest,
        )
        within = tr("within {most} samples for the whole scene", most=greatest)
        raise TooMuch(refusal(f"motions.{index}", name, within, say))
