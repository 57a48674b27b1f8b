"""The addresses of a show: those of the presenter's page, and those of followers. `doors.py` has looked who asks."""

import gzip
import hashlib
import json
from typing import Annotated, Literal

from fastapi import APIRouter, Header, Path, Request, Response
from fastapi.responses import RedirectResponse

from ...errors import BadInput, refusal
from ...language import spoken, tr, written
from ..answering import whole
from ..asked import Answer, Asked, NothingThere
from ..ready import plain
from .addresses import as_svg
from .doors import GUESSES, address_of, cookie_name, is_here, too_often
from .keys import same
from .messages import Guess, Now
from .refusals import NotAllowed, TooOften
from .stream import Stream

router = APIRouter(include_in_schema=False)
_NO_STORE = {"cache-control": "no-store"}
GREATEST_NOW_BYTES = 64_000
STEP_M = 0.1  # of marks


def _room(request):
    """The show. Raises NothingThere where this machine serves itself alone."""
    room = request.app.state.room
    if room is None:
        raise NothingThere(request.method, request.url.path)
    return room


@router.get("/present")
async def present(request: Request, key: str = ""):
    """The presenter's key as a cookie, and on to the page."""
    room = _room(request)
    if not (is_here(request.scope) and same(room.keys.presenter, key)):
        say = tr("Open the address that rimfall serve printed, on the machine that serves.")
        raise NotAllowed("key", tr("another key"), tr("the presenter's key, on the machine that serves"), say)
    response = RedirectResponse("/", 303, _NO_STORE)
    response.set_cookie(cookie_name(request.scope), key, httponly=True, samesite="strict")
    return response


@router.get("/api/share")
async def about(request: Request):
    """Whether others may follow, and where; for the presenter's page."""
    room = request.app.state.room
    if room is None:
        return {"shared": False}
    return Response(
        json.dumps({"shared": True, "address": room.address}), media_type="application/json", headers=_NO_STORE
    )


@router.get("/api/share/code.svg")
async def code(request: Request):
    """The QR code of where they follow."""
    return Response(as_svg(_room(request).address), media_type="image/svg+xml", headers=_NO_STORE)


@router.post("/api/share/scenes")
async def scene(request: Request, units: Literal["si", "us"] = "si"):
    """Traces a scene once for all who follow, and tells the digest by which they get it; the body is its document."""
    room, state, body = _room(request), request.app.state, await request.body()
    digest = hashlib.sha256(f"{units} {spoken()} ".encode() + body).hexdigest()[:32]
    if await room.publisher.scene(digest) is None:
        answer = await whole(state.pool, Asked("opened", body, {"units": units}, state.max_seconds))
        if answer.status != 200:
            return Response(answer.body, answer.status, answer.headers, answer.media_type)
        await room.publisher.keep(digest, gzip.compress(answer.body, 6, mtime=0))
    return {"scene": digest}


@router.post("/api/share/now")
async def now(request: Request, told: Now):
    """What all see from now on; the server's time is added to the clock."""
    room = _room(request)
    message = told.model_dump()
    message["clock"]["at_ms"] = round(room.publisher.now_ms(), 1)
    body = json.dumps(message, ensure_ascii=False, separators=(",", ":")).encode()
    if len(body) > GREATEST_NOW_BYTES:
        most = written(GREATEST_NOW_BYTES, ",")
        say = tr("What all see came to {bytes} bytes; it may have {most}.", bytes=written(len(body), ","), most=most)
        was, may_be = tr("{bytes} bytes", bytes=len(body)), tr("at most {most} bytes", most=most)
        raise BadInput(refusal("now", was, may_be, say))
    await room.publisher.tell(body)
    return message["clock"]


@router.get("/api/share/room")
async def who_is_here(request: Request):
    """How many follow, and their marks, as events `room`."""
    return Stream(_room(request).for_presenter, {})


@router.get("/api/follow/now")
async def follow(request: Request, last_event_id: Annotated[str | None, Header()] = None):
    """What all see, as events `now`; how many follow and have placed a mark, as events `room`; first the server's time, as `clock`."""
    room, address = _room(request), address_of(request.scope)
    if not room.enter(address):
        say = tr("As many follow already as may, here or from this address; try again in 5 s.")
        raise TooOften(tr("too many that follow"), tr("asked again later"), say, 5)
    first = f"event: clock\ndata: {json.dumps(_time(room))}\n\n".encode()
    return Stream(room.for_followers, {"now": last_event_id}, first, lambda: room.leave(address))


@router.get("/api/follow/clock")
async def clock(request: Request):
    """The server's time, by which at_ms is told."""
    return Response(json.dumps(_time(_room(request))), media_type="application/json", headers=_NO_STORE)


def _time(room):
    return {"at_ms": round(room.publisher.now_ms(), 1)}


@router.get("/api/follow/fields")
async def fields(request: Request):
    """What GET /api/fields tells: the stages read from it what is drawn of a kind of motion or a body."""
    _room(request)
    made = plain(await request.app.state.ready.answer("fields"), request)
    return Response(made.body, made.status, {"vary": "accept-encoding"} | made.headers, made.media_type)


@router.get("/api/follow/scenes/{digest}")
async def answer(request: Request, digest: Annotated[str, Path(pattern="^[0-9a-f]{32}$")]):
    """A scene that is shown or is next: its document, where everything goes (arrays packed), and what its habitats are drawn from."""
    pressed = await _room(request).publisher.scene(digest)
    if pressed is None:
        raise NothingThere("GET", f"/api/follow/scenes/{digest}")
    made = plain(Answer(pressed, headers={"content-encoding": "gzip"}), request)
    headers = {"vary": "accept-encoding", "cache-control": "private, max-age=3600, immutable"} | made.headers
    return Response(made.body, media_type="application/json", headers=headers)


@router.post("/api/follow/guess")
async def guess(request: Request, placed: Guess):
    """Places a mark, to a tenth of a metre, while it is asked for; another of the same phone takes its place."""
    room, address = _room(request), address_of(request.scope)
    wait_s = room.limits.guesses.wait_s(address)
    if wait_s:
        raise too_often(GUESSES, wait_s)
    ask = room.ask
    if ask is None or ask["id"] != placed.ask or ask["revealed"]:
        say = tr("No marks are taken any more; the next may be.")
        raise BadInput(refusal("ask", placed.ask, tr("what is asked just now"), say))
    if (
        not ask["low_m"] - STEP_M / 2 <= placed.along_m <= ask["high_m"] + STEP_M / 2
    ):  # an end is rounded as all marks are
        may_be = tr(
            "{least} to {greatest}", least=written(ask["low_m"], "g"), greatest=written(ask["high_m"], "g") + " m"
        )
        was = written(placed.along_m, "g")
        say = tr("The mark was at {was} m; it must be {may_be}.", was=was, may_be=may_be)
        raise BadInput(refusal("along_m", placed.along_m, may_be, say))
    along_m = round(placed.along_m, 1)
    if not await room.publisher.mark(ask["id"], placed.who, along_m):
        say = tr("There is no room for more marks.")
        raise TooOften(tr("too many marks"), tr("a mark where there is room"), say, 60)
    return {"along_m": along_m}
