"""Throws that arrive against a scan of all throws: none missed, none invented. `python -m tests.aim_scan` prints its table.

    python -m tests.aim_scan --scenes 60 --vacuum 200000 --air 20000
    python -m tests.aim_scan --only 17 --fixed least

Each scene, drawn at random from its number, has a shape, a thrower and a place to hit, and is asked what is fixed in it (a speed or an
elevation), a flight time, and the least speed. So many throws that keep to what is fixed are flown as a scene's motions are, to where
they first meet something, and looked at at even times; wherever one comes near, a search downhill from there (Nelder & Mead, by scipy)
tells how near throws about it do. Each place that comes within reach so must be a way of the answer, and each way of the answer, flown,
must come within reach. Where the flight time is fixed, throws of every speed and direction are looked at as it ends; where the speed is
to be the least, all slower ones at all times, and the throw that comes to the very point as soon as one of them comes near must not be
slower than that of the answer, unless something is in its way.
"""

import argparse
import time
from itertools import islice

import numpy as np
from scipy.optimize import minimize, root
from scipy.spatial import cKDTree

import rimfall
from rimfall.errors import BadInput
from rimfall.scene.reading import as_json, read_aim
from rimfall.scene.shot import aim
from rimfall.shots import throws
from rimfall.shots.shooting import Shooting

SHAPES = ("cylinder", "cylinder", "torus", "sphere", "pods", "tether", "tumbler", "turntable")
BODIES = ("handball", "tennis ball", "baseball", "steel ball 20 mm")
MOST_M_S = 40.0  # of throws that are scanned where the speed is free
FLIGHT, LEAST = "flight_s", "least"
LOOKS = 240  # at a flight
AT_ONCE = 2_000


def drawn(number, fixed=None):
    """A request drawn at random from its number; every other one is in air. fixed: FLIGHT or LEAST, if not a speed or an elevation."""
    rng = np.random.default_rng([2026, number])
    while True:
        document = _drawn(rng, number % 2 == 1)
        try:
            flight_s = 0.4 * document["flight_max_s"]
            if rng.random() < 0.8:
                document["to"], flight_s = _on_a_throw(rng, document)
            if fixed is not None:
                document["fixed"] = {FLIGHT: flight_s} if fixed == FLIGHT else {LEAST: "speed_m_s"}
            return read_aim(as_json(document))
        except BadInput:
            continue


def _on_a_throw(rng, document):
    """Hands that a throw drawn at random comes to, before it meets anything, if it can, and after how long."""
    fixed, motion = document["fixed"], document["scene"]["motions"][0]
    motion |= {
        "speed_m_s": float(rng.uniform(3, 15)),
        "heading_deg": float(rng.uniform(-180, 180)),
        "elevation_deg": float(rng.uniform(0, 85)),
    }
    motion |= fixed
    path = rimfall.trace(
        rimfall.open_scene(
            document["scene"] | {"sampling": {"duration_s": motion.get("start_s", 0.0) + document["flight_max_s"]}}
        )
    )
    path = path.motions["it"]
    k = int(rng.uniform(0.3, 0.97) * len(path.time_s))
    place = {name: float(getattr(path, name)[k]) for name in ("along_m", "height_m", "axial_m")}
    return place, float(path.time_s[k] - path.time_s[0])


