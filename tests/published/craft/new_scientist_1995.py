"""Holst, New Scientist, 14 January 1995, and B. F. Chao, Physics Today 42 (2), 15 (1989), who set an anecdote of a plate right."""

from ..row import Row

ROWS = {
    "RIG-17": Row("wobble rate / spin rate of a thin disc, small tilt", {}, 2.0, "1", 0.001, "exact limit I3/I1"),
}
