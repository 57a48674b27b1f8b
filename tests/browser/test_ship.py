"""Would the ship cope? A craft is started from, changed by hand and key, asked, and taken away, on one open page."""

import pypdfium2

from .looking import open_place, saved_scene, stop, until


def plain(text):
    return " ".join(text.replace("\u00a0", " ").split())


def coped(page):
    """The API's answer to the scene the browser keeps."""
    done = page.request.post("/api/craft", data=saved_scene(page))
    assert done.ok, done.text()
    return done.json()


def says_what_the_api_says(page):
    """Every question's sentences on the page are those of the API, under its heading."""
    answer = coped(page)
    wanted = [
        (one["question"], plain(" ".join(one["says"])))
        for one in answer.values()
        if isinstance(one, dict) and "says" in one
    ]

    def shown():
        sections = page.locator("#ship-questions .craft-question:not([hidden])")
        titles = [t for t in sections.locator(".third:not([hidden])").all_inner_texts() if t]
        return sorted(zip(titles, map(plain, sections.locator(".craft-says").all_inner_texts()), strict=False))

    until("the answer of the craft that is kept", lambda: shown() == sorted(wanted))
    assert page.locator("#answer-6").text_content() == answer["short"]


def parts(page):
    return {part["name"]: part for part in saved_scene(page)["craft"]["parts"]}


def test_a_craft_is_put_together_and_asked(open_page):
    """One page for all of it: a load costs more than the rest."""
    page = open_page()
    stop(page, 0)
    open_place(page, 6)
    page.locator(".craft", has_text="The Lantern Wheel").click()
    page.locator(".craft-views .part").first.wait_for(state="attached")
    says_what_the_api_says(page)
    a_part_is_moved_by_hand_and_key(page)
    a_part_is_added_and_taken_away(page)
    a_question_is_asked_and_left(page)
    figures_are_changed_and_refused(page)
    it_is_taken_away(page)
    the_craft_leaves_and_comes_back(page)


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
    until("the tanks moved along the axis", lambda: parts(page)["tanks"]["place_m"][2] > before[2] + 1)
    moved = parts(page)["tanks"]["place_m"]
    assert moved[:2] == before[:2]
    grip.focus()
    page.keyboard.press("ArrowUp")
    until("and half a metre off it", lambda: parts(page)["tanks"]["place_m"] == [moved[0] + 0.5, *moved[1:]])
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
    line.locator("select").select_option("cone")
    until("a cone of the same mass", lambda: parts(page)["sphere"]["solid"] == "cone")
    says_what_the_api_says(page)
    line.get_by_role("button", name="Remove sphere").click()
    until("a part less", lambda: len(parts(page)) == count)


def a_question_is_asked_and_left(page):
    page.locator(".ask-more").get_by_role("button", name="A spun rock").click()
    page.locator(".craft-question", has_text="rubble bears 25 Pa").wait_for()
    assert saved_scene(page)["craft"]["rock"]["radius_m"] == 500
    says_what_the_api_says(page)
    rock = page.locator(".craft-question", has_text="rubble bears 25 Pa")
    rock.get_by_role("button", name="Do not ask").click()
    until("it is not asked", lambda: not saved_scene(page)["craft"].get("rock"))
    says_what_the_api_says(page)


def figures_are_changed_and_refused(page):
    joint = page.locator(".craft-question", has_text="The joint runs at")
    joint.get_by_role("button", name="Its figures").click()
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
    assert saved_scene(page)["craft"]["joint"]["radius_m"] == 2


def it_is_taken_away(page):
    with page.expect_download() as begun:
        page.get_by_role("button", name="Pages to print (PDF)").click()
    with open(begun.value.path(), "rb") as file:
        text = pypdfium2.PdfDocument(file.read())[0].get_textpage().get_text_range()
    assert "The Lantern Wheel" in text
    assert begun.value.suggested_filename.endswith("-craft.pdf")


def the_craft_leaves_and_comes_back(page):
    page.get_by_role("button", name="Take the craft out of the scene").click()
    page.locator("#ship-start .craft").first.wait_for()
    until("the scene has none", lambda: saved_scene(page)["craft"] is None)
    page.keyboard.press("Control+z")
    until("it is back", lambda: saved_scene(page)["craft"] is not None)
    says_what_the_api_says(page)
