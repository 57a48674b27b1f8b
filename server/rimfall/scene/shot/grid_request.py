"""What is asked of the deck's grid through a camera: the radius of the deck, and the camera as a match takes it."""

from ...fields import Strict, number
from ...language import tr_later
from ...shapes.part import GREATEST_RADIUS_M, LEAST_RADIUS_M
from .match_request import PictureCamera


class GridRequest(Strict):
    """The body of a question where the deck's grid lies in a picture: through one camera, or through rows of one with times, at time_s."""

    radius_m: float = number(tr_later("Radius"), "m", LEAST_RADIUS_M, GREATEST_RADIUS_M)
    camera: PictureCamera | list[PictureCamera]
    time_s: float = number(tr_later("Time"), "s", -1e6, 1e6, 0.0)
