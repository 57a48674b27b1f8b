"""Tests of server/rimfall/physics, one file a module."""
