"""Random slabs with joints and score lines, measured with Shapely, to check layouts against.

    make_layouts.py make --seed 20 --count 60 > layouts.jsonl
    make_layouts.py plans layouts.jsonl | layout_measure | make_layouts.py compare layouts.jsonl

`make` writes one JSON line per slab: the plan as Underfoot keeps it, and what Shapely says: the length
of the joints, of each pattern and of all score lines on the slab (what lines share counted once, what
runs along an edge not at all), the areas between the joints, those between joints and score lines, and
how many tiles each pattern makes, whole and cut. `compare` reads the example program's answers and
fails on any difference above 1e-9 of the value (lengths) or of the slab (areas).

The lines are made here by our own arithmetic, clipped by `intersection`, put together by
`unary_union` and cut by `polygonize`. Ends of free lines stay 2 cm from any other line, since nearer
ones are pulled to it by Underfoot.
"""

import argparse
import json
import math
import random
import sys
from pathlib import Path

from shapely import affinity
from shapely.geometry import LineString, MultiLineString, Point, Polygon, box
from shapely.ops import polygonize, unary_union

sys.path.insert(0, str(Path(__file__).resolve().parent))
from make_polygons import inside, rectangles, sound_star  # noqa: E402

TOLERANCE = 1e-9
NEAR = 0.02


def meters(value):
    return f"{value:.4f} m" if value < 0 or value >= 1e-9 else "0"


def typed(x, y):
    return [meters(x), meters(y)]


def shape(polygon):
    return {"polygon": [typed(x, y) for x, y in polygon.exterior.coords[:-1]]}


def rounded(polygon):
    return Polygon([(round(x, 4), round(y, 4)) for x, y in polygon.exterior.coords[:-1]])


def free_line(rng, bounds, others):
    """Two or three points; no end or corner nearer than NEAR to another line, unless across it."""
    low_x, low_y, high_x, high_y = bounds
    wide, high = high_x - low_x, high_y - low_y
    spot = lambda: (
        round(rng.uniform(low_x - 0.2 * wide, high_x + 0.2 * wide), 4),
        round(rng.uniform(low_y - 0.2 * high, high_y + 0.2 * high), 4),
    )
    while True:
        points = [spot() for _ in range(rng.choice((2, 2, 3)))]
        line = LineString(points)
        if line.length < 0.5 or not line.is_simple:
            continue
        clear = all(Point(p).distance(other) > NEAR for p in points for other in others)
        clear = clear and all(Point(p).distance(line) > NEAR for other in others for p in ends(other))
        if clear and (len(points) == 2 or Point(points[0]).distance(LineString(points[1:])) > NEAR):
            return line


def ends(line):
    return [] if line.geom_type != "LineString" else list(line.coords)


def family(through, angle, spacing, bounds):
    """Parallel lines over the box: through a point, at an angle, so far apart."""
    low_x, low_y, high_x, high_y = bounds
    reach = 2.0 * math.hypot(high_x - low_x, high_y - low_y) + math.hypot(through[0] - low_x, through[1] - low_y)
    count = int(reach / spacing) + 1
    along, across = (math.cos(angle), math.sin(angle)), (-math.sin(angle), math.cos(angle))
    for row in range(-count, count + 1):
        x, y = through[0] + across[0] * row * spacing, through[1] + across[1] * row * spacing
        yield LineString([(x - along[0] * reach, y - along[1] * reach), (x + along[0] * reach, y + along[1] * reach)])


