"""Kept work: a scene worked on has a record of its own, and nothing that is opened, fails or is refused takes its place."""

import json

from rimfall.scene.examples import example
from tests.browsing import DRAWN

from .looking import drawn, kept, kept_records, link_to, shown_is, type_figure, until

TRACE = "**/api/trace*"
# as a browser without room does; what it asks before that is never as little as a scene
FULL = """full => {
  const { put } = IDBObjectStore.prototype;
  window.put ??= put;
  IDBObjectStore.prototype.put = full ? () => { throw new DOMException('no room', 'QuotaExceededError'); } : window.put;
}"""
# a record written into the database as an older page would have left it
SPOIL = """radius => new Promise(done => {
  const asked = indexedDB.open('rimfall');
  asked.onsuccess = () => {
    const writing = asked.result.transaction('scenes', 'readwrite');
    const all = writing.objectStore('scenes').getAll();
    all.onsuccess = () => {
      const [record] = all.result;
      record.document.habitat.radius_m = radius;
      writing.objectStore('scenes').put(record);
    };
    writing.oncomplete = () => { asked.result.close(); done(); };
  };
})"""


def link_of(title):
    return "/" + link_to(json.loads(example("hub-toss")) | {"title": title})


def go(page, path):
    """As by the address bar: the page is left, and loaded anew."""
    page.goto("about:blank")
    page.goto(path)
    page.locator(DRAWN).wait_for()


def worked_on(page, radius):
    """The opening scene with one change, kept: its record, with its drawing."""
    type_figure(page, "habitat.radius_m", str(radius))
    shown_is(page, "Radius", radius)
    kept(page, lambda scene: scene["habitat"]["radius_m"] == radius)
    return until(
        "its drawing", lambda: (record := kept_records(page)[0])["drawing"] and "stood" not in record and record
    )


def listed(page):
    """The rows of kept scenes, in the sheet that is opened for it."""
    page.get_by_role("button", name="Scenes").click()
    page.locator("dialog[open] .kept").wait_for()
    return page.locator(".kept-list > li")


def title(page):
    return page.locator("#title").inner_text()


def test_a_link_over_work_leaves_the_work_and_gets_a_record_of_its_own(page):
    mine = worked_on(page, 80)
    assert len(mine["drawing"]["paths"]) == 2
    assert len(json.dumps(mine["drawing"])) < 4000
    go(page, link_of("Somebody's"))
    until("the link's scene", lambda: title(page) == "Somebody's")
    assert kept_records(page) == [mine]
    type_figure(page, "habitat.spin_rpm", "1.5")
    until(
        "a second record", lambda: [record["title"] for record in kept_records(page)] == ["Somebody's", mine["title"]]
    )
    assert kept_records(page)[1] == mine
    # loaded again, the tab goes on in its own record, though its address holds a scene
    page.reload()
    page.locator(DRAWN).wait_for()
    type_figure(page, "habitat.spin_rpm", "2.5")
    until("it goes on", lambda: kept_records(page)[0]["document"]["habitat"]["spin_rpm"] == 2.5)
    assert kept_records(page)[1:] == [mine]
    # and back to the first from the list, newest first
    rows = listed(page)
    assert rows.locator("b").all_inner_texts() == ["Somebody's", mine["title"]]
    assert "today" in rows.nth(1).inner_text()
    assert rows.nth(1).locator("svg polyline").count() == 2
    rows.nth(1).locator("button").first.click()
    shown_is(page, "Radius", 80)
    type_figure(page, "habitat.radius_m", "81")
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 81)
    assert [record["title"] for record in kept_records(page)] == [mine["title"], "Somebody's"]
    assert kept_records(page)[0]["id"] == mine["id"]


