"""The answers about cameras of one's own."""

from ...scene.export_part import OwnCamera
from .parts import Closed, said


class PlaceSeen(Closed):
    """A place aboard."""

    along_m: float = said("Along the deck, spinward above 0, m.")
    height_m: float = said("Over the deck, m.")
    axial_m: float = said("Along the spin vector, m.")


class CameraAboard(Closed):
    """A camera aboard by its places, as a match takes it."""

    time_s: float = said("When, s.")
    field_of_view_deg: float = said("Horizontal field of view, degrees.")
    position: PlaceSeen = said("Where it stands.")
    look_at: PlaceSeen = said("What it looks at.")
    roll_deg: float = said("Its bank, clockwise as seen from behind it, degrees.")


class Cameras(Closed):
    """Cameras in the form that stages and files have."""

    cameras: list[OwnCamera] = said("The cameras, ready for an export's choices.", min_length=1)
    match: list[CameraAboard] | None = said("The first of them by its places aboard; null where they are not known.")
    words: list[str] = said("A sentence of each.")
