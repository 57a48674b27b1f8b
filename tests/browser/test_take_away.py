"""Take it away: each download from the page opens in a reader that is not ours, and says what was asked.

Readers: csv, json, zipfile and xml of the standard library; trimesh (glTF); pxr (OpenUSD); PyAV (PNG, WebM); PDFium.
"""

import contextlib
import csv
import io
import json
import zipfile
from xml.etree import ElementTree

import av
import numpy as np
import pypdfium2
import pytest
import trimesh
from pxr import Usd

from rimfall.exports.recovery import document_in
from tests.tables import each_row

from .looking import (
    PAINTING_OF,
    looked_at,
    open_place,
    pixels,
    saved_scene,
    scene_of,
    settle,
    still_picture,
    stop,
    type_figure,
    until,
)
from .test_everywhere import NO_WEBGL
from .test_faults import LOSE, RESTORE

pytestmark = pytest.mark.one_page
SVG = "{http://www.w3.org/2000/svg}svg"
SLOW_S = 90  # drawing in software
ALIKE = 6.0  # mean difference of 255 between a stage and its picture: the stage has buttons, the picture smoother edges


FIRST_KINDS = """kinds => kinds.filter(kind => kind.selectedIndex).forEach(kind => {
  kind.selectedIndex = 0;
  kind.dispatchEvent(new Event('change', { bubbles: true }));
})"""


WHOLE_PICTURE = {"What is drawn": "all", "Background": "false", "Labels": "true", "Mattes": "false", "Depth": "false"}


def open_sheet(page, link="paths", only=()):
    """The sheet with its first choices, but for the size and the stages of a picture; with nothing but `only` ticked where that is given.
    Another test may have chosen other kinds of file, and left things out of pictures."""
    sheet = page.locator(".away-sheet")
    sheet.locator("select[aria-label$=': kind of file']").evaluate_all(
        FIRST_KINDS
    )  # which ticks them, and the link ticks anew
    page.locator(f"#foot [data-take={link}]").click()
    reset = sheet.get_by_role("button", name="Reset")
    if reset.is_visible():
        reset.click()
    if link == "pictures":
        for choice, value in WHOLE_PICTURE.items():
            sheet.get_by_label(choice, exact=True).select_option(value)
    if only:
        sheet.locator(".takings input:checked").evaluate_all("boxes => boxes.forEach((box) => box.click())")
        for name in only:
            sheet.locator(f"#take-{name}").check()
    return sheet


def type_choice(sheet, label, text):
    box = sheet.get_by_label(label, exact=True)
    box.fill(text)
    box.press("Enter")


def own_size(sheet, width, height):
    sheet.get_by_label("Size", exact=True).select_option("own")
    type_choice(sheet, "Width", str(width))
    type_choice(sheet, "Height", str(height))


def save(page, sheet, count):
    """Press Save; the files by name. In a test that is marked glanced, pictures and stages are painted until they are there."""
    got = []

    def hear(one):
        got.append(one)

    page.on("download", hear)
    button = sheet.locator(".away-foot .strong")
    until("Save", lambda: button.is_enabled())
    with looked_at(page) if PAINTING_OF[page] == "pictures" else contextlib.nullcontext():
        button.click()
        until(f"{count} files", lambda: len(got) == count, timeout_s=SLOW_S, page=page)
    page.remove_listener("download", hear)
    return {one.suggested_filename: one.path().read_bytes() for one in got}


def ending(files, end):
    [found] = [body for name, body in files.items() if name.endswith(end)]
    return found


def test_the_links_at_the_foot_open_it_ticked(page):
    for link, ticked in (("paths", {"paths", "notes"}), ("pictures", {"picture"}), ("scene", {"scene"})):
        sheet = open_sheet(page, link)
        boxes = sheet.locator(".takings input:checked")
        assert {box.get_attribute("id") for box in boxes.all()} == {f"take-{name}" for name in ticked}
        page.keyboard.press("Escape")


