"""Two habitats at once: one is set beside the scene's own, changed, compared in figures, swapped and taken away."""

import pytest

from .looking import answer_of, kept, open_place, picture, still_picture, stop, three_figures, type_figure, until
from .test_shapes import agrees

ADD = "Set another habitat beside it"


def set_beside(page, radius="224", spin="1.5"):
    open_place(page, 1)
    page.get_by_role("button", name=ADD).click()
    type_figure(page, "compare.0.habitat.radius_m", radius)
    type_figure(page, "compare.0.habitat.spin_rpm", spin)
    return kept(page, lambda scene: scene["compare"][0]["habitat"]["spin_rpm"] == float(spin))


@pytest.mark.parametrize(("width", "height"), [(1440, 900), (390, 844)])
@pytest.mark.painted
def test_where_each_motion_lands_in_each_habitat(open_page, width, height):
    page = open_page(width=width, height=height)
    stop(page, 0.8)
    before = picture(page, "aboard")
    set_beside(page)
    until("both are drawn", lambda: picture(page, "aboard") != before)
    open_place(page, 3)
    answer = answer_of(page)
    rows = page.locator("#compared tbody").first.locator("tr")
    until("a row each", lambda: rows.count() == 3)
    for i, home in enumerate([answer, answer["compare"][0]]):
        landing = home["motions"][0]["landing"]
        wanted = [f"{three_figures(landing['drift_m'])} m", f"{three_figures(landing['time_s'])} s"]
        shown = rows.nth(i + 1).locator("td").all_inner_texts()
        assert [text.replace("\u00a0", " ") for text in shown[1:]] == wanted
    assert page.evaluate("document.documentElement.scrollWidth") <= width


@pytest.mark.painted
def test_shown_over_beside_or_not_at_all(page):
    set_beside(page)
    open_place(page, 3)
    stop(page, 0.8)
    pictures = {}
    for how in ("off", "over this one", "beside"):
        page.locator("#compared").get_by_role("button", name=how).click()
        pictures[how] = (still_picture(page, "aboard"), page.locator("#stages").screenshot())
    assert pictures["off"][0] != pictures["over this one"][0]
    assert pictures["beside"][1] != pictures["off"][1]


def test_the_other_takes_the_scenes_place_and_the_way_back(page):
    set_beside(page)
    page.get_by_role("button", name="Swap with the scene’s own").click()
    scene = kept(page, lambda scene: scene["habitat"]["radius_m"] == 224)
    assert scene["compare"][0]["habitat"]["radius_m"] == 56
    assert scene["compare"][0]["name"].replace("\u00a0", " ") == "Cylinder, 56 m, 3 rpm"
    agrees(page)
    page.get_by_role("button", name="Undo").click()
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 56)


def test_three_at_most_each_with_a_shape_of_its_own(page):
    set_beside(page)
    page.locator("#others").get_by_label("Shape").select_option("torus")
    kept(page, lambda scene: scene["compare"][0]["habitat"].get("shape") == "torus")
    for count in (2, 3):
        page.get_by_role("button", name=ADD).click()
        kept(page, lambda scene, count=count: len(scene["compare"]) == count)
    until("no fourth", lambda: not page.get_by_role("button", name=ADD).is_visible())
    assert len(answer_of(page)["compare"]) == 3
    for left in (2, 1, 0):
        page.get_by_role("button", name="Remove habitat 1 beside it").click()
        kept(page, lambda scene, left=left: len(scene.get("compare", [])) == left)
    until("nothing to compare", lambda: page.locator("#others .other").count() == 0)


def test_a_refusal_stands_at_the_row_of_the_other_habitat(page, troubles):
    set_beside(page)
    type_figure(page, "compare.0.habitat.radius_m", "1000000")
    row = page.locator('[data-row="compare.0.habitat.radius_m"]')
    until("it says what it may be", lambda: "100,000" in row.inner_text())
