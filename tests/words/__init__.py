"""Every number in the words of an answer, with its unit and its side, against the answer's arrays (`python -m tests.words`)."""
