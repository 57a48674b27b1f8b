"""The API: documents in, answers out. What they mean is in `scene/`."""

from typing import Annotated, Literal

from fastapi import APIRouter, HTTPException, Query, Request, Response
from starlette.concurrency import run_in_threadpool

from .. import __version__
from ..errors import BadInput, refusal
from ..exports import FORMATS
from ..scene import answers, examples, questions
from ..scene.catalogue import catalogue
from ..scene.reading import read, read_export
from .streaming import streamed

router = APIRouter(prefix="/api")

Arrays = Literal["lists", "f4"]
Units = Literal["si", "us"]
Hold = Literal["gravity", "rim_speed"]
Follower = Literal["habitat.radius_m", "habitat.spin_rpm"]


@router.get("/health")
def health():
    """Whether the server answers, and its version."""
    return {"ok": True, "program": __version__}


@router.get("/fields")
def fields():
    """Every field's label, unit, range and default; named bodies and liquids; motions ready to add."""
    return catalogue()


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
        scene = questions.followed(scene, hold, held, follower)
    if stream == "1":
        return streamed(lambda watch: _traced(scene, arrays, units, watch))
    return Response(await run_in_threadpool(_traced, scene, arrays, units), media_type="application/json")


def _traced(scene, arrays, units, watch=None):
    f4 = arrays == "f4"
    most = questions.GREATEST_SAMPLES if f4 else questions.GREATEST_SAMPLES_IN_LISTS
    return answers.of_trace(questions.trace(scene, most, watch), units, f4)


@router.post("/export/{name}")
async def export(request: Request, name: str):
    """The scene as a file; the body is {"scene": document}."""
    if name not in FORMATS:
        raise HTTPException(404)
    media_type, ending, write = FORMATS[name]
    source = await request.body()
    body = await run_in_threadpool(lambda: write(questions.trace(read_export(source))))
    return Response(
        body, media_type=media_type, headers={"content-disposition": f'attachment; filename="rimfall.{ending}"'}
    )
