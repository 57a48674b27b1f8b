"""`python -m tests.served PORT`: the app as `serve` runs it, but that a browser may keep the page's files, as the many pages of
one run of the browser tests open the same. `serve` itself has each asked after anew, which its own tests hold.
"""

import sys

import uvicorn
from starlette.datastructures import MutableHeaders

from rimfall.web import connections
from rimfall.web.app import make_app


class Kept:
    """ASGI middleware: what lies under /static/ may be kept for an hour."""

    def __init__(self, app):
        self._app = app

    async def __call__(self, scope, receive, send):
        async def kept(message):
            if message["type"] == "http.response.start" and scope["path"].startswith("/static/"):
                MutableHeaders(scope=message)["cache-control"] = "max-age=3600"
            await send(message)

        await self._app(scope, receive, kept if scope["type"] == "http" else send)


if __name__ == "__main__":
    # a connection that a test left idle is not closed under its next request
    uvicorn.run(Kept(make_app()), port=int(sys.argv[1]), **connections.settings() | {"timeout_keep_alive": 600})
