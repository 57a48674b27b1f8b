"""Files that are damaged, foreign or made to cost: each is refused by a sentence that names what is wrong."""

import io
import json
import struct
import zipfile
import zlib
from dataclasses import replace

import pytest

from rimfall.errors import Refused
from rimfall.exports.recovery import document_in, recovered
from rimfall.exports.recovery.terms import Limits
from tests.exports.files_of_ours import scene, written
from tests.tables import each_row

NOTES = b'{"scene": %s}' % scene().model_dump_json().encode()
SMALL = replace(Limits(), scene_bytes=10_000, notes_bytes=20_000, unpacked_bytes=50_000, tokens=500, parts=20)


def zipped(members, method=zipfile.ZIP_DEFLATED):
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as packed:
        for name, content in members.items():
            packed.writestr(name, content)
    return out.getvalue()


def set_in(content, sign, at, value):
    """With the bytes changed that lie `at` bytes after the last place of a sign."""
    place = content.rindex(sign) + at
    return content[:place] + value + content[place + len(value) :]


def glb(text, stated=None, length=None, kind=b"JSON"):
    """By ISO/IEC 12113, section 4.4."""
    stated = 20 + len(text) if stated is None else stated
    return b"glTF" + struct.pack("<III4s", 2, stated, len(text) if length is None else length, kind) + text


def pdf(info, xref=None):
    body = b"%PDF-1.7\n1 0 obj <<" + info + b">> endobj\n"
    at = len(body) if xref is None else xref
    return body + b"xref\n0 1\ntrailer <</Info 1 0 R>>\nstartxref\n%d\n%%%%EOF\n" % at


def png(*chunks):
    """(kind, body) by ISO/IEC 15948, 5.3."""
    packed = [
        struct.pack(">I", len(body)) + kind + body + struct.pack(">I", zlib.crc32(kind + body)) for kind, body in chunks
    ]
    return b"\x89PNG\r\n\x1a\n" + b"".join(packed)


def element(number, content, stated=None):
    """By RFC 8794: its number, its size in eight bytes, its content."""
    return bytes.fromhex(number) + struct.pack(">Q", (len(content) if stated is None else stated) | 1 << 56) + content


def clip(*tags):
    return element("1a45dfa3", b"") + element(
        "18538067", element("1654ae6b", bytes(9)) + element("1254c367", b"".join(tags))
    )


def tag(name, text):
    return element("7373", element("63c0", b"") + element("67c8", element("45a3", name) + element("4487", text)))


def svg(metadata, before=b""):
    return before + b'<svg xmlns="http://www.w3.org/2000/svg"><metadata>' + metadata + b"</metadata></svg>"


def page(notes):
    return b'<!doctype html><script type="application/json" id="rimfall-notes">' + notes + b"</script></html>\n"


