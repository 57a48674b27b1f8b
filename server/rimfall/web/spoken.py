"""In which language a request is answered: the one that was chosen on the page, which a cookie keeps, else what the browser accepts."""

from starlette.datastructures import Headers, MutableHeaders

from ..language import chosen, speaking

COOKIE = "rimfall-language"  # all that this machine serves, on whichever port, shares its cookies


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
            if message["type"] == "http.response.start" and not _is_alike(scope["path"], message["status"]):
                answered = MutableHeaders(scope=message)
                answered.add_vary_header("accept-language, cookie")
                answered["content-language"] = language
            await send(message)

        with speaking(language):
            await self._app(scope, receive, marked)


def cookies_of(headers):
    """The cookies of a request, name → value. Others than ours are of any form: such a one hides none. The standard library's parser would let
    it, and takes long over a value of many backslashes."""
    pairs = (one.partition("=") for line in headers.getlist("cookie") for one in line.split(";"))
    return {name.strip(): value.strip().strip('"') for name, _, value in pairs}


def language_of(headers):
    """The language to speak to whoever sends a request with these headers."""
    return chosen(cookies_of(headers).get(COOKIE), ", ".join(headers.getlist("accept-language")))


def _is_alike(path, status):
    """Whether an answer is the same to all: a file of the page, or its messages in the language that their address names."""
    return status < 400 and path.startswith(("/static/", "/language/"))
