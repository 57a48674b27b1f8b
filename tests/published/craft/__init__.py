"""Published values about craft as rigid bodies, their parts and mechanisms: one file a source, asked by tests/vessel/test_published.py."""
