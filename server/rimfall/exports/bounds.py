"""How much a file may hold, and the words for what holds more."""

from ..language import tr, written

GREATEST_ROWS = 500_000  # of a table
GREATEST_SAMPLES = 2_000_000  # of bodies, over all frames


def too_long(rows):
    """Why a table of so many rows is not written."""
    return tr(
        "The table would have {rows} rows; at most {most} are written. Take fewer frames or motions, pour for less time, or take OpenUSD.",
        rows=written(rows, ","),
        most=written(GREATEST_ROWS, ","),
    )


def too_many(samples, name=""):
    """Why a file of so many samples is not; name: of the motion that has most of them."""
    figures = {"samples": written(samples, ","), "most": written(GREATEST_SAMPLES, ",")}
    if name:
        would = tr(
            "The file would have {samples} samples, most of them of motion {name}; at most {most} are written.",
            name=name,
            **figures,
        )
    else:
        would = tr("The file would have {samples} samples; at most {most} are written.", **figures)
    return f"{would} {tr('Take fewer frames or motions, pour for less time, or end sooner.')}"
