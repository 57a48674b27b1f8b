"""The page and the API over HTTP. FastAPI only here; routes are thin."""
