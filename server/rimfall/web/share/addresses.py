"""Where followers find the page: the machine's address on the local network, and its QR code."""

import io
import socket

EVERYWHERE = ("0.0.0.0", "::", "")
# Of the block kept for documents: the system says by which address it would go there, and sends nothing.
_ANYWHERE = ("192.0.2.1", 9)


def of_this_machine():
    """The machine's address on its network, or None where it has none."""
    with socket.socket(socket.AF_INET, socket.SOCK_DGRAM) as one:
        try:
            one.connect(_ANYWHERE)
        except OSError:
            return None
        return one.getsockname()[0]


def origin(host, port):
    """As an address is written."""
    return f"http://[{host}]:{port}" if ":" in host else f"http://{host}:{port}"


def on_screen(address):
    """Its QR code as lines of text, for a terminal."""
    text = io.StringIO()
    _code(address).terminal(out=text, compact=True)
    return text.getvalue().rstrip("\n").splitlines()


def as_svg(address):
    """Its QR code as a picture, black on white whatever the page's colours, for a camera reads no other as well."""
    picture = io.BytesIO()
    _code(address).save(picture, kind="svg", scale=8, border=4, dark="#000", light="#fff", omitsize=True, xmldecl=False)
    return picture.getvalue()


def _code(address):
    import segno  # only where it is shown

    return segno.make(address, error="m", micro=False)
