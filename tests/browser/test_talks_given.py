"""The talks ready to give, given by a clicker's keys alone: each step stands with its line, its scene and its stages; of what is held back
nothing is anywhere on the page until a key shows it.
"""

from rimfall import api
from rimfall.talk import examples
from tests.tables import each_row

from .looking import plain, shown_is, until

# what a reader, an ear or a pointer finds: words, and what things are called
ALL_SAID = """() => {
  const all = what => [...document.querySelectorAll(what)].filter(one => one.checkVisibility());
  const called = all('#frame [aria-label], #frame [title]').flatMap(one => [one.getAttribute('aria-label'), one.title]);
  const told = all('[role=status], [aria-live], #heard').map(one => one.textContent);
  return [document.querySelector('#frame').innerText, ...called, ...told].join('\\n');
}"""
BOTH = ("aboard", "outside")


def begins(page, title, of):
    if not page.locator("#talk").is_visible():  # where a talk is made, one is already
        page.locator("#bar").get_by_role("button", name="Talk").click()
    page.locator("#talk").get_by_role("button", name=title).click()
    page.locator("#talk").get_by_text(f"Step 1 of {of}").wait_for()
    page.locator("#talk").get_by_role("button", name="Start presenting", exact=True).click()
    page.locator(".frame.presenting").wait_for()


def step_shown(page):
    return page.locator(".surtitle-step").inner_text()


def said(page):
    return plain(page.evaluate(ALL_SAID))


def lanes(page):
    return plain(" ".join(page.locator(".lanes svg text").all_text_contents()))


def stages_shown(page):
    return {name for name in BOTH if page.locator(f".stage-{name}").is_visible()}


def landing_of(given):
    """What would tell how the motion asked about ends: when and how far off it lands, as the page writes them, or that it never does."""
    path = api.trace(given.scene).motions[given.step.ask.motion]
    if path.landing is None:
        return ["still flies"]
    return [f"{path.landing.time_s:.2f}", f"{abs(path.landing.along_m - path.along_m[0]):.2f} m"]


def is_held(page, given, told):
    heard = said(page)
    assert [one for one in told if one in heard] == []
    assert given.step.ask.motion in lanes(page)


def goes_on(page, number, of):
    """To the next step, through the pause point if it has come to that: by one key, or by two."""
    page.keyboard.press("PageDown")
    if step_shown(page) == f"step {number} of {of}":
        page.keyboard.press("PageDown")
    assert step_shown(page) == f"step {number + 1} of {of}"


@each_row("name", examples.NAMES)
def test_a_talk_is_given_by_a_clicker_alone(page, name):
    talk = api.open_talk(name)
    of = len(talk.steps)
    begins(page, talk.title, of)
    for number, given in enumerate(talk.steps, start=1):
        step, habitat = given.step, given.scene.habitat
        assert step_shown(page) == f"step {number} of {of}"
        assert page.locator(".surtitle-line").inner_text() == step.line
        shown = {motion.name for motion in given.scene.motions} - set(step.hidden)
        until("its motions have their lanes", lambda shown=shown: all(one in lanes(page) for one in shown))
        assert [one for one in step.hidden if one in lanes(page)] == []
        shown_is(page, "Radius", habitat.radius_m)
        shown_is(page, "Spin", habitat.spin_rpm)
        wanted = set(BOTH) if step.show == "both" else {step.show}
        until("its stages are shown", lambda wanted=wanted: stages_shown(page) == wanted)
        assert step.notes[:30] not in said(page)
        if step.ask:
            told = landing_of(given)
            is_held(page, given, told)
            page.keyboard.press("PageDown")
            assert step_shown(page) == f"step {number} of {of}"
            until("it is shown how it ends", lambda told=told: told[0] in lanes(page))
        if number < of:
            goes_on(page, number, of)
    page.keyboard.press("PageUp")
    assert step_shown(page) == f"step {of - 1} of {of}"
    page.keyboard.press("Home")
    assert step_shown(page) == f"step 1 of {of}"
    page.keyboard.press("Escape")
    page.locator(".frame.presenting").wait_for(state="detached")
