"""What all tests share: hypothesis repeats itself and times nothing, and the browser tests come last."""

from hypothesis import settings

# A run must give the same result twice, on a slow machine too.
settings.register_profile("rimfall", derandomize=True, deadline=None, database=None)
settings.load_profile("rimfall")


def pytest_collection_modifyitems(items):
    """Playwright's event loop stays in this thread while its fixtures live, and asyncio.run() in a later test would meet it."""
    items.sort(key=lambda item: "browser" in item.path.parent.parts)
