"""What bodies did without their weight, with part of it, and on short centrifuges: values as their sources print them. The sources,
and which of them were read, are in the notes. The program lists them: `tests/comfort/test_without_weight.py` holds its list against these."""

from .row import Row

FOUND = {
    "BOD-01": Row(
        "bone mineral density loss at the femoral neck (hip), long flights", {}, 1.5, "% per month", 0.05, "last digit",
        "Clin. Calcium 16(1), 2006, PMID 16397355",
    ),
    "BOD-02": Row("the same at the lumbar spine", {}, 0.9, "% per month", 0.05, "last digit", "the same review"),
    "BOD-03": Row(
        "bone density loss in the lower limbs, meta-analysis of 148 travellers", {"ci95_low": 0.5, "ci95_high": 1.1}, 0.8,
        "% per month", 0.05, "last digit", "npj Microgravity 6, 13 (2020)",
    ),
    "BOD-04": Row(
        "total hip areal density loss after six months on a station with present exercise, n = 23", {"sd_percent": 2.4}, 3.9,
        "%", 0.05, "last digit", "abstract; authors and year not shown",
    ),
    "BOD-05": Row(
        "whole-body calcium loss at the end of week 12", {"rate_at_week_1_mg_per_day": 50}, 300.0, "mg/day", 25.0,
        "source says approximately", "Rambaut & Johnston, Acta Astronautica 6(9) (1979)",
    ),
    "BOD-06": Row(
        "calcium lost from the end of week 1 to that of week 12, exponential rise",
        {"rate_start_mg_per_day": 50.0, "rate_end_mg_per_day": 300.0, "days": 77.0}, 10.74, "g", 0.01,
        "closed form (300 - 50) x 77/ln 6", "computed from the two rates of BOD-05",
    ),
    "BOD-07": Row(
        "loss of intrinsic back muscle volume", {"days": 8}, 10.3, "%", 0.05, "last digit",
        "LeBlanc et al., Aviat. Space Environ. Med. 66(12), 1151 (1995)",
    ),
    "BOD-08": Row(
        "largest muscle-group volume loss, all but the neck", {"weeks_min": 16, "weeks_max": 28, "loss_min_percent": 5}, 17.0, "%",
        0.5, "last digit", "LeBlanc et al., J. Appl. Physiol. 89(6), 2158 (2000)",
    ),
    "BOD-09": Row(
        "largest calf muscle volume loss, n = 4", {"days": 181, "loss_min_percent": 10}, 16.0, "%", 0.5, "last digit",
        "Gopalakrishnan et al., Aviat. Space Environ. Med. 81(2), 91 (2010)",
    ),
    "BOD-10": Row(
        "scheduled exercise a day on a station, with preparation and clean-up", {}, 2.5, "h/day", 0.05, "printed as up to 2.5 h",
        "a later paper quoted beside Moore et al., J. Appl. Physiol. (2014)",
    ),
    "BOD-11": Row(
        "exercise done", {"minutes_per_week": 600.0}, 1.43, "h/day", 0.005, "600/7/60; the printed 600 is approximate",
        "Scott et al., npj Microgravity 9, 11 (2023)",
    ),
    "BOD-12": Row("fluid leaving the legs, n = 6", {}, 2.2, "L", 0.05, "last digit", "PhD dissertation, Purdue (1988)"),
    "BOD-13": Row(
        "plasma volume loss within the first day", {}, 17.0, "%", 1.0, "recalled; later flights 10-15 %",
        "Alfrey et al., J. Appl. Physiol. 81, 98 (1996); from memory",
    ),
    "BOD-14": Row(
        "red blood cells destroyed, against 2 million a second on Earth", {"increase_percent": 54}, 3.08e6, "1/s", 1e5,
        "press text rounds to 3 million", "Trudel et al., Nat. Med. 28 (2022)",
    ),
    "BOD-16": Row(
        "share of long-duration crew with worse near vision", {}, 60, "%", 2, "printed as approximately 60 %",
        "J. Neuro-Ophthalmol. (2016), restating Mader et al., Ophthalmology 118, 2058 (2011)",
    ),
    "BOD-17": Row(
        "near fainting in the tilt test after 129-190 days; after short flights 5 of 20", {"presyncopal": 5, "tested": 6},
        0.833, "1", 0.0005, "5/6", "Meck et al., Psychosom. Med. 63(6), 865 (2001)",
    ),
    "BOD-18": Row(
        "space motion sickness on a first Shuttle flight", {"cases": 57, "crew": 85}, 0.67, "1", 0.005, "last digit",
        "Davis et al., Aviat. Space Environ. Med. 59(12), 1185 (1988)",
    ),
    "BOD-19": Row(
        "internal jugular vein cross-section, seated, parabolic flight, n = 9", {"level_g": 0.5, "supine_mm2": 103}, 34.0, "mm^2",
        0.5, "last digit", "Front. Physiol. 11, 863 (2020)",
    ),
    "BOD-20": Row(
        "symptomatic kidney stones in US astronauts to 2008, per 1000 person-years", {"events": 14, "person_years": 5434.5}, 2.576,
        "1/(1000 person-years)", 0.0005, "14/5434.5", "npj Microgravity s41526-021-00187-z, quoting Pietrzyk",
    ),
    "BOD-21": Row(
        "days after landing to recover 95 % of pre-flight walking, n = 18", {"flight_days": 185}, 15.0, "days", 1.0,
        "printed as approximately 15 days", "Mulavara et al., Exp. Brain Res. 202(3), 649 (2010)",
    ),
    "BOD-23": Row(
        "plantar-flexion strength loss in 60 days of bed rest with 30 min a day of centrifuge at 1 g at the centre of mass",
        {"control_loss_percent": 48, "intermittent_6x5min_loss_percent": 35, "days": 60, "minutes_per_day": 30}, 31.0, "%", 0.5,
        "last digit", "AGBRESA, PMC8192329 (2021)",
    ),
    "BOD-24": Row(
        "lowest tested level that kept muscle performance and fibre type in mice", {"level_size_kept_g": 0.33}, 0.67, "g", 0.005,
        "a tested level, not an interpolated threshold", "Science Advances; authors and year not shown",
    ),
    "BOD-25": Row(
        "studies of long-term human exposure to partial gravity, 0.1-0.4 g", {"studies_included": 43}, 0, "studies", 0,
        "printed as none of the 43", "Front. Physiol. 8, 583 (2017)",
    ),
}  # fmt: skip
