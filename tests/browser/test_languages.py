"""The page in other languages: nothing that people read is left in English, by a language that marks all that is translated; German from the first
byte on; and its words have room at every size; and from right to left nothing hangs over an edge."""

import re

from rimfall import __version__, api
from rimfall.language import speaking
from tests.pseudo import LEFT_TO_RIGHT, RIGHT_TO_LEFT, outside

from .looking import open_place, said, settle, until
from .test_accessible import each_part

# every text that is read: of elements, and of the attributes that a screen reader or a pointer brings
READ = """selector => {
  const attributes = ['aria-label', 'title', 'placeholder', 'alt', 'aria-valuetext', 'aria-description'];
  const where = node => `${node.tagName} ${node.id} ${node.className?.baseVal ?? node.className}`;
  const found = [];
  const read = node => { // a text in which parts are elements is one
    for (const name of attributes) if (node.hasAttribute(name)) found.push([node.getAttribute(name), `${where(node)} [${name}]`]);
    if (node.matches('script, style, template, .cite')) return;
    const isText = [...node.childNodes].some(child => child.nodeType === Node.TEXT_NODE && /[^\\s\\d.,·]/.test(child.data));
    if (isText && (node.checkVisibility() || node.matches('.unseen, title'))) return found.push([node.textContent, where(node)]);
    for (const child of node.children) read(child);
  };
  for (const root of document.querySelectorAll(selector)) read(root);
  return found;
}"""
# what is the same in every language: units, names of formats, of studies and of the program, keys of a keyboard
SAME = re.compile(
    r"\b(?:Rimfall|English|Deutsch|da|he|OpenUSD|glTF|USD|CSV|JSON|PNG|PDF|SVG|HTML|MP4|WebM|EXR|ZIP|QR|SI|US|WebGL)\b"
    r"|\b(?:Esc|Ctrl|Shift|Alt|Tab|Enter|Home|End|PageUp|PageDown|Del|([a-z])\1)\b"
    r"|\b(?:rpm|min|mm|cm|km|kg|kN|Nm|kNm|MNm|Pa|kPa|MPa|GPa|kW|MW|kJ|MJ|Hz|rad|ft|in|lb|mph|psi|ml|fps|px)\b|rad/s²|m/s²"
    r"|(?:[A-Z][\w-]+ & )?[A-Z][\w-]+ (?:19|20)\d\d\b"
)
LETTERS = re.compile(r"[^\W\d_²³]{2,}")
ENGLISH_FIGURE = re.compile(r"\d\.(?!\d{3}\b)\d")  # with a point that is no thousands'

NUMBERED = re.compile(
    rf"{re.escape(__version__)}|9\.80665|glTF 2\.0|⟦today⟧ [\d.]+|(?:section|chapter|table|rule|Laws) [\d.]+"
)


def left_in_english(page, selector):
    found = {}
    for text, where in page.evaluate(READ, selector):
        rest = SAME.sub(" ", outside(text))
        if LETTERS.search(rest) or ENGLISH_FIGURE.search(NUMBERED.sub("", text)):
            found[" ".join(text.split())[:160]] = where
    return found


def test_all_that_people_read_is_a_message(open_page):
    page = open_page(locale=LEFT_TO_RIGHT)
    assert page.evaluate("document.documentElement.lang") == LEFT_TO_RIGHT
    found = left_in_english(page, "body")
    for _name, selector in each_part(page):
        found |= left_in_english(page, selector)
    assert "\n".join(f"{text} ({where})" for text, where in found.items()) == ""


def test_german_from_the_first_byte_on(open_page):
    page = open_page(locale="de-DE")
    assert page.evaluate("document.documentElement.lang") == "de"
    until("words", lambda: "spinwärts" in said(page, 0) or "gegen den Spin" in said(page, 0))
    radius = page.locator("#dials .val input").first
    radius.fill("28,5")
    radius.press("Enter")
    until("the figure is read as it is written", lambda: radius.input_value() == "28,5")
    open_place(page, 3)
    page.locator("[aria-label='Sprache'] button", has_text="English").click()
    page.locator("[aria-label='Language']").wait_for(state="attached")
    assert page.evaluate("document.documentElement.lang") == "en"


