"""From bytes or text to a Scene that stands: parsed, checked, every default filled in."""

import json
import re
from contextlib import contextmanager
from dataclasses import replace

from pydantic import ValidationError

from ..errors import BadInput, TooMuch, refusal, shown
from ..fields import Strict
from ..language import tr, written
from . import validation_errors
from .bounds import GREATEST_DOCUMENT_BYTES
from .checks import check
from .craft.asked import asked_of
from .craft.checks import check as check_craft
from .craft.checks import of_scene as craft_of_scene
from .craft.document import GREATEST_M, LEAST_M, Craft
from .craft.fit import refitted
from .document import Scene
from .export_part import ExportPart, ExportRequest
from .feel.answers import FeelRequest
from .shot.aim_request import AimRequest
from .shot.camera_request import CameraRequest
from .shot.grid_request import GridRequest
from .shot.landings_request import LandingsRequest
from .shot.match_request import MatchRequest
from .size.request import SizeRequest
from .tumbling import tumbler

_ROW = re.compile(r"(?:track|keys\.rows|picture\.points|(picture\.camera|camera\.rows))\.(\d+)\.")


class _Choices(Strict):
    """An export's choices under the name that its refusals carry."""

    export: ExportPart


def read(source):
    """A Scene from the bytes (or text) of a document. Raises BadInput or TooMuch, naming every field at fault."""
    return check(named(parsed(Scene, source)))


def read_export(source):
    """The Scene and the ExportPart of an export's request, from its bytes. Raises as `read`."""
    request = parsed(ExportRequest, source)
    return check(named(request.scene)), request.export


def read_feel(source):
    """The Scene of a question about people, from its bytes: any scene document, or a habitat alone. Raises as `read`."""
    return check(named(parsed(FeelRequest, source)))


def read_size(source):
    """A SizeRequest from the bytes (or text) of its document. Raises as `read`."""
    return parsed(SizeRequest, source)


def read_craft(source):
    """A Craft that stands, from the bytes (or text) of its document, or of a scene that carries one. Raises as `read`."""
    return craft_of_scene(read(source)) if _is_scene(source) else check_craft(parsed(Craft, source))


def read_refitted(source, radius_m=None, spin_rpm=None):
    """The same made to fit another radius, turning at another spin, or both, with its own document as it may be kept. Raises as `read`."""
    craft, document = read_craft(source), json.loads(as_utf8(source))
    if "rimfall" in document:
        document = {"rimfall_craft": 1} | document["craft"] | {"radius_m": craft.radius_m, "spin_rpm": craft.spin_rpm}
    if radius_m is None and spin_rpm is None:
        return craft, document
    if radius_m is not None and not LEAST_M <= radius_m <= GREATEST_M:
        raise BadInput(validation_errors.wrong("radius_m", radius_m))
    rim_m = asked_of(craft).rim_m
    if radius_m is not None and not rim_m:
        say = tr("The craft cannot be made to fit another radius: all that turns is on its axis.")
        raise BadInput(refusal("radius_m", radius_m, tr("left out"), say))
    document = refitted(document, rim_m, radius_m, spin_rpm)
    return read_craft(json.dumps(document)), document


def _is_scene(source):
    """Whether a document is a scene's: it says so, and is no craft's."""
    try:
        document = json.loads(as_utf8(source))
    except (ValueError, RecursionError):
        return False
    return isinstance(document, dict) and "rimfall" in document


def read_aim(source):
    """An AimRequest from the bytes (or text) of its document. Raises as `read`."""
    return _left_alone(_of_scene(parsed(AimRequest, source)))


def read_landings(source):
    """A LandingsRequest from the bytes (or text) of its document. Raises as `read`."""
    return _left_alone(_of_scene(parsed(LandingsRequest, source)))


def read_match(source):
    """A MatchRequest from the bytes (or text) of its document. Raises as `read`, naming the row of a path that is wrong."""
    with _rows_named():
        return parsed(MatchRequest, source)


@contextmanager
def _rows_named():
    """Refusals from inside name the row of a path or of a camera that is wrong."""
    try:
        yield
    except BadInput as refused:
        raise BadInput(*(_of_row(one) for one in refused.refusals)) from None