def crate(texts, stated=None, packed=None, version=b"\0\x08", chunks=b"\0"):
    """A .usdc of its texts alone, packed by LZ4 as one run of literals (LZ4 block format, "Sequences")."""
    more = len(texts) - 15
    run = bytes([0xF0]) + b"\xff" * (more // 255) + bytes([more % 255]) + texts
    packed = chunks + (run if packed is None else packed)
    section = struct.pack("<QQQ", 1, len(texts) if stated is None else stated, len(packed)) + packed
    contents = struct.pack("<Q16sQQ", 1, b"TOKENS", 88, len(section))
    return b"PXR-USDC" + version.ljust(8, b"\0") + struct.pack("<Q", 88 + len(section)) + bytes(64) + section + contents


USDA, USDC, USDZ, GLB, PDF, SVG, FRAMES = (
    written(name) for name in ("usda", "usdc", "usdz", "glb", "plot-path-pdf", "plot-path-svg", "csv-frames")
)  # fmt: skip
OWN = b'{"program": "Rimfall 0.7.0", ' + NOTES[1:]
BOMB = zipped({"a.notes.json": bytes(200_000)})

DAMAGED = [
    (b"", "it has no bytes"),
    (NOTES[:-10], "it is no JSON"),
    (b'{"scene": {"rimfall": 1, "title": "\xff"}}', "it is no JSON"),
    (b'{"scene": {"rimfall": NaN}}', "it is no JSON"),
    (b'{"scene": \0{}}', "it is no JSON"),
    (b"glTF", "ends within its header"),
    (GLB[:-1], f"it says that it has {len(GLB):,} bytes, and has {len(GLB) - 1:,}"),
    (glb(NOTES, length=len(NOTES) + 1), "is not the text that a glb begins with, or is cut short"),
    (glb(NOTES, kind=b"BIN\0"), "is not the text that a glb begins with"),
    (glb(b'{"asset": {"extras": {"scene": {"a": 1,}}}}'), "the scene in it is not JSON"),
    (glb(b'{"asset": {"extras": {"scene": {"a": 1'), "its JSON is cut short"),
    (glb(b'{"asset": {"extras": {"scene'), "a text in it does not end"),
    (USDA[: len(USDA) // 2], "cut short"),
    (USDA[:-2], "it is cut short"),
    (b'#usda 1.0\n(\n customLayerData = { string rimfall = "{\\x', "the notes in it are cut short"),
    (b'#usda 1.0\n(\n string rimfall = "{\\x" )\n}', "the notes in it are not a text"),
    (svg(NOTES)[:-5], "it is cut short"),
    (b"<svg><metadata>" + NOTES, "its metadata does not end"),
    (svg(b'{"a": "b'), "a text in it does not end"),
    (page(NOTES)[:-5], "it is cut short"),
    (page(NOTES).replace(b"</script>", b""), "the notes in it do not end"),
    (PDF[:-30], "it does not end as a PDF ends"),
    (pdf(b"/Scene <7b7d>", xref=3), "its cross-reference table (xref) is not at byte 3"),
    (pdf(b"/Scene <7b7>"), "the scene in it is broken off"),
    (pdf(b"/Scene <7b zz"), "the scene in it is broken off"),
    (USDZ[:-30], "it has no directory at its end"),
    (set_in(USDZ, b"PK\5\6", 16, b"\xff\xff\xff\x7f"), "its directory is not at byte"),
    (set_in(USDZ, b"PK\1\2", 0, b"PK\1\3"), "its directory is broken"),
    (set_in(USDZ, b"PK\1\2", 42, b"\7\0\0\0"), "is not at byte 7"),
    (set_in(USDZ, b"PK\1\2", 16, b"\1\2\3\4"), "the check sum (CRC) of rimfall.usda in it is wrong"),
    (set_in(USDZ, b"PK\1\2", 8, b"\1"), "is encrypted"),
    (set_in(USDZ, b"PK\1\2", 10, b"\x0c"), "packed in a way (number 12) that is not read"),
    (set_in(USDZ, b"PK\1\2", 20, b"\xff\xff\xff\x7f"), "is cut short"),
    (set_in(FRAMES, b"PK\5\6", 16, struct.pack("<I", 0)), "its directory is broken at byte 0"),
    (set_in(zipped({"n.json": NOTES}), b"PK\1\2", 24, b"\1\0\0\0"), "unpacks to more than the 1 bytes it states"),
    (set_in(zipped({"n.json": NOTES}), b"PK\3\4", 36, b"\xff\xff"), "cannot be unpacked"),
    (USDC[:50], "it ends within its header"),
    (USDC[:-1], "its table of contents"),
    (USDC[:200], "its table of contents is not at byte"),
    (crate(OWN + b"\0", stated=len(OWN)), f"where {len(OWN):,} are stated"),
    (crate(OWN + b"\0", packed=b"\xf0\xff"), "its texts are cut short"),
    (crate(OWN + b"\0", packed=b"\x10a\x09\x00"), "packed wrongly"),
    (crate(OWN + b"\0", chunks=b"\2"), "not packed as one block"),
    (crate(OWN + b"\0", version=b"\0\3"), "of version 0.3, older"),
    (png((b"iTXt", b"rimfall\0\0\0\0\0" + NOTES))[:-9], "cut short"),
    (png((b"iTXt", b"rimfall\0\0\0\0\0" + NOTES)).replace(b'"rimfall":1', b'"rimfall":2'), "the check sum (CRC)"),
    (clip(tag(b"RIMFALL", NOTES))[:-1], "cut short"),
    (b"\x1aE\xdf\xa3", "cut short"),
    (b"\x1aE\xdf\xa3\x80" + bytes(12), "no element is at byte 5"),
    (element("1a45dfa3", b"", stated=2**55), "cut short"),
]  # fmt: skip

FOREIGN = [
    b'{"a": 1}',
    b'{"scene": 1}',
    b'{"asset": {"version": "2.0"}}',
    b"[1]",
    b"GIF89a",
    b"\xff\xd8\xff\xe0 a photograph",
    clip(tag(b"COMMENT", b"of another")),
    clip(tag(b"RIMFALL", b"{}")),
    clip(),
    b"\x7fELF\2\1\1",
    b"PK\5\6" + bytes(18),
    b"hello",
    b"\xff\xfe",
    bytes(100),
    glb(b'{"asset": {"version": "2.0"}}'),
    glb(b'{"asset": {"extras": {"scene": 3}}}'),
    b"#usda 1.0\ndef Xform {}\n",
    b"<svg></svg>",
    svg(b"<rdf:RDF/>"),
    svg(b"", b'<?xml version="1.0"?>'),
    svg(NOTES, b'<?xml version="1.0"?><!DOCTYPE svg [<!ENTITY a "aaaa"><!ENTITY b "&a;&a;&a;">]>'),
    b"<!doctype html><title>A page of another</title></html>",
    page(b'{"a": 1}'),
    pdf(b"/Title (a plot)"),
    zipped({"a.txt": b"a"}),
    zipped({"inner.zip": zipped({"n.json": NOTES})}),
    zipped({"n.json": b'{"a": 1}'}),
    zipped({"a.usda": b"#usda 1.0\n"}, zipfile.ZIP_STORED),
    crate(b'{"program": "another"}\0'),
    png((b"IHDR", bytes(13)), (b"iTXt", b"Comment\0\0\0\0\0of another"), (b"IEND", b"")),
]  # fmt: skip

COSTLY = [  # refused by the limits of SMALL
    (bytes(Limits().file_bytes + 1), "60,000,000"),
    (b'{"a": [' + b"[]," * 600 + b'1], "scene": {}}', "texts and brackets before its scene"),
    (b'{"a": ' + b"[" * 100 + b"]" * 100 + b', "scene": {}}', "brackets in brackets"),
    (b'{"scene": {"a": "' + b"a" * 10_001 + b'"}}', "holds a scene whose bytes are 10,0"),
    (b'#usda 1.0\n string rimfall = "' + b"a" * 20_001 + b'"\n{}', "holds notes whose bytes are"),
    (pdf(b"/Scene <" + b"7b" * 20_001 + b">"), "holds a scene whose digits are"),
    (BOMB, "unpacks a.notes.json to as many bytes as 200,000"),
    (zipped({f"{k}.txt": b"" for k in range(30)}), "has members, more than 21"),
    (crate(OWN + b"\0" + bytes(20_000)), "holds texts whose bytes are"),
    (crate(bytes(2_009), packed=b"\x10a\1\0" + b"\0\1\0" * 501), "texts packed in runs"),
    (png(*[(b"IDAT", b"")] * 30), "has chunks, more than"),
    (element("1a45dfa3", b"") + element("18538067", element("ec", b"") * 30), "has elements, more than"),
    (clip(tag(b"RIMFALL", b"{" + b" " * 20_000)), "holds notes whose bytes are"),
    ("{}".ljust(20_001).encode("utf-16"), "is a text whose bytes are"),
]  # fmt: skip


def refusal_of(content, limits=Limits()):  # noqa: B008 - frozen
    with pytest.raises(Refused) as caught:
        recovered(content, limits)
    (one,) = caught.value.refusals
    assert one.field == "file"
    return one.say


@each_row(("content", "says"), DAMAGED)
def test_what_is_damaged_is_named(content, says):
    said = refusal_of(content)
    assert says in said, said
    assert "is damaged: " in said


@each_row("content", FOREIGN)
def test_what_rimfall_did_not_write_says_so(content):
    said = refusal_of(content)
    assert "holds no scene" in said or said == "This file is none that Rimfall writes.", said


@each_row(("content", "says"), COSTLY)
def test_what_would_cost_too_much_says_how_much(content, says):
    assert says in refusal_of(content, SMALL)


def test_a_bomb_is_refused_by_its_ratio():
    """What 1 kB of zeros may unpack to is stated; the default limits let through what Rimfall writes."""
    assert "as many times its size as" in refusal_of(zipped({"a.notes.json": bytes(1_000_000)}))


@each_row("table", ["csv", "forces-csv"])
def test_a_table_says_where_its_scene_is(table):
    assert "NAME." in refusal_of(written(table))
    with pytest.raises(Refused, match="NAME"):
        document_in(written(table))


def test_a_text_made_of_one_run_comes_back_from_a_crate():
    """So the tests' own crates are such as can be read."""
    assert json.loads(recovered(crate(OWN + b"\0")).scene) == json.loads(NOTES)["scene"]


def test_a_picture_and_a_clip_come_back_by_their_texts():
    picture = png((b"IHDR", bytes(13)), (b"iTXt", b"rimfall\0\0\0\0\0" + NOTES), (b"IEND", b""))
    for file in (picture, clip(tag(b"RIMFALL", NOTES))):
        assert json.loads(recovered(file).scene) == json.loads(NOTES)["scene"]
