"""What a kind of motion is to the rest of the program, and what the page has to know of it.

Every folder beside this module puts one `Kind` together; the list of them all is in `kinds/__init__.py`. What the page needs (`Page`)
goes to it as data by `GET /api/fields`: it has no table of kinds of its own. Its words are marked by `tr_later`, and translated as they go.
"""

from collections.abc import Callable, Iterable
from dataclasses import dataclass, field
from typing import Any

from ..language import spoken, tr, tr_later
from ..motions.flat_gravity import FlatGravityReference
from ..motions.flight import MOST_STEPS
from ..motions.ground import MOST_TRIES
from ..motions.plan import Plan
from ..motions.reach import Reached
from ..motions.setting import Setting
from ..motions.track import Track
from ..motions.ways import Way, Ways
from ..phrases import pieces, plain
from ..prose import Telling
from ..shapes import Ground
from ..shapes.base import DECK
from .motion import Motion
from .telling import dropped
from .words import briefly

ARM_M = 0.3  # a thing starts in the hand, an arm's length in front of who holds it


@dataclass(frozen=True)
class Finding:
    """A figure that a kind tells beside its path, as people read it: its name in `Plan.findings`, the words before it, its unit,
    and the glossary's term for it; sided: along the ground, spinward above 0."""

    name: str
    say: str
    unit: str
    term: str
    sided: bool = False


@dataclass(frozen=True)
class Stage:
    """How it is drawn. mover: who or what moves ("ball", "cup", "person", "craft"); beside: what is drawn with it ("pendulum",
    "lift", "tether", "cup", "table"), or None; attended_m: how far off stands somebody who lets it go, None where nobody does;
    winds: its path goes to and fro or round and round; outside: it goes on outside the hull; aimed: its speed has a handle on the
    stage; no_arrows: arrows that would tell nothing of it; weight: the finding that is the weight of who moves, or None."""

    mover: str = "ball"
    beside: str | None = None
    attended_m: float | None = ARM_M
    winds: bool = False
    outside: bool = False
    aimed: bool = False
    no_arrows: tuple[str, ...] = ()
    weight: str | None = None


@dataclass(frozen=True)
class Page:
    """What the page needs of a kind.

    group: heading under which it may be added; add: "a lift ride"; short: the button's word; title: a new one's name; one, many: how
    it is counted. sentence: of its inputs (`when`); a field's name in braces is a figure to drag. rows: its figures in order, each
    with a short label or None for the field's own; more: a heading and rows that are folded away, or None; carried: what the motion
    added to it is called, and what it is at rest. mirrored: it has a
    mirror image across the deck. events: words for its events that differ from those of others; stays: its end in a word where
    nothing happens to it; findings in the order they are read out; terms: entries of the glossary that are its own.
    """

    group: str
    sentence: Any
    rows: dict[str, str | None]
    add: str
    many: str
    short: str
    title: str
    one: str
    more: tuple[str, dict[str, str | None]] | None = None
    carried: tuple[str, str] = (tr_later("Thrower"), tr_later("standing"))
    mirrored: bool = True
    events: dict[str, str] = field(default_factory=dict)
    stays: str | None = None
    findings: tuple[Finding, ...] = ()
    terms: dict[str, str] = field(default_factory=dict)
    stage: Stage = Stage()


def when(name: str, say: Any, otherwise: Any = "", **test: Any) -> dict[str, Any]:
    """A part of a sentence that is said where the field `name` is set and not 0; with equals=, least= or above= where its value is
    that; else `otherwise` is. Parts are texts, tuples of parts, and these."""
    return {"field": name, "say": say, "otherwise": otherwise, **test}


@dataclass(frozen=True)
class StepLimit:
    """The most steps that a motion may take to be worked out; the field named where it would take more; why, and what helps."""

    most: int
    field: str
    why: str


IN_FLIGHT = StepLimit(
    MOST_STEPS,
    "body",
    tr_later(
        "its body is too light for its size in this air. Make it heavier or smaller, thin the air, or let the scene end sooner "
        "(sampling.duration_s)."
    ),
)

ON_THE_GROUND = StepLimit(
    MOST_TRIES,
    "body",
    tr_later(
        "it creeps at the very edge of its grip. Give it more friction or less, another speed, or let the scene end sooner "
        "(sampling.duration_s)."
    ),
)


