"""Kept work: what is worked on has a record of its own, and nothing that is opened, fails or is refused takes its place."""

import json

from rimfall.scene.examples import example
from tests.browsing import DRAWN

from .looking import kept, kept_records, shown_is, type_figure, until


def test_a_link_over_work_leaves_the_work(page, open_page):
    """Somebody's link opened in the tab and worked on: the scene that was kept is still there, and each has its record."""
    type_figure(page, "habitat.radius_m", "80")
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 80)
    mine = kept_records(page)
    link = page.url[page.url.index("#") :]
    assert len(mine) == 1
    # the same tab, on somebody else's link; only looked at, it makes no record
    page.goto("about:blank")
    page.goto("/#s=" + carried({**json.loads(example("hub-toss")), "title": "Somebody's"}))
    page.locator(DRAWN).wait_for()
    until("the link's scene", lambda: page.locator("#title").inner_text() == "Somebody's")
    assert kept_records(page) == mine
    type_figure(page, "habitat.spin_rpm", "1.5")
    until("a second record", lambda: len(kept_records(page)) == 2)
    theirs, still = kept_records(page)
    assert theirs["title"] == "Somebody's"
    assert still == mine[0]
    # undone past nothing: the tab comes back to its own over a reload, though the address holds a scene
    page.reload()
    page.locator(DRAWN).wait_for()
    assert len(kept_records(page)) == 2
    type_figure(page, "habitat.spin_rpm", "2.5")
    until("the same record goes on", lambda: kept_records(page)[0]["document"]["habitat"]["spin_rpm"] == 2.5)
    assert len(kept_records(page)) == 2
    assert kept_records(page)[1] == mine[0]
    assert link


def carried(scene):
    import base64
    import zlib

    packer = zlib.compressobj(wbits=-15)
    packed = packer.compress(json.dumps(scene).encode()) + packer.flush()
    return base64.urlsafe_b64encode(packed).decode().rstrip("=")
