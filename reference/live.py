#!/usr/bin/env python3
"""Fresh random questions to the Rust crates, answered also by outside libraries, on every run.

    reference/live.py                          2,000 points a family, a new seed
    reference/live.py --seed 123               the same points again
    reference/live.py --seed 123 --only crank  one family of them

Asks through example programs, `bulk` of the crate science, `plan_area` and `layout_measure` of the crate
slab-plan and `drawing_areas` of the crate drawings, which cargo builds first. Libraries and versions:
reference/requirements.txt. Some families take fewer points, since a point of theirs is long to check:
112 random slabs drying by SciPy, each at 6 days and 3 places (2,016 humidities) and at the days it reaches
4 limits; 500 random plans and 120 layouts of joints and score lines by Shapely; 60 drawings made by ezdxf;
and 60 to 500 random slabs of 6 to 40 water drops by PyKrige, scikit-learn and SciPy, each at several places.

A point that differs by more than allowed is printed as the line to give to `bulk`, with both answers.
What agreement proves: that the same formula gives the same number. Not that the formula is right.
"""

import argparse
import os
import random
import secrets
import subprocess
import sys
import time
from pathlib import Path

# One process for each core is enough; no threads within them. Nothing is written beside the sources.
sys.dont_write_bytecode = True
os.environ.setdefault("OPENBLAS_NUM_THREADS", "1")
from live_checks import air, crank, cure, drying, kriging  # noqa: E402
from live_checks.case import ask, compare  # noqa: E402
from live_checks.layout import drawings, layouts  # noqa: E402
from live_checks.plan import plans  # noqa: E402

ROOT = Path(__file__).resolve().parent.parent
BULK = ["cargo", "run", "--release", "-q", "-p", "science", "--example", "bulk"]
PLAN_AREA = ["cargo", "run", "--release", "-q", "-p", "slab-plan", "--example", "plan_area"]
LAYOUT = ["cargo", "run", "--release", "-q", "-p", "slab-plan", "--example", "layout_measure"]
DRAWING = ["cargo", "run", "--release", "-q", "-p", "drawings", "--example", "drawing_areas"]
POINTS = 2000
FEWER = {
    "drying": 112,
    "plan": 500,
    "layout": 120,
    "drawing": 60,
    "kriging-pykrige": 300,
    "kriging-sklearn": 300,
    "kriging-left-out": 100,
    "kriging-likelihood": 300,
    "kriging-top": 60,
    "kriging-next-test": 500,
}
SHOWN = 3

# Whole plans: how they are compared, and the program that is asked.
WHOLE = {"plan": (plans, PLAN_AREA), "layout": (layouts, LAYOUT), "drawing": (drawings, DRAWING)}

FAMILIES = {**air.FAMILIES, **cure.FAMILIES, **crank.FAMILIES, **drying.FAMILIES, **kriging.FAMILIES}


def show_failures(score):
    print(f"  {len(score.failures)} of {score.compared} differ by more than allowed; the worst:")
    for line, ours, theirs, off in sorted(score.failures, key=lambda f: -f[3])[:SHOWN]:
        print(f"    ours {ours!r}, theirs {theirs!r}, off by {off:.3g}:")
        print(f"    echo '{line}' | {' '.join(BULK)}")


def run_family(name, seed, count, worst):
    """Passed and failed comparisons of one family; with `worst`, the question of each worst point too."""
    begin = time.perf_counter()
    # Each family has its own stream, so that one alone can be played again.
    cases = list(FAMILIES[name](random.Random(f"{seed} {name}"), count))
    scores, refused = compare(cases, ask(BULK, cases))
    seconds = time.perf_counter() - begin
    print(f"{name}: {count} points, {seconds:.1f} s")
    failed = 0
    for score in scores:
        quantity = score.quantity
        print(
            f"  {quantity.name:<44} {score.compared:5d} compared   worst {score.worst:8.2g}   "
            f"allowed {quantity.allowed:g} {quantity.unit}"
        )
        if worst:
            print(f"    echo '{score.worst_line}' | {' '.join(BULK)}")
        if score.failures:
            failed += 1
            show_failures(score)
    for line, reason in refused[:SHOWN]:
        print(f"  {reason}\n    echo '{line}' | {' '.join(BULK)}")
    if refused:
        print(f"  {len(refused)} of {count} were refused")
    return len(scores) - failed, failed + bool(refused)


def run_whole(name, seed, count):
    begin = time.perf_counter()
    check, program = WHOLE[name]
    agree, said = check(seed, count, program)
    print(f"{name}: {count} points, {time.perf_counter() - begin:.1f} s\n  {said}, allowed 1e-09")
    return int(agree), int(not agree)


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    names = [*FAMILIES, *WHOLE]
    parser.add_argument("--seed", type=int, help="a seed printed by an earlier run")
    parser.add_argument("--points", type=int, help="points a family, in place of the usual number")
    parser.add_argument("--only", action="append", choices=names, help="one family, or several")
    parser.add_argument("--worst", action="store_true", help="print the question that differs most")
    args = parser.parse_args()
    seed = secrets.randbelow(10**9) if args.seed is None else args.seed
    again = f"reference/live.py --seed {seed}" + (f" --points {args.points}" if args.points else "")
    print(f"seed {seed}; replay with: {again}")
    os.chdir(ROOT)
    examples = ("science", "bulk"), ("slab-plan", "plan_area"), ("slab-plan", "layout_measure"), ("drawings", "drawing_areas")
    for package, example in examples:
        subprocess.run(["cargo", "build", "--release", "-q", "-p", package, "--example", example], check=True)
    begin = time.perf_counter()
    passed = failed = 0
    for name in args.only or names:
        count = args.points or FEWER.get(name, POINTS)
        good, bad = run_whole(name, seed, count) if name in WHOLE else run_family(name, seed, count, args.worst)
        passed, failed = passed + good, failed + bad
        sys.stdout.flush()
    print(f"{time.perf_counter() - begin:.0f} s after the build; each passed or failed below is one quantity over all its points")
    # The line that ./check counts.
    print(f"live: {passed} passed, {failed} failed")
    if failed:
        sys.exit(f"replay with: {again}")


if __name__ == "__main__":
    main()
