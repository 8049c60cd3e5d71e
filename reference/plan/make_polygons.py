"""Random slabs measured with Shapely, to check areas, perimeters and centroids against.

    make_polygons.py make --seed 20 --count 500 > polygons_500.jsonl
    plan_area < FILE | make_polygons.py compare FILE

`make` writes one JSON line per slab: its outline and cut-outs in meters, and what Shapely says of
outline minus cut-outs: area, perimeter (edges of cut-outs counted in) and centroid. `compare` reads
the example program's answers on standard input and fails on any difference above 1e-9 of the area,
the perimeter, or (for the centroid) of the extent.

Kinds, in turn: a star-shaped outline; one with apart cut-outs; a union of rectangles on a grid; one
with cut-outs that run into each other; a star far from the origin, as survey coordinates are.
"""

import argparse
import json
import math
import random
import sys

from shapely.geometry import Polygon, box
from shapely.ops import unary_union

TOLERANCE = 1e-9


def star(rng, x, y, radius, corners):
    angles = sorted(rng.uniform(0.0, 2.0 * math.pi) for _ in range(corners))
    spread = [radius * rng.uniform(0.45, 1.0) for _ in angles]
    points = [(x + r * math.cos(a), y + r * math.sin(a)) for a, r in zip(angles, spread)]
    return Polygon([(round(px, 4), round(py, 4)) for px, py in points])


def sound_star(rng, x, y, radius, corners):
    """A star without corners so near each other that rounding alone decides."""
    while True:
        shape = star(rng, x, y, radius, corners)
        apart = all(math.dist(a, b) > 0.01 for a, b in zip(shape.exterior.coords, shape.exterior.coords[1:]))
        if apart and shape.is_valid and shape.area > 0.05 * radius * radius:
            return shape


def rectangles(rng):
    while True:
        boxes = []
        for _ in range(rng.randint(2, 6)):
            x, y = rng.randint(0, 40) * 0.25, rng.randint(0, 40) * 0.25
            boxes.append(box(x, y, x + rng.randint(4, 40) * 0.25, y + rng.randint(4, 40) * 0.25))
        shape = unary_union(boxes)
        if shape.geom_type == "Polygon" and shape.is_valid and not shape.interiors:
            return shape


def inside(rng, outline, count, apart):
    """Small stars within the outline; apart from each other, or all around one place."""
    low_x, low_y, high_x, high_y = outline.bounds
    size = math.sqrt(outline.area)
    center = outline.representative_point()
    cuts = []
    for _ in range(300):
        if len(cuts) == count:
            break
        if apart:
            x, y = rng.uniform(low_x, high_x), rng.uniform(low_y, high_y)
        else:
            x, y = center.x + rng.uniform(-0.04, 0.04) * size, center.y + rng.uniform(-0.04, 0.04) * size
        cut = sound_star(rng, x, y, size * rng.uniform(0.03, 0.10), rng.randint(4, 7))
        clear = all(cut.distance(other) > 0.01 for other in cuts) if apart else True
        if outline.buffer(-0.01).contains(cut) and clear:
            cuts.append(cut)
    return cuts


def slab(rng, i):
    kind = i % 5
    corners = rng.randint(4, 14)
    if kind == 2:
        outline, cuts = rectangles(rng), []
    else:
        far = (rng.uniform(1500, 3000), rng.uniform(1000, 2000)) if kind == 4 else (rng.uniform(-20, 20), rng.uniform(-20, 20))
        outline, cuts = sound_star(rng, *far, rng.uniform(3.0, 40.0), corners), []
    if kind == 1:
        cuts = inside(rng, outline, rng.randint(1, 4), True)
    if kind == 3:
        cuts = inside(rng, outline, rng.randint(2, 3), False)
    ground = outline.difference(unary_union(cuts)) if cuts else outline
    ring = lambda p: [[round(x, 4), round(y, 4)] for x, y in p.exterior.coords[:-1]]
    return {
        "outline": ring(outline),
        "cut_outs": [ring(cut) for cut in cuts],
        "area_m2": ground.area,
        "perimeter_m": ground.length,
        "centroid_m": [ground.centroid.x, ground.centroid.y],
    }


def make(seed, count):
    rng = random.Random(seed)
    for i in range(count):
        print(json.dumps(slab(rng, i), separators=(",", ":")))


def compare(path):
    with open(path, encoding="utf-8") as lines:
        slabs = [json.loads(line) for line in lines]
    answers = [line.split(",") for line in sys.stdin if line.strip()]
    if len(answers) != len(slabs):
        sys.exit(f"{len(slabs)} slabs, {len(answers)} answers")
    worst = 0.0
    for number, (said, answer) in enumerate(zip(slabs, answers), 1):
        area, perimeter, x, y = (float(value) for value in answer)
        extent = math.sqrt(said["area_m2"])
        off = max(
            abs(area / said["area_m2"] - 1.0),
            abs(perimeter / said["perimeter_m"] - 1.0),
            abs(x - said["centroid_m"][0]) / extent,
            abs(y - said["centroid_m"][1]) / extent,
        )
        worst = max(worst, off)
        if not off <= TOLERANCE:
            sys.exit(f"slab {number}: off by {off:.3g}: {answer} against {json.dumps(said)}")
    print(f"{len(slabs)} slabs agree with Shapely, worst {worst:.2g}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    commands = parser.add_subparsers(dest="command", required=True)
    maker = commands.add_parser("make")
    maker.add_argument("--seed", type=int, required=True)
    maker.add_argument("--count", type=int, required=True)
    comparer = commands.add_parser("compare")
    comparer.add_argument("file")
    args = parser.parse_args()
    if args.command == "make":
        make(args.seed, args.count)
    else:
        compare(args.file)


if __name__ == "__main__":
    main()
