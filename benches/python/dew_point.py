"""A million dew points by psychrolib: seconds for its plain Python form or its vectorized form.

Usage: python dew_point.py scalar|vectorized [--count N]   prints one JSON object

The points are those of benches/benches/against_python.rs, number for number. The vectorized form is
what psychrolib makes of itself when numba is installed; its compiling, at the first call, is timed
apart. The scalar form is psychrolib without numba: with it, single calls go through the vectorized
functions and are slower.
"""

import argparse
import json
import sys
import time

import numpy as np

COUNT = 1_000_000
STEP_T, STEP_RH = 0.6180339887498949, 0.7548776662466927


def points(count):
    """-10 to 40 °C and 5 to 100 % RH (here a share of 1), evenly scattered."""
    i = np.arange(count, dtype=float)
    part = lambda step: i * step - np.floor(i * step)
    return -10.0 + 50.0 * part(STEP_T), (5.0 + 95.0 * part(STEP_RH)) / 100.0


def timed(work):
    begin = time.perf_counter()
    answer = work()
    return time.perf_counter() - begin, answer


def scalar(count):
    sys.modules["numba"] = None
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    t, rh = (values.tolist() for values in points(count))
    dew = psychrolib.GetTDewPointFromRelHum
    seconds, answer = timed(lambda: [dew(a, b) for a, b in zip(t, rh)])
    return {"seconds": seconds, "compile_seconds": 0.0, "mean_c": float(np.mean(answer))}


def vectorized(count):
    import psychrolib

    psychrolib.SetUnitSystem(psychrolib.SI)
    t, rh = points(count)
    compiling, _ = timed(lambda: psychrolib.GetTDewPointFromRelHum(t[:1], rh[:1]))
    tries = [timed(lambda: psychrolib.GetTDewPointFromRelHum(t, rh)) for _ in range(7)]
    return {"seconds": min(s for s, _ in tries), "compile_seconds": compiling, "mean_c": float(np.mean(tries[0][1]))}


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    forms = {"scalar": scalar, "vectorized": vectorized}
    parser.add_argument("form", choices=forms)
    parser.add_argument("--count", type=int, default=COUNT)
    args = parser.parse_args()
    print(json.dumps({"form": args.form, "count": args.count, **forms[args.form](args.count)}))


if __name__ == "__main__":
    main()
