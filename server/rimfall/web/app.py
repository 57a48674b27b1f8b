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
from . import api, page
from .connections import OUT_OF_HANDLES, RETRY_AFTER_S
from .guards import Guards
from .pool import Pool
from .ready import Ready
from .share import routes as share
from .share.doors import Doors
from .spoken import Spoken
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
    404: "There is nothing at {path}.",
    405: "{method} is not answered at {path}.",
}


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
        return await http(request, HTTPException(400, "it broke off"))

    @app.exception_handler(Exception)
    async def fault(_: Request, error: Exception):
        """A fault of ours in the shape of refusals; its traceback goes to whoever serves. Too few file handles pass."""
        if isinstance(error, OSError) and error.errno in OUT_OF_HANDLES:
            say = f"The server has no file handle left; try again in {RETRY_AFTER_S} s."
            response = answer(BadInput(refusal("server", error.strerror, "a server with handles to spare", say)), 503)
            response.headers["retry-after"] = str(RETRY_AFTER_S)
            return response
        say = "Rimfall failed at this request. It is a fault of the program, not of what was asked."
        return answer(BadInput(refusal("server", type(error).__name__, "no fault", say)), 500)

    @app.exception_handler(HTTPException)
    async def http(request: Request, error: HTTPException):
        path = request.url.path[:200]
        say = _SAYS.get(error.status_code, "The request was refused: {detail}.")
        say = say.format(path=path, method=request.method, detail=error.detail)
        response = answer(
            BadInput(refusal("request", f"{request.method} {path}", "see /openapi.json", say)), error.status_code
        )
        response.headers.update(error.headers or {})
        return response


def _query(error):
    field = str(error["loc"][-1])
    may_be = str(error.get("ctx", {}).get("expected") or error["msg"].removeprefix("Input should be "))
    return refusal(
        field, str(error.get("input")), may_be, f"{field} was {str(error.get('input'))[:80]}; it must be {may_be}."
    )
