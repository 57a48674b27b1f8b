"""Text in the encodings that editors save it in, as UTF-8: with a byte-order mark or without, UTF-16 and UTF-32 as RFC 4627, 3, tells
them apart by the zero bytes of the first letters."""

import codecs

from .terms import damaged, too_much

_MARKS = (  # the longer first: the mark of UTF-32 begins as that of UTF-16
    (codecs.BOM_UTF32_LE, "utf-32"),
    (codecs.BOM_UTF32_BE, "utf-32"),
    (codecs.BOM_UTF16_LE, "utf-16"),
    (codecs.BOM_UTF16_BE, "utf-16"),
)
_BY_ZEROS = {
    "1000": "utf-32-le",
    "0001": "utf-32-be",
    "1010": "utf-16-le",
    "0101": "utf-16-be",
}  # 0: a byte that is zero


def as_utf8(content, limits):
    """A text's bytes as UTF-8 without a mark: a memoryview of the same bytes where they are that already. Raises Refused."""
    first = bytes(content[:4])
    if first.startswith(codecs.BOM_UTF8):
        return content[len(codecs.BOM_UTF8) :]
    pattern = "".join("1" if byte else "0" for byte in first)
    encoding = next((name for mark, name in _MARKS if first.startswith(mark)), _BY_ZEROS.get(pattern))
    if encoding is None:
        return content
    if len(content) > limits.notes_bytes:
        raise too_much(encoding.upper(), "is a text whose bytes are", len(content), limits.notes_bytes)
    try:
        return memoryview(str(content, encoding).encode())
    except UnicodeError as error:
        raise damaged(encoding[:6].upper(), f"it is no such text ({error.reason})") from None