def pattern(rng, scope, slab, others):
    """A pattern as typed, its unclipped lines, and the area of a full tile if it has one."""
    size = math.sqrt(scope.area)
    bounds = scope.bounds
    origin = (round(rng.uniform(bounds[0], bounds[2]), 4), round(rng.uniform(bounds[1], bounds[3]), 4))
    kind = rng.choice(("grid", "grid", "diagonal", "border", "lines"))
    if kind == "grid":
        x, y = (round(size * rng.uniform(0.08, 0.4), 4) for _ in range(2))
        spec = {"spacing_x": meters(x), "spacing_y": meters(y)}
        turn = rng.choice((0.0, 0.0, round(rng.uniform(-80.0, 80.0), 3)))
        if turn:
            spec["turn"] = f"{'left' if turn > 0 else 'right'} {abs(turn)}"
        if rng.random() < 0.6:
            spec["origin"] = typed(*origin)
        else:
            origin = bounds[:2]
        angle = math.radians(turn)
        lines = [*family(origin, angle + math.pi / 2, x, bounds), *family(origin, angle, y, bounds)]
        return {kind: spec}, lines, x * y
    if kind == "diagonal":
        spacing = round(size * rng.uniform(0.08, 0.4), 4)
        spec = {"spacing": meters(spacing), "origin": typed(*origin)}
        lines = [*family(origin, math.pi / 4, spacing, bounds), *family(origin, -math.pi / 4, spacing, bounds)]
        return {kind: spec}, lines, spacing * spacing
    if kind == "border":
        inset = round(size * rng.uniform(0.01, 0.08), 4)
        left = scope.buffer(-inset, join_style="mitre", mitre_limit=60.0)
        if left.is_empty:
            return pattern(rng, scope, slab, others)
        rings = [r for p in getattr(left, "geoms", [left]) for r in (p.exterior, *p.interiors)]
        return {kind: {"inset": meters(inset)}}, [LineString(r.coords) for r in rings], None
    lines = []
    for _ in range(rng.randint(1, 4)):
        lines.append(free_line(rng, bounds, [slab.boundary, *others, *lines]))
    return {kind: {"lines": [[typed(*p) for p in line.coords] for line in lines]}}, lines, None


def clipped(lines, scope):
    """On the scope and not along its edge; each stretch once."""
    edge = scope.boundary.buffer(1e-7 * math.sqrt(scope.area))
    parts = []
    for line in lines:
        for part in pieces(line.intersection(scope)):
            # Only what runs along the edge lies in that band for long.
            if part.intersection(edge).length < 0.5 * part.length:
                parts.append(part)
    return unary_union(parts) if parts else MultiLineString()


def pieces(geometry):
    if geometry.geom_type == "LineString":
        return [geometry] if geometry.length > 0.0 else []
    return [p for g in getattr(geometry, "geoms", []) for p in pieces(g)]


def faces(slab, cuts):
    """Areas of the slab between the lines. The lines are not clipped, so that they surely meet the edge;
    hairs between an edge and a line along it are no faces."""
    net = unary_union([slab.boundary, *cuts])
    inner = [f for f in polygonize(net) if slab.contains(f.representative_point())]
    return sorted(f.area for f in inner if 2.0 * f.area / f.length > 1e-8 * math.sqrt(slab.area))


def make_slab(rng, i):
    kind = i % 4
    if kind == 0:
        outline, cuts = rounded(rectangles(rng)), []
    elif kind == 1:
        outline, cuts = sound_star(rng, 0.0, 0.0, rng.uniform(4.0, 30.0), rng.randint(4, 10)), []
        cuts = inside(rng, outline, rng.randint(1, 3), True)
    elif kind == 2:
        outline = sound_star(rng, rng.uniform(900, 1500), rng.uniform(500, 900), rng.uniform(4.0, 30.0), rng.randint(4, 10))
        cuts = []
    else:
        wide, high = round(rng.uniform(5, 40), 2), round(rng.uniform(5, 40), 2)
        outline = box(0, 0, wide, high)
        cuts = [affinity.translate(box(0, 0, 0.5, 0.5), round(wide * s, 2), round(high * s, 2)) for s in (0.3, 0.6)]
    return outline, cuts


