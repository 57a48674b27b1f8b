"""Glossary: a sheet, opened by button, key and term, with an entry for every kind of motion and every figure told."""

import re

import pytest

from .looking import open_place, stop, until
from .test_accessible import found
from .test_motions import add

pytestmark = pytest.mark.one_page
KINDS_AS_TERMS = {"stand": "stand", "let_go": "let go"}


def terms(page):
    page.locator(".glossary dt").first.wait_for()
    return [text.lower() for text in page.locator(".glossary dt").all_inner_texts()]


def test_it_is_fetched_when_first_opened_and_explains_every_kind(open_page):
    page, asked = open_page(), []
    page.on("request", lambda request: asked.append(request.url))
    assert page.locator(".glossary dt").count() == 0
    page.get_by_role("button", name="Glossary").click()
    listed = terms(page)
    fetched = sorted(url.rsplit("/", 1)[1] for url in asked if "glossary" in url)
    assert len(fetched) == 2
    assert all(re.fullmatch(r"glossary_(words|more)(-\w+)?\.js", one) for one in fetched)
    kinds = page.request.get("/api/fields").json()["kinds"]
    assert {KINDS_AS_TERMS.get(kind, kind) for kind in kinds} <= set(listed)
    assert page.locator(".glossary dd").count() == len(listed)


def test_w_opens_it_and_escape_puts_it_away(page):
    stop(page)
    page.locator("h1").click()
    page.keyboard.press("Escape")
    page.keyboard.press("w")
    dialog = page.get_by_role("dialog", name="Glossary")
    dialog.wait_for()
    terms(page)
    page.keyboard.press("Escape")
    until("it is away", lambda: not dialog.is_visible())


def test_a_term_is_explained_where_it_stands_and_leads_to_its_entry(page):
    add(page, "Add a lift ride")
    open_place(page, 3)
    term = page.locator('#at-the-clock [data-found="tilt_deg"] .term')
    term.click()
    explained = page.get_by_role("dialog", name="Apparent tilt")
    explained.wait_for()
    assert "tangent" in explained.locator(".formula").inner_text()
    assert "Classical Mechanics" in explained.inner_text()
    assert explained.locator("svg path").count() > 1
    assert found(page, ".explained") == []
    page.keyboard.press("Escape")
    until("it is away", lambda: not explained.is_visible())
    assert term.evaluate("element => element === document.activeElement"), "the focus is where it was"
    term.press("Enter")
    explained.get_by_role("button", name="All words").click()
    page.locator(".glossary dt:focus").wait_for()
    assert page.locator(".glossary dt:focus").inner_text() == "Apparent tilt"
    box = page.locator(".glossary dt:focus").bounding_box()
    assert 0 <= box["y"] < page.viewport_size["height"]


def test_a_term_in_a_sentence_is_explained_by_key(page):
    stop(page)
    word = page.locator("#cards .card.chosen .said .word", has_text="Coriolis")
    word.focus()
    page.keyboard.press("Enter")
    explained = page.get_by_role("dialog", name="Coriolis")
    explained.wait_for()
    assert "2 × spin" in explained.inner_text()
    box, window = explained.bounding_box(), page.viewport_size
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= window["width"]
    assert box["y"] >= 0
    assert box["y"] + box["height"] <= window["height"]
    page.keyboard.press("Escape")
    page.locator(".causes:visible .cause .word", has_text="Centrifugal").press("Enter")  # on the bar of why it drifts
    centrifugal = page.get_by_role("dialog", name="Centrifugal")
    centrifugal.wait_for()
    page.keyboard.press("Escape")
    assert found(page, ".causes") == []


def test_every_label_at_the_clock_has_an_entry(page):
    for button in (
        "Add a jump",
        "Add a walk",
        "Add a lift ride",
        "Add someone who lets go",
        "Add an approach",
        "Add a hanging",
    ):
        add(page, button)
    open_place(page, 3)
    buttons = page.locator("#at-the-clock .term")
    until("read-outs of all", lambda: buttons.count() >= 12)
    wanted = [re.sub(r"^What (.*) is$", r"\1", buttons.nth(k).get_attribute("title")) for k in range(buttons.count())]
    page.get_by_role("button", name="Glossary").click()
    assert set(wanted) <= set(terms(page))


def test_it_is_in_reach_on_a_phone(page):
    page.set_viewport_size({"width": 390, "height": 844})
    page.locator('#strip [data-place="away"]').click()
    page.get_by_role("button", name="Glossary").click()
    assert "spinward" in terms(page)
    assert page.evaluate("document.documentElement.scrollWidth") <= 390
