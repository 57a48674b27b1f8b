"""The API: documents in, answers out. What is asked here is worked out by `work.py`, beside this process."""

from functools import cache
from typing import Annotated, Literal

from fastapi import APIRouter, HTTPException, Query, Request, Response
from pydantic_core import to_json

from .. import __version__
from ..comfort.quantities import QUANTITIES
from ..exports.page_widths import LEAST_PX, MINE, MOST_PX
from ..language import spoken
from ..scene import examples
from ..scene.craft.lengths import GREATEST_M, LEAST_M
from ..talk import examples as talks
from .answering import Worked
from .asked import Asked
from .ready import plain
from .static import gzipped
from .uploads import WorkedFile, path_of

router = APIRouter(prefix="/api")

Arrays = Literal["lists", "f4"]
Units = Literal["si", "us"]
Width = Annotated[int, Query(ge=LEAST_PX, le=MOST_PX)]  # of a drawing, px
Radius = Annotated[float, Query(ge=LEAST_M, le=GREATEST_M)]  # of a habitat
Hold = Literal["gravity", "felt", "rim_speed"]
Follower = Literal[
    "habitat.radius_m",
    "habitat.spin_rpm",
    "compare.0.habitat.radius_m",
    "compare.0.habitat.spin_rpm",
    "compare.1.habitat.radius_m",
    "compare.1.habitat.spin_rpm",
    "compare.2.habitat.radius_m",
    "compare.2.habitat.spin_rpm",
]
Drawn = Literal[(*QUANTITIES, MINE)]
Stream = Literal["0", "1"]
Parts = Literal["all", "paths", "own_paths"]
CameraView = Literal["aboard", "outside"]
CameraOrigin = Literal["axis", "deck"]
UpAxis = Literal["Y", "Z"]


async def _worked(request, what, stream="0", **options):
    """The answer to the request's body: what, of `work.WORK`."""
    state = request.app.state
    as_lines = stream == "1"
    return Worked(state.pool, Asked(what, await request.body(), options, state.max_seconds, tells=as_lines))


async def _ready(request, what, body="", **options):
    """The answer to what is the same for the program's whole life."""
    answer = plain(await request.app.state.ready.answer(what, body, **options), request)
    headers = {"vary": "accept-encoding"} | answer.headers
    return Response(answer.body, answer.status, headers, answer.media_type)


@router.get("/health")
async def health(request: Request, soon: Literal["0", "1"] = "0"):
    """Whether the server answers, and its version. With `soon=1` a worker is made ready: something is asked for in a moment, as a page does
    that has drawn its first picture."""
    if soon == "1":
        request.app.state.pool.warm()
    return {"ok": True, "program": __version__}


@router.get("/fields")
async def fields(request: Request):
    """Every field's label, unit, range and default; named bodies and liquids; motions ready to add; files to take away."""
    return await _ready(request, "fields")


@router.get("/examples")
async def all_examples(request: Request, units: Units = "si"):
    """Scenes to start from, each under its question with its drawing. units: those in which one will be opened."""
    request.app.state.ready.fill(units)
    return gzipped(request, _examples(spoken()), "application/json")


@cache
def _examples(_language):
    """That answer as JSON: it is the same for the program's whole life."""
    return to_json({"examples": examples.listed()})


@router.get("/examples/{name}")
async def one_example(name: str):
    """The document of one."""
    document = examples.example(name)
    if document is None:
        raise HTTPException(404)
    return Response(document, media_type="application/json")


@router.get("/examples/{name}/opened")
async def opened_example(request: Request, name: str, units: Units = "si"):
    """All that a page needs to show one at once: its document, where everything goes (arrays packed), and what its habitats are drawn
    from."""
    if name not in examples.SAY:
        raise HTTPException(404)
    return await _ready(request, "example", name, units=units)


@router.get("/talks")
async def all_talks():
    """Talks ready to give: id, title, what each is about, how many steps it has."""
    return Response(to_json({"talks": talks.listed()}), media_type="application/json")


@router.get("/talks/{name}")
async def one_talk(request: Request, name: str):
    """One of them, every step with its whole scene: a talk's document with nothing left out."""
    if name not in talks.NAMES:
        raise HTTPException(404)
    return await _ready(request, "ready_talk", name)


