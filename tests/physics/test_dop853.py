"""The Runge-Kutta table: its order conditions (Hairer, Norsett & Wanner, Solving Ordinary Differential Equations I, II.2)."""

import numpy as np
import pytest

from rimfall.physics import dop853
from tests.tables import each_row

SUM = 2e-14  # of 13 products near 50, rounded
A = np.zeros((16, 16))
for i, row in enumerate([(), *dop853.STAGES, dop853.WEIGHTS, *dop853.EXTRA_STAGES]):
    A[i, : len(row)] = row
C = np.array(dop853.NODES)
B = A[12]


def weights(error):
    """The embedded weights that an error row means."""
    return B[:13] - np.array(error)


def test_every_stage_stands_where_its_row_adds_up_to():
    assert A.sum(axis=1) == pytest.approx(C, abs=SUM)


@each_row("q", range(1, 9))
def test_quadrature_to_order_8(q):
    assert B @ C ** (q - 1) == pytest.approx(1 / q, abs=SUM)


@each_row(("j", "k"), [(j, k) for j in range(7) for k in range(7) if j + k + 2 <= 8])
def test_trees_of_two_levels_to_order_8(j, k):
    assert B @ (C**j * (A @ C**k)) == pytest.approx(1 / ((k + 1) * (j + k + 2)), abs=SUM)


@each_row(("j", "k", "m"), [(j, k, m) for j in range(6) for k in range(6) for m in range(6) if j + k + m <= 5])
def test_trees_of_three_levels_to_order_8(j, k, m):
    expected = 1 / ((m + 1) * (k + m + 2) * (j + k + m + 3))
    assert B @ (C**j * (A @ (C**k * (A @ C**m)))) == pytest.approx(expected, abs=SUM)


@each_row(("k", "m"), [(k, m) for k in range(1, 6) for m in range(1, 6) if k + m <= 5])
def test_trees_that_branch_to_order_8(k, m):
    expected = 1 / ((k + 1) * (m + 1) * (k + m + 3))
    assert B @ ((A @ C**k) * (A @ C**m)) == pytest.approx(expected, abs=SUM)


def test_it_is_not_of_order_9():
    assert abs(B @ C**8 - 1 / 9) > 1e-6


@each_row(("error", "order"), [(dop853.ERROR_5, 5), (dop853.ERROR_3, 3)])
def test_the_embedded_methods_are_of_order_5_and_3_and_no_higher(error, order):
    b, c = weights(error), C[:13]
    for q in range(1, order + 1):
        assert b @ c ** (q - 1) == pytest.approx(1 / q, abs=SUM)
        assert b @ (A[:13, :13] @ c ** max(q - 2, 0)) == pytest.approx(1 / (max(q - 1, 1) * max(q, 2)), abs=SUM)
    assert abs(b @ c**order - 1 / (order + 1)) > 1e-6


def test_dense_output_rows_are_there_for_every_stage():
    assert np.shape(dop853.DENSE) == (4, 16)
    assert np.abs(np.sum(dop853.DENSE, axis=1)).max() < 1e-12  # a constant slope has no upper terms
