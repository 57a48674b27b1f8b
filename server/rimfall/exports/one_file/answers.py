"""What the stages need of a scene to play it: fields, and where everything goes, arrays packed."""

from dataclasses import replace

from pydantic_core import to_json

from ...scene import answers
from ...scene.catalogue import catalogue
from ...scene.drawn import drawn
from ..camera_presets import table

# of a kind of motion what only serves to edit one
_TO_EDIT = ("own", "new", "fields", "required", "sentence", "rows", "terms", "group", "add", "more")


def fields():
    """As much of the catalogue as what plays needs, plain data."""
    whole = catalogue()
    kinds = {
        name: {key: value for key, value in kind.items() if key not in _TO_EDIT}
        for name, kind in whole["kinds"].items()
    }
    bodies = [{key: body[key] for key in ("name", "diameter_m")} for body in whole["bodies"]]
    return {
        "kinds": kinds,
        "shapes": whole["shapes"],
        "bodies": bodies,
        "cameras": table(),
        "person_height_m": whole["person_height_m"],
    }


def answers_of(traces, words=False, units="si"):
    """JSON bytes of the answers of Traces: `meshes`, as POST /api/mesh gives them, each once; `answers`, each with its `trace` as POST
    /api/trace gives it but for its words, the number of its `mesh`, and with words `short` and `words` of each motion."""
    meshes, parts = {}, []
    for trace in traces:
        mesh = meshes.setdefault(to_json(drawn(trace.scene)), len(meshes))
        told = [{"short": one.in_short(units), "words": one.outcome(units)} for one in trace.motions] if words else []
        answer = answers.of_trace(_paths(trace), units, f4=True)
        parts.append(b'{"mesh": %d, "words": %b, "trace": %b}' % (mesh, to_json(told), answer))
    return b'"meshes": [%b], "answers": [%b]' % (b", ".join(meshes), b", ".join(parts))


def _paths(trace):
    """The same as if paths alone had been asked for."""
    if trace.parts != "all":
        return trace
    return replace(trace, parts="paths", others=[(name, _paths(other)) for name, other in trace.others])
