"""How much one may ask for. Who only serves or only speaks must know it, and loads nothing of the work."""

GREATEST_DOCUMENT_BYTES = 1_000_000
GREATEST_BYTES = 250_000_000  # kept by one question of many; with what is only in passing it stays within 300 MB
GREATEST_BYTES_ALONE = 2_000_000_000  # kept by a question that has a process to itself: a command, a notebook
