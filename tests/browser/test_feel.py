"""What would people feel: the limits, the person, the day, the figures and the findings on the page are those of the API."""

import pytest

from .looking import (
    choose_shape,
    fold_out,
    kept,
    number_box,
    open_place,
    plain,
    saved_scene,
    settle,
    stop,
    three_figures,
    type_figure,
    until,
)

pytestmark = pytest.mark.one_page
SIZES = [(1440, 900), (1024, 768), (390, 844)]
OPENING = "same-lob"
ASKED = ("habitat", "air", "person", "own_limits")


def felt(page, units="si"):
    """The API's answer to the scene the browser keeps, or before any change to the opening one."""
    scene = saved_scene(page) or page.request.get(f"/api/examples/{OPENING}").json()
    done = page.request.post(f"/api/feel?units={units}", data={name: scene[name] for name in ASKED if name in scene})
    assert done.ok, done.text()
    return done.json()


def opened(page):
    """Place 4, once its answer is there."""
    stop(page)
    open_place(page, 4)
    page.locator(".quantity").first.wait_for()
    return page


def quantity(page, name):
    return page.locator(f'.quantity[data-quantity="{name}"]')


def unfold(scope):
    """The table of a quantity."""
    fold_out(scope, "Table of")
    return scope.locator("table.limits")


def unfold_group(place, group):
    """The figures of a group."""
    button = place.locator(f'[data-group="{group}"] h4 button')
    if button.get_attribute("aria-expanded") == "false":
        button.click()


def rows_of(answer, name):
    return [row for row in answer["limits"] if row["quantity"] == name]


UNFOLD_TABLES = """() => document.querySelectorAll('.quantity [aria-expanded=false]').forEach(
  button => (button.ariaLabel ?? button.textContent).includes('Table of') && button.click())"""
# of every quantity: all its words, its heading, the letters on its rule, and the words of each row of its table
QUANTITIES = """() => Object.fromEntries([...document.querySelectorAll('.quantity')].map(one => [one.dataset.quantity, {
  words: one.innerText,
  heading: one.querySelector('h4').innerText,
  ruled: one.querySelector('svg.rule')?.checkVisibility({ visibilityProperty: true }) ?? false,
  letters: [...one.querySelectorAll('svg.rule text')].map(letter => letter.textContent).join('').replaceAll('\\u00a0', ''),
  rows: Object.fromEntries([...one.querySelectorAll('tr[data-limit]')].map(row => [row.dataset.limit, row.innerText])),
}]))"""


def told(page, answer):
    """What stands at every quantity, once each has its sentence."""
    page.evaluate(UNFOLD_TABLES)

    def those_of_the_answer():
        shown = page.evaluate(QUANTITIES)
        missing = [
            one["name"] for one in answer["quantities"] if plain(one["says"]) not in plain(shown[one["name"]]["words"])
        ]
        return not missing and shown

    return until("the sentences of the API", those_of_the_answer)


def says_so(page):
    """The page agrees with the API: headings, sentences, and each row's state, of every quantity."""
    answer = felt(page)
    shown = told(page, answer)
    assert list(shown) == [one["name"] for one in answer["quantities"]]
    for one in answer["quantities"]:
        value = f"{three_figures(one['value'])} {one['unit']}".strip()
        assert plain(shown[one["name"]]["heading"]) == f"{one['label']}, {value}"
        rows, lines = rows_of(answer, one["name"]), shown[one["name"]]["rows"]
        assert sorted(lines) == sorted(row["id"] for row in rows)
        assert [row["id"] for row in rows if ("beyond" in lines[row["id"]]) != (row["inside"] is False)] == []
    return answer


@pytest.fixture
def place(page):
    return opened(page)


