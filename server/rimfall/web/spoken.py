"""In which language a request is answered: the one that was chosen on the page, which a cookie keeps, else what the browser accepts."""

from http.cookies import CookieError, SimpleCookie

from starlette.datastructures import Headers, MutableHeaders

from ..language import chosen, speaking

COOKIE = "language"


class Spoken:
    """ASGI middleware: words are in that language while the request is answered."""

    def __init__(self, app):
        self._app = app

    async def __call__(self, scope, receive, send):
        if scope["type"] != "http":
            await self._app(scope, receive, send)
            return
        language = language_of(Headers(scope=scope))

        async def marked(message):
            if message["type"] == "http.response.start" and not scope["path"].startswith("/static/"):
                answered = MutableHeaders(scope=message)
                answered.add_vary_header("accept-language, cookie")
                answered["content-language"] = language
            await send(message)

        with speaking(language):
            await self._app(scope, receive, marked)


def language_of(headers):
    """The language to speak to whoever sends a request with these headers."""
    return chosen(_cookie(headers.get("cookie", "")), headers.get("accept-language", ""))


def _cookie(header):
    try:
        kept = SimpleCookie(header[:4000]).get(COOKIE)
    except CookieError:
        return None
    return None if kept is None else kept.value
