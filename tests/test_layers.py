"""Who may import whom, in the server and in the page. An import inside a function counts like any other."""

import ast
import graphlib
import re
import sys
from pathlib import Path

import pytest

from tests.tables import each_row

ROOT = Path(__file__).resolve().parent.parent
PACKAGE = ROOT / "server/rimfall"

BELOW_SCENE = {
    "__init__",
    "amounts",
    "errors",
    "fields",
    "phrases",
    "prose",
    "physics",
    "shapes",
    "motions",
    "kinds",
} | {
    "shots",
    "comfort",
    "vessel",
}
# part of server/rimfall → the parts it may import, besides itself and `language`
PYTHON = {
    "__init__": {"api"},
    "errors": set(),
    "folders": set(),
    "language": {"folders"},
    "languages": {"errors", "phrases"},
    "fields": set(),
    "phrases": set(),
    "amounts": set(),
    "prose": {"amounts", "phrases", "physics"},
    "threads": set(),
    "processes": {"errors", "threads"},
    "physics": {"errors"},
    "shapes": {"errors", "fields", "phrases", "physics"},
    "motions": {"errors", "physics", "shapes"},
    "shots": {"errors", "physics", "shapes", "motions"},
    "comfort": {"errors", "physics", "shapes", "motions"},
    "vessel": {"errors", "physics"},
    "kinds": {"amounts", "errors", "fields", "phrases", "prose", "physics", "shapes", "motions", "vessel"},
    "scene": BELOW_SCENE,
    "talk": {"errors", "fields", "scene"},
    "exports": BELOW_SCENE | {"folders", "scene", "talk"},
    "sweep": {"__init__", "errors", "exports", "languages", "processes", "scene"},
    "api": {"errors", "exports", "languages", "motions", "scene", "sweep", "talk"},
    "web": {"__init__", "errors", "folders", "phrases", "comfort", "processes", "shapes", "scene", "talk", "exports"},
    "cli": {"__init__", "errors", "languages", "phrases", "processes", "scene", "talk", "exports", "sweep", "web"},
    "__main__": {"cli", "threads"},
}
# part of server/rimfall → the packages it may import, besides the standard library
PACKAGES = {
    "fields": {"pydantic"},
    "physics": {"numpy"},
    "shapes": {"numpy", "pydantic"},
    "motions": {"numpy"},
    "shots": {"numpy"},
    "comfort": {"numpy"},
    "vessel": {"numpy"},
    "kinds": {"numpy", "pydantic", "pydantic_core"},
    "scene": {"numpy", "pydantic", "pydantic_core"},
    "talk": {"pydantic"},
    "exports": {"fpdf", "numpy", "pxr", "pydantic_core"},
    "sweep": {"numpy", "distributed"},
    "api": {"numpy"},
    "web": {"fastapi", "h11", "jinja2", "pydantic", "pydantic_core", "redis", "segno", "starlette", "uvicorn"},
    "cli": {"uvicorn"},
}
# part of static/ → the parts it may import, besides itself; `vendor` is what comes from npm
JAVASCRIPT = {
    "main": {"panels", "views", "api", "kept", "state", "time"},
    "brief": {"panels", "views", "api", "kept", "state", "time"},
    "player": {"panels", "views", "api", "state", "time"},
    "speaker": {"panels", "state"},
    "follow": {"panels", "views", "api", "state", "time"},
    "panels": {"files", "state", "time"},
    "views": {"state", "time", "vendor"},
    "api": {"state", "time"},
    "kept": {"state"},
    "files": {"state", "vendor"},
    "state": set(),
    "time": set(),
}
JS_IMPORT = re.compile(
    r"""(?:^|[;}])\s*(?:import|export)\b(?:[^'"`;]*?\bfrom)?\s*['"]([^'"]+)['"]|\bimport\(\s*['"]([^'"]+)['"]""",
    re.MULTILINE,
)
OF_THE_DOM = re.compile(
    r"\b(?:createElement(?:NS)?|querySelector(?:All)?|getElementById|document\.body|HTMLElement)\b|\bfetch\("
)


