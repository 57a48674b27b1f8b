"""Each step of a talk with the whole scene that it shows: its own, one to start from, or that of the step before, and its changes in it."""

from dataclasses import dataclass
from typing import Any

from ..errors import BadInput, Refused, TooMuch, refusal
from ..language import tr, tr_later, written
from ..scene import examples, reading
from ..scene.document import Scene
from ..scene.paths import keys_of, leads_to, overlapping, with_values
from ..scene.tumbling import tumbler
from ..scene.validation_errors import as_json, missing, wrong
from .document import A_SCENE, Step

_SCENE = {"label": tr_later("Scene"), "may_be": A_SCENE}
A_FIRST_SCENE = tr_later("a scene document or the name of a scene to start from: there is no step before")
GREATEST_BYTES = 8_000_000  # of all its steps' scenes, whole
_OPENED = ("b", "d")  # from where both stages are seen when a scene is opened
_OPENED_TUMBLING = ("b", "b")


@dataclass(frozen=True)
class GivenStep:
    """A step and the whole scene that it shows."""

    step: Step
    scene: Scene


@dataclass(frozen=True)
class GivenTalk:
    """A talk with every scene whole."""

    title: str
    about: str
    steps: tuple[GivenStep, ...]

    def as_data(self):
        """As plain data: a document of a talk itself, with every default filled in, every scene whole, and nothing left to change."""
        steps = [_as_data(one) for one in self.steps]
        return {"rimfall_talk": 1, "title": self.title, "about": self.about, "steps": steps}


def given(talk):
    """The GivenTalk of a Talk. Raises BadInput or TooMuch, naming the step's field."""
    steps, scene, took_bytes = [], None, 0
    for number, step in enumerate(talk.steps):
        at = f"steps.{number}"
        scene = _changed(_scene(step, scene, at), step, at)
        _check_names(step, scene, at)
        took_bytes += len(scene.model_dump_json())
        if took_bytes > GREATEST_BYTES:
            most = written(GREATEST_BYTES, ",")
            say = tr(
                "The scenes of the talk's first {count} steps have {bytes} bytes, written out; all of them may have {most} bytes.",
                count=number + 1,
                bytes=written(took_bytes, ","),
                most=most,
            )
            may_be = tr("at most {most} bytes, scenes written out", most=most)
            raise TooMuch(refusal("steps", tr("{bytes} bytes", bytes=took_bytes), may_be, say))
        steps.append(GivenStep(step, scene))
    return GivenTalk(talk.title, talk.about, tuple(steps))


def _scene(step, before, at):
    """The scene that a step begins with; before: that of the step before, or None."""
    field = f"{at}.scene"
    if step.scene is None:
        if before is None:
            raise BadInput(missing(field, A_FIRST_SCENE, _SCENE))
        return before
    source = step.scene
    if isinstance(source, str):
        source = examples.example(source)
        if source is None:
            may_be = tr("the name of a scene to start from ({names})", names=", ".join(examples.SAY))
            raise BadInput(wrong(field, step.scene, may_be, _SCENE))
    elif isinstance(source, dict):
        source = reading.as_json(source)
    else:
        raise BadInput(wrong(field, source, A_SCENE, _SCENE))
    return _read(source, lambda name: f"{field}.{name}")


def _read(source, field_of):
    """The Scene of a document; refusals name fields as field_of(the scene's own name) has it."""
    try:
        return reading.read(source)
    except Refused as refused:
        raise BadInput(
            *(refusal(field_of(one.field), one.was, one.may_be, one.say) for one in refused.refusals)
        ) from None


def _changed(scene, step, at):
    """The scene with what the step changes."""
    if not step.change:
        return scene
    document = scene.model_dump(mode="json")
    keys = []
    for path, value in step.change.items():
        field = f"{at}.change.{path}"
        keys.append(
            keys_of(document, path, lambda may_be, say, f=field, v=value: BadInput(refusal(f, as_json(v), may_be, say)))
        )
    twins = overlapping(keys)
    if twins is not None:
        one, other = (list(step.change)[k] for k in twins)
        say = tr("{one} and {other} set the same thing; each may be set once.", one=one, other=other)
        may_be = tr("a path that no other sets")
        raise BadInput(refusal(f"{at}.change.{one}", as_json(step.change[one]), may_be, say))
    named = dict(zip((".".join(map(str, one)) for one in keys), step.change, strict=True))

    def field_of(field):
        """As the talk's author wrote it, if it is what was changed."""
        path = next((path for path in named if leads_to(path, field)), None)
        return f"{at}.change.{field if path is None else named[path] + field[len(path) :]}"

    return _read(reading.as_json(with_values(document, keys, step.change.values())), field_of)


def _check_names(step, scene, at):
    """Raise BadInput where a step speaks of a motion that its scene does not have."""
    names = [motion.name for motion in scene.motions]
    if names:
        there = tr("the name of a motion of the step's scene ({names})", names=", ".join(names))
    else:
        there = tr("left out: nothing moves in the step's scene")
    asked = [] if step.ask is None else [("ask.motion", tr_later("Motion"), step.ask.motion)]
    said = [*((f"hidden.{k}", tr_later("Hidden motion"), name) for k, name in enumerate(step.hidden)), *asked]
    faults = [wrong(f"{at}.{field}", name, there, {"label": label}) for field, label, name in said if name not in names]
    if faults:
        raise BadInput(*faults)


def _as_data(one) -> dict[str, Any]:
    data = one.step.model_dump(mode="json", exclude={"scene", "change"})
    opened = _OPENED if tumbler(one.scene) is None else _OPENED_TUMBLING
    seats = {name: data["seats"][name] or letter for name, letter in zip(("aboard", "outside"), opened, strict=True)}
    return {"scene": one.scene.model_dump(mode="json"), "change": {}} | data | {"seats": seats}