def _drawn(rng, in_air):
    shape = str(rng.choice(SHAPES))
    radius = float(np.exp(rng.uniform(np.log(8), np.log(150))))
    habitat = {
        "shape": shape,
        "radius_m": radius,
        "spin_rpm": float(np.sqrt(rng.uniform(0.1, 1.2) * 9.8 / radius) * 30 / np.pi),
    }
    high, wide = 0.3 * radius, min(6.0, 0.3 * radius)
    if shape == "turntable":
        habitat["radius_m"] = radius = float(rng.uniform(1.5, 6.0))
        habitat["spin_rpm"], high, wide = float(rng.uniform(2, 30)), 1.5, radius
    elif shape == "torus":
        habitat["tube_radius_m"] = float(rng.uniform(0.1, 0.4) * radius)
        high, wide = 1.2 * habitat["tube_radius_m"], 0.5 * habitat["tube_radius_m"]
    elif shape == "cylinder":
        if rng.random() < 0.4:
            habitat["ceiling_m"] = high = float(rng.uniform(0.08, 0.5) * radius)
        if rng.random() < 0.4:
            habitat["hub_radius_m"] = float(rng.uniform(0.05, 0.3) * radius)
        if rng.random() < 0.5:
            habitat["width_m"] = 2 * wide
    elif shape in ("pods", "tether", "tumbler"):
        floor = {"name": "A", "radius_m": radius, "azimuth_deg": 0.0, "length_m": 1.2 * radius, "width_m": 2 * wide}
        if rng.random() < 0.5:
            floor["ceiling_m"] = high = float(rng.uniform(0.2, 0.6) * radius)
        habitat["floors"] = [floor]
        if shape != "pods":
            habitat["floors"].append(floor | {"name": "B", "azimuth_deg": 180.0})
    if shape not in ("turntable",) and rng.random() < 0.25:
        habitat["axial_thrust_m_s2"] = float(rng.uniform(-1, 1))
    if rng.random() < 0.25:
        habitat["spin_ramp"] = [
            {"time_s": 1.0, "spin_rpm": habitat["spin_rpm"]},
            {"time_s": 3.0, "spin_rpm": float(rng.uniform(0.6, 1.3)) * habitat["spin_rpm"]},
        ]
    across = (0.1, 0.9 * wide) if shape == "turntable" else (-0.8 * wide, 0.8 * wide)
    far = min(0.5 * radius, 25.0) if "floors" in habitat else np.pi * radius * rng.uniform(0.1, 1.0)

    def place(along):
        return {
            "along_m": along,
            "height_m": float(rng.uniform(0.15, 0.7)) * high,
            "axial_m": float(rng.uniform(*across)),
        }

    motion = {"kind": "throw", "name": "it", "place": place(0.0), "speed_m_s": 1.0, "elevation_deg": 0.0}
    motion["body"] = str(rng.choice(BODIES))
    if rng.random() < 0.3:
        motion["carried"] = {"speed_m_s": float(rng.uniform(0, 3)), "heading_deg": float(rng.uniform(-180, 180))}
    if rng.random() < 0.3:
        motion |= {"ball_spin_rpm": float(rng.uniform(-900, 900)), "ball_spin_axis": rng.normal(size=3).tolist()}
    if rng.random() < 0.3:
        motion["start_s"] = float(rng.uniform(0, 4))
    fixed = {"speed_m_s": float(rng.uniform(3, 20))}
    if rng.random() < 0.3:
        fixed = {"elevation_deg": float(rng.uniform(-20, 80))}
    return {
        "scene": {"rimfall": 1, "habitat": habitat, "air": {} if in_air else None, "motions": [motion]},
        "motion": "it",
        "to": place(float(rng.uniform(-far, far))),
        "within_m": float(rng.uniform(0.1, 0.4)),
        "fixed": fixed,
        "flight_max_s": float(rng.uniform(2, 6 if in_air else 12)),
    }


