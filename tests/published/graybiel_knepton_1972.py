"""Graybiel & Knepton, Direction-specific adaptation effects acquired in a slow rotation room (1972), abstract.

NTRS record 19730001335.
"""

from .row import Row

ROWS = {
    "HUM-24": Row(
        "highest rate of a stepwise slow-rotation-room protocol",
        {"step_rpm": 1.0, "head_movements_per_step": 120},
        6.0,
        "rpm",
        0.0,
        "as stated",
    ),
}
