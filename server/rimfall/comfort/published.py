"""Published limits on what people bear in a rotating habitat, and rates that people got used to: data, each with its source.

Every study stands for itself: they disagree, and nothing here chooses or averages. A bound is one of BOUNDS:

- "at_least", "at_most": a limit that the study sets, or a threshold that it names;
- "optimum": what the study would choose inside its limits;
- "reached": a spin that people worked at after getting used to it;
- "observed": what was found in people as they came, or over a range that was tried.

Only the first two are limits. Head-to-foot gradient has none: the figures that go round could not be confirmed.
"""

from dataclasses import dataclass

from ..language import tr, tr_later
from .quantities import QUANTITIES


@dataclass(frozen=True)
class Study:
    """A publication; `name` is short, for tables; year is None where the source as quoted gives none."""

    id: str
    name: str
    year: int | None
    citation: str

    @property
    def called(self):
        """Name and year, for sentences: "Hill & Schnitzer 1962"."""
        return f"{self.name} {self.year}" if self.year else self.name


_ALL = (
    Study("clark_hardy_1960", "Clark & Hardy", 1960, "Clark & Hardy, Gravity problems in manned space stations (1960)"),
    Study(
        "graybiel_clark_zarriello_1960",
        "Graybiel, Clark & Zarriello",
        1960,
        "Graybiel, Clark & Zarriello (1960), and later reviews by Graybiel",
    ),
    Study(
        "hill_schnitzer_1962",
        "Hill & Schnitzer",
        1962,
        "Hill & Schnitzer, Rotating manned space stations, Astronautics 7(9) (1962)",
    ),
    Study("gilruth_1969", "Gilruth", 1969, "Gilruth, Manned space stations - gateway to our future in space (1969)"),
    Study(
        "gordon_gervais_1969",
        "Gordon & Gervais",
        1969,
        "Gordon & Gervais, Critical engineering problems of space stations (1969)",
    ),
    Study(
        "graybiel_knepton_1972",
        "Graybiel & Knepton",
        1972,
        "Graybiel & Knepton, Direction-specific adaptation effects acquired in a slow rotation room (1972), abstract, "
        "NTRS record 19730001335",
    ),
    Study("stone_1973", "Stone", 1973, "Stone, An overview of artificial gravity, NASA SP-314 (1973)"),
    Study(
        "sp_413_1977",
        "SP-413",
        1977,
        "Johnson & Holbrow (eds), Space Settlements: A Design Study, NASA SP-413 (1977), ch. 3, habitability criteria",
    ),
    Study("cramer_1985", "Cramer", 1985, "Cramer, Physiological considerations of artificial gravity (1985)"),
    Study(
        "lackner_dizio_1998",
        "Lackner & DiZio",
        1998,
        "Lackner & DiZio, Adaptation in a rotating artificial gravity environment, Brain Res. Rev. 28, 194-202 (1998), abstract",
    ),
    Study(
        "dizio_lackner_2002",
        "DiZio & Lackner",
        2002,
        "DiZio & Lackner, Sensorimotor aspects of high-speed artificial gravity III, J. Vestib. Res. 12, 291-299 (2002), "
        "abstract",
    ),
    Study(
        "elias_jarchow_young_2008",
        "Elias, Jarchow & Young",
        2008,
        "Elias, Jarchow & Young, Incremental adaptation to yaw head turns during 30 RPM centrifugation, Exp. Brain Res. "
        "(2008), abstract",
    ),
    Study(
        "harris_2014",
        tr_later("Harris and others"),
        2014,
        "Harris, Herpers, Hofhammer & Jenkin, How much gravity is needed to establish the perceptual upright?, PLOS ONE "
        "(2014), abstract, doi 10.1371/journal.pone.0106207",
    ),
    Study(
        "bretl_2019",
        tr_later("Bretl and others"),
        2019,
        "Bretl, McCusker, Dixon & Clark, Tolerable acclimation to the cross-coupled illusion through a 10-day, incremental, "
        "personalized protocol, J. Vestib. Res. 29(2-3) (2019), abstract",
    ),
    Study(
        "standardized_protocol_2020",
        tr_later("Standardized protocol"),
        2020,
        "A standardized, incremental protocol to increase human tolerance to the cross-coupled illusion, J. Vestib. Res. "
        "(2020), abstract, doi 10.3233/VES-190673",
    ),
    Study("nasa_std_3001", "NASA-STD-3001", None, "NASA-STD-3001 Vol. 2, sec. 6.5 (acceleration)"),
)
STUDIES = {study.id: study for study in _ALL}


