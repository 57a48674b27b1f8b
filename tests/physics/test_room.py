"""Room to work in: the same memory for the same name, and no other's."""

import numpy as np

from rimfall.physics.room import Room, fresh


def test_a_name_keeps_its_memory_and_names_do_not_share():
    room = Room()
    first, other = room("a", (3, 4)), room("b", (3, 4))
    first[...], other[...] = 1.0, 2.0
    assert np.all(first == 1.0)
    assert room("a", (3, 4)) is first
    assert np.shares_memory(room("a", (2, 5)), first)
    larger = room("a", (5, 5))
    assert larger.shape == (5, 5)
    assert not np.shares_memory(larger, other)
    assert room("single", (2,), np.float32).dtype == np.float32


def test_fresh_memory_is_shared_by_none():
    assert not np.shares_memory(fresh("a", (3,)), fresh("a", (3,)))
