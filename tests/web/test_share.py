"""Others follow: who may ask what, what they are told, what they place, and what one address may ask for."""

import asyncio
import gzip
import json
import logging
import socket
import threading
import time
from types import SimpleNamespace

import pytest
import uvicorn

from rimfall.errors import BadInput
from rimfall.scene import examples
from rimfall.web import connections
from rimfall.web.app import make_app
from rimfall.web.share import addresses, connection, doors, keys, serving
from rimfall.web.share.board import Board
from rimfall.web.share.limits import Limits, Rate
from rimfall.web.share.room import MOST_FOLLOWERS
from rimfall.web.share.stream import Stream
from tests.apart import run_apart
from tests.commands import rimfall
from tests.tables import each_row

from .shows import ASK, HERE, NETWORK, NOW, PHONE, Answer, Show, showing

SCENE = json.loads(examples.example("same-lob"))
FOLLOWED = {
    ("GET", "/follow"): 200,
    ("GET", "/static/favicon.svg"): 200,
    ("GET", "/language/de.js"): 200,
    ("HEAD", "/language/de.js?is=0123"): 200,
    ("GET", "/language/xx.js"): 404,
    ("GET", "/api/health"): 200,
}
CHANGES = [
    ("POST", "/api/share/now"),
    ("POST", "/api/share/scenes"),
    ("GET", "/api/share"),
    ("GET", "/api/share/code.svg"),
    ("GET", "/api/share/room"),
    ("POST", "/api/follow/now"),
    ("PUT", "/api/follow/guess"),
    ("DELETE", "/api/follow/scenes/00"),
    ("POST", "/api/trace"),
    ("POST", "/api/export/csv"),
    ("GET", "/api/fields"),
    ("GET", "/api/examples"),
    ("GET", "/openapi.json"),
    ("GET", "/brief"),
    ("GET", "/speaker"),
    ("GET", "/"),
    ("GET", "//api/fields"),
    ("POST", "/static/favicon.svg"),
    ("GET", "/language/de"),
    ("POST", "/language/de"),
    ("POST", "/language/de.js"),
    ("GET", "/language/../api/fields.js"),
]


def refused(answer):
    """(status, the field of its one refusal)."""
    status, _, body = answer
    (refusal,) = json.loads(body)["refused"]
    assert set(refusal) == {"field", "was", "may_be", "say"}
    return status, refusal["field"]


def test_a_follower_can_follow_and_change_nothing():
    async def asked():
        async with showing() as show:
            for (method, path), status in FOLLOWED.items():
                assert (await show.ask(method, path))[0] == status, path
            for headers in (
                show.key,
                show.cookie,
                show.key | show.cookie,
            ):  # the presenter's key does not come by the network
                for method, path in CHANGES:
                    body = NOW if method == "POST" else None
                    answer = await show.ask(method, path, body, headers)
                    assert refused(answer)[0] == 403, (method, path)
                    assert show.room.keys.followers.encode() not in answer[2]
            assert (await show.follower("GET", "/api/follow/clock"))[0] == 200

    run_apart(asked())


def test_a_phone_is_spoken_to_in_its_own_language():
    async def asked():
        async with showing() as show:
            in_german = {"accept-language": "de"}
            status, _, page = await show.ask("GET", "/follow", headers=in_german)
            assert (status, b'<html lang="de"' in page) == (200, True)
            script = page.partition(b'<script defer src="')[2].partition(b'"')[0].decode()
            status, _, said = await show.ask("GET", f"/{script}", headers=in_german)
            assert (status, said[:27]) == (200, b"globalThis.rimfallLanguage=")
            status, _, fields = await show.ask("GET", "/api/follow/fields", headers=show.key | in_german)
            assert "0 bis 3.000 m/s" in fields.decode()
            status, _, said = await show.ask("POST", "/api/follow/guess", {}, headers=show.key | in_german)
            assert (status, "zulässig" in json.loads(said)["refused"][0]["say"]) == (422, True)

    run_apart(asked())