def test_a_first_trace_that_fails_leaves_the_work_to_be_opened_later(page, troubles):
    mine = worked_on(page, 80)
    troubles.expect("500")
    page.goto("about:blank")
    page.route(TRACE, lambda route: route.fulfill(status=500, body="no"), times=1)
    page.goto("/")
    page.locator(DRAWN).wait_for()
    until("it is said", lambda: "kept as it was left" in page.locator("#notice").inner_text())
    assert drawn(page, "Radius") == 56
    type_figure(page, "habitat.radius_m", "30")
    until("the example has a record of its own", lambda: len(kept_records(page)) == 2)
    assert kept_records(page)[1] == mine
    listed(page).nth(1).locator("button").first.click()
    shown_is(page, "Radius", 80)
    type_figure(page, "habitat.radius_m", "90")
    until("it goes on in its record", lambda: kept_records(page)[0]["document"]["habitat"]["radius_m"] == 90)
    assert kept_records(page)[0]["id"] == mine["id"]
    assert kept_records(page)[1]["document"]["habitat"]["radius_m"] == 30


def test_a_scene_that_is_refused_stays_as_it_is_with_what_is_refused_and_can_be_saved(page, troubles, tmp_path):
    worked_on(page, 80)
    page.evaluate(SPOIL, -4)
    [spoilt] = kept_records(page)
    troubles.expect("422")
    go(page, "/")
    said = page.locator("#notice").inner_text()
    assert "-4" in said
    assert "kept as it was left, under Scenes" in said
    assert drawn(page, "Radius") == 56
    [record] = kept_records(page)
    assert "-4" in record["refused"]["say"]
    assert {**record, "refused": None} == {**spoilt, "refused": None}
    rows = listed(page)
    assert "-4" in rows.inner_text()
    with page.expect_download() as got:
        rows.get_by_role("button", name="Save").click()
    assert json.loads(got.value.path().read_text(encoding="utf-8")) == spoilt["document"]
    # removed, and brought back
    rows.get_by_role("button", name="Remove").click()
    until("it says so", lambda: "was removed" in rows.inner_text())
    assert kept_records(page) == []
    assert page.evaluate("document.activeElement.textContent") == "Undo"
    page.keyboard.press("Enter")
    until("it is back", lambda: kept_records(page) == [record])


def test_two_tabs_keep_apart_and_tell_each_other(page):
    mine = worked_on(page, 80)
    with page.context.expect_page() as opened:
        page.evaluate("window.open('/')")  # as a duplicated tab: with the notes of this one
    other = opened.value
    other.locator(DRAWN).wait_for()
    shown_is(other, "Radius", 80)
    until("it says so", lambda: "open in another tab" in other.locator("#notice").inner_text())
    rows = listed(page)
    assert rows.count() == 1
    type_figure(other, "habitat.radius_m", "90")
    until("the list of the first tab has it", lambda: rows.count() == 2)
    assert kept_records(page)[1] == mine
    assert "open in another tab" in rows.first.inner_text()
    assert "open here" in rows.nth(1).inner_text()
    page.keyboard.press("Escape")
    type_figure(page, "habitat.radius_m", "70")
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 70)
    assert sorted(record["document"]["habitat"]["radius_m"] for record in kept_records(page)) == [70, 90]


def test_a_full_storage_is_said_with_a_way_out_and_a_cleared_one_is_filled_again(page):
    worked_on(page, 80)
    page.evaluate(FULL, True)
    type_figure(page, "habitat.radius_m", "85")
    until("it is said", lambda: "not being kept" in page.locator("#unkept").inner_text())
    assert "full" in page.locator("#alert").inner_text()
    with page.expect_download() as got:
        page.locator("#unkept").get_by_role("button", name="Save as a file").click()
    assert json.loads(got.value.path().read_text(encoding="utf-8"))["habitat"]["radius_m"] == 85
    assert kept_records(page)[0]["document"]["habitat"]["radius_m"] == 80
    page.evaluate(FULL, False)
    worked_on(page, 86)
    until("nothing is said any more", lambda: page.locator("#unkept").inner_text() == "")
    # everything cleared under the open page
    session = page.context.new_cdp_session(page)
    session.send("Storage.clearDataForOrigin", {"origin": page.evaluate("origin"), "storageTypes": "indexeddb"})
    session.detach()
    until("nothing is kept", lambda: kept_records(page) == [])
    type_figure(page, "habitat.radius_m", "87")
    kept(page, lambda scene: scene["habitat"]["radius_m"] == 87)


