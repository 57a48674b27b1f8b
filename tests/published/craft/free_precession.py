"""L. Euler's free precession of the Earth: O. Portilho, arXiv:0809.4506; R. Fitzpatrick, Celestial Mechanics, section 8.9."""

from ..row import Row

ROWS = {
    "RIG-18": Row(
        "Earth's rigid free-precession period",
        {"A_over_C_minus_A": 305.45590056799523},
        305.0,
        "sidereal days",
        1.0,
        "last digit",
    ),
}
