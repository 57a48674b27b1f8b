"""Is this shot right? What is asked of throws and of paths, and what comes back in words and as JSON."""
