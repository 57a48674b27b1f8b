"""How much a file may hold, and the words for what holds more."""

GREATEST_ROWS = 500_000  # of a table
GREATEST_SAMPLES = 2_000_000  # of bodies, over all frames


def too_long(rows):
    """Why a table of so many rows is not written."""
    return (
        f"The table would have {rows:,} rows; at most {GREATEST_ROWS:,} are written. "
        "Take fewer frames or motions, pour for less time, or take OpenUSD."
    )


def too_many(samples, name=""):
    """Why a file of so many samples is not; name: of the motion that has most of them."""
    most = f", most of them of motion {name}" if name else ""
    return (
        f"The file would have {samples:,} samples{most}; at most {GREATEST_SAMPLES:,} are written. "
        "Take fewer frames or motions, pour for less time, or end sooner."
    )
