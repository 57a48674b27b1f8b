"""Every 4xx in the one shape of refusals."""

from fastapi import FastAPI, Request
from fastapi.exceptions import RequestValidationError
from fastapi.responses import JSONResponse
from starlette.exceptions import HTTPException
from starlette.requests import ClientDisconnect

from ..errors import BadInput, Refused, TooMuch, refusal

_SAYS = {
    404: "There is nothing at {path}.",
    405: "{method} is not answered at {path}.",
}


def answer(refused, status):
    """A refusal as a response."""
    return JSONResponse(refused.as_dict(), status)


def install(app: FastAPI):
    """Answer refusals, wrong queries and wrong addresses."""

    @app.exception_handler(Refused)
    async def refused(_: Request, error: Refused):
        return answer(error, 413 if isinstance(error, TooMuch) and error.refusals[0].field == "document" else 422)

    @app.exception_handler(RequestValidationError)
    async def invalid(_: Request, error: RequestValidationError):
        return answer(BadInput(*(_query(e) for e in error.errors())), 422)

    @app.exception_handler(ClientDisconnect)
    async def gone(request: Request, _: ClientDisconnect):
        """Nobody is there to read it: no fault of ours, and none to fill the terminal with."""
        return await http(request, HTTPException(400, "it broke off"))

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
        field, str(error.get("input")), may_be, f"{field} was {str(error.get('input'))[:80]}; it may be {may_be}."
    )