class Scan:
    """All throws of a question: where they are so many figures in [0, 1), (N, F), how near each comes to the hands, and when. fastest_m_s:
    of throws whose speed is free."""

    def __init__(self, question, fastest_m_s=MOST_M_S):
        self.question, self.thrower, self.fastest_m_s = question, question.thrower, fastest_m_s
        self.begin_s, self.in_air = self.thrower.hand.time_s, question.thrower.setting.air is not None
        self.figures = 3 if question.fixed.what in (FLIGHT, LEAST) else 2
        flight_s = question.flight_max_s
        self.looks_s = self.begin_s + flight_s * (np.arange(LOOKS) + 1.0) / LOOKS
        if question.fixed.what == FLIGHT:
            self.looks_s = np.array([self.begin_s + question.fixed.value])

    @property
    def starts_within_reach(self):
        """Whether the hand that throws is about within the catcher's reach itself."""
        hands = self.question.target.at(np.array([self.begin_s]))[0][0]
        return np.linalg.norm(hands - self.thrower.hand.position_m) < 2 * self.question.within_m

    def velocities(self, figures):
        """Local velocities (N, 3)."""
        fixed = self.question.fixed
        if fixed.what == "elevation_deg":
            return throws.aimed(np.abs(figures[:, 0]) * MOST_M_S, 360.0 * figures[:, 1], fixed.value)
        up = np.clip(2 * figures[:, -2] - 1, -1, 1)
        level, heading = np.sqrt(1 - up**2), 2 * np.pi * figures[:, -1]
        speed = np.full(len(figures), fixed.value) if self.figures == 2 else np.abs(figures[:, 0]) * self.fastest_m_s
        return speed[:, None] * np.stack([level * np.cos(heading), up, level * np.sin(heading)], axis=-1)

    def across(self, count):
        """So many throws between one end of each figure and the other, twice that of the last, make about count."""
        return int((count / 2) ** (1 / self.figures))

    def near(self, count):
        """Throws that come near, each where it comes nearest: figures (M, F), when (M,), how near (M,)."""
        across = self.across(count)
        rows, columns = (np.arange(across) + 0.5) / across, (np.arange(2 * across) + 0.5) / (2 * across)
        figures = np.stack(np.meshgrid(*[rows] * (self.figures - 1), columns), -1).reshape(-1, self.figures)
        parts = [self._near(figures[k : k + AT_ONCE], across) for k in range(0, len(figures), AT_ONCE)]
        return [np.concatenate(column) for column in zip(*parts, strict=True)]

    def _near(self, figures, across):
        velocities, question, times = self.velocities(figures), self.question, self.looks_s
        between_s = times[1] - times[0] if len(times) > 1 else 0.0
        places, ends = self._places(velocities, times, times[-1])
        hands, moving = question.target.at(times)
        apart = np.linalg.norm(places - hands, axis=2)
        apart[times[None] > ends[:, None] + between_s] = np.inf
        aside = np.pad(apart, ((0, 0), (1, 1)), constant_values=np.inf)
        with np.errstate(invalid="ignore"):
            low = (apart <= aside[:, :-2]) & (apart < aside[:, 2:])
        speed = (
            np.linalg.norm(velocities, axis=1)[:, None]
            + np.linalg.norm(moving, axis=1)
            + np.linalg.norm(self.thrower.hand.velocity_m_s)
        )
        enough = question.within_m + 4.0 / across * np.maximum(speed, 3.0) * (times - self.begin_s) + speed * between_s
        who, when = np.nonzero(low & (apart <= enough))
        return figures[who], times[when], apart[who, when]

    def _places(self, velocities, times, end_s):
        """Inertial places (N, T, 3) at times, and when each meets something (N,)."""
        if not self.in_air:
            hand, since = self.thrower.hand, (times - self.begin_s)[None, :, None]
            leaves = (hand.velocity_m_s + velocities @ self.thrower.axes)[:, None]
            ended = throws.ended(self.thrower, velocities)
            return hand.position_m + since * (leaves + 0.5 * since * np.array(hand.room.pull_m_s2)), ended.time_s
        flights = throws.flown(self.thrower, velocities, end_s)
        ends = np.array([f.path.end_s for f in flights])
        return np.array([f.path.at(np.minimum(times, f.path.end_s))[0] for f in flights]), ends

    def apart_m(self, figures, about_s, width_s):
        """How near one throw comes about a time, and when; where the flight time is fixed, how near as it ends."""
        velocities = self.velocities(np.asarray(figures)[None])
        if self.question.fixed.what == FLIGHT:
            return self._as_it_ends(velocities, about_s)
        end_s = min(about_s + width_s, self.begin_s + self.question.flight_max_s)
        flight = throws.flown(self.thrower, velocities, end_s)[0]
        low = np.clip(about_s - width_s, self.begin_s, flight.path.end_s)
        best = None
        for _ in range(4):
            times = np.linspace(low, min(flight.path.end_s, end_s), 33)
            apart = np.linalg.norm(flight.path.at(times)[0] - self.question.target.at(times)[0], axis=1)
            k = int(np.argmin(apart))
            best = apart[k], times[k]
            low, end_s = times[max(k - 1, 0)], times[min(k + 1, 32)]
        return best

    def _as_it_ends(self, velocities, end_s):
        path = throws.flown(self.thrower, velocities, end_s)[0].path
        last = np.array([min(path.end_s, end_s)])
        (place, moving), hands = path.at(last), self.question.target.at(last)[0]
        return float(np.linalg.norm(place - hands)) + float(np.linalg.norm(moving)) * (end_s - last[0]), end_s

    def to_the_point(self, velocity, lasts_s):
        """The throw that comes to the very point after so long, from one that comes near, or None; None where it meets something before."""
        end_s = self.begin_s + lasts_s
        hands = self.question.target.at(np.array([end_s]))[0][0]
        lasts = np.array([lasts_s])
        shooting = Shooting(self.thrower)
        best = root(lambda v: shooting.arrive(v[None], lasts)[0][0] - hands, velocity, tol=1e-9)
        path = throws.flown(self.thrower, best.x[None], end_s)[0].path
        comes = path.end_s >= end_s - 1e-9 and np.linalg.norm(path.at(np.array([end_s]))[0][0] - hands) < 1e-4
        return best.x if comes else None


