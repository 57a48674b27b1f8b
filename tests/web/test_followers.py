"""The benchmark's followers, few of them and without its bars: a server process, streams over sockets, one that is late and one that comes back."""

from tests.apart import run_apart
from tests.benchmark.followers import SHARE, address_of, followed
from tests.serving import serving

FOLLOWERS, CHANGES = 12, 5


def test_all_that_follow_are_told_the_newest(tmp_path):
    log = tmp_path / "log.txt"
    with serving(log, arguments=SHARE) as origin:
        delays, *_ = run_apart(followed(*address_of(origin, log), FOLLOWERS, CHANGES, every_s=0.0))
    assert FOLLOWERS <= len(delays) <= FOLLOWERS * CHANGES
    assert min(delays) > 0
    assert log.read_text().count("\n") == 2  # nothing is complained of
