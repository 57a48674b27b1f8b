"""A layer packed alone, .usdz: stored, not deflated, its data at a multiple of 64 bytes, dated 1980-01-01 (the zip's own zero)."""

import io
import zipfile

ALIGNED = 64
LOCAL_HEADER = 30  # bytes of a zip's local header before its name (PKWARE APPNOTE 4.3.7)
FIELD_HEADER = 4
PADDING = 0x1986  # id of an extra field that only fills up


def packed(name, data):
    """A usdz of one member. name: ASCII, with its ending."""
    info = zipfile.ZipInfo(name, (1980, 1, 1, 0, 0, 0))
    info.external_attr = 0o644 << 16
    fill = -(LOCAL_HEADER + len(name) + FIELD_HEADER) % ALIGNED
    info.extra = PADDING.to_bytes(2, "little") + fill.to_bytes(2, "little") + bytes(fill)
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", zipfile.ZIP_STORED) as archive:
        archive.writestr(info, data)
    return out.getvalue()
