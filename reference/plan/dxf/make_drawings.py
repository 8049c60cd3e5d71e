"""Small drawings made by ezdxf, and random ones, with the areas that Shapely finds in them.

    PYTHONHASHSEED=0 make_drawings.py files      writes the committed drawings and areas.json beside this file
    make_drawings.py random FOLDER --seed 7 --count 40
    drawing_areas < FOLDER/list | make_drawings.py compare FOLDER

Areas are of the layer SLAB in units of the drawing: the areas inside its closed lines, largest first.
They come from ezdxf's own flattening of the entities (chords within 1e-7 of the size) and Shapely's
`polygonize` and `area`, not from our reader. Where curves are, our chords may differ by the bound that
our reader reports; straight lines must agree to 1e-9.
"""

import argparse
import json
import math
import random
import sys
from pathlib import Path

import ezdxf
import ezdxf.bbox
from ezdxf import disassemble, units
from shapely import unary_union
from shapely.geometry import LineString, Polygon
from shapely.ops import polygonize

HERE = Path(__file__).resolve().parent
TOLERANCE = 1e-9
KINDS = ("LINE", "ARC", "CIRCLE", "ELLIPSE", "LWPOLYLINE", "POLYLINE")
RELEASES = ("R12", "R2000", "R2007", "R2018")

ezdxf.options.write_fixed_meta_data_for_testing = True


def fresh(release, unit):
    document = ezdxf.new(release)
    for name in ("SLAB", "PITS", "ZONES", "JOINTS"):
        document.layers.add(name)
    if release != "R12":
        document.header["$INSUNITS"] = unit or 0
    return document, document.modelspace()


def on(layer):
    return {"layer": layer}


def ring(space, points, release, layer="SLAB"):
    """A closed polyline of (x, y, bulge), in the kind that the release has."""
    if release == "R12":
        line = space.add_polyline2d([], dxfattribs=on(layer), format="xyb")
        line.append_formatted_vertices(points, format="xyb")
        line.close(True)
    else:
        space.add_lwpolyline(points, format="xyb", close=True, dxfattribs=on(layer))


def straight(points):
    return [(x, y, 0.0) for x, y in points]


def lines(space, points, layer="SLAB", order=None):
    pairs = list(zip(points, points[1:] + points[:1]))
    for i in order or range(len(pairs)):
        start, end = pairs[i] if i % 2 == 0 else pairs[i][::-1]
        space.add_line(start, end, dxfattribs=on(layer))


def rectangle_mm():
    document, space = fresh("R2018", units.MM)
    ring(space, straight([(1000, 2000), (13000, 2000), (13000, 9000), (1000, 9000)]), "R2018")
    space.add_circle((5000, 5000), 200, dxfattribs=on("PITS"))
    ring(space, straight([(8000, 4000), (9500, 4000), (9500, 5000), (8000, 5000)]), "R2018", "PITS")
    space.add_hatch(dxfattribs=on("SLAB"))
    return document


def bulges_inch():
    document, space = fresh("R2018", units.IN)
    # 40 ft by 20 ft with half a circle at the right end and a quarter-circle niche into the left wall.
    niche = math.tan(math.pi / 8)
    ring(space, [(0, 0, 0), (480, 0, 1.0), (480, 240, 0), (0, 240, 0), (0, 180, -niche), (0, 60, 0)], "R2018")
    return document


def nested_blocks():
    document, space = fresh("R2007", units.FT)
    bay = document.blocks.new("BAY", base_point=(1, 1))
    ring(bay, straight([(1, 1), (11, 1), (11, 6), (6, 6), (6, 11), (1, 11)]), "R2007", "0")
    bay.add_circle((3, 3), 0.5, dxfattribs=on("0"))
    wing = document.blocks.new("WING")
    wing.add_blockref("BAY", (2, 0), dxfattribs={"xscale": -2, "yscale": 3, "rotation": 30, "layer": "0"})
    hall = document.blocks.new("HALL")
    hall.add_blockref("WING", (10, 20), dxfattribs={"rotation": 45, "xscale": 1.5, "yscale": 1.5, "layer": "0"})
    space.add_blockref("HALL", (100, 50), dxfattribs={"rotation": -15, "layer": "SLAB"})
    return document


def open_loop():
    document, space = fresh("R2018", units.MM)
    points = [(0, 0), (12000, 0), (12000, 8000), (3, 8000), (0, 7996)]
    for start, end in zip(points, points[1:]):
        space.add_line(start, end, dxfattribs=on("SLAB"))
    space.add_line((0, 7996 - 25), (0, 0), dxfattribs=on("SLAB"))
    return document


