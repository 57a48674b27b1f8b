"""The page's files: compressed once each, held in memory, revalidated by their tag."""

import gzip
import re
from functools import lru_cache

from starlette.datastructures import Headers
from starlette.responses import FileResponse, Response
from starlette.staticfiles import StaticFiles

# The page's own kinds, and not what builds it. The system's table is not asked: on some machines it calls a script plain text,
# and a browser then runs none.
MEDIA_TYPES = {
    ".js": "text/javascript; charset=utf-8",
    ".css": "text/css; charset=utf-8",
    ".html": "text/html; charset=utf-8",
    ".txt": "text/plain; charset=utf-8",
    ".svg": "image/svg+xml",
    ".map": "application/json",
    ".webmanifest": "application/manifest+json",
    ".png": "image/png",
    ".ico": "image/vnd.microsoft.icon",
    ".woff2": "font/woff2",
}
_PACKED = {".png", ".ico", ".woff2"}  # compressed as they are
_LEVEL = 6


@lru_cache(maxsize=256)
def _compressed(path, _modified, _size):
    with open(path, "rb") as file:
        return gzip.compress(file.read(), _LEVEL, mtime=0)


def takes_gzip(accepted):
    """Whether an Accept-Encoding header takes gzip: named, and not at quality 0."""
    named = [part.replace(" ", "") for part in accepted.split(",") if part.strip().startswith("gzip")]
    return any(not re.search(r";q=0(\.0*)?$", part) for part in named)


def gzipped(request, body, media_type):
    """An answer that is often the same bytes: gzipped, once, for those who take it."""
    headers = {"vary": "accept-encoding"}
    if takes_gzip(request.headers.get("accept-encoding", "")):
        body, headers = _pressed(body), headers | {"content-encoding": "gzip"}
    return Response(body, media_type=media_type, headers=headers)


@lru_cache(maxsize=32)  # some six, in every language
def _pressed(body):
    return gzip.compress(body, mtime=0)


class PageFiles(StaticFiles):
    """StaticFiles whose text files go out gzipped to those who take it; all are asked after anew by tag."""

    def lookup_path(self, path):
        """The file of a path, if it is of a kind the page asks for."""
        is_page = _ending(path) in MEDIA_TYPES and "node_modules" not in path
        return super().lookup_path(path) if is_page else ("", None)

    def file_response(self, full_path, stat_result, scope, status_code=200):
        response = super().file_response(full_path, stat_result, scope, status_code)
        response.headers["cache-control"] = "no-cache"
        response.headers["vary"] = "accept-encoding"
        path = str(full_path)
        if isinstance(response, FileResponse):
            response.headers["content-type"] = MEDIA_TYPES[_ending(path)]
        takes = takes_gzip(Headers(scope=scope).get("accept-encoding", ""))
        if not (isinstance(response, FileResponse) and takes and _ending(path) not in _PACKED):
            return response
        body = _compressed(path, stat_result.st_mtime, stat_result.st_size)
        kept = {k: v for k, v in response.headers.items() if k in ("etag", "last-modified", "cache-control", "vary")}
        return Response(body, status_code, {**kept, "content-encoding": "gzip"}, MEDIA_TYPES[_ending(path)])


def _ending(path):
    return path[path.rfind(".") :].lower()