REFUSING = """for (const name of ['localStorage', 'sessionStorage', 'indexedDB'])
  Object.defineProperty(window, name, { get() { throw new DOMException('not here', 'SecurityError'); } });"""


def test_a_browser_that_lets_the_page_store_nothing_is_said_with_the_first_change(open_page):
    page = open_page(before=REFUSING)
    assert page.locator("#unkept").inner_text() == ""
    type_figure(page, "habitat.radius_m", "85")
    until("it is said", lambda: "lets the page store nothing" in page.locator("#unkept").inner_text())
    shown_is(page, "Radius", 85)


def test_what_an_earlier_version_kept_comes_over_and_last_words_are_heard(page):
    scene = json.loads(example("hub-toss"))
    page.evaluate(
        """scene => {
            localStorage.setItem('rimfall.scene', JSON.stringify({...scene, title: 'At hand'}));
            localStorage.setItem('rimfall.recent', JSON.stringify([{title: 'Recent', when: 1, document: {...scene, title: 'Recent'}}]));
        }""",
        scene,
    )
    go(page, "/")
    assert title(page) == "At hand"
    assert [record["title"] for record in kept_records(page)] == ["At hand", "Recent"]
    assert page.evaluate("Object.keys(localStorage).filter(key => key !== 'rimfall.view')") == []
    # changed, and left before it could be written
    page.evaluate("() => { IDBDatabase.prototype.transaction = () => { throw new Error('no time'); }; }")
    type_figure(page, "habitat.spin_rpm", "1.25")
    go(page, "/")
    assert drawn(page, "Spin") == 1.25
    assert kept_records(page)[0]["document"]["habitat"]["spin_rpm"] == 1.25
    assert len(kept_records(page)) == 2


def test_the_database_goes_from_each_layout_to_the_next_and_an_older_page_steps_back(page):
    """In the browser's own database: two tabs of this version and one of the next."""
    found = page.evaluate(
        """async () => {
            const { createDatabase } = await import('/static/kept/database.js');
            const { createRecords, newRecord } = await import('/static/kept/records.js');
            const first = db => { db.createObjectStore('scenes', { keyPath: 'id' }).createIndex('changed_ms', 'changed_ms'); };
            const second = db => { db.createObjectStore('talks', { keyPath: 'id' }).createIndex('changed_ms', 'changed_ms'); };
            const next = db => { db.createObjectStore('more'); };
            const opened = steps => createDatabase({ factory: indexedDB, name: 'layouts', ...(steps && { steps }) });
            const [one, two] = [opened(), opened()];
            const records = createRecords({ database: one });
            const scene = title => ({ rimfall: 1, title, habitat: {}, motions: [] });
            await records.write(newRecord('a', scene('Kept'), 1), null);
            const seen = { two: (await createRecords({ database: two }).list()).map(record => record.title) };
            const newer = opened([first, second, next]);
            seen.newer = (await createRecords({ database: newer }).list()).map(record => record.title);
            seen.older = await records.list().catch(problem => problem.name);
            // a transaction that goes wrong half way leaves nothing behind
            seen.broken = await newer.change(async (store, asked) => {
                await asked(store.put(newRecord('b', scene('Half'), 2)));
                throw new Error('half way');
            }).catch(problem => problem.message);
            seen.after = (await createRecords({ database: newer }).list()).length;
            seen.none = await createDatabase({ factory: undefined }).read(() => 0).catch(problem => problem.name);
            await new Promise(done => { indexedDB.deleteDatabase('layouts').onsuccess = done; });
            return seen;
        }"""
    )
    assert found == {
        "two": ["Kept"],
        "newer": ["Kept"],
        "older": "VersionError",
        "broken": "half way",
        "after": 1,
        "none": "NotSupportedError",
    }