def lines_only():
    document, space = fresh("R2018", units.MM)
    points = [(500, 500), (12500, 500), (12500, 5500), (8500, 5500), (8500, 8500), (500, 8500)]
    lines(space, points, order=(3, 0, 5, 1, 4, 2))
    return document


def no_units():
    document, space = fresh("R2018", None)
    ring(space, straight([(0, 0), (30, 0), (30, 20), (0, 20)]), "R2018")
    return document


def r12():
    document, space = fresh("R12", None)
    ring(space, [(0, 0, 0), (20, 0, 0.4), (20, 15, 0), (0, 15, 0)], "R12")
    space.add_line((5, 4), (9, 4), dxfattribs=on("SLAB"))
    space.add_line((9, 4), (9, 8), dxfattribs=on("SLAB"))
    space.add_arc((5, 8), 4, 270, 360, dxfattribs=on("SLAB"))
    space.add_line((5, 4), (9, 4), dxfattribs=on("SLAB"))
    lines(space, [(12, 5), (14, 5), (14, 7), (12, 7)], "PITS")
    return document


def zones_joints():
    document, space = fresh("R2018", units.FT)
    ring(space, straight([(100, 100), (140, 100), (140, 130), (100, 130)]), "R2018")
    ring(space, straight([(100, 100), (120, 100), (120, 130), (100, 130)]), "R2018", "ZONES")
    ring(space, straight([(120, 100), (140, 100), (140, 130), (120, 130)]), "R2018", "ZONES")
    space.add_mtext("{\\fSans|b0;Sal\u00f3n}", dxfattribs={"layer": "ZONES", "insert": (105, 110)})
    space.add_line((120, 100), (120, 130), dxfattribs=on("JOINTS"))
    space.add_lwpolyline([(100, 115), (140, 115)], dxfattribs=on("JOINTS"))
    space.add_ellipse((130, 120), (3, 0), 0.5, dxfattribs=on("PITS"))
    return document


FILES = (rectangle_mm, bulges_inch, nested_blocks, open_loop, lines_only, no_units, r12, zones_joints)


def plain(document, layer):
    """Lines, arcs and ellipses of the layer, blocks and polylines taken apart by ezdxf. What is on layer
    0 belongs to the layer of its block, which here is always SLAB."""
    layers = (layer, "0") if layer == "SLAB" else (layer,)
    for entity in disassemble.recursive_decompose(document.modelspace()):
        if entity.dxf.layer in layers and entity.dxftype() in KINDS:
            yield from entity.virtual_entities() if "POLYLINE" in entity.dxftype() else [entity]


def flat(entity):
    """Points on the line, chords within 1e-7 of the size of a curve."""
    if entity.dxftype() == "LINE":
        return [entity.dxf.start, entity.dxf.end]
    return list(entity.flattening(1e-7 * ezdxf.bbox.extents([entity]).size.x))


def areas(document, layer="SLAB"):
    """Areas inside the closed lines of the layer, by Shapely."""
    parts = [LineString([(v.x, v.y) for v in flat(entity)]) for entity in plain(document, layer)]
    if not parts:
        return []
    # Ends that meet to rounding only are one; a ring within a ring does not count as a hole here.
    net = unary_union(parts, grid_size=1e-9)
    rings = polygonize(getattr(net, "geoms", [net]))
    return sorted((Polygon(r.exterior).area for r in rings), reverse=True)


def curved(document, layer="SLAB"):
    return any(entity.dxftype() != "LINE" for entity in plain(document, layer))


def write_files():
    said = {}
    for maker in FILES:
        name = f"{maker.__name__}.dxf"
        document = maker()
        document.saveas(HERE / name)
        read = ezdxf.readfile(HERE / name)
        said[name] = {
            "release": read.dxfversion,
            "insunits": read.header.get("$INSUNITS", None),
            "slab": areas(read),
            "pits": areas(read, "PITS"),
            "curved": curved(read),
        }
    (HERE / "areas.json").write_text(json.dumps(said, indent=1) + "\n", encoding="utf-8")


def star(rng, x, y, radius, count):
    angles = sorted(rng.uniform(0.0, 2.0 * math.pi) for _ in range(count))
    return [(x + radius * rng.uniform(0.5, 1.0) * math.cos(a), y + radius * rng.uniform(0.5, 1.0) * math.sin(a)) for a in angles]