def test_page_opens_the_brief_of_this_scene(page):
    type_figure(page, "habitat.radius_m", "80")
    with page.context.expect_page() as opened:
        page.locator("#brief-link").click()  # before the address is that of the change
    assert scene_of(opened.value.url)["habitat"]["radius_m"] == 80
    assert opened.value.url == page.url.replace("/#", "/brief#").replace("/?again#", "/brief#")
    opened.value.close()
    settle(page)


def test_tables_and_numbers_open_in_readers_of_their_own(page):
    sheet = open_sheet(page, only=("paths", "notes", "numbers", "forces", "forces-notes", "scene", "one-file"))
    sheet.get_by_label("Unit", exact=True).select_option("cm")
    files = save(page, sheet, 7)
    notes = json.loads(ending(files, ".notes.json"))
    rows = list(csv.DictReader(io.StringIO(ending(files, "ways.csv").decode())))
    assert len(rows) == notes["counts"]["csv_rows"]
    assert {"x_cm", "vy_cm_s"} <= set(rows[0])
    assert rows[0]["frame"] == "1001"
    assert notes["file"]["unit"] == "cm"
    turning = list(csv.reader(io.StringIO(ending(files, ".forces.csv").decode())))
    assert len(turning) == notes["file"]["frame_count"] + 1
    assert json.loads(ending(files, ".forces.json"))
    assert json.loads(ending(files, "ways.json"))["scene"] == notes["scene"]
    assert json.loads(ending(files, ".rimfall.json"))["title"] == notes["scene"]["title"]
    assert json.loads(document_in(ending(files, "ways.html"))) == notes["scene"]


def test_a_table_a_frame_is_a_zip_of_tables_after_their_notes(page):
    sheet = open_sheet(page, only=("paths",))
    sheet.get_by_label("Paths: kind of file").select_option("csv-frames")
    [(name, body)] = save(page, sheet, 1).items()
    assert name == "the-same-lob-both-ways.frames.zip"
    packed = zipfile.ZipFile(io.BytesIO(body))
    assert packed.testzip() is None
    notes, *tables = packed.namelist()
    assert notes == "the-same-lob-both-ways.notes.json"
    assert tables
    assert all(name.endswith(".csv") for name in tables)


def test_openusd_opens_with_its_own_library(page, tmp_path):
    sheet = open_sheet(page, only=("usd",))
    type_choice(sheet, "Shot at, frames per second", "29.97")
    for kind in ("usdz", "usda", "usdc"):
        if kind != "usdz":  # which is what it is at first
            sheet.get_by_label("OpenUSD: kind of file").select_option(kind)
        [(name, body)] = save(page, sheet, 1).items()
        file = tmp_path / name
        file.write_bytes(body)
        assert file.suffix == f".{kind}"
        stage = Usd.Stage.Open(str(file))
        assert stage.GetStartTimeCode() == 1001
        assert stage.GetFramesPerSecond() == pytest.approx(30000 / 1001, abs=1e-9)
        assert stage.GetDefaultPrim().GetName() == "World"


def test_gltf_opens_in_another_reader(page):
    sheet = open_sheet(page, only=("gltf",))
    scene = trimesh.load(io.BytesIO(ending(save(page, sheet, 1), ".glb")), file_type="glb")
    assert sum("path" in name for name in scene.geometry) == 2


def test_plots_are_drawings_pages_and_pictures(page):
    sheet = open_sheet(page, only=("plot-path", "plot-height", "plot-felt", "plots"))
    sheet.get_by_label("Height against time: kind of file").select_option("pdf")
    sheet.get_by_label("Felt on the way: kind of file").select_option("png")
    own_size(sheet, 640, 360)
    files = save(page, sheet, 4)
    drawn = ElementTree.fromstring(ending(files, ".path.svg"))
    assert drawn.tag == SVG
    for end in (".height.pdf", ".plots.pdf"):
        assert len(pypdfium2.PdfDocument(ending(files, end))) == 1
    picture = pixels(ending(files, ".felt.png"))
    assert picture.shape[1] == 640
    assert picture.min() < 60 < 200 < picture.max(), "lines on paper"


