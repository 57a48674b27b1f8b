"""Many rows of one table in one test: `@each_row(("path", "least"), ROWS)` calls the test with each, and names the rows that fail.

For tables of quick rows that need nothing of their own. What is slow, or writes into a folder, stays a case each by pytest's
parametrize.
"""

import functools
import inspect


def each_row(names, table):
    """A decorator. names: one name, or a tuple of them; table: the rows, tuples of as many values (for one name, the values)."""
    table = [(row,) if isinstance(names, str) else tuple(row) for row in table]
    names = (names,) if isinstance(names, str) else tuple(names)
    if not table:
        raise ValueError("a table without rows tests nothing")
    if odd := [row for row in table if len(row) != len(names)]:
        raise ValueError(f"a row for {names} has as many values: {odd[0]!r}")

    def decorate(test):
        given = inspect.signature(test)
        left = [parameter for name, parameter in given.parameters.items() if name not in names]

        @functools.wraps(test)
        def of_every_row(**fixtures):
            failed = []
            for number, row in enumerate(table):
                here = dict(zip(names, row, strict=True))
                try:
                    test(**fixtures, **here)
                except Exception as error:  # noqa: BLE001 - the other rows are tried too; all that fail are raised below
                    said = ", ".join(f"{name}={value!r}"[:200] for name, value in here.items())
                    error.add_note(f"in row {number}: {said}")
                    failed.append(error)
            if len(failed) == 1:
                raise failed[0]
            if failed:
                raise ExceptionGroup(f"{len(failed)} of {len(table)} rows failed", failed)

        of_every_row.__signature__ = given.replace(parameters=left)
        return of_every_row

    return decorate
