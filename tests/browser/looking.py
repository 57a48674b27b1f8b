"""What a user sees of the page, read for the browser tests: figures, words, and the picture of each stage."""

import base64
import contextlib
import io
import json
import time
import weakref
import zlib

import av

PAINTING_OF = (
    weakref.WeakKeyDictionary()
)  # of each page, what is painted of its stages: "all", "nothing", or "pictures" when one is taken
LONG_S = 60  # nothing takes as long but on a machine with much else to do


def link_to(document):
    """The fragment of an address that carries a scene: raw deflate (RFC 1951) as base64url (RFC 4648)."""
    packer = zlib.compressobj(9, zlib.DEFLATED, -15)
    packed = packer.compress(json.dumps(document).encode()) + packer.flush()
    return "#s=" + base64.urlsafe_b64encode(packed).decode().rstrip("=")


def scene_of(address):
    """The scene that an address carries; empty where it carries none."""
    packed = address.partition("#s=")[2].partition("&")[0]
    return (
        json.loads(zlib.decompress(base64.urlsafe_b64decode(packed + "=" * (-len(packed) % 4)), -15)) if packed else {}
    )


def until(what, holds, timeout_s=LONG_S, page=None):
    """Wait until holds() is true. The page's policy forbids eval, so the waiting is done here.

    A condition that asks nothing of the page gives it, so that its events arrive meanwhile.
    """
    give_up, wait_s = time.monotonic() + timeout_s, 0.05
    while not (result := holds()):
        assert time.monotonic() < give_up, f"never came: {what}"
        page.wait_for_timeout(1000 * wait_s) if page else time.sleep(wait_s)
        wait_s = min(1.2 * wait_s, 0.15)  # what takes long is not asked after as often: each time takes a processor too
    return result


def plain(text):
    """Words as they are read: every space one space."""
    return " ".join(text.replace("\u00a0", " ").split())


def number_box(page, path):
    """The box of a figure, by the field's name in the document."""
    return page.locator(f'[data-row="{path}"] .val input').first


def type_figure(page, path, text):
    box = number_box(page, path)
    box.fill(text)
    box.press("Enter")


def readout(page, name):
    return page.locator(f".readout.{name} .says").inner_text().replace("\u00a0", " ").replace("\n", " ")


def said(page, card=0):
    """The outcome in words on a motion's card, once it is told: words of other values are out of sight."""
    words = page.locator("#cards .card").nth(card).locator(".said")
    return until("words are told", words.inner_text).replace("\u00a0", " ")


def drawn(page, name):
    """What the stages last drew an answer for: "Radius" or "Spin"."""
    value = page.locator("#stages").get_attribute(f"data-drawn-{name.lower()}")
    return float(value)


def shown_is(page, name, value):
    return until(f"{name} {value} on the stages", lambda: abs(drawn(page, name) - value) < 1e-6 * value)


READ_KEPT = """() => new Promise((done, failed) => {
  const asked = indexedDB.open('rimfall');
  asked.onupgradeneeded = () => asked.transaction.abort();  // there is none, and looking makes none
  asked.onerror = () => done([]);
  asked.onsuccess = () => {
    const all = asked.result.transaction('scenes').objectStore('scenes').index('changed_ms').getAll();
    all.onsuccess = () => { asked.result.close(); done(all.result.reverse()); };
    all.onerror = () => failed(all.error);
  };
})"""


def kept_records(page):
    """What the browser's database holds, newest first."""
    return page.evaluate(READ_KEPT)


# the page notes what this tab has open in one step with showing it, and has drawn it before anybody else's turn
OPEN_LINK = """hash => {
  sessionStorage.setItem('rimfall.tab', JSON.stringify({ id: 'of the scene before' }));
  document.getElementById('heard').replaceChildren();  // nor is what was told of it
  location.hash = hash;
}"""


def open_scene(page, document):
    """On the page as it is, by a link of which no two are alike, so that the page opens the same scene again too; its clock stopped."""
    page.evaluate(OPEN_LINK, f"{link_to(document)}&opening={time.monotonic_ns()}")
    until("it is the tab's", lambda: tab(page).get("id") != "of the scene before")
    stop(page)

    def told_apart(scene):
        habitat = scene["habitat"]
        return scene["title"], habitat["radius_m"], habitat["spin_rpm"], len(scene["motions"])

    assert told_apart(saved_scene(page)) == told_apart(document)


def tab(page):
    """What the browser keeps of this tab: `id` of its record, `hash` it last wrote, `opened` where no address holds it."""
    return json.loads(page.evaluate("sessionStorage.getItem('rimfall.tab') || '{}'"))


# of the tab's own record alone: many are kept on a page that many tests share
READ_MINE = """() => new Promise((done, failed) => {
  const mine = JSON.parse(sessionStorage.getItem('rimfall.tab') || '{}');
  if (!mine.id) return done(JSON.stringify(mine));
  const asked = indexedDB.open('rimfall');
  asked.onupgradeneeded = () => asked.transaction.abort();
  asked.onerror = () => done(JSON.stringify(mine));
  asked.onsuccess = () => {
    const one = asked.result.transaction('scenes').objectStore('scenes').get(mine.id);
    one.onsuccess = () => { asked.result.close(); done(JSON.stringify({ ...mine, document: one.result?.document })); };
    one.onerror = () => failed(one.error);
  };
})"""


