"""What is shipped: a wheel that serves the page on its own, and locks that name public registries only."""

import base64
import json
import os
import re
import subprocess
import sys
import tomllib
import urllib.parse
import urllib.request
import zipfile
from pathlib import Path

import pytest

from tests.serving import serving

ROOT = Path(__file__).resolve().parent.parent
PROJECT = tomllib.loads((ROOT / "pyproject.toml").read_text(encoding="utf-8"))["project"]


@pytest.fixture(scope="module")
def wheel(tmp_path_factory):
    """Built with what is installed and what is vendored already: no network."""
    folder = tmp_path_factory.mktemp("wheel")
    command = [sys.executable, "-m", "hatchling", "build", "-t", "wheel", "-d", str(folder)]
    done = subprocess.run(command, cwd=ROOT, capture_output=True, text=True)
    assert done.returncode == 0, done.stdout + done.stderr
    return next(folder.glob("*.whl"))


def test_the_wheel_holds_the_page_and_no_build_leftovers(wheel):
    names = zipfile.ZipFile(wheel).namelist()
    assert {
        "rimfall/cli/main.py",
        "rimfall/static/vendor/page/main.js",
        "rimfall/static/vendor/page/brief.js",
        "rimfall/static/vendor/LICENSE-three.txt",
        "rimfall/templates/page.html",
    } <= set(names)
    assert {name.split("/")[0] for name in names} == {"rimfall", "rimfall-0.6.0.dist-info"}
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
    with serving(tmp_path / "log.txt", tmp_path, {"PYTHONPATH": str(tmp_path / "site")}) as origin:
        page = read(origin + "/").decode()
        assets = re.findall(r"""(?:src|href)="([^"#?]+\.(?:js|css|woff2|svg|png|ico))["?]""", page)
        assert [path for path in assets if path.endswith("main.js")]
        assert [path for path in assets if path.startswith("static/vendor/page/chunk")]
        for path in assets:
            assert read(urllib.parse.urljoin(origin + "/", path)), path


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
