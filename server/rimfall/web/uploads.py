"""A file sent to be worked on: written to disk as it comes, so that neither this process nor a worker holds it, and gone with the answer."""

import contextlib
import os
import tempfile

from ..errors import BadInput, refusal
from ..language import tr
from .answering import Worked
from .asked import Asked
from .pool import Pool


class WorkedFile(Worked):
    """What comes of `Asked`, whose body is the path of a file, which is removed afterwards."""

    def __init__(self, pool: Pool, asked: Asked):
        super().__init__(pool, asked)
        self._path = os.fsdecode(asked.body)

    async def __call__(self, scope, receive, send):
        try:
            await super().__call__(scope, receive, send)
        finally:
            _remove(self._path)


async def path_of(request) -> bytes:
    """The path of a file with the request's body in it. Raises BadInput where there is no room for it."""
    path = None
    try:
        handle, path = tempfile.mkstemp(prefix="rimfall-")
        with open(handle, "wb") as file:
            async for piece in request.stream():
                file.write(piece)
    except BaseException as error:
        if path is not None:
            _remove(path)
        if not isinstance(error, OSError):
            raise
        say = tr("The server cannot keep the file while it reads it: {why}.", why=error.strerror or error)
        raise BadInput(refusal("file", tr("a file"), tr("a file when there is room for it"), say)) from None
    return os.fsencode(path)


def _remove(path):
    with contextlib.suppress(OSError):
        os.unlink(path)
