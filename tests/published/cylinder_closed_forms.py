"""No source: closed forms worked out for a turning cylinder with 1 g0 at the floor, from straight lines in the inertial frame.
The geometry of the drop is discussed in Hall, Inhabiting Artificial Gravity, AIAA 99-4524 (1999)."""

from .row import Row

ROWS = {
    "DES-18": Row("radius for 1 g0 at 1 rpm", {"rate_rpm": 1.0}, 894.3, "m", 0.05, "last digit"),
    "DES-19": Row("radius for 1 g0 at 2 rpm", {"rate_rpm": 2.0}, 223.6, "m", 0.05, "last digit"),
    "TRJ-24": Row(
        "drop inside a rotating cylinder with 1 g0 at the floor: fall time", {"radius_m": 10.0, "height_m": 1.0},
        0.489073299, "s", 1e-08, "exact: tan(th)/w, cos(th)=(R-h)/R",
    ),
    "TRJ-25": Row(
        "same drop: antispinward arc from the point under release", {"radius_m": 10.0, "height_m": 1.0}, 0.33295293,
        "m", 1e-07, "exact: R(tan th - th) (an involute)", "small-h textbook form (2/3)sqrt(2h^3/R) gives 0.29814 m",
    ),
    "TRJ-26": Row(
        "drop inside a rotating cylinder with 1 g0 at the floor: fall time", {"radius_m": 100.0, "height_m": 2.0},
        0.648427133, "s", 1e-08, "exact: tan(th)/w, cos(th)=(R-h)/R",
    ),
    "TRJ-27": Row(
        "same drop: antispinward arc from the point under release", {"radius_m": 100.0, "height_m": 2.0}, 0.27238183,
        "m", 1e-07, "exact: R(tan th - th) (an involute)", "small-h textbook form (2/3)sqrt(2h^3/R) gives 0.26667 m",
    ),
    "TRJ-30": Row(
        "drop inside a rotating cylinder with 1 g0 at the floor: fall time", {"radius_m": 100.0, "height_m": 50.0},
        5.530957095, "s", 1e-08, "exact: tan(th)/w, cos(th)=(R-h)/R",
    ),
    "TRJ-31": Row(
        "same drop: antispinward arc from the point under release", {"radius_m": 100.0, "height_m": 50.0},
        68.48532564, "m", 1e-07, "exact: R(tan th - th) (an involute)",
        "small-h textbook form (2/3)sqrt(2h^3/R) gives 33.33333 m",
    ),
    "TRJ-32": Row(
        "ball thrown straight \"up\" from the floor of a 1 g0 cylinder: time of flight",
        {"radius_m": 100.0, "speed_m_s": 5.0}, 0.994366911, "s", 1e-08, "exact: 2u/((1+u^2)w), u=v/(wR)",
    ),
    "TRJ-33": Row(
        "same throw: spinward arc from launch to landing", {"radius_m": 100.0, "speed_m_s": 5.0}, 0.52654938, "m",
        1e-07, "exact: 2R(atan u - u/(1+u^2)); small-u limit (4/3)R u^3, the mirror of TRJ-09",
    ),
    "TRJ-36": Row(
        "ball thrown straight \"up\" from the floor of a 1 g0 cylinder: time of flight",
        {"radius_m": 895.0, "speed_m_s": 10.0}, 2.016457958, "s", 1e-08, "exact: 2u/((1+u^2)w), u=v/(wR)",
    ),
    "TRJ-37": Row(
        "same throw: spinward arc from launch to landing", {"radius_m": 895.0, "speed_m_s": 10.0}, 1.43166074, "m",
        1e-07, "exact: 2R(atan u - u/(1+u^2)); small-u limit (4/3)R u^3, the mirror of TRJ-09",
    ),
    "TRJ-38": Row(
        "ball thrown antispinward at exactly rim speed: period of its circle round the hull", {"radius_m": 100.0},
        20.0641, "s", 0.0001, "exact 2 pi/w: it is at rest in the inertial frame",
        "integration closes on the start point within 1e-10 m",
    ),
}
