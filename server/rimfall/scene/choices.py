"""The words for shapes, solids and kinds of motion; in a document they are as the code has them."""

from ..language import tr, tr_later, tr_later_as

_SHAPES = {
    "cylinder": tr_later("cylinder"),
    "torus": tr_later("torus"),
    "sphere": tr_later("sphere"),
    "pods": tr_later("pods"),
    "tether": tr_later("tether"),
    "tumbler": tr_later("tumbler"),
    "turntable": tr_later("turntable"),
}
_SOLIDS = {
    "point": tr_later("point"),
    "rod": tr_later("rod"),
    "ring": tr_later("ring"),
    "disc": tr_later("disc"),
    "cylinder": tr_later("cylinder"),
    "cylinder_shell": tr_later("cylinder shell"),
    "box": tr_later("box"),
    "sphere": tr_later("sphere"),
    "sphere_shell": tr_later("sphere shell"),
    "torus": tr_later("torus"),
    "torus_shell": tr_later("torus shell"),
    "cone": tr_later("cone"),
}
_KINDS = {
    "drop": tr_later_as("kind of motion", "Drop"),
    "throw": tr_later_as("kind of motion", "Throw"),
    "pour": tr_later_as("kind of motion", "Pour"),
    "roll": tr_later_as("kind of motion", "Roll"),
    "stand": tr_later_as("kind of motion", "Stand"),
    "hang": tr_later_as("kind of motion", "Hang"),
    "jump": tr_later_as("kind of motion", "Jump"),
    "walk": tr_later_as("kind of motion", "Walk"),
    "lift": tr_later_as("kind of motion", "Lift"),
    "let_go": tr_later_as("kind of motion", "Let go"),
    "approach": tr_later_as("kind of motion", "Approach"),
    "tumble": tr_later_as("kind of motion", "Tumble"),
}


def shape_words(shape):
    """What a shape of habitat is called."""
    return tr(_SHAPES[shape])


def solid_words(solid):
    """What a solid is called."""
    return tr(_SOLIDS[solid])


def kind_words(kind):
    """What a kind of motion is called, as a label."""
    return tr(_KINDS[kind])
