"""Refusals in the schema: their one shape, and the statuses that carry them."""

from .parts import Closed, said


class Refusal(Closed):
    """One field refused."""

    field: str = said(
        "Its name in the document, or `request`, `host`, `content-type`, `work`, `server`, `file`.", max_length=200
    )
    was: str = said("What it was.", max_length=80)
    may_be: str = said("What it may be.")
    say: str = said("The refusal as a sentence.")


class Refused(Closed):
    """Why a request was refused. Every refusal, of any status, has this shape."""

    refused: list[Refusal] = said("Each field refused.", min_length=1)


class Progress(Closed):
    """How far the work has come."""

    done: int = said("Parts done.", ge=0)
    of: int = said("Parts in all.", ge=0)


_WHY = {
    400: "The Host header names another place than the one served here, or the request is not HTTP as it should be.",
    404: "There is nothing of that name.",
    405: "The address is not asked by that method; `Allow` names those it is asked by.",
    408: "The head or the body of the request did not come in time.",
    413: "The body is too large.",
    414: "The address is too long.",
    415: "The body is of another media type than those named here, or has a content coding.",
    422: "The body or the query is not what it may be, or asks for more work than one request may; each field is named.",
    431: "The headers are too large.",
    500: "A fault of the program.",
    501: "The body is in a transfer coding that is not known.",
    503: "The server has as much to do as it takes on, or lost the worker that was at it: ask again after `Retry-After` seconds.",
}
OF_ALL = (400, 408, 414, 431, 500, 503)
OF_BODIES = (413, 415, 422, 501)
OF_QUERIES = (422,)
_HEADERS = {
    405: {"Allow": {"description": "Its methods.", "required": True, "schema": {"type": "string"}}},
    503: {
        "Retry-After": {
            "description": "Seconds to wait.",
            "required": True,
            "schema": {"type": "integer", "minimum": 0},
        }
    },
}
_EXAMPLE = {
    "field": "motions.0.speed_m_s",
    "was": "4000",
    "may_be": "0 to 3,000 m/s",
    "say": "Speed was 4000 m/s; it must be 0 to 3,000 m/s.",
}


def name_of(status):
    """The name of a status's response among the components."""
    return f"Refused{status}"


def responses():
    """The responses of refusals, for the components of the schema."""
    schema = {"$ref": "#/components/schemas/Refused"}
    out = {}
    for status, why in _WHY.items():
        content = {"schema": schema} | ({"example": {"refused": [_EXAMPLE]}} if status == 422 else {})
        out[name_of(status)] = {"description": why, "content": {"application/json": content}}
        if status in _HEADERS:
            out[name_of(status)]["headers"] = _HEADERS[status]
    return out
