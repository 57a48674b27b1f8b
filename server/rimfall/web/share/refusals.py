"""Who may not, who asks too often, and a relay that is away, in the one shape of refusals."""

from ...errors import Refused, refusal
from ...language import tr


class NotAllowed(Refused):
    """Whoever asks may not."""

    status = 403

    def __init__(self, field, was, may_be, say):
        super().__init__(refusal(field, was, may_be, say))


class TooOften(Refused):
    """An address asks for more than one may."""

    status = 429

    def __init__(self, was, may_be, say, retry_after_s):
        super().__init__(refusal("address", was, may_be, say))
        self.retry_after_s = retry_after_s


class RelayAway(Refused):
    """Redis does not answer."""

    status, retry_after_s = 503, 2

    def __init__(self):
        say = tr("The relay between the servers does not answer; try again in 2 s.")
        super().__init__(refusal("relay", tr("no answer"), tr("a Redis server that answers"), say))
