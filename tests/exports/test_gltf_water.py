"""Drops and streams of the glTF file against parcels of water that fly free from the lip on."""

import math

import numpy as np
import pytest

from rimfall.exports import gltf, gltf_shapes
from tests.exports.free_bodies import MANY, OMEGA, RADIUS_M, WITHIN_M, exact, glb_of, in_file, sampled_of
from tests.exports.glb import Glb
from tests.scene.documents import pour, scene


def parcel(document, times, age_s, radius_m=0.0):
    """File places (n, 3), rotating view, of water that left the lip age_s (n,) before times (n,): free from the lip on, until
    its skin, radius_m from its middle, meets the deck."""
    motion = document["motions"][0]
    speed = motion["flow_ml_s"] * 1e-6 / (math.pi * (motion["lip_diameter_mm"] / 2000) ** 2)
    left = times - age_s
    out = []
    for t, start_s in zip(times, left, strict=True):
        one = {
            "place": {"height_m": motion["place"]["height_m"] - radius_m},
            "start_s": float(start_s),
            "speed_m_s": speed,
        }
        place, axial, _ = exact(one, np.array([t]), RADIUS_M - radius_m)
        out.append(in_file(place * np.exp(-1j * OMEGA * t), axial)[0])
    return np.array(out)


def test_few_drops_are_nodes_with_one_mesh():
    document = scene(pour(duration_s=1.0), air=None)
    file = glb_of(document)
    ids = file.document["asset"]["extras"]["ids"]
    assert [b["id"] for b in ids] == list(range(len(ids)))
    assert 20 < len(ids) <= 500
    nodes = [file.nodes[file.named[b["element"]]] for b in ids]
    assert len({n["mesh"] for n in nodes}) == 1
    assert [n["extras"]["id"] for n in nodes] == [b["id"] for b in ids]
    age = ids[0]["born_s"]
    for body in (ids[0], ids[len(ids) // 2], ids[-1]):
        way, at, sizes = file.sampler(body["element"], "scale")
        assert way == "STEP"
        assert sizes[:, 0].astype(bool).tolist() == [False, True, False]
        assert 0 <= at[1] - body["born_s"] < 1 / 24 + 1e-6
        times = file.sampler(body["element"], "translation")[1].astype(float)
        flying = times[(times >= at[1]) & (times < at[2] - 1 / 24)]
        found = np.array([file.value(body["element"], "translation", t) for t in flying])
        assert found == pytest.approx(parcel(document, flying, flying - body["born_s"] + age), abs=WITHIN_M)


def test_more_drops_are_points_that_morph():
    sampled = sampled_of(MANY)
    file = Glb(gltf.glb(sampled))
    ids = file.document["asset"]["extras"]["ids"]
    assert len(ids) > gltf.MOST_NODES
    assert file.primitive("droplets")["mode"] == 0
    assert not any(n["name"].startswith("droplet_") for n in file.nodes)
    count = len(file.sampler("droplets", "weights")[1])
    assert count - 1 == len(file.primitive("droplets")["targets"]) <= gltf.GREATEST_TARGETS
    assert any("points" in say for say in file.document["asset"]["extras"]["says"])
    age = ids[0]["born_s"]
    for key in (count // 3, count // 2, count - 1):
        places, t = file.morphed("droplets", key)
        assert places.shape == (len(ids), 3)
        born = np.array([b["born_s"] for b in ids])
        late = np.clip(t - born, 0.0, None)
        chosen = np.arange(0, len(ids), 25)
        wanted = parcel(MANY, (born + late)[chosen], late[chosen] + age, sampled.drops.diameter_m[0] / 2)
        assert places[chosen] == pytest.approx(wanted, abs=WITHIN_M)


def test_a_stream_is_a_skin_about_its_parcels():
    document = scene(pour(duration_s=1.0), air=None)
    file = glb_of(document)
    age = file.document["asset"]["extras"]["ids"][0]["born_s"]
    key = next(k for k, t in enumerate(file.sampler("stream_pour_1", "weights")[1]) if t > age)
    corners, t = file.morphed("stream_pour_1", key)
    assert t < 1.0, "it still flows: its ages run from 0 to the breakup's"
    rings = corners.reshape(-1, gltf_shapes.RING, 3)
    ages = np.linspace(0.0, age, len(rings))
    middles = rings.mean(axis=1)
    assert middles == pytest.approx(parcel(document, np.full(len(rings), t), ages), abs=WITHIN_M)
    wide = np.linalg.norm(rings - middles[:, None], axis=2)
    assert np.ptp(wide, axis=1) == pytest.approx(0.0, abs=2e-6), "round"
    assert 2 * wide[0] == pytest.approx(0.008, abs=2e-6), "the lip's width"
    assert np.all(np.diff(wide.mean(axis=1)) <= 1e-6), "it thins as it gathers speed"


def test_long_shots_take_every_so_many_frames_for_what_morphs():
    file = glb_of(MANY, fps=60)
    times = file.sampler("droplets", "weights")[1]
    frames = file.document["asset"]["extras"]["file"]["frame_count"]
    assert frames > gltf.GREATEST_TARGETS + 1
    assert len(times) <= gltf.GREATEST_TARGETS + 1
    assert times[0] == 0
    assert times[-1] == pytest.approx((frames - 1) / 60)
    assert len(set(np.round(np.diff(times[:-1]) * 60).tolist())) == 1
