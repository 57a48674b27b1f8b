"""The app, put together; every 4xx in the one shape of refusals."""

from contextlib import asynccontextmanager

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect

from .. import __version__
from ..errors import BadInput, Refused, refusal
from ..folders import folder
from ..language import in_signs, speaking, tr, tr_later
from ..phrases import OR
from . import api, page
from .connections import OUT_OF_HANDLES, RETRY_AFTER_S
from .guards import Guards
from .pool import Pool
from .ready import Ready
from .share import routes as share
from .share.doors import Doors
from .spoken import Spoken, language_of
from .static import PageFiles, gzipped

MAX_SECONDS = 20.0  # that one request may take, by default


def make_app(served_as="127.0.0.1", workers=0, max_seconds=MAX_SECONDS, room=None):
    """The ASGI app; served_as is the host it is bound to, which the Host header must name. workers: processes that work things
    out, 0 for threads of this one; max_seconds: the longest that one request may be worked on; room: the share.room.Room of those who
    follow."""
    app = FastAPI(title="Rimfall", version=__version__, openapi_url=None, lifespan=_closing)
    app.state.pool, app.state.max_seconds = Pool(workers), max_seconds
    app.state.ready = Ready(app.state.pool, max_seconds)
    app.include_router(api.router)
    app.include_router(page.router)
    app.state.room = room
    app.include_router(share.router)
    app.mount("/static", PageFiles(directory=folder("static")), name="static")
    _answer_refusals(app)
    app.add_route("/openapi.json", _schema, include_in_schema=False)
    if room is not None:
        app.add_middleware(Doors, room=room)
    app.add_middleware(Guards, served_as=served_as)
    app.add_middleware(Spoken)
    return app


@asynccontextmanager
async def _closing(app):
    """Around the app's life: no work outlives it."""
    if app.state.room is not None:
        await app.state.room.open()
    yield
    if app.state.room is not None:
        await app.state.room.close()
    await app.state.ready.close()
    app.state.pool.close()
    app.state.pool.join()


def _schema(request: Request):
    """The API's description of itself."""
    from .schema import schema_bytes  # its models take as long to make as the rest of the app: when first asked for

    return gzipped(request, schema_bytes(), "application/json")


_SAYS = {
    404: tr_later("There is nothing at {path}."),
    405: tr_later("{method} is not answered at {path}."),
}
_SAYS_ELSE = tr_later("The request was refused: {detail}.")
_BOUNDS = (  # as pydantic says them, the longer first where one begins as another does
    tr_later("greater than or equal to {bound}"),
    tr_later("less than or equal to {bound}"),
    tr_later("greater than {bound}"),
    tr_later("less than {bound}"),
)
_OTHERS = (
    tr_later("a valid number, unable to parse string as a number"),
    tr_later("a valid integer, unable to parse string as an integer"),
)


def answer(refused, status):
    """A refusal as a response."""
    return JSONResponse(refused.as_dict(), status)


def _answer_refusals(app: FastAPI):
    """Answer refusals, wrong queries and wrong addresses."""

    @app.exception_handler(Refused)
    async def refused(_: Request, error: Refused):
        response = answer(error, error.status)
        if error.retry_after_s is not None:
            response.headers["retry-after"] = str(error.retry_after_s)
        return response

    @app.exception_handler(RequestValidationError)
    async def invalid(_: Request, error: RequestValidationError):
        return answer(BadInput(*(_query(e) for e in error.errors())), 422)

    @app.exception_handler(ClientDisconnect)
    async def gone(request: Request, _: ClientDisconnect):
        """Nobody is there to read it: no fault of ours, and none to fill the terminal with."""
        return await http(request, HTTPException(400, tr("it broke off")))

    @app.exception_handler(Exception)
    async def fault(request: Request, error: Exception):
        """A fault of ours, which is told outside of all middleware."""
        with speaking(language_of(request.headers)):
            return _fault(error)

    @app.exception_handler(HTTPException)
    async def http(request: Request, error: HTTPException):
        path = request.url.path[:200]
        text = _SAYS.get(error.status_code, _SAYS_ELSE)
        say = tr(text, path=path, method=request.method, detail=error.detail)
        refused = BadInput(refusal("request", f"{request.method} {path}", tr("see /openapi.json"), say))
        response = answer(refused, error.status_code)
        response.headers.update(error.headers or {})
        return response


def _fault(error):
    """A fault of ours in the shape of refusals; its traceback goes to whoever serves. Too few file handles pass."""
    if isinstance(error, OSError) and error.errno in OUT_OF_HANDLES:
        say = tr("The server has no file handle left; try again in {seconds} s.", seconds=RETRY_AFTER_S)
        may_be = tr("a server with handles to spare")
        response = answer(BadInput(refusal("server", error.strerror, may_be, say)), 503)
        response.headers["retry-after"] = str(RETRY_AFTER_S)
        return response
    say = tr("Rimfall failed at this request. It is a fault of the program, not of what was asked.")
    return answer(BadInput(refusal("server", type(error).__name__, tr("no fault"), say)), 500)


def _query(error):
    field = str(error["loc"][-1])
    may_be = _may_be(str(error.get("ctx", {}).get("expected") or error["msg"].removeprefix("Input should be ")))
    was = str(error.get("input"))
    say = tr("{field} was {value}; it must be {allowed}.", field=field, value=was[:80], allowed=may_be)
    return refusal(field, was, may_be, say)


def _may_be(said):
    """What a query may be, of pydantic's words: a bound, one of some words, or a number."""
    for text in _BOUNDS:
        head = text.partition("{")[0]
        if said.startswith(head):
            return tr(text, bound=in_signs(said.removeprefix(head)))
    first, some, last = said.rpartition(" or ")
    if some and said.startswith("'"):
        return tr(OR, first=first, last=last)
    return tr(said) if said in _OTHERS else said
