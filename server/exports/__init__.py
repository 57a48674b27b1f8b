"""What a scene can be taken away as. FORMATS: name -> (media type, file ending, function of a Trace -> bytes)."""

from . import csv

FORMATS = {
    "csv": ("text/csv; charset=utf-8", "csv", csv.table),
    "csv-notes": ("application/json", "json", csv.notes),
}
