"""How limits are kept, in words: counts, the nearest of those passed, ends of the scale, and room for a heading."""

import re

import pytest
from hypothesis import given
from hypothesis import strategies as st

from rimfall.comfort import adaptation, limits
from rimfall.comfort.published import LIMITS, ROWS
from rimfall.comfort.quantities import QUANTITIES
from rimfall.scene.feel import limit_words
from rimfall.scene.feel.person_part import OwnLimit
from tests.tables import each_row

NB = "\u00a0"
HERE = {"gravity": 0.5636, "spin": 3.5, "gradient": 3.1, "rim_speed": 17.6, "head_turn": 0.01, "coriolis": 0.159}
AT_REST = {"gravity": 0.0, "spin": 0.0, "gradient": 3.1, "rim_speed": 0.0, "head_turn": 0.0, "coriolis": None}
HEADING = 18  # characters that a closed place has for its answer


def own(quantity, bound, value, name=""):
    return OwnLimit(quantity=quantity, bound=bound, value=value, name=name)


def rows_of(own_limits=(), **values):
    return limits.compare(HERE | values, list(own_limits))


def said(quantity, value, *own_limits):
    rows = [row for row in rows_of(own_limits, **{quantity: value}) if row.quantity == quantity]
    return limit_words.sentence(quantity, rows).replace(NB, " ")


def test_on_paper_nothing_is_offered():
    rows = [row for row in rows_of() if row.quantity == "gradient"]
    assert limit_words.sentence("gradient", rows, offered=False) == said("gradient", 3.1).removesuffix(
        " You can set one of your own."
    )


OTHERS = {
    "gravity": " One more figure tells what was observed; it is not a limit.",
    "spin": " Eight more figures tell what was observed, reached or called an optimum; they are not limits.",
}
QUIET = own("spin", "at_most", 2.0, "Quiet deck")
SENTENCES = [
    ("spin", 0.05, (), "Inside all seven."),
    ("spin", 0.1, (), "Inside all seven, one of them at its limit (Clark & Hardy 1960)."),
    ("spin", 3.0, (),
     "Inside five of the seven, one of them at its limit (Cramer 1985); beyond SP-413 1977 by 2.0 rpm and Clark & Hardy 1960 by "
     "2.9 rpm."),
    ("spin", 4.1, (), "Inside three of the seven; beyond Hill & Schnitzer 1962 by 0.10 rpm, Cramer 1985 by 1.1 rpm, SP-413 1977 by "
     "3.1 rpm and Clark & Hardy 1960 by 4.0 rpm."),
    ("spin", 6.0, (), "Inside three of the seven, each at its limit (Gilruth 1969, Gordon & Gervais 1969 and Stone 1973); beyond "
     "Hill & Schnitzer 1962 by 2.0 rpm, Cramer 1985 by 3.0 rpm, SP-413 1977 by 5.0 rpm and Clark & Hardy 1960 by 5.9 rpm."),
    ("spin", 200.0, (), "Inside none of the seven; beyond Gilruth 1969 by 194 rpm, Gordon & Gervais 1969 by 194 rpm, Stone 1973 by "
     "194 rpm, Hill & Schnitzer 1962 by 196 rpm, Cramer 1985 by 197 rpm, SP-413 1977 by 199 rpm and Clark & Hardy 1960 by 200 rpm."),
    ("gravity", 0.95, (), "Inside nine of the ten; beyond Gilruth 1969 by 0.050 g."),
    ("gravity", 1.0, (), "Inside nine of the ten, four of them at their limit (Hill & Schnitzer 1962, Gordon & Gervais 1969, Stone 1973 and Cramer "
     "1985); beyond Gilruth 1969 by 0.10 g."),
    ("gravity", 0.9 + 1e-5, (), "Inside nine of the ten; beyond Gilruth 1969 by less than 0.001 g."),
    ("gravity", 1e6, (), "Inside five of the ten; beyond Hill & Schnitzer 1962 by 999,999 g, Gordon & Gervais 1969 by 999,999 g, "
     "Stone 1973 by 999,999 g, Cramer 1985 by 999,999 g and Gilruth 1969 by 999,999 g."),
    ("rim_speed", 6.5, (),
     "Inside one of the four; beyond Gordon & Gervais 1969 by 0.50 m/s, Cramer 1985 by 0.50 m/s and Stone 1973 by 3.5 m/s."),
    ("head_turn", 0.33, (), "Inside two of the three; beyond Clark & Hardy 1960 (0.06 rad/s²) by 0.27 rad/s²."),
    ("head_turn", 12.0, (), "Inside none of the three; beyond NASA-STD-3001 by 10 rad/s², Clark & Hardy 1960 (0.6 rad/s²) by 11 rad/s² "
     "and Clark & Hardy 1960 (0.06 rad/s²) by 12 rad/s²."),
    ("coriolis", 0.1, (), "Inside the only published limit, Stone 1973."),
    ("coriolis", 0.25, (), "At the only published limit, Stone 1973."),
    ("coriolis", 0.3, (), "Beyond the only published limit, Stone 1973, by 0.050."),
    ("coriolis", 9.55, (), "Beyond the only published limit, Stone 1973, by 9.3."),
    ("coriolis", None, (), "No value here to set beside the only published limit."),
    ("spin", None, (), "No value here to set beside the seven."),
    ("gradient", 3.1, (), "No published limit found for the change from head to foot. You can set one of your own."),
    ("gradient", None, (), "No published limit found for the change from head to foot. You can set one of your own."),
    ("gradient", 3.1, (own("gradient", "at_most", 5.0),),
     "No published limit found for the change from head to foot. Inside your own limit."),
    ("gradient", None, (own("gradient", "at_most", 5.0),),
     "No published limit found for the change from head to foot. No value here to set beside your own limit."),
    ("gradient", 3.1, (own("gradient", "at_most", 5.0), own("gradient", "at_most", 2.0, "Low")),
     "No published limit found for the change from head to foot. Inside one of your own two; beyond Low by 1.1 percentage points."),
    ("gradient", 2e6, (own("gradient", "at_most", 1e6), own("gradient", "at_most", 1e-9)),
     "No published limit found for the change from head to foot. Inside none of your own two; beyond your own (1,000,000 %) by "
     "1,000,000 percentage points and your own (less than 0.001 %) by 2,000,000 percentage points."),
    ("gradient", 3.1, (own("gradient", "at_most", 5.0), own("gradient", "at_least", 2.0)),
     "No published limit found for the change from head to foot. Inside both of your own."),
    ("spin", 0.05, (QUIET,), "Inside all seven. Inside your own limit, Quiet deck."),
    ("spin", 2.0, (QUIET,), "Inside five of the seven; beyond SP-413 1977 by 1.0 rpm and Clark & Hardy 1960 by 1.9 rpm. At your own limit, "
     "Quiet deck."),
    ("coriolis", 0.1, (own("coriolis", "at_most", 0.05),), "Inside the only published limit, Stone 1973. Beyond your own limit by 0.050."),
]  # fmt: skip


