"""What is asked about people: a habitat, its air, who is aboard; a whole scene document will do as well."""

from typing import Annotated, Literal

from pydantic import BeforeValidator, Field

from ..document import AnyMotion, Scene, is_version


class FeelRequest(Scene):
    """A scene document of which only the habitat is required."""

    rimfall: Annotated[Literal[1], BeforeValidator(is_version)] = Field(
        1, json_schema_extra={"label": "Document version", "unit": "", "kind": "version"}
    )
    motions: list[AnyMotion] = Field(
        [], max_length=100, json_schema_extra={"label": "Motions", "unit": "", "kind": "list"}
    )