SMALL = {"width": 1024, "height": 640}  # large enough to be drawn in, and small to paint in software


@pytest.mark.painted
def test_a_picture_is_as_its_stage_and_leaves_both_stages_as_they_were(page):
    stop(page, 0.8)
    box = page.locator(".stage-aboard").bounding_box()
    stage, other = pixels(still_picture(page, "aboard")), pixels(still_picture(page, "outside"))
    sheet = open_sheet(page, "pictures")
    sheet.get_by_label("Stage", exact=True).select_option("aboard")
    own_size(sheet, int(box["width"]), int(box["height"]))
    [(name, body)] = save(page, sheet, 1).items()
    assert name == "the-same-lob-both-ways.aboard.png"
    picture = pixels(body)
    assert picture.shape == stage.shape
    assert (picture[..., 3] == 255).all()
    off = np.abs(picture[..., :3] - stage[..., :3])
    assert off.mean() < ALIKE
    assert np.median(off) <= 1, "the night and the deck have the stage's own colours"
    page.keyboard.press("Escape")
    for frame, before in (("aboard", stage), ("outside", other)):
        assert np.abs(pixels(still_picture(page, frame)) - before).max() <= 1


@pytest.mark.glanced
def test_labels_are_written_in_or_not_and_a_picture_on_nothing_lets_the_ground_through(page):
    page.set_viewport_size(SMALL)
    stop(page, 0.8)
    sheet = open_sheet(page, "pictures")
    own_size(sheet, 640, 360)
    sheet.get_by_label("What is drawn", exact=True).select_option("all")
    sheet.get_by_label("Background", exact=True).select_option("false")
    sheet.get_by_label("Labels", exact=True).select_option("true")
    sheet.get_by_label("Stage", exact=True).select_option("both")
    labelled = pixels(ending(save(page, sheet, 1), ".png"))
    sheet.get_by_label("Labels", exact=True).select_option("false")
    bare = pixels(ending(save(page, sheet, 1), ".png"))
    assert 0.005 < (np.abs(labelled - bare).max(axis=2) > 12).mean() < 0.2
    sheet.get_by_label("Stage", exact=True).select_option("aboard")
    sheet.get_by_label("Background", exact=True).select_option("true")
    opacity = pixels(ending(save(page, sheet, 1), ".png"))[..., 3]
    assert (opacity == 0).mean() > 0.1, "no night, no stars"
    assert (opacity == 255).mean() > 0.1, "the deck"
    sheet.get_by_label("What is drawn", exact=True).select_option("paths")
    paths = pixels(ending(save(page, sheet, 1), ".png"))[..., 3]
    sheet.get_by_label("What is drawn", exact=True).select_option("things")
    things = pixels(ending(save(page, sheet, 1), ".png"))[..., 3]
    assert 0 < (things > 0).mean() < (paths > 0).mean() / 2 < 0.1
    assert not ((things > 128) & (paths == 0)).any(), "the same things in the same place"


def exr(body):
    """Depths of an OpenEXR picture, read by FFmpeg's libraries."""
    with av.open(io.BytesIO(body), format="exr_pipe") as file:
        [frame] = file.decode(video=0)
    return np.frombuffer(frame.planes[0], np.float32).reshape(frame.height, -1)[:, : frame.width]