@router.post("/talk")
async def talk(request: Request):
    """A talk as it can be given, every step with its whole scene and every default filled in; the body is a talk's document."""
    return await _worked(request, "talk")


@router.post("/talk/file")
async def talk_file(request: Request, stream: Stream = "0"):
    """A talk as one HTML file that plays by itself, without a server or a network; the body is a talk's document. With `stream=1` it comes as
    lines of JSON that tell how far it is, the last {"file": base64}."""
    return await _worked(request, "talk_file", stream, packed=stream == "1")


@router.post("/trace")
async def trace(
    request: Request,
    arrays: Arrays = "lists",
    units: Units = "si",
    hold: Hold | None = None,
    held: Annotated[float | None, Query(gt=0, le=1e9, allow_inf_nan=False)] = None,
    follower: Follower = "habitat.spin_rpm",
    stream: Stream = "0",
    parts: Parts = "all",
    drawn: Literal["0", "1"] = "0",
):
    """Where everything goes. With `hold`, the follower is first set so that the gravity or rim speed `held` is kept; with
    `stream=1` it comes as lines of JSON that tell how far it is, the answer last. `parts=paths` leaves out words, prose, assumptions and
    why it drifts, `parts=own_paths` the other habitats besides: for whoever asks again and again, while a dial moves. With `drawn=1` it has
    what a picture of its habitats is made from."""
    options = {
        "arrays": arrays,
        "units": units,
        "hold": hold,
        "held": held,
        "follower": follower,
        "parts": parts,
        "drawn": drawn,
    }
    return await _worked(request, "trace", stream, **options)


@router.post("/feel")
async def felt(request: Request, units: Units = "si"):
    """What people would feel, beside every published limit; the body is a scene document, or a habitat, air and person alone."""
    return await _worked(request, "feel", units=units)


@router.post("/mesh")
async def mesh(request: Request):
    """What a picture of the habitat is made from, and of those beside it; the body is a scene document, or its habitats alone."""
    return await _worked(request, "mesh")


@router.post("/map")
async def drawn_map(request: Request, width: Width, draw: Annotated[list[Drawn], Query()] = [], units: Units = "si"):  # noqa: B006
    """The map of limits as the page shows it; the body is that of feel. draw: limits on these quantities alone, or "mine"."""
    return await _worked(request, "map", width=width, draw=draw, units=units)


@router.post("/plot")
async def drawn_plot(request: Request, width: Width, plain: Literal["0", "1"] = "1", units: Units = "si"):
    """Height by place along the ground as the page shows it; the body is that of an export. plain: with the companions under plain gravity."""
    return await _worked(request, "plot", width=width, plain=plain == "1", units=units)


@router.post("/size")
async def sized(request: Request, units: Units = "si"):
    """The smallest habitat that meets the wishes, or which of them collide and by how much; the body is {"wishes", "person"}."""
    return await _worked(request, "size", units=units)


@router.post("/craft")
async def coped(request: Request, units: Units = "si", width: Width | None = None, drawing_width: Width | None = None):
    """Whether a craft would cope: what spinning up, stopping, turning, moving about, unfolding and breaking its bearing come to; the body is
    a craft's document, or a scene document that carries one. With `width` it has a drawing of the craft, and its figures as rows."""
    return await _worked(request, "craft", units=units, width=width, drawing_width=drawing_width)


@router.post("/craft/{name}")
async def craft_file(request: Request, name: str, units: Units = "si"):
    """The same as a file; the body is a craft's document, or a scene document that carries one."""
    return await _worked(request, "craft_file", name=name, units=units)


@router.get("/crafts")
async def all_crafts(request: Request, radius_m: Radius | None = None):
    """Craft to start from, each as a scene carries it, with the radius and spin of the habitat that it goes with; with `radius_m` their
    lengths are made to fit a habitat of that radius."""
    if radius_m is None:
        return await _ready(request, "crafts")
    return await _worked(request, "crafts", radius_m=radius_m)


