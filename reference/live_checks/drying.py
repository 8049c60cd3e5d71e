"""Drying of random slabs against SciPy: the method of lines on a fine grid, stiff integrator BDF.

The same equation, solved another way: nodes on the face and between it and the sealed plane (ours are
cells), several times as many, the diffusivity integrated by a spline, SciPy's own steps and error
control. Slabs are of every kind: one and two sides, film or none, wet cure, air by spells, diffusivity
that follows temperature, humidity taken up by hydration.
"""

from concurrent.futures import ProcessPoolExecutor

import numpy as np
from scipy.integrate import solve_ivp
from scipy.interpolate import CubicSpline
from scipy.optimize import brentq
from scipy.sparse import diags

from .case import Case, Quantity, line

PROBE = Quantity("SciPy, at the probe", "RH, share of 1", 1e-3)
DEPTH = Quantity("SciPy, deeper than a fifth", "RH, share of 1", 1e-3)
MEAN = Quantity("SciPy, mean", "RH, share of 1", 1e-3)
TIME = Quantity("SciPy, day the probe reaches a limit", "of the value", 0.015, relative=True)

DAY = 86400.0
NODES = 320
TOLERANCE = 1e-7
DAYS = 6
CLEAR_OF_CHANGE_D = 2.0
LIMITS_PCT = [90.0, 85.0, 80.0, 75.0]
# A limit is compared where the humidity falls through it: where the 1.5 % of time allowed is worth
# more than this much humidity. Elsewhere the curve is flat and the day means nothing.
LEAST_FALL = 1e-3


def random_slab(rng):
    slab = {
        "sides": rng.choice(["one", "two"]),
        "thickness_m": rng.uniform(0.06, 0.25),
        "d1_m2s": 10.0 ** rng.uniform(-10.3, -8.9),
        "dry_share": 10.0 ** rng.uniform(-1.7, 0.0),
        "knee_pct": rng.uniform(70.0, 88.0),
        "exponent": rng.uniform(4.0, 20.0),
        "start_pct": rng.uniform(88.0, 100.0),
    }
    slab["depth_m"] = slab["thickness_m"] * rng.uniform(0.2, 0.8)
    if rng.random() < 0.5:
        slab["film_ms"] = 10.0 ** rng.uniform(-8.5, -6.0)
    if rng.random() < 0.4:
        slab["cure_d"] = rng.uniform(0.5, 14.0)
    if rng.random() < 0.3:
        slab["fall_share"], slab["fall_d"] = rng.uniform(0.01, 0.08), rng.uniform(10.0, 60.0)
    if rng.random() < 0.5:
        slab["by_temperature"] = "yes"
    slab["from_d"] = [0.0]
    if rng.random() < 0.5:
        for _ in range(rng.randint(2, 7)):
            slab["from_d"].append(slab["from_d"][-1] + rng.uniform(5.0, 50.0))
    slab["room_pct"] = [rng.uniform(25.0, 80.0) for _ in slab["from_d"]]
    slab["room_c"] = [rng.uniform(5.0, 35.0) for _ in slab["from_d"]]
    slab["days"] = sorted(any_day(rng, slab["from_d"]) for _ in range(DAYS))
    return slab


def any_day(rng, changes):
    """Not just before or after the air changes: ours averages the air over a step of a day at most."""
    while True:
        day = rng.uniform(4.0, 400.0)
        if all(abs(day - change) > CLEAR_OF_CHANGE_D for change in changes):
            return day


