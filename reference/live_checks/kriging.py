"""Water drops: kriging against PyKrige and scikit-learn, the next test and Owen's T against SciPy.

PyKrige puts the nugget into the variance away from the drops, so its variance is that of a fresh drop.
scikit-learn knows the level; the unknown level is put on top of what it says of the values and of a
field that is 1 everywhere (universal kriging as generalized least squares).
"""

import math

import numpy as np
from pykrige.ok import OrdinaryKriging
from scipy.linalg import solve_triangular
from scipy.optimize import minimize
from scipy.spatial.distance import pdist
from scipy.special import owens_t
from sklearn.gaussian_process import GaussianProcessRegressor
from sklearn.gaussian_process.kernels import ConstantKernel, Matern

from .case import Case, Quantity, line

MEAN_PYKRIGE = Quantity("mean of ln seconds, PyKrige", "ln s", 1e-9)
FRESH_PYKRIGE = Quantity("variance of a fresh drop, PyKrige", "(ln s)²", 1e-9)
MEAN_SKLEARN = Quantity("mean of ln seconds, scikit-learn", "ln s", 1e-9)
LATENT_SKLEARN = Quantity("latent variance, scikit-learn", "(ln s)²", 1e-9)
OUT_MEAN = Quantity("left-out mean, scikit-learn without the drop", "ln s", 1e-9)
OUT_VARIANCE = Quantity("left-out variance, scikit-learn likewise", "(ln s)²", 1e-9)
LIKELIHOOD = Quantity("restricted log-likelihood, scikit-learn", "1", 1e-8)
TOP = Quantity("top of the restricted likelihood, SciPy from 24 starts", "1", 1e-6)
BERNOULLI = Quantity("Bernoulli variance after a drop, SciPy", "1", 1e-9)
VARIANCE = Quantity("mean variance after a drop, NumPy", "(ln s)²", 1e-9)
OWEN = Quantity("Owen's T, SciPy", "1", 1e-15)


def random_slab(rng, most=40):
    """Drops of a random slab, and a covariance that need not be theirs."""
    n = rng.randint(6, most)
    width, depth = rng.uniform(4.0, 25.0), rng.uniform(3.0, 18.0)
    xs, ys = [], []
    while len(xs) < n:
        x, y = rng.uniform(0.0, width), rng.uniform(0.0, depth)
        # Six places more than a hand's width apart, as a slab must have; repeats only beyond them.
        if len(xs) >= 6 or all(math.hypot(x - a, y - b) > 0.11 for a, b in zip(xs, ys)):
            xs.append(x)
            ys.append(y)
    wave = rng.uniform(0.2, 1.2)
    logs = [4.0 + 0.7 * math.sin(wave * x) * math.cos(wave * y) + rng.gauss(0.0, 0.3) for x, y in zip(xs, ys)]
    numbers = dict(sill=10.0 ** rng.uniform(-1.3, 0.5), length_m=rng.uniform(0.5, 8.0), nugget=10.0 ** rng.uniform(-2.5, -0.5))
    seconds = [math.exp(y) for y in logs]
    drops = dict(x_m=xs, y_m=ys, seconds=seconds)
    return np.c_[xs, ys], np.log(seconds), drops, numbers, (width, depth)


def random_places(rng, size, count):
    # A hand's breadth beyond the edges too.
    at = [(rng.uniform(-0.1, size[0] + 0.1), rng.uniform(-0.1, size[1] + 0.1)) for _ in range(count)]
    return np.array(at), dict(at_x_m=[p[0] for p in at], at_y_m=[p[1] for p in at])


def regressor(places, values, sill, length_m, nugget):
    kernel = ConstantKernel(sill, "fixed") * Matern(length_m, "fixed", nu=1.5)
    return GaussianProcessRegressor(kernel, alpha=nugget, optimizer=None).fit(places, values)


def with_level(places, values, at, numbers):
    """Mean and latent variance by scikit-learn, level unknown."""
    ones = regressor(places, np.ones(len(values)), **numbers)
    plain = regressor(places, values, **numbers)
    weight = float(np.sum(ones.alpha_))
    level = float(np.sum(plain.alpha_)) / weight
    unseen = 1.0 - ones.predict(at)
    # Variance by the predictive covariance: the standard deviation's square loses digits.
    mean, covariance = plain.predict(at, return_cov=True)
    return mean + level * unseen, np.diag(covariance) + unseen**2 / weight, level, weight


def pykrige(rng, count):
    for _ in range(count):
        places, logs, drops, numbers, size = random_slab(rng)
        at, asked = random_places(rng, size, 8)

        def semivariance(_, h):
            x = math.sqrt(3.0) * h / numbers["length_m"]
            return numbers["nugget"] + numbers["sill"] * (1.0 - (1.0 + x) * np.exp(-x))

        kriged = OrdinaryKriging(
            places[:, 0], places[:, 1], logs, variogram_model="custom", variogram_parameters=[], variogram_function=semivariance
        )
        mean, variance = kriged.execute("points", at[:, 0], at[:, 1], backend="vectorized")
        wanted = []
        for m, v in zip(np.asarray(mean), np.asarray(variance)):
            wanted += [(MEAN_PYKRIGE, float(m)), None, (FRESH_PYKRIGE, float(v))]
        yield Case(line("krige", **drops, **numbers, **asked), wanted)


def sklearn_map(rng, count):
    for _ in range(count):
        places, logs, drops, numbers, size = random_slab(rng)
        at, asked = random_places(rng, size, 8)
        mean, variance, _, _ = with_level(places, logs, at, numbers)
        wanted = []
        for m, v in zip(mean, variance):
            wanted += [(MEAN_SKLEARN, float(m)), (LATENT_SKLEARN, float(v)), None]
        yield Case(line("krige", **drops, **numbers, **asked), wanted)


