"""A tumble varied: every file of it and of what is dropped meanwhile, against scipy's own integration of Euler's equations."""

import csv

import numpy as np
import pytest
from scipy.integrate import solve_ivp
from scipy.spatial.transform import Rotation

from tests.sweep import runs
from tests.sweep.test_grid import refusals

MASS_KG, SIZE_M, RADIUS_M, SPIN_RPM = 60e3, np.array([12.0, 9.0, 40.0]), 7.0, 6.0
DROPPED_S, HEIGHT_M, UNTIL_S = 2.0, 1.2, 3.0
TUMBLE = {"kind": "tumble", "name": "over", "about_x_rpm": 0.3, "about_y_rpm": 0.8}
DROP = {"kind": "drop", "name": "cup", "place": {"height_m": HEIGHT_M}, "start_s": DROPPED_S, "body": runs.POINT}
HULL = {"name": "hull", "group": "turning", "solid": "box", "mass_kg": MASS_KG, "size_m": SIZE_M.tolist()}
SCENE = {
    "rimfall": 1,
    "title": "Over and over",
    "habitat": {"radius_m": RADIUS_M, "spin_rpm": SPIN_RPM, "width_m": 34.0},
    "air": None,
    "craft": {
        "rimfall_craft": 1,
        "parts": [HULL],
        "tumble": {"rates_rpm": [0.3, 0.8, SPIN_RPM], "duration_s": UNTIL_S},
    },
    "motions": [TUMBLE, DROP],
    "sampling": {"duration_s": UNTIL_S},
}
TO_FILE = np.array([[0.0, 1.0, 0.0], [-1.0, 0.0, 0.0], [0.0, 0.0, 1.0]])  # x out, y spinward to X spinward, Y up
MOMENTS = (
    MASS_KG / 12 * (np.sum(SIZE_M**2) - SIZE_M**2)
)  # of a solid box: Goldstein et al. (2002), 5.3; any table of them


@pytest.fixture(autouse=True)
def one_after_another(monkeypatch):
    monkeypatch.setattr("rimfall.sweep.local.each", runs.one_after_another)


def turning(about_y_rpm, losses_s):
    """(L in body axes and attitude) by time: momentum stands still in the room, and energy falls by the double bracket."""
    rates = np.array([TUMBLE["about_x_rpm"], about_y_rpm, SPIN_RPM]) * np.pi / 30
    first = MOMENTS * rates
    size = np.linalg.norm(first)
    loss = 1 / (losses_s * size**2 * (1 / MOMENTS.min() - 1 / MOMENTS.max())) if losses_s else 0.0

    def rates_of(momentum):
        return momentum / MOMENTS + loss * np.cross(momentum, momentum / MOMENTS)

    def change(_, state):
        momentum, v, w = state[:3], state[3:6], state[6]
        rates = rates_of(momentum)
        return np.concatenate([np.cross(momentum, rates), (w * rates + np.cross(v, rates)) / 2, [-v @ rates / 2]])

    start = np.concatenate([first, [0, 0, 0, 1]])
    done = solve_ivp(change, (0, UNTIL_S), start, method="DOP853", rtol=1e-12, atol=1e-9, dense_output=True)
    return lambda time_s: (rates_of(done.sol(time_s)[:3]), Rotation.from_quat(done.sol(time_s)[3:]))


def compare(path, about_y_rpm, losses_s):
    at = turning(about_y_rpm, losses_s)
    rates, lies = at(DROPPED_S)
    held = np.array([RADIUS_M - HEIGHT_M, 0.0, 0.0])  # from the centre of mass, on the axis
    place, velocity = lies.apply(held), lies.apply(np.cross(rates, held))
    seen = set()
    with path.open(encoding="utf-8", newline="") as file:
        for row in csv.DictReader(file):
            time_s, number = float(row["time_s"]), int(row["id"])
            if number == 0:
                w, x, y, z = (float(row[name]) for name in ("qw", "qx", "qy", "qz"))
                wanted = TO_FILE @ at(time_s)[1].as_matrix() @ TO_FILE.T
                np.testing.assert_allclose(Rotation.from_quat([x, y, z, w]).as_matrix(), wanted, atol=1e-5)
            elif time_s >= DROPPED_S:
                found = [float(row[name]) for name in ("x_m", "y_m", "z_m")]
                np.testing.assert_allclose(found, TO_FILE @ (place + velocity * (time_s - DROPPED_S)), atol=1e-5)
            seen.add(number)
    assert seen == {0, 1}


def test_each_way_to_tumble_has_the_files_that_euler_s_equations_ask_for(tmp_path):
    over = ("--over", "motions.over.losses_s=null,4", "--over", "motions.over.about_y_rpm=0.2,1.5")
    how = ("--export", "csv", "--view", "inertial", "--turning", "quaternion", "--workers", 1)
    done = runs.vary(runs.saved(tmp_path, SCENE), tmp_path / "out", *over, *how)
    assert done.returncode == 0, done.stderr
    with (tmp_path / "out/index.csv").open(encoding="utf-8", newline="") as file:
        rows = list(csv.DictReader(file))
    assert len(rows) == 4
    for row in rows:
        losses = row["motions.over.losses_s"]
        losses_s = None if losses == "null" else float(losses)
        compare(tmp_path / "out" / row["csv_file"], float(row["motions.over.about_y_rpm"]), losses_s)


def test_what_no_path_or_file_shows_is_not_varied():
    (say,) = refusals("craft.tumble.duration_s=8,12", document=SCENE)
    assert say == (
        "--over craft.tumble.duration_s: no path or file of the scene shows it; of its craft vary craft.parts or craft.counter_rpm, "
        "and how it tumbles by the fields of motions.over."
    )
    still = SCENE | {"motions": [DROP]}
    (say,) = refusals("craft.tumble.duration_s=8,12", document=still)
    assert say.endswith("of its craft vary craft.parts or craft.counter_rpm.")
