"""Two keys of a show. Whoever bears the presenter's may do all that a page may; whoever bears the followers' may follow and guess.

The followers' stands in the fragment of the address that phones read off the screen: a browser sends that to no server, so it is in no
log and no Referer, and the page sends it in a header. The presenter's is asked of this machine alone, in a cookie that no script reads.
"""

import secrets
from dataclasses import dataclass

_BYTES = 16  # 128 bits; 22 letters, which a QR code of 29 modules still holds


@dataclass(frozen=True)
class Keys:
    """The keys of one show."""

    presenter: str
    followers: str

    def __repr__(self):
        """Without the keys: this may stand in a traceback."""
        return "Keys(...)"


def fresh() -> Keys:
    """Keys that nobody can guess."""
    return Keys(secrets.token_urlsafe(_BYTES), secrets.token_urlsafe(_BYTES))


def same(key: str, asked: str) -> bool:
    """Whether a key is the one that was given, in a time that tells nothing of how much of it is right."""
    return secrets.compare_digest(key.encode(), asked.encode("utf-8", "replace"))
