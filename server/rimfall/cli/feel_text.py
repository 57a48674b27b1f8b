"""What people would feel as `rimfall feel` prints it: words, tables of figures and limits, sources and cautions."""

from ..scene.feel import answers as feel_answers
from ..scene.feel.limit_words import passed_by
from ..scene.feel.units import shown
from ..scene.size.phrases import as_given, three_figures
from .tables import aligned

_JUST = 1.05  # times a limit, under which the margin says more
_FROM_MEMORY = "from memory: look it up before you cite it"
_BOUNDS = {
    "at_least": "at least",
    "at_most": "at most",
    "optimum": "optimum",
    "observed": "observed at",
    "reached": "reached",
}


def as_text(felt, units):
    """Everything of an answer that a reader wants: words, figures, limits with their sources, cautions."""
    told = feel_answers.as_data(felt, units)
    lines = [felt.scene.title or "Untitled scene", told["says"]["lead"], told["says"]["summary"]]
    lines += [*_figure_lines(told, units), *_level_lines(told["levels"]), *_limit_lines(felt.limits, told, units)]
    lines += ["", "What people got used to"]
    lines += [f"  {one['claim']} {one['here']}".rstrip() for one in told["adaptation"]]
    for one in told["words"]:
        lines += ["", one["title"], f"  {one['text']}"]
    lines += [
        "",
        "Sources",
        *_source_lines([*told["limits"], *told["adaptation"]]),
        "",
        *told["assumptions"],
        told["caution"],
    ]
    return lines


def _source_lines(rows):
    """Every source once; one that was not read for its figures says so."""
    known = {row["source"]: row["known_by"] for row in rows if row["source"]}
    return [f"  {source}{'' if known[source] == 'read' else f' ({_FROM_MEMORY})'}" for source in known]


def _figure_lines(told, units):
    lines, group = [], None
    for row in told["figure_rows"]:
        if row["group"] != group:
            group = row["group"]
            lines += ["", group]
        lines.append([f"  {row['label']}", *_figure(told["figures"][row["name"]], row["unit"], units)])
    return _in_columns(lines)


def _level_lines(levels):
    return (
        ["", "Levels", *aligned([[f"  {x['name']}", *_figure(x["gravity_g"], "g")] for x in levels])] if levels else []
    )


def _in_columns(lines):
    """Lines with the rows among them, which are lists, set in columns together."""
    rows = iter(aligned([line for line in lines if isinstance(line, list)]))
    return [next(rows) if isinstance(line, list) else line for line in lines]


def _limit_lines(limits, told, units):
    lines = []
    for quantity in told["quantities"]:
        value = ", no value here"
        if quantity["value"] is not None:
            value = f", {' '.join(_figure(quantity['value'], quantity['unit'], units))}".rstrip()
        lines += ["", f"{quantity['label']}{value}. {quantity['says']}"]
        lines += aligned([_limit_cells(row, units) for row in limits if row.quantity == quantity["name"]], left=3)
    return lines


def _limit_cells(row, units):
    limit, unit = shown(row.limit, row.unit, units)
    as_shown = as_given(limit) if unit == row.unit else three_figures(limit)
    study = f"{row.study} {row.year or ''}".strip()
    return [f"  {row.letter}", study, f"{_BOUNDS[row.bound]} {as_shown} {unit}".rstrip(), _here(row, units)]


def _here(row, units):
    """How a row lies to the value here; what is passed by little is not said to be passed one time."""
    if row.state == "none":
        return "no value"
    if row.state != "beyond":
        return row.state
    if (row.times or 0.0) < _JUST:
        return f"beyond by {passed_by(row, units)}"
    return f"beyond, {three_figures(row.times)} times"


def _figure(value, unit, units="si"):
    """A figure with three places that count, and its unit, as they are shown; a dash where it has no meaning."""
    if value is None:
        return "–", shown(0.0, unit, units)[1]
    figure, shown_unit = shown(value, unit, units)
    return three_figures(figure), shown_unit
