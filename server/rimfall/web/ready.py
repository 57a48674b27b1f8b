"""What is the same for a program's whole life, ready beforehand: what the page knows of fields, and what opening a scene to start from gives.
It is worked out once for each program, kept in memory and in the user's cache folder, so that it is there at once. When the list of scenes is
asked for, those that are missing are made one by one while nothing else is to do.
"""

import asyncio
import contextlib
import gzip
import hashlib
import os
import platform
import shutil
import sys
import zlib
from functools import cache
from importlib.metadata import version
from pathlib import Path

from ..errors import BadInput
from ..exports.writing import write_all
from ..language import files as catalogues
from ..language import spoken
from ..scene import examples
from .answering import whole
from .asked import Answer, Asked
from .static import takes_gzip

_HERE = ("fields", "crafts")  # what a page cannot do without waits for no worker
_LOOK_EVERY_S = 0.2  # whether there is nothing else to do
_OTHERS_KEPT = 2  # programs beside this one whose answers stay


class Ready:
    """The answers, gzipped, by what is asked: the name of some work, its body and its options."""

    def __init__(self, pool, most_s):
        program()  # of the files as they were loaded
        self._pool, self._most_s = pool, most_s
        self._kept, self._made, self._filling = {}, {}, None

    async def answer(self, what, body="", **options) -> Answer:
        """The answer to some work: gzipped JSON; or why there is none now, as `answering.whole` says it."""
        key = what, body, spoken(), *options.items()
        if key not in self._kept:
            making = self._made.get(key) or asyncio.ensure_future(self._make(key))
            self._made[key] = making
            refused = await asyncio.shield(making)  # others may wait for it when this one leaves
            if refused is not None:
                return refused
        return Answer(self._kept[key], headers={"content-encoding": "gzip"})

    def fill(self, units):
        """Make what is missing, in the background."""
        if self._filling is None or self._filling.done():
            self._filling = asyncio.ensure_future(self._fill(units))

    async def close(self):
        """Make nothing more."""
        if self._filling is not None:
            self._filling.cancel()
            await asyncio.gather(self._filling, return_exceptions=True)

    async def _fill(self, units):
        for name in examples.SAY:
            while any(self._pool.counts()):
                await asyncio.sleep(_LOOK_EVERY_S)
            if (await self.answer("example", name, units=units)).status != 200:
                return

    async def _make(self, key):
        """Read or make the answer of a key; None, or the refusal of now."""
        try:
            what, asked, language, *options = key
            file = ".".join(filter(None, (what, asked, *(value for _, value in options), language, "json.gz")))
            body = await asyncio.to_thread(_read, file)
            if body is None:
                work = Asked(what, asked.encode(), dict(options), self._most_s, language=language)
                answer = await (asyncio.to_thread(_worked_here, work) if what in _HERE else whole(self._pool, work))
                if answer.status != 200:
                    return answer
                body = await asyncio.to_thread(_write, file, answer.body)
            self._kept[key] = body
            return None
        finally:
            del self._made[key]


def _worked_here(asked):
    """The answer, by this process: it loads all of the work, once for each program that is new here."""
    from .work import answered

    return answered(asked, None, lambda: False)


def plain(answer, request):
    """The answer for those who take no gzip."""
    if answer.status != 200 or takes_gzip(request.headers.get("accept-encoding", "")):
        return answer
    return Answer(gzip.decompress(answer.body))


def _read(file):
    """The gzipped answer in the cache folder, or None. One that is damaged is none."""
    with contextlib.suppress(OSError, EOFError, RuntimeError, zlib.error):
        body = (folder() / file).read_bytes()
        gzip.decompress(body)
        return body
    return None


def _write(file, answer):
    """The answer gzipped, and kept in the cache folder where there is room and leave for it."""
    body = gzip.compress(answer, 6, mtime=0)
    with contextlib.suppress(OSError, RuntimeError, BadInput):
        folder().mkdir(parents=True, exist_ok=True, mode=0o700)
        _forget_others()
        write_all({folder() / file: body})
    return body


def _forget_others():
    """Remove the folders of other programs but the last few."""
    others = [path for path in folder().parent.glob("scenes-*") if path != folder()]
    for path in sorted(others, key=lambda path: path.stat().st_mtime)[:-_OTHERS_KEPT]:
        shutil.rmtree(path, ignore_errors=True)


def folder():
    """Where answers of this program lie: a folder of their own for each program, so that none outlives what it was made by."""
    return _caches() / "rimfall" / f"scenes-{program()}"


def _caches():
    if sys.platform == "win32":
        return Path(os.environ.get("LOCALAPPDATA") or Path.home() / "AppData/Local")
    if sys.platform == "darwin":
        return Path.home() / "Library/Caches"
    return Path(os.environ.get("XDG_CACHE_HOME") or Path.home() / ".cache")


@cache
def program():
    """A digest of all that answers depend on: the package's files, Python, and what does its arithmetic."""
    package = Path(__file__).resolve().parent.parent
    digest = hashlib.sha256(f"{platform.python_version()} {platform.machine()} {version('numpy')}".encode())
    files = [(path.relative_to(package).as_posix(), path) for path in sorted(package.rglob("*"))]
    for name, path in (*files, *((path.name, path) for path in sorted(catalogues().values()))):
        if path.suffix in (".py", ".json"):
            content = path.read_bytes()
            digest.update(f"{name} {len(content)}\n".encode() + content)
    return digest.hexdigest()[:16]