@each_row(("quantity", "value", "own_limits", "sentence"), SENTENCES)
def test_sentences(quantity, value, own_limits, sentence):
    """Figures that are no limits are the same whatever the value: their sentence comes last."""
    assert said(quantity, value, *own_limits) == sentence + OTHERS.get(quantity, "")


@each_row("quantity", QUANTITIES)
def test_limits_and_other_figures_come_to_the_rows_of_the_table(quantity):
    """Counts as the sentence has them, in words, beside the rows that the data holds."""
    rows = [row for row in ROWS if row.quantity == quantity]
    sentence = said(quantity, 0.5)
    more = re.search(r"(\w+) more figures? tells? what was (.*); (it is not a limit|they are not limits)\.$", sentence)
    others = [row.bound for row in rows if row.bound not in LIMITS]
    assert (more is None) == (not others)
    if more:
        assert more.group(1).lower() == limit_words.count(len(others))
        kinds = {"observed": "observed", "reached": "reached", "optimum": "called an optimum"}
        assert [said_so in more.group(2) for said_so in kinds.values()] == [bound in others for bound in kinds]


def test_the_nearest_is_named_first():
    """Margins read back from the sentence rise, and are those of the rows."""
    sentence = said("rim_speed", 1.0)
    by = [float(figure) for figure in re.findall(r"by ([\d.]+) m/s", sentence)]
    past = sorted(row.limit - 1.0 for row in ROWS if row.quantity == "rim_speed")
    assert by == pytest.approx(past)
    assert by == sorted(by)