def _of_row(one):
    row = _ROW.match(one.field)
    if row is None:
        return one
    told = {"number": written(int(row[2]) + 1), "refusal": one.say}
    if row[1]:
        return replace(one, say=tr("Row {number} of the camera: {refusal}", **told))
    return replace(one, say=tr("Row {number} of the path: {refusal}", **told))


def read_grid(source: bytes | str) -> GridRequest:
    """A GridRequest from the bytes (or text) of its document. Raises as `read`."""
    return parsed(GridRequest, source)


def read_camera(source):
    """A CameraRequest from the bytes (or text) of its document. Raises as `read`."""
    with _rows_named():
        request = parsed(CameraRequest, source)
    return _of_scene(request)


def _of_scene(request):
    """A request whose scene stands. Raises as `read`."""
    return request.model_copy(update={"scene": check(named(request.scene))})


def _left_alone(request):
    """A request whose scene does not tumble. Raises BadInput."""
    number = tumbler(request.scene)
    if number is None:
        return request
    motion = request.scene.motions[number]
    say = tr(
        "Where to aim and where throws land is not worked out in a craft that tumbles: take {motion} out of the scene to ask.",
        motion=motion.name,
    )
    may_be = tr("another kind of motion: nothing is aimed in a craft that tumbles")
    raise BadInput(refusal(f"scene.motions.{number}.kind", motion.kind, may_be, say))


def read_choices(source):
    """An ExportPart from the bytes (or text) of its document alone. Raises as `read`."""
    return parsed(_Choices, b'{"export": ' + as_utf8(source) + b"}").export


def parsed(model, source, rows=None):
    """A document of a model from its bytes (or text). rows: of fields that the catalogue does not have, by path. Raises as `read`."""
    source = source.encode("utf-8", "surrogatepass") if isinstance(source, str) else source
    if len(source) > GREATEST_DOCUMENT_BYTES:
        most = written(GREATEST_DOCUMENT_BYTES, ",")
        say = tr("The document has {count} bytes; it may have {most}.", count=written(len(source), ","), most=most)
        was = tr("{count} bytes", count=len(source))
        raise TooMuch(refusal("document", was, tr("at most {count} bytes", count=most), say))
    source = as_utf8(source)
    try:
        document = model.model_validate_json(source)
    except ValidationError as error:
        raise validation_errors.from_validation(error, source, model, rows) from None
    json.loads(source, object_pairs_hook=_refuse_twins)
    return document


def _refuse_twins(pairs):
    """Raise BadInput where an object has two members of one name: readers differ in which of them they take (RFC 8259, 4)."""
    names = set()
    for name, _ in pairs:
        if name in names:
            say = tr("Field {field} is there twice in one pair of braces; it must be there once.", field=shown(name))
            raise BadInput(refusal(name, tr("there twice"), tr("there once"), say))
        names.add(name)


def as_json(data):
    """Plain data as the text of a document. Raises BadInput where JSON has no way to write it."""
    try:
        return json.dumps(data)
    except (
        TypeError,
        ValueError,
        RecursionError,
    ) as error:  # an array, a list within itself, a number of too many digits
        say = tr("The document holds what JSON cannot: {what}.", what=error)
        raise BadInput(refusal("document", type(data).__name__, tr("dicts, lists, texts, numbers"), say)) from None


def as_utf8(source):
    """The bytes of a document in UTF-8 without a byte-order mark, whatever an editor saved it in: UTF-8, -16 or -32, told apart by
    where the first zeros are (RFC 4627, 3). What is none of these comes back as it is, to be refused."""
    source = source.encode("utf-8", "surrogatepass") if isinstance(source, str) else source
    encoding = json.detect_encoding(source)
    if encoding == "utf-8":
        return source
    try:
        return source.decode(encoding, "surrogatepass").encode("utf-8", "surrogatepass")
    except UnicodeDecodeError:
        return source


def named(scene):
    """The scene with every motion named; a name left out is its kind and number, made to differ from those given."""
    taken = {m.name for m in scene.motions if m.name is not None}
    motions = []
    for number, motion in enumerate(scene.motions, start=1):
        if motion.name is None:
            name = f"{motion.kind.replace('_', ' ')} {number}"
            while name in taken:
                name += " again"
            taken.add(name)
            motion = motion.model_copy(update={"name": name})
        motions.append(motion)
    return scene.model_copy(update={"motions": motions})