@pytest.mark.glanced
def test_a_matte_of_each_motion_and_the_depth_lie_where_that_motion_is(page):
    page.set_viewport_size(SMALL)
    sheet = open_sheet(page, only=("sequence",))
    type_choice(sheet, "To", "0.5 s")
    type_choice(sheet, "From", "0.5 s")
    own_size(sheet, 320, 180)
    sheet.get_by_label("What is drawn", exact=True).select_option("things")
    sheet.get_by_label("Background", exact=True).select_option("true")
    sheet.get_by_label("Mattes", exact=True).select_option("true")
    sheet.get_by_label("Depth", exact=True).select_option("true")
    packed = zipfile.ZipFile(io.BytesIO(ending(save(page, sheet, 1), ".zip")))
    for choice in ("Mattes", "Depth"):
        sheet.get_by_label(choice, exact=True).select_option("false")
    [frame, *mattes] = [pixels(packed.read(name))[..., 3] for name in packed.namelist() if name.endswith(".png")]
    assert [name.split(".")[1] for name in packed.namelist()[2:]] == ["matte-lob-out", "matte-lob-back", "depth"]
    depth = exr(packed.read(packed.namelist()[-1]))
    assert depth.shape == frame.shape
    there = depth < 1e9
    assert there[frame == 255].mean() > 0.9
    assert (there & (frame == 0)).mean() < 0.002, "hardly anything is deep where nothing is drawn"
    assert 1 < depth[there].min() < depth[there].max() < 400, "metres"
    assert all((matte > 0).any() for matte in mattes)
    assert not np.logical_and(*[matte > 128 for matte in mattes]).any()
    assert np.abs(np.maximum(*mattes).astype(float) - frame).max() < 40, "both together are all that moves"


@pytest.mark.glanced
def test_every_frame_is_at_its_own_time(page):
    """Frame 1007 at 24 a second is at 0.25 s: the same picture as that moment's own."""
    page.set_viewport_size(SMALL)
    stop(page, 0.25)
    sheet = open_sheet(page, only=("sequence", "picture"))
    type_choice(sheet, "To", "0.3 s")
    sheet.get_by_label("Stage", exact=True).select_option("both")
    sheet.get_by_label("What is drawn", exact=True).select_option("all")
    sheet.get_by_label("Background", exact=True).select_option("false")
    sheet.get_by_label("Labels", exact=True).select_option("false")  # a label keeps its place from frame to frame
    own_size(sheet, 320, 180)
    files = save(page, sheet, 2)
    packed = zipfile.ZipFile(io.BytesIO(ending(files, ".zip")))
    assert packed.testzip() is None
    frames = {name: packed.read(name) for name in packed.namelist() if name.endswith(".png")}
    assert json.loads(packed.read("the-same-lob-both-ways.json"))["scene"]["title"] == "The same lob, both ways"
    assert list(frames) == [f"the-same-lob-both-ways.{number}.png" for number in range(1001, 1001 + len(frames))]
    moment = pixels(ending(files, ".both.png"))
    off = {name: np.abs(pixels(png) - moment).mean() for name, png in frames.items()}
    assert min(off, key=off.get).endswith(".1007.png")
    for body in files.values():  # both open again
        back = page.request.post("/api/recover", data=body, headers={"content-type": "application/octet-stream"})
        assert back.json()["scene"]["title"] == "The same lob, both ways", back.text()
    assert off["the-same-lob-both-ways.1007.png"] < 0.01 < off["the-same-lob-both-ways.1006.png"]


@pytest.mark.glanced
def test_a_cameras_plate_lies_behind_what_moves_frame_by_frame(page):
    page.set_viewport_size(SMALL)
    stop(page, 0)
    open_place(page, 5)
    page.get_by_role("button", name="Set up a camera").click()
    colours = ((200, 40, 30), (30, 60, 210))
    stills = [flat_still(colour) for colour in colours]
    page.locator("#shot-camera input[type=file][multiple]").set_input_files(
        [{"name": f"plate.{k}.png", "mimeType": "image/png", "buffer": one} for k, one in enumerate(stills)]
    )
    page.get_by_label("Opacity of the plate").fill("100")
    sheet = open_sheet(page, only=("sequence",))
    type_choice(sheet, "From", "0 s")
    type_choice(sheet, "To", "0.03 s")
    sheet.get_by_label("Stage", exact=True).select_option("aboard")
    sheet.get_by_label("What is drawn", exact=True).select_option("all")
    sheet.get_by_label("Background", exact=True).select_option("false")
    sheet.get_by_label("Labels", exact=True).select_option("false")
    own_size(sheet, 320, 180)
    packed = zipfile.ZipFile(io.BytesIO(ending(save(page, sheet, 1), ".zip")))
    frames = [pixels(packed.read(name)) for name in packed.namelist() if name.endswith(".png")]
    assert len(frames) == 2
    for frame, colour in zip(frames, colours, strict=True):
        plate = (np.abs(frame[..., :3] - colour) <= 2).all(axis=2)
        assert 0.7 < plate.mean() < 0.995, "the plate, and on it what moves"
        assert plate[:8].mean() > 0.9, "neither stars nor deck"
    page.keyboard.press("Escape")
    page.get_by_role("button", name="Remove the camera").click()


