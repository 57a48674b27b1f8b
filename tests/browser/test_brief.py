"""The page to print: as a PDF that another reader opens, on both papers, in grey, and for who cannot see it."""

import itertools
import json
import re

import numpy as np
import pypdfium2
import pytest

from rimfall.phrases import caution
from rimfall.scene import examples
from rimfall.scene.craft import examples as crafts
from tests.browser.looking import link_to, plain, three_figures, until
from tests.browser.test_accessible import found
from tests.browsing import DRAWN

READY = "body[data-ready]"
MM_PT = 72 / 25.4
PAPERS = {"a4": (210.0, 297.0), "letter": (215.9, 279.4)}  # ISO 216; ANSI/ASME Y14.1
MARGIN_MM = 16.0  # left and right: a little under the page's own
OFFER = " You can set one of your own."  # beside a quantity without a published limit
SCENES = ["same-lob", "galley", "on-the-bench"]


def example(name):
    return json.loads(examples.example(name))


@pytest.fixture
def brief(open_page):
    return lambda name, **options: open_page(f"/brief{link_to(example(name))}", ready=READY, **options)


def printed(page, paper="a4"):
    page.locator(f"input[value={paper}]").check()
    return pypdfium2.PdfDocument(page.pdf(prefer_css_page_size=True))


def words_of(sheet):
    return plain(sheet.get_textpage().get_text_range())


def close(text):
    """Without spaces and hyphens: at the end of a line the reader gives neither as it stands."""
    return re.sub(r"[\s\u00a0\u00ad\ufffe-]", "", text)


@pytest.mark.parametrize("name", SCENES)
def test_it_is_two_to_four_sheets_with_everything_on_them(brief, name):
    """On both papers: nothing is missing, no table is parted from its heading, no ink runs into a margin."""
    page, scene = brief(name), example(name)
    answer = page.request.post("/api/trace", data=scene).json()
    felt = page.request.post("/api/feel", data={"habitat": scene["habitat"]}).json()
    for paper in PAPERS:
        document = printed(page, paper)
        assert len(document) in (2, 3, 4)
        words = [words_of(sheet) for sheet in document]
        check_every_sheet(document, words, paper)
        check_everything_is_told(words, scene, answer, felt)
        check_no_table_is_parted_from_its_heading([close(sheet) for sheet in words], felt)
        for sheet in document:
            check_the_margins_are_clear(sheet, paper)
    check_nothing_is_wider_than_the_sheet_and_no_text_leaves_its_drawing(page)


def check_every_sheet(document, words, paper):
    wide, high = PAPERS[paper]
    for number, (sheet, said) in enumerate(zip(document, words, strict=True), start=1):
        assert sheet.get_size() == pytest.approx((wide * MM_PT, high * MM_PT), abs=0.6)
        assert caution() in said
        assert f"page {number} of {len(document)}" in said


def check_everything_is_told(words, scene, answer, felt):
    whole = " ".join(words)
    assert scene["title"] in words[0]
    for motion in answer["motions"]:
        assert motion["name"] in whole
        # where a line breaks the page's text has no space
        assert all(close(said) in close(whole) for said in (*motion["words"], *motion["assumptions"]))
    assert f"{scene['habitat']['spin_rpm']:.3g}" in whole
    told = [felt["says"]["lead"], felt["caution"], *(part["text"] for part in felt["words"])]
    why = felt["why_spin"]
    told += [why["lead"], *((stay := why["stays"][2])["verdict"], *stay["not_known"])]
    told += [one["says"].removesuffix(OFFER) for one in felt["quantities"]] + [row["study"] for row in felt["limits"]]
    told += [row["source"].split("; ")[0] for row in felt["limits"]]
    assert [said for said in told if close(said) not in close(whole)] == []
    for heading in (
        "Aboard",
        "Outside",
        "What moves",
        "What happens",
        "What people would feel",
        "Height by time",
        "A day aboard",
        "Why spin at all?",
        "Sources of the limits",
        "Sources",
        "(1978), table 5.2",
    ):
        assert heading in whole
    assert OFFER.strip() not in whole, "nothing can be set on paper"
    assert all(close(said) in close(whole) for said in felt["assumptions"])
    assert "Print" not in whole, "the buttons are for the screen"


def check_no_table_is_parted_from_its_heading(sheets, felt):
    for one in felt["quantities"]:
        rows = [row for row in felt["limits"] if row["quantity"] == one["name"]]
        # the head of the table is read with it, though unseen
        whole = close(f"{one['label']}, {three_figures(one['value'])} {one['unit']} {one['says']}") if rows else ""
        (sheet,) = [said for said in sheets if whole in said] if rows else [""]
        names = {close(f"{row['study']} {row['year'] or ''}") for row in rows}
        assert [study for study in names if study not in sheet.partition(whole)[2]] == []


