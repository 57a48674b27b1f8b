"""What a scene is taken away as, and what of that is opened again: `formats.py` has the list."""
