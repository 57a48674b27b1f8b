"""The file that plays by itself, put together of its template and of what the page's build made: script, styles, fonts.

Its own security policy lets it reach nothing: one script and the styles, each by its hash, fonts and pictures that are in it.
"""

import base64
import gzip
import html
import json
import re
from hashlib import sha256

from ... import __version__
from ...errors import BadInput, refusal
from ...folders import folder
from ...language import catalogue, page_script, spoken, tr, tr_as
from ...phrases import NOT_MADE

SCRIPT = "vendor/page/player.js"
STYLES = {
    "style": ("tokens.css",),
    "player_style": ("page.css", "desk.css", "views.css", "sheets.css", "player.css", "present.css"),
    "speaker_style": ("speaker.css",),
}
ICON = "favicon.svg"
_FONT = re.compile(r"url\((vendor/[\w.-]+\.woff2)\)")
_COMMENT = re.compile(r"/\*.*?\*/\s*", re.DOTALL)
_HOLE = re.compile(r"""\{\{ (?:(\w+)|tr\("([^"]+)"\)|trAs\("([^"]+)", "([^"]+)"\)) \}\}""")
_ENDS_SCRIPT = re.compile(r"<(?=/script|script|!--)", re.IGNORECASE)
_POLICY = (
    "default-src 'none'; script-src {script}; style-src {style}; font-src data:; img-src data: blob:; base-uri 'none'; "
    "form-action 'none'"
)


def page_of(title, about, notes, shown):
    """The file's bytes. title: of the scene or the talk, as it is; about: what it is, a sentence; notes: what it says of itself, plain
    data with the document in it; shown: what the script reads, of `packed`. Raises BadInput where the page was not built."""
    script, messages = _script(), page_script(spoken())
    scripts = [messages, script] if messages else [script]
    styles = {name: _style(sheets) for name, sheets in STYLES.items()}
    parts = {
        **_language(),
        "policy": _POLICY.format(script=" ".join(map(_hash, scripts)), style=" ".join(map(_hash, styles.values()))),
        "notes": in_script(json.dumps(notes, ensure_ascii=False)),
        "title": html.escape(title),
        "about": html.escape(about),
        "version": __version__,
        "icon": _data("image/svg+xml", (folder("static") / ICON).read_bytes()),
        **styles,
        "shown": shown,
        "messages": f"<script>{messages}</script>\n" if messages else "",
        "script": script,
    }
    parts["speaker"] = _filled(_template("_speaker.html"), {})
    return _filled(_template("one_file.html"), parts).encode()


def _filled(template, parts):
    """A template with its parts, and its words in the language that is spoken."""

    def words(hole):
        name, text, context, text_there = hole.groups()
        return parts[name] if name else html.escape(tr(text) if text else tr_as(context, text_there))

    return _HOLE.sub(words, template)


def _language():
    mine = catalogue(spoken())
    return {"language": spoken(), "direction": "ltr" if mine is None else mine.direction}


def _template(name):
    return (folder("templates") / name).read_text(encoding="utf-8")


def packed(shown):
    """JSON bytes as they stand in the file: gzip in base64, in which an answer takes three fifths of its room."""
    return base64.b64encode(gzip.compress(shown, mtime=0)).decode()


def in_script(text):
    """JSON as it may stand between <script> and </script>: nothing in it ends the script, opens another, or breaks a line."""
    return text.replace("<", "\\u003c").replace("\u2028", "\\u2028").replace("\u2029", "\\u2029")


def _script():
    path = folder("static") / SCRIPT
    if not path.is_file():
        say = tr("A file that plays by itself holds the script of Rimfall's page, and that was not built.")
        may_be = tr("another format until the page is built")
        raise BadInput(refusal("export", "html", may_be, f"{say} {tr(NOT_MADE)}"))
    # inside a script a sign may be written by its number wherever it can stand: in texts, and in what is matched against texts
    return _ENDS_SCRIPT.sub(r"\\x3c", path.read_text(encoding="utf-8").replace("\r", ""))


def _style(names):
    static = folder("static")
    sheets = (_COMMENT.sub("", (static / name).read_text(encoding="utf-8")) for name in names)
    fonts = _FONT.sub(lambda at: f"url({_data('font/woff2', (static / at[1]).read_bytes())})", "\n".join(sheets))
    return fonts.replace("\r", "")


def _data(media_type, content):
    return f"data:{media_type};base64,{base64.b64encode(content).decode()}"


def _hash(text):
    """Of a script or a style, as a security policy names it."""
    return f"'sha256-{base64.b64encode(sha256(text.encode()).digest()).decode()}'"
