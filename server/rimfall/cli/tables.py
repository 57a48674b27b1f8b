"""Tables of a command's output: columns side by side, as wide as what they hold."""


def aligned(rows, left=1):
    """Lines of a table of texts; the first `left` columns stand to the left, the others to the right."""
    widths = [max(len(row[k]) for row in rows) for k in range(len(rows[0]))] if rows else []
    return [
        "  ".join(
            cell.ljust(width) if k < left else cell.rjust(width)
            for k, (cell, width) in enumerate(zip(row, widths, strict=True))
        ).rstrip()
        for row in rows
    ]
