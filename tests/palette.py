"""`python -m tests.palette`: makes the page's colours and path styles anew from `rimfall.exports.palette`."""

import re

from rimfall.exports.palette import PATHS, PLAIN, css_names
from tests.serving import ROOT

TOKENS, MODULE = ROOT / "static/tokens.css", ROOT / "static/state/palette.js"
HEAD = "// How each path looks. Made from server/rimfall/exports/palette.py by `python -m tests.palette`: change it there.\n"
TAIL = """
/** The style of motion `index`, and its number from 1; a seventh takes the first style again with an open marker. */
export function pathStyle(index) {
  const at = index % PATHS.length;
  return { ...PATHS[at], number: at + 1, open: index >= PATHS.length };
}
"""


def written():
    """File → its text, as the palette has it."""
    return {TOKENS: tokens(TOKENS.read_text(encoding="utf-8")), MODULE: module()}


def tokens(css):
    """The style sheet with the palette's colours where it first names each: those by day."""
    names = {
        name: colour for colour, name in css_names().items() if name != "--paper"
    }  # the page has a paper of its own
    names |= {"--plain": PLAIN.paper} | {f"--s{number}": style.stage for number, style in enumerate(PATHS, start=1)}
    for name, colour in names.items():
        css, count = re.subn(rf"({name}: )#[0-9A-F]{{6}}", rf"\g<1>{colour}", css, count=1)
        assert count == 1, f"tokens.css names no {name}"
    return css


def module():
    """The module: `color` on the stages, `paper` on paper, dash in line widths, and marker."""
    paths = "\n".join(f"  {{ {_fields(one)}, marker: '{one.marker}' }}," for one in PATHS)
    return f"{HEAD}\nexport const PATHS = [\n{paths}\n];\nexport const PLAIN = {{ {_fields(PLAIN)} }};\n{TAIL}"


def _fields(style):
    dash = ", ".join(f"{part:g}" for part in style.dash)
    return f"color: '{style.stage}', paper: '{style.paper}', dash: [{dash}]"


if __name__ == "__main__":
    for path, text in written().items():
        path.write_text(text, encoding="utf-8")
