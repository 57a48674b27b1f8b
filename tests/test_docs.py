"""README.md and DEVELOPERS.md hold true: their links, the files and the commands they name."""

import importlib.util
import re
from pathlib import Path

from rimfall.phrases import caution, caution_about_people
from tests.commands import rimfall
from tests.tables import each_row

ROOT = Path(__file__).resolve().parent.parent
DOCS = [ROOT / "README.md", ROOT / "DEVELOPERS.md"]
FIRST = "python3 -m venv .venv && .venv/bin/pip install -e . && .venv/bin/rimfall serve"
SECOND = "python3 tests/check.py"
FENCED = re.compile(r"^```(\w*)\n(.*?)^```", re.MULTILINE | re.DOTALL)
SHELLS = ("sh", "bash", "shell", "console")
MADE_LATER = (".venv", "static/vendor", "dist")
each_doc = each_row("doc", DOCS)


def words(doc):
    return FENCED.sub("", doc.read_text(encoding="utf-8"))


def commands():
    """Each command line in the docs' shell blocks, split at && and with comments and prompts taken off."""
    for doc in DOCS:
        for language, block in FENCED.findall(doc.read_text(encoding="utf-8")):
            if language in SHELLS:
                lines = (re.sub(r"^\$ |\s+#.*$", "", line.strip()) for line in block.replace("\\\n", " ").split("\n"))
                yield from (
                    part.strip() for line in lines for part in line.split("&&") if part.strip() and part[0] != "#"
                )


def anchors(doc):
    """As the usual renderers make them from headings."""
    headings = re.findall(r"^#+ +(.+)$", words(doc), re.MULTILINE)
    return {re.sub(r"[^\w\- ]", "", heading.lower()).replace(" ", "-") for heading in headings}


def test_the_readme_has_both_commands_as_written():
    blocks = [
        block.strip() for language, block in FENCED.findall(DOCS[0].read_text(encoding="utf-8")) if language in SHELLS
    ]
    lines = [line for block in blocks for line in block.split("\n")]
    assert FIRST in lines
    assert SECOND in lines
    assert lines.index(FIRST) < lines.index(SECOND)


def test_the_caution_is_one_wherever_it_stands():
    readme = " ".join(DOCS[0].read_text(encoding="utf-8").split())
    assert caution() in readme
    assert caution_about_people().endswith(caution())
    assert caution_about_people().removesuffix(caution()).strip() in readme


@each_doc
def test_links_lead_somewhere(doc):
    targets = re.findall(r"\]\(([^)\s]+)\)", words(doc))
    for target in targets:
        assert not target.startswith(("http:", "//")), target
        if not target.startswith(("https:", "mailto:")):
            name, _, anchor = target.partition("#")
            file = (doc.parent / name) if name else doc
            assert file.exists(), target
            assert not anchor or anchor in anchors(file), target


@each_doc
def test_files_named_exist(doc):
    named = {name for name in re.findall(r"`([\w.][\w./*-]*)`", words(doc)) if looks_like_a_path(name)}
    for name in named:
        assert name.startswith(MADE_LATER) or is_there(name), f"{doc.name} names {name}"


def looks_like_a_path(name):
    top = name.split("/")[0]
    inside = "/" in name and (ROOT / top).exists()
    return inside or bool(re.search(r"\w\.(?:py|js|html|css|toml|md|lock)$", name))


def is_there(name):
    """A bare file name may be of any folder of ours."""
    if any(ROOT.glob(name.rstrip("/"))):
        return True
    ours = ("server", "static", "templates", "tests")
    return "/" not in name and any(next((ROOT / top).rglob(name), None) for top in ours)


def test_commands_named_exist():
    found = list(commands())
    assert found
    for command in found:
        program, *rest = command.split()
        program = Path(program).name
        if program == "rimfall" or (program.startswith("python") and rest[:2] == ["-m", "rimfall"]):
            check_rimfall(command, rest if program == "rimfall" else rest[2:])
        elif program.startswith("python") and rest[0] == "-m":
            assert importlib.util.find_spec(rest[1]), command
        elif program.startswith("python"):
            assert (ROOT / rest[0]).is_file(), command


def check_rimfall(command, rest):
    """The subcommand is there, knows every option given, and the files it reads are in the checkout."""
    options = [word.split("=")[0] for word in rest if word.startswith("-")]
    help_text = rimfall_help(rest[0]) if rest and not rest[0].startswith("-") else rimfall_help()
    assert [option for option in options if not re.search(rf"(?<![\w-]){re.escape(option)}\b", help_text)] == [], (
        command
    )
    scenes = [word for word in rest[1:] if word.endswith(".json") and "/" in word]
    assert [scene for scene in scenes if not (ROOT / scene).is_file()] == [], command


def rimfall_help(*subcommand):
    done = rimfall(*subcommand, "--help")
    assert done.returncode == 0, done.stderr
    return done.stdout
