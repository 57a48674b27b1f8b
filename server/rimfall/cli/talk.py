"""`rimfall talk`: the steps of a talk, each with its line, its scene and how long it takes; as JSON, with every scene whole; as its document; as a
page that plays by itself."""

import json
from pathlib import Path

from ..errors import BadInput, Refused, refusal
from ..exports.one_file import talk_file
from ..exports.recovery import read_source
from ..exports.writing import write_all
from ..language import tr, tr_later, tr_many, written
from ..phrases import listed
from ..scene.choices import shape_words
from ..scene.questions import trace
from ..scene.reading import as_utf8
from ..scene.work import bounded_alone
from ..talk import examples
from ..talk.length import WORDS_PER_MINUTE, played_s, spoken_s
from ..talk.reading import read
from . import common
from .common import seconds_of

DONE = 0
EXAMPLES = (
    "rimfall talk why-the-ball-comes-back",
    "rimfall talk how-big-must-a-wheel-be --save mine.json",
    "rimfall talk mine.json --json",
    "rimfall talk mine.json --export mine.html",
)


def add_to(parser):
    """Add the command's options."""
    names = ", ".join(examples.NAMES)
    parser.add_argument(
        "talk",
        metavar="TALK.json",
        help=f"a talk's document, or the name of one ready to give; - reads standard input. Ready to give: {names}",
    )
    parser.add_argument("--json", action="store_true", help="print it as JSON, every step with its whole scene")
    parser.add_argument(
        "--save", metavar="FILE.json", help="write its document, to change, and to open here or on the page"
    )
    parser.add_argument(
        "--export", metavar="FILE.html", help="write it as one file that plays by itself, without a server or a network"
    )
    common.add_max_seconds(parser)
    parser.set_defaults(run=_talk)


def _talk(chosen):
    source = _source(chosen.talk)
    talk = read(source)
    if chosen.save is not None:
        common.write_scene(Path(chosen.save), json.loads(as_utf8(source)))
    if chosen.export is not None:
        path = _page(chosen.export)
        write_all({path: bounded_alone(talk_file, talk, seconds=seconds_of(chosen.max_seconds))})
    if chosen.json:
        common.print_json(json.dumps(talk.as_data(), ensure_ascii=False).encode("utf-8", "replace"))
    else:
        common.print_lines(bounded_alone(_as_text, talk, seconds=seconds_of(chosen.max_seconds)))
    return DONE


def _source(name):
    """What is asked about: a talk ready to give by its name, or a file."""
    known = examples.example(name)
    if known is None:
        common.check_named(
            name,
            "talk",
            tr_later("There is no file {name}, and no talk of that name ready to give; those are {names}."),
            examples.NAMES,
        )
    return known or read_source(name)


def _page(name):
    """The path of an HTML file. Raises BadInput for a name of another kind."""
    path = Path(name)
    if path.suffix.lower() != ".html":
        say = tr(
            "A talk is written as one file that plays by itself, whose name ends in .html; {name} does not.",
            name=path.name,
        )
        raise BadInput(refusal("export", path.name, tr("a name that ends in {endings}", endings=".html"), say))
    return path


def _as_text(talk):
    """Lines: title, what it is about, each step with its scene in a few words, and how long it all takes."""
    lines, spoken, played, ends = [talk.title, *filter(None, [talk.about]), ""], 0.0, 0.0, {}
    for number, given in enumerate(talk.steps, start=1):
        if number == 1 or given.scene is not talk.steps[number - 2].scene:
            ends = _ends_s(given.scene, number)
        plays = played_s(given, max((ends[name] for name in ends.keys() - set(given.step.hidden)), default=0.0))
        spoken, played = spoken + spoken_s(given), played + plays
        lines += [
            f"{number}. {given.step.line or tr('No line')}",
            f"   {_scene(given)}; {_plays(given.step, plays)}.",
        ]
    steps = tr_many("{count} step", "{count} steps", number)
    said = tr(
        "{steps}, {time}: {spoken} to say at {pace} words a minute, {watched} to watch.",
        steps=steps,
        time=_minutes(spoken + played),
        spoken=_minutes(spoken),
        pace=WORDS_PER_MINUTE,
        watched=_minutes(played),
    )
    return [*lines, "", said]


def _ends_s(scene, number):
    """When each motion of a scene ends, by name. Raises TooMuch, naming the step."""
    try:
        traced = trace(scene, parts="own_paths")
    except Refused as refused:
        at = f"steps.{number - 1}.scene"
        raise type(refused)(
            *(
                refusal(
                    f"{at}.{one.field}", one.was, one.may_be, tr("Step {number}: {what}", number=number, what=one.say)
                )
                for one in refused.refusals
            )
        ) from None
    return {one.motion.name: one.track.ends_s for one in traced.motions if one.track.path is not None}


def _scene(given):
    """A step's scene in a few words, with what is seen to move."""
    scene, part = given.scene, given.scene.habitat
    names = [motion.name for motion in scene.motions if motion.name not in given.step.hidden]
    few = tr(
        "{title}, a {shape} of {radius} at {spin}",
        title=scene.title or tr("A scene"),
        shape=shape_words(part.shape),
        radius=written(part.radius_m, "g") + " m",
        spin=written(part.spin_rpm, "g") + " rpm",
    )
    return tr("{scene}: {motions}", scene=few, motions=listed(names)) if names else few


def _plays(step, plays_s):
    time = written(plays_s, ".1f") + " s"
    if not plays_s:
        plays = tr("stands still")
    elif step.pace == 1:
        plays = tr("plays {time}", time=time)
    else:
        plays = tr("plays {time} at {pace} of its pace", time=time, pace=written(step.pace, "g"))
    return (
        plays
        if step.ask is None
        else tr("{plays}; asks where {motion} comes down", plays=plays, motion=step.ask.motion)
    )


def _minutes(seconds):
    minutes, rest = divmod(round(seconds), 60)
    return f"{minutes} min {rest} s" if minutes else f"{rest} s"
