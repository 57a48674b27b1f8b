"""Published values, one file a source: citation, values and units unchanged. `row.py` says what a row is."""
