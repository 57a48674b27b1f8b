"""The messages that the program shows, collected from its code, templates and ready scenes, and the catalogues that translate them.

    python -m tests.catalogues update            every message into every catalogue (server/rimfall/language/*.po); what is gone goes
    python -m tests.catalogues missing de        those that are not translated yet, as JSON {"English": ""}; a context stands before: "where|the deck"
    python -m tests.catalogues fill de FILE …    translations into the catalogue, from JSON of that form; [one, many] for what is counted
    python -m tests.catalogues compile           the catalogues as the program reads them, into static/vendor/language

A message is the first text of a call of `tr`, `tr_later` or `trParts`, the first two of `tr_as`, `tr_later_as` and `tr_many`: of Python by its syntax
tree, of JavaScript and the templates by what such a call looks like, its text in one pair of quotes.
"""

import argparse
import ast
import json
import re
import subprocess
import sys
from functools import cache
from pathlib import Path

from babel.messages.catalog import Catalog
from babel.messages.pofile import read_po, write_po

from rimfall.language.documents import NAME, NAMES, SHOWN

ROOT = Path(__file__).resolve().parent.parent
CATALOGUES = ROOT / "server/rimfall/language"
HEADER = """# Rimfall's words. The Rimfall authors, under the licence of Rimfall.
msgid ""
msgstr ""
"MIME-Version: 1.0\\n"
"Content-Type: text/plain; charset=utf-8\\n"
"Content-Transfer-Encoding: 8bit\\n"
"Language: {language}\\n"
"Plural-Forms: {plurals}\\n"

"""
_TEXT = r"""(?:'((?:[^'\\]|\\.)*)'|"((?:[^"\\]|\\.)*)"|`((?:[^`\\$]|\\.)*)`)"""
_OF_PAGE = {  # how many texts a call has
    re.compile(rf"\b(?:tr|trLater|trParts)\(\s*{_TEXT}"): ("text",),
    re.compile(rf"\btrAs\(\s*{_TEXT},\s*{_TEXT}"): ("context", "text"),
    re.compile(rf"\btrMany\(\s*{_TEXT},\s*{_TEXT}"): ("text", "many"),
}
_OF_SERVER = {
    "tr": ("text",),
    "tr_later": ("text",),
    "tr_as": ("context", "text"),
    "tr_later_as": ("context", "text"),
    "tr_many": ("text", "many"),
}
_A_CALL = re.compile(rf"\b(?:{'|'.join(_OF_SERVER)})\(")  # a module without one is not worth its syntax tree
_READY = ("server/rimfall/scene/examples", "server/rimfall/talk/examples", "server/rimfall/scene/craft/examples")


@cache
def messages():
    """(context or None, text, many or None) → the files it stands in, sorted. Read once by each process: several tests want them."""
    found = {}
    for file, context, text, many in (*_of_server(), *_of_page(), *_of_ready()):
        name = file.relative_to(ROOT).as_posix()
        known = next((key for key in ((context, text, None),) if many is not None and key in found), None)
        if known:  # the same text counted and not
            found[context, text, many] = found.pop(known)
        found.setdefault((context, text, many), set()).add(name)
    return {key: sorted(files) for key, files in sorted(found.items(), key=lambda one: (min(one[1]), one[0][1]))}


def _of_server():
    for file in sorted((ROOT / "server/rimfall").rglob("*.py")):
        code = file.read_text(encoding="utf-8")
        for node in ast.walk(ast.parse(code)) if _A_CALL.search(code) else ():
            name = getattr(node.func, "id", getattr(node.func, "attr", "")) if isinstance(node, ast.Call) else ""
            parts = _OF_SERVER.get(name, ())
            texts = [one.value for one in node.args[: len(parts)] if isinstance(one, ast.Constant)] if parts else []
            if parts and len(texts) == len(parts) and all(isinstance(one, str) for one in texts):
                yield file, *_in_order(dict(zip(parts, texts, strict=True)))


