"""Rimfall: motion in rotating space habitats, computed, and drawn from both frames at once."""

__version__ = "0.5.0"
