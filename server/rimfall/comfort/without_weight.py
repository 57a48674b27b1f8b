"""What bodies did without their weight, with part of it, and after turns on a short centrifuge, as published; and what a stay makes of it.

Each finding stands for itself, as the limits of `published.py` do. `points` tells which way it speaks on whether a stay needs spin:

- "for": something a body lost or suffered without weight;
- "against": without weight it did not happen;
- "both": it happened, and passed, came back, or was partly made up for, with spin or without;
- "open": it leaves the question open: minutes, mice, or studies that nobody has made;
- "aside": what is done instead of spinning.

Counts of them say how many studies there are, not how strong each is.
"""

from dataclasses import dataclass

from .marks import lies

STAYS = ("hours", "days", "months", "years")
POINTS = ("for", "against", "both", "open", "aside")
TOPICS = {
    "bone": "Bone",
    "muscle": "Muscle",
    "blood": "Blood and fluids",
    "eyes": "Eyes",
    "balance": "Balance and walking",
    "stones": "Kidney stones",
    "sickness": "Sickness",
    "exercise": "Exercise",
    "centrifuge": "Short centrifuges",
    "part": "Part of one's weight",
}
EARTH_G = 0.95  # from here on a weight is called that of Earth; our own choice
_HOURS, _DAYS, _MONTHS, _YEARS = STAYS
_LONG = (_MONTHS, _YEARS)
_NB = "\u00a0"


@dataclass(frozen=True)
class BodyFinding:
    """One published finding. stays: those of STAYS it bears on; levels_g: weights, g, rising, that it speaks of, each with what it is.

    source: the citation, without a full stop; note: what else is to be known, sentences; known_by: "read" or "memory".
    """

    id: str
    topic: str
    points: str
    stays: tuple
    claim: str
    study: str
    year: int | None
    source: str
    note: str = ""
    known_by: str = "read"
    levels_g: tuple = ()


_JAPANESE = "Bone loss and bone metabolism in astronauts during long-duration space flight (review, in Japanese), PMID 16397355, abstract"

