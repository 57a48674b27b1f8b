"""The talks ready to give say what is true: every figure in a line or in notes is that of its step's scene, by the answer or by the closed
form named beside it; each is as long as it may be, legible, and asks before it shows.
"""

import math
import re
from functools import cache

import numpy as np

from rimfall import api
from rimfall.comfort.published import LIMITS, ROWS, STUDIES
from rimfall.phrases import caution, caution_about_people
from rimfall.talk import examples
from rimfall.talk.length import played_s, spoken_s
from tests.tables import each_row

BALL, WHEEL = examples.NAMES
G0_M_S2 = 9.80665  # exact, CGPM 1901
FIGURE = re.compile(r"\d+(?:\.\d+)?")
WORDS = {
    "Three and a half": 3.5,
    "three quarters": 3 / 4,
    "one and a half": 3 / 2,
    "half a second": 1 / 2,
    "halved": 1 / 2,
    "third": 1 / 3,
    "sixth": 1 / 6,
    "Eight": 8,
}


@cache
def talk(name):
    return api.open_talk(name)


@cache
def traced(name, number, air=False):
    """The Answer to a step's scene, numbered from 1, with the air that it leaves out if so wanted."""
    scene = talk(name).steps[number - 1].scene
    if air:
        scene = api.open_scene(scene.model_dump(mode="json") | {"air": {}})
    return api.trace(scene)


@cache
def felt(number):
    return api.feel(talk(WHEEL).steps[number - 1].scene)["figures"]


def words(name, number):
    step = talk(name).steps[number - 1].step
    return f"{step.line} {step.notes}"


def motion(name, number, of, air=False):
    return traced(name, number, air).motions[of]


def drift_m(name, number, of, air=False):
    path = motion(name, number, of, air)
    return path.landing.along_m - path.along_m[0]


def omega(name, number):
    return talk(name).steps[number - 1].scene.habitat.spin_rpm * 2 * math.pi / 60


def field(name, number, of):
    return next(one for one in talk(name).steps[number - 1].scene.motions if one.name == of)


def hand_m_s(of):
    """Speed of a hand that goes round: omega times its distance from the axis."""
    return omega(BALL, 1) * (56 - field(BALL, 1, of).place.height_m)


def thrown_m_s(of):
    """Speed of a throw as seen by who does not turn: the thrower's and its own, as vectors."""
    throw = field(BALL, 7, of)
    level = throw.speed_m_s * math.cos(math.radians(throw.elevation_deg)) * math.cos(math.radians(throw.heading_deg))
    return math.hypot(hand_m_s(of) + level, throw.speed_m_s * math.sin(math.radians(throw.elevation_deg)))


def radius_m(spin_rpm):
    """Radius of the same gravity at another spin: that goes as spin squared times radius."""
    return 56 * (3 / spin_rpm) ** 2


def limit(study, year):
    """The most spin that a study allows, rpm."""
    of = next(one.id for one in STUDIES.values() if (one.name, one.year) == (study, year))
    return next(row.limit for row in ROWS if (row.study, row.quantity) == (of, "spin") and row.bound in LIMITS)


def gravity_g(name, number):
    part = talk(name).steps[number - 1].scene.habitat
    return omega(name, number) ** 2 * part.radius_m / G0_M_S2


def most_shortened_m():
    names = ("Dropped ball", "Straight up", "With the spin", "Against the spin")
    return max(abs(drift_m(BALL, 1, of)) - abs(drift_m(BALL, 1, of, air=True)) for of in names)


