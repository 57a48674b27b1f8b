"""How much work a scene may be, and the refusals of those that are more."""

from ..errors import TooMuch, refusal
from ..kinds.hang.swing import MOST_TRIES
from ..motions.flight import MOST_STEPS
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


def refuse_swinging(name, index):
    """Refusal of a motion whose plan takes too many steps."""
    say = (
        f"Motion {name} would take over {MOST_TRIES:,} steps to work out: it swings too often, or its body is too light for its "
        "size in this air. Lengthen its line, make it heavier, or let the scene end sooner (sampling.duration_s)."
    )
    may_be = f"worked out within {MOST_TRIES:,} steps"
    raise TooMuch(refusal(f"motions.{index}.length_m", name, may_be, say)) from None


def refuse_crawling(scene, index):
    """Refusal of a motion that takes too many steps."""
    motion = scene.motions[index]
    name, field = motion.name, f"motions.{index}.body" if hasattr(motion, "body") else f"motions.{index}"
    say = (
        f"Motion {name} would take over {MOST_STEPS:,} steps to work out: its body is too light for its size in this air. "
        "Make it heavier or smaller, thin the air, or let the scene end sooner (sampling.duration_s)."
    )
    raise TooMuch(refusal(field, name, f"worked out within {MOST_STEPS:,} steps", say)) from None