FINDINGS = (
    BodyFinding(
        "bone.hip_and_spine",
        "bone",
        "for",
        _LONG,
        f"On long flights people lost 1.5{_NB}% of the bone density of the hip a month, and 0.9{_NB}% of that of the lower spine.",
        "Review of bone loss",
        2006,
        _JAPANESE,
        "Clin. Calcium 16(1), 2006; journal and year from memory.",
    ),
    BodyFinding(
        "bone.legs",
        "bone",
        "for",
        _LONG,
        f"Of 148 travellers taken together, the legs lost 0.8{_NB}% of their bone density a month; the studies allow 0.5 to "
        f"1.1{_NB}%.",
        "Stavnichuk and others",
        2020,
        "Stavnichuk, Mikolajewicz, Corlett, Morris & Komarova, A systematic review and meta-analysis of bone loss in space "
        "travelers, npj Microgravity 6, 13 (2020)",
        "The skull gained 2.2 % over a flight; markers of bone loss reach half of their plateau in 11 days.",
    ),
    BodyFinding(
        "bone.with_exercise",
        "bone",
        "for",
        _LONG,
        f"Six months on a station, with the exercise done there today, still took 3.9{_NB}% of the bone density of the hip: 23 "
        "people, with a standard deviation of 2.4.",
        "Bone scans of station crews",
        None,
        "Use of DXA-based software to identify astronauts at risk for persisting spaceflight-induced bone loss, abstract",
        "Authors, journal and year are not on the copy that was read.",
    ),
    BodyFinding(
        "bone.calcium",
        "bone",
        "for",
        _LONG,
        f"By the end of the twelfth week people lost about 300{_NB}mg of calcium a day, six times the 50{_NB}mg of the first week.",
        "Rambaut & Johnston",
        1979,
        "Rambaut & Johnston, Prolonged weightlessness and calcium loss in man, Acta Astronautica 6(9) (1979)",
        "The source says that the loss accelerated exponentially; from week 1 to week 12 that comes to 10.7 g, worked out here.",
    ),
    BodyFinding(
        "muscle.back",
        "muscle",
        "for",
        (_DAYS,),
        f"After 8 days in flight the deep muscles of the back had lost 10.3{_NB}% of their volume.",
        "LeBlanc and others",
        1995,
        "LeBlanc, Rowe, Schneider, Evans & Hedrick, Regional muscle loss after short duration spaceflight, Aviat. Space "
        "Environ. Med. 66(12), 1151-1154 (1995)",
        "On the same flight the calf lost 6.3 %, the front of the thigh 6.0 %.",
    ),
    BodyFinding(
        "muscle.all",
        "muscle",
        "both",
        _LONG,
        f"After 16 to 28 weeks all muscles but those of the neck had lost 5 to 17{_NB}% of their volume. It went no further after four "
        "months, and came back within 30 to 60 days of landing.",
        "LeBlanc and others",
        2000,
        "LeBlanc and others, Muscle volume, MRI relaxation times (T2), and body composition after spaceflight, J. Appl. Physiol. "
        "89(6), 2158-2164 (2000)",
    ),
    BodyFinding(
        "muscle.calf",
        "muscle",
        "for",
        _LONG,
        f"After 181 days on a station, exercise included, the calf had lost 10 to 16{_NB}% of its volume: four people.",
        "Gopalakrishnan and others",
        2010,
        "Gopalakrishnan and others, Muscle volume, strength, endurance, and exercise loads during 6-month missions in space, "
        "Aviat. Space Environ. Med. 81(2), 91-102 (2010)",
        "The upper arm lost nothing; the knee lost 10.4 to 24.1 % of its strength.",
    ),
    BodyFinding(
        "blood.fluid",
        "blood",
        "both",
        (_HOURS, _DAYS),
        f"Within 11 to 13 hours 2.2{_NB}litres of fluid moved from the legs toward the head: six people. Most of it was back within "
        "an hour and a half of landing.",
        "Dissertation, Purdue",
        1988,
        "Space flight fluid shifts measured by leg volume changes, PhD dissertation, Purdue University (1988)",
        "The author, T. P. Moore, from memory.",
    ),
    BodyFinding(
        "blood.plasma",
        "blood",
        "for",
        (_HOURS, _DAYS),
        f"Within the first day blood plasma fell by 17{_NB}%; on later flights by 10 to 15{_NB}%.",
        "Alfrey and others",
        1996,
        "Alfrey, Udden, Leach-Huntoon, Driscoll & Pickett, Control of red blood cell mass in spaceflight, J. Appl. Physiol. 81, 98 "
        "(1996)",
        "The abstract says that plasma fell within a day, without a figure.",
        "memory",
    ),
    BodyFinding(
        "blood.red_cells",
        "blood",
        "for",
        _LONG,
        f"Over six months red blood cells were destroyed 54{_NB}% faster than on Earth, three million a second in place of two; 5 of "
        "13 people tested were anaemic on landing.",
        "Trudel and others",
        2022,
        "Trudel and others, Hemolysis contributes to anemia during long-duration space flight, Nat. Med. 28 (2022)",
        "Figures as a press account gives them; title and volume from memory.",
    ),
    BodyFinding(
        "blood.standing",
        "blood",
        "for",
        (_DAYS, *_LONG),
        "Made to stand after 129 to 190 days in flight, 5 of 6 people came near fainting; after short flights it was 5 of 20.",
        "Meck and others",
        2001,
        "Meck, Reyes, Perez, Goldberger & Ziegler, Marked exacerbation of orthostatic intolerance after long- vs short-duration "
        "spaceflight in veteran astronauts, Psychosom. Med. 63(6), 865-873 (2001)",
        "Six people are few.",
    ),
    BodyFinding(
        "eyes.near",
        "eyes",
        "for",
        _LONG,
        f"About 60{_NB}% of those on long flights said that they saw worse close by.",
        "Neuro-ophthalmology of flight",
        2016,
        "Neuro-ophthalmology of space flight, J. Neuro-Ophthalmol. (2016), restating Mader and others, Ophthalmology 118, 2058 "
        "(2011)",
        "Read as a shortened abstract.",
    ),
    BodyFinding(
        "balance.walking",
        "balance",
        "both",
        _LONG,
        f"After 185 days in flight 18 people took about 15 days on Earth to walk an obstacle course nearly as before; at first it "
        f"took them 48{_NB}% longer.",
        "Mulavara and others",
        2010,
        "Mulavara and others, Locomotor function after long-duration space flight, Exp. Brain Res. 202(3), 649-659 (2010)",
        "Nearly: 95 % of the way.",
    ),
    BodyFinding(
        "stones.counted",
        "stones",
        "against",
        (_DAYS, *_LONG),
        "Of 14 kidney stones in US astronauts up to 2008, over 5,434.5 person-years, 7 came before a flight, 7 after one, and none "
        "on one.",
        "Pietrzyk, as quoted",
        None,
        "npj Microgravity, article s41526-021-00187-z, quoting Pietrzyk",
        "The same page tells of one cosmonaut who passed a stone in orbit. More calcium in the urine makes stones likelier.",
    ),
    BodyFinding(
        "sickness.first",
        "sickness",
        "both",
        (_HOURS, _DAYS),
        "On a first Shuttle flight 57 of 85 people were space-sick, 11 of them severely; severe cases last up to 72 hours.",
        "Davis and others",
        1988,
        "Davis, Vanderploeg, Santy, Jennings & Stewart, Space motion sickness during 24 flights of the Space Shuttle, Aviat. Space "
        "Environ. Med. 59(12), 1185-1189 (1988)",
        "The 72 hours are another source's: chapter doi 10.4324/9781315799506-100.",
    ),
    BodyFinding(
        "exercise.set_aside",
        "exercise",
        "aside",
        _LONG,
        f"On a station up to 2.5{_NB}hours of each day are set aside for exercise, getting ready and clearing up included.",
        "Quoted beside Moore",
        None,
        "A later paper quoted on the citation page of Moore and others, Peak exercise oxygen uptake during and following "
        "long-duration spaceflight, J. Appl. Physiol. (2014)",
        "Of this about 30 minutes are aerobic and 45 resistive exercise.",
    ),
    BodyFinding(
        "exercise.done",
        "exercise",
        "both",
        _LONG,
        f"46 people trained about 600{_NB}minutes a week, 1.43{_NB}hours a day, for half a year; it did not protect them fully: what "
        f"was measured changed by −30 to +5{_NB}%.",
        "Scott and others",
        2023,
        "Scott and others, Effects of exercise countermeasures on multisystem function in long duration spaceflight astronauts, npj "
        "Microgravity 9, 11 (2023)",
        "178 days, with a standard deviation of 48.",
    ),
    BodyFinding(
        "centrifuge.bed_rest",
        "centrifuge",
        "both",
        _LONG,
        f"In 60 days of bed rest the calf lost 48{_NB}% of its strength; with 30{_NB}minutes a day on a short centrifuge, 1{_NB}g at "
        f"the body's middle, it lost 31{_NB}%, or 35{_NB}% in six turns of five minutes. Jumping power fell by 33, 26 and 25{_NB}%. "
        "Fitness and the knee's strength were no better for it: 24 people.",
        "Bed-rest study AGBRESA",
        2021,
        "AGBRESA bed-rest study, PMC8192329 (Kramer and others, Eur. J. Appl. Physiol. (2021))",
        "Authors and journal from memory. Of 960 runs 10 were stopped early, 8 of them continuous ones (Frett and others, PLoS ONE "
        "15, e0239228 (2020)).",
    ),
    BodyFinding(
        "part.mice",
        "part",
        "open",
        _LONG,
        f"Mice on a station kept the size of a calf muscle at 0.33{_NB}g, and its strength and kind of fibre only at 0.67{_NB}g.",
        "Mice at part of their weight",
        None,
        "0.33g mitigates muscle atrophy while 0.67g preserves muscle function and myofiber type composition in mice during "
        "spaceflight, Science Advances",
        "Levels that were tried, no thresholds; mice, for about a month. Authors and year are not on the copy that was read.",
        levels_g=((0.33, "at which size was kept"), (0.67, "at which strength was, too")),
    ),
    BodyFinding(
        "part.vein",
        "part",
        "open",
        (_HOURS,),
        f"The vein at the neck of nine people who sat had a cross-section of 12{_NB}mm² at 1{_NB}g, 24 at 0.75{_NB}g, 34 at 0.5{_NB}g and 68 at "
        f"0.25{_NB}g, and 103 when they lay on Earth: tried for minutes only.",
        "Veins in partial gravity",
        2020,
        "Venous and arterial responses to partial gravity, Front. Physiol. 11, 863 (2020)",
        "On parabolic flights. Flow turned pulsatile at 0.5 g and below.",
        levels_g=((0.25, "tried"), (0.5, "tried"), (0.75, "tried"), (1.0, "tried")),
    ),
    BodyFinding(
        "part.none_long",
        "part",
        "open",
        (_DAYS, *_LONG),
        f"Of 43 studies of people at 0.1 to 0.4{_NB}g none is of a long stay: 0 of 43.",
        "Systematic review",
        2017,
        "Human biomechanical and cardiopulmonary responses to partial gravity - a systematic review, Front. Physiol. 8, 583 (2017)",
        "The longest stay at a sixth of Earth's gravity was 75 hours, on the Moon (from memory).",
    ),
    BodyFinding(
        "part.too_little",
        "part",
        "open",
        _LONG,
        f"One paper says that there is no direct evidence of long-term effects, and that what indirect evidence there is suggests that "
        f"less than 0.4{_NB}g is too little.",
        "Jones",
        2021,
        "H. W. Jones, NASA Ames, ICES 2021, NTRS record 20210019591",
        levels_g=((0.4, "it names"),),
    ),
)

