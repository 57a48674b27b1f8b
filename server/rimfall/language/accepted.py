"""What a browser accepts: the header Accept-Language (RFC 9110, 12.5.4)."""

import re

_MOST = 500  # characters of a header that are read: more than any browser sends
_PART = re.compile(r"([a-z]{1,8})(?:-[a-z0-9]{1,8})*(?:\s*;\s*q=(0(?:\.[0-9]{0,3})?|1(?:\.0{0,3})?))?", re.IGNORECASE)


def ranked(header):
    """The languages that it names, without their regions, the most liked first. What is no such part is passed over."""
    parts = header[:_MOST].split(",")
    if len(header) > _MOST:
        parts.pop()  # it may have been cut
    found = [match for match in map(_PART.fullmatch, map(str.strip, parts)) if match]
    liked = [(float(match[2] or 1), match[1].lower()) for match in found]
    return [tag for quality, tag in sorted(liked, key=lambda one: -one[0]) if quality]
