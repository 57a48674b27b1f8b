"""How much work a scene may be, and the refusals of those that are more."""

from ..errors import TooMuch, refusal
from ..motions.track import grid_span

GREATEST_SAMPLES = 500_000
GREATEST_SAMPLES_IN_LISTS = 200_000
EVENT_SAMPLES = 5  # an event's share of an answer, in samples


def weigh(setting, scene, plans, journeys, greatest, spent):
    """Refuse a scene whose samples pass the work limit, before any is made; what is spent so far, with what was before."""
    for i, journey in enumerate(journeys):
        samples = grid_span(setting.rate, journey.begin_s, journey.ends_s)[1] + EVENT_SAMPLES * len(journey.events)
        stream = plans[i].stream
        if stream is not None and stream.batch is not None:
            samples += int(stream.batch.span(setting.rate)[1].sum())
        spent = max(spent + samples, float(setting.rate) * journey.ends_s)
        if spent > greatest:
            _refuse_work(scene.motions[i].name, i, greatest)
    return spent


def _refuse_work(name, index, greatest):
    say = (
        f"Motion {name} takes this scene past {greatest:,} samples; let it end sooner (sampling.duration_s), start sooner, "
        "rebound less often (bounces), or take fewer frames a second (sampling.fps)."
    )
    raise TooMuch(refusal(f"motions.{index}", name, f"within {greatest:,} samples for the whole scene", say))


def refuse_steps(motion, index, limit):
    """Raise the refusal of a motion that takes more steps than a `StepLimit`."""
    field = f"motions.{index}.{limit.field}" if hasattr(motion, limit.field) else f"motions.{index}"
    say = f"Motion {motion.name} would take over {limit.most:,} steps to work out: {limit.why}"
    raise TooMuch(refusal(field, motion.name, f"worked out within {limit.most:,} steps", say)) from None
