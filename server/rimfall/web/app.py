"""The app, put together."""

from fastapi import FastAPI
from fastapi.openapi.utils import get_openapi
from pydantic.json_schema import models_json_schema

from .. import __version__
from ..scene.document import Scene
from ..scene.reading import ExportRequest
from . import api, errors, page
from .guards import Guards
from .places import folder
from .static import PageFiles

_BODIES = {"/api/trace": Scene, "/api/export/{name}": ExportRequest}


def make_app(served_as="127.0.0.1"):
    """The ASGI app; served_as is the host it is bound to, which the Host header must name."""
    app = FastAPI(title="Rimfall", version=__version__, docs_url=None, redoc_url=None)
    app.include_router(api.router)
    app.include_router(page.router)
    app.mount("/static", PageFiles(directory=folder("static")), name="static")
    errors.install(app)
    app.openapi = lambda: _schema(app)
    app.add_middleware(Guards, served_as=served_as)
    return app


def _schema(app):
    """The OpenAPI schema, with the bodies that the routes read by themselves and the shape of refusals."""
    if app.openapi_schema is None:
        schema = get_openapi(title=app.title, version=app.version, routes=app.routes)
        models = sorted({*_BODIES.values()}, key=lambda m: m.__name__)
        refs, defined = models_json_schema(
            [(m, "validation") for m in models], ref_template="#/components/schemas/{model}"
        )
        schema.setdefault("components", {}).setdefault("schemas", {}).update(defined["$defs"] | {"Refused": _REFUSED})
        for path, model in _BODIES.items():
            content = {"application/json": {"schema": refs[(model, "validation")]}}
            schema["paths"][path]["post"]["requestBody"] = {"required": True, "content": content}
        for operations in schema["paths"].values():
            for operation in operations.values():
                refused = {
                    "description": "Refused",
                    "content": {"application/json": {"schema": {"$ref": "#/components/schemas/Refused"}}},
                }
                operation["responses"] |= dict.fromkeys(("400", "404", "405", "413", "415", "422"), refused)
        app.openapi_schema = schema
    return app.openapi_schema


_TEXT = {"type": "string"}
_REFUSED = {
    "type": "object",
    "required": ["refused"],
    "properties": {
        "refused": {
            "type": "array",
            "items": {
                "type": "object",
                "required": ["field", "was", "may_be", "say"],
                "properties": {"field": _TEXT, "was": _TEXT, "may_be": _TEXT, "say": _TEXT},
            },
        }
    },
}
