"""Would the ship cope? A craft is started from, changed by hand and key, asked, and taken away, on one open page."""

import re

import pypdfium2

from .looking import open_place, plain, saved_scene, scene_of, stop, until


def coped(page):
    """The API's answer to the scene the browser keeps."""
    done = page.request.post("/api/craft", data=saved_scene(page))
    assert done.ok, done.text()
    return done.json()


def says_what_the_api_says(page):
    """Every question's sentences on the page are those of the API, under its heading."""

    def wanted():
        answer = coped(page)
        said = [one for one in answer.values() if isinstance(one, dict) and "says" in one]
        return sorted((one["question"], plain(" ".join(one["says"]))) for one in said), answer["short"]

    def shown():
        sections = page.locator("#ship-questions .craft-question:not([hidden])")
        titles = [t for t in sections.locator(".third:not([hidden])").all_inner_texts() if t]
        return sorted(zip(titles, map(plain, sections.locator(".craft-says").all_inner_texts()), strict=False))

    until(
        "the answer of the craft that is kept", lambda: (shown(), page.locator("#answer-6").text_content()) == wanted()
    )


def parts(page):
    return {part["name"]: part for part in saved_scene(page)["craft"]["parts"]}


def test_a_craft_is_put_together_and_asked(open_page, troubles):
    """One page for all of it: a load costs more than the rest."""
    page = open_page()
    stop(page, 0)
    open_place(page, 6)
    it_fits_a_habitat_that_keeps_its_radius(page)
    page.locator(".craft:visible", has_text="The Lantern Wheel").click()
    page.locator(".craft-views .part").first.wait_for(state="attached")
    until("it is kept", lambda: (saved_scene(page) or {}).get("craft"))
    says_what_the_api_says(page)
    a_term_in_an_answer_is_explained(page)
    it_is_named(page)
    a_part_is_moved_by_hand_and_key(page)
    a_part_is_added_and_taken_away(page)
    it_is_drawn_anew_where_it_is_large(page)
    a_question_is_asked_and_left(page)
    figures_are_changed_and_refused(page)
    troubles.expect("422")
    what_is_refused_leaves_the_answers_there(page)
    it_is_taken_away(page)
    its_tumble_is_shown_as_a_motion(page)
    a_link_brings_all_of_it(page)
    the_craft_leaves_and_comes_back(page)


def it_fits_a_habitat_that_keeps_its_radius(page):
    page.locator("#ship-start").get_by_role("button", name="as they are").click()
    page.locator(".craft", has_text="Twin Lamps").click()
    until("it is kept", lambda: (saved_scene(page) or {}).get("craft"))
    assert (saved_scene(page)["habitat"]["radius_m"], saved_scene(page)["habitat"]["spin_rpm"]) == (56, 3)
    assert coped(page)["rim_radius_m"] == 56
    page.get_by_role("button", name="Take the craft out of the scene").click()
    page.locator("#ship-start").get_by_role("button", name="the craft’s", exact=True).click()


def a_term_in_an_answer_is_explained(page):
    word = page.locator(".craft-says:visible .word").first
    word.press("Enter")
    explained = page.get_by_role("dialog", name=re.compile(f"^{word.inner_text()}$", re.I))
    explained.wait_for()
    page.keyboard.press("Escape")
    until("it is away", lambda: not explained.is_visible())
    assert word.evaluate("element => element === document.activeElement"), "the focus is where it was"


def it_is_named(page):
    name = page.get_by_role("textbox", name="Name of the craft")
    assert name.inner_text() == "The Lantern Wheel"
    name.fill("Heron")
    name.press("Enter")
    until("it has another name", lambda: saved_scene(page)["craft"]["title"] == "Heron")
    page.keyboard.press("Control+z")
    until("and its own again", lambda: saved_scene(page)["craft"]["title"] == "The Lantern Wheel")


