"""Every shape, chosen on the page: the stages draw it, figures and words are the API's, and one undo takes it back."""

import pytest

from .looking import (
    answer_of,
    changed,
    choose_shape,
    fold_out,
    kept,
    offered,
    open_place,
    pictures,
    readout,
    said,
    still_picture,
    stop,
    three_figures,
    type_figure,
    until,
)

pytestmark = pytest.mark.one_page
SMALL = {"width": 1024, "height": 640}  # large enough to be drawn in, and small to paint in software
SHAPES = ("torus", "sphere", "pods", "tether", "tumbler", "turntable")
FLAT = ("pods", "tether", "tumbler")


def agrees(page):
    """Figures and words on the page are those of the API for the scene on the page."""
    answer = answer_of(page)
    figure = three_figures(answer["habitat"]["felt_g"])
    until("the gravity of the answer", lambda: readout(page, "gravity").startswith(f"{figure} "))
    open_place(page, 2)
    for i, motion in enumerate(answer["motions"]):
        until(
            f"the words of {motion['name']}",
            lambda i=i, m=motion: said(page, i) == " ".join(m["words"]).replace("\u00a0", " "),
        )
    return answer


@pytest.mark.glanced
def test_every_shape_is_chosen(page):
    page.set_viewport_size(SMALL)
    stop(page, 0.8)
    for shape in SHAPES:
        open_place(page, 2)  # where it is looked at afterwards too
        before = pictures(page)
        choose_shape(page, shape)
        agrees(page)  # and so it is drawn: one look is enough
        changed(page, before, f"both stages draw a {shape}")
        open_place(page, 1)
        assert page.evaluate("document.documentElement.scrollWidth") <= SMALL["width"]
        page.get_by_role("button", name="Undo").click()
        until("a drum again", lambda: page.locator("#size-rows").get_by_label("Shape").input_value() == "cylinder")


def test_every_shape_fits_a_phone(page):
    page.set_viewport_size({"width": 390, "height": 844})
    for shape in SHAPES:
        choose_shape(page, shape)
        assert page.evaluate("document.documentElement.scrollWidth") <= 390


def test_each_floor_says_its_gravity_and_its_lean(page):
    words = page.locator("#size-rows .floor-words")
    for shape in FLAT:
        choose_shape(page, shape)
        type_figure(page, "habitat.radius_m", "24")
        kept(page, lambda scene: scene["habitat"]["radius_m"] == 24)
        floors = answer_of(page)["habitat"]["floors"]
        assert len(floors) >= 2
        for i, floor in enumerate(floors):
            lean = max(abs(level["lean_deg"]) for level in floor["levels"])
            figures = (f"{three_figures(floor['gravity_g'])} g", f"{lean:.1f}°")
            until(
                f"{figures} of floor {i} of {shape}",
                lambda i=i, figures=figures: all(
                    f in words.nth(i).inner_text().replace("\u00a0", " ") for f in figures
                ),
            )


def test_floors_are_added_moved_and_removed(page):
    choose_shape(page, "pods")
    floors = page.locator("#size-rows .floor")
    until("three", lambda: floors.count() == 3)
    page.get_by_role("button", name="Add a floor").click()
    until("four", lambda: floors.count() == 4)
    floors.nth(3).locator(".links .link").click()
    floors.nth(3).get_by_role("button", name="Evenly spaced").click()
    type_figure(page, "habitat.floors.3.azimuth_deg", "200")
    kept(page, lambda scene: scene["habitat"]["floors"][-1].get("azimuth_deg") == 200)
    assert answer_of(page)["habitat"]["floors"][3]["azimuth_deg"] == pytest.approx(200)
    page.get_by_role("button", name="Remove floor 4").click()
    until("three again", lambda: floors.count() == 3)


def test_a_motion_is_put_on_another_floor(page):
    choose_shape(page, "pods")
    open_place(page, 2)
    offered(page, "Add a drop").click()
    card = page.locator("#cards .card").last
    fold_out(card, "Place and time")
    card.get_by_label("On", exact=True).select_option("1")
    kept(page, lambda scene: scene["motions"][-1]["place"].get("floor") == 1)
    agrees(page)


@pytest.mark.painted
def test_a_tube_too_wide_is_refused_at_its_row_and_the_picture_stays(page, troubles):
    page.set_viewport_size(SMALL)
    choose_shape(page, "torus")
    agrees(page)
    open_place(page, 1)
    stop(page, 0.5)
    before = still_picture(page, "aboard")
    troubles.expect("422")
    type_figure(page, "habitat.tube_radius_m", "40")
    row = page.locator('#size-rows [data-row="habitat.tube_radius_m"]')
    until("the refusal", lambda: "half the radius" in row.inner_text())
    assert still_picture(page, "aboard") == before