NOT_KNOWN = {
    _HOURS: ("How much weight it takes for fluids to stay where they are on Earth: tried for minutes only.",),
    _DAYS: (
        "What days at part of one's weight do to muscle and blood: no study of people found.",
        "Whether part of one's weight spares people the first days' sickness: no published figure found.",
    ),
    _MONTHS: (
        "How much weight keeps bone, muscle, blood and eyes as they are: no study of people found.",
        "What months of turning do: no study of people found.",
    ),
    _YEARS: (
        "What years without weight, or at part of it, do: no study of people found.",
        "What years of turning do: no study of people found.",
        "Whether children grow as on Earth: no study found.",
    ),
}


def here(finding, felt_g):
    """How a weight lies to those that a finding speaks of, as a sentence; "" where it speaks of none."""
    if not finding.levels_g:
        return ""
    return (
        lies(felt_g, finding.levels_g, "What is felt here", "g") if felt_g else "Nothing is felt here to set beside it."
    )


@dataclass(frozen=True)
class StayCount:
    """How many of the findings that bear on a stay speak each way; counts: of POINTS -> number; not_known: sentences."""

    stay: str
    counts: dict
    not_known: tuple


def counted(stay):
    """The StayCount of one of STAYS."""
    bearing = [one.points for one in FINDINGS if stay in one.stays]
    return StayCount(stay, {points: bearing.count(points) for points in POINTS}, NOT_KNOWN[stay])
