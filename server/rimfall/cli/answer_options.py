"""What `rimfall feel` and `rimfall size` share: units and JSON as options, the person's height, and printing."""

import json
import math
import sys

from ..errors import BadInput, refusal


def add_to(parser):
    """Add the options of an answer."""
    parser.add_argument("--json", action="store_true", help="print the whole answer as JSON")
    parser.add_argument("--units", choices=("si", "us"), default="si", help="units of the words (default: %(default)s)")


def with_height(source, height, read):
    """A document for a person of that height, where one was given."""
    if height is None:
        return source
    document = read_object(source, read)
    person = document.get("person", {})
    if isinstance(person, dict):
        document["person"] = {**person, "height_m": number("height", height)}
    return json.dumps(document)


def read_object(source, read):
    """What a file holds, a JSON object; anything else is refused as all documents are, by `read`."""
    try:
        document = json.loads(source)
    except (ValueError, RecursionError):
        document = None
    if not isinstance(document, dict):
        read(source)
    return document


def number(field, text):
    """A finite number from the text of an option. Raises BadInput, naming the field."""
    try:
        value = float(text)
    except ValueError:
        value = math.nan
    if not math.isfinite(value):
        raise BadInput(refusal(field, text, "a number", f"{field} was {text}; it may be a number."))
    return value


def print_json(answer):
    """Print an answer, JSON bytes, on a line of its own."""
    sys.stdout.buffer.write(answer + b"\n")  # UTF-8, whatever the terminal speaks


def print_lines(lines):
    """Print lines of words; a terminal needs no unbreakable spaces."""
    print("\n".join(lines).replace("\u00a0", " "))
