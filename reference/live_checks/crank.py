"""Drying with one diffusivity against its series solution, in NumPy.

Crank, The Mathematics of Diffusion, 2nd ed. 1975: a plate whose face takes the air's humidity at once
(eq. 4.17, mean 4.18) or through a film (eq. 4.50); equation numbers from memory (M), the series as
checked in reference/physics/crank_constant_D.csv.
"""

import numpy as np

from .case import Case, Quantity, line

PROBE = Quantity("series solution, at the probe", "RH, share of 1", 1e-3)
DEPTH = Quantity("series solution, at any depth", "RH, share of 1", 1e-3)
MEAN = Quantity("series solution, mean", "RH, share of 1", 1e-3)
TERMS = 120
# Distance of the probe from the plane no moisture crosses, in shares of the path: one and two sides alike.
PROBE_PLACE = 0.6


def roots(biot):
    """beta·tan(beta) = Bi, the first TERMS roots, by halving: each lies in its own half period."""
    low = np.arange(TERMS) * np.pi
    high = low + 0.5 * np.pi
    for _ in range(60):
        middle = 0.5 * (low + high)
        # beta·sin(beta) - Bi·cos(beta) changes sign once in the half period, from the sign of -cos.
        above = (middle * np.sin(middle) - biot * np.cos(middle)) * np.where(np.arange(TERMS) % 2 == 0, 1.0, -1.0) > 0.0
        high, low = np.where(above, middle, high), np.where(above, low, middle)
    return 0.5 * (low + high)


def series(fourier, places, biot):
    """u at the places (share of the path from the sealed plane) and its mean; 1 at the start, 0 in the end."""
    if biot is None:
        beta = (np.arange(TERMS) + 0.5) * np.pi
    else:
        beta = roots(biot)
    weight = 2.0 * np.sin(beta) / (beta + np.sin(beta) * np.cos(beta)) * np.exp(-beta * beta * fourier)
    at = [float(np.sum(weight * np.cos(beta * place))) for place in places]
    return at, float(np.sum(weight * np.sin(beta) / beta))


def crank(rng, count):
    for _ in range(count):
        sides = rng.choice(["one", "two"])
        thickness, diffusivity = rng.uniform(0.05, 0.3), 10.0 ** rng.uniform(-9.7, -8.7)
        path = thickness if sides == "one" else 0.5 * thickness
        fourier = 10.0 ** rng.uniform(-2.3, 0.3)
        biot = None if rng.random() < 0.5 else 10.0 ** rng.uniform(-1.3, 2.3)
        start, room = rng.uniform(60.0, 100.0), rng.uniform(0.0, 60.0)
        depth = rng.uniform(0.0, 1.0) * thickness
        from_face = depth if sides == "one" else min(depth, thickness - depth)
        (probe, place), mean = series(fourier, [PROBE_PLACE, 1.0 - from_face / path], biot)
        humidity = lambda u: (room + (start - room) * u) / 100.0
        question = line(
            "drying", sides=sides, thickness_m=thickness, d1_m2s=diffusivity, dry_share=1.0, knee_pct=80.0, exponent=15.0,
            start_pct=start, from_d=[0.0], room_pct=[room], room_c=[18.0], depth_m=depth,
            film_ms=None if biot is None else biot * diffusivity / path,
            days=[fourier * path * path / diffusivity / 86400.0],
        )
        yield Case(question, [(PROBE, humidity(probe)), (DEPTH, humidity(place)), (MEAN, humidity(mean))])


FAMILIES = {"crank": crank}
