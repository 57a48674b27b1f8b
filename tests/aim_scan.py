"""Throws that arrive against a scan of all throws: none missed, none invented. `python -m tests.aim_scan` prints its table.

    python -m tests.aim_scan --scenes 60 --vacuum 200000 --air 20000
    python -m tests.aim_scan --only 17

Each scene, drawn at random from its number, has a shape, a thrower and a place to hit. So many throws that keep to what is fixed are flown as
a scene's motions are, to where they first meet something, and looked at at even times; wherever one comes near, a search downhill from
there (Nelder & Mead, by scipy) tells how near throws about it do. Each place that comes within reach so must be a way of the answer, and
each way of the answer, flown, must come within reach.
"""

import argparse
import time

import numpy as np
from scipy.optimize import minimize

import rimfall
from rimfall.errors import BadInput
from rimfall.scene.reading import as_json, read_aim
from rimfall.scene.shot import aim
from rimfall.shots import throws

SHAPES = ("cylinder", "cylinder", "torus", "sphere", "pods", "tether", "tumbler", "turntable")
BODIES = ("handball", "tennis ball", "baseball", "steel ball 20 mm")
MOST_M_S = 40.0  # of throws that are scanned where the speed is free
LOOKS = 240  # at a flight
AT_ONCE = 2_000


def drawn(number):
    """A request drawn at random from its number; every other one is in air."""
    rng = np.random.default_rng([2026, number])
    while True:
        document = _drawn(rng, number % 2 == 1)
        try:
            if rng.random() < 0.8:
                document["to"] = _on_a_throw(rng, document)
            return read_aim(as_json(document))
        except BadInput:
            continue


def _on_a_throw(rng, document):
    """Hands that a throw drawn at random comes to, before it meets anything, if it can."""
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
    return {name: float(getattr(path, name)[k]) for name in ("along_m", "height_m", "axial_m")}


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
    """All throws of a question: where they are two figures in [0, 1), (N, 2), and how near each comes to the hands, and when."""

    def __init__(self, question):
        self.question, self.thrower = question, question.thrower
        self.begin_s, self.in_air = self.thrower.hand.time_s, question.thrower.setting.air is not None

    @property
    def starts_within_reach(self):
        """Whether the hand that throws is about within the catcher's reach itself."""
        hands = self.question.target.at(np.array([self.begin_s]))[0][0]
        return np.linalg.norm(hands - self.thrower.hand.position_m) < 2 * self.question.within_m

    def velocities(self, figures):
        """Local velocities (N, 3)."""
        fixed = self.question.fixed
        if fixed.what == "speed_m_s":
            up = np.clip(2 * figures[:, 0] - 1, -1, 1)
            level, heading = np.sqrt(1 - up**2), 2 * np.pi * figures[:, 1]
            return fixed.value * np.stack([level * np.cos(heading), up, level * np.sin(heading)], axis=-1)
        return throws.aimed(np.abs(figures[:, 0]) * MOST_M_S, 360.0 * figures[:, 1], fixed.value)

    def near(self, count):
        """Throws that come near, each where it comes nearest: figures (M, 2), when (M,), how near (M,)."""
        across = int(np.sqrt(count / 2))
        rows, columns = (np.arange(across) + 0.5) / across, (np.arange(2 * across) + 0.5) / (2 * across)
        figures = np.stack(np.meshgrid(rows, columns), -1).reshape(-1, 2)
        parts = [self._near(figures[k : k + AT_ONCE], across) for k in range(0, len(figures), AT_ONCE)]
        return [np.concatenate(column) for column in zip(*parts, strict=True)]

    def _near(self, figures, across):
        velocities, question = self.velocities(figures), self.question
        end_s = self.begin_s + question.flight_max_s
        times = self.begin_s + question.flight_max_s * (np.arange(LOOKS) + 1.0) / LOOKS
        places, ends = self._places(velocities, times, end_s)
        hands, moving = question.target.at(times)
        apart = np.linalg.norm(places - hands, axis=2)
        apart[times[None] > ends[:, None] + (times[1] - times[0])] = np.inf
        aside = np.pad(apart, ((0, 0), (1, 1)), constant_values=np.inf)
        with np.errstate(invalid="ignore"):
            low = (apart <= aside[:, :-2]) & (apart < aside[:, 2:])
        speed = (
            np.linalg.norm(velocities, axis=1)[:, None]
            + np.linalg.norm(moving, axis=1)
            + np.linalg.norm(self.thrower.hand.velocity_m_s)
        )
        enough = (
            question.within_m
            + 4.0 / across * np.maximum(speed, 3.0) * (times - self.begin_s)
            + speed * (times[1] - times[0])
        )
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
        """How near one throw comes about a time, and when."""
        velocities = self.velocities(np.asarray(figures)[None])
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


