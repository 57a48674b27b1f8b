"""The workbench, the page to print, the speaker's window and the page to follow by: where their files lie, and the scripts they load.

Those are the bundle made at install, or the modules as they are while one of them differs from what was bundled: an edit in a
checkout shows on reload, with nothing to build. A wheel has no modules beside its bundle, and nothing to differ.
"""

import hashlib
import json
from functools import lru_cache

from fastapi import APIRouter, Request
from fastapi.responses import HTMLResponse, JSONResponse, RedirectResponse
from fastapi.templating import Jinja2Templates

from .. import __version__
from ..folders import folder
from ..language import catalogue, chosen, offered, page_script, spoken, tr, tr_as
from ..phrases import NOT_MADE, caution
from ..scene.examples import OPENING
from .asked import NothingThere
from .spoken import COOKIE
from .static import gzipped

router = APIRouter(include_in_schema=False)
_templates = Jinja2Templates(folder("templates"))
_templates.env.globals |= {"tr": tr, "trAs": tr_as}
A_YEAR_S = 31_536_000
_SAID = {"version": __version__, "opening": OPENING}


@router.api_route("/", methods=["GET", "HEAD"], response_class=HTMLResponse)
def page(request: Request):
    """The workbench."""
    return _page(request, "page.html", "main.js")


@router.api_route("/brief", methods=["GET", "HEAD"], response_class=HTMLResponse)
def brief(request: Request):
    """The page to print."""
    return _page(request, "brief.html", "brief.js")


@router.api_route("/speaker", methods=["GET", "HEAD"], response_class=HTMLResponse)
def speaker(request: Request):
    """The speaker's window beside what is presented."""
    return _page(request, "speaker.html", "speaker.js")


@router.api_route("/follow", methods=["GET", "HEAD"], response_class=HTMLResponse)
def follow(request: Request):
    """The page to follow by, where others may."""
    if request.app.state.room is None:
        raise NothingThere(request.method, request.url.path)
    return _page(request, "follow.html", "follow.js")


@router.api_route("/language/{language}.js", methods=["GET", "HEAD"])
def messages(request: Request, language: str):
    """What the page says, in a language, as a script that stands before the page's own."""
    said = page_script(language)
    if not said:
        raise NothingThere(request.method, request.url.path)
    response = gzipped(request, said.encode(), "text/javascript")
    response.headers["cache-control"] = f"max-age={A_YEAR_S}, immutable"  # its address changes with it
    return response


@router.post("/language/{language}")
def speak(request: Request, language: str):
    """The language that this browser is spoken to in from now on, where there is it."""
    if chosen(language) != language:
        raise NothingThere(request.method, request.url.path)
    response = JSONResponse({"language": language})
    response.set_cookie(COOKIE, language, max_age=A_YEAR_S, samesite="lax")
    return response


@router.api_route("/favicon.ico", methods=["GET", "HEAD"])
def icon():
    """Where a browser looks for the icon of what names none: a picture it opens, an answer of the API."""
    return RedirectResponse("static/favicon.svg")


def _page(request, template, entry):
    if not is_made():
        words = {"say": tr(NOT_MADE), "language": spoken()}
        return _templates.TemplateResponse(request, "not_made.html", words, status_code=503)
    script, preloaded = scripts(entry)
    words = _SAID | {
        "script": script,
        "preloaded": preloaded,
        "caution": caution(),
        "spoken": _spoken(),
        "languages": offered(),
    }
    return gzipped(request, _templates.TemplateResponse(request, template, words).body, "text/html")


def _spoken():
    """The language of a page as its template has it."""
    language = spoken()
    mine = catalogue(language)
    digest = hashlib.sha256(page_script(language).encode()).hexdigest()[:12]
    return {
        "language": language,
        "direction": "ltr" if mine is None else mine.direction,
        "script": None if mine is None else f"language/{language}.js?is={digest}",
    }


def is_made():
    """Whether there is anything to load: the bundle, or what the modules import."""
    vendor = folder("static") / "vendor"
    return (vendor / "page/page.json").is_file() or (vendor / "three.module.js").is_file()


def scripts(entry):
    """Of `main.js`, `brief.js` and the like: (the script to start with, those it imports at once), as paths below static/."""
    static = folder("static")
    try:
        bundle = json.loads((static / "vendor/page/page.json").read_text(encoding="utf-8"))
    except FileNotFoundError:
        return entry, []
    if any(_differs(static / name, sha256) for name, sha256 in bundle["sources"].items()):
        return entry, []
    return f"vendor/page/{entry}", [f"vendor/page/{name}" for name in bundle["preload"][entry]]


def _differs(source, sha256):
    try:
        about = source.stat()
    except FileNotFoundError:  # in a wheel; in a checkout, a file that goes changes those that imported it
        return False
    return _digest(source, about.st_mtime_ns, about.st_size) != sha256


@lru_cache(maxsize=1024)
def _digest(source, _modified, _size):
    return hashlib.sha256(source.read_bytes()).hexdigest()