def test_a_wrong_key_is_refused_and_so_is_none():
    async def asked():
        async with showing() as show:
            wrong = [
                {},
                {"authorization": "Bearer"},
                {"authorization": "Bearer \u00fc"},
                {"authorization": show.room.keys.followers},
            ]
            wrong += [{"authorization": f"Bearer {key}"} for key in (keys.fresh().followers, show.room.keys.presenter)]
            for headers in wrong:
                for method, path in (("GET", "now"), ("GET", "clock"), ("GET", "scenes/00"), ("POST", "guess")):
                    assert refused(await show.ask(method, f"/api/follow/{path}", None, headers)) == (403, "key")
            assert show.room.count == 0

    run_apart(asked())


def test_the_presenter_is_who_bears_the_key_on_this_machine():
    async def asked():
        async with showing() as show:
            door = f"/present?key={show.room.keys.presenter}"
            status, headers, _ = await show.ask("GET", door, None, {}, HERE, HERE)
            assert (status, headers["location"]) == (303, "/")
            cookie = headers["set-cookie"]
            assert cookie.startswith(f"{show.cookie['cookie']};")
            assert all(part in cookie for part in ("HttpOnly", "SameSite=strict", "Path=/"))
            assert (await show.ask("GET", "/", None, show.cookie, HERE, HERE))[0] == 200
            assert refused(await show.ask("GET", "/present?key=wrong", None, {}, HERE, HERE)) == (403, "key")
            for headers, server, client in [
                ({}, HERE, HERE),
                ({"cookie": "rimfall-presenter-8150=wrong"}, HERE, HERE),
                ({"cookie": "rimfall-presenter-9000=" + show.room.keys.presenter}, HERE, HERE),
                (show.cookie, NETWORK, HERE),
                (show.cookie, HERE, ("10.0.0.5", 1)),  # what a proxy hands on
            ]:
                assert refused(await show.ask("GET", "/", None, headers, server, client)) == (403, "request")
            assert refused(await show.ask("GET", door, None, {}, NETWORK, PHONE)) == (403, "key")

    run_apart(asked())


def test_a_host_that_is_not_the_one_asked_is_refused():
    async def asked():
        async with showing(served_as="0.0.0.0") as show:
            hosts = {
                "127.0.0.2": 200,
                "127.0.0.2:8150": 200,
                "localhost": 200,
                "192.0.2.7": 403,
                "rimfall.invalid": 400,
            }
            for host, status in hosts.items():
                assert (await show.ask("GET", "/api/health", None, {"host": host}))[0] == status, host

    run_apart(asked())


def test_where_nothing_is_shared_there_is_no_show():
    async def asked():
        show = Show()
        show.app = make_app()
        status, _, body = await show.ask("GET", "/api/share", None, {}, HERE, HERE)
        assert (status, json.loads(body)) == (200, {"shared": False})
        for path in ("/api/follow/clock", "/api/share/room", "/present?key=1", "/follow"):
            assert refused(await show.ask("GET", path, None, {}, HERE, HERE))[0] == 404

    run_apart(asked())


def test_whoever_comes_is_told_the_newest_at_once_and_what_comes_after():
    async def asked():
        async with showing() as show:
            for number in (1, 2):
                told = await show.tell(step=number)
            async with show.stream() as first:
                assert first.headers["content-type"].startswith("text/event-stream")
                now = await first.next("now")
                assert (now["step"], now["line"], now["clock"]) == (2, NOW["line"], told)
                (clock,) = first.events("clock")
                assert clock["at_ms"] >= told["at_ms"]
                await first.next("room", lambda room: room["followers"] == 1)
                await show.tell(step=3)
                assert (await first.next("now", lambda now: now["step"] == 3))["clock"]["at_ms"] > told["at_ms"]
                seen = first.body.decode().rpartition("id: ")[2].split("\n")[0]
            async with show.stream({"last-event-id": seen}) as again, show.stream({"last-event-id": "other"}) as other:
                assert (await other.next("now"))["step"] == 3
                await again.next("room")
                assert again.events("now") == []
                await show.tell(step=4)
                assert (await again.next("now"))["step"] == 4
            assert show.room.count == 0

    run_apart(asked())