def test_a_plate_waits_for_its_camera_and_goes_with_it(page):
    """Pictures that are read while the camera is still asked for lie in it once it comes, and go when it is removed."""
    stop(page, 0)
    open_place(page, 5)
    held = []
    page.route("**/api/camera", lambda route: held.append(route))
    page.get_by_role("button", name="Set up a camera").click()
    until("the camera is asked for", lambda: held, page=page)
    still = {"name": "plate.png", "mimeType": "image/png", "buffer": flat_still((200, 40, 30))}
    page.locator("#shot-camera input[type=file][multiple]").set_input_files([still])
    page.wait_for_timeout(200)
    assert page.get_by_label("Opacity of the plate").is_hidden(), "there is no camera yet"
    held.pop().continue_()
    page.get_by_label("Opacity of the plate").fill("100")
    page.get_by_role("button", name="Remove the camera").click()
    page.get_by_role("button", name="Set up a camera").click()
    until("it is asked for again", lambda: held, page=page)
    held.pop().continue_()
    page.get_by_role("button", name="Open a plate").wait_for()
    assert page.get_by_label("Opacity of the plate").is_hidden(), "the plate went with the camera that was removed"
    page.get_by_role("button", name="Remove the camera").click()
    page.unroute_all()


def flat_still(colour):
    """A PNG of one colour, of the shape of the camera's picture."""
    file = io.BytesIO()
    with av.open(file, "w", format="image2pipe") as container:
        stream = container.add_stream("png", rate=24)
        stream.width, stream.height, stream.pix_fmt = 160, 90, "rgb24"
        frame = av.VideoFrame.from_ndarray(np.full((90, 160, 3), colour, np.uint8), format="rgb24")
        for one in (frame, None):
            container.mux(stream.encode(one))
    return file.getvalue()


@pytest.mark.glanced
def test_a_clip_holds_every_frame_at_its_time(page):
    """Shot at 48 and shown at 29.97: a thing that lasts 0.125 s is 7 frames, each 1001/30000 s after the one before. Both kinds of file
    are read by FFmpeg's libraries, and open again."""
    page.set_viewport_size(SMALL)
    for kind, ending_, codecs in (("WebM", ".webm", ("vp9", "vp8")), ("MP4", ".mp4", ("h264", "vp9"))):
        sheet = open_sheet(page, only=("clip",))
        sheet.get_by_label("Clip: kind of file").select_option(label=kind)
        type_choice(sheet, "Shot at, frames per second", "48")
        type_choice(sheet, "Shown at, frames per second", "29.97")
        type_choice(sheet, "To", "0.125")
        own_size(sheet, 321, 180)
        body = ending(save(page, sheet, 1), ending_)
        with av.open(io.BytesIO(body)) as file:
            [video] = file.streams.video
            frames = [(frame.time, frame.to_ndarray(format="rgb24")) for frame in file.decode(video)]
            assert video.codec_context.name in codecs
            assert (video.width, video.height) == (320, 180), "even sides"
            assert float(video.average_rate) == pytest.approx(30000 / 1001, abs=1e-4)
        assert len(frames) == 7
        assert [time for time, _ in frames] == pytest.approx([k * 1001 / 30000 for k in range(7)], abs=2e-6)
        assert np.abs(frames[0][1] - frames[-1][1]).mean() > 0.05, "it moves"
        back = page.request.post("/api/recover", data=body, headers={"content-type": "application/octet-stream"})
        assert back.json()["scene"]["title"] == "The same lob, both ways", back.text()
        page.keyboard.press("Escape")


