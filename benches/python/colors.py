"""Lab and CIEDE2000 of whole pictures with general libraries, timed; the values go back for comparison.

Usage: python colors.py FOLDER   (unset OPENBLAS_CORETYPE before timing; the name of this file is not
that of the library, which it would hide)

FOLDER holds `rgb.u8` (red, green, blue by byte) and `lab.f32` (L, a, b of the same pixels by the Rust
side). Writes `lab_skimage.f32`, `de_skimage.f32` and `de_color.f32` there, and prints seconds, the least of
several, as JSON. The difference is taken to BASE from the Rust side's Lab, so that only the formula of
the difference is compared. All of them work in 64-bit numbers on one core, as these libraries do.
"""

import json
import pathlib
import sys
import time

import colour
import numpy as np
import skimage
from colour.difference import delta_E_CIE2000
from skimage.color import deltaE_ciede2000, rgb2lab

BASE = np.array([58.0, 2.0, 7.0])
REPEATS = 3


def timed(work):
    seconds, answer = [], None
    for _ in range(REPEATS):
        begin = time.perf_counter()
        answer = work()
        seconds.append(time.perf_counter() - begin)
    return min(seconds), answer


def main():
    folder = pathlib.Path(sys.argv[1])
    # A picture of one row in each 4000 pixels, as the functions expect pictures.
    rgb = np.fromfile(folder / "rgb.u8", np.uint8).reshape(-1, 4000, 3)
    lab_seconds, lab = timed(lambda: rgb2lab(rgb))
    lab.astype(np.float32).tofile(folder / "lab_skimage.f32")
    ours = np.fromfile(folder / "lab.f32", np.float32).reshape(-1, 4000, 3).astype(np.float64)
    skimage_seconds, out = timed(lambda: deltaE_ciede2000(ours, BASE[None, None]))
    out.astype(np.float32).tofile(folder / "de_skimage.f32")
    color_seconds, out = timed(lambda: delta_E_CIE2000(ours, BASE))
    out.astype(np.float32).tofile(folder / "de_color.f32")
    print(json.dumps({
        "lab_skimage": lab_seconds, "de_skimage": skimage_seconds, "de_color": color_seconds,
        "skimage": skimage.__version__, "colour": colour.__version__, "numpy": np.__version__,
    }))


if __name__ == "__main__":
    main()
