"""The workbench, and the page to print."""

import gzip

from fastapi import APIRouter, Request, Response
from fastapi.responses import HTMLResponse
from fastapi.templating import Jinja2Templates

from .. import __version__
from ..exports.notes import CAUTION
from .places import folder
from .static import takes_gzip

router = APIRouter(include_in_schema=False)
_templates = Jinja2Templates(folder("templates"))
_SAID = {"version": __version__, "caution": CAUTION}


@router.api_route("/", methods=["GET", "HEAD"], response_class=HTMLResponse)
def page(request: Request):
    """The workbench."""
    return _told(request, "page.html")


@router.api_route("/brief", methods=["GET", "HEAD"], response_class=HTMLResponse)
def brief(request: Request):
    """The page to print."""
    return _told(request, "brief.html")


def _told(request, template):
    """A page, gzipped for those who take it."""
    made = _templates.TemplateResponse(request, template, _SAID)
    made.headers["vary"] = "accept-encoding"
    if not takes_gzip(request.headers.get("accept-encoding", "")):
        return made
    headers = {"vary": "accept-encoding", "content-encoding": "gzip"}
    return Response(gzip.compress(made.body, mtime=0), made.status_code, headers, made.media_type)