@router.post("/aim")
async def aimed(request: Request, arrays: Arrays = "lists", units: Units = "si"):
    """Every throw of a scene that arrives in somebody's hands; the body is {"scene", "motion", "to", "within_m", "fixed", "flight_max_s",
    "back"}."""
    return await _worked(request, "aim", arrays=arrays, units=units)


@router.post("/landings")
async def landed(
    request: Request, arrays: Arrays = "f4", units: Units = "si", width: Width | None = None, stream: Stream = "0"
):
    """Where a throw of a scene can come down, over two of its figures; the body is {"scene", "motion", "over"}. With `width` it has a
    drawing of the net; with `stream=1` it comes as lines of JSON that tell how far it is, the answer last."""
    return await _worked(request, "landings", stream, arrays=arrays, units=units, width=width)


@router.post("/landings/{name}")
async def landings_file(request: Request, name: str, units: Units = "si", stream: Stream = "0"):
    """The same as a file. With `stream=1` it comes as lines of JSON that tell how far it is, the last {"file": base64}."""
    return await _worked(request, "landings_file", stream, name=name, units=units, packed=stream == "1")


@router.post("/match")
async def matched(request: Request, units: Units = "si"):
    """Whether a path that was seen could be, the free path nearest to it, and what speaks against it; the body is a track, pixels of a
    picture, or the keys of an animated object, with what is known of the habitat."""
    return await _worked(request, "match", units=units)


@router.post("/match/grid")
async def match_grid(request: Request):
    """Where the deck's grid lies in a picture through a camera that rides with the deck; the body is {"radius_m", "camera"}."""
    return await _worked(request, "match_grid")


@router.post("/match/tracks")
async def match_tracks(
    request: Request,
    view: Literal["rotating", "inertial"] | None = None,
    origin: CameraOrigin | None = None,
    up: UpAxis | None = None,
    fps: Annotated[float, Query(ge=1, le=240, allow_inf_nan=False)] = 24,
):
    """What moves in a file, each as the body of a match has it; the body is the bytes of a table (CSV), of OpenUSD or of glTF."""
    about = {"view": view, "origin": origin, "up": up, "fps": fps}
    state = request.app.state
    return WorkedFile(state.pool, Asked("match_tracks", await path_of(request), about, state.max_seconds))


@router.post("/camera")
async def camera(request: Request):
    """A camera that is stated by hand, in the one form that stages and files have; the body is {"scene", "camera"}."""
    return await _worked(request, "camera")


@router.post("/camera/file")
async def camera_file(
    request: Request,
    name: Annotated[str | None, Query(min_length=1, max_length=60)] = None,
    view: CameraView = "aboard",
    origin: CameraOrigin = "axis",
    radius_m: Annotated[float | None, Query(ge=0.1, le=100_000, allow_inf_nan=False)] = None,
    fps: Annotated[float, Query(ge=1, le=240, allow_inf_nan=False)] = 24,
    first_frame: Annotated[float | None, Query(ge=-1e6, le=1e6, allow_inf_nan=False)] = None,
    up: UpAxis = "Y",
    aspect: Annotated[float, Query(ge=0.05, le=20, allow_inf_nan=False)] = 16 / 9,
):
    """The cameras of a file, in the same form; the body is the bytes of a table (CSV), of OpenUSD or of glTF."""
    about = {"name": name, "view": view, "origin": origin, "radius_m": radius_m, "first_frame": first_frame}
    about |= {"fps": fps, "up": up, "aspect": aspect}
    state = request.app.state
    return WorkedFile(state.pool, Asked("camera_file", await path_of(request), about, state.max_seconds))


@router.post("/recover")
async def recover(request: Request):
    """The scene out of a file that Rimfall wrote; the body is the file's bytes. {"scene": document, "export": the choices it was made
    with, or null, "from": its format}."""
    state = request.app.state
    return WorkedFile(state.pool, Asked("recover", await path_of(request), {}, state.max_seconds))


@router.post("/export/{name}")
async def export(request: Request, name: str, stream: Stream = "0"):
    """The scene as a file; the body is {"scene": document, "export": choices}. With `stream=1` it comes as lines of JSON that
    tell how far it is, the last {"file": base64}."""
    return await _worked(request, "export", stream, name=name, packed=stream == "1")
