"""What each address takes and gives: bodies, answers, words for parameters. Which parameters there are is read off the routes."""

from dataclasses import dataclass, field
from typing import Any

from ...exports import craft_files, landings
from ...exports.formats import FORMATS
from ...scene import examples
from ...scene.craft.document import Craft
from ...scene.document import Scene
from ...scene.export_part import ExportRequest
from ...scene.feel.answers import FeelRequest
from ...scene.shot.aim_request import AimRequest
from ...scene.shot.camera_request import CameraRequest
from ...scene.shot.grid_request import GridRequest
from ...scene.shot.landings_request import LandingsRequest
from ...scene.shot.match_request import MatchRequest
from ...scene.size.request import SizeRequest
from ...talk import examples as talks
from ...talk.document import Talk
from .bodies import (
    AIMS,
    CAMERA_FILE,
    CAMERAS,
    CRAFTS,
    EXPORTS,
    FILE,
    GRIDS,
    HABITATS,
    LANDINGS,
    SCENES,
    TALKS,
    TRACK_FILE,
    TRACKS,
    WISHES,
)
from .cameras import Cameras
from .craft import Coped, CraftExamples
from .drawings import Map, Mesh, Plot
from .fields import Examples, Fields, Health, Opened
from .files import FILES, NAMED, ExportedFile, Recovered, exported, files_said
from .match import DeckGrid, Match, Tracks
from .people import Feel, Size
from .shots import Aim, Landings
from .talks import GivenTalk, ReadyTalks
from .traces import Trace

_UNITS = "Units of sentences: metric, or US customary. Numbers are SI either way."
_STREAM = (
    "1: the answer comes as lines of JSON that tell how far the work is, the last of them the answer or the refusal."
)
_WIDTH = "Width of the drawing, CSS pixels."


@dataclass(frozen=True)
class Operation:
    """What an address takes and gives.

    answer: a model. body: a model of JSON with examples by name, or None; file: the media types of a body that is none. words: of its
    parameters; values: what `name` in its path may be; streams: whether it can answer in lines, the last one an `answer`; content:
    media types of its answer, where that is not the model as JSON; headers: of its answer.
    """

    id: str
    answer: Any
    body: Any = None
    examples: dict = field(default_factory=dict)
    file: dict | None = None
    words: dict = field(default_factory=dict)
    values: tuple = ()
    streams: bool = False
    content: dict | None = None
    headers: dict = field(default_factory=dict)


_HOLD = {
    "hold": "What is kept while the dial that is not the follower moves, given together with `held`: the spin's own gravity at the "
    "deck, gravity as it is felt there (with thrust or the room's gravity in it), or the rim speed.",
    "held": "The gravity, m/s², or rim speed, m/s, that is kept.",
    "follower": "The field that is set so that it is kept: radius_m or spin_rpm of habitat, or of one of those it is compared with.",
}
_ARRAYS = {"arrays": "Arrays as lists of numbers, or packed as 32-bit floats."}
_DRAW = {"draw": "Draw the limits on these quantities alone, `mine` for your own; all where left out."}
_PLAIN = {"plain": "1: with the companions under plain gravity."}
_OF_A_DRAWING = {"width": "Width of a drawing of the net, CSS pixels; without it there is none."}
_FITTING = {
    "radius_m": "Radius of the habitat, m, that all their lengths are made to fit, without those of which one would be out of bounds; without it "
    "they are as they were made."
}
_OF_A_CRAFT = {
    "width": "Width of the drawings, CSS pixels; without it there are none, and no rows of figures.",
    "drawing_width": "Width of the drawing of the craft, where that is another.",
}
_OF_A_FILE = {
    "name": "What the camera is called; its own name where it is left out.",
    "view": "Whether it rides with the deck or stands outside the turning.",
    "origin": "Where the file has its origin: on the axis, or on the deck under the reference line.",
    "radius_m": "Radius of the habitat, m: for an origin on the deck, for places aboard, and for `match`.",
    "fps": "Frames per second of a table's frames.",
    "first_frame": "The frame of a table, or the time code of OpenUSD, that is time 0; that with which it begins where it is left out.",
    "up": "The axis of a table that is up; other files say it.",
    "aspect": "Width to height of the picture, where the file does not say it.",
}
_OF_A_TRACK = {
    "view": "Whether points are in axes that turn with the deck or stand still; as the file says, or turning, where it is left out.",
    "origin": "Where points have their origin: on the axis (also where it is left out), or on the deck under the reference line.",
    "up": "The axis of a table's points that is up; other files say it.",
    "fps": "Frames per second of a table's frames.",
}
_PARTS = {
    "parts": "What is worked out: all; paths, which leaves out words and why it drifts; own_paths, the other habitats besides.",
    "drawn": "1: the answer has `drawn`, what `/api/mesh` answers.",
}
_SOON = {"soon": "1: something is asked for in a moment, so a worker is made ready."}
_U, _W, _S = {"units": _UNITS}, {"width": _WIDTH}, {"stream": _STREAM}

