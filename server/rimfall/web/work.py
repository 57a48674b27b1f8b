"""The work behind the API: the bytes of a body and the options of its query in, an answer out. No web. What was worked out lately is kept:
a page asks for the same again with words, or with one motion changed, and waits for what is new alone.

A function per kind of work; `WORK` names them. Each is `work(body, watch, **options)`, raises Refused, and where it can take long
tells watch(done, of) how far it is, unless that is None.
"""

import base64
import os
import traceback
from collections.abc import Callable
from functools import partial

from pydantic_core import to_json

from ..errors import BadInput, Refused, TooMuch, refusal
from ..exports import craft_files, page_drawings
from ..exports import landings as landings_files
from ..exports.brought.cameras import GREATEST_BYTES as GREATEST_CAMERA_BYTES
from ..exports.brought.cameras import About, cameras_in
from ..exports.brought.tracks import GREATEST_BYTES as GREATEST_TRACK_BYTES
from ..exports.brought.tracks import About as AboutTracks
from ..exports.brought.tracks import tracks_in
from ..exports.camera_presets import table as camera_table
from ..exports.formats import FORMATS, listed
from ..exports.one_file import talk_file
from ..exports.options import options_of
from ..exports.recovery import recovered_from
from ..language import speaking, tr
from ..scene import answers, examples, questions
from ..scene.catalogue import catalogue, export_choices
from ..scene.checks import followed
from ..scene.craft import answers as craft_answers
from ..scene.craft import scenes as crafts
from ..scene.craft.asked import asked_of
from ..scene.document import frame_rate
from ..scene.drawn import drawn
from ..scene.feel import answers as feel_answers
from ..scene.feel.answers import feel
from ..scene.questions import GREATEST_SAMPLES, GREATEST_SAMPLES_IN_LISTS
from ..scene.reading import (
    read,
    read_aim,
    read_camera,
    read_craft,
    read_export,
    read_feel,
    read_grid,
    read_landings,
    read_match,
    read_size,
)
from ..scene.shot import aim, camera, grid, landings, match
from ..scene.size import answers as size_answers
from ..scene.work import GREATEST_BYTES, Stopped, Store, bounded
from ..talk import examples as talks
from ..talk.reading import read as read_talk
from .asked import Answer, Asked, NothingThere, refused

KEPT = Store(16_000_000, 1_000)  # by this process, for all that it is asked


def answered(asked: Asked, watch: Callable[[int, int], None] | None, stopped: Callable[[], bool]) -> Answer | None:
    """The answer, a refusal or a fault of ours included; None where it was stopped, which `stopped` says once it is."""
    with speaking(asked.language):
        return _answered(asked, watch, stopped)


def _answered(asked, watch, stopped):
    try:
        work = partial(WORK[asked.name], **asked.options)
        return bounded(work, asked.body, watch, seconds=asked.most_s, stopped=stopped, store=KEPT)
    except Stopped:
        return None
    except Refused as error:
        return refused(error)
    except MemoryError:
        return refused(too_much_memory())
    except Exception:  # noqa: BLE001 - one fault must not end what others are waiting for
        traceback.print_exc()
        say = tr("This could not be worked out, by a fault of the program; the server's terminal says which.")
        return refused(Refused(refusal("server", tr("a fault"), tr("another scene"), say)), 500)


def too_much_memory() -> TooMuch:
    """The refusal of work that takes more memory than one request may."""
    most = f"{GREATEST_BYTES // 1_000_000} MB"
    say = tr(
        "This takes more memory than one request may ({most}); ask for less: fewer motions, fewer drops, a shorter clock "
        "(sampling.duration_s) or fewer frames per second (sampling.fps).",
        most=most,
    )
    return TooMuch(refusal("work", tr("over {most}", most=most), tr("within {most}", most=most), say))


def _fields(*_):
    """Every field's label, unit, range and default; named bodies and liquids; motions ready to add; files to take away."""
    choices = {"formats": listed(), "fields": export_choices()}
    return Answer(to_json(catalogue() | {"export": choices, "cameras": camera_table()}))


def _crafts(_body, _watch, radius_m=None):
    return Answer(to_json({"crafts": crafts.for_scenes(radius_m)}))


def _kind(formats, name, above):
    """The format of a name. Raises NothingThere."""
    if name not in formats:
        raise NothingThere("POST", f"/api/{above}/{name}")
    return formats[name]


def _trace(body, watch, arrays, units, hold, held, follower, parts="all", drawn="0"):
    if (hold is None) != (held is None):
        say = tr("hold and held are given together or not at all.")
        raise BadInput(refusal("held", str(held), tr("given together with hold"), say))
    scene = read(body)
    if hold is not None:
        scene = followed(scene, hold, held, follower)
    f4 = arrays == "f4"
    most = GREATEST_SAMPLES if f4 else GREATEST_SAMPLES_IN_LISTS
    answer = answers.of_trace(questions.trace(scene, most, watch, parts), units, f4)
    return Answer(answer if drawn == "0" else answer[:-1] + b', "drawn": ' + _drawn(scene) + b"}")


def _example(body, watch, units):
    """body: the id of a scene to start from."""
    return _opened(examples.example(body.decode()).encode(), watch, units)


