"""Files cut short or with bytes changed, by chance but always the same: the right scene comes back, or a refusal, and nothing else."""

import json
import random

from rimfall.errors import Refused
from rimfall.exports.recovery import recovered
from tests.exports.files_of_ours import written
from tests.tables import each_row

FORMATS = ("json", "notes", "csv-frames", "glb", "usda", "usdc", "usdz", "plot-path-svg", "plots-pdf")
SUMMED = ("csv-frames", "usdz")  # with a check sum over what holds the scene
CASES = 25
HEAD = 2_000  # bytes in which half of all changes fall: most of what says how a file is laid out is there, or as near its end


def outcome(content):
    """The scene as plain data, or None where the file is refused by its field in a sentence."""
    try:
        return json.loads(recovered(content).scene)
    except Refused as refused:
        reasons = refused.refusals
    assert all(one.field == "file" and one.say.endswith(".") for one in reasons)
    return None


def places(chance, length):
    """Places near the beginning, near the end, anywhere."""
    for k in range(CASES):
        near = chance.randrange(min(HEAD, length))
        yield (near, length - 1 - near, chance.randrange(length), chance.randrange(length))[k % 4]


@each_row("name", FORMATS)
def test_a_file_cut_short_is_refused_or_gives_its_scene(name):
    whole, chance = written(name), random.Random(name)
    scene = outcome(whole)
    assert scene is not None
    for at in places(chance, len(whole)):
        assert outcome(whole[:at]) in (None, scene), at


@each_row("name", FORMATS)
def test_a_file_with_a_byte_changed_is_refused_or_gives_a_scene(name):
    """Where no check sum tells, a changed digit of the scene is another scene."""
    whole, chance = written(name), random.Random(name)
    scene = outcome(whole)
    for at in places(chance, len(whole)):
        changed = bytearray(whole)
        changed[at] ^= 1 << chance.randrange(8)
        back = outcome(bytes(changed))
        assert back in (None, scene) or (name not in SUMMED and isinstance(back, dict)), at


@each_row("name", FORMATS)
def test_a_file_with_a_stretch_of_noise_is_refused_or_gives_a_scene(name):
    whole, chance = written(name), random.Random(name)
    scene = outcome(whole)
    for at in places(chance, len(whole)):
        noise = chance.randbytes(chance.randrange(1, 64))
        back = outcome(whole[:at] + noise + whole[at + chance.choice((0, len(noise))) :])
        assert back in (None, scene) or (name not in SUMMED and isinstance(back, dict)), at