def a_part_is_moved_by_hand_and_key(page):
    page.locator(".craft-views g:has(> title:text-is('tanks')) .part").first.click(position={"x": 4, "y": 3})
    page.locator(".part-line.chosen", has_text="tanks").wait_for()
    before = parts(page)["tanks"]["place_m"]
    grip = page.get_by_role("slider", name="tanks, from the side")
    grip.scroll_into_view_if_needed()
    box = grip.bounding_box()
    x, y = box["x"] + box["width"] / 2, box["y"] + box["height"] / 2
    page.mouse.move(x, y)
    page.mouse.down()
    page.mouse.move(x + 20, y, steps=3)
    page.mouse.up()
    grip.focus()
    page.keyboard.press("ArrowUp")

    def moved():
        off, aside, along = parts(page)["tanks"]["place_m"]
        return (off, aside) == (before[0] + 0.5, before[1]) and along > before[2] + 1

    until("the tanks moved along the axis by hand, and half a metre off it by key", moved)
    says_what_the_api_says(page)
    page.keyboard.press("Control+z")
    page.keyboard.press("Control+z")
    until("both undone", lambda: parts(page)["tanks"]["place_m"] == before)


def a_part_is_added_and_taken_away(page):
    count = len(parts(page))
    page.locator(".part-add select").select_option("sphere")
    page.locator(".part-add .btn").click()
    until("a part more", lambda: len(parts(page)) == count + 1)
    line = page.locator(".part-line.chosen")
    assert parts(page)["sphere"]["solid"] == "sphere"
    solid = line.locator("select")
    solid.focus()
    solid.select_option("cone")
    until("a cone of the same mass", lambda: parts(page)["sphere"]["solid"] == "cone")
    says_what_the_api_says(page)
    assert page.evaluate("document.activeElement.value") == "cone"  # its rows are made anew under it
    line.get_by_role("button", name="Remove sphere").press("Enter")
    until("a part less", lambda: len(parts(page)) == count)
    assert "its figures" in page.evaluate("document.activeElement.ariaLabel")


def it_is_drawn_anew_where_it_is_large(page):
    """Its words keep the size that the window has for them, and the charts of the column stay as they are."""
    drawing, chart = page.locator(".craft-views"), page.locator(".craft-chart svg").first
    before = chart.get_attribute("viewBox")
    page.locator("#ship-views").get_by_role("button", name="Enlarge").click()
    until("it is wider", lambda: drawing.evaluate("one => one.viewBox.baseVal.width") > 500)
    scale = drawing.evaluate("one => one.getBoundingClientRect().width / one.viewBox.baseVal.width")
    assert 1.3 < scale < 1.5
    assert chart.get_attribute("viewBox") == before
    page.keyboard.press("Escape")
    until("it is as before", lambda: drawing.evaluate("one => one.viewBox.baseVal.width") < 400)


def a_question_is_asked_and_left(page):
    page.locator(".ask-more").get_by_role("button", name="A spun rock").click()
    page.locator(".craft-question", has_text="rubble bears 25 Pa").wait_for()
    until("it is kept", lambda: (saved_scene(page)["craft"].get("rock") or {}).get("radius_m") == 500)
    says_what_the_api_says(page)
    rock = page.locator(".craft-question", has_text="rubble bears 25 Pa")
    rock.get_by_role("button", name="Do not ask").click()
    until("it is not asked", lambda: not saved_scene(page)["craft"].get("rock"))
    says_what_the_api_says(page)


def figures_are_changed_and_refused(page):
    joint = page.locator(".craft-question", has_text="The joint runs at")
    joint.get_by_role("button", name="Change figures").click()
    box = joint.locator('[data-row="craft.joint.radius_m"] .val input').first
    box.fill("2")
    box.press("Enter")
    until("the joint is wider", lambda: saved_scene(page)["craft"]["joint"]["radius_m"] == 2)
    says_what_the_api_says(page)
    box.fill("-3")
    box.press("Enter")
    refusal = joint.locator('[data-row="craft.joint.radius_m"] .refusal')
    refusal.wait_for()
    assert "Radius of the bearing was -3; it must be" in plain(refusal.inner_text())
    assert plain(refusal.inner_text()).endswith("The answers are still for 2 m.")  # no stage shows it
    assert saved_scene(page)["craft"]["joint"]["radius_m"] == 2
    slew = page.locator(".craft-question", has_text="Which way does it push back")
    slew.get_by_role("button", name="Change figures").click()
    slew.get_by_role("button", name="turn time").click()
    time = slew.locator('[data-row="craft.slew.time_s"] .val input')
    time.fill("600")
    time.press("Enter")
    until(
        "a time, and no rate",
        lambda: [saved_scene(page)["craft"]["slew"].get(one) for one in ("time_s", "rate_deg_s")] == [600, None],
    )
    balance = page.locator(".craft-question", has_text="Does it stay on its axis?")
    balance.get_by_role("button", name="Change figures").click()
    plane = balance.get_by_role("textbox", name="Planes of the weights, first")
    plane.fill("-5")
    plane.press("Enter")
    until("weights elsewhere", lambda: saved_scene(page)["craft"]["ballast"]["planes_m"] == [-5, 3])
    says_what_the_api_says(page)