def test_a_scene_is_traced_once_and_had_by_its_digest():
    async def asked():
        async with showing() as show:
            one = await show.present("POST", "/api/share/scenes?units=us", SCENE)
            show.app.state.pool.close()  # nothing is worked out any more
            assert await show.present("POST", "/api/share/scenes?units=us", SCENE) == one
            address = f"/api/follow/scenes/{one['scene']}"
            _, headers, pressed = await show.ask("GET", address, None, show.key | {"accept-encoding": "gzip"})
            assert headers["content-encoding"] == "gzip"
            _, _, whole = await show.ask("GET", address, None, show.key)
            assert gzip.decompress(pressed) == whole
            answer = json.loads(whole)
            assert answer["document"] == SCENE
            assert {"trace", "mesh"} < set(answer)
            assert refused(await show.ask("GET", address[:-1] + "g", None, show.key))[0] == 403
            assert refused(await show.ask("GET", f"/api/follow/scenes/{'0' * 32}", None, show.key))[0] == 404
            dot = {"stage": "aboard", "x": 0.5, "y": 1}
            status, *_ = await show.ask("POST", "/api/share/now", NOW | {"dot": dot}, show.cookie, HERE, HERE)
            assert status == 200
            for wrong in ({"scene": "x"}, {"dot": dot | {"x": 1.5}}, {"dot": dot | {"stage": "speaker"}}):
                answer = await show.ask("POST", "/api/share/now", NOW | wrong, show.cookie, HERE, HERE)
                assert refused(answer)[0] == 422

    run_apart(asked())


def test_marks_are_taken_while_asked_for_one_a_phone_and_told_to_the_presenter_alone():
    async def asked():
        async with showing() as show, show.presenters_stream() as mine, show.stream() as theirs:

            async def place(along_m, who="a" * 16, ask=ASK["id"]):
                return await show.follower("POST", "/api/follow/guess", {"ask": ask, "who": who, "along_m": along_m})

            assert (await place(5))[1]["refused"][0]["field"] == "ask"
            await show.tell(ask=ASK)
            assert await place(5.04) == (200, {"along_m": 5.0})
            assert await place(7.26) == (200, {"along_m": 7.3})
            assert await place(-10.04, who="b" * 16) == (200, {"along_m": -10.0})
            for along_m, field in ((20.1, "along_m"), (-10.1, "along_m"), ("x", "along_m"), (None, "along_m")):
                status, answer = await place(along_m)
                assert (status, answer["refused"][0]["field"]) == (422, field)
            assert (await place(1, who="short"))[0] == 422
            assert (await place(1, ask="another"))[1]["refused"][0]["field"] == "ask"
            room = await mine.next("room", lambda room: room["count"] == 2)
            assert (room["ask"], sorted(room["marks"]), room["followers"]) == (ASK["id"], [-10.0, 7.3], 1)
            assert await theirs.next("room", lambda room: room["count"] == 2) == {
                "followers": 1,
                "ask": ASK["id"],
                "count": 2,
            }
            await show.tell(ask=ASK | {"revealed": True, "landing_m": 5.5, "marks": room["marks"]})
            assert (await theirs.next("now", lambda now: now["ask"]["revealed"]))["ask"]["landing_m"] == 5.5
            assert (await place(5))[1]["refused"][0]["field"] == "ask"
            long = b"0" * 3000
            assert refused(await show.ask("POST", "/api/follow/guess", long.decode(), show.key)) == (413, "guess")

    run_apart(asked())


def test_an_address_may_ask_for_so_much_and_others_are_not_held_up():
    async def asked():
        async with showing(followers_an_address=1, clock=lambda: 100.0) as show:
            async with show.stream():
                answer = await show.ask("GET", "/api/follow/now", None, show.key)
                assert refused(answer) == (429, "address")
                assert int(answer[1]["retry-after"]) >= 1
                async with show.stream(client=("127.0.0.10", 1)) as other:
                    assert other.status == 200
            async with show.stream() as again:
                assert again.status == 200
            while (answer := await show.ask("GET", "/api/health"))[0] == 200:
                continue
            assert refused(answer) == (429, "address")
            assert answer[1]["retry-after"] == "1"
            assert (await show.ask("GET", "/api/health", client=("127.0.0.10", 1)))[0] == 200
            assert await show.present("GET", "/api/share")

    run_apart(asked())


def test_guesses_are_limited_too():
    async def asked():
        async with showing(clock=lambda: 100.0) as show:
            await show.tell(ask=ASK)
            show.room.limits.guesses = Rate(3, 1, lambda: 100.0)
            guess = {"ask": ASK["id"], "who": "a" * 16, "along_m": 1}
            assert [(await show.follower("POST", "/api/follow/guess", guess))[0] for _ in range(4)] == [200] * 3 + [429]

    run_apart(asked())