LIMITS = ("at_least", "at_most")
BOUNDS = (*LIMITS, "optimum", "reached", "observed")


@dataclass(frozen=True)
class Published:
    """One figure of one study: limit in `unit` (that of the quantity), for whom, and how it is known: "read" or "memory".

    via: through which other work it is known, where it is, without a full stop; notes: sentences. These are in English (`told`).
    """

    id: str
    study: str
    quantity: str
    bound: str
    limit: float
    unit: str
    who: str
    via: str
    notes: tuple
    known_by: str

    @property
    def source(self):
        """The citation and, after it, through what it is known, in the language that is spoken."""
        return "; ".join(part for part in (STUDIES[self.study].citation, self.via and tr(self.via)) if part)

    @property
    def note(self):
        """Its notes in the language that is spoken."""
        return " ".join(map(tr, self.notes))


_STATION = tr_later("people aboard rotating stations; the survey's table says no more")
_BY_HALL = tr_later(
    "as surveyed in T. W. Hall, Artificial Gravity and the Architecture of Orbital Habitats, 1st Int. Symp. on Space Tourism "
    "(1997)"
)
_SURVEYED = tr_later("As the table of the 1997 survey gives it, not the paper itself.")


def _row(study, quantity, bound, limit, who, note, via="", of="", known_by="memory"):
    """A Published; `via` is the secondary source, `of` tells apart two figures of one study on the same quantity."""
    name = ".".join(part for part in (study, quantity, bound, of) if part)
    notes = tuple(one for one in (_SURVEYED if via == _BY_HALL else "", note) if one)
    return Published(name, study, quantity, bound, limit, QUANTITIES[quantity].unit, who, via, notes, known_by)


def told(row):
    """The words of a Published in the language that is spoken."""
    study = STUDIES[row.study]
    return {
        "study": tr(study.name),
        "year": study.year,
        "who": tr(row.who),
        "source": row.source,
        "via": row.via and tr(row.via),
        "note": row.note,
    }


def _surveyed(study, least_g, most_g, most_rpm, least_rim_m_s=None, spin_note=""):
    """What the survey's table gives for one study."""
    figures = (
        ("gravity", "at_least", least_g, ""),
        ("gravity", "at_most", most_g, ""),
        ("spin", "at_most", most_rpm, spin_note),
        ("rim_speed", "at_least", least_rim_m_s, ""),
    )
    return tuple(
        _row(study, quantity, bound, limit, _STATION, note, _BY_HALL)
        for quantity, bound, limit, note in figures
        if limit is not None
    )


