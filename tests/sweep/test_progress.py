"""What a run says of its progress: a line rewritten on a terminal, a line now and then elsewhere."""

import io
import itertools

from rimfall.sweep.run import progress_line, progress_teller
from tests.tables import each_row


class Terminal(io.StringIO):
    def isatty(self):
        return True


def told(out, seconds_each, count, began_with=0):
    now = [0.0]
    tell = progress_teller("{done} of {of} worked out", began_with, out, clock=lambda: now[0])
    for done in range(began_with + 1, count + 1):
        now[0] += seconds_each
        tell(done, count)
    return out.getvalue()


@each_row(
    ("spent_s", "left"),
    [(10.0, "30 s"), (100.0, "5 min 00 s"), (4000.0, "3 h 20 min")],
)
def test_time_left_is_that_of_the_rest_at_the_pace_so_far(spent_s, left):
    assert progress_line("{done} of {of} worked out", 250, 1000, 0, spent_s) == f"250 of 1,000 worked out, {left} left"


def test_what_was_done_before_does_not_count_for_the_pace():
    assert (
        progress_line("{done} of {of} worked out", 910, 1000, 900, 10.0) == "910 of 1,000 worked out, 1 min 30 s left"
    )


def test_nothing_is_foretold_before_the_first_or_after_the_last():
    assert progress_line("{done} of {of} worked out", 0, 10, 0, 0.0) == "0 of 10 worked out"
    assert progress_line("{done} of {of} worked out", 10, 10, 0, 9.0) == "10 of 10 worked out"


def test_a_terminal_has_one_line_which_no_older_text_shines_through():
    shown = told(Terminal(), 1.0, 100).split("\r")
    assert shown[0] == ""
    assert len(shown) == 101
    assert shown[-1].endswith("\n")
    assert "\n" not in "".join(shown[:-1])
    for before, after in itertools.pairwise(shown[1:]):
        assert len(after.rstrip("\n")) >= len(before.rstrip())


def test_elsewhere_a_line_comes_every_ten_seconds_and_at_the_end():
    lines = told(io.StringIO(), 1.0, 35).splitlines()
    assert lines == [
        "10 of 35 worked out, 25 s left",
        "20 of 35 worked out, 15 s left",
        "30 of 35 worked out, 5 s left",
        "35 of 35 worked out",
    ]
