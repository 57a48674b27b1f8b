"""The answer to whether a path that was seen could be (`/api/match`)."""

from typing import Literal

from pydantic import create_model

from ...scene.document import AirPart, Scene
from ...scene.shot.match import LABELS
from ...scene.shot.match_request import Keys, PicturePoint, TrackRow
from ...scene.shot.match_words import CHANGES, REASONS, SHORT
from .parts import Closed, Count, Program, Version, left_out, said


class MatchedFigure(Closed):
    """A quantity of the nearest free path, and the ends of its 95 % interval."""

    label: str = said("Its label.")
    unit: str = said("Its unit; empty for a ratio.")
    value: float | None = said("Its best value; null where it cannot be seen.")
    low: float | None = said("The least that the track allows; null where the ranges of the scene document end first.")
    high: float | None = said("The greatest, likewise.")
    decided: bool = said("Whether the track decides it: both ends are within the ranges.")
    known: bool = said("Whether it was known and not sought.")


Matched = create_model(
    "Matched",
    __base__=Closed,
    __doc__="The quantities of a path by name; those that its track cannot show are left out.",
    **{
        name: (MatchedFigure | None, left_out(f"{label}{unit and f', {unit}'}."))
        for name, (label, unit) in LABELS.items()
    },
)


class MatchReason(Closed):
    """What in a track shows the verdict. Rows are counted from 0."""

    kind: Literal[REASONS] = said("What it is.")
    first: Count = said("The first row that shows it.")
    last: Count = said("The last.")
    at: Count = said("The row that shows it best.")
    time_s: float = said("Its time, s, as the track counts it.")
    says: str = said("A sentence, which counts rows from 1.")


class RowsLeftOut(Closed):
    """Rows from which on the thing is not in its first free flight: they were not fitted. Counted from 0."""

    first: Count = said("The first of them.")
    last: Count = said("The last, which is that of the track.")
    kind: Literal["rest", "along", "bounce", "off"] = said(
        "It stays in one place; keeps to one height; bounces; or is off its flight in rows too few to tell more."
    )
    says: str = said("A sentence, which counts rows from 1.")


class Mending(Closed):
    """Something that is known, and would have to be otherwise."""

    kind: Literal[CHANGES] = said("What it is.")
    says: str = said('What would do, as the rest of a sentence that begins with "possible".')
    p_value: float = said("The chance of a misfit at least as large, then.")
    fit: Matched = said("The path then.")
    motion: Scene | None = said("The scene that flies it.")


class SeenPath(Closed):
    """Where the nearest free path is."""

    time_s: list[float] = said("Times, s, as the track counts them.")
    along_m: list[float | None] = said("Arc length along the deck, spinward; null at rows that were left out.")
    height_m: list[float | None] = said("Height over the deck.")
    axial_m: list[float | None] = said("Distance along the axis.")
    x_px: list[float | None] | None = said("Pixels from the picture's left; null behind the camera, or of no picture.")
    y_px: list[float | None] | None = said("Pixels from its top.")


class Residual(Closed):
    """Seen less nearest, by what was seen."""

    along_m: list[float | None] | None = left_out("Of a track, m.")
    height_m: list[float | None] | None = left_out("Of a track, m.")
    axial_m: list[float | None] | None = left_out("Of a track with axial places, m.")
    x_m: list[float | None] | None = left_out("Of an object's keys, m.")
    y_m: list[float | None] | None = left_out("Of an object's keys, m.")
    z_m: list[float | None] | None = left_out("Of an object's keys, m.")
    x_px: list[float | None] | None = left_out("Of a picture, px.")
    y_px: list[float | None] | None = left_out("Of a picture, px.")


class Accuracy(Closed):
    """One standard deviation of each figure of a point."""

    value: float = said("How large.")
    unit: Literal["m", "px"] = said("Metres, or pixels.")


class TrackSeen(Closed):
    """Something that moves in a file, as the body of a match has it."""

    name: str = said("What the file calls it.")
    track: list[TrackRow] | None = left_out("Places aboard.")
    keys: Keys | None = left_out("Points in the axes of the file.")
    points: list[PicturePoint] | None = left_out("Pixels, which have no scale yet.")


class KnownOfFile(Closed):
    """What a file that Rimfall wrote says of its habitat."""

    radius_m: float | None = left_out("Radius, m.")
    spin_rpm: float | None = left_out("Spin, rpm.")
    air: AirPart | None = left_out("The air; null in a vacuum.")


class FileAxes(Closed):
    """The axes that the points were taken to be in."""

    view: Literal["rotating", "inertial"] = said("Turning with the deck, or not turning.")
    origin: Literal["axis", "deck"] = said("On the axis, or on the deck at the reference line.")


class GridLine(Closed):
    """A line of the deck's grid in a picture."""

    of: Literal["along_m", "axial_m"] = said("Which of its places it keeps: it runs along the axis, or along the deck.")
    at_m: float = said("That place, m.")
    strong: bool = said("Every fifth is.")
    runs: list[list[list[float]]] = said("Its stretches within the picture: [x, y] each, pixels from the top left.")
    mark: list[float] | None = said("Where its figure may stand; null where there is no room, or it is not strong.")


class DeckGrid(Closed):
    """The deck's grid in a picture."""

    step_m: float = said("From line to line, m.")
    lines: list[GridLine] = said("Its lines.")
    upright: list[list[float]] | None = said("Foot and head of a person where the camera looks; null out of sight.")
    upright_m: float = said("How tall that person is, m.")


class Tracks(Closed):
    """What moves in a file."""

    tracks: list[TrackSeen] = said("Each thing.")
    known: KnownOfFile = said("What the file says of its habitat.")
    axes: FileAxes = said("Its axes.")


class Match(Closed):
    """Whether a path that was seen could be, and the free path nearest to it."""

    rimfall_match: Version = said("Version of this answer.")
    program: Program
    verdict: Literal[tuple(SHORT)] = said("possible_if: `changes` names what would have to be otherwise.")
    says: str = said("The verdict in one sentence.")
    short: str = said("The verdict in a word or two.")
    words: list[str] = said("The verdict and what stands behind it, in sentences.")
    left_out: RowsLeftOut | None = said("The last rows, where they are not of the free flight; null where all are.")
    reasons: list[MatchReason] = said("What in the track shows it, that which shows most first.")
    changes: list[Mending] = said("What would make it possible, the simplest first.")
    fit: Matched = said("The nearest free path that what is known allows.")
    motion: Scene | None = said("The scene that flies it; null where no scene can.")
    at: SeenPath = said("That path at the rows of the track.")
    path: SeenPath = said("That path at times between, for a drawing.")
    residual_m: list[float | None] = said(
        "How far each row lies off it, as far as that is seen, m; null of rows that were left out."
    )
    residual: Residual = said("The same by what was seen.")
    chi2_per_freedom: float | None = said("Chi squared over the degrees of freedom; null where there are none.")
    freedom: int = said("Degrees of freedom: figures seen less quantities sought.")
    p_value: float = said("The chance that a true path of that accuracy lies at least as far off.")
    extra_acceleration_g: list[float | None] | None = said(
        "What each row has of acceleration beyond free motion, g; null where the rows are too few."
    )
    extra_acceleration_sd_g: list[float | None] | None = said("One standard deviation of that, g.")
    accuracy: Accuracy = said("As it was given.")
    assumptions: list[str] = said("What the answer takes for granted.")
    caution: str = said("What the figures are for.")
