"""The scene document, the questions asked of it, and the answers."""
