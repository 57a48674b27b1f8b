"""Harris, Herpers, Hofhammer & Jenkin, How much gravity is needed to establish the perceptual upright?, PLOS ONE (2014).

Abstract, doi 10.1371/journal.pone.0106207.
"""

from .row import Row

ROWS = {
    "HUM-31": Row("level with 50 % influence on perceived upright", {}, 0.15, "g0", 0.005, "as stated"),
}
