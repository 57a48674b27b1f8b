"""`rimfall trace`: where everything in a scene goes, in words and a table, as JSON, and as files."""

from pathlib import Path

from .. import phrases
from ..exports.formats import files_of, format_of, without_rows
from ..exports.options import read_options
from ..exports.recovery import read_source
from ..exports.writing import write_all
from ..language import tr, tr_later, tr_later_as, written
from ..scene import answers, questions
from ..scene.prose import TENSES, of_scene
from ..scene.reading import read
from ..scene.work import bounded_alone
from . import common
from .common import aligned, seconds_of
from .own_cameras import add_camera_options, camera_choices
from .streams import complain

DONE = 0
_FELT = {  # by the ground
    "deck": tr_later("{gravity} on the deck"),
    "floor": tr_later("{gravity} on the floor"),
    "turntable": tr_later("{gravity} on the turntable"),
}
_KIND = {  # of a motion, in brackets after its name
    "drop": tr_later_as("a kind in brackets", "drop"),
    "throw": tr_later_as("a kind in brackets", "throw"),
    "pour": tr_later_as("a kind in brackets", "pour"),
    "roll": tr_later_as("a kind in brackets", "roll"),
    "stand": tr_later_as("a kind in brackets", "stand"),
    "hang": tr_later_as("a kind in brackets", "hang"),
    "jump": tr_later_as("a kind in brackets", "jump"),
    "walk": tr_later_as("a kind in brackets", "walk"),
    "lift": tr_later_as("a kind in brackets", "lift"),
    "let_go": tr_later_as("a kind in brackets", "let_go"),
    "approach": tr_later_as("a kind in brackets", "approach"),
    "tumble": tr_later_as("a kind in brackets", "tumble"),
}
EXAMPLES = (
    "rimfall trace galley.json",
    "rimfall trace galley.json --prose past --units us",
    "rimfall trace galley.json --export flights.csv --export flights.usda --view inertial --fps 24",
)


def add_to(parser):
    """Add the command's options."""
    parser.add_argument("scene", metavar="SCENE.json", help="a scene document; - reads standard input")
    common.add_answer_options(parser)
    parser.add_argument(
        "--prose",
        choices=tuple(TENSES),
        help="print a paragraph to copy into a text instead, rounded and without symbols",
    )
    parser.add_argument(
        "--export",
        metavar="FILE",
        action="append",
        default=[],
        help="write a file, its format from the file extension (.csv, .json, .glb, .usda, .forces.csv, …); may be repeated",
    )
    common.add_max_seconds(parser)
    common.add_export_options(parser)
    add_camera_options(parser)
    parser.set_defaults(run=_trace)


def _trace(chosen):
    scene = read(read_source(chosen.scene))
    options = read_options(common.export_document(chosen) | camera_choices(chosen, scene), scene)
    wanted = {Path(name): format_of(Path(name)) for name in chosen.export}

    def work():
        traced, files = questions.trace(scene), {}
        for path, kind in wanted.items():
            files |= files_of(traced, options, path, kind)
        return files, _told(traced, chosen)

    files, answer = bounded_alone(work, seconds=seconds_of(chosen.max_seconds))
    write_all(files)
    for sentence in without_rows(files):
        complain(f"rimfall: {sentence}")
    (common.print_json if chosen.json else common.print_lines)(answer)
    return DONE


def _told(traced, chosen):
    """The answer as it was asked for: JSON, prose, or words and a table."""
    if chosen.json:
        return answers.of_trace(traced, chosen.units)
    if chosen.prose:
        felt_g = answers.habitat_figures(traced)["felt_g"]
        return [of_scene(traced, felt_g, chosen.units)[chosen.prose]]
    return _as_text(traced, chosen.units)


def _as_text(traced, units):
    """Lines: words for each motion, then a table of its landing or its end."""
    figures = answers.habitat_figures(traced)
    gravity, rim = _gravity(traced.scene.habitat, figures), phrases.speed(figures["rim_speed_m_s"], units)
    if figures["period_s"] is None:
        habitat = tr("{gravity}, rim at {speed}, not turning", gravity=gravity, speed=rim)
    else:
        period = written(figures["period_s"], ".4g")
        habitat = tr("{gravity}, rim at {speed}, one turn in {time} s", gravity=gravity, speed=rim, time=period)
    lines = [traced.scene.title or tr("Untitled scene"), habitat, ""]
    lines += [*_in_words(traced, units), "", *_table(traced)]
    for name, other in traced.others:
        lines += ["", tr("In the habitat {name}:", name=name), *_in_words(other, units), "", *_table(other)]
    return lines


def _gravity(part, figures):
    """What is felt where one stands; and what of it the spin gives, where more than the spin pulls."""
    felt = tr(_FELT[part.GROUND.name], gravity=written(figures["felt_g"], ".4g") + " g")
    if not any(part.habitat().pull_m_s2):
        return felt
    return tr("{felt} ({gravity} outward)", felt=felt, gravity=written(figures["deck_gravity_g"], ".4g") + " g")


def _in_words(traced, units):
    """Each motion in words, and what its answer leaves out."""
    lines = []
    for one in traced.motions:
        lines += [f"{one.motion.name} ({tr(_KIND[one.motion.kind])}): " + " ".join(one.outcome(units))]
        lines += [f"    {said}" for said in one.assumptions(traced.setting)]
    return lines


_COLUMNS = (
    tr_later("motion"),
    tr_later_as("column", "event"),
    tr_later("time s"),
    tr_later("along m"),
    tr_later("height m"),
    tr_later("axial m"),
    tr_later("turns"),
    tr_later("spinward m"),
    tr_later("speed m/s"),
)


def _table(traced):
    """Each event: where, how far from the release in whole turns and by the nearest way beside them, how fast."""
    rows = [[tr(name) for name in _COLUMNS]]
    for one in traced.motions:
        for event, way in zip(one.track.events, one.ways.of(one.track.events), strict=True):
            place = (written(v, ".4f") for v in (event.time_s, event.along_m, event.height_m, event.axial_m))
            moved = f"{way.turns}", written(way.spinward_m, ".4f"), written(event.speed_m_s, ".4f")
            rows.append((one.motion.name, event.kind, *place, *moved))
    return aligned(rows, left=2)
