"""Kriging by PyKrige and restricted likelihood by SciPy: seconds and results.

Usage: python kriging.py map|fit   prints one JSON object

The drops, the map and the covariance are those of benches/benches/against_kriging.rs, number for number.
`map`: factoring and 200 x 200 places, mean and variance, by PyKrige's vectorized form. `fit`: the top of
the restricted likelihood in ln s2, ln l, ln t2 within bounds, by L-BFGS-B with the slopes worked out
(differences of the likelihood were slower), from one start and, as the Rust search does, from a net of starts.
"""

import argparse
import json
import math
import time

import numpy as np
from scipy.linalg import cholesky, lapack
from scipy.optimize import minimize
from scipy.spatial.distance import cdist

DROPS, SIDE, LENGTH_X, LENGTH_Y = 100, 200, 20.0, 15.0
STEP_X, STEP_Y = 0.7548776662466927, 0.5698402909980533
SILL, LENGTH, NUGGET = 0.36, 2.2, 0.03
# Bounds of s2, l and t2, as in crates/science/src/absorbency/fit.rs.
SILL_RANGE, SHORTEST, LONGEST, NUGGET_RANGE = (1e-4, 25.0), 0.5, 3.0, (1e-4, 4.0)
STARTS = 8
REPEATS = 15


def drops():
    i = np.arange(1, DROPS + 1, dtype=float)
    x, y = LENGTH_X * np.modf(i * STEP_X)[0], LENGTH_Y * np.modf(i * STEP_Y)[0]
    return np.c_[x, y], 4.5 + np.sin(0.5 * x) * np.cos(y / 3.0) + 0.1 * np.sin(12.9898 * i)


def fastest(work):
    best, answer = math.inf, None
    for _ in range(REPEATS):
        begin = time.perf_counter()
        answer = work()
        best = min(best, time.perf_counter() - begin)
    return best, answer


def kriged_map():
    from pykrige.ok import OrdinaryKriging

    places, logs = drops()
    xs, ys = ((np.arange(SIDE) + 0.5) / SIDE * length for length in (LENGTH_X, LENGTH_Y))

    def semivariance(_, h):
        x = math.sqrt(3.0) / LENGTH * h
        return NUGGET + SILL * (1.0 - (1.0 + x) * np.exp(-x))

    def work():
        kriged = OrdinaryKriging(
            places[:, 0], places[:, 1], logs, variogram_model="custom", variogram_parameters=[], variogram_function=semivariance
        )
        return kriged.execute("grid", xs, ys, backend="vectorized")

    seconds, (mean, variance) = fastest(work)
    # PyKrige's variance holds the nugget.
    return {"seconds": seconds, "mean": float(np.mean(mean)), "variance": float(np.mean(variance)) - NUGGET}


def fit():
    places, logs = drops()
    n, apart = len(logs), cdist(places, places)
    ones = np.ones(n)

    def minus_likelihood(theta):
        sill, length, nugget = np.exp(theta)
        x = (math.sqrt(3.0) / length) * apart
        fall = sill * np.exp(-x)
        shared, by_length = (1.0 + x) * fall, x * x * fall
        v = shared.copy()
        v.flat[:: n + 1] += nugget
        try:
            factor = cholesky(v, lower=True, overwrite_a=True, check_finite=False)
        except np.linalg.LinAlgError:
            return 1e10, np.zeros(3)
        inverse, _ = lapack.dpotri(factor, lower=True)
        inverse = np.tril(inverse) + np.tril(inverse, -1).T
        weights = inverse @ ones
        weight = weights.sum()
        projected = inverse @ logs - weights * (weights @ logs / weight)
        determinant = 2.0 * np.log(np.diag(factor)).sum()
        value = 0.5 * ((n - 1) * math.log(2.0 * math.pi) + determinant + math.log(weight) + logs @ projected)
        p = inverse - np.outer(weights, weights) / weight
        slope = [
            0.5 * (np.vdot(p, shared) - projected @ shared @ projected),
            0.5 * (np.vdot(p, by_length) - projected @ by_length @ projected),
            0.5 * nugget * (np.trace(p) - projected @ projected),
        ]
        return value, np.array(slope)

    near, far = apart[apart > 0.0].min(), apart.max()
    bounds = [np.log(SILL_RANGE), np.log([SHORTEST * near, LONGEST * far]), np.log(NUGGET_RANGE)]
    spread = logs.var(ddof=1)

    def climb(length):
        start = np.log([spread, length, 0.2 * spread])
        options = {"ftol": 1e-14, "gtol": 1e-7, "maxiter": 500}
        return minimize(minus_likelihood, start, jac=True, method="L-BFGS-B", bounds=bounds, options=options)

    def of(found):
        sill, length, nugget = np.exp(found.x)
        return {"log_likelihood": -found.fun, "sill": sill, "length": length, "nugget": nugget, "calls": found.nfev}

    one, found = fastest(lambda: climb(0.2 * far))
    share = (np.arange(STARTS) + 0.5) / STARTS
    net = np.exp(bounds[1][0] + share * (bounds[1][1] - bounds[1][0]))
    many, best = fastest(lambda: min((climb(length) for length in net), key=lambda f: f.fun))
    return {"one_start": {"seconds": one, **of(found)}, "net": {"seconds": many, **of(best)}}


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    works = {"map": kriged_map, "fit": fit}
    parser.add_argument("work", choices=works)
    print(json.dumps(works[parser.parse_args().work]()))


if __name__ == "__main__":
    main()
