"""Joints, score lines and sections of random slabs against Shapely, and drawings made by ezdxf, by the
makers in reference/plan."""

import subprocess
import sys
import tempfile
from pathlib import Path

PLAN = Path(__file__).resolve().parent.parent / "plan"
LAYOUTS = PLAN / "make_layouts.py"
DRAWINGS = PLAN / "dxf" / "make_drawings.py"


def layouts(seed, count, program):
    """Whether all agree, and what `make_layouts.py compare` said of them."""
    with tempfile.TemporaryDirectory() as folder:
        asked = Path(folder) / "asked.jsonl"
        with asked.open("w", encoding="utf-8") as lines:
            maker = [sys.executable, LAYOUTS, "make", "--seed", str(seed), "--count", str(count)]
            subprocess.run(maker, stdout=lines, check=True)
        plans = subprocess.run([sys.executable, LAYOUTS, "plans", asked], capture_output=True, text=True, check=True)
        return compared(program, plans.stdout, [sys.executable, LAYOUTS, "compare", asked])


def drawings(seed, count, program):
    """Whether all agree, and what `make_drawings.py compare` said of them."""
    with tempfile.TemporaryDirectory() as folder:
        maker = [sys.executable, DRAWINGS, "random", folder, "--seed", str(seed), "--count", str(count)]
        subprocess.run(maker, capture_output=True, check=True)
        paths = (Path(folder) / "list").read_text(encoding="utf-8")
        return compared(program, paths, [sys.executable, DRAWINGS, "compare", folder])


def compared(program, questions, compare):
    said = subprocess.run(program, input=questions, capture_output=True, text=True, check=False)
    if said.returncode != 0:
        return False, f"{' '.join(program)} failed: {said.stderr.strip()}"
    end = subprocess.run(compare, input=said.stdout, capture_output=True, text=True, check=False)
    return end.returncode == 0, (end.stdout + end.stderr).strip()
