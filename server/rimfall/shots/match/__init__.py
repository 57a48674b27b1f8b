"""Could this path be? A path that was seen, held against the free flight of every habitat: the nearest, how sure, and what speaks against it."""
