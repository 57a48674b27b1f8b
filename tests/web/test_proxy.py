"""Two servers behind the reverse proxy of the README, whose configuration nginx runs here as it stands there, but for addresses.

Where there is no nginx the first server is asked directly, as the proxy would ask it: what is held of the servers is held then too,
what the configuration does is not. Continuous integration installs it (`.ci/run`).
"""

import contextlib
import http.client
import json
import os
import re
import shutil
import subprocess
import threading
import time

import pytest
import uvicorn

from rimfall.scene import examples
from rimfall.web import connections
from rimfall.web.app import make_app
from tests.heavy import HEAVY
from tests.serving import ROOT, free_port

NGINX = shutil.which("nginx", path=os.environ.get("PATH", "") + os.pathsep + "/usr/sbin")
SCENE = examples.example("same-lob").encode()


@contextlib.contextmanager
def served():
    """(port, pool) of a server in a thread of this process."""
    app, port = make_app(), free_port()
    server = uvicorn.Server(uvicorn.Config(app, port=port, **connections.settings()))
    thread = threading.Thread(target=server.run)
    thread.start()
    try:
        wait_for(lambda: server.started)
        yield port, app.state.pool
    finally:
        server.should_exit = True
        thread.join()


@pytest.fixture(scope="module")
def two():
    """(port, pool) of each of two servers."""
    with served() as first, served() as second:
        yield first, second


@pytest.fixture(scope="module")
def proxy(two, tmp_path_factory):
    """(host, Host header) to ask."""
    (first, _), (second, _) = two
    if NGINX is None:
        yield f"127.0.0.1:{first}", "localhost"
        return
    folder, port = tmp_path_factory.mktemp("nginx"), free_port()
    (written,) = re.findall(r"```nginx\n(.*?)```", (ROOT / "README.md").read_text(encoding="utf-8"), re.DOTALL)
    here = written.replace("10.0.0.11:8150", f"127.0.0.1:{first}").replace("10.0.0.12:8150", f"127.0.0.1:{second}")
    here = here.replace("listen 80;", f"listen 127.0.0.1:{port};")
    temporary = "".join(
        f"{what}_temp_path {folder}/{what};\n" for what in ("client_body", "proxy", "fastcgi", "uwsgi", "scgi")
    )
    conf = folder / "nginx.conf"
    user = "user root;" if os.geteuid() == 0 else ""  # who may enter pytest's folders
    conf.write_text(
        f"{user} daemon off; pid {folder}/pid; error_log {folder}/error.log;\nevents {{}}\nhttp {{\naccess_log off;\n{temporary}{here}}}\n"
    )
    with subprocess.Popen([NGINX, "-p", folder, "-e", folder / "error.log", "-c", conf]) as process:
        try:
            wait_for(lambda: process.poll() is not None or (folder / "pid").is_file())
            assert process.poll() is None, (folder / "error.log").read_text()
            yield f"127.0.0.1:{port}", "rimfall.example"
        finally:
            process.terminate()


def wait_for(what):
    ends_s = time.monotonic() + 60
    while not what():
        assert time.monotonic() < ends_s
        time.sleep(0.005)


def ask(proxy, path, body=None, media_type="application/json"):
    """The answer, not read yet, and the connection it comes over."""
    host, name = proxy
    one = http.client.HTTPConnection(host, timeout=60)
    headers = {"host": name} | ({} if body is None else {"content-type": media_type})
    one.request("GET" if body is None else "POST", path, body, headers)
    return one.getresponse(), one


def answered(proxy, path, body=None, media_type="application/json"):
    """(status, body)."""
    answer, one = ask(proxy, path, body, media_type)
    with contextlib.closing(one):
        return answer.status, answer.read()


def test_page_and_answers_come_through(proxy):
    for path, body in (("/", None), ("/static/favicon.svg", None), ("/api/health", None), ("/api/trace", SCENE)):
        assert answered(proxy, path, body)[0] == 200, path
    assert answered(proxy, "/api/trace", b"{")[0] == 422


def test_a_large_file_is_let_through_to_be_read(proxy):
    status, body = answered(proxy, "/api/recover", b"\0" * 1_200_000, "application/octet-stream")
    assert (status, json.loads(body)["refused"][0]["field"]) == (422, "file")


def test_a_refusal_of_a_large_body_comes_through(proxy):
    for _ in range(3):
        status, body = answered(proxy, "/api/trace", b" " * 1_900_000)
        assert (status, json.loads(body)["refused"][0]["field"]) == (413, "document")


def test_progress_comes_while_it_is_worked_on_and_leaving_stops_it(proxy, two):
    answer, one = ask(proxy, "/api/trace?stream=1", HEAVY)
    assert set(json.loads(answer.readline())) == {"done", "of"}
    assert sum(pool.counts()[0] for _, pool in two) == 1
    answer.close()
    one.close()
    wait_for(lambda: all(pool.counts() == (0, 0) for _, pool in two))


def test_where_one_server_stops_the_other_answers(proxy, two):
    """The last test here: what is closed stays closed."""
    (_, first), (_, second) = two
    for closed in (second, first):
        assert {answered(proxy, "/api/trace", SCENE)[0] for _ in range(6)} == {200}
        closed.close()
    assert answered(proxy, "/api/trace", SCENE)[0] == 503