def check_the_margins_are_clear(sheet, paper):
    grey = sheet.render(scale=2, grayscale=True).to_numpy()
    dark = grey.reshape(grey.shape[:2]) < 200
    across = np.flatnonzero(dark.any(axis=0)) / 2 / MM_PT
    assert across.min() >= MARGIN_MM
    assert across.max() <= PAPERS[paper][0] - MARGIN_MM


def test_decks_beyond_the_radius_are_not_printed_and_the_premises_are(open_page):
    scene = example("galley")
    scene["habitat"] |= {"radius_m": 30.0, "spin_rpm": 4.0}
    scene["habitat"]["decks"] = [{"name": "Handball court", "radius_m": 56.0}, {"name": "Loft", "radius_m": 20.0}]
    page = open_page(f"/brief{link_to(scene)}", ready=READY)
    levels = page.request.post("/api/feel", data={"habitat": scene["habitat"]}).json()["levels"]
    assert "Loft" in [level["name"] for level in levels]
    assert "Handball court" not in [level["name"] for level in levels]
    assert "Loft" in page.locator("#habitat").inner_text()
    assert "Handball court" not in page.locator("#sheet").inner_text()
    premises = "30.0 m, 4.00 rpm; somebody 1.75 m tall who walks at 1.4 m/s and runs at 4.0 m/s."
    assert premises in plain(page.locator("#felt").inner_text())
    assert len(printed(page)) == 4


def check_nothing_is_wider_than_the_sheet_and_no_text_leaves_its_drawing(page):
    page.set_viewport_size({"width": 655, "height": 900})
    page.emulate_media(media="print")
    assert page.evaluate("document.documentElement.scrollWidth") <= 655
    boxes = page.locator("#sheet svg").evaluate_all(
        """drawings => drawings.flatMap(svg => {
          const outer = svg.getBoundingClientRect();
          const inner = [...svg.querySelectorAll('text')].map(text => text.getBoundingClientRect());
          return inner.filter(box => box.left < outer.left - 1 || box.right > outer.right + 1 || box.top < outer.top - 3)
            .map(box => [box.left - outer.left, box.right - outer.right, box.top - outer.top]);
        })"""
    )
    assert boxes == []
    rows = page.locator("svg.plate").evaluate_all(
        "all => all.map(svg => [svg.getBoundingClientRect().right, svg.getBoundingClientRect().left])"
    )
    assert len(rows) == 6
    assert all(right <= 655 and left >= 0 for right, left in rows)


def test_it_can_be_read_in_grey_and_without_seeing_it_and_shows_three_instants(brief):
    page = brief("galley")
    check_each_path_has_its_own_dash(page)
    check_the_three_instants_are_the_release_half_way_and_the_last_landing(page)
    check_it_can_be_read_without_seeing_it(page)


def check_each_path_has_its_own_dash(page):
    for drawing in ("svg.plate >> nth=0", ".plot svg >> nth=0"):
        dashes = page.locator(f"{drawing} >> path").evaluate_all(
            """paths => paths.filter(path => path.getAttribute('d').length > 200)
              .map(path => [path.getAttribute('stroke'), path.getAttribute('stroke-dasharray')])"""
        )
        of = {stroke: dash or "" for stroke, dash in dashes if stroke in ("#985C00", "#0068A6", "#00523A", "#465157")}
        assert len(of) == len(set(of.values())) == 4, of


def check_it_can_be_read_without_seeing_it(page):
    assert page.locator("html").get_attribute("lang") == "en"
    levels = [
        int(tag[1]) for tag in page.locator(":is(h1, h2, h3):visible").evaluate_all("all => all.map(e => e.tagName)")
    ]
    assert levels[0] == 1
    assert levels.count(1) == 1
    assert all(after - before <= 1 for before, after in itertools.pairwise(levels))
    for drawing in page.locator("#sheet svg:not([aria-hidden])").all():
        assert drawing.get_attribute("role") == "img"
        assert len(drawing.get_attribute("aria-label")) > 20
    heads = page.locator("thead th").evaluate_all("all => all.map(e => e.scope)")
    assert set(heads) == {"col"}
    for section in page.locator("section:visible").all():
        assert section.locator("h2").count() == 1
        assert len(plain(section.locator(".rows").inner_text())) > 20, "a section with nothing in it"
    assert found(page) == []


def check_the_craft_is_told(page, scene):
    """Every question with its sentences, its drawing, what is left out and the caution."""
    section, answer = page.locator("#craft"), page.request.post("/api/craft", data=scene).json()
    findings = [one for one in answer.values() if isinstance(one, dict) and "question" in one]
    told = plain(section.inner_text())
    assert len(findings) > 6
    for one in findings:
        assert one["question"] in told
        assert [said for said in (*one["says"], *one["assumptions"]) if plain(said) not in told] == []
    assert told.endswith(caution())
    assert "tanks" in section.get_by_role("img").first.get_attribute("aria-label")
    document = printed(page)
    assert len(document) <= 6
    words = [words_of(sheet) for sheet in document]
    check_every_sheet(document, words, "a4")
    assert all(close(one["question"]) in close(" ".join(words)) for one in findings)
    for sheet in document:
        check_the_margins_are_clear(sheet, "a4")


