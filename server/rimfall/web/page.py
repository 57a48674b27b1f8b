"""The workbench, and the page to print."""

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse
from fastapi.templating import Jinja2Templates

from .. import __version__
from ..phrases import CAUTION
from .places import folder
from .scripts import scripts
from .static import told

router = APIRouter(include_in_schema=False)
_templates = Jinja2Templates(folder("templates"))
_SAID = {"version": __version__, "caution": CAUTION}


@router.api_route("/", methods=["GET", "HEAD"], response_class=HTMLResponse)
def page(request: Request):
    """The workbench."""
    return _page(request, "page.html", "main.js")


@router.api_route("/brief", methods=["GET", "HEAD"], response_class=HTMLResponse)
def brief(request: Request):
    """The page to print."""
    return _page(request, "brief.html", "brief.js")


def _page(request, template, entry):
    script, preloaded = scripts(entry)
    words = _SAID | {"script": script, "preloaded": preloaded}
    return told(request, _templates.TemplateResponse(request, template, words).body, "text/html")