@pytest.mark.painted
def test_a_long_making_can_be_cancelled(page):
    page.set_viewport_size(SMALL)
    sheet = open_sheet(page, only=("sequence",))
    own_size(sheet, 640, 360)
    got = []

    def hear(one):
        got.append(one)

    page.on("download", hear)
    until("Save", lambda: sheet.locator(".away-foot .strong").is_enabled())
    sheet.locator(".away-foot .strong").click()
    bar = sheet.get_by_role("progressbar")
    until("a frame", lambda: "Frame" in (bar.get_attribute("aria-valuetext") or ""), timeout_s=SLOW_S)
    sheet.get_by_role("button", name="Cancel").click()
    until("Save again", lambda: sheet.locator(".away-foot .strong").is_enabled(), timeout_s=SLOW_S)
    assert bar.is_hidden()
    assert got == []
    page.remove_listener("download", hear)


def test_a_figure_out_of_range_is_refused_where_it_is_typed(page):
    may_be = page.request.get("/api/fields").json()["export"]["fields"]["first_frame"]["may_be"]
    sheet = open_sheet(page)
    type_choice(sheet, "First frame", "5000000")
    alert = sheet.locator(".how [role=alert]").first
    assert alert.inner_text() == f"First frame was 5000000; it must be {may_be}."
    assert sheet.get_by_label("First frame", exact=True).get_attribute("aria-invalid") == "true"
    assert sheet.locator(".away-foot .strong").is_disabled()
    sheet.get_by_label("First frame", exact=True).press("Escape")
    until("it is taken back", lambda: alert.inner_text() == "")
    assert sheet.get_by_label("First frame", exact=True).input_value() == "1001"


def test_what_the_server_refuses_stands_at_its_choice(page, troubles):
    troubles.expect("422")
    sheet = open_sheet(page)
    type_choice(sheet, "Shot at, frames per second", "400")
    alert = sheet.locator(".how [role=alert]").first
    until("the refusal", lambda: "400" in alert.inner_text())
    assert sheet.locator(".away-foot .strong").is_disabled()
    type_choice(sheet, "Shot at, frames per second", "25")
    until("it is gone", lambda: alert.inner_text() == "" and sheet.locator(".away-foot .strong").is_enabled())


def test_choices_are_remembered_and_can_be_put_back(page):
    """And as they were put back, and the page was loaded anew, the other tests go on with it."""
    sheet = open_sheet(page)
    sheet.get_by_label("View", exact=True).select_option("inertial_flat")
    sheet.get_by_label("Origin", exact=True).select_option("place")
    type_choice(sheet, "Origin: Along the deck", "2.5")
    page.goto("/?again")
    page.locator("#stages[data-drawn-radius]").wait_for()
    stop(page)
    page.locator("#foot [data-take=paths]").click()
    assert sheet.get_by_label("View", exact=True).input_value() == "inertial_flat"
    assert sheet.get_by_label("Origin: Along the deck", exact=True).input_value() == "2.5\u00a0m"
    sheet.get_by_role("button", name="Reset").click()
    until("the default", lambda: sheet.get_by_label("View", exact=True).input_value() == "rotating")
    assert sheet.get_by_label("Origin", exact=True).input_value() == "axis"


def test_motions_left_out_are_not_in_the_file(page):
    sheet = open_sheet(page, only=("paths", "notes"))
    sheet.get_by_label("Lob back").uncheck()
    until("one body", lambda: "one body" in sheet.locator(".facts").inner_text())
    notes = json.loads(ending(save(page, sheet, 2), ".notes.json"))
    assert [one["motion"] for one in notes["ids"]] == ["Lob out"]