def test_a_rate_is_so_many_at_once_and_so_many_a_second():
    at_s = [0.0]
    rate = Rate(3, 2.0, lambda: at_s[0])
    assert [rate.wait_s("a") for _ in range(4)] == [0, 0, 0, 0.5]
    at_s[0] = 0.5
    assert [rate.wait_s("a"), rate.wait_s("a"), rate.wait_s("b")] == [0, 0.5, 0]
    at_s[0] = 1e6
    assert [rate.wait_s("a") for _ in range(4)] == [0, 0, 0, 0.5]


def test_all_that_may_follow_fit_and_no_more():
    limits, room = Limits(2), Show(followers_an_address=2).room
    assert [limits.enter("a") for _ in range(3)] == [True, True, False]
    limits.leave("a")
    assert limits.enter("a")
    room._begin = lambda what: what.close()
    entered = sum(room.enter(f"127.0.{n // 200}.{n % 200}") for n in range(MOST_FOLLOWERS + 50))
    assert entered == MOST_FOLLOWERS >= 200


@each_row(
    ("address", "counts_as"),
    [
        ("127.0.0.9", "127.0.0.9"),
        ("::ffff:192.0.2.1", "192.0.2.1"),
        ("2001:db8:1:2:3:4:5:6", "2001:db8:1:2::/64"),
        ("2001:db8:1:2::7", "2001:db8:1:2::/64"),
        ("testclient", "testclient"),
    ],
)
def test_an_address_counts_as(address, counts_as):
    assert doors.address_of({"client": (address, 1)}) == counts_as


def test_a_slow_reader_gets_the_newest_and_nothing_waits_for_it():
    async def asked():
        board, answer, goes_on = Board(), Answer(), asyncio.Event()

        async def slowly(message):
            await answer.hear(message)
            await goes_on.wait()

        async def receive():
            await answer.left.wait()
            return {"type": "http.disconnect"}

        sending = asyncio.ensure_future(Stream(board, {}, heartbeat_s=0.01)({}, receive, slowly))
        await answer.until(lambda: answer.status == 200)
        for number in range(1000):
            board.put("now", str(number), b"%d" % number)
        goes_on.set()
        await answer.until(lambda: b"data" in answer.body)
        await answer.until(lambda: b": still here" in answer.body)  # there is nothing new, and the connection lives
        assert answer.events("now") == [999]
        board.close()
        await sending

    run_apart(asked())


def test_the_code_says_the_address():
    import segno

    address = "http://192.0.2.20:8150/follow#" + keys.fresh().followers
    lines = addresses.on_screen(address)
    light = [row for line in lines for row in ([c in "█▀" for c in line], [c in "█▄" for c in line])]
    dark = [[not cell for cell in row[4:-4]] for row in light[4:]]
    assert dark[: len(dark[0])] == [[bool(cell) for cell in row] for row in segno.make(address, error="m").matrix]
    assert addresses.as_svg(address).startswith(b"<svg")


def test_keys_are_new_and_long_and_in_no_log(caplog):
    made = {key for _ in range(20) for key in (lambda pair: (pair.presenter, pair.followers))(keys.fresh())}
    assert len(made) == 40
    assert min(map(len, made)) * 6 >= 128

    async def asked():
        with caplog.at_level(logging.DEBUG):
            async with showing() as show, show.stream():
                await show.ask("GET", f"/present?key={show.room.keys.presenter}", None, {}, HERE, HERE)
                await show.tell()
                return show.room.keys

    both = run_apart(asked())
    for text in (caplog.text, repr(both), str(both)):
        assert both.presenter not in text
        assert both.followers not in text


