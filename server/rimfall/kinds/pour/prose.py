"""A pour as prose."""

import math

from ...prose import share
from ..telling import flight
from .words import ALL, NONE, vessel


def told(traced, telling, _thing):
    """Sentences; whoever reads pours."""
    motion, findings = traced.motion, traced.findings
    pours = f"You {telling.verb('pour', 'poured')} the {motion.liquid}"
    if motion.target is None:
        return [f"{pours}.", *flight(traced, telling)]
    caught, cup = findings["caught"], vessel(traced)
    if caught >= ALL:
        return [f"{pours} and all of it {telling.verb('reaches', 'reached')} {cup}."]
    if caught > NONE:
        return [
            f"{pours} and {share(caught)} of it {telling.verb('reaches', 'reached')} {cup}; "
            f"the rest {telling.verb('goes', 'went')} past it."
        ]
    off = findings["off_m"]
    by = "" if off is None else f" by {telling.length(math.hypot(*off))}"
    return [f"{pours} and {telling.verb('miss', 'missed')} {cup}{by}."]