def scan(number, count, most=14):
    """A row of the table: what a scan of so many throws finds in a scene, and what the answer has."""
    request = drawn(number)
    begin = time.process_time()
    found = aim.find(request).there.aim
    took_s = time.process_time() - begin
    looked, free = Scan(found.question), [(way.velocity, way.flight_s) for way in found.free]
    hits = _hits(looked, count, most)
    missed = [hit for hit in hits if not any(_same(looked.question, hit, way) for way in free)]
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


def _hits(looked, count, most):
    """Throws that come within reach, and after how long, as a scan of so many finds them; each once."""
    question, hits = looked.question, []
    across, longest_s = np.sqrt(count / 2), question.flight_max_s
    figures, when, apart = looked.near(count)
    width_s = 2.0 * longest_s / LOOKS + 0.02 * longest_s
    for k in _lowest(figures, when, apart, across, 0.05 * longest_s)[:most]:
        best = minimize(
            lambda at, k=k: looked.apart_m(at, when[k], width_s)[0],
            figures[k],
            method="Nelder-Mead",
            options={
                "initial_simplex": figures[k] + np.array([[0, 0], [0.7, 0.1], [0.1, 0.5]]) / across,
                "xatol": 1e-6,
                "fatol": 1e-5,
                "maxfev": 90 if looked.in_air else 150,
            },
        )
        hit = looked.velocities(best.x[None])[0], looked.apart_m(best.x, when[k], width_s)[1] - looked.begin_s
        near = best.fun <= 0.98 * question.within_m and not (looked.starts_within_reach and hit[1] < 0.05 * longest_s)
        if near and not any(_same(question, hit, other) for other in hits):
            hits.append(hit)
    return hits


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
    out, cell = [], 2.3 / across / np.array([1.0, 2.0])
    order = np.argsort(apart)
    for place, k in enumerate(order):
        beside = np.abs(figures[order[:place]] - figures[k])
        beside[:, 1] = np.minimum(beside[:, 1], 1 - beside[:, 1])
        if not np.any(np.all(beside <= cell, axis=1) & (np.abs(when[order[:place]] - when[k]) < width_s)):
            out.append(k)
    return out


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
    chosen = parser.parse_args()
    numbers = [chosen.only] if chosen.only is not None else range(chosen.first, chosen.first + chosen.scenes)
    print("scene  shape      air  fixed                  ways  free  scan  missed  invented  aim, ms", flush=True)
    total = np.zeros(5, dtype=int)
    for number in numbers:
        row = scan(number, chosen.air if number % 2 else chosen.vacuum)
        ((name, value),) = row["fixed"].items()
        figures = row["ways"], row["free"], row["hits"], len(row["missed"]), len(row["invented"])
        total += figures
        cells = f"{number:5d}  {row['shape']:9s}  {'yes' if row['air'] else 'no':3s}  {name:13s} {value:7.2f}"
        print(cells + "  {:4d}  {:4d}  {:4d}  {:6d}  {:8d}".format(*figures) + f"  {row['cpu_ms']:7.0f}", flush=True)
        for what in ("missed", "invented"):
            for one in row[what]:
                print(f"       {what}: " + "{:.3f} m/s, heading {:.2f}, {:.2f} up, {:.3f} s".format(*one), flush=True)
    print(
        f"all {len(numbers)}: ways {total[0]}, free {total[1]}, found by the scan {total[2]}, missed {total[3]}, invented {total[4]}"
    )


if __name__ == "__main__":
    main()
