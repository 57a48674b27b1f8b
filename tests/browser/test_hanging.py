"""What hangs, what is poured into a cup, and why a thing drifts, on the page: stage, words, table and figures are the API's."""

import pytest

from .looking import answer_of, fold_out, kept, open_place, stop, three_figures, type_figure, until
from .test_motions import add, given
from .test_people import OPENING, at_the_clock, read_out
from .test_shapes import agrees

pytestmark = pytest.mark.one_page
NAMES = {"Centrifugal": "centrifugal", "Coriolis": "coriolis", "Drag": "drag", "The rest": "other"}
LEAST_M = 5e-7


def test_swing_and_tension_follow_the_clock(page):
    add(page, "Add a hanging thing")
    type_figure(page, f"motions.{OPENING}.first_angle_deg", "25")
    kept(page, lambda scene: scene["motions"][-1]["first_angle_deg"] == 25)
    answer = agrees(page)
    stop(page, 1.0)
    open_place(page, 3)
    for name in ("swing_deg", "plumb_deg", "tension_n"):
        wanted = at_the_clock(answer, name, 1.0)
        shown = until(
            f"{name} {wanted}",
            lambda name=name, wanted=wanted: (it := read_out(page, name)).rstrip("°") == wanted and it,
        )
        assert shown


def test_a_pendulum_may_be_pushed_and_its_line_made_longer(page):
    card = add(page, "Add a hanging thing")
    type_figure(page, f"motions.{OPENING}.length_m", "2")
    type_figure(page, f"motions.{OPENING}.speed_m_s", "1")
    kept(page, lambda scene: scene["motions"][-1]["length_m"] == 2 and scene["motions"][-1].get("speed_m_s") == 1)
    until("the push in its sentence", lambda: "pushed at 1.0 m/s" in given(card))
    agrees(page)


def metres(value):
    """A part as the page shows it: no minus before nothing."""
    shown = three_figures(value)
    return shown if shown.strip("−0.") else shown.lstrip("−")


def opening_landing(page):
    """The API's landing of the opening scene's first motion, once the browser keeps that scene."""
    type_figure(page, "motions.0.speed_m_s", "7")
    kept(page, lambda scene: scene["motions"][0]["speed_m_s"] == 7)
    return agrees(page)["motions"][0]["landing"]


def parts_shown(page):
    """[(name, figure)] of the table of causes on the chosen card."""
    rows = page.locator(".causes:visible tbody tr")
    cells = [rows.nth(k).locator("th, td").all_inner_texts() for k in range(rows.count())]
    return [(name, figure.replace("\u00a0", " ").split()[0]) for name, figure in cells]


def test_the_drawing_of_why_it_drifts_has_the_api_s_figures(page):
    landing = opening_landing(page)
    parts = landing["drift_parts_m"]
    drawing = page.locator(".causes:visible svg")
    label = until("its words", lambda: drawing.get_attribute("aria-label")).replace("\u00a0", " ")
    for word, name in NAMES.items():
        if name in parts and abs(parts[name]) >= LEAST_M:
            assert f"{word} {metres(parts[name])} m" in label
    assert f"in all {three_figures(landing['drift_m'])} m" in label
    sizes = [abs(parts[name]) for name in parts["order"] if name != "other" or abs(parts[name]) >= LEAST_M]
    assert drawing.locator(".part rect").count() == len(sizes)
    widths = [float(drawing.locator(".part rect").nth(k).get_attribute("width")) for k in range(len(sizes))]
    scale = widths[0] / sizes[0]
    assert all(abs(w - max(scale * s, 1.5)) < 0.1 for w, s in zip(widths, sizes, strict=True))


