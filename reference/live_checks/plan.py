"""Areas, perimeters and centroids of random slabs against Shapely, by reference/plan/make_polygons.py."""

import subprocess
import sys
import tempfile
from pathlib import Path

MAKER = Path(__file__).resolve().parent.parent / "plan" / "make_polygons.py"


def plans(seed, count, program):
    """Whether all agree, and what `make_polygons.py compare` said of them."""
    with tempfile.TemporaryDirectory() as folder:
        asked = Path(folder) / "asked.jsonl"
        with asked.open("w", encoding="utf-8") as lines:
            maker = [sys.executable, MAKER, "make", "--seed", str(seed), "--count", str(count)]
            subprocess.run(maker, stdout=lines, check=True)
        with asked.open(encoding="utf-8") as lines:
            said = subprocess.run(program, stdin=lines, capture_output=True, text=True, check=False)
        if said.returncode != 0:
            return False, f"{' '.join(program)} failed: {said.stderr.strip()}"
        compared = subprocess.run(
            [sys.executable, MAKER, "compare", asked], input=said.stdout, capture_output=True, text=True, check=False
        )
        return compared.returncode == 0, (compared.stdout + compared.stderr).strip()