def random_drawing(rng):
    release = rng.choice(RELEASES)
    document, space = fresh(release, rng.choice((units.MM, units.IN, units.M)))
    target = space
    if rng.random() < 0.5:
        # In a block in a block, turned, scaled the same both ways (R12 readers expect it), mirrored.
        inner = document.blocks.new("INNER", base_point=(rng.uniform(-5, 5), rng.uniform(-5, 5)))
        outer = document.blocks.new("OUTER")
        size = rng.uniform(0.5, 3.0)
        outer.add_blockref("INNER", (rng.uniform(-50, 50), 7), dxfattribs={"rotation": rng.uniform(0, 360), "xscale": rng.choice((-1, 1)) * size, "yscale": size, "zscale": size, "layer": "0"})
        space.add_blockref("OUTER", (3, rng.uniform(-50, 50)), dxfattribs={"rotation": rng.uniform(0, 360), "layer": "SLAB"})
        target = inner
    layer = "0" if target is not space else "SLAB"
    kind = rng.choice(("ring", "bulges", "lines", "circle", "lines and arc"))
    x, y, radius = rng.uniform(-500, 500), rng.uniform(-500, 500), rng.uniform(5, 400)
    if kind in ("ring", "lines"):
        points = star(rng, x, y, radius, rng.randint(5, 14))
        # A ring that crosses itself is no slab.
        while not LineString(points + points[:1]).is_simple:
            points = star(rng, x, y, radius, rng.randint(5, 14))
        if kind == "ring":
            ring(target, straight(points), release, layer)
        else:
            order = list(range(len(points)))
            rng.shuffle(order)
            lines(target, points, layer, order)
    elif kind == "bulges":
        count = rng.randint(4, 9)
        corners = [(x + radius * math.cos(2 * math.pi * i / count), y + radius * math.sin(2 * math.pi * i / count)) for i in range(count)]
        ring(target, [(px, py, rng.choice((0.0, rng.uniform(-0.25, 0.9)))) for px, py in corners], release, layer)
    elif kind == "circle":
        target.add_circle((x, y), radius, dxfattribs=on(layer))
    else:
        begin, sweep = rng.uniform(0, 360), rng.uniform(20, 340)
        end = begin + sweep
        at = lambda a: (x + radius * math.cos(math.radians(a)), y + radius * math.sin(math.radians(a)))
        target.add_arc((x, y), radius, begin, end, dxfattribs=on(layer))
        target.add_line(at(end), (x, y), dxfattribs=on(layer))
        target.add_line(at(begin), (x, y), dxfattribs=on(layer))
    return document


def write_random(folder, seed, count):
    rng = random.Random(seed)
    said = []
    for i in range(count):
        path = folder / f"{i}.dxf"
        document = random_drawing(rng)
        document.saveas(path)
        read = ezdxf.readfile(path)
        said.append({"path": str(path), "slab": areas(read), "curved": curved(read)})
    (folder / "list").write_text("".join(s["path"] + "\n" for s in said), encoding="utf-8")
    (folder / "said.json").write_text(json.dumps(said), encoding="utf-8")


def compare(folder):
    said = json.loads((folder / "said.json").read_text(encoding="utf-8"))
    answers = [json.loads(line) for line in sys.stdin if line.strip()]
    if len(said) != len(answers):
        sys.exit(f"{len(said)} drawings, {len(answers)} answers")
    worst = worst_curved = 0.0
    for theirs, ours in zip(said, answers):
        if len(theirs["slab"]) != len(ours):
            sys.exit(f"{theirs}: ours {ours}")
        for area, (own, bound) in zip(theirs["slab"], ours):
            off = abs(own / area - 1.0)
            if bound == 0.0:
                worst = max(worst, off)
            else:
                worst_curved = max(worst_curved, abs(own - area) / bound)
            # Flattening by ezdxf has its own 1e-7, which a bound of ours covers with room.
            if not abs(own - area) <= bound + TOLERANCE * area + (1e-6 * area if theirs["curved"] else 0.0):
                sys.exit(f"{theirs['path']}: ours {own} within {bound}, Shapely {area}")
            if (bound > 0.0) != theirs["curved"]:
                sys.exit(f"{theirs['path']}: curved {theirs['curved']}, bound {bound}")
    print(f"{len(said)} drawings agree with ezdxf and Shapely, worst {worst:.2g}; of the bound for curves {worst_curved:.2f}")


def main():
    parser = argparse.ArgumentParser(description=__doc__, formatter_class=argparse.RawDescriptionHelpFormatter)
    commands = parser.add_subparsers(dest="command", required=True)
    commands.add_parser("files")
    maker = commands.add_parser("random")
    maker.add_argument("folder", type=Path)
    maker.add_argument("--seed", type=int, required=True)
    maker.add_argument("--count", type=int, required=True)
    commands.add_parser("compare").add_argument("folder", type=Path)
    args = parser.parse_args()
    if args.command == "files":
        write_files()
    elif args.command == "random":
        write_random(args.folder, args.seed, args.count)
    else:
        compare(args.folder)


if __name__ == "__main__":
    main()
