"""The workbench, and the page to print."""

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse
from fastapi.templating import Jinja2Templates

from .. import __version__
from .places import folder

router = APIRouter(include_in_schema=False)
_templates = Jinja2Templates(folder("templates"))


@router.api_route("/", methods=["GET", "HEAD"], response_class=HTMLResponse)
def page(request: Request):
    """The workbench."""
    return _templates.TemplateResponse(request, "page.html", {"version": __version__})


@router.api_route("/brief", methods=["GET", "HEAD"], response_class=HTMLResponse)
def brief(request: Request):
    """The page to print."""
    return _templates.TemplateResponse(request, "brief.html", {"version": __version__})
