"""The studies whose figures `published.py` holds, each with its citation."""

from dataclasses import dataclass


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
        "Harris and others",
        2014,
        "Harris, Herpers, Hofhammer & Jenkin, How much gravity is needed to establish the perceptual upright?, PLOS ONE "
        "(2014), abstract, doi 10.1371/journal.pone.0106207",
    ),
    Study(
        "bretl_2019",
        "Bretl and others",
        2019,
        "Bretl, McCusker, Dixon & Clark, Tolerable acclimation to the cross-coupled illusion through a 10-day, incremental, "
        "personalized protocol, J. Vestib. Res. 29(2-3) (2019), abstract",
    ),
    Study(
        "standardized_protocol_2020",
        "Standardized protocol",
        2020,
        "A standardized, incremental protocol to increase human tolerance to the cross-coupled illusion, J. Vestib. Res. "
        "(2020), abstract, doi 10.3233/VES-190673",
    ),
    Study("nasa_std_3001", "NASA-STD-3001", None, "NASA-STD-3001 Vol. 2, sec. 6.5 (acceleration)"),
)
STUDIES = {study.id: study for study in _ALL}