def layout(rng, i):
    outline, cuts = make_slab(rng, i)
    slab = outline.difference(unary_union(cuts)) if cuts else outline
    plan = {"outline": shape(outline)}
    if cuts:
        plan["cut_outs"] = [shape(c) for c in cuts]
    joints = []
    for _ in range(rng.randint(1, 5)):
        joints.append(free_line(rng, slab.bounds, [slab.boundary, *joints]))
    joints = [j for j in joints if not clipped([j], slab).is_empty]
    if joints and rng.random() < 0.4:
        # The same joint typed twice over part of it.
        first = joints[0].coords
        again = LineString(first[:2])
        joints.extend([] if clipped([again], slab).is_empty else [again])
    if joints:
        plan["joints"] = [{"line": [typed(*p) for p in j.coords], "kind": rng.choice(("saw_cut", "construction"))} for j in joints]
    # On a rectangle patterns may be limited to its left part.
    left = slab.intersection(box(0, 0, round(0.55 * outline.bounds[2], 2), outline.bounds[3])) if i % 4 == 3 else None
    if left is not None:
        plan["zones"] = [{"name": "left", "shape": shape(Polygon(box(*left.bounds).exterior))}, {"name": "rest"}]
    wanted, patterns, tiles, taped = [], [], [], []
    others = list(joints)
    for _ in range(rng.randint(0, 2)):
        scope = left if left is not None and rng.random() < 0.5 else slab
        spec, lines, full = pattern(rng, scope, slab, others)
        on = clipped(lines, scope)
        if on.is_empty or len(lines) > 900 or any(Point(p).distance(l) < NEAR for p in taped for l in lines):
            continue
        if "lines" in spec:
            taped.extend(p for line in lines for p in line.coords)
        if scope is left:
            next(iter(spec.values()))["zone"] = "left"
        wanted.append(spec)
        # Unclipped, so that they surely meet the slanted edges of other slabs.
        patterns.append(pieces(on) if scope is left else lines)
        others.extend(lines)
        areas = faces(scope, lines)
        whole = sum(1 for a in areas if full and abs(a / full - 1.0) <= 1e-6)
        tiles.append([whole, len(areas) - whole])
    if wanted:
        plan["score_lines"] = wanted
    everything = [line for lines in patterns for line in lines]
    return {
        "plan": plan,
        "area_m2": slab.area,
        "joints_m": clipped(joints, slab).length,
        "scores_m": clipped(everything, slab).length,
        "patterns_m": [clipped(lines, slab).length for lines in patterns],
        "panels_m2": faces(slab, joints),
        "sections_m2": faces(slab, [*joints, *everything]),
        "tiles": tiles,
    }


def make(seed, count):
    rng = random.Random(seed)
    for i in range(count):
        print(json.dumps(layout(rng, i), separators=(",", ":")))


def read(path):
    with open(path, encoding="utf-8") as lines:
        return [json.loads(line) for line in lines]


def compare(path):
    asked = read(path)
    answers = [json.loads(line) for line in sys.stdin if line.strip()]
    if len(answers) != len(asked):
        sys.exit(f"{len(asked)} slabs, {len(answers)} answers")
    worst, numbers = 0.0, 0
    for number, (said, ours) in enumerate(zip(asked, answers), 1):
        fail = lambda what, off: sys.exit(
            f"slab {number}: {what} off by {off:.3g}: {ours[what]} against {said[what]}: {json.dumps(said['plan'])}"
        )
        for what in ("joints_m", "scores_m", "patterns_m", "panels_m2", "sections_m2"):
            left = ours[what] if isinstance(ours[what], list) else [ours[what]]
            right = said[what] if isinstance(said[what], list) else [said[what]]
            if len(left) != len(right):
                fail(what, float(len(left) - len(right)))
            for a, b in zip(left, right):
                scale = said["area_m2"] if what.endswith("m2") else max(b, 1e-3)
                off = abs(a - b) / scale
                worst, numbers = max(worst, off), numbers + 1
                if not off <= TOLERANCE:
                    fail(what, off)
        if ours["tiles"] != said["tiles"]:
            fail("tiles", math.nan)
    print(f"{len(asked)} layouts, {numbers} lengths and areas agree with Shapely, worst {worst:.2g}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    commands = parser.add_subparsers(dest="command", required=True)
    maker = commands.add_parser("make")
    maker.add_argument("--seed", type=int, required=True)
    maker.add_argument("--count", type=int, required=True)
    for name in ("plans", "compare"):
        commands.add_parser(name).add_argument("file")
    args = parser.parse_args()
    if args.command == "make":
        make(args.seed, args.count)
    elif args.command == "plans":
        for line in read(args.file):
            print(json.dumps(line["plan"], separators=(",", ":")))
    else:
        compare(args.file)


if __name__ == "__main__":
    main()
