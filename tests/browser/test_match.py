"""Could this path be? The samples, pictures of one's own, and rows, on one open page: what it says is what the API answers to what it asked."""

import base64
import io
import json

import av
import numpy as np

from rimfall.web.schema.bodies import CAMERA_FILE
from tests.shots.match_paths import flown

from .conftest import OPENING
from .looking import kept, open_place, opened_out, plain, stop, until
from .test_accessible import found

SIZE = (320, 240)  # of pictures made here
PICTURE = "#large .match-picture:not(.plot-ground)"
FOOT, HEAD = (30, 220), (30, 150)
BALLS = [(40 + 22 * k, 100 - 14 * k + 2 * k * k) for k in range(8)]


def still(ball):
    """A PNG with a ball on it."""
    return filmed([ball], "image2pipe", "png", "rgb24")


def filmed(balls, container_format, codec, pixel_format, rate=24):
    """The bytes of a file with a frame for each ball."""
    rows, columns = np.mgrid[: SIZE[1], : SIZE[0]]
    file = io.BytesIO()
    with av.open(file, "w", format=container_format) as container:
        stream = container.add_stream(codec, rate=rate)
        stream.width, stream.height, stream.pix_fmt = *SIZE, pixel_format
        for ball in balls:
            pixels = np.full((SIZE[1], SIZE[0], 3), 200, np.uint8)
            pixels[np.hypot(columns - ball[0], rows - ball[1]) < 5] = (180, 60, 20)
            container.mux(stream.encode(av.VideoFrame.from_ndarray(pixels, format="rgb24")))
        container.mux(stream.encode(None))
    return file.getvalue()


def test_a_path_is_judged_on_the_page_as_by_the_api(open_page, troubles):
    """One page for all of it: a load costs more than the rest."""
    page = open_page()
    stop(page, 0)
    asked = []
    page.on("request", lambda r: asked.append(r) if "/api/" in r.url else None)
    open_place(page, 5)
    page.locator(".match-begin").wait_for()
    the_sample_is_possible(page, asked)
    the_drawn_one_is_not(page, asked)
    own_pictures_are_marked_by_hand_and_key(page, asked)
    rows_are_pasted_refused_and_kept(page, troubles)
    a_camera_is_looked_through_and_goes_out(page, asked)
    a_track_file_is_opened(page, asked)
    a_clip_is_dropped_and_its_floor_fitted_with_the_decks_grid(page, asked)
    a_camera_file_is_opened_and_the_path_matched_through_it(page, asked)


def answered(page, asked):
    """The API's answer to what the page asked last, once the page says it."""
    last = until("a question", lambda: [r for r in asked if "/api/match?" in r.url], page=page)[-1]
    answer = page.request.post("/api/match", data=json.loads(last.post_data)).json()
    until("the verdict", lambda: plain(page.locator(".match-says").inner_text()) == plain(answer["says"]))
    return answer, json.loads(last.post_data)


def last_mark(asked):
    """Where the last mark is of what the page asked last."""
    [*_, mark] = json.loads([r for r in asked if "/api/match?" in r.url][-1].post_data)["picture"]["points"]
    return mark["x_px"], mark["y_px"]


def close(page):
    page.keyboard.press("Escape")
    page.locator(".match-again").get_by_role("button", name="Close").click()


def the_sample_is_possible(page, asked):
    page.get_by_role("button", name="Try the sample").click()
    page.locator(PICTURE).wait_for()
    page.locator(".match-fit").wait_for()
    answer, body = answered(page, asked)
    assert answer["verdict"] == "possible"
    assert "spin_rpm" not in body["known"]
    assert answer["fit"]["spin_rpm"]["low"] <= 3.0 <= answer["fit"]["spin_rpm"]["high"]  # the Lantern Wheel's
    marks = body["picture"]["points"]
    circles = page.locator(".over-seen circle").evaluate_all(
        "all => all.map(c => [+c.getAttribute('cx'), +c.getAttribute('cy')])"
    )
    assert circles == [[m["x_px"], m["y_px"]] for m in marks[1:]]  # the first is the one in hand
    path = page.locator(".over-path .fitted").get_attribute("d")
    line = np.array([[float(v) for v in point.split()] for point in path.removeprefix("M").split("L")])
    assert max(np.hypot(*(line - [m["x_px"], m["y_px"]]).T).min() for m in marks) < 4.5  # three accuracies
    assert found(page, "#large") == []
    assert found(page, "#shot-match") == []
    close(page)


