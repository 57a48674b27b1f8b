"""The drag law that the program flies on, written out a second time: ln(Cd Re) by powers of z, z straight in ln(1 + Re/4) from -1 at
rest to 1 at Re = 10^5.25, above which Cd is constant. What it is near to is `clift_1978.py`."""

import math

from .clift_1978 import GREATEST_RE

POWERS = (6.013669574579489, 4.171672605070933, 1.4770189247163512, -0.5228019734920846,
          3.3127916991127586, 1.462945877513082, -10.517257258232394, -0.3520198416996917,
          11.189078948397714, -2.228183265752921, -4.194533875830999, 1.571100780755656)  # fmt: skip
_WHOLE = math.log1p(GREATEST_RE / 4.0)


def law_cd_re(re):
    """Cd Re at one Reynolds number."""
    z = 2.0 * math.log1p(min(re, GREATEST_RE) / 4.0) / _WHOLE - 1.0
    return math.exp(math.fsum(c * z**k for k, c in enumerate(POWERS))) * max(re / GREATEST_RE, 1.0)
