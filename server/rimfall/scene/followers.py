"""What a habitat's radius or spin has to be for its gravity or its rim speed to stay as it is."""

from ..errors import BadInput
from ..physics import spin as spins
from ..physics.constants import RPM_RAD_S
from .catalogue import FIELDS
from .checks import check
from .validation_errors import wrong

HOLDS = {"gravity": "gravity_m_s2", "rim_speed": "rim_speed_m_s"}
FOLLOWERS = {"habitat.radius_m": "radius_m", "habitat.spin_rpm": "spin_rpm"}


def followed(scene, hold, held, follower):
    """The scene with the follower ("habitat.radius_m" or "habitat.spin_rpm") set so that the gravity (m/s2) or the rim
    speed (m/s) `held` holds at the deck. Raises BadInput where the follower would leave its range."""
    part = scene.habitat
    wanted = {HOLDS[hold]: held}
    if FOLLOWERS[follower] == "spin_rpm":
        value = spins.omega_for(part.radius_m, **wanted) / RPM_RAD_S
    elif part.spin_rpm == 0:
        raise BadInput(wrong("habitat.spin_rpm", part.spin_rpm, f"above 0 while {hold.replace('_', ' ')} is held"))
    else:
        value = spins.radius_for(omega_rad_s=part.spin_rpm * RPM_RAD_S, **wanted)
    low, high = FIELDS[follower]["min"], FIELDS[follower]["max"]
    if not low <= value <= high:
        raise BadInput(wrong(follower, value, f"{low:g} to {high:,.0f} while {hold.replace('_', ' ')} is held"))
    habitat = part.model_copy(update={FOLLOWERS[follower]: value})
    return check(scene.model_copy(update={"habitat": habitat}))