def test_hidden_motions_are_left_out_and_the_craft_is_not(open_page):
    scene, craft = example("galley"), json.loads(crafts.example("ring-ship"))
    scene["craft"] = {name: value for name, value in craft.items() if name not in ("radius_m", "spin_rpm")}
    page = open_page(f"/brief{link_to(scene)}&hidden=1,3&speed=0.25", ready=READY)
    check_the_craft_is_told(page, scene)
    told = " ".join(
        page.locator(f"#{part}").inner_text() for part in ("moves", "events", "habitat", "plots", "sources")
    )
    assert [plain(text) for text in page.locator("#moves h3").all_inner_texts()] == ["serve"]
    assert "serve" in page.locator("#events").inner_text()
    assert not re.search(r"\b(cup|tea)\b", told)
    assert page.locator("svg.plate").first.locator("text", has_text=re.compile("cup|tea")).count() == 0
    assert page.locator("#back").get_attribute("href").endswith("&hidden=1,3")


def check_the_three_instants_are_the_release_half_way_and_the_last_landing(page):
    said = page.locator(".view >> nth=0 >> figcaption").all_inner_texts()
    answer = page.request.post("/api/trace", data=example("galley")).json()
    last = max(motion["landing"]["time_s"] for motion in answer["motions"])
    times = [float(re.match(r"[\d.]+", text).group()) for text in said]
    assert times == pytest.approx([0, last / 2, last], abs=0.006)


def test_units_papers_and_the_way_back(brief):
    page = brief("same-lob")
    until("SI", lambda: "56.0\u00a0m" in page.locator("#habitat").inner_text())
    page.locator("input[value=us]").check()
    until("feet", lambda: "184\u00a0ft" in page.locator("#habitat").inner_text())  # 56 m / 0.3048
    assert "ft" in page.locator("#moves").inner_text()
    assert " m " not in plain(page.locator("#moves").inner_text())
    assert "at least 19.7 ft/s" in plain(page.locator("#felt").inner_text())  # 6 m/s / 0.3048
    page.evaluate("() => { window.print = () => { document.title = 'asked to print'; }; }")
    page.get_by_role("button", name="Print").click()
    assert page.title() == "asked to print"
    page.locator("#back").click()
    page.locator(DRAWN).wait_for()
    assert page.locator("#title").inner_text() == example("same-lob")["title"]


def test_what_the_page_began_with_can_be_printed_at_once(open_page):
    page = open_page()
    with page.expect_popup() as opened:
        page.locator("#brief-link").click()
    opened.value.locator(READY).wait_for()
    assert opened.value.locator("h1").inner_text() == example("same-lob")["title"]


def test_without_a_link_it_is_the_scene_kept_in_the_browser(open_page):
    page = open_page("/brief", ready="#told:visible")
    assert "no scene" in page.locator("#told").inner_text()
    assert page.locator("#sheet").is_hidden()
    assert found(page) == []
    page.evaluate("text => localStorage.setItem('rimfall.scene', text)", json.dumps(example("hub-toss")))
    page.reload()
    page.locator(READY).wait_for()
    assert page.locator("h1").inner_text() == "Across the hub"


def test_a_link_that_is_none_and_a_scene_that_is_refused_are_said(open_page, troubles):
    broken = open_page("/brief#s=AAAA", ready="#told:visible")
    assert "could not be opened" in broken.locator("#told").inner_text()
    troubles.expect("422")
    refused = example("same-lob")
    refused["habitat"]["radius_m"] = -1
    page = open_page(f"/brief{link_to(refused)}", ready="#told:visible")
    assert "Radius was" in page.locator("#told").inner_text()
    page.locator("#back").click()
    page.locator(DRAWN).wait_for()


def test_a_scene_in_which_nothing_moves_has_no_empty_parts(open_page):
    habitat = {"radius_m": 56.0, "spin_rpm": 3.0, "axial_thrust_m_s2": 2.0}
    still = {"rimfall": 1, "title": "Still", "habitat": habitat, "motions": []}
    page = open_page(f"/brief{link_to(still)}", ready=READY)
    assert all(page.locator(part).is_hidden() for part in ("#events", "#plots"))
    assert len(printed(page)) == 3
    # what is felt has thrust in it: the root of 5.527 squared and 2 squared, m/s2, of which the spin gives 0.564 g
    figures = plain(page.locator("#habitat").inner_text())
    assert "Gravity on the deck 0.599 g, 5.88 m/s² Outward, from the spin alone 0.564 g" in figures
    assert "0.599 g on the deck, thrust included" in plain(page.locator("#direction").inner_text())
