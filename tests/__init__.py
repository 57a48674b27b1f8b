"""Rimfall's tests; `python3 tests/check.py` runs them all."""