def sklearn_left_out(rng, count):
    for _ in range(count):
        places, logs, drops, numbers, _ = random_slab(rng)
        # Three drops of each slab are left out by fitting the others.
        wanted = [None] * (2 * len(logs))
        for out in rng.sample(range(len(logs)), 3):
            kept = np.arange(len(logs)) != out
            mean, variance, _, _ = with_level(places[kept], logs[kept], places[out : out + 1], numbers)
            wanted[2 * out : 2 * out + 2] = [(OUT_MEAN, float(mean[0])), (OUT_VARIANCE, float(variance[0]) + numbers["nugget"])]
        yield Case(line("krige_left_out", **drops, **numbers), wanted)


def restricted(places, logs, numbers):
    """From scikit-learn's likelihood of the values less their level."""
    _, _, level, weight = with_level(places, logs, places[:1], numbers)
    plain = regressor(places, logs - level, **numbers)
    return plain.log_marginal_likelihood_value_ + 0.5 * math.log(2.0 * math.pi) - 0.5 * math.log(weight)


def likelihood(rng, count):
    for _ in range(count):
        places, logs, drops, numbers, _ = random_slab(rng)
        yield Case(line("krige_likelihood", **drops, **numbers), [(LIKELIHOOD, float(restricted(places, logs, numbers)))])


def top(rng, count):
    """The highest of 24 climbs by SciPy, with slopes by differences, within the bounds of the Rust search."""
    for _ in range(count):
        places, logs, drops, numbers, _ = random_slab(rng, most=20)
        # Drops within 100 mm are repeats, and the shortest length is half the distance of two places.
        while pdist(places).min() <= 0.1:
            places, logs, drops, numbers, _ = random_slab(rng, most=20)
        floor, spread, apart = numbers["nugget"], float(np.var(logs, ddof=1)), pdist(places)
        ranges = np.array([(1e-4, 25.0), (0.5 * apart.min(), 3.0 * apart.max()), (floor, max(floor, 4.0))])
        low, high = np.log(ranges).T

        def minus(theta):
            sill, length_m, nugget = np.exp(theta)
            v = matern(places, places, sill, length_m) + nugget * np.eye(len(logs))
            factor = np.linalg.cholesky(v)
            ones, values = solve_triangular(factor, np.c_[np.ones(len(logs)), logs - logs.mean()], lower=True).T
            weight = ones @ ones
            squares = values @ values - (ones @ values) ** 2 / weight
            determinant = 2.0 * np.log(np.diag(factor)).sum()
            return 0.5 * ((len(logs) - 1) * math.log(2.0 * math.pi) + determinant + math.log(weight) + squares)

        best = math.inf
        for share in (np.arange(8) + 0.3) / 8.0:
            for sill, nugget in ((1.0, 0.2), (0.5, 0.01), (0.2, 0.8)):
                start = [math.log(sill * spread), low[1] + share * (high[1] - low[1]), math.log(nugget * spread)]
                options = dict(ftol=1e-14, gtol=1e-8, maxiter=500)
                found = minimize(minus, np.clip(start, low, high), method="L-BFGS-B", bounds=list(zip(low, high)), options=options)
                best = min(best, float(found.fun))
        asked = dict(nugget=numbers["nugget"])
        yield Case(line("krige_top", **drops, **asked), [(TOP, -best), None, None, None])


def matern(a, b, sill, length_m):
    x = math.sqrt(3.0) * np.hypot(a[:, None, 0] - b[None, :, 0], a[:, None, 1] - b[None, :, 1]) / length_m
    return sill * (1.0 + x) * np.exp(-x)


def next_test(rng, count):
    for _ in range(count):
        places, logs, drops, numbers, size = random_slab(rng)
        at, asked = random_places(rng, size, 12)
        limit = math.exp(rng.uniform(3.0, 5.0))
        nugget, smooth = numbers["nugget"], (numbers["sill"], numbers["length_m"])
        inverse = np.linalg.inv(matern(places, places, *smooth) + nugget * np.eye(len(logs)))
        ones = inverse.sum(axis=0)
        weight = ones.sum()
        level = ones @ logs / weight
        shared = matern(places, at, *smooth)
        unseen = 1.0 - ones @ shared
        mean = level + shared.T @ inverse @ (logs - level)
        covariance = matern(at, at, *smooth) - shared.T @ inverse @ shared + np.outer(unseen, unseen) / weight
        v = np.diag(covariance)
        after = v[:, None] - covariance**2 / (v[None, :] + nugget)
        a = (math.log(limit) - mean) / np.sqrt(v)
        rho = np.clip(1.0 - after / v[:, None], 0.0, 1.0)
        bernoulli = np.mean(2.0 * owens_t(a[:, None], np.sqrt((1.0 - rho) / (1.0 + rho))), axis=0)
        wanted = [(BERNOULLI, float(b)) for b in bernoulli] + [(VARIANCE, float(x)) for x in after.mean(axis=0)]
        yield Case(line("next_test", **drops, **numbers, **asked, limit_s=limit), wanted)


def owen(rng, count):
    for _ in range(count):
        h, a = rng.gauss(0.0, 2.5), rng.gauss(0.0, 1.0) * 10.0 ** rng.uniform(-3.0, 2.0)
        yield Case(line("owens_t", h=h, a=a), [(OWEN, float(owens_t(h, a)))])


FAMILIES = {
    "kriging-pykrige": pykrige,
    "kriging-sklearn": sklearn_map,
    "kriging-left-out": sklearn_left_out,
    "kriging-likelihood": likelihood,
    "kriging-top": top,
    "kriging-next-test": next_test,
    "owens-t": owen,
}
