"""A jug that tilts as it pours: its stream and each drop's own path are drawn, and the cup's words are read out."""

import base64
import zlib

import pytest

from rimfall.scene.examples import example

from .looking import picture, said, scrub, stop, until

pytestmark = pytest.mark.painted


def link():
    deflate = zlib.compressobj(wbits=-15)
    data = deflate.compress(example("tilting-jug").encode()) + deflate.flush()
    return "/#s=" + base64.urlsafe_b64encode(data).decode().rstrip("=")


def test_the_jug_s_stream_and_drops_are_drawn(open_page):
    page = open_page(path=link())
    stop(page, 0.0)
    until("its words", lambda: "reaches the basin" in said(page))
    before = picture(page, "aboard")
    scrub(page, 1.6)
    until("it is on the stage", lambda: picture(page, "aboard") != before)
    first = picture(page, "outside")
    scrub(page, 1.7)
    until("it moves in the other view", lambda: picture(page, "outside") != first)
