"""The habitat's meshes in the colours of the page's stages, and the ramps of a scene beside them.

All in the rotating frame's axes, metres; `shapes/mesh.py` says how a mesh is made. What has no edges in the document gets some
there: an open cylinder is a few times its radius wide, a craft's floors end at their rectangles and a turntable is a thin plate.
"""

from ..shapes import mesh
from .palette import linear
from .sampled_scene import ColouredMesh

# colours of the page's stages
COLOURS = {
    mesh.DECK: "#51514D",
    mesh.CEILING: "#A8ACA2",
    mesh.WALL: "#7E8886",
    mesh.HUB: "#8A9290",
    mesh.MARK: "#B9B5A6",
}


def meshes(habitat):
    """The parts of a habitat as a list of ColouredMesh, the arrow that points spinward last."""
    return [_coloured(part) for part in habitat.meshes()]


def ramps(trace, name_of):
    """The ramps of a trace's rolls as a list of ColouredMesh, seen from both sides; name_of: a motion's number -> its ramp's name."""
    corners = [(i, traced.plan.ramp_m) for i, traced in enumerate(trace.motions) if traced.plan.ramp_m is not None]
    return [_coloured(mesh.quad(name_of(i), mesh.HUB, corner, both_sides=True)) for i, corner in corners]


def _coloured(part):
    return ColouredMesh(
        part.name,
        part.position_m,
        part.faces,
        part.normal,
        part.both_sides,
        linear(COLOURS[part.material]),
        part.material,
    )
