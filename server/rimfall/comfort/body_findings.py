"""What bodies did without their weight, with part of it, and after turns on a short centrifuge: each finding as published."""

from dataclasses import dataclass

from ..language import tr_later

STAYS = (tr_later("hours"), tr_later("days"), tr_later("months"), tr_later("years"))
_HOURS, _DAYS, _MONTHS, _YEARS = STAYS
_LONG = (_MONTHS, _YEARS)


@dataclass(frozen=True)
class BodyFinding:
    """One published finding. points: which way it speaks, of `without_weight.POINTS`; stays: those of STAYS it bears on; levels_g:
    weights, g, rising, that it speaks of, each with what it is.

    source: the citation, without a full stop; note: what else is to be known, sentences; known_by: "read" or "memory". claim, study, note and
    what levels are: in English.
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
        tr_later(
            "On long flights people lost 1.5\u00a0% of the bone density of the hip a month, and 0.9\u00a0% of that of the lower spine."
        ),
        tr_later("Review of bone loss"),
        2006,
        _JAPANESE,
        tr_later("Clin. Calcium 16(1), 2006; journal and year from memory."),
    ),
    BodyFinding(
        "bone.legs",
        "bone",
        "for",
        _LONG,
        tr_later(
            "Of 148 travellers taken together, the legs lost 0.8\u00a0% of their bone density a month; the studies allow 0.5 to "
            "1.1\u00a0%."
        ),
        tr_later("Stavnichuk and others"),
        2020,
        "Stavnichuk, Mikolajewicz, Corlett, Morris & Komarova, A systematic review and meta-analysis of bone loss in space "
        "travelers, npj Microgravity 6, 13 (2020)",
        tr_later("The skull gained 2.2 % over a flight; markers of bone loss reach half of their plateau in 11 days."),
    ),
    BodyFinding(
        "bone.with_exercise",
        "bone",
        "for",
        _LONG,
        tr_later(
            "Six months on a station, with the exercise done there today, still took 3.9\u00a0% of the bone density of the hip: 23 "
            "people, with a standard deviation of 2.4."
        ),
        tr_later("Bone scans of station crews"),
        None,
        "Use of DXA-based software to identify astronauts at risk for persisting spaceflight-induced bone loss, abstract",
        tr_later("Authors, journal and year are not on the copy that was read."),
    ),
    BodyFinding(
        "bone.calcium",
        "bone",
        "for",
        _LONG,
        tr_later(
            "By the end of the twelfth week people lost about 300\u00a0mg of calcium a day, six times the 50\u00a0mg of the first week."
        ),
        tr_later("Rambaut & Johnston"),
        1979,
        "Rambaut & Johnston, Prolonged weightlessness and calcium loss in man, Acta Astronautica 6(9) (1979)",
        tr_later(
            "The source says that the loss accelerated exponentially; from week 1 to week 12 that comes to 10.7 g, worked out here."
        ),
    ),
    BodyFinding(
        "muscle.back",
        "muscle",
        "for",
        (_DAYS,),
        tr_later("After 8 days in flight the deep muscles of the back had lost 10.3\u00a0% of their volume."),
        tr_later("LeBlanc and others"),
        1995,
        "LeBlanc, Rowe, Schneider, Evans & Hedrick, Regional muscle loss after short duration spaceflight, Aviat. Space "
        "Environ. Med. 66(12), 1151-1154 (1995)",
        tr_later("On the same flight the calf lost 6.3 %, the front of the thigh 6.0 %."),
    ),
    BodyFinding(
        "muscle.all",
        "muscle",
        "both",
        _LONG,
        tr_later(
            "After 16 to 28 weeks all muscles but those of the neck had lost 5 to 17\u00a0% of their volume. It went no further after four "
            "months, and came back within 30 to 60 days of landing."
        ),
        tr_later("LeBlanc and others"),
        2000,
        "LeBlanc and others, Muscle volume, MRI relaxation times (T2), and body composition after spaceflight, J. Appl. Physiol. "
        "89(6), 2158-2164 (2000)",
    ),
    BodyFinding(
        "muscle.calf",
        "muscle",
        "for",
        _LONG,
        tr_later(
            "After 181 days on a station, exercise included, the calf had lost 10 to 16\u00a0% of its volume: four people."
        ),
        tr_later("Gopalakrishnan and others"),
        2010,
        "Gopalakrishnan and others, Muscle volume, strength, endurance, and exercise loads during 6-month missions in space, "
        "Aviat. Space Environ. Med. 81(2), 91-102 (2010)",
        tr_later("The upper arm lost nothing; the knee lost 10.4 to 24.1 % of its strength."),
    ),
    BodyFinding(
        "blood.fluid",
        "blood",
        "both",
        (_HOURS, _DAYS),
        tr_later(
            "Within 11 to 13 hours 2.2\u00a0litres of fluid moved from the legs toward the head: six people. Most of it was back within "
            "an hour and a half of landing."
        ),
        tr_later("Dissertation, Purdue"),
        1988,
        "Space flight fluid shifts measured by leg volume changes, PhD dissertation, Purdue University (1988)",
        tr_later("The author, T. P. Moore, from memory."),
    ),
    BodyFinding(
        "blood.plasma",
        "blood",
        "for",
        (_HOURS, _DAYS),
        tr_later("Within the first day blood plasma fell by 17\u00a0%; on later flights by 10 to 15\u00a0%."),
        tr_later("Alfrey and others"),
        1996,
        "Alfrey, Udden, Leach-Huntoon, Driscoll & Pickett, Control of red blood cell mass in spaceflight, J. Appl. Physiol. 81, 98 "
        "(1996)",
        tr_later("The abstract says that plasma fell within a day, without a figure."),
        "memory",
    ),
    BodyFinding(
        "blood.red_cells",
        "blood",
        "for",
        _LONG,
        tr_later(
            "Over six months red blood cells were destroyed 54\u00a0% faster than on Earth, three million a second in place of two; 5 of "
            "13 people tested were anaemic on landing."
        ),
        tr_later("Trudel and others"),
        2022,
        "Trudel and others, Hemolysis contributes to anemia during long-duration space flight, Nat. Med. 28 (2022)",
        tr_later("Figures as a press account gives them; title and volume from memory."),
    ),
    BodyFinding(
        "blood.standing",
        "blood",
        "for",
        (_DAYS, *_LONG),
        tr_later(
            "Made to stand after 129 to 190 days in flight, 5 of 6 people came near fainting; after short flights it was 5 of 20."
        ),
        tr_later("Meck and others"),
        2001,
        "Meck, Reyes, Perez, Goldberger & Ziegler, Marked exacerbation of orthostatic intolerance after long- vs short-duration "
        "spaceflight in veteran astronauts, Psychosom. Med. 63(6), 865-873 (2001)",
        tr_later("Six people are few."),
    ),
    BodyFinding(
        "eyes.near",
        "eyes",
        "for",
        _LONG,
        tr_later("About 60\u00a0% of those on long flights said that they saw worse close by."),
        tr_later("Neuro-ophthalmology of flight"),
        2016,
        "Neuro-ophthalmology of space flight, J. Neuro-Ophthalmol. (2016), restating Mader and others, Ophthalmology 118, 2058 "
        "(2011)",
        tr_later("Read as a shortened abstract."),
    ),
    BodyFinding(
        "balance.walking",
        "balance",
        "both",
        _LONG,
        tr_later(
            "After 185 days in flight 18 people took about 15 days on Earth to walk an obstacle course nearly as before; at first it "
            "took them 48\u00a0% longer."
        ),
        tr_later("Mulavara and others"),
        2010,
        "Mulavara and others, Locomotor function after long-duration space flight, Exp. Brain Res. 202(3), 649-659 (2010)",
        tr_later("Nearly: 95 % of the way."),
    ),
    BodyFinding(
        "stones.counted",
        "stones",
        "against",
        (_DAYS, *_LONG),
        tr_later(
            "Of 14 kidney stones in US astronauts up to 2008, over 5,434.5 person-years, 7 came before a flight, 7 after one, and none "
            "on one."
        ),
        tr_later("Pietrzyk, as quoted"),
        None,
        "npj Microgravity, article s41526-021-00187-z, quoting Pietrzyk",
        tr_later(
            "The same page tells of one cosmonaut who passed a stone in orbit. More calcium in the urine makes stones likelier."
        ),
    ),
    BodyFinding(
        "sickness.first",
        "sickness",
        "both",
        (_HOURS, _DAYS),
        tr_later(
            "On a first Shuttle flight 57 of 85 people were space-sick, 11 of them severely; severe cases last up to 72 hours."
        ),
        tr_later("Davis and others"),
        1988,
        "Davis, Vanderploeg, Santy, Jennings & Stewart, Space motion sickness during 24 flights of the Space Shuttle, Aviat. Space "
        "Environ. Med. 59(12), 1185-1189 (1988)",
        tr_later("The 72 hours are another source's: chapter doi 10.4324/9781315799506-100."),
    ),
    BodyFinding(
        "exercise.set_aside",
        "exercise",
        "aside",
        _LONG,
        tr_later(
            "On a station up to 2.5\u00a0hours of each day are set aside for exercise, getting ready and clearing up included."
        ),
        tr_later("Quoted beside Moore"),
        None,
        "A later paper quoted on the citation page of Moore and others, Peak exercise oxygen uptake during and following "
        "long-duration spaceflight, J. Appl. Physiol. (2014)",
        tr_later("Of this about 30 minutes are aerobic and 45 resistive exercise."),
    ),
    BodyFinding(
        "exercise.done",
        "exercise",
        "both",
        _LONG,
        tr_later(
            "46 people trained about 600\u00a0minutes a week, 1.43\u00a0hours a day, for half a year; it did not protect them fully: what "
            "was measured changed by −30 to +5\u00a0%."
        ),
        tr_later("Scott and others"),
        2023,
        "Scott and others, Effects of exercise countermeasures on multisystem function in long duration spaceflight astronauts, npj "
        "Microgravity 9, 11 (2023)",
        tr_later("178 days, with a standard deviation of 48."),
    ),
    BodyFinding(
        "centrifuge.bed_rest",
        "centrifuge",
        "both",
        _LONG,
        tr_later(
            "In 60 days of bed rest the calf lost 48\u00a0% of its strength; with 30\u00a0minutes a day on a short centrifuge, 1\u00a0g at "
            "the body's middle, it lost 31\u00a0%, or 35\u00a0% in six turns of five minutes. Jumping power fell by 33, 26 and 25\u00a0%. "
            "Fitness and the knee's strength were no better for it: 24 people."
        ),
        tr_later("Bed-rest study AGBRESA"),
        2021,
        "AGBRESA bed-rest study, PMC8192329 (Kramer and others, Eur. J. Appl. Physiol. (2021))",
        tr_later(
            "Authors and journal from memory. Of 960 runs 10 were stopped early, 8 of them continuous ones (Frett and others, PLoS ONE "
            "15, e0239228 (2020))."
        ),
    ),
    BodyFinding(
        "part.mice",
        "part",
        "open",
        _LONG,
        tr_later(
            "Mice on a station kept the size of a calf muscle at 0.33\u00a0g, and its strength and kind of fibre only at 0.67\u00a0g."
        ),
        tr_later("Mice at part of their weight"),
        None,
        "0.33g mitigates muscle atrophy while 0.67g preserves muscle function and myofiber type composition in mice during "
        "spaceflight, Science Advances",
        tr_later(
            "Levels that were tried, no thresholds; mice, for about a month. Authors and year are not on the copy that was read."
        ),
        levels_g=((0.33, tr_later("at which size was kept")), (0.67, tr_later("at which strength was, too"))),
    ),
    BodyFinding(
        "part.vein",
        "part",
        "open",
        (_HOURS,),
        tr_later(
            "The vein at the neck of nine people who sat had a cross-section of 12\u00a0mm² at 1\u00a0g, 24 at 0.75\u00a0g, 34 at "
            "0.5\u00a0g and 68 at 0.25\u00a0g, and 103 when they lay on Earth: tried for minutes only."
        ),
        tr_later("Veins in partial gravity"),
        2020,
        "Venous and arterial responses to partial gravity, Front. Physiol. 11, 863 (2020)",
        tr_later("On parabolic flights. Flow turned pulsatile at 0.5 g and below."),
        levels_g=(
            (0.25, tr_later("tried")),
            (0.5, tr_later("tried")),
            (0.75, tr_later("tried")),
            (1.0, tr_later("tried")),
        ),
    ),
    BodyFinding(
        "part.none_long",
        "part",
        "open",
        (_DAYS, *_LONG),
        tr_later("Of 43 studies of people at 0.1 to 0.4\u00a0g none is of a long stay: 0 of 43."),
        tr_later("Systematic review"),
        2017,
        "Human biomechanical and cardiopulmonary responses to partial gravity - a systematic review, Front. Physiol. 8, 583 (2017)",
        tr_later("The longest stay at a sixth of Earth's gravity was 75 hours, on the Moon (from memory)."),
    ),
    BodyFinding(
        "part.too_little",
        "part",
        "open",
        _LONG,
        tr_later(
            "One paper says that there is no direct evidence of long-term effects, and that what indirect evidence there is suggests that "
            "less than 0.4\u00a0g is too little."
        ),
        tr_later("Jones"),
        2021,
        "H. W. Jones, NASA Ames, ICES 2021, NTRS record 20210019591",
        levels_g=((0.4, tr_later("it names")),),
    ),
)
