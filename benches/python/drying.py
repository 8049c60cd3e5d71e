"""Drying of a slab by the method of lines with SciPy: seconds for one 365-day run and its result.

The same equation and data as the Rust solver, so that both can be timed in one run. Case D03 of
reference/physics/drying_reference_mc90.csv: 100 mm, one side, D1 = 4.031281e-10 m2/s, 50 % RH, start 100 %.

Usage: python drying.py [--json]   (unset OPENBLAS_CORETYPE before timing)

For each target of error, and each of two of SciPy's stiff methods, the fastest of many settings (cells,
tolerance) that meets it; benches/benches/against_python.rs looks for its own fastest in the same way.
The grid is graded and the fluxes are differences of the exact integral of D, as in the Rust solver; a
plain uniform grid would need several hundred cells and be slower still. SciPy is told that the Jacobian
is tridiagonal: by its band to LSODA (compiled), by its sparsity to BDF (Python).
"""

import json
import sys
import time

import numpy as np
from scipy.integrate import solve_ivp

D1, THICKNESS, AMBIENT, START = 4.031281e-10, 0.1, 0.5, 1.0
ALPHA, KNEE, POWER = 0.05, 0.80, 15
DAY = 86400.0
# D03 at 28, 90, 180 and 365 days, solved on 1600 cells (error below 3e-6).
REFERENCE = {28: 0.92132, 90: 0.85924, 180: 0.81884, 365: 0.77795}
# Errors in RH at the probe, worst of the four days. The reference has five digits.
TARGETS = [1e-3, 4e-4, 1e-4, 2e-5]
# Radau was slower than BDF at every target when it was tried.
METHODS = ["LSODA", "BDF"]
CELLS = [10, 12, 16, 20, 24, 32, 48, 64, 96]
TOLERANCES = [1e-2, 5e-3, 2e-3, 1e-3, 5e-4, 2e-4, 1e-4, 2e-5, 1e-5]
REPEATS = 7


def diffusivity(h):
    return ALPHA + (1 - ALPHA) / (1 + (np.clip(1 - h, 0, None) / (1 - KNEE)) ** POWER)


# Table of the integral of D, read by linear interpolation on a fine mesh (NumPy's fastest way).
MESH = np.linspace(0, 1, 20001)
FINE = diffusivity(MESH)
INTEGRAL = np.concatenate([[0], np.cumsum(0.5 * (FINE[1:] + FINE[:-1]) * np.diff(MESH))])


def potential(h):
    return np.interp(h, MESH, INTEGRAL)


def problem(cells):
    x = np.linspace(0, 1, cells + 1)
    edges = 0.2 * x + 0.8 * x * x
    size = np.diff(edges)
    middle = 0.5 * (edges[1:] + edges[:-1])
    gap = np.diff(middle)
    speed = D1 / THICKNESS**2
    outside = potential(AMBIENT)

    def rate(_t, h):
        p = potential(h)
        flow = np.empty(cells + 1)
        flow[0] = (p[0] - outside) / (0.5 * size[0])
        flow[1:-1] = np.diff(p) / gap
        flow[-1] = 0.0
        return speed * np.diff(flow) / size

    sparsity = np.eye(cells) + np.eye(cells, k=1) + np.eye(cells, k=-1)
    return rate, sparsity, middle


def at_probe(middle, profile):
    near = np.argsort(np.abs(middle - 0.4))[:4]
    return np.polyval(np.polyfit(middle[near] - 0.4, profile[near], 3), 0.0)


def run(method, cells, tolerance):
    rate, sparsity, middle = problem(cells)
    days = np.array(sorted(REFERENCE))
    tridiagonal = {"lband": 1, "uband": 1} if method == "LSODA" else {"jac_sparsity": sparsity}
    begin = time.perf_counter()
    answer = solve_ivp(
        rate, (0, 365 * DAY), np.full(cells, START), method=method, t_eval=days * DAY,
        rtol=tolerance, atol=tolerance, first_step=10.0, **tridiagonal,
    )
    seconds = time.perf_counter() - begin
    values = [at_probe(middle, answer.y[:, k]) for k in range(len(days))]
    error = max(abs(v - REFERENCE[d]) for v, d in zip(values, days))
    return {"method": method, "cells": cells, "tolerance": tolerance, "seconds": seconds, "error_rh": error}


def fastest(method):
    """For each target the fastest setting that meets it, if one does."""
    tried = [run(method, cells, tolerance) for cells in CELLS for tolerance in TOLERANCES]
    found = []
    for target in TARGETS:
        good = sorted((r for r in tried if r["error_rh"] <= target), key=lambda r: r["seconds"])
        # One go each may mislead, so the first few are timed again.
        again = [run(method, r["cells"], r["tolerance"]) for r in good[:5] for _ in range(REPEATS)]
        if again:
            found.append({"target": target, **min(again, key=lambda r: r["seconds"])})
    return found


def main():
    results = [found for method in METHODS for found in fastest(method)]
    if "--json" in sys.argv:
        print(json.dumps(results))
        return
    for r in results:
        print(f"within {r['target']:.0e}: {r['method']:6} {r['cells']:3d} cells, tolerance {r['tolerance']:.0e}: "
              f"{1e3 * r['seconds']:8.3f} ms, error {r['error_rh']:.1e}")


if __name__ == "__main__":
    main()