def saved_scene(page):
    """The scene the browser keeps of this tab; one that was only opened is in the address alone."""
    mine = json.loads(page.evaluate(READ_MINE))
    return mine.get("document") if mine.get("id") else scene_of(page.url) or mine.get("opened")


def stop(page, at_s=None):
    """Stop the clock, and put it at a time."""
    if page.locator(".play[aria-label=Pause]").count():
        page.keyboard.press("Space")
    if at_s is not None:
        scrub(page, at_s)


def scrub(page, time_s):
    page.locator(".scrub").evaluate(
        "(e, t) => { e.value = t; e.dispatchEvent(new Event('input', {bubbles: true})); }", time_s
    )
    until("the clock's figure", lambda: abs(float(page.locator(".clock .time b").inner_text()) - time_s) < 0.02)


def settle(page):
    """Whatever was asked to be drawn is drawn: two frames on, and on a slow machine when the stages say so."""
    page.evaluate("() => new Promise(go => requestAnimationFrame(() => requestAnimationFrame(go)))")
    until("it is drawn", lambda: page.locator("#stages").get_attribute("data-frame") != "asked")


OPENED = """() => Promise.allSettled(document.getAnimations().filter(one => one.animationName === 'opens').map(one => one.finished))"""


def opened_out(page):
    """What was just opened has slid to where it stays: until then a pointer sent to where it was seen is some px off."""
    page.evaluate(OPENED)


LOOK = """looked => {
  window.looked = looked;
  dispatchEvent(new Event('painting'));
  if (looked) document.getElementById('stages').dispatchEvent(new CustomEvent('rimfall:line'));  // on which the stages are drawn anew
}"""


@contextlib.contextmanager
def looked_at(page):
    """The stages as they are now, drawn and painted."""
    assert PAINTING_OF[page] != "nothing", "a test that looks at the stages is marked painted or glanced"
    glanced = PAINTING_OF[page] == "pictures"
    if glanced:
        page.evaluate(LOOK, True)
    settle(page)
    yield
    if glanced:
        page.evaluate(LOOK, False)


def picture(page, stage):
    """A picture of one stage: "aboard" or "outside"."""
    with looked_at(page):
        return page.screenshot(clip=page.locator(f".stage-{stage}").bounding_box())


def pictures(page):
    """{stage: what is seen of it, as bytes}, from one picture of the page: to tell whether a stage changed."""
    boxes = {stage: page.locator(f".stage-{stage}").bounding_box() for stage in ("aboard", "outside")}
    with looked_at(page):
        seen = pixels(page.screenshot())
    parts = {}
    for stage, box in boxes.items():
        left, top, width, height = (round(box[side]) for side in ("x", "y", "width", "height"))
        parts[stage] = seen[top : top + height, left : left + width].tobytes()
    return parts


def changed(page, before, what):
    """Until both stages are seen otherwise than `before`."""
    until(what, lambda: all(now != before[stage] for stage, now in pictures(page).items()))


def still_picture(page, stage):
    """The same once it no longer changes: after a while without motion the stages are drawn finer, and say so."""
    assert PAINTING_OF[page] == "all", "a test that waits for the finer picture is marked painted"
    settle(page)
    until("the finer picture", lambda: page.locator("#stages").get_attribute("data-frame") == "still")
    seen = [None]

    def settled():
        seen.append(picture(page, stage))
        return seen[-1] == seen[-2]

    until("the picture stands still", settled)
    return seen[-1]


def pixels(png):
    """(height, width, 4) of a PNG, read by FFmpeg."""
    with av.open(io.BytesIO(png)) as file:
        return next(file.decode(video=0)).to_ndarray(format="rgba").astype(int)


def spoken(page, stage):
    """What a stage says of itself to those who do not see it."""
    return page.locator(f".stage-{stage} .stage-view").get_attribute("aria-label").replace("\u00a0", " ")


def answer_of(page):
    """The API's answer to the scene the browser keeps."""
    done = page.request.post("/api/trace", data=saved_scene(page))
    assert done.ok, done.text()
    return done.json()


def fold_out(scope, name):
    """Opens what the button of that name folds out, unless it is."""
    button = scope.get_by_role("button", name=name).first
    if button.get_attribute("aria-expanded") == "false":
        opened_out(button.page)
        button.click()


def open_place(page, number):
    """Open a place by its key, or on a small screen by its numeral."""
    strip = page.locator(f'#strip [data-place="{number}"]')
    if strip.is_visible():
        strip.click()
    else:
        page.locator("h1").click()
        page.keyboard.press("Escape")
        page.keyboard.press(str(number))
    until(f"place {number}", lambda: page.locator(f"#body-{number}").is_visible())


def kept(page, holds):
    """The scene the browser keeps, once it is as wanted."""
    return until("the scene is kept", lambda: (scene := saved_scene(page)) and holds(scene) and scene)


def three_figures(value):
    """As the page shows a read-out."""
    size = abs(value)
    places = 0 if size >= 99.95 else 1 if size >= 9.995 else 2 if size >= 0.9995 else 3
    return f"{value:,.{places}f}".replace("-", "−") if value else "0"


def choose_shape(page, shape):
    """The habitat's shape, chosen in place 1."""
    open_place(page, 1)
    page.locator("#size-rows").get_by_label("Shape").select_option(shape)
    kept(page, lambda scene: scene["habitat"].get("shape") == shape)


def offered(page, button):
    """The button of one kind, in the list of what may be added."""
    page.get_by_role("button", name="Add a motion").click()
    return page.get_by_role("button", name=button)
