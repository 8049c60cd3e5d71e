"""Maturity of random logs against SciPy's adaptive quadrature; the normal distribution against SciPy."""

import math

from scipy.integrate import quad
from scipy.special import ndtr, ndtri

from .case import Case, Quantity, line

AGE = Quantity("equivalent age, SciPy quadrature", "of the value", 1e-4, relative=True)
FACTOR = Quantity("temperature-time factor, SciPy quadrature", "°C·h", 1e-6)
CDF = Quantity("normal distribution, SciPy", "of the value", 1e-12, relative=True)
DEVIATE = Quantity("normal deviate, SciPy", "deviations", 1e-12)

# Half of the logs have silences that the rule does not bridge.
BRIDGE_H = 6.0


def random_log(rng):
    """Hours and °C: a walk in steps of 10 °C at most, from a quarter of an hour to half a day apart."""
    hours, celsius = [0.0], [rng.uniform(-5.0, 35.0)]
    longest = rng.choice([BRIDGE_H, 12.0])
    for _ in range(rng.randint(1, 14)):
        hours.append(hours[-1] + rng.uniform(0.25, longest))
        celsius.append(min(max(celsius[-1] + rng.uniform(-10.0, 10.0), -15.0), 60.0))
    return hours, celsius


def integrals(hours, celsius, between, margin, rate, kinks=()):
    """Low, high and proven integral of a rate, gaps at the coldest and the warmest plausible."""
    proven = silent = 0.0
    for a, b, first, last in zip(hours, hours[1:], celsius, celsius[1:]):
        if b - a > BRIDGE_H:
            silent += b - a
        elif between == "step":
            proven += rate(first) * (b - a)
        else:
            at = lambda t: rate(first + (last - first) * (t - a) / (b - a))
            places = [a + (b - a) * (k - first) / (last - first) for k in kinks if min(first, last) < k < max(first, last)]
            proven += quad(at, a, b, points=places or None, epsabs=1e-10, epsrel=1e-10)[0]
    low = proven + rate(min(celsius) - margin) * silent
    return low, proven + rate(max(celsius) + margin) * silent, proven


def question(name, rng):
    hours, celsius = random_log(rng)
    between, margin = rng.choice(["line", "step"]), rng.uniform(0.0, 8.0)
    text = lambda **more: line(name, between=between, bridge_h=BRIDGE_H, margin_k=margin, at_h=hours, log_c=celsius, **more)
    return hours, celsius, between, margin, text


def equivalent_age(rng, count):
    for _ in range(count):
        hours, celsius, between, margin, text = question("equivalent_age", rng)
        q, reference, offset = rng.uniform(3500.0, 5500.0), rng.choice([20.0, 23.0]), rng.choice(["273", "273.15"])
        k = float(offset)
        rate = lambda c: math.exp(-q * (1.0 / (c + k) - 1.0 / (reference + k)))
        wanted = integrals(hours, celsius, between, margin, rate)
        yield Case(text(q_k=q, ts_c=reference, kelvin=offset), [(AGE, value) for value in wanted])


def temperature_time(rng, count):
    for _ in range(count):
        hours, celsius, between, margin, text = question("temperature_time", rng)
        datum = rng.choice([0.0, -10.0, rng.uniform(-12.0, 10.0)])
        wanted = integrals(hours, celsius, between, margin, lambda c: max(c - datum, 0.0), kinks=[datum])
        yield Case(text(datum_c=datum), [(FACTOR, value) for value in wanted])


def normal(rng, count):
    for _ in range(count):
        z = rng.uniform(-8.0, 8.0)
        # As many shares near 0 and 1 as in the middle.
        share = float(ndtr(rng.uniform(-7.0, 5.0)))
        yield Case(line("normal", z=z, share=share), [(CDF, float(ndtr(z))), (DEVIATE, float(ndtri(share)))])


FAMILIES = {"equivalent-age": equivalent_age, "temperature-time": temperature_time, "normal": normal}
