"""How short and how long anything of a craft may be, metres."""

LEAST_M, GREATEST_M = 0.001, 100_000
