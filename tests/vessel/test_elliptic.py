"""Elliptic integrals and functions against scipy, and against each other where scipy has no complementary parameter."""

import numpy as np
import pytest
from scipy import special

from rimfall.vessel import elliptic

MCS = (1.0, 0.7, 1e-3, 1e-9, 1e-15, 1e-40)


def test_complete_integral():
    for mc in MCS:
        assert elliptic.quarter(mc) == pytest.approx(special.ellipkm1(mc), rel=1e-14)
    assert elliptic.quarter(0.0) == np.inf


def test_functions_of_jacobi():
    for mc in MCS[:3]:
        u = np.linspace(-1, 1, 101) * elliptic.quarter(mc)
        for ours, theirs in zip(elliptic.jacobi(u, mc), special.ellipj(u, 1 - mc)[:3], strict=True):
            np.testing.assert_allclose(ours, theirs, atol=1e-14, rtol=0)


def test_functions_and_integral_undo_each_other():
    for mc in MCS:
        u = np.linspace(-1, 1, 100) * elliptic.quarter(mc)
        sn, cn, dn = elliptic.jacobi(u, mc)
        np.testing.assert_allclose(sn * elliptic.carlson_f(cn**2, dn**2, 1.0), u, rtol=1e-13)


def test_carlsons_integrals():
    x, y, z, p = 10 ** np.random.default_rng(3).uniform(-6, 4, (4, 500))
    np.testing.assert_allclose(elliptic.carlson_f(x, y, z), special.elliprf(x, y, z), rtol=1e-14)
    np.testing.assert_allclose(elliptic.carlson_j(x, y, z, p), special.elliprj(x, y, z, p), rtol=1e-12)
    np.testing.assert_allclose(elliptic.carlson_j(0 * x, y, z, p), special.elliprj(0 * x, y, z, p), rtol=1e-12)


def test_mean_of_sn_squared():
    mc = np.array([0.9, 0.5, 1e-3, 1e-10, 1e-19])
    theirs = (1 - special.ellipe(1 - mc) / special.ellipkm1(mc)) / (1 - mc)
    np.testing.assert_allclose(elliptic.mean_sn2(mc, 1 - mc), theirs, rtol=1e-14)
