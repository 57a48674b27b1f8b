"""Tests of server/motions: what flies and pours, through the scene document."""