def test_t_turns_the_drawing_into_a_table_and_back(page):
    landing = opening_landing(page)
    page.locator(".causes:visible").get_by_role("button", name="As a table").focus()
    page.keyboard.press("t")
    shown = until("a table", lambda: parts_shown(page))
    parts = landing["drift_parts_m"]
    told = {NAMES[name]: figure for name, figure in shown if name in NAMES}
    assert told == {n: metres(parts[n]) for n in NAMES.values() if n in told}
    assert set(parts["order"]) - {"other"} <= set(told)
    assert shown[-1] == ("In all", three_figures(landing["drift_m"]))
    page.keyboard.press("t")
    until("the drawing again", lambda: page.locator(".causes:visible svg").count() == 1)


def test_what_bounced_first_has_no_drawing(page):
    add(page, "Add a roll")
    until("the roll is the chosen one", lambda: page.locator("#cards .card.chosen .causes").count() == 1)
    until("no drawing", lambda: page.locator(".causes:visible").count() == 0)


def test_a_cup_is_set_on_a_table_as_at_home_and_put_where_it_should_have_stood(page):
    card = add(page, "Add a pour")
    fold_out(card, "Cup: none")
    card.get_by_role("button", name="A cup to pour into").click()
    set_there = kept(page, lambda scene: scene["motions"][-1].get("target"))["motions"][-1]["target"]
    assert set_there["height_m"] == 0.85  # on a table as at home, where plain gravity takes the pour
    until("it says how far off", lambda: "from the middle of the cup" in card.locator(".said").inner_text())
    type_figure(page, f"motions.{OPENING}.target.along_m", "1.5")
    kept(page, lambda scene: scene["motions"][-1]["target"]["along_m"] == 1.5)
    answer = agrees(page)
    assert answer["motions"][OPENING]["findings"]["caught"] == 0
    aboard = page.locator(".stage-aboard .stage-label", has_text="missed")
    until("the stage says it is missed", lambda: aboard.count() == 1)
    card.get_by_role("button", name="Put the cup where it should have stood").click()
    kept(page, lambda scene: scene["motions"][-1]["target"]["along_m"] != 1.5)
    until("it is caught", lambda: answer_of(page)["motions"][OPENING]["findings"]["caught"] > 0.5)
    agrees(page)


def test_a_lip_tilts_over_points_of_time(page):
    card = add(page, "Add a pour")
    fold_out(card, "Lip: steady")
    card.get_by_role("button", name="Let the lip tilt").click()
    kept(page, lambda scene: len(scene["motions"][-1].get("tilt", [])) == 1)
    card.get_by_role("button", name="Add a point").click()
    kept(page, lambda scene: len(scene["motions"][-1]["tilt"]) == 2)
    box = card.get_by_label("Flow of point 2")
    box.fill("12")
    box.press("Enter")
    kept(page, lambda scene: scene["motions"][-1]["tilt"][1]["flow_ml_s"] == 12)
    assert "a tilting lip" in given(card)
    agrees(page)
    card.get_by_role("button", name="Remove point 1").click()
    kept(page, lambda scene: len(scene["motions"][-1]["tilt"]) == 1)
    card.get_by_role("button", name="Remove point 1").click()
    kept(page, lambda scene: not scene["motions"][-1].get("tilt"))


def test_drops_scatter_by_a_seed(page):
    card = add(page, "Add a pour")
    fold_out(card, "Drops: even")
    type_figure(page, f"motions.{OPENING}.jitter", "0.2")
    type_figure(page, f"motions.{OPENING}.seed", "7")
    kept(page, lambda scene: scene["motions"][-1].get("jitter") == 0.2 and scene["motions"][-1].get("seed") == 7)
    agrees(page)


def test_a_body_of_ones_own_floats(page):
    card = page.locator("#cards .card").first
    fold_out(card, "Body: handball")
    card.get_by_role("button", name="Make these figures your own").click()
    card.get_by_role("button", name="Buoyant in the air").click()
    kept(page, lambda scene: isinstance(body := scene["motions"][0]["body"], dict) and body.get("buoyant") is True)
    type_figure(page, "motions.0.body.drag_area_m2", "0.02")
    kept(page, lambda scene: scene["motions"][0]["body"].get("drag_area_m2") == 0.02)
    agrees(page)
