"""Another commit of the program in a folder of its own, to be run beside this one."""

import contextlib
import io
import os
import re
import shutil
import subprocess
import sys
import tarfile
import tempfile
from dataclasses import dataclass
from pathlib import Path

from tests.serving import ROOT


@dataclass(frozen=True)
class Tree:
    """The program in a folder: the Python that runs it, and the environment that makes it be found there."""

    name: str
    folder: Path
    python: str = sys.executable

    @property
    def environment(self):
        return os.environ | {"PYTHONPATH": str(self.folder / "server"), "PYTHONDONTWRITEBYTECODE": ""}


HERE = Tree("this", ROOT)


@contextlib.contextmanager
def of_commit(name):
    """A Tree of that commit, gone afterwards. It runs on the packages that are here, unless its lock names others: then it has its own."""
    with tempfile.TemporaryDirectory(prefix="rimfall-commit-") as folder:
        archive = subprocess.run(["git", "archive", name], cwd=ROOT, stdout=subprocess.PIPE, check=True).stdout
        with tarfile.open(fileobj=io.BytesIO(archive)) as files:
            files.extractall(folder, filter="data")
        tree = Tree(name, Path(folder))
        if _locked(tree.folder) != _locked(ROOT):
            tree = _with_packages(tree)
        if not (tree.folder / "static/vendor").exists():  # with packages of its own it has made that too
            shutil.copytree(ROOT / "static/vendor", tree.folder / "static/vendor")
        subprocess.run([tree.python, "static/vendor_build.py"], cwd=folder, env=tree.environment, check=True)
        yield tree


def _locked(folder):
    """Name and version of every package that a lock names."""
    return re.findall(r'^name = "(.+)"\nversion = "(.+)"', (folder / "uv.lock").read_text("utf-8"), re.MULTILINE)


def _with_packages(tree):
    subprocess.run([sys.executable, "-m", "venv", tree.folder / ".venv"], check=True)
    python = str(tree.folder / ".venv" / ("Scripts/python.exe" if os.name == "nt" else "bin/python"))
    subprocess.run([python, "-m", "pip", "install", "-q", "-e", ".[test]"], cwd=tree.folder, check=True)
    return Tree(tree.name, tree.folder, python)