def part(path, top):
    return path.relative_to(top).parts[0].removesuffix(path.suffix)


def python_files():
    return sorted(PACKAGE.rglob("*.py"))


def page_modules():
    return sorted(path for path in (ROOT / "static").rglob("*.js") if "vendor" not in path.parts)


def python_imports(file):
    """Dotted names, absolute: `from .frames import x` in server/rimfall/physics is rimfall.physics.frames."""
    package = file.relative_to(PACKAGE.parent).with_suffix("").parts[:-1]
    for node in ast.walk(ast.parse(file.read_text(encoding="utf-8"))):
        if isinstance(node, ast.Import):
            yield from (alias.name for alias in node.names)
        elif isinstance(node, ast.ImportFrom):
            base = package[: len(package) - node.level + 1] if node.level else ()
            source = ".".join([*base, *([node.module] if node.module else [])])
            yield from (module_named(source, alias.name) for alias in node.names)


def module_named(source, name):
    """`from rimfall.physics import frames` imports a module; `from rimfall.physics.frames import turn` a name of one."""
    path = PACKAGE.parent.joinpath(*source.split("."), name)
    return f"{source}.{name}" if path.with_suffix(".py").is_file() or path.is_dir() else source


def part_imported(name):
    parts = name.split(".")
    return parts[1] if len(parts) > 1 else "__init__"


@each_row("file", python_files())
def test_server_layers(file):
    of = part(file, PACKAGE)
    assert of in PYTHON, f"{of} is in no layer: give it one in this test and in DEVELOPERS.md"
    names = [name.split(".")[0] for name in python_imports(file)]
    ours = {part_imported(name) for name in python_imports(file) if name.split(".")[0] == "rimfall"}
    assert ours - {of, "language"} <= PYTHON[of]
    assert set(names) - set(sys.stdlib_module_names) - {"rimfall"} <= PACKAGES.get(of, set())


def test_server_has_no_cycle():
    """The public face aside: it loads what it names only when that is asked for."""
    graph = {}
    for file in set(python_files()) - {PACKAGE / "__init__.py"}:
        name = ".".join(file.relative_to(PACKAGE.parent).with_suffix("").parts).removesuffix(".__init__")
        graph[name] = {other for other in python_imports(file) if other.startswith("rimfall")} - {name}
    assert_no_cycle(graph)


def js_imports(module):
    """Files imported, as absolute paths; a bare name stays a string, which no layer allows."""
    code = re.sub(r"/\*.*?\*/|(?<!:)//[^\n]*", "", module.read_text(encoding="utf-8"), flags=re.DOTALL)
    for names in JS_IMPORT.findall(code):
        name = names[0] or names[1]
        yield (module.parent / name).resolve() if name.startswith(("./", "../")) else name


@each_row("module", page_modules())
def test_page_layers(module):
    static = ROOT / "static"
    of = part(module, static)
    assert of in JAVASCRIPT, f"static/{of} is in no layer: give it one in this test and in DEVELOPERS.md"
    for imported in js_imports(module):
        assert isinstance(imported, Path), f"a browser does not know the bare name {imported}"
        assert imported.is_file(), f"imports {imported}, which is not there"
        assert part(imported, static) in JAVASCRIPT[of] | {of}


def test_page_has_no_cycle():
    assert_no_cycle({str(module): {str(imported) for imported in js_imports(module)} for module in page_modules()})


@each_row("module", [m for m in page_modules() if part(m, ROOT / "static") in ("state", "time", "kept")])
def test_state_and_time_know_no_dom(module):
    code = re.sub(r"/\*.*?\*/|(?<!:)//[^\n]*", "", module.read_text(encoding="utf-8"), flags=re.DOTALL)
    assert OF_THE_DOM.findall(code) == []


def assert_no_cycle(graph):
    try:
        graphlib.TopologicalSorter(graph).prepare()
    except graphlib.CycleError as error:
        pytest.fail(" → ".join(error.args[1]))
