"""That the benchmark counts and compares as it says; what it measures is no test's business."""

from tests import measured
from tests.benchmark import frames, tracer
from tests.benchmark.row import Ratio, Row, in_turn
from tests.serving import ROOT


def test_what_is_counted_does_not_vary_and_knows_the_core():
    first, again = tracer.counts("steep-lob"), tracer.counts("steep-lob")
    assert first == again
    assert first["Python calls"] > 500
    assert first["bytes"] == len(tracer.trace("steep-lob"))
    rolled = tracer.counts("three-pods")
    assert min(rolled["force calls"], rolled["law calls"], rolled["s of rolling"]) > 0


def test_what_is_asked_again_costs_less():
    again = tracer.again("three-pods")
    first = again["paths alone"]
    assert min(first["force calls"], first["law calls"]) > 0
    assert (again["another name"]["force calls"], again["another name"]["law calls"]) == (0, 0)
    assert again["another name"]["Python calls"] < 0.6 * first["Python calls"]
    assert again["one motion moved"]["force calls"] <= first["force calls"]
    assert again["words after them"]["law calls"] == 0
    assert tracer.counts("steep-lob") == tracer.counts("steep-lob")  # nothing of it is left


def test_a_load_that_comes_and_goes_meets_both_of_a_pair():
    ran, load = [], iter([1.0, 1.0, 5.0, 5.0, 1.0, 1.0])

    def running(name, takes):
        def run():
            ran.append(name)
            return takes * next(load)

        return run

    mine, theirs, ratio = in_turn(running("A", 0.25), running("B", 1.0), for_s=0.0)
    assert "".join(ran) == "ABBAAB"
    assert (mine, theirs, ratio) == (0.25, 1.0, Ratio(0.25, 0.25, 0.25, 3))


def test_a_line_tells_figure_bar_ratio_and_counts():
    row = Row(
        "trace",
        "20 ms",
        "<= 1/4",
        False,
        "80 ms there",
        0.02,
        {"calls": 1500},
        {"calls": 9000},
        Ratio(0.251, 0.24, 0.26, 3),
    )
    line = row.as_line()
    assert line.startswith("short  trace ")
    assert line.endswith("20 ms  bar <= 1/4   (ratio 0.251 (0.24 to 0.26) of 3; calls 1,500 (9,000); 80 ms there)")
    assert row.as_data()["verdict"] == "short"


def test_what_is_allocated_is_told_by_whose_it_is():
    def node(name, size, *children, url=""):
        return {"callFrame": {"functionName": name, "url": url}, "selfSize": size, "children": list(children)}

    views, three = "http://127.0.0.1/static/views/half.js", "http://127.0.0.1/static/vendor/three.module.js"
    sort = node("sort", 4, node("compared", 8, url=views))
    head = node("(root)", 0, node("(IDLE)", 1), node("update", 2, node("render", 16, sort, url=three), url=views))
    assert frames.by_owner(head) == {"page": 10, "three": 20, "engine": 1}


def test_tables_of_what_was_measured_are_the_benchmarks_own():
    for name in measured.TABLES:
        text = (ROOT / name).read_text("utf-8")
        assert measured.with_tables(name, text) == text, f"{name}: run python -m tests.measured"
    assert "| same-lob | " in (ROOT / "DEVELOPERS.md").read_text("utf-8")
