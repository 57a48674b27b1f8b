"""The answers about talks."""

from typing import Literal

from ...scene.document import Scene
from ...talk import examples
from ...talk.document import GREATEST_STEPS, LETTERS, Ask, Camera, Pace
from .parts import Closed, Count, Version, said

OPENED = "when a scene is opened where the document says nothing"


class ReadyTalk(Closed):
    """A talk ready to give."""

    id: Literal[examples.NAMES] = said("Its name in the address of its document.")
    title: str = said("Its title.")
    about: str = said("What it is about.")
    steps: Count = said("How many steps it has.")


class ReadyTalks(Closed):
    """Talks ready to give."""

    talks: list[ReadyTalk] = said("All of them, in the order in which they are offered.")


class GivenSeats(Closed):
    """From where both stages are seen."""

    aboard: Literal[LETTERS] | Camera = said(f"Aboard: a seat's letter, or a camera; as {OPENED}.")
    outside: Literal[LETTERS] | Camera = said("Outside, likewise.")


class GivenStep(Closed):
    """A step of a talk as it is given."""

    scene: Scene = said("The whole scene document, with what the step changes.")
    change: dict[str, None] = said("Empty: all changes are in the scene.", max_length=0)
    line: str = said("The line on the screen.")
    notes: str = said("Notes for the speaker alone.")
    place: Literal[2, 4, 5, 6] = said("The place of the page whose view the stages show.")
    show: Literal["both", "aboard", "outside"] = said("The stages that are shown.")
    merged: bool = said("Whether the other stage is a small inset.")
    swapped: bool = said("Whether the two change places.")
    seats: GivenSeats = said("From where they are seen.")
    hidden: list[str] = said("Motions that are not shown.")
    companion: bool = said("Whether plain gravity's path is shown aboard.")
    companion_outside: bool = said("Whether it is shown outside.")
    dimensions: bool = said("Whether dimensions are.")
    arrows: list[Literal["velocity", "centrifugal", "coriolis"]] = said("The arrows that are.")
    from_s: float = said("Where the clock begins, s.")
    until_s: float | None = said("Where it pauses, s; null for the end of the scene.")
    pace: Pace = said("How fast it goes, scene seconds a second.")
    plays: bool = said("Whether it plays at once.")
    ask: Ask | None = said("What the room is asked; null for nothing.")


class GivenTalk(Closed):
    """A talk as it is given: a talk's document with nothing left out."""

    rimfall_talk: Version = said("Version of the document.")
    title: str = said("Its title.")
    about: str = said("What it is about.")
    steps: list[GivenStep] = said("Its steps.", min_length=1, max_length=GREATEST_STEPS)