def test_every_limit_is_on_its_rule_in_its_sentence_and_in_its_table(place):
    page = place
    type_figure(page, "habitat.spin_rpm", "3.5")
    kept(page, lambda scene: scene["habitat"]["spin_rpm"] == 3.5)
    until("the spin's heading", lambda: "3.50" in quantity(page, "spin").locator("h4").inner_text())
    answer = says_so(page)
    for width, height in SIZES:
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        shown = told(page, answer)
        for one in answer["quantities"]:
            rows, seen = rows_of(answer, one["name"]), shown[one["name"]]
            if not rows:
                assert "No published limit" in seen["words"]
                assert not seen["ruled"]
                continue
            assert seen["ruled"]
            assert sorted(seen["letters"]) == sorted(row["letter"] for row in rows)
            for row in rows:
                line = plain(seen["rows"][row["id"]])
                assert line.startswith(row["letter"])
                assert row["study"] in line
                assert f"{row['limit']:g}" in line
        assert page.evaluate("document.documentElement.scrollWidth") <= width
        body = page.locator("#body-4").evaluate("e => [e.scrollWidth, e.clientWidth]")
        assert body[0] <= body[1], "something is wider than the place"


def test_beyond_is_said_in_bold_words_with_a_bar_and_without_colour(place):
    answer = says_so(place)
    beyond = next(row for row in answer["limits"] if row["inside"] is False)
    line = unfold(quantity(place, beyond["quantity"])).locator(f'tr[data-limit="{beyond["id"]}"]')
    assert f"beyond, ×{beyond['times']:.3g}" in plain(line.inner_text())
    look = line.evaluate(
        """e => { const bar = getComputedStyle(e.querySelector('.letter'), '::before'), here = getComputedStyle(e.lastElementChild);
          return [here.fontWeight, bar.borderLeftWidth, here.color === bar.borderLeftColor]; }"""
    )
    assert look == ["600", "4px", True]


def test_a_study_opens_its_citation(place):
    answer = says_so(place)
    row = next(row for row in answer["limits"] if row["known_by"] == "memory" and row["note"] and row["who"])
    line = unfold(quantity(place, row["quantity"])).locator(f'tr[data-limit="{row["id"]}"]')
    button = line.locator(".study")
    behind = place.locator(f"#{button.get_attribute('aria-controls')}")
    assert behind.is_hidden()
    button.focus()
    place.keyboard.press("Enter")
    said = plain(behind.inner_text())
    for part in (row["source"], row["who"], row["note"].rstrip("."), "From memory"):
        assert plain(part) in said
    place.keyboard.press("Enter")
    assert behind.is_hidden()


@pytest.fixture
def copying(place):
    """The place, of a page that may read what was copied."""
    place.context.grant_permissions(["clipboard-read", "clipboard-write"])
    yield place
    place.context.clear_permissions()


def test_an_opened_citation_can_be_copied(copying):
    page = copying
    row = next(row for row in felt(page)["limits"] if row["quantity"] == "spin" and row["note"])
    line = unfold(quantity(page, "spin")).locator(f'tr[data-limit="{row["id"]}"]')
    copy = page.get_by_role("button", name=f"Copy: the citation of {row['study']} {row['year']}", exact=True).first
    assert copy.is_hidden()
    line.locator(".study").click()
    copy.click()
    until("it is copied", lambda: page.evaluate("navigator.clipboard.readText()") == row["source"])


def test_a_drag_moves_the_notch_and_the_words_and_makes_nothing_anew(place):
    where = quantity(place, "spin")
    unfold(where)
    before = where.locator(".notch").get_attribute("transform")
    place.evaluate("document.querySelectorAll('.quantity *').forEach(e => { e.wasThere = true; })")
    slider = place.locator('[data-row="habitat.spin_rpm"] .range').first
    slider.focus()
    for _ in range(5):
        place.keyboard.press("Shift+ArrowUp")
    until("the notch moves", lambda: where.locator(".notch").get_attribute("transform") != before)
    kept(place, lambda scene: scene["habitat"]["spin_rpm"] == pytest.approx(3.5))  # five tenths, the last of them
    says_so(place)
    anew = where.evaluate("e => [...e.querySelectorAll('tr, svg, .tick, h4')].filter(one => !one.wasThere).length")
    assert anew == 0


