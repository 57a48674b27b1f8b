"""A language that nobody speaks, by which is seen what is not translated: each message stands between ⟦ and ⟧, numbers are written as in
German. `python -m tests.pseudo FOLDER` writes its compiled catalogues, one from left to right and one from right to left, under the tags of
two languages that there are no catalogues of, so that browsers know them (Danish writes numbers as German does). A server started with
RIMFALL_LANGUAGES=FOLDER speaks them to whom sends the cookie rimfall-language=da."""

import json
import re
import sys
from pathlib import Path

from tests.catalogues import messages

CONTEXT = "\x04"
LEFT_TO_RIGHT, RIGHT_TO_LEFT = "da", "he"
OPEN, CLOSE = "⟦", "⟧"
_MESSAGE = re.compile(r"⟦[^⟦⟧]*⟧")


def catalogue(language, direction):
    texts, page = {}, []
    for (context, text, many), files in messages().items():
        key = text if context is None else context + CONTEXT + text
        forms = [f"{OPEN}{one}{CLOSE}" for one in (text, many) if one is not None]
        texts[key] = forms[0] if many is None else forms
        if any(name.startswith("static/") for name in files):
            page.append(key)
    return {
        "source": "", "language": language, "name": language, "direction": direction, "decimal": ",", "group": ".", "plural": "n != 1",
        "categories": ["one", "other"], "page": page, "messages": texts,
    }  # fmt: skip


def write(folder):
    """Both catalogues into a folder."""
    for language, direction in ((LEFT_TO_RIGHT, "ltr"), (RIGHT_TO_LEFT, "rtl")):
        made = json.dumps(catalogue(language, direction), ensure_ascii=False)
        Path(folder, f"{language}.json").write_text(made, encoding="utf-8")


def outside(text):
    """What of a text is no message: messages taken out, those within others first."""
    text = text.replace("\u2068", "").replace("\u2069", "")
    while (without := _MESSAGE.sub("", text)) != text:
        text = without
    return text


if __name__ == "__main__":
    Path(sys.argv[1]).mkdir(parents=True, exist_ok=True)
    write(sys.argv[1])
