"""The API's description of itself, made once by each process: the tests that read it change nothing of it."""

from rimfall.web.schema import schema

SCHEMA = schema()
