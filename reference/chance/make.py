"""Makes the check values of this folder with SciPy and NumPy (pip install scipy numpy)."""

import numpy as np
import scipy
from scipy.stats import binom, norm

BY = f"computed with SciPy {scipy.__version__} and NumPy {np.__version__}; grade V"


def write(name, head, header, rows):
    with open(name, "w", encoding="utf-8") as out:
        out.write(f"# {head} {BY}.\n{header}\n")
        out.writelines(",".join(row) + "\n" for row in rows)


shares = [1e-300, 1e-100, 1e-16, 1e-8, 1e-4, 0.001, 0.0125, 0.025, 0.05, 0.074, 0.076, 0.1, 0.2, 0.25, 0.4,
          0.5, 0.6, 0.75, 0.9, 0.95, 0.975, 0.99, 0.999, 0.9999]
write("normal.csv", "Standard normal deviate below which a share lies (scipy.stats.norm.ppf);",
      "share,deviate", ([repr(p), repr(float(norm.ppf(p)))] for p in shares))

rows = []
for n in (1, 2, 3, 7, 20, 101):
    values = np.random.default_rng(n).normal(10, 3, n).round(3)
    for p in (0.0, 0.1, 0.25, 0.5, 0.8, 0.9, 1.0):
        rows.append([str(n), repr(p), repr(float(np.quantile(values, p))), " ".join(map(str, values))])
write("quantile.csv", "Quantiles of samples by the straight line between order statistics (numpy.quantile, 'linear');",
      "count,share,quantile,values", rows)

rows = []
for n in (5, 10, 20, 50, 100, 1000, 10000):
    for p in (0.1, 0.5, 0.9):
        k = np.arange(1, n + 1)
        low = k[binom.cdf(k - 1, n, p) <= 0.025]
        high = k[binom.sf(k - 1, n, p) <= 0.025]
        rows.append([str(n), repr(p), str(low[-1]) if len(low) else "", str(high[0]) if len(high) else ""])
write("order_interval.csv", "Ranks (from 1) whose values enclose a quantile with 95 % chance, blank when the sample is "
      "too small (scipy.stats.binom);", "count,share,low_rank,high_rank", rows)
