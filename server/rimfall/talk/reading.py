"""From bytes or text to a talk that can be given: parsed, each step's scene made from the one before, checked, every default filled in."""

from ..errors import BadInput, refusal
from ..language import tr, tr_later, written
from ..scene.described import described, walk
from ..scene.reading import parsed
from ..scene.validation_errors import wrong
from .document import Talk
from .resolving import given

FIELDS = {path: described(field) for path, field in walk(Talk) if not path.startswith("steps.*.scene.")}
_EACH = {
    "hidden": tr_later("the name of a motion of the step's scene"),
    "arrows": tr_later("velocity, centrifugal or coriolis"),
}
FIELDS |= {f"steps.*.{name}.*": FIELDS[f"steps.*.{name}"] | {"may_be": may_be} for name, may_be in _EACH.items()}
_MOST_REFUSALS = 20


def read(source):
    """The GivenTalk of a document's bytes (or text). Raises BadInput or TooMuch, naming every field at fault: "steps.3.pace",
    "steps.3.scene.habitat.spin_rpm", or "steps.3.change.habitat.spin_rpm"."""
    try:
        talk = parsed(Talk, source, FIELDS)
        faults = [fault for number, step in enumerate(talk.steps) for fault in _clashes(step, f"steps.{number}")]
        if faults:
            raise BadInput(*faults[:_MOST_REFUSALS])
        return given(talk)
    except BadInput as refused:
        raise BadInput(*(_of_step(one) for one in refused.refusals)) from None


def _clashes(step, at):
    """What the fields of a step have against one another."""
    if step.until_s is not None and step.until_s < step.from_s:
        yield _wrong(
            f"{at}.until_s",
            step.until_s,
            tr("at least {time} s, from which the step begins, or null", time=written(step.from_s, "g")),
        )
    if step.ask is None:
        return
    last_s = 4_200 if step.until_s is None else max(step.until_s, step.from_s)
    if not step.from_s <= step.ask.until_s <= last_s:
        yield _wrong(
            f"{at}.ask.until_s",
            step.ask.until_s,
            tr(
                "{first} to {last} s, while the step plays", first=written(step.from_s, "g"), last=written(last_s, ",g")
            ),
        )


def _wrong(field, was, may_be):
    steps, _, name = field.split(".", 2)
    return wrong(field, was, may_be, FIELDS[f"{steps}.*.{name}"])


def _of_step(one):
    """A refusal whose sentence says in which step, counted as people do, if it is in one."""
    parts = one.field.split(".")
    if parts[0] != "steps" or len(parts) < 2 or not parts[1].isdigit():
        return one
    return refusal(one.field, one.was, one.may_be, tr("Step {number}: {what}", number=int(parts[1]) + 1, what=one.say))