def test_a_talk_in_german_is_given_in_german(open_page):
    """Its lines, notes and steps, what the room is asked, and the names in the lanes."""
    with speaking("de"):
        talk = api.open_talk("why-the-ball-comes-back")
    first, asks = (one.step for one in talk.steps[:2])
    page = open_page(locale="de-DE")
    page.locator("#bar").get_by_role("button", name="Vortrag").click()
    page.locator("#talk").get_by_role("button", name=talk.title).click()
    page.locator("#talk").get_by_text(f"Schritt 1 von {len(talk.steps)}").wait_for()
    assert page.get_by_label("Notizen für Vortragende").input_value() == first.notes
    page.locator("#talk").get_by_role("button", name="Vorführen", exact=True).click()
    until("the line", lambda: page.locator(".surtitle-line").inner_text() == first.line)
    page.keyboard.press("PageDown")
    until("the next line", lambda: page.locator(".surtitle-line").inner_text() == asks.line)
    assert page.locator(".surtitle-step").inner_text() == f"Schritt 2 von {len(talk.steps)}"
    until("what is asked", lambda: page.locator(".guess-says").inner_text().startswith(f"{asks.ask.motion}: Wo "))
    until("its lane", lambda: asks.ask.motion in page.locator(".lane-name").all_text_contents())


# of words that stand on one line or in a box: what of them lies outside a box that cuts it, or under a neighbour
CUT = """() => {
  const name = e => `${e.id || e.className} ${e.textContent.trim().replace(/\\s+/g, ' ').slice(0, 40)}`;
  const ONES = '#bar button, #foot :is(h2, .link), .question, .answer, .btn, .link, .choice button, .stage-tools button, .row .lab > span, th, td';
  const seen = [...document.querySelectorAll(ONES)]
    .filter(e => e.textContent.trim() && e.checkVisibility({ visibilityProperty: true }) && !e.closest('.unseen, .stage-popover'));
  const wordsOf = e => { // but what is read out alone
    const all = [], walker = document.createTreeWalker(e, NodeFilter.SHOW_TEXT), range = document.createRange();
    while (walker.nextNode()) {
      range.selectNodeContents(walker.currentNode);
      if (getComputedStyle(walker.currentNode.parentElement).clipPath === 'none') all.push(...[...range.getClientRects()].filter(r => r.width > 1));
    }
    const least = side => Math.min(...all.map(r => r[side])), most = side => Math.max(...all.map(r => r[side]));
    return { left: least('left'), top: least('top'), right: most('right'), bottom: most('bottom') };
  };
  const found = [];
  for (const e of seen) {
    const words = wordsOf(e);
    for (let box = e; box && box !== document.documentElement; box = box.parentElement) {
      const { left, right } = box.getBoundingClientRect();
      const cuts = box === document.body || getComputedStyle(box).overflowX !== 'visible' || box.matches('button:not(.head)');
      if (cuts && (words.left < left - 1 || words.right > right + 1)) found.push(`${name(e)}: cut by ${name(box)}`);
    }
  }
  for (const beside of ['#bar > *', '.place.open > h2 .question, .place.open > .add-open', '#foot > *', '.row.dial > :is(.lab, .val)']) {
    const all = [...document.querySelectorAll(beside)].filter(e => e.checkVisibility());
    const boxes = all.map(e => (e.matches('.question, .lab') ? wordsOf(e) : e.getBoundingClientRect()));
    for (const [i, a] of boxes.entries()) for (const [k, b] of boxes.entries()) {
      const [wide, high] = [['left', 'right'], ['top', 'bottom']].map(([from, to]) => Math.min(a[to], b[to]) - Math.max(a[from], b[from]));
      if (i < k && wide > 1 && high > 1) found.push(`${name(all[i])}: over ${name(all[k])}`);
    }
  }
  return found;
}"""


def test_german_words_have_room_at_every_size(open_page):
    page = open_page(locale="de-DE")
    cut = {}
    for width, height in ((1440, 900), (1280, 720), (1024, 768), (390, 844), (320, 568)):
        page.set_viewport_size({"width": width, "height": height})
        for number in (1, 2, 3, 4, 5, 6):
            open_place(page, number)
            settle(page)
            if found := page.evaluate(CUT):
                cut[f"{width} × {height}, place {number}"] = found
        last = page.locator("#strip [data-place=away]")
        if last.is_visible():
            last.click()
            if found := page.evaluate(CUT):
                cut[f"{width} × {height}, what to take away"] = found
    assert cut == {}


def test_from_right_to_left_nothing_hangs_over_an_edge(open_page):
    page = open_page(locale=RIGHT_TO_LEFT)
    assert page.evaluate("getComputedStyle(document.body).direction") == "rtl"
    for width, height in ((1440, 900), (1024, 768), (390, 844)):
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        over = page.evaluate(
            """() => [...document.querySelectorAll('button, input, h1, h2, p, label, svg')]
                .filter(e => e.checkVisibility({ visibilityProperty: true }) && !e.closest('.unseen, .stages'))
                .map(e => [`${e.tagName} ${e.id || e.className?.baseVal || e.className} ${e.textContent.slice(0, 40)}`, e.getBoundingClientRect()])
                .filter(([, r]) => r.width > 0 && r.height > 0 && (r.right > innerWidth + 1 || r.left < -1)).map(([name]) => name)"""
        )
        assert over == []
