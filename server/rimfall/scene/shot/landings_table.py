"""The map of landings as a table for a terminal: a row and a column a value, in each place how far the throw comes down, or what stops it."""

from ...language import tr, tr_as, written
from ...phrases import in_units
from ...shots import net
from ...shots.landings import ENDINGS
from .landings_words import value_of


def rows_of(found, units="si"):
    """A heading, and rows of texts, the first of them the columns' values."""
    landings = found.landings
    rows, columns = (net.chosen(one.values) for one in landings.over)
    per_m, unit = in_units(1.0, "m", units)
    far, ended = per_m * landings.in_all_m.reshape(landings.shape), landings.ended.reshape(landings.shape)
    words = _endings()

    def cell(row, column):
        return written(far[row, column], ".2f") if ended[row, column] == 0 else words[ended[row, column]]

    head = ["", *(value_of(landings.over[1], column, units) for column in columns)]
    body = [[value_of(landings.over[0], row, units), *(cell(row, column) for column in columns)] for row in rows]
    return tr("How far spinward of the release it comes down, {unit}:", unit=unit), [head, *body]


def _endings():
    """What stops a throw, in a word, in the order of ENDINGS."""
    told = {
        "landed": tr_as("in a table", "landed"),
        "ceiling": tr_as("in a table", "ceiling"),
        "hub": tr_as("in a table", "hub"),
        "wall": tr_as("in a table", "wall"),
        "never": tr_as("in a table", "never"),
        "edge": tr_as("in a table", "edge"),
    }
    return [told[ending] for ending in ENDINGS]
