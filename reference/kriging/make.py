#!/usr/bin/env python3
"""Makes owens_t.csv (SciPy) and the censored_*.csv files (quadrature); versions: ../requirements.txt.

    python make.py        rewrites the three files, the same every time
"""

import csv
from pathlib import Path

import numpy as np
from scipy.special import owens_t

HERE = Path(__file__).resolve().parent


def write(name, comment, header, rows):
    with (HERE / name).open("w", encoding="utf-8", newline="") as out:
        out.write(f"# {comment}\n")
        csv.writer(out, lineterminator="\n").writerows([header, *rows])


def owens(rng):
    pairs = [(h, a) for h in (0.0, 1e-9, 0.3, 1.0, 2.5, 6.0, 12.0) for a in (0.0, 1e-9, 0.5, 1.0, 1.0000001, 3.0, 1e3, 1e9, np.inf)]
    pairs += [(rng.normal() * 2.5, rng.uniform(-1.0, 1.0)) for _ in range(300)]
    pairs += [(rng.normal() * 2.5, rng.normal() * 5.0) for _ in range(300)]
    write(
        "owens_t.csv",
        "scipy.special.owens_t; grade V",
        ["h", "a", "t"],
        [[repr(float(h)), repr(float(a)), repr(float(owens_t(h, a)))] for h, a in pairs],
    )


def matern(a, b, sill, length):
    x = np.sqrt(3.0) * np.hypot(a[:, None, 0] - b[None, :, 0], a[:, None, 1] - b[None, :, 1]) / length
    return sill * (1.0 + x) * np.exp(-x)


def predicted(at, places, y, sill, length, nugget, fresh):
    """Mean and covariance at places, level unknown; noise of a fresh drop added to the first `fresh`."""
    inverse = np.linalg.inv(matern(places, places, sill, length) + nugget * np.eye(len(y)))
    ones = np.ones(len(y))
    weight = ones @ inverse @ ones
    level = ones @ inverse @ y / weight
    shared = matern(places, at, sill, length)
    unseen = 1.0 - ones @ inverse @ shared
    covariance = matern(at, at, sill, length) - shared.T @ inverse @ shared + np.outer(unseen, unseen) / weight
    covariance[:fresh, :fresh] += nugget * np.eye(fresh)
    return level + shared.T @ inverse @ (y - level), covariance


def truncated_moments(mean, covariance, bounds, nodes):
    """Mean and covariance of a normal vector, given that each number is above its bound: quadrature on a grid."""
    x, w = np.polynomial.legendre.leggauss(nodes)
    axes, weights = [], []
    for m, v, b in zip(mean, np.diag(covariance), bounds):
        top = max(m, b) + 11.0 * np.sqrt(v)
        axes.append(b + (x + 1.0) * 0.5 * (top - b))
        weights.append(w * 0.5 * (top - b))
    grid = np.stack(np.meshgrid(*axes, indexing="ij"), axis=-1).reshape(-1, len(mean))
    mass = np.prod(np.stack(np.meshgrid(*weights, indexing="ij"), axis=-1).reshape(-1, len(mean)), axis=1)
    off = grid - mean
    mass = mass * np.exp(-0.5 * np.einsum("ij,jk,ik->i", off, np.linalg.inv(covariance), off))
    mass /= mass.sum()
    first = mass @ grid
    return first, (grid - first).T @ ((grid - first) * mass[:, None])


def censored(rng):
    """Exact mean and variance at 6 places, of drops of which 1, 2 or 3 still stood at 600 s."""
    drops, exact = [], []
    for case in range(12):
        standing = 1 + case % 3
        n, sill, length, nugget = rng.integers(8, 15), rng.uniform(0.3, 1.2), rng.uniform(1.5, 4.0), rng.uniform(0.02, 0.1)
        places = np.round(rng.uniform(0.0, 8.0, (n, 2)), 3)
        v = matern(places, places, sill, length) + nugget * np.eye(n)
        y = np.round(5.2 + np.linalg.cholesky(v) @ rng.normal(size=n), 6)
        order = np.argsort(-y)
        # The slowest drops are those whose end nobody saw: all were watched for the same time.
        bound = 0.5 * (y[order[standing - 1]] + y[order[standing]])
        places, y = places[order], y[order]
        seconds = np.exp(np.r_[np.full(standing, bound), y[standing:]])
        drops += [[case, *map(float, p), repr(float(s)), int(i < standing)] for i, (p, s) in enumerate(zip(places, seconds))]
        targets = np.round(np.vstack([rng.uniform(0.0, 8.0, (5, 2)), places[:1]]), 3)
        at = np.vstack([places[:standing], targets])
        logs = np.log(seconds)
        mean, cov = predicted(at, places[standing:], logs[standing:], sill, length, nugget, standing)
        c = slice(0, standing)
        first, second = truncated_moments(mean[c], cov[c, c], logs[c], {1: 200, 2: 200, 3: 100}[standing])
        gain = cov[standing:, c] @ np.linalg.inv(cov[c, c])
        means = mean[standing:] + gain @ (first - mean[c])
        variances = np.diag(cov)[standing:] - np.einsum("ij,jk,ik->i", gain, cov[c, c] - second, gain)
        for p, m, s in zip(targets, means, variances):
            exact.append([case, standing, *(repr(float(z)) for z in (sill, length, nugget)), *map(float, p), repr(float(m)), repr(float(s))])
    note = "random drops of make.py, NumPy seed 20; "
    write("censored_drops.csv", note + "stood 1: the watching stopped while the drop stood", ["case", "x_m", "y_m", "seconds", "stood"], drops)
    write(
        "censored_exact.csv",
        note + "mean and variance of ln seconds given that these drops took longer, by quadrature; grade V",
        ["case", "standing", "sill", "length_m", "nugget", "x_m", "y_m", "mean_ln", "var_latent"],
        exact,
    )


if __name__ == "__main__":
    generator = np.random.default_rng(20)
    owens(generator)
    censored(generator)