LIMITED = sorted({row.limit for row in ROWS if row.quantity == "spin" and row.bound in LIMITS})  # rpm
D, U, W, A, R = "Dropped ball", "Straight up", "With the spin", "Against the spin", "Thrown back"
SAID = (  # talk, step, what it says, the value of that
    (BALL, 1, "56 metres from the axis", lambda: talk(BALL).steps[0].scene.habitat.radius_m),
    (BALL, 1, "once in 20 seconds", lambda: 2 * math.pi / omega(BALL, 1)),
    (BALL, 1, "17.6 metres a second", lambda: omega(BALL, 1) * 56),
    (BALL, 1, "56 percent of what", lambda: 100 * gravity_g(BALL, 1)),
    (BALL, 1, "one and a half metres shorter", most_shortened_m),
    (BALL, 2, "three quarters of a second", lambda: motion(BALL, 2, D).landing.time_s),
    (BALL, 2, "24 centimetres behind", lambda: -100 * drift_m(BALL, 2, D)),
    (BALL, 4, "1.6 metres nearer", lambda: field(BALL, 4, D).place.height_m),
    (BALL, 4, "at 17.1 metres a second", lambda: hand_m_s(D)),
    (BALL, 4, "the floor at 17.6", lambda: omega(BALL, 4) * 56),
    (BALL, 5, "Eight metres a second", lambda: field(BALL, 5, U).speed_m_s),
    (BALL, 5, "half a second and then waits", lambda: talk(BALL).steps[4].step.ask.until_s),
    (BALL, 5, "5.95 metres ahead", lambda: drift_m(BALL, 5, U)),
    (BALL, 5, "after 2.6 seconds", lambda: motion(BALL, 5, U).landing.time_s),
    (BALL, 5, "6.7 metres up", lambda: motion(BALL, 5, U).height_m.max()),
    (BALL, 6, "it says 0.51 g", lambda: 2 * omega(BALL, 6) * field(BALL, 6, U).speed_m_s / G0_M_S2),
    (BALL, 6, "which is 0.55 g there", lambda: omega(BALL, 6) ** 2 * (56 - field(BALL, 6, U).place.height_m) / G0_M_S2),
    (BALL, 7, "at 6 metres a second", lambda: field(BALL, 7, W).speed_m_s),
    (BALL, 7, "35 degrees up", lambda: field(BALL, 7, A).elevation_deg),
    (BALL, 7, "after 1.1 seconds", lambda: motion(BALL, 7, W).landing.time_s),
    (BALL, 7, "5.4 metres away", lambda: drift_m(BALL, 7, W)),
    (BALL, 7, "12.2 metres away", lambda: -drift_m(BALL, 7, A)),
    (BALL, 7, "after 2.7 seconds", lambda: motion(BALL, 7, A).landing.time_s),
    (BALL, 8, "at 17.1 metres a second", lambda: hand_m_s(W)),
    (BALL, 8, "at 22.3 metres a second", lambda: thrown_m_s(W)),
    (BALL, 8, "against it at 12.7", lambda: thrown_m_s(A)),
    (BALL, 9, "17.1 metres a second", lambda: field(BALL, 9, R).speed_m_s),
    (BALL, 9, "62 kilometres an hour", lambda: 3.6 * field(BALL, 9, R).speed_m_s),
    (BALL, 9, "1.5 metres over the floor", lambda: motion(BALL, 9, R).height_m.min()),
    (BALL, 9, "after 20 seconds", lambda: 2 * math.pi * 54.5 / field(BALL, 9, R).speed_m_s),
    (BALL, 10, "takes 20 seconds", lambda: 2 * math.pi / omega(BALL, 10)),
    (BALL, 10, "after 3.2 seconds", lambda: motion(BALL, 10, R, air=True).landing.time_s),
    (WHEEL, 1, "10 metres from the axis", lambda: talk(WHEEL).steps[0].scene.habitat.radius_m),
    (WHEEL, 1, "7.1 times a minute", lambda: talk(WHEEL).steps[0].scene.habitat.spin_rpm),
    (WHEEL, 1, "once in 8.5 seconds", lambda: 2 * math.pi / omega(WHEEL, 1)),
    (WHEEL, 1, "56 percent", lambda: 100 * gravity_g(WHEEL, 1)),
    (WHEEL, 2, "67 centimetres away", lambda: -100 * drift_m(WHEEL, 2, D)),
    (WHEEL, 3, "Now 56 metres", lambda: talk(WHEEL).steps[2].scene.habitat.radius_m),
    (WHEEL, 3, "about a third of that", lambda: drift_m(WHEEL, 3, D) / drift_m(WHEEL, 2, D)),
    (WHEEL, 3, "turns 3 times", lambda: talk(WHEEL).steps[2].scene.habitat.spin_rpm),
    (WHEEL, 3, "24 centimetres away", lambda: -100 * drift_m(WHEEL, 3, D)),
    (WHEEL, 4, "At 200 metres", lambda: talk(WHEEL).steps[3].scene.habitat.radius_m),
    (WHEEL, 4, "it is 12 centimetres", lambda: -100 * drift_m(WHEEL, 4, D)),
    (WHEEL, 4, "turns 1.6 times", lambda: talk(WHEEL).steps[3].scene.habitat.spin_rpm),
    (WHEEL, 4, "once in 38 seconds", lambda: 2 * math.pi / omega(WHEEL, 4)),
    (WHEEL, 4, "Three and a half times the radius", lambda: 200 / 56),
    (WHEEL, 4, "about halved", lambda: drift_m(WHEEL, 4, D) / drift_m(WHEEL, 3, D)),
    (WHEEL, 5, "Back to 10 metres", lambda: talk(WHEEL).steps[4].scene.habitat.radius_m),
    (WHEEL, 5, "at 1.4 metres a second", lambda: field(WHEEL, 5, "Walking with the spin").speed_m_s),
    (WHEEL, 5, "makes 0.80 of that weight", lambda: felt(5)["walk_spinward_g"]),
    (WHEEL, 5, "standing 0.56", lambda: felt(5)["feet_g"]),
    (WHEEL, 5, "against the spin 0.37", lambda: felt(5)["walk_antispinward_g"]),
    (WHEEL, 6, "At 56 metres", lambda: talk(WHEEL).steps[5].scene.habitat.radius_m),
    (WHEEL, 6, "0.66 with the spin", lambda: felt(6)["walk_spinward_g"]),
    (WHEEL, 6, "0.56 standing", lambda: felt(6)["feet_g"]),
    (WHEEL, 6, "0.48 against it", lambda: felt(6)["walk_antispinward_g"]),
    (WHEEL, 6, "about a sixth", lambda: (felt(6)["walk_spinward_g"] - felt(6)["walk_antispinward_g"]) / 2 / felt(6)["feet_g"]),
    (WHEEL, 6, "17.6 metres a second here", lambda: omega(WHEEL, 6) * 56),
    (WHEEL, 6, "at 7.4 in the small wheel", lambda: omega(WHEEL, 5) * 10),
    (WHEEL, 7, "at most 0.1", lambda: min(LIMITED)),
    (WHEEL, 7, "or 1, 3", lambda: LIMITED[2]),
    (WHEEL, 7, "or 1", lambda: LIMITED[1]),
    (WHEEL, 7, "3, 4", lambda: LIMITED[3]),
    (WHEEL, 7, "4 or 6", lambda: max(LIMITED)),
    (WHEEL, 7, "Clark & Hardy 1960: 0.1", lambda: limit("Clark & Hardy", 1960)),
    (WHEEL, 7, "SP-413 1977, for everybody in a settlement: 1", lambda: limit("SP-413", 1977)),
    (WHEEL, 7, "Cramer 1985: 3", lambda: limit("Cramer", 1985)),
    (WHEEL, 7, "Hill & Schnitzer 1962: 4", lambda: limit("Hill & Schnitzer", 1962)),
    (WHEEL, 7, "Gilruth 1969, Gordon & Gervais 1969 and Stone 1973: 6", lambda: limit("Gilruth", 1969)),
    (WHEEL, 7, "Gordon & Gervais 1969 and Stone 1973: 6", lambda: limit("Gordon & Gervais", 1969)),
    (WHEEL, 7, "Stone 1973: 6", lambda: limit("Stone", 1973)),
    (WHEEL, 7, "All but SP-413", lambda: 413),
    (WHEEL, 7, "T. W. Hall of 1997", lambda: 1997),
    (WHEEL, 8, "they ask for 14", lambda: radius_m(6)),
    (WHEEL, 8, "14 metres, or 31.5", lambda: radius_m(4)),
    (WHEEL, 8, "31.5, or 56", lambda: radius_m(3)),
    (WHEEL, 8, "56, or 504", lambda: radius_m(1)),
    (WHEEL, 8, "Six turns a minute make 14", lambda: radius_m(limit("Stone", 1973))),
    (WHEEL, 8, "four make 31.5", lambda: radius_m(limit("Hill & Schnitzer", 1962))),
    (WHEEL, 8, "three make the 56", lambda: radius_m(limit("Cramer", 1985))),
    (WHEEL, 8, "one makes 504", lambda: radius_m(limit("SP-413", 1977))),
    (WHEEL, 8, "make 50 kilometres", lambda: radius_m(limit("Clark & Hardy", 1960)) / 1000),
)  # fmt: skip


