"""What is stood on, within sentences: other languages bend it there."""

from ..language import tr_as


def on_the(ground):
    """The name of a ground ("deck", "floor", "turntable") after "on the", "from the", "level with the"."""
    return {
        "deck": tr_as("on the", "deck"),
        "floor": tr_as("on the", "floor"),
        "turntable": tr_as("on the", "turntable"),
    }[ground]
