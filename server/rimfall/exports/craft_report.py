"""A craft's answer as pages to print: its drawing, every question with its sentences, what is better seen, and what was left out.

Ink on A4; millimetres, y downward.
"""

from ..language import tr, tr_later
from ..phrases import caution
from ..scene.craft.answers import FINDINGS
from .craft_drawings import charts
from .craft_views import chart as views_chart
from .drawing import Drawing, Text, moved
from .labels import fitted, wrapped
from .palette import SOFT

PAGE_MM = (210.0, 297.0)
_MARGIN_MM, _FOOT_MM = 15.0, 20.0
WIDTH_MM = PAGE_MM[0] - 2 * _MARGIN_MM
_TITLE_MM, _HEAD_MM, _TEXT_MM, _SMALL_MM = 6.0, 4.4, 3.5, 2.7
_LEADING = 1.35
_CHART_MM, _OVER_CHART_MM = 110.0, 1.5
_VIEWS_MM = 100.0
_SPARE = 0.95  # of the width, for words: a reader's own face may be wider
_UNTITLED = tr_later("A craft without a title")


class _Pages:
    """Pages that fill from the top: what does not fit goes on the next."""

    def __init__(self):
        self.pages, self.down = [[]], _MARGIN_MM

    def room(self, high_mm):
        """Go on to the next page where there is not so much room left on this one."""
        if self.down + high_mm > PAGE_MM[1] - _FOOT_MM and self.pages[-1]:
            self.pages.append([])
            self.down = _MARGIN_MM

    def rows(self, text, size, weight=400):
        return wrapped(text, _SPARE * WIDTH_MM, size, weight)

    def words(self, text, size, weight=400, italic=False, colour=None, after=0.0, lines=1):
        """A paragraph; lines: how many of it, and of what follows, stay together."""
        step = _LEADING * size
        rows = self.rows(text, size, weight)
        self.room(step * lines)
        for row in rows:
            self.room(step)
            self.down += step
            ink = {} if colour is None else {"colour": colour}
            self.pages[-1].append(Text(_MARGIN_MM, self.down, row, size, weight=weight, italic=italic, **ink))
        self.down += after

    def items(self, items, high_mm, after=0.0):
        self.room(high_mm)
        self.pages[-1] += moved(items, _MARGIN_MM, self.down)
        self.down += high_mm + after


def sheets(asked, answer, units="si"):
    """The pages of an answer about a craft (`scene.craft.asked.Asked`), as Drawings of PAGE_MM."""
    pages, title = _Pages(), asked.craft.title or tr(_UNTITLED)
    pages.words(fitted(title, WIDTH_MM, _TITLE_MM, 600), _TITLE_MM, 600, after=3.0)
    _, items, high_mm = views_chart(asked, WIDTH_MM, _VIEWS_MM, units)
    pages.items(items, high_mm, after=4.0)
    drawn, taken = charts(answer, _CHART_MM, units), []
    for name in FINDINGS:
        finding = answer.get(name)
        if finding is None:
            continue
        _finding(pages, finding, drawn.get(name))
        taken += [one for one in finding["assumptions"] if one not in taken]
    pages.words(tr("What this rests on, and leaves out"), _HEAD_MM, 600, after=1.0, lines=3)
    for one in taken:
        pages.words(one, _SMALL_MM, colour=SOFT)
    document = asked.craft.model_dump_json()
    return [
        Drawing(*PAGE_MM, title, (*items, *_foot(number, len(pages.pages))), document)
        for number, items in enumerate(pages.pages, start=1)
    ]


def _finding(pages, finding, chart):
    says = " ".join(finding["says"])
    # a short answer stands on one page
    pages.room(_LEADING * (_HEAD_MM + _TEXT_MM * len(pages.rows(says, _TEXT_MM))) + 1.0)
    pages.words(finding["question"], _HEAD_MM, 600, after=1.0, lines=3)
    pages.words(says, _TEXT_MM, after=1.5)
    if chart is not None:
        pages.down += _OVER_CHART_MM
        pages.room(chart.height_mm + 3 * _SMALL_MM)
        pages.items(chart.items, chart.height_mm, after=0.5)
        pages.words(chart.says, _SMALL_MM, colour=SOFT, after=1.5)
    pages.down += 3.0


def _foot(number, count):
    down = PAGE_MM[1] - 11.0
    rows = wrapped(caution(), WIDTH_MM, _SMALL_MM)
    for over, row in enumerate(reversed(rows)):
        yield Text(_MARGIN_MM, down - over * _LEADING * _SMALL_MM, row, _SMALL_MM, italic=True, colour=SOFT)
    page = tr("{number} of {count}", number=number, count=count)
    yield Text(PAGE_MM[0] - _MARGIN_MM, down + 1.5 * _SMALL_MM, page, _SMALL_MM, "end", colour=SOFT)