@each_row(("name", "number", "says", "value"), SAID)
def test_what_is_said_is_so(name, number, says, value):
    """As near as the figure is said; a share in words to a tenth of it."""
    assert says in words(name, number)
    figures = FIGURE.findall(says)
    if figures:
        shown = figures[-1]
        assert abs(value() - float(shown)) <= 0.5 * 10.0 ** -len(shown.partition(".")[2]) + 1e-9
    else:
        said = next(figure for word, figure in WORDS.items() if word in says)
        assert abs(value() / said - 1) < 0.1


@each_row(("name", "number"), [(name, 1 + k) for name in examples.NAMES for k in range(len(talk(name).steps))])
def test_no_figure_is_said_that_is_not_looked_at(name, number):
    left = words(name, number)
    for _, _, says, _ in sorted((row for row in SAID if row[:2] == (name, number)), key=lambda row: -len(row[2])):
        left = left.replace(says, " ")
    assert FIGURE.findall(left) == []


def test_what_the_first_talk_tells_is_what_happens():
    """Closed forms in vacuum: who is let go flies a straight line from where the hand was, at the hand's speed and the throw's."""
    for of in (D, U, W, A, R):
        path = motion(BALL, 1, of)
        line = (
            np.gradient(path.inertial_m, path.time_s, axis=0)
            if path.landing is None
            else np.diff(path.inertial_m, axis=0)
        )
        assert np.ptp(line, axis=0).max() < 1e-6
    up = motion(BALL, 6, U)
    rises = np.gradient(up.height_m) > 0
    assert np.ptp(motion(BALL, 9, R).height_m) < 1e-3
    assert np.ptp(motion(BALL, 10, R).inertial_m, axis=0).max() < 1e-3
    way = motion(BALL, 9, R).along_m
    assert (np.diff(way) < 0).all()
    assert abs(way[-1] - way[0] + 2 * math.pi * 56) < 0.01
    along = -2 * omega(BALL, 6) * np.cross([0.0, 0.0, 1.0], up.rotating_velocity_m_s)
    spinward = np.cross([0.0, 0.0, 1.0], up.rotating_m / np.linalg.norm(up.rotating_m, axis=1)[:, None])
    pushed = np.sum(along * spinward, axis=1)
    assert (pushed[1:-1][rises[1:-1]] > -0.05).all()
    assert (pushed[1:-1][~rises[1:-1]] < 0.05).all()
    assert -drift_m(BALL, 7, A) > 2 * drift_m(BALL, 7, W)
    assert motion(BALL, 7, A).landing.time_s > talk(BALL).steps[6].step.ask.until_s > motion(BALL, 7, W).landing.time_s


