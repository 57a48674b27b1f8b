"""Files in one file: a zip whose bytes depend on nothing but its members."""

import io
import zipfile

_EPOCH = (1980, 1, 1, 0, 0, 0)


def zipped(members, method=zipfile.ZIP_DEFLATED):
    """The bytes of a zip of members, name -> bytes, in their order, all dated 1980-01-01."""
    out = io.BytesIO()
    with zipfile.ZipFile(out, "w", method) as packed:
        for name, content in members.items():
            info = zipfile.ZipInfo(name, _EPOCH)
            info.compress_type = method
            info.external_attr = 0o644 << 16
            info.create_system = 3
            packed.writestr(info, content)
    return out.getvalue()