def the_drawn_one_is_not(page, asked):
    page.get_by_role("button", name="Try one that cannot be").click()
    page.locator(".match-reason").first.wait_for()
    answer, _ = answered(page, asked)
    assert answer["verdict"] == "impossible"
    said = [plain(text) for text in page.locator(".match-reason").all_inner_texts()]
    assert said == [f"{n + 1} {plain(reason['says'])}" for n, reason in enumerate(answer["reasons"])]
    page.locator(".match-number").last.click()  # shows the frame that it speaks of
    at = answer["reasons"][-1]["at"]
    assert page.locator(".match-frame").inner_text().startswith(f"Frame {at + 1} of")
    assert found(page, "#large") == []
    close(page)


def own_pictures_are_marked_by_hand_and_key(page, asked):
    files = [{"name": f"take.{k + 1}.png", "mimeType": "image/png", "buffer": still(b)} for k, b in enumerate(BALLS)]
    del asked[:]
    page.locator("#shot-match input[type=file]").set_input_files(files[::-1])  # in the order of their numbers
    picture = page.locator(PICTURE)
    until("the picture", lambda: picture.get_attribute("hidden") is None and picture.is_visible())
    opened_out(page)

    def put(x, y):
        box = picture.bounding_box()
        return box["x"] + x * box["width"] / SIZE[0], box["y"] + y * box["width"] / SIZE[0]

    assert "line of known length" in page.locator(".match-says").inner_text()
    page.mouse.move(*put(*FOOT))
    page.mouse.down()
    page.mouse.move(*put(*HEAD), steps=3)
    page.mouse.up()
    page.get_by_role("button", name="Mark the thing").click()
    for ball in BALLS[:-1]:
        page.mouse.click(*put(*ball))
    assert page.locator(".match-frame").inner_text().startswith("Frame 8 of 8")
    assert not page.locator(".match-loupe").is_hidden()
    grip = page.locator(".mark-grip")
    grip.focus()
    (from_x, from_y), (x, y) = BALLS[-2:]
    for key, times in (
        ("Shift+ArrowRight", (x - from_x) // 10),
        ("ArrowRight", (x - from_x) % 10),
        ("ArrowDown", y - from_y),
    ):
        for _ in range(times):
            grip.press(key)
    until("the last step is asked", lambda: last_mark(asked)[1] > y - 1, page=page)
    until("eight marks", lambda: "eight marks" in page.locator(".match-tools").inner_text())
    page.locator(".match-fit").wait_for()
    _, body = answered(page, asked)
    points, plane = body["picture"]["points"], body["picture"]["plane"]
    assert [p["frame"] for p in points] == list(range(8))
    assert np.abs(np.array([[p["x_px"], p["y_px"]] for p in points]) - BALLS).max() < 1.0
    assert np.abs(np.array([plane["from_px"], plane["to_px"]]) - [FOOT, HEAD]).max() < 1.0
    page.keyboard.press("Control+z")
    assert "eight marks" in page.locator(".match-tools").inner_text()  # the last step of the mark, not all of it
    page.keyboard.press("Delete")
    assert "seven marks" in page.locator(".match-tools").inner_text()
    # no picture has left: every request is a question of a few kilobytes
    assert max(len(r.post_data_buffer or b"") for r in asked) < 20_000
    close(page)


def rows_are_pasted_refused_and_kept(page, troubles):
    page.get_by_role("button", name="Type rows").click()
    times = np.arange(16) / 20
    text = "\n".join(f"{t:.3f}\t{3 * t:.4f}\t{1.5 + 3 * t - 2.7 * t * t:.4f}" for t in times)
    first = page.get_by_label("Time, row 1", exact=True)
    first.evaluate(
        """(cell, text) => {
          const clipboardData = new DataTransfer();
          clipboardData.setData('text', text);
          cell.dispatchEvent(new ClipboardEvent('paste', { clipboardData, bubbles: true, cancelable: true }));
        }""",
        text,
    )
    page.locator(".match-fit").wait_for()
    troubles.expect("422")
    cell = page.get_by_label("Time, row 4", exact=True)
    cell.fill("0.05")
    cell.press("Enter")
    refusal = page.locator(".match-table .refusal")
    refusal.wait_for()
    assert "row 4" in refusal.inner_text()
    assert cell.input_value() == "0.05"
    cell.fill("0.15")
    cell.press("Enter")
    refusal.wait_for(state="detached")
    count = len(OPENING["motions"])
    page.get_by_role("button", name="Keep as a motion").click()
    scene = kept(page, lambda s: len(s["motions"]) == count + 1)
    assert scene["motions"][-1]["name"] == "Matched path"
    page.locator(".bar").get_by_role("button", name="Undo").click()
    kept(page, lambda s: len(s["motions"]) == count)
    assert found(page, "#shot-match") == []


def a_camera_is_looked_through_and_goes_out(page, asked):
    frame = page.locator(".stage-aboard .own-frame")
    page.get_by_role("button", name="Set up a camera").click()
    frame.wait_for()
    box, stage = frame.bounding_box(), page.locator(".stage-aboard").bounding_box()
    assert abs(box["width"] / box["height"] - 36 / 20.25) < 0.01
    assert box["width"] <= stage["width"] + 1
    assert box["height"] <= stage["height"] + 1
    own = page.request.post(
        "/api/camera", data=json.loads([r for r in asked if r.url.endswith("/api/camera")][-1].post_data)
    )
    assert found(page, "#shot-camera") == []
    page.locator("#foot [data-take=paths]").click()
    sent = until("a question of files", lambda: [r for r in asked if "/api/export/" in r.url], page=page)[-1]
    assert json.loads(sent.post_data)["export"]["cameras"] == own.json()["cameras"]
    page.keyboard.press("Escape")
    # what the stage is seen from goes out as its camera too, and is the same
    [aboard] = [c for c in json.loads(sent.post_data)["export"]["stage_cameras"] if c["view"] == "aboard"]
    [row] = own.json()["cameras"][0]["rows"]
    assert np.allclose(aboard["position_m"], row["position_m"], atol=1e-6)
    assert np.allclose(aboard["up"], row["up"], atol=1e-6)
    page.get_by_role("button", name="Remove the camera").click()
    frame.wait_for(state="hidden")


def a_track_file_is_opened(page, asked):
    time_s, places = flown(16)
    rows = [",".join(f"{value:.4f}" for value in (t, *place)) for t, place in zip(time_s, places, strict=True)]
    table = "\n".join(["time_s,along_m,height_m,axial_m", *rows]).encode()
    page.locator(".match-again").get_by_role("button", name="Close").click()
    page.locator("#shot-match input[type=file]").set_input_files(
        [{"name": "toss.csv", "mimeType": "text/csv", "buffer": table}]
    )
    until("its rows", lambda: page.get_by_label("Time, row 16", exact=True).count())
    page.locator(".match-fit").wait_for()
    answer, body = answered(page, asked)
    assert answer["verdict"] == "possible"
    sent = [[row[name] for name in ("time_s", "along_m", "height_m", "axial_m")] for row in body["track"]]
    assert np.abs(np.array(sent) - np.column_stack([time_s, places])).max() < 1e-4
    page.locator(".match-again").get_by_role("button", name="Close").click()


def a_clip_is_dropped_and_its_floor_fitted_with_the_decks_grid(page, asked):
    clip = base64.b64encode(filmed(BALLS, "webm", "libvpx", "yuv420p", rate=12)).decode()
    page.locator("#shot-match").evaluate(
        """(section, clip) => {
          const dataTransfer = new DataTransfer();
          dataTransfer.items.add(new File([Uint8Array.from(atob(clip), c => c.charCodeAt(0))], 'toss.webm', { type: 'video/webm' }));
          section.dispatchEvent(new DragEvent('drop', { dataTransfer, bubbles: true, cancelable: true }));
        }""",
        clip,
    )
    page.locator(PICTURE).wait_for()
    assert page.locator(".match-frame").inner_text().startswith("Frame 1 of 8")
    assert page.get_by_label("Frames per second", exact=True).inner_text() == "12"
    page.get_by_role("button", name="Mark the thing").click()
    for frame, (x, y) in enumerate(BALLS[:3]):
        if frame:
            page.keyboard.press(".")
        until("that frame", lambda x=x, y=y: on_plate(page, x, y)[2] < 110 < on_plate(page, x + 12, y)[2])
    # the deck's grid through a camera, in the server's pixels
    page.get_by_label("How large things are is told by").select_option("camera")
    view = page.get_by_label("Horizontal field of view", exact=True)
    view.click()
    page.keyboard.type("50")
    page.keyboard.press("Enter")

    def of_the_lens():
        bodies = [json.loads(r.post_data) for r in asked if r.url.endswith("/match/grid")]
        return bodies[-1] if bodies and bodies[-1]["camera"]["field_of_view_deg"] == 50 else None

    grid = page.request.post("/api/match/grid", data=until("the lens's grid", of_the_lens, page=page)).json()
    strong = "".join(
        f"M{'L'.join(f'{x:g} {y:g}' for x, y in run)}" for one in grid["lines"] if one["strong"] for run in one["runs"]
    )
    until("its lines", lambda: page.locator(".over-deck .strong").last.get_attribute("d") == strong)
    assert "strong each 5 m" in plain(page.locator(".match-grid").inner_text())


def on_plate(page, x, y):
    """The colour of the picture in hand at a pixel."""
    return page.locator(".match-plate").evaluate(
        "(plate, at) => [...plate.getContext('2d').getImageData(...at, 1, 1).data]", [x, y]
    )


def a_camera_file_is_opened_and_the_path_matched_through_it(page, asked):
    table = CAMERA_FILE["application/octet-stream"]["examples"]["a table"]["value"].encode()
    page.locator("#shot-camera input[accept*=csv]").set_input_files(
        [{"name": "shot.csv", "mimeType": "text/csv", "buffer": table}]
    )
    own = page.request.post(
        "/api/camera/file?view=aboard&radius_m=56", data=table, headers={"content-type": "application/octet-stream"}
    ).json()
    until("its words", lambda: plain(own["words"][0]) in plain(page.locator("#shot-camera").inner_text()))
    page.get_by_role("button", name="Match the path through it").click()
    until("it is said", lambda: "It is the camera below." in plain(page.locator(".match-sentence").inner_text()))
    rows = [row | {"width_px": SIZE[0], "height_px": SIZE[1]} for row in own["match"]]
    until(
        "the grid through it as it is in that frame",
        lambda: (
            json.loads([r for r in asked if r.url.endswith("/match/grid")][-1].post_data)
            == {"radius_m": 56, "camera": rows, "time_s": 2 / 12}
        ),
        page=page,
    )
    page.get_by_role("button", name="Lay the pictures of the path in its frame").click()
    assert page.get_by_label("Opacity of the plate").is_visible()
    close(page)
    page.get_by_role("button", name="Remove the camera").click()