@dataclass(frozen=True)
class Kind:
    """A kind of motion.

    name: as in a document. fields: the model of its fields; new: one that is ready to add. check(motion, setting, shape): what its
    fields may not be against one another and in a habitat of that name of a shape, each (field of the motion, what it was, what it
    may be). plan(setting, motion). outcome(traced, units): sentences of what it does. assumptions(traced, setting): sentences of
    what its answer leaves out. heavy: a plan is so much work that it is kept. element: what a thing of it is called in files, before
    its own name. limit: of the steps of its plan.
    eases: what makes it less work, besides fewer rebounds and a shorter clock. least_bytes(setting, motion): memory that it is sure to
    take, told without working it out. flies: somebody may catch it; catches: is somebody who may. in_short(traced, units): what comes of
    it, said of its name ("lands 5.21 m spinward after 1.06 s"). told(traced, telling, thing): sentences of it as prose, of which the
    first names the thing (`telling.py`).
    """

    name: str
    fields: type[Motion]
    new: dict[str, Any]
    check: Callable[[Any, Setting, str], Iterable[tuple[str, Any, str]]]
    plan: Callable[[Setting, Any], Plan]
    outcome: Callable[["Traced", str], list[str]]
    assumptions: Callable[["Traced", Setting], list[str]]
    page: Page
    element: str = "ball"
    limit: StepLimit = IN_FLIGHT
    eases: tuple[str, ...] = ()
    least_bytes: Callable[[Setting, Any], float] = lambda _setting, _motion: 0.0
    heavy: bool = False
    flies: bool = False
    catches: bool = False
    in_short: Callable[["Traced", str], str] = briefly
    told: Callable[["Traced", Telling, str], list[str]] = dropped


@dataclass(frozen=True)
class Traced:
    """A motion of the scene and all that came of it; ways: how far its moments are from its release; stands_on: its ground;
    findings: what its kind tells beside its path (`plan.Plan`); drift: the parts of its landing's drift, or None and why not
    (`drift.parts`); reached: (name, `reach.Reached`) of those within whose reach it comes before it lands, in order of time."""

    kind: Kind
    motion: Any
    plan: Plan
    track: Track
    flat_gravity: FlatGravityReference | None
    ways: Ways
    stands_on: Ground = DECK
    findings: dict[str, Any] = field(default_factory=dict)
    drift: tuple[Any, Any] = (None, "not_flown")
    reached: tuple[tuple[str, Reached], ...] = ()
    _told: dict[Any, Any] = field(default_factory=dict, init=False, repr=False, compare=False)

    @property
    def across(self) -> tuple[str, str]:
        """Words for either way across its ground, not yet translated."""
        return self.stands_on.across

    @property
    def ground(self) -> str:
        """The ground's name as a surface."""
        return self.stands_on.surface

    @property
    def ends_s(self) -> float:
        """When the last of it ends: of a pour, its last parcel, even past the scene's own end."""
        stream = self.plan.stream
        if stream is None:
            return self.track.ends_s
        if stream.batch is not None:
            return max(self.track.ends_s, stream.batch.last_ends_s)
        return self.track.ends_s + (stream.last_leaves_s - stream.first_leaves_s)

    def way(self, moment: Any) -> Way:
        """From the release to a Moment."""
        return self.ways.to([moment])[0]

    @property
    def plain_way(self) -> Way | None:
        """From the release to the landing under plain gravity, over flat ground; None where there is none."""
        if self.flat_gravity is None or self.flat_gravity.landing is None:
            return None
        landing = self.flat_gravity.landing
        return self._over_flat_ground(landing["along_m"], landing["axial_m"])

    @property
    def plain_end(self) -> Way | None:
        """The same to where it is at its end."""
        return None if self.flat_gravity is None else self._over_flat_ground(*self.flat_gravity.last_m[[0, 2]].tolist())

    def _over_flat_ground(self, along_m, axial_m):
        return Way(0, along_m - self.plan.place[0], axial_m - self.plan.place[2])

    def outcome(self, units: str = "si") -> list[str]:
        """One or two sentences of what it does, as an author could use them."""
        return [plain(sentence) for sentence in self._outcome(units)]

    def outcome_pieces(self, units: str = "si") -> list[str]:
        """The same as one text in pieces, of which the second, where there is one, says how far off it ends."""
        return pieces(self._outcome(units))

    def in_short(self, units: str = "si") -> str:
        """What comes of it in a phrase that its name goes before: "lands 5.21 m spinward after 1.06 s"."""
        if self.track.path is None:
            return tr("does not start before the scene ends")
        return plain(self.kind.in_short(self, units))

    def told(self, telling: Telling, thing: str) -> str:
        """A paragraph of it as prose; thing: what it is called first, ("the cup")."""
        if self.track.path is None:
            return ""
        return self.once((telling, thing), lambda: " ".join(self.kind.told(self, telling, thing)))

    def _outcome(self, units: str) -> list[str]:
        if self.track.path is None:
            return [tr("The scene ends before it starts.")]
        return self.once(units, lambda: self.kind.outcome(self, units))

    def once(self, what: Any, tell: Callable[[], Any]) -> Any:
        """What `tell` tells, kept by what that is and by the language: the same is told of a motion by itself and of its scene."""
        key = spoken(), what
        if key not in self._told:
            self._told[key] = tell()
        return self._told[key]

    def assumptions(self, setting: Setting) -> list[str]:
        """Sentences of what its answer leaves out."""
        return self.kind.assumptions(self, setting)
