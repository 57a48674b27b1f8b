"""Pours: a liquid from a round lip, which thins, breaks into drops or drips, and may be caught in a cup."""

from ..kind import Finding, Kind, Page, Stage, when
from .fields import Pour, check
from .plan import plan
from .words import assumptions, poured

PAGE = Page(
    group="Liquids",
    short="Pour",
    add="a pour",
    title="Pour",
    one="pour",
    many="pours",
    sentence=(
        "Poured at {flow_ml_s} from ",
        when("tilt", "a tilting lip", "a lip"),
        " of {lip_diameter_mm}, {elevation_deg}, {heading_deg}, for {duration_s}",
        when("target", ", toward a cup {target.diameter_m} wide"),
        ".",
    ),
    rows={
        "flow_ml_s": None,
        "lip_diameter_mm": None,
        "elevation_deg": "Up",
        "heading_deg": None,
        "place.height_m": "From height",
        "duration_s": None,
    },
    findings=(
        Finding("caught_ml", "caught", "ml", "caught"),
        Finding("spilled_ml", "spilled", "ml", "caught"),
        Finding("level_m", "stands in the cup", "m", "free surface"),
        Finding("level_tilt_deg", "its surface tilts", "°", "free surface"),
    ),
    terms={
        "Breakup": "Where a stream falls apart into drops, because its surface pulls it together unevenly.",
        "Caught": "The share of what was poured that goes down through the opening of the cup. The rest is spilled.",
        "Cup": "What is poured into: a round opening at a stated height over the ground, upright where it stands.",
        "Flow": "How much leaves the lip in a second.",
        "Free surface": (
            "The upper side of a liquid at rest. In a turning habitat it is part of a cylinder about the axis; "
            "thrust tilts it."
        ),
        "Lip": "The round opening a liquid is poured from.",
        "Ohnesorge number": "How much a liquid’s viscosity counts against its motion and its surface tension.",
        "Pour": "A liquid that leaves a lip at a stated flow.",
        "Scatter": "How far drops differ by chance, in size and in velocity. A seed makes the same chance again.",
        "Seed": "The number a scatter is drawn from: the same number gives the same drops.",
        "Spilled": "What misses the cup, or runs over its rim.",
        "Surface tension": "What makes a liquid’s surface pull itself together, so that streams become drops.",
        "Tilt": "How the lip’s direction and its flow change while it pours, straight between the points given.",
        "Viscosity": "How thick a liquid is: how strongly it resists being sheared.",
        "Weber number": "How hard a stream’s motion pulls against its surface tension; below 4 it drips.",
    },
    stage=Stage(beside="cup"),
)
KIND = Kind(
    name="pour",
    fields=Pour,
    new={
        "place": {"along_m": 0.0, "height_m": 1.1, "axial_m": 0.0},
        "heading_deg": 180.0,
        "elevation_deg": 0.0,
        "flow_ml_s": 30.0,
        "lip_diameter_mm": 8.0,
        "duration_s": 2.0,
        "liquid": "water",
    },
    check=check,
    plan=plan,
    outcome=poured,
    assumptions=assumptions,
    page=PAGE,
    element="pour",
)