def scan(number, count, most=14, fixed=None):
    """A row of the table: what a scan of so many throws finds in a scene, and what the answer has. most: places that are looked at more
    closely. fixed: as of `drawn`."""
    request = drawn(number, fixed)
    begin = time.process_time()
    found = aim.find(request).there.aim
    took_s = time.process_time() - begin
    looked, free = Scan(found.question), [(way.velocity, way.flight_s) for way in found.free]
    if fixed == LEAST and found.free:
        looked = Scan(found.question, min(found.free[0].aim[0], MOST_M_S))
    hits = _hits(looked, count, most)
    missed = [hit for hit in hits if not any(_same(looked.question, hit, way) for way in free)]
    if fixed == LEAST:
        missed = [hit for hit in missed if _slower(looked, hit)]
    return {
        "number": number,
        "shape": request.scene.habitat.shape,
        "air": looked.in_air,
        "fixed": request.fixed.model_dump(exclude_none=True),
        "ways": len(found.ways),
        "free": len(found.free),
        "hits": len(hits),
        "missed": [(*_aim(velocity), lasts_s) for velocity, lasts_s in missed],
        "invented": [(*_aim(way.velocity), way.flight_s) for way in found.free if not _arrives(looked, way)],
        "cpu_ms": 1e3 * took_s,
    }


def _slower(looked, hit):
    """Whether the throw to the very point, as soon as one of those that come near, is slower than all of the answer's."""
    exact = looked.to_the_point(*hit)
    return exact is not None and np.linalg.norm(exact) < looked.fastest_m_s * (1 - 1e-3)


def _hits(looked, count, most):
    """Throws that come within reach, and after how long, as a scan of so many finds them; each once."""
    question, hits = looked.question, []
    across, longest_s = looked.across(count), question.flight_max_s
    soonest_s = 0.05 * longest_s if looked.starts_within_reach and question.fixed.what != FLIGHT else 0.0
    figures, when, apart = looked.near(count)
    late = when - looked.begin_s >= soonest_s
    figures, when, apart = figures[late], when[late], apart[late]
    width_s = 2.0 * longest_s / LOOKS + 0.02 * longest_s
    for k in islice(_lowest(figures, when, apart, across, 0.05 * longest_s), most):
        near_m, at, about_s = _downhill(looked, figures[k], when[k], width_s, across)
        hit = looked.velocities(at[None])[0], about_s - looked.begin_s
        near = near_m <= 0.98 * question.within_m and hit[1] >= soonest_s
        if near and not any(_same(question, hit, other) for other in hits):
            hits.append(hit)
    return hits


_CORNERS = {
    2: np.array([[0, 0], [0.7, 0.1], [0.1, 0.5]]),
    3: np.array([[0, 0, 0], [0.7, 0.1, 0], [0.1, 0.7, 0], [0, 0.1, 0.4]]),
}


def _downhill(looked, figures, about_s, width_s, across):
    """How near throws about one come, figures of that which comes nearest, and when; looked for on, where that is as late or as early as
    was looked at, if what is wanted is the very throw."""
    for _ in range(3 if looked.figures == 2 else 1):
        best = minimize(
            lambda at, about_s=about_s: looked.apart_m(at, about_s, width_s)[0],
            figures,
            method="Nelder-Mead",
            options={
                "initial_simplex": figures + _CORNERS[looked.figures] / across,
                "xatol": 1e-6,
                "fatol": 1e-5,
                "maxfev": (90 if looked.in_air else 150) + 60 * (looked.figures - 2),
            },
        )
        figures, (near_m, when_s) = best.x, looked.apart_m(best.x, about_s, width_s)
        if abs(when_s - about_s) < 0.9 * width_s:
            break
        about_s = when_s
    return near_m, figures, when_s


