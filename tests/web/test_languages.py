"""In which language the server answers, as RFC 9110 has it: content-language says which, vary what it hangs on."""

import json

import httpx

from rimfall.scene import examples
from rimfall.web.app import make_app
from tests.apart import run_apart
from tests.tables import each_row

IN_GERMAN = {"accept-language": "de"}


class Client:
    """Asks an app of its own each time."""

    def request(self, method, path, **options):
        async def once():
            transport = httpx.ASGITransport(app=make_app())
            async with httpx.AsyncClient(transport=transport, base_url="http://127.0.0.1") as client:
                return await client.request(method, path, **options)

        return run_apart(once())

    def get(self, path, **options):
        return self.request("GET", path, **options)

    def post(self, path, **options):
        return self.request("POST", path, **options)


client = Client()


def test_a_page_is_in_the_language_that_the_browser_accepts():
    german, english = (client.get("/", headers={"accept-language": tag}) for tag in ("de-CH,de;q=0.9", "fr"))
    assert '<html lang="de" dir="ltr">' in german.text
    assert '<script defer src="language/de.js?is=' in german.text
    assert '<html lang="en" dir="ltr">' in english.text
    assert "language/" not in english.text
    assert (german.headers["content-language"], english.headers["content-language"]) == ("de", "en")
    assert {"accept-language", "cookie"} <= {one.strip() for one in german.headers["vary"].split(",")}


def test_what_was_chosen_comes_before_what_the_browser_accepts():
    page = client.get("/", headers={"accept-language": "de", "cookie": "rimfall-language=en"})
    assert '<html lang="en"' in page.text


@each_row(
    "cookie",
    ["rimfall-language=../de", "rimfall-language=", "rimfall-language", "=;;;,", "rimfall-language=%00", "l" * 9000],
)
def test_a_cookie_that_says_nothing_is_none(cookie):
    page = client.get("/", headers={"cookie": cookie})
    assert page.status_code == 200
    assert page.headers["content-language"] == "en"


# what else this machine serves keeps cookies too, of any form; a proxy may hand a header on in several lines (RFC 9110, 5.3)
@each_row(
    "headers",
    [
        [("cookie", 'prefs={"a": [1, 2]}; rimfall-language=de')],
        [("cookie", "a b=1; \xfc=\xe9; nothing; rimfall-language=de")],
        [("cookie", f"session={'x' * 8000}; rimfall-language=de")],
        [("cookie", "rimfall-language=en; rimfall-language=de")],
        [("cookie", f'a="{chr(92)}1{chr(92)}' + f'{chr(92)}"' * 4000 + '"; rimfall-language="de"')],
        [("cookie", "session=1"), ("cookie", "rimfall-language=de")],
        [("accept-language", "fr"), ("accept-language", "de;q=0.5")],
        [("cookie", "language=en"), ("accept-language", "de")],
    ],
)
def test_a_choice_is_found_beside_whatever_else_is_sent(headers):
    page = client.get("/", headers=[(name, value.encode("latin-1")) for name, value in headers])
    assert page.headers["content-language"] == "de"


@each_row("junk", ["\x00", "\xe4\xff", ",;=" * 3000, "de\x00", "d" * 8000 + ",de", "-", "%s{0}"])
def test_headers_that_say_nothing_are_answered_in_english(junk):
    raw = junk.encode("latin-1")
    page = client.get("/", headers=[("accept-language", raw), ("cookie", b"rimfall-language=" + raw)])
    assert (page.status_code, page.headers["content-language"]) == (200, "en")


def test_what_is_the_same_to_all_hangs_on_no_language():
    script = client.get("/language/de.js", headers={"accept-language": "en"})
    assert script.headers["vary"] == "accept-encoding"
    assert "content-language" not in script.headers
    refused = client.get("/language/xx.js", headers=IN_GERMAN)
    assert refused.headers["content-language"] == "de"
    assert "cookie" in refused.headers["vary"]


def test_messages_of_the_page_are_a_script_that_may_be_kept():
    page = client.get("/", headers={"accept-language": "de"}).text
    address = page.partition('<script defer src="')[2].partition('"')[0]
    script = client.get(f"/{address}")
    assert script.headers["content-type"].startswith("text/javascript")
    assert "immutable" in script.headers["cache-control"]
    said = json.loads(script.text.removeprefix("globalThis.rimfallLanguage=").rstrip(";\n"))
    assert said["messages"]["Glossary"] == "Glossar"
    assert client.get("/language/en.js").status_code == 404
    assert client.get("/language/..%2Fde.js").status_code == 404


def test_sentences_and_refusals_are_in_the_language_of_the_request():
    scene = examples.example("same-lob")
    english, german, again = (
        client.post("/api/trace", content=scene, headers={"content-type": "application/json", **headers}).json()
        for headers in ({}, IN_GERMAN, {})
    )
    assert english["motions"][0]["words"] != german["motions"][0]["words"]
    assert english["motions"][0]["events"][-1]["time_s"] == german["motions"][0]["events"][-1]["time_s"]
    assert again["motions"][0]["words"] == english["motions"][0]["words"]
    wrong = {"rimfall": 1, "habitat": {"radius_m": -1, "spin_rpm": 5}, "motions": []}
    said, gesagt = (client.post("/api/trace", json=wrong, headers=headers).json() for headers in ({}, IN_GERMAN))
    assert [(one["field"], one["was"]) for one in said["refused"]] == [
        (one["field"], one["was"]) for one in gesagt["refused"]
    ]
    assert said["refused"][0]["say"] != gesagt["refused"][0]["say"]


def test_a_browser_that_chooses_a_language_is_given_a_cookie():
    answer = client.post("/language/de", json={})
    assert answer.json() == {"language": "de"}
    assert answer.headers["set-cookie"].startswith("rimfall-language=de; ")
    page = client.get("/", headers={"cookie": answer.headers["set-cookie"].partition(";")[0], "accept-language": "en"})
    assert page.headers["content-language"] == "de"


@each_row("language", ["xx", "..%2Fde", "de-AT", "%00"])
def test_a_language_that_is_not_there_cannot_be_chosen(language):
    answer = client.post(f"/language/{language}", json={})
    assert (answer.status_code, "set-cookie" in answer.headers) == (404, False)


# A page of another site can have a browser send these without asking first (Fetch, 2.2.2 and 4.8), or a form; and no header makes up for it.
@each_row(
    ("content", "kind"),
    [
        (b"", None),
        (b"", "text/plain"),
        (b"{}", "text/plain"),
        (b"a=1", "application/x-www-form-urlencoded"),
        (b"", "multipart/form-data"),
    ],
)
def test_a_page_of_another_site_chooses_no_language(content, kind):
    headers = {"origin": "http://elsewhere.example"} | ({"content-type": kind} if kind else {})
    answer = client.post("/language/de", content=content, headers=headers)
    assert (answer.status_code, answer.json()["refused"][0]["field"]) == (415, "content-type")
    assert "set-cookie" not in answer.headers
    asked_first = client.request("OPTIONS", "/language/de", headers={"access-control-request-method": "POST"} | headers)
    assert asked_first.status_code == 405
    assert "access-control-allow-origin" not in asked_first.headers
