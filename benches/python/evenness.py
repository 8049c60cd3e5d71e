"""Is the slab one color? The core of the method with numpy, SciPy, scikit-image and Pillow, timed.

Usage: python evenness.py PICTURE [PICTURE ...]   (unset OPENBLAS_CORETYPE before timing)

For each picture: decode, light by table, means of squares about 400 and 200 along the longer side, clipped
squares left out, straight edges (Canny at two widths, then a Hough transform), a robust second-order
surface per channel (six rounds of Huber's weights, ten of Tukey's), smoothing over the usable squares,
CIELAB, CIEDE2000 to the median color, the 95th percentile, Otsu's classes, and a word by the two limits.

What it leaves out, and the Rust side does: the card, an offset for each side of an edge, what is no slab
(boots, tools), spots, the color and the steepness of the pattern (shade, damp, glare), blur and
compression, and all the reasons beside the word. So it does less work, and its word is worth less.
"""

import json
import sys
import time

import numpy as np
import PIL
import skimage
from PIL import Image
from scipy.ndimage import gaussian_filter
from skimage.color import deltaE_ciede2000, xyz2lab
from skimage.feature import canny
from skimage.filters import threshold_otsu
from skimage.transform import probabilistic_hough_line

REPEATS = 5
BYTES = np.arange(256) / 255
LIGHT = np.where(BYTES <= 0.04045, BYTES / 12.92, ((BYTES + 0.055) / 1.055) ** 2.4).astype(np.float32)
TO_XYZ = np.array([[0.4123907993, 0.3575843394, 0.1804807884], [0.2126390059, 0.7151686788, 0.0721923154],
                   [0.0193308187, 0.1191947798, 0.9505321522]])
LUMINANCE = np.array([0.2126, 0.7152, 0.0722], np.float32)


def decoded(path):
    with Image.open(path) as image:
        return np.asarray(image.convert("RGB"))


def squares(values, side):
    """Means of squares of `side`; along each axis by one sum over contiguous stretches."""
    rows, cols = values.shape[0] // side, values.shape[1] // side
    part = values[: rows * side, : cols * side]
    part = part.reshape(rows, side, cols * side, -1).sum(axis=1, dtype=np.float32)
    return part.reshape(rows, cols, side, -1).sum(axis=2, dtype=np.float32) / (side * side)


def surface(ln, usable):
    """The robust second-order surface of one channel over all squares."""
    rows, cols = ln.shape
    half = max(rows, cols) / 2
    y, x = np.mgrid[0:rows, 0:cols]
    x, y = (x + 0.5 - cols / 2) / half, (y + 0.5 - rows / 2) / half
    terms = np.stack([np.ones_like(x), x, y, x * x, x * y, y * y], -1).reshape(-1, 6)
    some = np.zeros_like(usable)
    some[::2, ::2] = usable[::2, ::2]
    a, b = terms[some.ravel()], ln[some]
    weight = np.ones(len(b))
    for step in range(17):
        scaled = a * weight[:, None]
        fit = np.linalg.solve(scaled.T @ a, scaled.T @ b)
        error = np.abs(b - a @ fit)
        size = error / max(1.4826 * np.median(error), 1e-5)
        if step < 6:
            weight = np.where(size <= 1.345, 1.0, 1.345 / np.maximum(size, 1e-9))
        else:
            weight = np.clip(1 - (size / 4.685) ** 2, 0, None) ** 2
    return (terms @ fit).reshape(rows, cols)


def smoothed(values, usable, sigma):
    reach = {"mode": "constant", "truncate": 3.0}
    top = gaussian_filter(np.where(usable, values, 0.0), sigma, **reach)
    return np.where(usable, top / np.maximum(gaussian_filter(usable.astype(float), sigma, **reach), 1e-6), 0.0)


def judged(rgb):
    side = max(max(rgb.shape[:2]) // 400, 1)
    fine = squares(LIGHT[rgb], side)
    most, least = rgb.max(axis=2), rgb.min(axis=2)
    clipped = squares(((most >= 250) | (least <= 4))[..., None].astype(np.uint8), side)[..., 0]
    light, clipped = squares(fine, 2), squares(clipped[..., None], 2)[..., 0]
    usable = clipped < 0.02

    ln_y = np.log(np.maximum(fine @ LUMINANCE, 1e-4))
    lines = []
    for sigma in (1.2, 4.0):
        crest = 0.07 / (sigma * 2.5066)
        edges = canny(ln_y, sigma, 2 * crest, 4 * crest)
        lines += probabilistic_hough_line(edges, threshold=10, line_length=80, line_gap=12, rng=1)

    ln = np.log(np.maximum(light, 1e-4)).astype(float)
    left = np.stack([np.where(usable, ln[..., i] - surface(ln[..., i], usable), 0.0) for i in range(3)], -1)
    sigma = float(np.clip(0.01 * max(usable.shape), 1.0, 5.0))
    left = np.stack([smoothed(left[..., i], usable, sigma) for i in range(3)], -1)
    lab = xyz2lab(0.30 * np.exp(left) @ TO_XYZ.T)
    cells = lab[usable]
    score = float(np.percentile(deltaE_ciede2000(cells, np.median(cells, axis=0, keepdims=True)), 95))
    split = threshold_otsu(cells[:, 0])
    share = float((cells[:, 0] < split).mean())
    if (clipped >= 0.02).mean() > 0.10 or usable.mean() < 0.5 or (lines and score < 2.5):
        word = "cant_tell"
    else:
        word = "patchy" if score >= 2.5 else "even" if score < 1.5 else "cant_tell"
    return {"score": score, "share": min(share, 1 - share), "word": word, "lines": len(lines)}


def main():
    out = []
    for path in sys.argv[1:]:
        best, answer = {"decode": 1e9, "judge": 1e9}, None
        for _ in range(REPEATS):
            start = time.perf_counter()
            rgb = decoded(path)
            middle = time.perf_counter()
            answer = judged(rgb)
            end = time.perf_counter()
            best = {"decode": min(best["decode"], middle - start), "judge": min(best["judge"], end - middle)}
        out.append({**best, **answer})
    print(json.dumps({"pictures": out, "pillow": PIL.__version__, "skimage": skimage.__version__}))


if __name__ == "__main__":
    main()
