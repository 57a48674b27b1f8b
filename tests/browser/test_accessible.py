"""axe-core finds nothing on any place or dialog, at three sizes, light and dark.

A rule of structure holds or not whatever the colours are, and the colours are the same at every size: so each size is looked at in
one of the two.
"""

import pytest

from tests import npm_packages

from .looking import open_place, opened_out

pytestmark = pytest.mark.one_page
SIZES = [(1440, 900, "light"), (1024, 768, "dark"), (390, 844, "light")]
AXE = npm_packages.MODULES / "axe-core/axe.min.js"
RUN = """async part => {
  const { violations } = await axe.run(part, { preload: false, resultTypes: ['violations'] });
  return violations.flatMap(({ id, nodes }) => nodes.map(({ target, failureSummary }) => `${id}: ${target.join(' ')}: ${failureSummary}`));
}"""
SHOW = """shown => {  // contrast is of what is seen; the stages' triangles are none of axe's
  window.read = shown;
  dispatchEvent(new Event('painting'));
}"""
OPENERS = {  # by what opens them, as the page's own buttons and keys do
    "scenes": "#bar .word:has-text('Scenes')",
    "share": "#bar .word:has-text('Share')",
    "take away": "#foot [data-take=pictures]",
    "glossary": "#glossary-link",
    "keys": None,
}


def found(page, part="html"):
    """What axe finds wrong in a part of a page, in words."""
    if not page.evaluate("'axe' in window"):
        page.evaluate(AXE.read_text(encoding="utf-8"))
    opened_out(page)  # words that are still fading in have too little contrast
    page.evaluate(SHOW, True)
    wrong = page.evaluate(RUN, part)
    page.evaluate(SHOW, False)
    return wrong


def each_part(page):
    """Opens one after the other, and yields its name and the selector of what it is."""
    for number in (1, 3, 4, 5, 6):  # 2 is open as the whole is looked at
        open_place(page, number)
        if number == 4:
            page.locator("#feel-map .ring-grip[aria-valuenow]").wait_for()  # what it tells has come
        if number == 5:
            page.locator("#shot-landings .btn").first.click()
            page.locator(".landings-net").wait_for()
            page.locator(".way-says").first.wait_for()
        if number == 6:
            page.locator(".craft").first.click()
            page.locator('.craft-views g:has(> title:text("tanks")) .part').first.dispatch_event("click")
            page.locator(".part-line.chosen .rows").wait_for()
            page.locator(".craft-question .link", has_text="Change figures").first.click()
        yield f"place {number}", f"#place-{number}"
    open_place(page, 4)
    page.keyboard.press("e")
    yield "the map, large over the stages", "#large"
    page.keyboard.press("e")
    for name, opener in OPENERS.items():
        if opener:
            page.locator(opener).evaluate("button => button.click()")
        else:
            page.keyboard.press("?")
        page.locator("dialog[open]").wait_for()
        yield name, "dialog[open]"
        page.keyboard.press("Escape")
    page.keyboard.press("v")
    yield "seats", ".stage-popover:not([hidden])"
    page.keyboard.press("Escape")
    page.locator("#add-open").evaluate("button => button.click()")
    yield "what can be added", "#adding"
    page.keyboard.press("Escape")
    page.locator("#cards .card .icon-button").first.evaluate("button => button.click()")
    yield "what a motion's button offers", ".menu:popover-open"
    page.keyboard.press("Escape")


@pytest.mark.parametrize(("width", "height", "scheme"), SIZES)
def test_axe_finds_nothing(page, width, height, scheme):
    page.set_viewport_size({"width": width, "height": height})
    page.emulate_media(color_scheme=scheme)
    wrong = {"the whole": found(page)} | {name: found(page, part) for name, part in each_part(page)}
    assert {name: words for name, words in wrong.items() if words} == {}
