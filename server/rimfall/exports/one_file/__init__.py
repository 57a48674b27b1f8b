"""A scene or a talk as one HTML file that plays by itself: script, style, fonts and answers in it, and nothing asked of a server or a network."""

from .scene import scene_file
from .talk import talk_file

__all__ = ["scene_file", "talk_file"]
