"""A file of every format that Rimfall writes, of the two smallest examples, made once by each process of a test run."""

import functools
import json

from rimfall.exports.formats import FORMATS
from rimfall.exports.options import read_options
from rimfall.scene import examples
from rimfall.scene.reading import read
from tests.scene.documents import trace_of

TITLE = 'Läuft "zwei & drei" <mal> 🚀 \\ ]]>'
EXAMPLES = ("off-the-rim", "slow-drip")
CHOICES = {"view": "inertial_flat", "to_s": 0.2, "fps": "24000/1001", "origin": {"along_m": 1.5}}
TABLES = ("csv", "forces-csv")  # of numbers: the notes beside them hold the scene
KINDS = {
    "csv-frames": "zip",
    "notes": "json",
    "forces-notes": "json",
}  # format -> what it is recovered as, where that is not its ending


@functools.cache
def scene(example=EXAMPLES[0]):
    """The Scene, its title full of what formats escape."""
    return read(json.dumps(json.loads(examples.example(example)) | {"title": TITLE}))


@functools.cache
def written(name, example=EXAMPLES[0]):
    """The file's bytes."""
    return FORMATS[name].write(trace_of(scene(example)), read_options(CHOICES, scene(example)))


def kind_of(name):
    """What it is recovered as."""
    return KINDS.get(name, FORMATS[name].ending.rpartition(".")[2])