@each_row(
    ("values", "own_limits", "short", "summary"),
    [
        ({}, (), "beyond 3 of 25", "Inside 22 of the 25 published limits; beyond three on spin."),
        ({"spin": 0.05}, (), "inside all 25", "Inside all 25 published limits."),
        ({"gravity": 0.95, "head_turn": 0.7}, (), "beyond 6 of 25",
         "Inside 19 of the 25 published limits; beyond six: one on gravity, three on spin and two on turning the head."),
        ({"spin": 0.05}, (own("gradient", "at_most", 2.0),), "beyond 1 of 26",
         "Inside all 25 published limits. Beyond your own limit, on the change from head to foot."),
        ({"spin": 0.05}, (own("gradient", "at_most", 5.0), own("spin", "at_most", 1.0)), "inside all 27",
         "Inside all 25 published limits. Inside both of your own limits."),
        ({"spin": 0.05}, (own("gradient", "at_most", 2.0), own("spin", "at_most", 0.01), own("spin", "at_most", 1.0)), "beyond 2 of 28",
         "Inside all 25 published limits. Inside one of your own three limits; beyond two: one on spin and one on the change from head to "
         "foot."),
        (AT_REST, (), "beyond 9 of 24",
         "Inside 15 of the 25 published limits; beyond nine: five on gravity and four on rim speed; no value here for one."),
        (dict.fromkeys(QUANTITIES), (own("gradient", "at_most", 2.0),), "no value here",
         "No value here to set beside the 25 published limits. No value here to set beside your own limit."),
    ],
)  # fmt: skip
def test_headings_and_summaries(values, own_limits, short, summary):
    rows = rows_of(own_limits, **values)
    assert limit_words.short(rows) == short
    assert limit_words.summary(rows) == summary


@given(
    values=st.fixed_dictionaries({name: st.one_of(st.none(), st.floats(0.0, 1e6)) for name in QUANTITIES}),
    own_limits=st.lists(
        st.builds(own, st.sampled_from(list(QUANTITIES)), st.sampled_from(LIMITS), st.floats(1e-3, 1e6)), max_size=12
    ),
)
def test_whatever_comes_the_heading_has_room_and_the_counts_are_right(values, own_limits):
    rows = rows_of(own_limits, **values)
    heading = limit_words.short(rows)
    assert len(heading) <= HEADING
    counted = [row.inside for row in rows if row.inside is not None]
    if heading.startswith("beyond"):
        assert [int(figure) for figure in re.findall(r"\d+", heading)] == [counted.count(False), len(counted)]
    for quantity in QUANTITIES:
        sentence = limit_words.sentence(quantity, [row for row in rows if row.quantity == quantity])
        assert re.fullmatch(r"[A-Z].*\.", sentence)
        assert not re.search(r"nan|inf\b|e[+-]\d|None", sentence)
    assert limit_words.summary(rows).endswith(".")


@each_row(("number", "word"), [(0, "none"), (1, "one"), (12, "twelve"), (13, "13"), (25, "25")])
def test_counts_are_words_up_to_twelve(number, word):
    assert limit_words.count(number) == word


def test_a_number_keeps_its_unit_beside_it():
    sentence = limit_words.sentence("spin", [row for row in rows_of(spin=3.0) if row.quantity == "spin"])
    assert f"2.0{NB}rpm" in sentence


def test_no_word_judges_people_or_designs():
    """A figure is inside or beyond a published limit, and that is all that is said of it."""
    every_rows = [rows_of(spin=200.0), rows_of(spin=0.05), rows_of(**AT_REST)]
    sentences = [
        limit_words.sentence(name, [row for row in rows if row.quantity == name])
        for rows in every_rows
        for name in QUANTITIES
    ]
    summaries = [limit_words.summary(rows) for rows in every_rows]
    notes = [text for row in ROWS for text in (row.who, row.note)]
    findings = [text for one in adaptation.beside(200.0) for text in (one.claim, one.note, one.here)]
    every = " ".join([*sentences, *summaries, *notes, *findings])
    assert not re.search(r"comfort|\bsafe|\bgood\b|\bbad\b|danger|healthy|\berror\b|!|[Α-ω]|10\^", every, re.IGNORECASE)


def test_in_feet_a_sentence_tells_speeds_in_feet():
    rows = [row for row in rows_of(rim_speed=1.0) if row.quantity == "rim_speed"]
    passed = {row.study: -row.margin / 0.3048 for row in rows}  # the international foot (1959)
    said = limit_words.sentence("rim_speed", rows, "us").replace(NB, " ")
    studies = re.findall(r"([A-Z][\w& .]*?) \d{4} by ([\d.]+) ft/s", said)
    assert len(studies) == len(rows)
    for study, by in studies:
        assert float(by) == float(f"{passed[study.removeprefix('and ')]:.2g}")
    assert "m/s" not in said.replace("ft/s", "")
    spin = [row for row in rows_of(spin=3.0) if row.quantity == "spin"]
    assert limit_words.sentence("spin", spin, "us") == limit_words.sentence("spin", spin)
