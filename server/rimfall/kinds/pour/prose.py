"""A pour as prose."""

import math

from ...amounts import share
from ...language import tr, tr_later, tr_later_as
from ..telling import flight
from .words import ALL, NONE, vessel

_LIQUIDS = {
    "water": tr_later_as("object", "the water"),
    "tea": tr_later_as("object", "the tea"),
    "coffee": tr_later_as("object", "the coffee"),
    "olive oil": tr_later_as("object", "the olive oil"),
    "honey": tr_later_as("object", "the honey"),
}
_IT = {  # the word that stands for each
    "water": tr_later_as("stands for the water", "it"),
    "tea": tr_later_as("stands for the tea", "it"),
    "coffee": tr_later_as("stands for the coffee", "it"),
    "olive oil": tr_later_as("stands for the olive oil", "it"),
    "honey": tr_later_as("stands for the honey", "it"),
}


def told(traced, telling, _thing):
    """Sentences; whoever reads pours."""
    motion, findings = traced.motion, traced.findings
    liquid = {"liquid": tr(_LIQUIDS[motion.liquid])}
    if motion.target is None:
        pours = telling.says(tr_later("You pour {liquid}."), tr_later("You poured {liquid}."), **liquid)
        return [pours, *flight(traced, telling, tr(_IT[motion.liquid]))]
    caught, told = findings["caught"], liquid | {"cup": vessel(traced)}
    if caught >= ALL:
        return [
            telling.says(
                tr_later("You pour {liquid} and all of it reaches {cup}."),
                tr_later("You poured {liquid} and all of it reached {cup}."),
                **told,
            )
        ]
    if caught > NONE:
        return [
            telling.says(
                tr_later("You pour {liquid} and {share} of it reaches {cup}; the rest goes past it."),
                tr_later("You poured {liquid} and {share} of it reached {cup}; the rest went past it."),
                share=share(caught),
                **told,
            )
        ]
    off = findings["off_m"]
    if off is None:
        return [
            telling.says(
                tr_later("You pour {liquid} and miss {cup}."), tr_later("You poured {liquid} and missed {cup}."), **told
            )
        ]
    return [
        telling.says(
            tr_later("You pour {liquid} and miss {cup} by {length}."),
            tr_later("You poured {liquid} and missed {cup} by {length}."),
            length=telling.length(math.hypot(*off)),
            **told,
        )
    ]
