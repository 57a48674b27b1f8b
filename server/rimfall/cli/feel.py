"""`rimfall feel`: what people would feel, in words and tables beside every published limit, or as JSON; the map as a file."""

from pathlib import Path

from ..errors import BadInput, refusal
from ..exports import limits_sheet
from ..exports.options import read_options
from ..exports.recovery import read_source
from ..exports.writing import write_all
from ..language import tr, tr_later
from ..phrases import OR, in_units, listed
from ..scene import questions
from ..scene.feel import answers as feel_answers
from ..scene.feel.answers import feel
from ..scene.feel.limit_words import passed_by
from ..scene.reading import read_feel
from ..scene.size.wish_words import as_given, three_figures
from . import common
from .common import aligned

DONE = 0
EXAMPLES = ("rimfall feel galley.json --height 1.68 --map limits.svg",)
_MAPS = {".svg": limits_sheet.map_svg, ".pdf": limits_sheet.map_pdf}
_JUST = 1.05  # times a limit, under which the margin says more
_FROM_MEMORY = tr_later("{source} (from memory: look it up before you cite it)")
_BOUNDS = {
    "at_least": tr_later("at least {figure}"),
    "at_most": tr_later("at most {figure}"),
    "optimum": tr_later("optimum {figure}"),
    "observed": tr_later("observed at {figure}"),
    "reached": tr_later("reached {figure}"),
}


_STATES = {
    "inside": tr_later("inside"),
    "at the limit": tr_later("at the limit"),
    "below": tr_later("below"),
    "equal": tr_later("equal"),
    "above": tr_later("above"),
}


def add_to(parser):
    """Add the command's options."""
    parser.add_argument(
        "scene", metavar="SCENE.json", help="a scene document, of which the habitat will do; - reads standard input"
    )
    parser.add_argument("--height", metavar="M", help="how tall the person is, metres, whatever the document says")
    parser.add_argument("--map", metavar="FILE", help="write the map of limits, .svg or .pdf")
    common.add_answer_options(parser)
    parser.set_defaults(run=_feel)


def _feel(chosen):
    scene = read_feel(common.with_height(read_source(chosen.scene), chosen.height, read_feel))
    if chosen.map:
        _write_map(Path(chosen.map), scene)
    felt = feel(scene)
    if chosen.json:
        common.print_json(feel_answers.as_json(felt, chosen.units))
    else:
        common.print_lines(as_text(felt, chosen.units))
    return DONE


def _write_map(path, scene):
    """The map of limits as a file, whole or not at all."""
    if path.suffix.lower() not in _MAPS:
        endings = listed(list(_MAPS), OR)
        say = tr("The map's file was {name}; its name may end in {endings}.", name=path.name, endings=endings)
        raise BadInput(refusal("map", path.name, endings, say))
    still = questions.trace(scene.model_copy(update={"motions": [], "compare": []}))
    write_all({path: _MAPS[path.suffix.lower()](still, read_options({}, still.scene))})


def as_text(felt, units):
    """Everything of an answer that a reader wants, as place 4 of the page has it: words, limits, why spin at all, figures, sources."""
    answer = feel_answers.as_data(felt, units)
    lines = [felt.scene.title or tr("Untitled scene"), answer["says"]["lead"]]
    for one in answer["words"]:
        lines += ["", one["title"], f"  {one['text']}"]
    lines += ["", answer["says"]["summary"], *_limit_lines(felt.limits, answer, units), *_why_lines(answer["why_spin"])]
    lines += ["", tr("What people got used to")]
    lines += [f"  {one['claim']} {one['here']}".rstrip() for one in answer["adaptation"]]
    lines += [*_figure_lines(answer, units), *_level_lines(answer["levels"])]
    lines += [
        "",
        tr("Sources"),
        *_source_lines([*answer["limits"], *answer["why_spin"]["findings"], *answer["adaptation"]]),
        "",
        *answer["assumptions"],
        answer["caution"],
    ]
    return lines


def _why_lines(why):
    """Why spin at all: what a stay makes of it, and every finding, by topic."""
    lines = ["", tr("Why spin at all?"), f"  {why['lead']}"]
    for stay in why["stays"]:
        unknown = tr("Not known: {what}", what=" ".join(stay["not_known"]))
        lines += [f"  {tr(stay['stay']).capitalize()}: {stay['verdict']}", f"    {unknown}"]
    for topic in why["topics"]:
        findings = [one for one in why["findings"] if one["topic"] == topic["name"]]
        lines += [f"  {topic['title']}", *(f"    {_finding_words(one)}" for one in findings)]
    return lines


def _finding_words(one):
    """A finding, how it lies to what is felt here, which way it speaks, and who says it."""
    said_by = f"{one['study']} {one['year'] or ''}".strip()
    return f"{one['claim']} {one['here']}".strip() + f" ({said_by}; {one['speaks']})"


def _source_lines(rows):
    """Every source once; one that was not read for its figures says so."""
    known = {row["source"]: row["known_by"] for row in rows if row["source"]}
    return [f"  {source if known[source] == 'read' else tr(_FROM_MEMORY, source=source)}" for source in known]


def _figure_lines(answer, units):
    lines, group = [], None
    for row in answer["figure_rows"]:
        if row["group"] != group:
            group = row["group"]
            lines += ["", group]
        lines.append([f"  {row['label']}", *_figure(answer["figures"][row["name"]], row["unit"], units)])
    return _in_columns(lines)


def _level_lines(levels):
    return (
        ["", tr("Levels"), *aligned([[f"  {x['name']}", *_figure(x["gravity_g"], "g")] for x in levels])]
        if levels
        else []
    )


def _in_columns(lines):
    """Lines with the rows among them, which are lists, set in columns together."""
    rows = iter(aligned([line for line in lines if isinstance(line, list)]))
    return [next(rows) if isinstance(line, list) else line for line in lines]


def _limit_lines(limits, answer, units):
    lines = []
    for quantity in answer["quantities"]:
        value = tr("no value here")
        if quantity["value"] is not None:
            value = " ".join(_figure(quantity["value"], quantity["unit"], units)).rstrip()
        lines += ["", f"{quantity['label']}, {value}. {quantity['says']}"]
        lines += aligned([_limit_cells(row, units) for row in limits if row.quantity == quantity["name"]], left=3)
    return lines


def _limit_cells(row, units):
    limit, unit = in_units(row.limit, row.unit, units)
    as_shown = as_given(limit) if unit == row.unit else three_figures(limit)
    study = f"{row.study} {row.year or ''}".strip()
    return [
        f"  {row.letter}",
        study,
        tr(_BOUNDS[row.bound], figure=f"{as_shown} {unit}".rstrip()),
        _state_words(row, units),
    ]


def _state_words(row, units):
    """How a row lies to the value here; what is passed by little is not said to be passed one time."""
    if row.state == "none":
        return tr("no value")
    if row.state != "beyond":
        return tr(_STATES[row.state])
    if (row.times or 0.0) < _JUST:
        return tr("beyond by {margin}", margin=passed_by(row, units))
    return tr("beyond, {figure} times", figure=three_figures(row.times))


def _figure(value, unit, units="si"):
    """A figure with three places that count, and its unit, as they are shown; a dash where it has no meaning."""
    if value is None:
        return "–", in_units(0.0, unit, units)[1]
    figure, shown_unit = in_units(value, unit, units)
    return three_figures(figure), shown_unit
