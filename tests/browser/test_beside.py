"""Two habitats at once: a second one is added, changed, compared in figures, swapped and taken away."""

import pytest

from .looking import (
    answer_of,
    kept,
    open_place,
    picture,
    plain,
    settle,
    still_picture,
    stop,
    three_figures,
    type_figure,
    until,
)
from .test_shapes import agrees

pytestmark = pytest.mark.one_page
ADD = "Add a second habitat"


SMALL = {"width": 1024, "height": 640}  # large enough to be drawn in, and small to paint in software


def set_beside(page, radius="224", spin="1.5"):
    open_place(page, 1)
    page.locator("#others").get_by_role("button", name=ADD).click()
    type_figure(page, "compare.0.habitat.radius_m", radius)
    type_figure(page, "compare.0.habitat.spin_rpm", spin)
    return kept(page, lambda scene: scene["compare"][0]["habitat"]["spin_rpm"] == float(spin))


def landing_cells(landing):
    """Of a landing, what its row of the table shows: how far, when."""
    way = landing["way"]
    far = f"{three_figures(way['spinward_m'])} m spinward"
    if way["of_turn"] >= 0.005:  # less is next to nothing
        far += f", {100 * way['of_turn']:.1f} % of the way round"
    return [far, f"{three_figures(landing['time_s'])} s"]


@pytest.mark.glanced
def test_where_each_motion_lands_in_each_habitat(page):
    page.set_viewport_size(SMALL)
    stop(page, 0.8)
    before = picture(page, "aboard")
    assert page.locator("#dials").get_by_role("button", name=ADD).is_visible(), "on a phone too"
    set_beside(page)
    until("both are drawn", lambda: picture(page, "aboard") != before)
    open_place(page, 3)
    answer = answer_of(page)
    rows = page.locator("#compared tbody").first.locator("tr")
    until("a row each", lambda: rows.count() == 3)
    wanted = [landing_cells(home["motions"][0]["landing"]) for home in [answer, answer["compare"][0]]]

    def cells():
        return [[plain(text) for text in rows.nth(i).locator("td").all_inner_texts()[1:]] for i in (1, 2)]

    until(f"where it lands: {wanted}", lambda: cells() == wanted)
    for width, height in ((1024, 640), (390, 844)):
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        assert rows.count() == 3


@pytest.mark.painted
def test_shown_over_beside_or_not_at_all(page):
    page.set_viewport_size(SMALL)
    set_beside(page)
    open_place(page, 3)
    stop(page, 0.8)
    pictures = {}
    for how in ("off", "laid over", "side by side"):
        page.locator("#compared").get_by_role("button", name=how).click()
        pictures[how] = (still_picture(page, "aboard"), page.locator("#stages").screenshot())
    assert pictures["off"][0] != pictures["laid over"][0]
    assert pictures["side by side"][1] != pictures["off"][1]


def test_a_second_habitat_is_offered_at_the_dials_and_each_thing_says_whose_it_is(page):
    until("the scene is read out", lambda: page.locator("#heard").inner_text().startswith("The same lob"))
    page.locator("#dials").get_by_role("button", name=ADD).click()
    scene = kept(page, lambda scene: len(scene.get("compare", [])) == 1)
    own, second = scene["habitat"], scene["compare"][0]["habitat"]
    assert second["radius_m"] == 2 * own["radius_m"]
    weighs = [habitat["radius_m"] * habitat["spin_rpm"] ** 2 for habitat in (own, second)]
    assert weighs[1] == pytest.approx(weighs[0], rel=1e-4)
    words = {"aboard": "This habitat, 56.0 m, 3.00 rpm", "outside": "Second habitat, 112 m, 2.12 rpm"}
    for stage, whose in words.items():
        title = page.locator(f".stage-{stage} .stage-title")
        until(whose, lambda title=title, whose=whose: title.inner_text().replace("\u00a0", " ") == f"Aboard {whose}")
    seats = page.locator(".stage-seat").all_inner_texts()
    assert seats[0] == seats[1], "both from the same seat"
    radius = page.locator("#dials [data-row$=radius_m]:visible")
    assert radius.get_attribute("data-row") == "compare.0.habitat.radius_m"
    landing = answer_of(page)["compare"][0]["motions"][0]["landing"]["time_s"]
    lands = page.locator(f'.mark[aria-label="Lob out in Second habitat: lands at {landing:.2f} s"]')
    until("the lanes are of it", lambda: lands.count() == 1)
    until("it is read out", lambda: page.locator("#heard").inner_text().startswith("Second habitat added: 112"))
    assert page.locator("#moves-whose").is_visible()
    lock = page.locator(".readout.gravity .lock")
    lock.click()
    figure = radius.locator(".val input")
    figure.fill("448")
    figure.press("Enter")
    scene = kept(page, lambda scene: scene["compare"][0]["habitat"]["spin_rpm"] < 0.51 * second["spin_rpm"])
    held = scene["compare"][0]["habitat"]
    assert held["radius_m"] * held["spin_rpm"] ** 2 == pytest.approx(weighs[1], rel=1e-6), (
        "half the spin at four times the radius"
    )
    assert scene["habitat"] == own
    page.get_by_role("button", name="This habitat").click()
    assert lock.get_attribute("aria-pressed") == "false"
    assert radius.get_attribute("data-row") == "habitat.radius_m"
    assert lands.count() == 0


def test_the_other_takes_the_scenes_place_and_the_way_back(page):
    set_beside(page)
    page.get_by_role("button", name="Swap with the scene’s own").click()
    scene = kept(page, lambda scene: scene["habitat"]["radius_m"] == 224)
    assert scene["compare"][0]["habitat"]["radius_m"] == 56
    assert scene["compare"][0]["name"] == "Second habitat"
    agrees(page)
    page.get_by_role("button", name="Undo").click()
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 56)


def test_three_at_most_each_with_a_shape_of_its_own(page):
    set_beside(page)
    page.locator("#others").get_by_label("Shape").select_option("torus")
    kept(page, lambda scene: scene["compare"][0]["habitat"].get("shape") == "torus")
    more = page.locator("#others").get_by_role("button", name="Add another habitat")
    for count in (2, 3):
        more.click()
        kept(page, lambda scene, count=count: len(scene["compare"]) == count)
    until("no fourth", lambda: not more.is_visible())
    assert len(answer_of(page)["compare"]) == 3
    for left in (2, 1, 0):
        page.get_by_role("button", name="Remove habitat 2").click()
        kept(page, lambda scene, left=left: len(scene.get("compare", [])) == left)
    until("nothing to compare", lambda: page.locator("#others .other").count() == 0)


def test_a_refusal_stands_at_the_row_of_the_other_habitat(page, troubles):
    set_beside(page)
    type_figure(page, "compare.0.habitat.radius_m", "1000000")
    row = page.locator('[data-row="compare.0.habitat.radius_m"]').first
    until("it says what it may be", lambda: "100,000" in row.inner_text())
