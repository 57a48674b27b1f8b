"""Is this shot right? A newcomer's way to a friend a third of the way round, and all that place 5 does besides, on one open page."""

import json
import re

from rimfall.scene.examples import example

from .looking import kept, link_to, plain, saved_scene, stop, until

FIGURES = ("speed_m_s", "heading_deg", "elevation_deg")


def in_vacuum(example):
    """The page's address of that example without its air, in which each aim takes milliseconds."""
    return f"/{link_to(example | {'air': None})}"


def aimed(page, **asked):
    """The API's answer to an aim in the scene the browser keeps."""
    done = page.request.post(
        "/api/aim", data={"scene": saved_scene(page), "motion": "Lob out", "within_m": 0.15} | asked
    )
    assert done.ok, done.text()
    return done.json()


def ways_are_those_of(page, answer):
    """The page lists the ways of the API's answer in its words, and the first sentence is the API's."""
    said = [plain(way["says"]) for way in answer["ways"][:5]]
    until(f"the ways {said}", lambda: [plain(t) for t in page.locator(".way-says").all_inner_texts()] == said)
    assert plain(page.locator(".aim-words").inner_text()) == plain(answer["words"][0])


def type_into(page, figure, text):
    figure.click()
    page.keyboard.type(text)
    page.keyboard.press("Enter")


def figures(page, name):
    """The three figures of a motion of the scene the browser keeps."""
    motion = next(m for m in saved_scene(page)["motions"] if m["name"] == name)
    return [motion.get(key, 0) for key in FIGURES]


def test_what_is_aimed_on_the_page_is_what_the_api_says(open_page):
    """One page for all of it: a load costs more than the rest."""
    page = open_page(path=in_vacuum(json.loads(example("same-lob"))))
    stop(page, 0)
    a_friend_a_third_of_the_way_round_takes_four_presses(page)
    the_catcher_is_moved_by_hand_and_key(page)
    the_net_flies_what_it_is_pointed_at_and_keeps_it(page)


def a_friend_a_third_of_the_way_round_takes_four_presses(page):
    presses = 0

    def press(locator):
        nonlocal presses
        presses += 1
        locator.click()

    press(page.locator("#place-5 .head"))
    page.locator(".way-says").first.wait_for()  # within reach there are throws at once
    press(page.get_by_role("button", name="a third", exact=True))
    third = {"along_m": 117.2861, "height_m": 1.4, "axial_m": 0}
    fails = aimed(page, to=third, fixed={"speed_m_s": 6})
    assert fails["ways"] == []
    would = page.get_by_role("button", name=plain(fails["would_do"][0]["says"]))
    press(would)
    fixed = fails["would_do"][0]["fixed"]
    answer = aimed(page, to=third, fixed=fixed)
    ways_are_those_of(page, answer)
    press(page.get_by_role("button", name="Throw it like this"))
    assert presses == 4
    way = answer["ways"][0]
    kept(page, lambda scene: scene["motions"][0]["speed_m_s"] == way["speed_m_s"])
    assert figures(page, "Lob out") == [way[key] for key in FIGURES]
    page.locator(".taken").wait_for()  # the way that is thrown says so
    assert plain(page.locator("#answer-5").text_content()) == answer["short"]

    # undone in one step; to catch it back, the other throws from there
    page.keyboard.press("Control+z")
    kept(page, lambda scene: scene["motions"][0]["speed_m_s"] == 6)
    page.get_by_role("button", name="And back").click()
    back = kept(page, lambda scene: len(scene["motions"]) == 3)["motions"][2]
    assert back["name"] == "Lob out back"
    assert back["place"] == third
    assert back["start_s"] == round(way["flight_s"], 3)
    until("who is aimed", lambda: page.get_by_label("Throw", exact=True).input_value() == "Lob out back")
    page.keyboard.press("Control+z")
    kept(page, lambda scene: len(scene["motions"]) == 2)
    who = page.get_by_label("Throw", exact=True)
    until("the question is what it was", lambda: who.input_value() == "Lob out")