class Lines:
    """One half of the slab, or all of it: from the face (node 0) to the sealed plane."""

    def __init__(self, slab):
        self.slab = slab
        self.path = slab["thickness_m"] * (1.0 if slab["sides"] == "one" else 0.5)
        s = np.linspace(0.0, 1.0, NODES + 1)
        self.x = 0.1 * s + 0.9 * s * s
        self.gap = np.diff(self.x)
        edges = np.concatenate([[0.0], 0.5 * (self.x[1:] + self.x[:-1]), [1.0]])
        self.size = np.diff(edges)
        mesh = np.linspace(0.0, 1.0, 8001)
        knee = 1.0 - slab["knee_pct"] / 100.0
        relative = slab["dry_share"] + (1.0 - slab["dry_share"]) / (1.0 + ((1.0 - mesh) / knee) ** slab["exponent"])
        self.relative = CubicSpline(mesh, relative)
        self.potential = self.relative.antiderivative()

    def pace(self, celsius):
        if "by_temperature" not in self.slab:
            return 1.0
        return float(np.exp(-2700.0 * (1.0 / (celsius + 273.15) - 1.0 / 291.15)))

    def phases(self):
        """From, to (days), humidity of the air, °C, and whether the face is kept wet."""
        slab = self.slab
        end, cure = slab["days"][-1], slab.get("cure_d", 0.0)
        marks = sorted({0.0, cure, end, *slab["from_d"]})
        for a, b in zip(marks, marks[1:]):
            if a < end:
                spell = np.searchsorted(slab["from_d"], a, side="right") - 1
                yield a, b, slab["room_pct"][spell] / 100.0, slab["room_c"][spell], a < cure

    def system(self, room, celsius, wet):
        """Change per second and its derivatives, and whether the face is held."""
        slab = self.slab
        speed = slab["d1_m2s"] * self.pace(celsius) / self.path**2
        film = None if wet or "film_ms" not in slab else slab["film_ms"] / self.path
        fall, constant = slab.get("fall_share", 0.0), slab.get("fall_d", 1.0) * DAY

        def rate(t, h):
            flow = speed * np.diff(self.potential(h)) / self.gap
            change = np.empty_like(h)
            change[1:-1] = np.diff(flow)
            change[-1] = -flow[-1]
            change[0] = 0.0 if film is None else flow[0] - film * (h[0] - room)
            change /= self.size
            sink = fall / constant * np.exp(-t / constant)
            change[1:] -= sink
            change[0] -= 0.0 if film is None else sink
            return change

        def slopes(_t, h):
            d = speed * self.relative(h)
            middle = np.zeros_like(h)
            middle[1:] -= d[1:] / self.gap
            middle[:-1] -= d[:-1] / self.gap
            above, below = d[1:] / self.gap / self.size[:-1], d[:-1] / self.gap / self.size[1:]
            middle /= self.size
            if film is None:
                middle[0] = above[0] = 0.0
            else:
                middle[0] -= film / self.size[0]
            return diags([below, middle, above], [-1, 0, 1], format="csc")

        return rate, slopes, film is None

    def solve(self):
        """Pieces of the solution: from, to (days) and the profile at a day."""
        h = np.full(NODES + 1, self.slab["start_pct"] / 100.0)
        pieces = []
        for a, b, room, celsius, wet in self.phases():
            rate, slopes, held = self.system(room, celsius, wet)
            if held:
                h[0] = 1.0 if wet else room
            answer = solve_ivp(
                rate, (a * DAY, b * DAY), h, method="BDF", jac=slopes, rtol=TOLERANCE, atol=TOLERANCE,
                first_step=min(1.0, 0.1 * (b - a) * DAY), dense_output=True,
            )
            if not answer.success:
                raise RuntimeError(f"{answer.message}: {self.slab}")
            pieces.append((a, b, answer.sol))
            h = answer.y[:, -1].copy()
        return pieces


def profile(pieces, day):
    sol = next(sol for _, b, sol in pieces if day <= b)
    return sol(day * DAY)


def first_day(pieces, cure, at_probe, limit):
    """The first day since placing, not before the cure ended, with the probe at the limit or below."""
    for a, b, _ in pieces:
        if b <= cure:
            continue
        days = np.linspace(a, b, max(3, int((b - a) * 4)))
        values = np.array([at_probe(day) for day in days])
        if values[0] <= limit:
            return days[0]
        below = np.nonzero(values <= limit)[0]
        if below.size:
            k = below[0]
            return brentq(lambda day: at_probe(day) - limit, days[k - 1], days[k], xtol=1e-6)
    return None


def solved(slab):
    """What SciPy says: numbers in the order of the Rust answer, None where not to be compared."""
    lines = Lines(slab)
    pieces = lines.solve()
    share = slab["depth_m"] / slab["thickness_m"]
    from_face = share if slab["sides"] == "one" else 2.0 * min(share, 1.0 - share)
    read = lambda day, place: float(CubicSpline(lines.x, profile(pieces, day))(place))
    # 40 % of the thickness from one side, 20 % from two: 40 % of the path either way.
    near = np.argsort(np.abs(lines.x - 0.4))[:4]
    weights = [np.prod([(0.4 - lines.x[m]) / (lines.x[k] - lines.x[m]) for m in near if m != k]) for k in near]
    at_probe = lambda day: float(np.dot(weights, profile(pieces, day)[near]))
    numbers = []
    for day in slab["days"]:
        mean = float(np.dot(lines.size, profile(pieces, day)))
        numbers += [(PROBE, at_probe(day)), (DEPTH, read(day, from_face)), (MEAN, mean)]
    end, cure = slab["days"][-1], slab.get("cure_d", 0.0)
    for limit in LIMITS_PCT:
        day = first_day(pieces, cure, at_probe, limit / 100.0)
        clear = day is not None and cure < day < end / 1.015
        if clear:
            early, late = at_probe(max(day / 1.015, cure)), at_probe(day * 1.015)
            clear = early - limit / 100.0 > LEAST_FALL and limit / 100.0 - late > LEAST_FALL
        numbers.append((TIME, day) if clear else None)
    return numbers


def drying(rng, count):
    slabs = [random_slab(rng) for _ in range(count)]
    with ProcessPoolExecutor() as workers:
        answers = list(workers.map(solved, slabs))
    for slab, wanted in zip(slabs, answers):
        yield Case(line("drying", **slab, limits_pct=LIMITS_PCT), wanted)


FAMILIES = {"drying": drying}
