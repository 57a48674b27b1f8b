"""Tests of the runs of many scenes."""
