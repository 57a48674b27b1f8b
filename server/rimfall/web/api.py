"""The API: documents in, answers out. What they mean is in `scene/`."""

import base64
from functools import cache
from typing import Annotated, Literal

from fastapi import APIRouter, HTTPException, Query, Request, Response
from pydantic_core import to_json
from starlette.concurrency import run_in_threadpool

from .. import __version__
from ..errors import BadInput, refusal
from ..exports import FORMATS, listed, page_drawings
from ..exports.camera_presets import table as camera_table
from ..exports.options import options_of
from ..scene import answers, examples, questions
from ..scene.catalogue import catalogue, export_choices
from ..scene.checks import followed
from ..scene.feel import answers as feel_answers
from ..scene.feel.answers import feel
from ..scene.questions import GREATEST_SAMPLES, GREATEST_SAMPLES_IN_LISTS
from ..scene.reading import read, read_export, read_feel, read_size
from ..scene.size import answers as size_answers
from ..shapes.drawn import drawn
from .static import gzipped
from .streaming import streamed

router = APIRouter(prefix="/api")

_MEDIA_TYPES = {f.media_type: {"schema": {"type": "string", "format": "binary"}} for f in FORMATS.values()}
Arrays = Literal["lists", "f4"]
Units = Literal["si", "us"]
Width = Annotated[int, Query(ge=page_drawings.LEAST_PX, le=page_drawings.MOST_PX)]  # of a drawing, px
Hold = Literal["gravity", "rim_speed"]
Follower = Literal["habitat.radius_m", "habitat.spin_rpm"]


@router.get("/health")
def health():
    """Whether the server answers, and its version."""
    return {"ok": True, "program": __version__}


@router.get("/fields")
def fields(request: Request):
    """Every field's label, unit, range and default; named bodies and liquids; motions ready to add; files to take away."""
    return gzipped(request, _fields(), "application/json")


@cache
def _fields():
    """That answer as JSON: it is the same for the program's whole life."""
    return to_json(
        catalogue() | {"export": {"formats": listed(), "fields": export_choices()}, "cameras": camera_table()}
    )


@router.get("/examples")
def all_examples():
    """Scenes to start from."""
    return {"examples": examples.listed()}


@router.get("/examples/{name}")
def one_example(name: str):
    """The document of one."""
    document = examples.example(name)
    if document is None:
        raise HTTPException(404)
    return Response(document, media_type="application/json")


@router.post("/trace")
async def trace(
    request: Request,
    arrays: Arrays = "lists",
    units: Units = "si",
    hold: Hold | None = None,
    held: Annotated[float | None, Query(gt=0, le=1e9, allow_inf_nan=False)] = None,
    follower: Follower = "habitat.spin_rpm",
    stream: Literal["0", "1"] = "0",
):
    """Where everything goes. With `hold`, the follower is first set so that the gravity or rim speed `held` is kept; with
    `stream=1` it comes as lines of JSON that tell how far it is, the answer last."""
    if (hold is None) != (held is None):
        raise BadInput(
            refusal("held", str(held), "given together with hold", "hold and held are given together or not at all.")
        )
    source = await request.body()
    scene = read(source)
    if hold is not None:
        scene = followed(scene, hold, held, follower)
    if stream == "1":
        return streamed(lambda watch: _traced(scene, arrays, units, watch))
    return Response(await run_in_threadpool(_traced, scene, arrays, units), media_type="application/json")


def _traced(scene, arrays, units, watch=None):
    f4 = arrays == "f4"
    most = GREATEST_SAMPLES if f4 else GREATEST_SAMPLES_IN_LISTS
    return answers.of_trace(questions.trace(scene, most, watch), units, f4)


@router.post("/feel")
async def felt(request: Request, units: Units = "si"):
    """What people would feel, beside every published limit; the body is a scene document, or a habitat, air and person alone."""
    scene = read_feel(await request.body())
    answer = await run_in_threadpool(lambda: feel_answers.as_json(feel(scene), units))
    return Response(answer, media_type="application/json")


@router.post("/mesh")
async def mesh(request: Request):
    """What a picture of the habitat is made from, and of those beside it; the body is a scene document, or its habitats alone."""
    scene = read_feel(await request.body())
    habitats = [scene.habitat, *(other.habitat for other in scene.compare)]
    return Response(to_json({"habitats": [drawn(part.habitat()) for part in habitats]}), media_type="application/json")


@router.post("/map")
async def drawn_map(request: Request, width: Width, draw: Annotated[list[str], Query()] = [], units: Units = "si"):  # noqa: B006
    """The map of limits as the page shows it; the body is that of feel. draw: limits on these quantities alone, or "mine"."""
    scene = read_feel(await request.body())
    drawing = await run_in_threadpool(page_drawings.map_of_limits, scene, width, draw, units)
    return Response(to_json(drawing), media_type="application/json")


@router.post("/plot")
async def drawn_plot(request: Request, width: Width, plain: Literal["0", "1"] = "1", units: Units = "si"):
    """Height by distance as the page shows it; the body is that of an export. plain: with the companions under plain gravity."""
    scene, part = read_export(await request.body())
    options = options_of(part, scene)
    drawing = await run_in_threadpool(
        lambda: page_drawings.plot_of_paths(questions.trace(scene), options, width, plain == "1", units)
    )
    return Response(to_json(drawing), media_type="application/json")


@router.post("/size")
async def sized(request: Request, units: Units = "si"):
    """The smallest habitat that meets the wishes, or which of them collide and by how much; the body is {"wishes", "person"}."""
    size_request = read_size(await request.body())
    answer = await run_in_threadpool(size_answers.as_json, size_request, units)
    return Response(answer, media_type="application/json")


@router.post("/export/{name}", response_class=Response, responses={200: {"content": _MEDIA_TYPES}})
async def export(request: Request, name: str, stream: Literal["0", "1"] = "0"):
    """The scene as a file; the body is {"scene": document, "export": choices}. With `stream=1` it comes as lines of JSON that
    tell how far it is, the last {"file": base64}."""
    if name not in FORMATS:
        raise HTTPException(404)
    kind = FORMATS[name]
    scene, part = read_export(await request.body())
    options = options_of(part, scene)
    if stream == "1":
        return streamed(lambda watch: _packed(_exported(kind, scene, options, watch)))
    body = await run_in_threadpool(_exported, kind, scene, options)
    attached = {"content-disposition": f'attachment; filename="rimfall.{kind.ending}"'}
    return Response(body, media_type=kind.media_type, headers=attached)


def _exported(kind, scene, options, watch=None):
    return kind.write(questions.trace(scene, watch=watch), options)


def _packed(body):
    return b'{"file": "' + base64.b64encode(body) + b'"}'
