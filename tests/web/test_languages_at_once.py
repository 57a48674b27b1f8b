"""Many ask one server at once, some in English and some in German: each is answered as if alone, by processes and by threads, at once and as lines,
with an answer, with a refusal and about a file that was sent."""

import json
import random
import time
from concurrent.futures import ThreadPoolExecutor

import httpx
import pytest

from rimfall.scene import examples
from tests.serving import SERVE, serving

SCENE = examples.example("same-lob").encode()
EXPORT = json.dumps({"scene": json.loads(SCENE), "export": {}}).encode()
WRONG = b'{"rimfall": 1, "habitat": {"radius_m": -1.5, "spin_rpm": 5}, "motions": []}'
A_FILE = "application/octet-stream"
ASKED = [
    ("POST", "/api/trace", SCENE),
    ("POST", "/api/trace?arrays=f4&stream=1", SCENE),
    ("POST", "/api/feel", SCENE),
    ("POST", "/api/export/notes", EXPORT),
    ("POST", "/api/export/plot-path-svg?stream=1", EXPORT),
    ("POST", "/api/trace", WRONG),
    ("POST", "/api/trace?stream=1", WRONG),
    ("POST", "/api/map?width=3", SCENE),
    ("POST", "/api/recover", b"\0nothing"),
    ("POST", "/api/camera/file", b"a,b\n1,2\n"),
    ("GET", "/api/fields", None),
    ("GET", "/api/crafts", None),
    ("GET", "/api/examples/same-lob/opened", None),
    ("GET", "/", None),
    ("GET", "/nothing", None),
]


def answer(origin, asked, language):
    """(status, the body, or its last line) of one who has chosen a language, or whose browser accepts it."""
    method, path, body = asked
    kind = A_FILE if "recover" in path or "file" in path else "application/json"
    how = random.choice([{"cookie": f"rimfall-language={language}"}, {"accept-language": f"{language}, fr;q=0.5"}])
    encoding = random.choice(["gzip", "identity"])
    headers = how | {"content-type": kind, "accept-encoding": encoding}
    while (got := httpx.request(method, origin + path, content=body, headers=headers, timeout=120)).status_code == 503:
        time.sleep(float(got.headers["retry-after"]))  # a busy machine
    assert got.headers["content-language"] == language
    assert {"cookie", "accept-language"} <= {one.strip() for one in got.headers["vary"].split(",")}
    return got.status_code, got.content.strip().split(b"\n")[-1] if "stream=1" in path else got.content


@pytest.mark.parametrize("workers", ["0", "2"])
def test_each_is_answered_in_their_own_language(workers, tmp_path):
    arguments = (*SERVE[:-1], "--workers", workers, SERVE[-1])
    with serving(tmp_path / "log.txt", tmp_path, {"XDG_CACHE_HOME": str(tmp_path)}, arguments) as origin:
        alone = {(asked, language): answer(origin, asked, language) for asked in ASKED for language in ("de", "en")}
        for asked in ASKED:
            english, german = alone[asked, "en"], alone[asked, "de"]
            assert english[0] == german[0]
            assert english[1] != german[1], asked[:2]
        everyone = list(alone)
        random.shuffle(everyone)
        with ThreadPoolExecutor(4) as asking:
            told = list(asking.map(lambda one: (one, answer(origin, *one)), everyone))
        for one, got in told:
            assert got == alone[one], (one[0][:2], one[1])