OPERATIONS = {
    ("/api/health", "get"): Operation("health", Health, words=_SOON),
    ("/api/fields", "get"): Operation("fields", Fields),
    ("/api/examples", "get"): Operation("examples", Examples, words=_U),
    ("/api/examples/{name}", "get"): Operation("example", Scene, words={"name": "Its id."}, values=tuple(examples.SAY)),
    ("/api/examples/{name}/opened", "get"): Operation(
        "opened_example", Opened, words={"name": "Its id."} | _U, values=tuple(examples.SAY)
    ),
    ("/api/talks", "get"): Operation("talks", ReadyTalks),
    ("/api/talks/{name}", "get"): Operation("ready_talk", GivenTalk, words={"name": "Its id."}, values=talks.NAMES),
    ("/api/talk", "post"): Operation("talk", GivenTalk, Talk, TALKS),
    ("/api/talk/file", "post"): Operation(
        "talk_file",
        ExportedFile,
        Talk,
        TALKS,
        words=_S,
        streams=True,
        content=exported({"html": FORMATS["html"]}),
        headers=NAMED,
    ),
    ("/api/trace", "post"): Operation(
        "trace", Trace, Scene, SCENES, words=_ARRAYS | _U | _HOLD | _S | _PARTS, streams=True
    ),
    ("/api/feel", "post"): Operation("feel", Feel, FeelRequest, HABITATS, words=_U),
    ("/api/size", "post"): Operation("size", Size, SizeRequest, WISHES, words=_U),
    ("/api/crafts", "get"): Operation("crafts", CraftExamples, words=_FITTING),
    ("/api/craft", "post"): Operation("craft", Coped, Craft, CRAFTS, words=_U | _OF_A_CRAFT),
    ("/api/craft/{name}", "post"): Operation(
        "craft_file",
        ExportedFile,
        Craft,
        CRAFTS,
        words=_U | {"name": f"Which file, and its media type. {files_said(craft_files.FORMATS)}."},
        values=tuple(craft_files.FORMATS),
        content=exported(craft_files.FORMATS),
        headers=NAMED,
    ),
    ("/api/aim", "post"): Operation("aim", Aim, AimRequest, AIMS, words=_ARRAYS | _U),
    ("/api/landings", "post"): Operation(
        "landings", Landings, LandingsRequest, LANDINGS, words=_ARRAYS | _U | _OF_A_DRAWING | _S, streams=True
    ),
    ("/api/match", "post"): Operation("match", Match, MatchRequest, TRACKS, words=_U),
    ("/api/match/grid", "post"): Operation("match_grid", DeckGrid, GridRequest, GRIDS),
    ("/api/match/tracks", "post"): Operation("match_tracks", Tracks, file=TRACK_FILE, words=_OF_A_TRACK),
    ("/api/landings/{name}", "post"): Operation(
        "landings_file",
        ExportedFile,
        LandingsRequest,
        LANDINGS,
        words=_U | _S | {"name": f"Which file, and its media type. {files_said(landings.FORMATS)}."},
        values=tuple(landings.FORMATS),
        streams=True,
        content=exported(landings.FORMATS),
        headers=NAMED,
    ),
    ("/api/camera", "post"): Operation("camera", Cameras, CameraRequest, CAMERAS),
    ("/api/camera/file", "post"): Operation("camera_file", Cameras, file=CAMERA_FILE, words=_OF_A_FILE),
    ("/api/mesh", "post"): Operation("mesh", Mesh, FeelRequest, HABITATS),
    ("/api/map", "post"): Operation("map", Map, FeelRequest, HABITATS, words=_W | _DRAW | _U),
    ("/api/plot", "post"): Operation("plot", Plot, ExportRequest, EXPORTS, words=_W | _PLAIN | _U),
    ("/api/recover", "post"): Operation("recover", Recovered, file=FILE),
    ("/api/export/{name}", "post"): Operation(
        "export",
        ExportedFile,
        ExportRequest,
        EXPORTS,
        words=_S | {"name": f"Which file, and its media type. {FILES}."},
        values=tuple(FORMATS),
        streams=True,
        content=exported(FORMATS),
        headers=NAMED,
    ),
}
