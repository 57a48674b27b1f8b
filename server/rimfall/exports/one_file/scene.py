"""One scene as a file that plays by itself."""

from pydantic_core import to_json

from ... import __version__
from ...language import tr, tr_later
from ...phrases import caution
from .answers import answers_of, fields
from .page import packed, page_of

ABOUT = tr_later("Motion in a turning habitat, seen from aboard and from outside: one file that plays by itself.")


def scene_file(trace, options):
    """The HTML file of a Trace, bytes; motions that are not taken are in it, and hidden at first. Raises BadInput where the page was not
    built."""
    scene = trace.scene
    hidden = [one.name for one in scene.motions if one.name not in options.motions]
    notes = {
        "program": f"Rimfall {__version__}",
        "title": scene.title,
        "scene": scene.model_dump(mode="json"),
        "caution": caution(),
    }
    shown = b'{"fields": %b, "hidden": %b, %b}' % (to_json(fields()), to_json(hidden), answers_of([trace], words=True))
    return page_of(scene.title or tr("Untitled scene"), tr(ABOUT), notes, packed(shown))
