"""The figures the program must reach, measured with their peers in the same run: `python -m tests.benchmark [--json] [--only NAME]`."""
