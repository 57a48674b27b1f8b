"""The commands: documents in; words and a table, or JSON, out."""