def test_a_limit_of_ones_own_is_set_marked_compared_and_removed_with_undo(place):
    where = quantity(place, "gradient")
    where.get_by_role("button", name="Set a limit of your own").click()
    where.get_by_label("Your limit on").fill("-2")
    place.keyboard.press("Enter")
    until("a refusal", lambda: "a limit must be above 0" in where.locator(".refusal").inner_text())
    where.get_by_label("Your limit on").fill("2 %")
    where.get_by_label("Name, or leave empty").fill("Bunk room")
    where.get_by_role("button", name="Set it").click()
    limit = {"name": "Bunk room", "quantity": "gradient", "bound": "at_most", "value": 2}
    kept(place, lambda scene: scene.get("own_limits") == [limit])
    answer = says_so(place)
    (row,) = rows_of(answer, "gradient")
    assert row["mine"]
    assert row["inside"] is False  # 1.75 m of 56 m are 3.1 %
    assert "Bunk room, yours: at most" in plain(where.locator(".own").inner_text())
    assert where.locator(".own input").input_value() == "2.00"
    assert where.get_by_role("button", name="Remove your limit: at most 2\u00a0%").count() == 1
    assert "Bunk room, yours" in plain(unfold(where).inner_text())
    where.get_by_role("button", name="Remove your limit").click()
    kept(place, lambda scene: "own_limits" not in scene)
    until("it is off the page", lambda: where.locator(".own li").count() == 0)
    place.locator(".bar").get_by_role("button", name="Undo").click()
    kept(place, lambda scene: scene.get("own_limits") == [limit])


def test_a_limit_of_ones_own_is_changed_where_it_stands(place):
    where = quantity(place, "gradient")
    for value in ("2", "5"):
        where.get_by_role("button", name="Set a limit of your own").click()
        where.get_by_label("Your limit on").fill(value)
        where.get_by_role("button", name="Set it").click()
    kept(place, lambda scene: [one["value"] for one in scene.get("own_limits", [])] == [2, 5])
    first, second = where.locator(".own input").all()

    def values(*wanted):
        kept(place, lambda scene: [one["value"] for one in scene["own_limits"]] == list(wanted))
        until("the table", lambda: [row["limit"] for row in rows_of(says_so(place), "gradient")] == list(wanted))

    first.fill("3.5 %")
    first.press("Enter")
    chosen = "e => e === document.activeElement && e.selectionEnd - e.selectionStart"
    until("the figure is chosen whole", lambda: first.evaluate(chosen) == len("3.50"))
    values(3.5, 5)
    first.press("Control+z")
    values(2, 5)
    until("the figure as it was", lambda: first.input_value() == "2.00")
    second.fill("0.125")
    first.focus()  # leaving it keeps it
    values(2, 0.125)
    second.fill("9")
    second.press("Escape")
    assert second.input_value() == "0.125"
    second.fill("-1")
    second.press("Enter")
    refusal = where.locator(".own .refusal").nth(1)
    until("a refusal", lambda: "above 0" in refusal.inner_text())
    assert "stages" not in refusal.inner_text()
    values(2, 0.125)
    where.get_by_role("button", name="Remove your limit: at most 2\u00a0%").click()
    values(0.125)
    until("one is left", lambda: where.locator(".own input").count() == 1)
    assert where.locator(".own input").input_value() == "0.125"


def test_a_limit_of_ones_own_is_changed_in_the_units_shown(place):
    where = quantity(place, "rim_speed")
    where.get_by_role("button", name="Set a limit of your own").click()
    where.get_by_label("Your limit on").fill("10")
    where.get_by_role("button", name="Set it").click()
    figure = where.locator(".own input")
    until("it is there", lambda: figure.count() == 1)
    where.locator(".own .unit").click()
    until("feet", lambda: figure.input_value() == "32.8")  # 10 / 0.3048
    figure.fill("50")
    figure.press("Enter")
    kept(place, lambda scene: scene["own_limits"][0]["value"] == pytest.approx(50 * 0.3048, rel=1e-12))
    assert "50.0" in plain(figure.input_value())
    place.evaluate("document.activeElement.blur()")
    place.keyboard.press("u")