def the_catcher_is_moved_by_hand_and_key(page):
    fixed = {"speed_m_s": 6}
    far = page.get_by_label("How far off", exact=True)
    type_into(page, far, "4.2")
    type_into(page, page.locator("#shot-aim").get_by_label("Speed", exact=True), "6")
    until("it is there", lambda: far.inner_text() == "4.20\u00a0m")

    # on the plan and on a stage, by the arrows: along the deck, and the height of the hands
    grip = page.locator("#shot-aim .aim-box .ring-grip")
    grip.press("Shift+ArrowRight")
    until("a metre on", lambda: far.inner_text() == "5.20\u00a0m")
    on_stage = page.locator(".stage-aboard .catcher-grip")
    on_stage.press("ArrowLeft")
    on_stage.press("Shift+ArrowUp")
    until("it is there", lambda: far.inner_text() == "5.10\u00a0m")
    hands = page.get_by_label("Height of the hands", exact=True)
    assert hands.inner_text() == "1.9\u00a0m"
    ways_are_those_of(page, aimed(page, to={"along_m": 5.1, "height_m": 1.9, "axial_m": 0}, fixed=fixed))

    # of the throws for each flight time one is picked, and what was asked before is undone to
    page.locator(".flight-grip").press("ArrowRight")
    keep = page.get_by_label("What is kept of the throw", exact=True)
    until("it is kept", lambda: keep.input_value() == "flight_s")
    asked = until("the address", lambda: re.search(r"&keep=flight_s,([\d.]+)", page.url), page=page)
    ways_are_those_of(
        page, aimed(page, to={"along_m": 5.1, "height_m": 1.9, "axial_m": 0}, fixed={"flight_s": float(asked[1])})
    )
    assert page.locator(".flight-way").count() == 2 * page.locator(".way-says").count()
    page.keyboard.press("Control+z")
    until("the speed is kept", lambda: keep.input_value() == "speed_m_s")

    # dragged on either stage it goes under the pointer, while the eye keeps still
    for stage in ("aboard", "outside"):
        handle = page.locator(f".stage-{stage} .catcher-grip")
        before = far.inner_text()
        handle.hover()  # once it stands still
        box = handle.bounding_box()
        middle = (box["x"] + box["width"] / 2, box["y"] + box["height"] / 2)
        page.mouse.down()
        page.mouse.move(middle[0] - 30, middle[1], steps=3)
        until(f"it follows on {stage}", lambda before=before: far.inner_text() != before)
        page.mouse.up()
        after = far.inner_text()
    page.keyboard.press("Control+z")  # all of a drag
    until("it is where it was before", lambda: far.inner_text() == before)
    page.keyboard.press("Control+Shift+z")
    until("it is there again", lambda: far.inner_text() == after)

    # a typed share of the way round, and one that means nothing
    share = page.get_by_label("How far round", exact=True)
    for typed, said in (("1/8", "an eighth"), ("far", "an eighth")):
        type_into(page, share, typed)
        until(f"{typed} is read", lambda said=said: share.inner_text() == said)
    assert "How far round was far" in page.locator("#notice").inner_text()

    # the address has the question: whoever opens it is asked the same
    asked = until("the address", lambda: re.search(r"&throw=1&to=([^&]+),.*&place=5", page.url), page=page)
    moved = page.url.replace(asked[1], "4.5,1.2")
    page.evaluate("url => { location.hash = new URL(url).hash; }", moved)
    until("the catcher of the link", lambda: (far.inner_text(), hands.inner_text()) == ("4.50\u00a0m", "1.2\u00a0m"))
    ways_are_those_of(page, aimed(page, to={"along_m": 4.5, "height_m": 1.2, "axial_m": 0}, fixed=fixed))

    # another motion is met where it is at that time
    page.get_by_label("Catcher", exact=True).select_option("Lob back")
    meets = aimed(page, to={"motion": "Lob back"}, fixed=fixed)
    until("its words", lambda: plain(meets["words"][0]) in plain(page.locator(".aim-words").inner_text()))
    assert on_stage.is_hidden()


def the_net_flies_what_it_is_pointed_at_and_keeps_it(page):
    # a knot by the arrows is flown on both stages, Enter keeps it, a file holds it
    page.get_by_role("button", name="Draw the net of landings").click()
    page.locator(".landings-net").wait_for()
    knot = page.locator("#shot-landings .ring-grip")
    knot.focus()
    knot.press("ArrowRight")
    until("it says where", lambda: "landed" in page.locator(".landings-at").inner_text())
    knot.press("Enter")
    scene = kept(page, lambda scene: len(scene["motions"]) == 3)
    lands = scene["motions"][2]
    assert lands["name"] == "Lob out 2"
    trace = page.request.post("/api/trace", data=json.dumps(scene), headers={"content-type": "application/json"}).json()
    drift_m = trace["motions"][2]["landing"]["way"]["spinward_m"]
    assert f"{abs(drift_m):.3g} m" in plain(page.locator(".landings-at").inner_text())

    # what takes long tells how far it is and can be stopped, and goes on where it is asked to
    held = []
    page.route("**/api/landings?*", lambda route: held.append(route))
    type_into(page, page.get_by_label("Speed, to", exact=True), "14")
    page.get_by_role("button", name="Stop", exact=True).click()
    assert page.locator(".landings-busy").is_hidden()
    page.unroute("**/api/landings?*")
    page.get_by_role("button", name="Go on", exact=True).click()
    until("the net of more", lambda: "14 m/s" in plain(page.locator(".landings-net").text_content()))
    assert held

    with page.expect_download() as saving:
        page.get_by_role("button", name="Save the net as CSV").click()
    assert saving.value.suggested_filename == "the-same-lob-both-ways-landings.csv"