def what_is_refused_leaves_the_answers_there(page):
    """Dimmed, with a word of why; and as they were once it is undone."""
    said, words = page.locator(".craft-says").first, page.locator("#ship-words")
    before = said.inner_text()
    name = page.locator(".part-is [role=textbox]").nth(1)
    twin = page.locator(".part-is [role=textbox]").first.inner_text()
    name.fill(twin)
    name.press("Enter")
    until("it says why", lambda: words.is_visible() and "a name that no other part has" in words.inner_text())
    assert words.inner_text().endswith("The answers below are still those from before.")
    assert (said.is_visible(), said.inner_text()) == (True, before)
    assert float(said.evaluate("one => getComputedStyle(one).opacity")) < 1
    page.keyboard.press("Control+z")
    until("undone", lambda: words.is_hidden() and said.evaluate("one => getComputedStyle(one).opacity") == "1")
    says_what_the_api_says(page)


def it_is_taken_away(page):
    with page.expect_download() as begun:
        page.get_by_role("button", name="Pages to print (PDF)").click()
    with open(begun.value.path(), "rb") as file:
        text = pypdfium2.PdfDocument(file.read())[0].get_textpage().get_text_range()
    assert "The Lantern Wheel" in text
    assert begun.value.suggested_filename.endswith("-craft.pdf")


def its_tumble_is_shown_as_a_motion(page):
    page.locator("#ship-start").get_by_role("button", name="Start from another craft").click()
    page.locator(".crafts:visible .craft", has_text="The tug Wick").click()
    says_what_the_api_says(page)
    until("it is read out", lambda: "The tug Wick now: " in page.locator("#heard").inner_text())
    page.get_by_role("button", name="Show it as a motion").click()
    until("the tumble is the first motion", lambda: saved_scene(page)["motions"][0]["kind"] == "tumble")
    tumble, *others = saved_scene(page)["motions"]
    assert tumble["about_y_rpm"] == 0.005
    assert 1 <= tumble["losses_s"] < 300  # the notice says how much sooner
    assert "times as fast as asked" in page.locator("#notice").inner_text()
    assert [motion["bounces"] for motion in others] == [0, 0]
    aboard, outside = (page.locator(f".stage-{frame} .stage-view") for frame in ("aboard", "outside"))
    until("Outside tells of it", lambda: "the craft goes over" in outside.get_attribute("aria-label"))
    assert "the craft stands still, the stars go round" in aboard.get_attribute("aria-label")
    stop(page, 60)
    until("it went over", lambda: "has gone 0.0°" not in outside.get_attribute("aria-label"))
    page.keyboard.press("Control+z")
    until("undone", lambda: saved_scene(page)["motions"][0]["kind"] != "tumble")


def a_link_brings_all_of_it(page):
    """Every question asked, with the figures that it comes with: none is lost as one that only holds defaults."""
    more = page.locator(".ask-more button:visible")
    while more.count():
        more.first.click()

    def asked():
        return {name for name, block in saved_scene(page)["craft"].items() if block is not None}

    until("all are kept", lambda: asked() >= {"joint", "tether", "hull", "rock", "dock", "deploy"})

    def answered():
        return page.request.post("/api/craft", data=scene_of(page.url)).json()

    until("all of it is in the address", lambda: answered() == coped(page))
    assert "hidden" not in page.url  # what was hidden for the tumble is not any more


def the_craft_leaves_and_comes_back(page):
    page.get_by_role("button", name="Take the craft out of the scene").click()
    page.locator("#ship-start .craft").first.wait_for()
    until("the scene has none", lambda: saved_scene(page)["craft"] is None)
    page.keyboard.press("Control+z")
    until("it is back", lambda: saved_scene(page)["craft"] is not None)
    says_what_the_api_says(page)
