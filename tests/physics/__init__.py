"""Tests of server/physics, one file a module."""