def _opened(document, watch, units):
    """All that a page needs to show a scene: its document, where everything goes, and what its habitats are drawn from."""
    trace = _trace(document, watch, "f4", units, None, None, None).body
    return Answer(
        b'{"document": ' + document + b', "trace": ' + trace + b', "mesh": ' + _mesh(document, None).body + b"}"
    )


def _talk(body, _):
    return Answer(to_json(read_talk(body).as_data()))


def _talk_file(body, watch, packed):
    kind = FORMATS["html"]
    return _as_file(talk_file(read_talk(body), watch), kind, packed, stem="talk")


def _ready_talk(body, watch):
    """body: the id of a talk."""
    return _talk(talks.example(body.decode()), watch)


def _feel(body, _, units):
    return Answer(feel_answers.as_json(feel(read_feel(body)), units))


def _mesh(body, _):
    return Answer(_drawn(read_feel(body)))


def _drawn(scene):
    """What a scene's habitats and its craft are drawn from, as JSON."""
    return to_json(drawn(scene))


def _map(body, _, width, draw, units):
    return Answer(to_json(page_drawings.map_of_limits(read_feel(body), width, draw, units)))


def _plot(body, watch, width, plain, units):
    scene, part = read_export(body)
    options = options_of(part, scene)
    return Answer(
        to_json(page_drawings.plot_of_paths(questions.trace(scene, watch=watch), options, width, plain, units))
    )


def _size(body, _, units):
    return Answer(size_answers.as_json(read_size(body), units))


def _craft(body, _, units, width, drawing_width):
    asked = asked_of(read_craft(body), units)
    answer = craft_answers.of_asked(asked)
    if width is not None:
        answer = page_drawings.with_drawings(
            craft_answers.with_figures(answer), asked, width, drawing_width or width, units
        )
    return Answer(craft_answers.packed(answer))


def _aim(body, watch, arrays, units):
    return Answer(aim.as_json(aim.find(read_aim(body), watch), units, arrays == "f4"))


def _landings(body, watch, arrays, units, width):
    found = landings.find(read_landings(body), watch)
    drawing = None if width is None else page_drawings.plan_of_landings(found, width, units)
    return Answer(landings.as_json(found, units, arrays == "f4", drawing))


def _match(body, _, units):
    return Answer(match.as_json(read_match(body), units))


def _craft_file(body, _, name, units):
    kind = _kind(craft_files.FORMATS, name, "craft")
    asked = asked_of(read_craft(body), units)
    made = craft_files.made(name, asked, craft_answers.of_asked(asked), units)
    return _as_file(made, kind, packed=False, stem="craft")


def _match_grid(body, _):
    return Answer(to_json(grid.of_request(read_grid(body))))


def _landings_file(body, watch, name, units, packed):
    kind = _kind(landings_files.FORMATS, name, "landings")
    return _as_file(kind.make(landings.find(read_landings(body), watch), units), kind, packed, "landings")


def _match_tracks(body, _, **about):
    """body: the path of the file."""
    with open(os.fsdecode(body), "rb") as file:
        content = file.read(GREATEST_TRACK_BYTES + 1)
    return Answer(to_json(tracks_in(content, AboutTracks(**_timed(about)))))


def _timed(about):
    """The same with its frame rate exact."""
    return about | {"fps": frame_rate(about["fps"])}


def _camera(body, _):
    return Answer(to_json(camera.of_request(read_camera(body))))


def _camera_file(body, _, **about):
    """body: the path of the file."""
    with open(os.fsdecode(body), "rb") as file:
        content = file.read(GREATEST_CAMERA_BYTES + 1)
    return Answer(to_json(cameras_in(content, About(**_timed(about)))))


def _export(body, watch, name, packed):
    kind = _kind(FORMATS, name, "export")
    scene, part = read_export(body)
    options = options_of(part, scene)
    return _as_file(kind.write(questions.trace(scene, watch=watch), options), kind, packed)


def _as_file(file, kind, packed, stem="rimfall"):
    """The answer that a file is; packed: as the last line of a stream."""
    if packed:
        return Answer(b'{"file": "' + base64.b64encode(file) + b'"}')
    return Answer(file, kind.media_type, {"content-disposition": f'attachment; filename="{stem}.{kind.ending}"'})


def _recover(body, _):
    """body: the path of the file."""
    back = recovered_from(os.fsdecode(body))
    beside = to_json({"export": back.export, "from": back.format})
    return Answer(b'{"scene": ' + back.scene + b", " + beside[1:])


WORK = {
    "fields": _fields,
    "crafts": _crafts,
    "trace": _trace,
    "example": _example,
    "opened": _opened,
    "talk": _talk,
    "talk_file": _talk_file,
    "ready_talk": _ready_talk,
    "feel": _feel,
    "mesh": _mesh,
    "map": _map,
    "plot": _plot,
    "size": _size,
    "craft": _craft,
    "aim": _aim,
    "landings": _landings,
    "landings_file": _landings_file,
    "craft_file": _craft_file,
    "match": _match,
    "match_grid": _match_grid,
    "match_tracks": _match_tracks,
    "camera": _camera,
    "camera_file": _camera_file,
    "export": _export,
    "recover": _recover,
}