def _of_page():
    files = [path for path in (ROOT / "static").rglob("*.js") if "vendor" not in path.parts]
    files.remove(ROOT / "static/state/language.js")  # where they are, and where they are told of
    for file in sorted([*files, *(ROOT / "templates").glob("*.html")]):
        code = file.read_text(encoding="utf-8")
        for call, parts in _OF_PAGE.items():
            for match in call.finditer(code):
                texts = [_unescaped(one) for one in match.groups() if one is not None]
                yield file, *_in_order(dict(zip(parts, texts, strict=True)))


def _of_ready():
    for folder in _READY:
        for file in sorted((ROOT / folder).rglob("*.json")):
            for context, text in _shown(json.loads(file.read_text(encoding="utf-8"))):
                yield file, context, text, None


def _shown(part, key=""):
    """What people read of a document, at any depth, each with its context."""
    if isinstance(part, dict):
        for name, value in part.items():
            yield from _shown(value, name)
    elif isinstance(part, list):
        for one in part:
            yield from _shown(one, key)
    elif part and isinstance(part, str) and key in SHOWN | NAMES:
        yield NAME if key in NAMES else None, part


def _in_order(parts):
    return parts.get("context"), parts["text"], parts.get("many")


def _unescaped(text):
    """A text of JavaScript as it is: \\u00a0, \\', \\n."""
    signs = {"n": "\n", "t": "\t"}
    return re.sub(
        r"\\(?:u([0-9a-fA-F]{4})|(.))",
        lambda one: chr(int(one[1], 16)) if one[1] else signs.get(one[2], one[2]),
        text,
        flags=re.DOTALL,
    )


def read(language):
    with (CATALOGUES / f"{language}.po").open("rb") as file:
        return read_po(file, locale=language)


def write(language, catalogue):
    """The file, without dates and addresses, which would change with every update."""
    with (CATALOGUES / f"{language}.po").open("wb") as file:
        file.write(HEADER.format(language=language, plurals=catalogue.plural_forms).encode())
        write_po(
            file, catalogue, width=140, no_location=False, include_lineno=False, ignore_obsolete=True, omit_header=True
        )


def update(language):
    """The catalogue with every message, in the code's order, and its translations."""
    before, after = read(language), Catalog(locale=language, project="Rimfall", copyright_holder="The Rimfall authors")
    for (context, text, many), files in messages().items():
        known = before.get(text, context=context)
        strings = known.string if known is not None and isinstance(known.id, str) == (many is None) else None
        message_id = text if many is None else (text, many)
        after.add(message_id, strings or None, [(name, None) for name in files], context=context)
    write(language, after)


def missing(language):
    found = {}
    for message in read(language):
        if message.id and not (message.string if isinstance(message.string, str) else all(message.string)):
            one = message.id if isinstance(message.id, str) else message.id[0]
            found[one if message.context is None else f"{message.context}|{one}"] = (
                "" if isinstance(message.id, str) else ["", ""]
            )
    return found


def fill(language, files):
    """Translations into the catalogue. Raises SystemExit of what is no message."""
    catalogue, unknown = read(language), []
    keys = {
        (one if message.context is None else f"{message.context}|{one}"): message
        for message in catalogue
        for one in [message.id if isinstance(message.id, str) else message.id[0]]
        if one
    }
    for file in files:
        for key, text in json.loads(Path(file).read_text(encoding="utf-8")).items():
            if key not in keys:
                unknown.append(key)
            elif text and all(text):
                keys[key].string = text if isinstance(text, str) else tuple(text)
    write(language, catalogue)
    for key in unknown:
        print(f"no message: {key}", file=sys.stderr)


def main():
    parser = argparse.ArgumentParser(prog="python -m tests.catalogues", description=__doc__.split("\n", 1)[0])
    parser.add_argument("do", choices=["update", "missing", "fill", "compile"])
    parser.add_argument("language", nargs="?")
    parser.add_argument("files", nargs="*")
    asked = parser.parse_args()
    if asked.do == "update":
        for file in CATALOGUES.glob("*.po"):
            update(file.stem)
    elif asked.do == "missing":
        print(json.dumps(missing(asked.language), ensure_ascii=False, indent=1))
    elif asked.do == "fill":
        fill(asked.language, asked.files)
    if asked.do in ("fill", "compile"):
        return subprocess.run([sys.executable, ROOT / "static/vendor_build.py"]).returncode
    return 0


if __name__ == "__main__":
    sys.exit(main())