@pytest.mark.parametrize("of_here", [False, True])
def test_some_connections_are_kept_for_the_presenter_and_an_address_has_a_few(monkeypatch, of_here):
    monkeypatch.setattr(connection, "most_connections", lambda: connection.KEPT_FOR_THE_PRESENTER + 100)
    of = connection.connections_of(2)

    def one(server, client):
        made = of.__new__(of)
        made.server, made.client, made.connections = server, client, everybody
        return made

    everybody = set()
    everybody |= {one(NETWORK, (f"127.0.1.{n}", 1)) for n in range(90)}
    if of_here:
        everybody |= {one(NETWORK, (f"127.0.2.{n}", 1)) for n in range(11)}
        assert one(NETWORK, ("127.0.0.9", 1)).too_many()[0] == 503
    else:
        most = 2 * 2 + connection.BESIDE_STREAMS
        assert one(NETWORK, ("127.0.0.9", 1)).too_many() is None
        everybody = set(list(everybody)[:40]) | {one(NETWORK, ("127.0.0.9", n)) for n in range(most + 1)}
        assert one(NETWORK, ("127.0.0.9", 1)).too_many()[0] == 429
    assert one(HERE, ("127.0.0.1", 1)).too_many() is None


def chosen(**options):
    """The options of `rimfall serve --share`."""
    return SimpleNamespace(**{"host": None, "port": 0, "relay": None, "followers_an_address": None} | options)


class Bound:
    """A socket that is bound to nothing."""

    def __init__(self, host, port):
        self.host, self.port = host, port or 8150

    def getsockname(self):
        """As a socket tells it."""
        return self.host, self.port


@pytest.mark.parametrize(
    ("host", "bound", "theirs"),
    [
        (None, ["0.0.0.0"], "http://192.0.2.20:8150/follow#"),
        ("127.0.0.2", ["127.0.0.2", "127.0.0.1"], "http://127.0.0.2:8150/follow#"),
        ("127.0.0.1", ["127.0.0.1"], "http://127.0.0.1:8150/follow#"),
    ],
)
def test_what_is_served_and_printed(monkeypatch, host, bound, theirs):
    monkeypatch.setattr(serving, "of_this_machine", lambda: "192.0.2.20")
    _, sockets, mine, room, _, words = serving.shared(chosen(host=host), Bound)
    assert [one.host for one in sockets] == bound
    assert {one.port for one in sockets} == {8150}
    assert mine == f"http://127.0.0.1:8150/present?key={room.keys.presenter}"
    assert room.address == theirs + room.keys.followers
    assert mine in words[0]
    assert room.address in words[1]


def test_what_cannot_be_served_is_refused(monkeypatch):
    monkeypatch.setattr(serving, "of_this_machine", lambda: None)
    for options, field in (({}, "host"), ({"followers_an_address": 0}, "followers-an-address")):
        with pytest.raises(BadInput) as refusal:
            serving.shared(chosen(**options), Bound)
        assert refusal.value.refusals[0].field == field
    for option in ("--relay=redis://127.0.0.1", "--followers-an-address=20"):
        refused_it = rimfall("serve", "--port", "0", "--no-open", option)
        assert refused_it.returncode == 2
        assert "goes with --share" in refused_it.stderr


class Hurried(connections.Connection):
    """Whoever reads nothing is dropped after a moment."""

    UNREAD_S = 0.3


def test_who_does_not_read_is_dropped():
    show, listening = Show(served_as="127.0.0.1"), socket.create_server(("127.0.0.1", 0))
    port = listening.getsockname()[1]
    server = uvicorn.Server(uvicorn.Config(show.app, **connections.settings(Hurried)))
    thread = threading.Thread(target=server.run, args=([listening],))
    thread.start()
    try:
        with socket.socket() as deaf:
            deaf.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
            deaf.connect(("127.0.0.1", port))
            head = f"GET /api/follow/now HTTP/1.1\r\nhost: 127.0.0.1\r\nauthorization: Bearer {show.room.keys.followers}\r\n\r\n"
            deaf.sendall(head.encode())
            until(lambda: show.room.count == 1)
            tells = iter(range(100_000))

            def is_dropped():
                told = json.dumps({"ask": None, "step": next(tells), "line": "x" * 60_000}).encode()
                server.servers[0].get_loop().call_soon_threadsafe(
                    lambda: asyncio.ensure_future(show.room.publisher.tell(told))
                )
                return show.room.count == 0

            until(is_dropped)
    finally:
        server.should_exit = True
        thread.join()


def until(what):
    ends_s = time.monotonic() + 60
    while not what():
        assert time.monotonic() < ends_s
        time.sleep(0.01)
