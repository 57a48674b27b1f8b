"""Bodies in the schema: their media types, and examples of each made from the scenes to start from."""

import json

from ...scene import examples
from ...scene.craft import examples as crafts
from ...talk import examples as talks

JSON, LINES, BYTES = "application/json", "application/x-ndjson", "application/octet-stream"
_DOCUMENTS = {name: json.loads(examples.example(name)) for name in examples.SAY}
_LOB = "same-lob"


def scenes():
    """The scenes to start from as examples, by id, for the components of the schema."""
    return {
        one["id"]: {"summary": one["title"], "description": one["say"], "value": _DOCUMENTS[one["id"]]}
        for one in examples.listed()
    }


def _by_reference(names):
    return {name: {"$ref": f"#/components/examples/{name}"} for name in names}


def _one_a_shape():
    """The first scene of each shape."""
    shapes = {}
    for name, document in _DOCUMENTS.items():
        shapes.setdefault(document["habitat"].get("shape"), name)
    return shapes.values()


SCENES = _by_reference(_DOCUMENTS)
HABITATS = {
    "habitat alone": {"summary": "A habitat alone", "value": {"habitat": {"radius_m": 56.0, "spin_rpm": 3.0}}},
    **_by_reference(_one_a_shape()),
}
EXPORTS = {
    "with choices": {
        "summary": "In centimetres, Z up, at the frame rate of video",
        "value": {
            "scene": _DOCUMENTS[_LOB],
            "export": {"view": "inertial", "fps": "30000/1001", "unit": "cm", "up": "Z"},
        },
    },
    "with the defaults": {"summary": "Without choices", "value": {"scene": _DOCUMENTS[_LOB]}},
}
TALKS = {
    "two steps": {
        "summary": "A scene to start from, and the same at another spin",
        "value": {
            "rimfall_talk": 1,
            "title": "Twice the spin",
            "steps": [
                {"scene": _LOB, "line": "Two equal throws.", "until_s": 1.5, "pace": 0.5},
                {
                    "change": {"habitat.spin_rpm": 6.0},
                    "line": "Where do they land now?",
                    "seats": {"aboard": "b", "outside": "w"},
                    "hidden": ["Lob out"],
                    "ask": {"motion": "Lob back", "until_s": 0.5},
                },
            ],
        },
    },
    **{name: {"summary": say["title"], "value": json.loads(talks.example(name))} for name, say in talks.told().items()},
}
WISHES = {
    "fits": {
        "summary": "0.9 g at no more than 2 rpm",
        "value": {
            "wishes": [
                {"kind": "figure", "quantity": "gravity", "bound": "exactly", "value": 0.9},
                {"kind": "figure", "quantity": "spin", "bound": "at_most", "value": 2.0},
            ]
        },
    },
    "collides": {
        "summary": "What one study allows, within 20 m",
        "value": {
            "wishes": [
                {"kind": "study", "study": "stone_1973"},
                {"kind": "figure", "quantity": "radius", "bound": "at_most", "value": 20.0},
            ],
            "person": {"height_m": 1.6},
        },
    },
}
CRAFTS = {name: {"summary": say, "value": json.loads(crafts.example(name))} for name, say in crafts.SAY.items()}
AIMS = {
    "to a friend": {
        "summary": "At 9 m/s, to a friend along the deck, and back",
        "value": {
            "scene": _DOCUMENTS["galley"],
            "motion": "serve",
            "to": {"along_m": 6.0, "height_m": 1.4},
            "fixed": {"speed_m_s": 9.0},
            "flight_max_s": 10.0,
            "back": True,
        },
    },
    "the slowest": {
        "summary": "The slowest throw that arrives",
        "value": {
            "scene": _DOCUMENTS[_LOB],
            "motion": "Lob out",
            "to": {"along_m": -20.0, "height_m": 1.5, "axial_m": 2.0},
            "within_m": 0.3,
            "fixed": {"least": "speed_m_s"},
            "flight_max_s": 8.0,
        },
    },
}
LANDINGS = {
    "a plan": {
        "summary": "Speed by heading, on the deck",
        "value": {
            "scene": _DOCUMENTS[_LOB],
            "motion": "Lob out",
            "over": [
                {"field": "heading_deg", "first": -90, "last": 90, "count": 13},
                {"field": "speed_m_s", "first": 2, "last": 8, "count": 7},
            ],
        },
    },
    "one line": {
        "summary": "Elevation by speed, along the deck",
        "value": {
            "scene": _DOCUMENTS["galley"],
            "motion": "serve",
            "over": [
                {"field": "elevation_deg", "first": 0, "last": 80, "count": 9},
                {"field": "speed_m_s", "first": 2, "last": 20, "count": 10},
            ],
        },
    },
}
_SEEN = (  # a lob in a habitat of 56 m at 3 rpm, 6 m/s spinward and 35° up, every tenth of a second: along, height, m
    (0.0, 1.5), (0.52, 1.8), (1.06, 2.01), (1.61, 2.13), (2.17, 2.15), (2.73, 2.08), (3.28, 1.92), (3.81, 1.67), (4.31, 1.33),
    (4.79, 0.9), (5.22, 0.39),
)  # fmt: skip
TRACKS = {
    "nothing known": {
        "summary": "A lob, known to a centimetre",
        "value": {
            "track": [
                {"time_s": n / 10, "along_m": along, "height_m": height} for n, (along, height) in enumerate(_SEEN)
            ],
            "accuracy_m": 0.01,
            "known": {"air": None},
        },
    },
    "on a plane": {
        "summary": "Pixels of a picture that looks along the axis, in a habitat that is known",
        "value": {
            "picture": {
                "points": [
                    {"frame": 3 * n, "x_px": round(100 + 100 * along, 1), "y_px": round(800 - 100 * height, 1)}
                    for n, (along, height) in enumerate(_SEEN)
                ],
                "fps": 30,
                "plane": {"from_px": [100, 800], "to_px": [100, 625], "distance_m": 1.75},
            },
            "accuracy_px": 4,
            "known": {"radius_m": 56, "spin_rpm": 3, "air": None},
        },
    },
}
FILE = {BYTES: {"examples": {"a scene": {"summary": "The file of a scene", "value": examples.example(_LOB)}}}}
CAMERAS = {
    "a camera": {
        "summary": "35 mm on the deck, banked",
        "value": {
            "scene": _DOCUMENTS[_LOB],
            "camera": {
                "name": "Shot 12",
                "rows": [
                    {
                        "place": {"along_m": -4.0, "height_m": 1.6, "axial_m": 5.0},
                        "look_at": {"along_m": 2.0, "height_m": 1.5, "axial_m": 0.0},
                        "roll_deg": 5.0,
                        "focal_length_mm": 35.0,
                    }
                ],
            },
        },
    }
}
GRIDS = {
    "a plate": {
        "summary": "A camera at eye level, across the deck",
        "value": {
            "radius_m": 56.0,
            "camera": {
                "field_of_view_deg": 60,
                "width_px": 1920,
                "height_px": 1080,
                "position": {"along_m": 0.0, "height_m": 1.6, "axial_m": 8.0},
                "look_at": {"along_m": 0.0, "height_m": 1.4, "axial_m": 0.0},
                "roll_deg": 0.0,
            },
        },
    }
}
_TABLE = (
    "time_s,x_m,y_m,z_m,aim_x_m,aim_y_m,aim_z_m,vertical_fov_deg\n0,-5,-52.5,14,1,-54,0,34\n1,-4,-52.5,14,1,-54,0,34\n"
)
_TRACK_TABLE = "time_s,along_m,height_m\n0,0,1.5\n0.1,0.52,1.8\n0.2,1.06,2.01\n"
TRACK_FILE = {BYTES: {"examples": {"a table": {"summary": "Places aboard", "value": _TRACK_TABLE}}}}
CAMERA_FILE = {BYTES: {"examples": {"a table": {"summary": "A row a second", "value": _TABLE}}}}