def test_the_person_changes_what_depends_on_the_person(place):
    fold_out(place, "Who is aboard")
    type_figure(place, "person.height_m", "1.2")
    type_figure(place, "person.head_turn_deg_s", "120")
    kept(place, lambda scene: scene.get("person", {}).get("head_turn_deg_s") == 120)
    until("the words of the fold", lambda: place.get_by_role("button", name="Who is aboard: 1.20\u00a0m").count() == 1)
    until("its gradient", lambda: "2.14" in quantity(place, "gradient").locator("h4").inner_text())  # 1.2 m of 56 m
    says_so(place)
    assert number_box(place, "person.run_m_s").input_value() == "4.0"


def test_two_runners_are_put_on_the_deck_both_ways(place):
    place.get_by_role("button", name="Put two runners on the deck").click()
    scene = kept(place, lambda scene: len(scene["motions"]) == 4)
    runners = scene["motions"][2:]
    assert [(one["kind"], one["speed_m_s"], one["heading_deg"]) for one in runners] == [
        ("walk", 4.0, 0),
        ("walk", 4.0, 180),
    ]
    assert place.locator("#body-4").is_visible()
    place.locator(".bar").get_by_role("button", name="Undo").click()
    kept(place, lambda scene: len(scene["motions"]) == 2)


def test_the_five_moments_are_those_of_the_api_and_can_be_copied(copying):
    page = copying
    type_figure(page, "habitat.radius_m", "80")
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 80)
    words = felt(page)["words"]
    assert len(words) == page.locator(".moment").count() == 5
    for moment, said in zip(page.locator(".moment").all(), words, strict=True):
        title = moment.get_by_role("button", name=said["title"], exact=True)
        if title.get_attribute("aria-expanded") == "false":
            title.click()
        until(said["name"], lambda moment=moment, said=said: plain(said["text"]) in plain(moment.inner_text()))
    page.get_by_role("button", name=f"Copy: {words[1]['title']}").click()
    until("it is copied", lambda: page.evaluate("navigator.clipboard.readText()") == words[1]["text"])
    page.locator(".moment").nth(1).get_by_role("button", name="As prose").click()
    page.get_by_role("button", name=f"Copy: {words[1]['title']}, as prose").click()
    until("as prose", lambda: page.evaluate("navigator.clipboard.readText()") == words[1]["prose"])


def test_the_whole_day_is_copied_with_its_titles_and_what_it_is_said_for(copying):
    page = copying
    type_figure(page, "habitat.radius_m", "30")
    type_figure(page, "habitat.spin_rpm", "4")
    fold_out(page, "Who is aboard")
    type_figure(page, "person.height_m", "1.95")
    kept(page, lambda scene: scene.get("person", {}).get("height_m") == 1.95)
    premises = "30.0 m, 4.00 rpm; somebody 1.95 m tall who walks at 1.4 m/s and runs at 4.0 m/s."
    until("what it is for", lambda: premises in plain(page.locator("#feel-day").inner_text()))
    said = [part for one in felt(page)["words"] for part in (one["title"], one["text"])]
    page.get_by_role("button", name="Copy all").click()
    whole = " ".join([*said, premises, "Rimfall."])
    until("all is copied", lambda: plain(page.evaluate("navigator.clipboard.readText()")) == plain(whole))
    page.evaluate("document.activeElement.blur()")
    page.keyboard.press("u")
    # 1.95 m, 1.4 m/s and 4 m/s by the international foot of 1959
    in_feet = "somebody 6.40 ft tall who walks at 4.59 ft/s and runs at 13.1 ft/s."
    until("feet", lambda: in_feet in plain(page.locator("#feel-day").inner_text()))
    page.keyboard.press("u")


def sized(page):
    """Whether the answer to the wishes lies in sight within the place: all of it, or from its beginning as much as there is room for."""
    box, place = (page.locator(part).bounding_box() for part in (".size-answer", "#body-4"))
    over, under = box["y"] - place["y"], box["y"] + box["height"] - place["y"] - place["height"]
    return box["height"] > 40 and over > -1 and (under < 1 or over < 1)


