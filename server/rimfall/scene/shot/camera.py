"""A camera of one's own, as it is stated by hand or read from a file, in the one form that the stages and the files have
(`scene.export_part.OwnCamera`)."""

from typing import Any

import numpy as np

from ...errors import BadInput
from ...language import tr, written
from ...physics.coordinates import RoundChart
from ..export_part import GREATEST_ASPECT, GREATEST_FOV_DEG, LEAST_ASPECT, LEAST_FOV_DEG
from ..validation_errors import wrong
from . import sight
from .camera_request import CameraRequest

_EQUAL_M = 1e-9


def of_request(request: CameraRequest) -> dict[str, Any]:
    """The answer to a CameraRequest as plain data. Raises BadInput."""
    camera, habitat = request.camera, request.scene.habitat.habitat()
    floors = {row.place.floor for row in camera.rows} | {row.look_at.floor for row in camera.rows}
    chart = habitat.chart(_one_floor(request, floors))
    places, aims = (
        np.array([[at.along_m, at.height_m, at.axial_m] for at in (getattr(row, name) for row in camera.rows)])
        for name in ("place", "look_at")
    )
    still = np.flatnonzero(np.linalg.norm(chart.position(places) - chart.position(aims), axis=1) <= _EQUAL_M)
    if len(still):
        k = int(still[0])
        was, may_be = camera.rows[k].look_at.model_dump(), tr("another place than the camera's own")
        raise BadInput(wrong(f"camera.rows.{k}.look_at", was, may_be))
    roll = np.array([row.roll_deg for row in camera.rows])
    position, target, up = sight.placed(chart, places, aims, roll)
    film = camera.film_back
    aspect = film.width_mm / film.height_mm
    if not LEAST_ASPECT <= aspect <= GREATEST_ASPECT:
        raise BadInput(wrong("camera.film_back.width_mm", film.width_mm, wide_as_high()))
    fov = np.array([_vertical_deg(k, row, film) for k, row in enumerate(camera.rows)])
    times = [row.time_s for row in camera.rows]
    for k in range(1, len(times)):
        if times[k] <= times[k - 1]:
            may_be = tr("later than {time} s, the row before it", time=written(times[k - 1], "g"))
            raise BadInput(wrong(f"camera.rows.{k}.time_s", times[k], may_be))
    own = own_camera(camera.name, camera.view, aspect, np.array(times), position, target, up, fov)
    return answer([own], chart)


def _one_floor(request, floors):
    grounds = request.scene.habitat.grounds
    if len(floors) > 1 or max(floors) >= grounds:
        may_be = tr("0: there is one ground")
        if grounds > 1:
            may_be = tr("0 to {last}, one and the same for all", last=grounds - 1)
        raise BadInput(wrong("camera.rows.0.place.floor", max(floors), may_be))
    return floors.pop()


def _vertical_deg(k, row, film):
    """A row's vertical field of view, degrees."""
    if (row.field_of_view_deg is None) == (row.focal_length_mm is None):
        was = tr("nothing") if row.focal_length_mm is None else tr("a focal length as well")
        may_be = tr("a field of view or a focal length, one of the two")
        raise BadInput(wrong(f"camera.rows.{k}.field_of_view_deg", was, may_be))
    field = "field_of_view_deg" if row.focal_length_mm is None else "focal_length_mm"
    if row.focal_length_mm is not None:
        half = film.height_mm / 2 / row.focal_length_mm
    else:
        half = np.tan(np.radians(row.field_of_view_deg) / 2) * film.height_mm / film.width_mm
    fov_deg = float(np.degrees(2 * np.arctan(half)))
    if not LEAST_FOV_DEG <= fov_deg <= GREATEST_FOV_DEG:
        may_be = tr(
            "such that it sees {least} to {most}° from top to bottom, not {angle}°",
            least=written(LEAST_FOV_DEG, "g"),
            most=written(GREATEST_FOV_DEG, "g"),
            angle=written(fov_deg, ".3g"),
        )
        raise BadInput(wrong(f"camera.rows.{k}.{field}", getattr(row, field), may_be))
    return fov_deg


def wide_as_high():
    """What the shape of a picture may be."""
    least, most = written(LEAST_ASPECT, "g"), written(GREATEST_ASPECT, "g")
    return tr("{least} to {most} times as wide as high", least=least, most=most)


def own_camera(name, view, aspect, time_s, position, target, up, fov_deg) -> dict[str, Any]:
    """An `export_part.OwnCamera` as plain data; what does not change is one row."""
    columns = (position, target, up, fov_deg)
    if all(np.allclose(column, column[:1], rtol=0, atol=_EQUAL_M) for column in columns):
        time_s, (position, target, up, fov_deg) = np.zeros(1), (column[:1] for column in columns)
    rows = zip(time_s.tolist(), position.tolist(), target.tolist(), up.tolist(), fov_deg.tolist(), strict=True)
    names = ("time_s", "position_m", "target_m", "up", "vertical_fov_deg")
    return {
        "name": name[:60] or "Camera",
        "view": view,
        "aspect": float(aspect),
        "rows": [dict(zip(names, row, strict=True)) for row in rows],
    }


def answer(cameras: list[dict], chart: Any) -> dict[str, Any]:
    """What is answered about cameras; chart: of the places aboard that the first of them is told by, or None."""
    return {"cameras": cameras, "match": _as_places(cameras[0], chart), "words": [_said(one) for one in cameras]}


def _as_places(camera, chart):
    """The rows of a camera aboard by its places, as a match takes them; None where its places are not known."""
    if not isinstance(chart, RoundChart) or camera["view"] != "aboard":
        return None
    columns = (np.array([row[name] for row in camera["rows"]]) for name in ("position_m", "target_m", "up"))
    places, aims, roll = sight.places_of(chart, *columns)
    names = ("along_m", "height_m", "axial_m")
    return [
        {
            "time_s": row["time_s"],
            "field_of_view_deg": _horizontal_deg(row["vertical_fov_deg"], camera["aspect"]),
            "position": dict(zip(names, place, strict=True)),
            "look_at": dict(zip(names, aim, strict=True)),
            "roll_deg": bank,
        }
        for row, place, aim, bank in zip(camera["rows"], places.tolist(), aims.tolist(), roll.tolist(), strict=True)
    ]


def _horizontal_deg(vertical_deg, aspect):
    return float(np.degrees(2 * np.arctan(aspect * np.tan(np.radians(vertical_deg) / 2))))


def _said(camera):
    rows = camera["rows"]
    wide = sorted({round(_horizontal_deg(row["vertical_fov_deg"], camera["aspect"]), 1) for row in rows})
    least, most = written(wide[0], "g"), written(wide[-1], "g")
    told = {
        "name": camera["name"],
        "angle": f"{least}°" if len(wide) == 1 else tr("{least} to {most}°", least=least, most=most),
    }
    aboard = camera["view"] == "aboard"
    if len(rows) == 1:
        if aboard:
            return tr("{name} rides with the deck and stands still; it sees {angle} across.", **told)
        return tr("{name} stands outside the turning and stands still; it sees {angle} across.", **told)
    told |= {"count": written(len(rows), ","), "first": written(rows[0]["time_s"], ".2f")}
    told["last"] = f"{written(rows[-1]['time_s'], '.2f')}\u00a0s"
    if aboard:
        return tr(
            "{name} rides with the deck and moves, in {count} rows from {first} to {last}; it sees {angle} across.",
            **told,
        )
    return tr(
        "{name} stands outside the turning and moves, in {count} rows from {first} to {last}; it sees {angle} across.",
        **told,
    )
