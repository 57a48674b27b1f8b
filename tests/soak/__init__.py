"""The server under everything at once, for minutes: a command, not a test."""