ROWS = (
    _row(
        "clark_hardy_1960",
        "spin",
        "at_most",
        0.1,
        _STATION,
        tr_later(
            "It rests on the threshold of an illusion: 0.06 rad/s² over a head turn of 5 rad/s would be 0.115 rpm."
        ),
        _BY_HALL,
    ),
    _row(
        "clark_hardy_1960",
        "head_turn",
        "at_most",
        0.06,
        tr_later("people who turn their heads; the surveys say no more"),
        tr_later("The threshold of an illusion of turning; quoted by surveys, not from the paper itself."),
        tr_later("as quoted by surveys"),
        "illusion",
    ),
    _row(
        "clark_hardy_1960",
        "head_turn",
        "at_most",
        0.6,
        tr_later("people who turn their heads; the surveys say no more"),
        tr_later("The threshold of nausea; quoted by surveys, not from the paper itself."),
        tr_later("as quoted by surveys"),
        "nausea",
    ),
    _row(
        "graybiel_clark_zarriello_1960",
        "spin",
        "observed",
        1.0,
        tr_later("people in a slowly rotating room, the susceptible among them"),
        tr_later("No symptoms at this spin, even in susceptible people: a finding, no limit."),
    ),
    *_surveyed("hill_schnitzer_1962", 0.035, 1.0, 4.0, 6.0),
    *_surveyed(
        "gilruth_1969",
        0.3,
        0.9,
        6.0,
        spin_note=tr_later(
            "6 rpm is the outer limit and 2 rpm the optimum of the same author: the two are easily confused."
        ),
    ),
    _row(
        "gilruth_1969",
        "spin",
        "optimum",
        2.0,
        _STATION,
        tr_later("2 rpm is the optimum, 6 rpm the outer limit of the same author; to be checked before use."),
        _BY_HALL,
    ),
    *_surveyed("gordon_gervais_1969", 0.2, 1.0, 6.0, 7.0),
    _row(
        "graybiel_knepton_1972",
        "spin",
        "reached",
        6.0,
        tr_later("people in a slowly rotating room, sped up in steps of 1 rpm with 120 head movements at each"),
        tr_later("The highest spin of the protocol, not the highest that people could bear."),
        known_by="read",
    ),
    *_surveyed("stone_1973", 0.2, 1.0, 6.0, 10.0),
    _row(
        "stone_1973",
        "coriolis",
        "at_most",
        0.25,
        tr_later("people who walk aboard; not said further"),
        tr_later("Guidance of about 0.25 that is attributed to this paper; quoted with low confidence."),
        tr_later("as attributed to it elsewhere"),
    ),
    _row(
        "sp_413_1977",
        "spin",
        "at_most",
        1.0,
        tr_later("the general population of a settlement"),
        tr_later(
            "Adopted as a criterion of the design. The same table gives 0.95 g with a spread that is printed inconsistently "
            "(the text says 0.9 to 1.0 g), so no gravity is taken from it here."
        ),
    ),
    *_surveyed("cramer_1985", 0.1, 1.0, 3.0, 7.0),
    _row(
        "lackner_dizio_1998",
        "spin",
        "reached",
        10.0,
        tr_later("people who reach for things while they are turned"),
        tr_later(
            "Misses in reaching adapt within 10 to 20 movements. The same abstract names the earlier view: adaptation up to "
            "3 to 4 rpm at most."
        ),
        known_by="read",
    ),
    _row(
        "dizio_lackner_2002",
        "spin",
        "observed",
        20.0,
        tr_later("people who point at things while they are turned"),
        tr_later(
            "The upper end of 5 to 20 rpm, over which the miss grows in proportion to the Coriolis force: a range tried, no limit."
        ),
        known_by="read",
    ),
    _row(
        "elias_jarchow_young_2008",
        "spin",
        "reached",
        30.0,
        tr_later("people who made 42 head turns a day for three days on a centrifuge"),
        tr_later(
            "14 rpm on the first day, 23 rpm on the second. Early work took 3 to 4 rpm for the most that people adapt to."
        ),
        known_by="read",
    ),
    _row(
        "harris_2014",
        "gravity",
        "observed",
        0.15,
        tr_later("people asked which way is up"),
        tr_later("Where gravity has half of its influence on what people take for upright: a finding, no limit."),
        known_by="read",
    ),
    _row(
        "bretl_2019",
        "spin",
        "observed",
        1.8,
        tr_later("ten people, before training"),
        tr_later(
            "The mean of the spins up to which they had no cross-coupled illusion, with a standard deviation of 0.9 rpm."
        ),
        known_by="read",
    ),
    _row(
        "standardized_protocol_2020",
        "spin",
        "reached",
        11.8,
        tr_later("people trained in steps that were the same for everyone"),
        tr_later("After the training, where the protocol of 2019 was fitted to each person."),
        known_by="read",
    ),
    _row(
        "nasa_std_3001",
        "head_turn",
        "at_most",
        2.0,
        tr_later("crew, for an acceleration that lasts more than 0.5 s"),
        tr_later("With a head turn of 3 rad/s this is 6.37 rpm, in line with the limits of 6 rpm."),
    ),
)
