"""One palette: what the page is made of is what the files are drawn in."""

import pytest

from rimfall.exports.palette import PATHS, css_names, linear
from tests import palette


@pytest.mark.parametrize("path", palette.written(), ids=lambda path: path.name)
def test_the_page_has_the_palette_of_the_files(path):
    """Where this fails: python -m tests.palette."""
    assert path.read_text(encoding="utf-8") == palette.written()[path]


def test_no_two_paths_look_alike():
    assert len({one.stage for one in PATHS}) == len({one.paper for one in PATHS}) == len(PATHS)
    assert len({one.dash for one in PATHS}) == len({one.marker for one in PATHS}) == len(PATHS)
    assert len(set(css_names().values())) == len(css_names())


def test_linear_colours_are_those_of_the_standard():
    """IEC 61966-2-1: 0.5 of sRGB is 0.214041 linear, and its ends are ends."""
    assert linear("#000000") == (0, 0, 0)
    assert linear("#FFFFFF") == pytest.approx((1, 1, 1))
    assert linear("#808080")[0] == pytest.approx(0.2158605, abs=1e-6)  # 128/255
