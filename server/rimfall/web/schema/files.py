"""Files in the schema: what an export answers with, and what is recovered from one."""

from typing import Annotated, Any, Literal

from pydantic import Field

from ...exports.formats import FORMATS
from .parts import Closed, said

_JSON = "application/json"
_TEXT = ("text/", "image/svg+xml", "model/vnd.usda")  # the rest are bytes, which have no schema


class ExportedFile(Closed):
    """The scene as a file."""

    file: Annotated[str, Field(json_schema_extra={"contentEncoding": "base64"})] = said("The file's bytes.")


class Recovered(Closed):
    """The scene out of a file."""

    scene: dict[str, Any] = said("The scene document as the file has it; it has yet to be read as one.")
    export: dict[str, Any] | None = said("The choices the file was made with; null where it holds none.")
    format: Literal["glb", "json", "pdf", "png", "svg", "usda", "usdc", "usdz", "zip"] = said(
        "The format.", alias="from"
    )


def exported(formats):
    """The media types of files, by name, each with its schema."""
    return {one.media_type: _media_type(one.media_type) for one in formats.values()}


def _media_type(name):
    if name == _JSON:
        return {
            "schema": {
                "type": "object",
                "description": "Notes or arrays as JSON; the file says of itself what it holds.",
            }
        }
    return {"schema": {"type": "string"}} if name.startswith(_TEXT) else {}


def files_said(formats):
    """Files by name, what each is and its media type."""
    return "; ".join(f"`{name}`: {one.say} ({one.media_type})" for name, one in formats.items())


FILES = files_said(FORMATS)
NAMED = {
    "Content-Disposition": {
        "description": "The file's name; not with `stream=1`.",
        "schema": {"type": "string", "pattern": "^attachment; filename="},
    }
}
