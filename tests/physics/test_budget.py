"""The budget of work: what it counts, when it says no, how soon it looks whether to stop."""

import pytest

from rimfall.errors import TooMuch
from rimfall.physics import budget as budgets
from rimfall.physics.budget import Amount, Budget, Stopped, TooMuchWork, current, spend, spending
from tests.tables import each_row


@each_row("what", ["steps", "law_calls", "samples", "bytes"])
def test_as_much_as_is_allowed_may_be_spent_and_not_one_more(what):
    with spending(Budget(**{what: 10})) as budget:
        spend(**{what: 4})
        spend(**{what: 6})
        assert getattr(budget.used, what) == 10
        with pytest.raises(TooMuchWork) as caught:
            spend(**{what: 1})
    assert caught.value.what == what
    assert getattr(caught.value.used, what) == 11
    assert isinstance(caught.value, TooMuch)  # a refusal like any other, where nobody puts it into better words
    assert (caught.value.status, caught.value.refusals[0].field) == (422, "work")


class Clock:
    """Seconds that pass when they are told to."""

    def __init__(self, monkeypatch):
        self.now_s = 100.0
        self.worked_s = 0.0
        monkeypatch.setattr(budgets, "monotonic", lambda: self.now_s)
        monkeypatch.setattr(budgets, "thread_time", lambda: self.worked_s)


def test_seconds_run_from_when_the_budget_is_made(monkeypatch):
    clock = Clock(monkeypatch)
    with spending(Budget(seconds=2.0)):
        clock.now_s += 1.99
        spend(steps=1)
        clock.now_s += 0.02
        with pytest.raises(TooMuchWork) as caught:
            spend(steps=1)
    assert caught.value.what == "seconds"
    assert caught.value.refusals[0].was == "2.01 s"
    assert caught.value.refusals[0].may_be == "within 2 s"


def test_whoever_asked_is_looked_for_a_few_times_in_a_tenth_of_a_second_and_no_oftener(monkeypatch):
    clock, looks = Clock(monkeypatch), []

    def work():
        for _ in range(1_000):
            spend(steps=1)
            clock.now_s += 0.001

    with spending(Budget(stopped=lambda: looks.append(clock.now_s) or clock.now_s >= 100.1)), pytest.raises(Stopped):
        work()
    assert 4 <= len(looks) <= 7
    assert looks[-1] - 100.1 <= budgets.LOOK_EVERY_S + 1e-9


def test_without_a_budget_nothing_is_counted_and_one_inside_another_counts_for_itself():
    spend(steps=10**9)
    assert current() is None
    with spending(Budget(steps=5)) as outer:
        spend(steps=2)
        with spending(Budget(steps=100)):
            spend(steps=50)
        with spending(None):
            spend(steps=50)
        assert (current(), outer.used.steps) == (outer, 2)
    assert current() is None


def test_amounts_are_told_in_their_units():
    amount = Amount(31_204, 2_500_000, 7, 123_456_789, 20.04)
    told = [amount.told(what) for what in ("steps", "law_calls", "samples", "bytes", "seconds")]
    assert told == ["31,204 steps", "2,500,000 evaluations", "7 samples", "123 MB", "20 s"]


@each_row(("worked_s", "words"), [(19.0, ""), (1.0, "busy with other things for 19 s of that")])
def test_a_busy_machine_is_told_of(worked_s, words, monkeypatch):
    clock = Clock(monkeypatch)
    budget = Budget(seconds=20.0)
    clock.now_s, clock.worked_s = 120.0, worked_s
    with pytest.raises(TooMuchWork) as caught:
        budget.spend(steps=1)
    assert words in caught.value.busy
    assert bool(words) == bool(caught.value.of().busy)
