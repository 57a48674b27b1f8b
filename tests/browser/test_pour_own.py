"""A jug that tilts as it pours: its stream and each drop's own path are drawn, and the cup's words are read out."""

import json

import pytest

from rimfall.scene.examples import example

from .looking import link_to, picture, said, scrub, stop, until

pytestmark = pytest.mark.glanced


def test_the_jug_s_stream_and_drops_are_drawn(open_page):
    page = open_page(width=1024, height=640, path=f"/{link_to(json.loads(example('tilting-jug')))}")
    stop(page, 0.0)
    until("its words", lambda: "reaches the basin" in said(page))
    before = picture(page, "aboard")
    scrub(page, 1.6)
    until("it is on the stage", lambda: picture(page, "aboard") != before)
    first = picture(page, "outside")
    scrub(page, 1.7)
    until("it moves in the other view", lambda: picture(page, "outside") != first)
