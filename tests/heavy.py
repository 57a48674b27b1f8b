"""A scene that takes seconds to work out, and tells how far it is all the while: sixty steel balls that rebound a thousand times."""

import json

BALL = {"mass_kg": 0.5, "diameter_m": 0.02, "restitution": 0.99}
THROW = {
    "kind": "throw",
    "place": {"height_m": 1.0},
    "speed_m_s": 100,
    "elevation_deg": 60,
    "bounces": 1000,
    "body": BALL,
}
HABITAT = {"radius_m": 56, "spin_rpm": 3, "ceiling_m": 2.2}
HEAVY = json.dumps({"rimfall": 1, "habitat": HABITAT, "air": {}, "motions": [THROW] * 60}).encode()