def test_three_wheels_give_one_weight_and_walking_against_the_spin_takes_more_than_half():
    weights = [gravity_g(WHEEL, number) for number in range(1, 9)]
    assert max(weights) - min(weights) < 0.001
    assert felt(5)["walk_antispinward_g"] < felt(5)["walk_spinward_g"] / 2


@each_row("number", (6, 7, 8))
def test_limits_stand_beside_their_caution(number):
    assert caution_about_people() in talk(WHEEL).steps[number - 1].step.notes
    assert talk(WHEEL).steps[number - 1].step.place == 4
    assert caution() in talk(WHEEL).about


@each_row("name", examples.NAMES)
def test_it_is_told_in_less_than_eight_minutes_and_in_whole_sentences(name):
    steps = talk(name).steps
    assert len(steps) == {BALL: 10, WHEEL: 8}[name]
    taken_s = 0.0
    for number, given in enumerate(steps, start=1):
        paths = [path for of, path in traced(name, number).motions.items() if of not in given.step.hidden]
        taken_s += spoken_s(given) + played_s(given, max(path.time_s[-1] for path in paths))
        assert re.fullmatch(r"[A-Z][^\n]{10,88}[.?]", given.step.line)
        assert len(given.step.notes.split()) >= 25
    assert 240 < taken_s < 480
    assert sum(given.step.ask is not None for given in steps) >= {BALL: 2, WHEEL: 1}[name]