def test_an_answer_to_a_wish_comes_into_view_and_no_other_does(open_page):
    page = opened(open_page())
    page.get_by_role("button", name="Size it for me").click()
    until("the first answer in sight", lambda: sized(page))
    until("it names its wish", lambda: "0.5 g" in plain(page.locator(".size-answer").inner_text()))
    for g, (width, height) in enumerate(SIZES, start=1):
        page.set_viewport_size({"width": width, "height": height})
        settle(page)
        page.locator(".wish input").first.fill(str(g))
        page.keyboard.press("Enter")
        until("the next", lambda g=g: f"{g} g" in plain(page.locator(".size-answer").inner_text()))
        until("the next in sight", lambda: sized(page))
        page.evaluate("document.activeElement.blur()")
        page.locator("#body-4").evaluate("e => { e.scrollTop = e.scrollHeight; }")
        page.keyboard.press("u")
        until("said anew in other units", lambda: "ft" in page.locator(".size-answer").text_content())
        assert not sized(page)
        page.keyboard.press("u")
        until("in metres again", lambda: "ft" not in page.locator(".size-answer").text_content())


def test_ways_out_of_a_collision_are_told_once(place):
    place.get_by_role("button", name="Size it for me").click()
    place.get_by_role("button", name="Add a wish").click()
    until("ways out", lambda: place.locator(".collides button").count() >= 2)
    wishes = [
        {"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 0.5},
        {"kind": "figure", "quantity": "spin", "bound": "at_most", "value": 2},
        {"kind": "figure", "quantity": "radius", "bound": "at_most", "value": 100},
    ]
    answer = place.request.post("/api/size", data={"wishes": wishes}).json()
    ways = next(say for say in answer["words"] if say.startswith("It would work with "))
    shown = plain(place.locator(".size-answer").inner_text())
    assert plain(ways) not in shown
    assert [say for say in answer["words"] if say != ways and plain(say) not in shown] == []
    assert all(plain(one["say"]) in shown for one in answer["collides"] if one["could_be"] is not None)


def test_labels_of_figures_follow_the_shape(place):
    unfold_group(place, "On foot")
    label = place.locator('tr[data-figure="walk_axial_lean_deg"] th')
    assert "along the axis" in label.inner_text()
    choose_shape(place, "turntable")
    open_place(place, 4)
    until("the label of a turntable", lambda: "outward" in label.inner_text())


# [all words, those of the figure] of each row of figures
FIGURES = """() => Object.fromEntries([...document.querySelectorAll('tr[data-figure]')].map(
  row => [row.dataset.figure, [row.innerText, row.querySelector('td').innerText]]))"""


def test_the_figures_are_the_apis_in_both_units(place):
    answer = says_so(place)
    for group in dict.fromkeys(row["group"] for row in answer["figure_rows"]):
        unfold_group(place, group)
    lines = place.evaluate(FIGURES)
    for row in answer["figure_rows"]:
        value, (line, said) = answer["figures"][row["name"]], map(plain, lines[row["name"]])
        assert row["label"] in line
        assert said.startswith("–") if value is None else figure_in(said) == pytest.approx(value, rel=6e-3, abs=6e-5)
    levels = plain(place.locator('table[aria-label="Levels"]').inner_text())
    assert all(level["name"] in levels and three_figures(level["gravity_g"]) in levels for level in answer["levels"])
    turns = place.locator('table[aria-label="Turns of the head"] tbody tr')
    for line, turn in zip(turns.all(), answer["head_turns"], strict=True):
        said = plain(line.inner_text()).lower()
        assert said.startswith(turn["turn"])
        assert said.endswith(turn["felt_as"] or "nothing")
        assert three_figures(turn["deg_s2"]) in said
    place.locator("h1").click()
    place.keyboard.press("Escape")
    place.keyboard.press("u")
    feet_s = three_figures(answer["figures"]["rim_speed_m_s"] / 0.3048)  # the international foot, 1959
    until("feet a second", lambda: f"{feet_s} ft/s" in plain(quantity(place, "rim_speed").locator("h4").inner_text()))
    place.keyboard.press("u")


def figure_in(said):
    number = said.split()[0].rstrip("°").replace(",", "").replace("−", "-")
    return float(number)


def test_a_figure_explains_its_term(place):
    unfold_group(place, "Standing")
    place.locator('[data-figure="gradient_percent"] .term').click()
    place.get_by_role("dialog", name="Gravity gradient").wait_for()


def test_what_people_got_used_to_has_sources_and_says_what_nobody_published(place):
    place.get_by_role("button", name="What people got used to").click()
    answer = felt(place)
    items = place.locator("#feel-adaptation .findings > li")
    assert items.count() == len(answer["adaptation"])
    for item, found in zip(items.all(), answer["adaptation"], strict=True):
        assert plain(f"{found['claim']} {found['here']}") in plain(item.inner_text())
        assert item.get_by_role("button").count() == (1 if found["study"] else 0)
    first = next(i for i, found in enumerate(answer["adaptation"]) if found["study"])
    items.nth(first).get_by_role("button").click()
    assert plain(answer["adaptation"][first]["source"]) in plain(items.nth(first).inner_text())


def test_why_spin_at_all_is_a_verdict_for_the_stay_chosen_with_the_studies_behind_it(place):
    """And the place goes: words, verdict, size it, map, limits, why spin, what people got used to, figures."""
    answer, why = felt(place), place.locator("#feel-why")
    assert plain(place.locator("#feel-verdict").inner_text()) == answer["says"]["summary"]
    parts = place.locator("#body-4").evaluate("e => [...e.children].map(one => one.id)")
    assert parts == [
        "feel-words", "feel-day", "feel-verdict", "feel-size", "feel-person", "feel-map", "feel-limits", "feel-why",
        "feel-adaptation", "feel-figures", "feel-caution",
    ]  # fmt: skip
    assert "not medical advice" in why.inner_text()
    for stay in answer["why_spin"]["stays"]:
        why.get_by_role("button", name=stay["stay"], exact=True).click()
        for said in (stay["verdict"], *stay["not_known"]):
            assert plain(said) in plain(why.inner_text())
    why.get_by_role("button", name="studies that bear on years").click()
    bearing = [one for one in answer["why_spin"]["findings"] if "years" in one["stays"]]
    items = why.locator(".findings > li")
    assert items.count() == len(bearing) == sum(answer["why_spin"]["stays"][-1]["counts"].values())
    for item, found in zip(items.all(), bearing, strict=True):
        assert plain(f"{found['claim']} {found['here']}") in plain(item.inner_text())
        assert found["speaks"] in item.inner_text()
    items.first.get_by_role("button").click()
    assert plain(bearing[0]["source"]) in plain(items.first.inner_text())


def test_without_spin_nothing_is_written_for_what_has_no_meaning(place):
    type_figure(place, "habitat.spin_rpm", "0")
    kept(place, lambda scene: scene["habitat"]["spin_rpm"] == 0)
    until("no value", lambda: "no value here" in quantity(place, "coriolis").locator("h4").inner_text())
    assert "NaN" not in place.locator("#body-4").inner_text()
    assert quantity(place, "coriolis").locator(".notch").get_attribute("visibility") == "hidden"


def test_the_caution_stands_under_it_and_the_limits_point_to_it(open_page):
    """The answer may come after all parts of the place are made."""
    page, waiting = open_page(), []
    page.route("**/api/feel?*", lambda route: waiting.append(route))
    stop(page)
    open_place(page, 4)
    page.locator("#feel-figures h3").wait_for(state="attached")
    until("it is asked", lambda: waiting, page=page)
    waiting[0].continue_()
    page.locator(".quantity").first.wait_for()
    place = page
    assert "see the caution below" in place.locator("#feel-limits > p").first.inner_text()
    assert plain(felt(place)["caution"]) in plain(place.locator("#feel-caution").inner_text())
