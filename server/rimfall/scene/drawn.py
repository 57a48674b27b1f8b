"""What a scene's habitats and its craft are drawn from."""

from ..shapes.drawn import drawn as drawn_shape
from .craft.drawn import drawn as drawn_craft


def drawn(scene):
    """Plain data of a Scene: `habitats`, its own and then those set beside it; `craft`, where it carries one."""
    habitats = [scene.habitat, *(other.habitat for other in scene.compare)]
    craft = drawn_craft(scene)
    return {"habitats": [drawn_shape(part.habitat()) for part in habitats]} | (
        {} if craft is None else {"craft": craft}
    )