def _same(question, one, other):
    """Whether two throws, each with how long it flies, are so alike that they may come within reach together."""
    speed = max(float(np.linalg.norm(one[0])), 0.3)
    slack = 4 * question.within_m / max(one[1], 0.05) + 0.02 * speed
    return (
        np.linalg.norm(one[0] - other[0]) < slack
        and abs(one[1] - other[1]) < 0.1 * one[1] + 4 * question.within_m / speed
    )


def _aim(velocity):
    return tuple(float(each[0]) for each in throws.speed_heading_elevation(velocity[None]))


def _lowest(figures, when, apart, across, width_s):
    """Numbers of those that come nearer than all beside them, the nearest first."""
    turn = across / 2.3 / 2.0  # of the last figure, which comes round, in cells
    cells = figures * across / 2.3 / np.append(np.ones(figures.shape[1] - 1), 2.0)
    places = np.column_stack([cells, (when - when.min(initial=0.0)) / width_s])
    beside = cKDTree(places, boxsize=np.append(np.zeros(figures.shape[1] - 1), [turn, 0.0]))
    nearer = np.zeros(len(apart), dtype=bool)
    for k in np.argsort(apart):
        if not nearer[k]:
            yield k
        nearer[beside.query_ball_point(places[k], 1.0, p=np.inf)] = True


def _arrives(looked, way):
    """Whether a way, flown by itself, comes within reach."""
    flight = throws.flown(looked.thrower, way.velocity[None], way.catch.time_s + 0.5)[0]
    times = np.linspace(looked.begin_s, flight.path.end_s, 20_001)
    times = np.append(times, np.clip(way.catch.time_s, looked.begin_s, flight.path.end_s))
    apart = np.linalg.norm(flight.path.at(times)[0] - looked.question.target.at(times)[0], axis=1)
    return apart.min() <= looked.question.within_m + 1e-9 and abs(apart[-1] - way.catch.misses_m) < 1e-6


def main():
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--scenes", type=int, default=60)
    parser.add_argument("--first", type=int, default=0)
    parser.add_argument("--vacuum", type=int, default=200_000)
    parser.add_argument("--air", type=int, default=20_000)
    parser.add_argument("--only", type=int)
    parser.add_argument("--fixed", choices=["own", FLIGHT, LEAST], help="one of the three; all, if not said")
    chosen = parser.parse_args()
    numbers = [chosen.only] if chosen.only is not None else range(chosen.first, chosen.first + chosen.scenes)
    asked = [chosen.fixed] if chosen.fixed else ["own", FLIGHT, LEAST]
    print("scene  shape      air  fixed                    ways  free  scan  missed  invented  aim, ms", flush=True)
    total = np.zeros(5, dtype=int)
    for number, fixed in ((number, fixed) for fixed in asked for number in numbers):
        count = chosen.air if number % 2 else chosen.vacuum
        row = scan(number, count) if fixed == "own" else scan(number, count, most=6, fixed=fixed)
        ((name, value),) = row["fixed"].items()
        figures = row["ways"], row["free"], row["hits"], len(row["missed"]), len(row["invented"])
        total += figures
        what = f"{name:13s} {value:9.2f}" if fixed != LEAST else f"{name} {value}".ljust(23)
        cells = f"{number:5d}  {row['shape']:9s}  {'yes' if row['air'] else 'no':3s}  {what}"
        print(cells + "  {:4d}  {:4d}  {:4d}  {:6d}  {:8d}".format(*figures) + f"  {row['cpu_ms']:7.0f}", flush=True)
        for what in ("missed", "invented"):
            for one in row[what]:
                print(f"       {what}: " + "{:.3f} m/s, heading {:.2f}, {:.2f} up, {:.3f} s".format(*one), flush=True)
    print(
        f"all {len(asked) * len(numbers)}: ways {total[0]}, free {total[1]}, found by the scan {total[2]}, missed {total[3]}, "
        f"invented {total[4]}"
    )


if __name__ == "__main__":
    main()
