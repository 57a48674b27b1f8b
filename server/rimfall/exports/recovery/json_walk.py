"""A member of a JSON text taken out of its bytes without parsing what is before it: arrays of a million numbers cost no objects.

RFC 8259. Names with escapes in them are not those that Rimfall writes, and are passed over. What is taken out is parsed afterwards
by a reader that checks it; what is passed over is only kept to its brackets and strings.
"""

import re

from pydantic_core import from_json

from ...language import tr, tr_later, written
from .terms import damaged, too_much

_LONG = tr_later("The {kind} file holds a scene whose bytes are {was}; at most {most} are read.")
_DEEP = tr_later("The {kind} file has brackets in brackets, as many as {was}; at most {most} are read.")
_MANY = tr_later(
    "The {kind} file has texts and brackets before its scene ends, more than {was}; at most {most} are read."
)
_TOKEN = re.compile(rb'"[^"\\]*+(?:\\.[^"\\]*+)*+"|["\[\]{}]', re.DOTALL)
_STRING = re.compile(rb'"[^"\\]*+(?:\\.[^"\\]*+)*+"', re.DOTALL)
_SPACE = re.compile(rb"[ \t\r\n]*+")
_PLAIN = re.compile(rb"[^,\]}\s]*+")  # a number, true, false or null
_QUOTE, _OPENING, _OBJECT = ord('"'), frozenset(b"[{"), ord("{")


class JsonWalk:
    """content: a memoryview of UTF-8; kind: of the file, for refusals. Places are byte numbers in it."""

    def __init__(self, content, kind, limits):
        self._content, self._kind, self._limits = content, kind, limits
        self._tokens = 0

    def first(self):
        """The place of the text's value."""
        return self._past_space(0)

    def is_object(self, at):
        """Whether an object begins there."""
        return self._byte(at) == _OBJECT

    def member(self, at, *names):
        """The place of a member's value in the object that begins at `at`, of a member of that for a second name, and so on; None
        where there is none. Raises Refused."""
        for name in names:
            at = self._member(at, name) if at is not None and self.is_object(at) else None
        return at

    def object_bytes(self, at):
        """The object at a place as bytes, JSON that was seen to be whole. Raises Refused."""
        end, most = self._end(at), self._limits.scene_bytes
        if end - at > most:
            raise too_much(self._kind, _LONG, end - at, most)
        data = bytes(self._content[at:end])
        self._parsed(data)
        return data

    def object(self, at):
        """The object at a place, parsed; None where another value is there. Raises Refused."""
        return self._parsed(self.object_bytes(at)) if self.is_object(at) else None

    def _parsed(self, data):
        try:
            return from_json(data, allow_inf_nan=False)
        except ValueError as error:
            raise damaged(self._kind, tr("the scene in it is not JSON: {error}", error=error)) from None

    def _member(self, at, name):
        wanted = b'"%s"' % name.encode()
        at = self._past_space(at + 1)
        while self._byte(at) == _QUOTE:
            key = _STRING.match(self._content, at)
            if key is None:
                raise damaged(self._kind, tr("a text in it does not end"))
            self._count()
            at = self._past_space(key.end())
            if self._byte(at) != ord(":"):
                break
            at = self._past_space(at + 1)
            if bytes(self._content[key.start() : min(key.end(), key.start() + len(wanted) + 1)]) == wanted:
                return at
            at = self._past_space(self._end(at))
            if self._byte(at) == ord("}"):
                return None
            if self._byte(at) != ord(","):
                break
            at = self._past_space(at + 1)
        if self._byte(at) == ord("}"):
            return None
        raise damaged(self._kind, tr("its JSON is broken or cut short at byte {at}", at=written(at, ",")))

    def _end(self, at):
        """The place after the value at `at`."""
        if self._byte(at) not in _OPENING and self._byte(at) != _QUOTE:
            return _PLAIN.match(self._content, at).end()
        depth = 0
        for token in _TOKEN.finditer(self._content, at):
            self._count()
            sign = self._content[token.start()]
            if sign == _QUOTE:
                if token.end() - token.start() == 1:
                    raise damaged(self._kind, tr("a text in it does not end"))
            else:
                depth += 1 if sign in _OPENING else -1
                if depth > self._limits.depth:
                    raise too_much(self._kind, _DEEP, depth, self._limits.depth)
            if depth <= 0:
                return token.end()
        raise damaged(self._kind, tr("its JSON is cut short"))

    def _count(self):
        self._tokens += 1
        if self._tokens > self._limits.tokens:
            raise too_much(self._kind, _MANY, self._tokens, self._limits.tokens)

    def _past_space(self, at):
        return _SPACE.match(self._content, at).end()

    def _byte(self, at):
        return self._content[at] if at < len(self._content) else None