def test_the_star_drift_is_said(page):
    """3 rpm is 18° a second: at 24 frames per second 0.75° per frame."""
    assert saved_scene(page) is None or saved_scene(page)["habitat"]["spin_rpm"] == 3
    sheet = open_sheet(page)
    until("the drift", lambda: "The stars drift 0.75° per frame." in sheet.locator(".facts").inner_text())


def test_the_keyboard_alone_saves_a_file(page):
    page.locator("#foot [data-take=scene]").focus()
    page.keyboard.press("Enter")
    with page.expect_download() as got:
        for _ in range(60):
            page.keyboard.press("Tab")
            if page.evaluate("document.activeElement.textContent") == "Save one file":
                page.keyboard.press("Enter")
                break
    assert got.value.suggested_filename.endswith(".rimfall.json")


# with the first frame that is told of, in the page itself: all of them may be over before anybody else's turn comes
LOSE_UNDER_WAY = f"""() => new MutationObserver((_, watcher) => {{
  if (!document.querySelector('.away-sheet').innerText.includes('Frame ')) return;
  watcher.disconnect();
  ({LOSE})();
}}).observe(document.querySelector('.away-sheet'), {{ subtree: true, childList: true, characterData: true }})"""


@pytest.mark.painted
def test_a_clip_that_loses_the_drawing_halfway_goes_on_once_it_is_back(page):
    page.set_viewport_size(SMALL)
    sheet = open_sheet(page, only=("clip",))
    type_choice(sheet, "To", "0.25")
    own_size(sheet, 320, 180)
    got = []

    def hear(one):
        got.append(one)

    page.on("download", hear)
    button = sheet.locator(".away-foot .strong")
    until("Save", lambda: button.is_enabled())
    page.evaluate(LOSE_UNDER_WAY)
    button.click()
    until("it is said in the sheet", lambda: "3D drawing" in sheet.locator(".state").inner_text())
    settle(page)
    assert not got
    page.evaluate(RESTORE)
    until("the clip", lambda: got, page=page)
    page.remove_listener("download", hear)
    with av.open(io.BytesIO(got[0].path().read_bytes())) as file:
        pictures = [frame.to_ndarray(format="rgb24") for frame in file.decode(video=0)]
    assert len(pictures) == 7
    assert min(picture.max() for picture in pictures) > 200, "none of them is black"


def test_without_a_video_encoder_the_clip_says_so(open_page):
    page = open_page(before="delete window.VideoEncoder;")
    sheet = open_sheet(page, "pictures")
    assert sheet.locator("#take-clip").is_disabled()
    assert "cannot encode video" in sheet.locator("#take-clip-why").inner_text()


def test_without_webgl_there_are_files_and_no_pictures(open_page):
    page = open_page(before=NO_WEBGL, ready="body[data-ready]")
    sheet = open_sheet(page)
    assert "need WebGL" in sheet.inner_text()
    assert sheet.locator("#take-picture").count() == 0
    assert len(save(page, sheet, 2)) == 2


@each_row(("width", "height"), [(1440, 900), (1024, 768), (390, 844)])
def test_the_sheet_fits_and_save_is_in_sight(page, width, height):
    page.set_viewport_size({"width": width, "height": height})
    if width < 600:
        page.locator("#strip [data-place=away]").click()
    sheet = open_sheet(page)
    sheet.locator(".takings input").evaluate_all("boxes => boxes.forEach((box) => box.checked || box.click())")
    settle(page)
    box, button = sheet.bounding_box(), sheet.locator(".away-foot .strong").bounding_box()
    assert box["x"] >= 0
    assert box["x"] + box["width"] <= width
    assert box["height"] <= height
    assert button["y"] + button["height"] <= height
    assert sheet.evaluate("e => e.scrollWidth - e.clientWidth") == 0
    page.keyboard.press("Escape")
